/* SPDX-License-Identifier: MIT */
/*
 * Parts that no stack could use. An open end can be *finished* if a port of the catalogue mates it, or a
 * part whose other ends can all be finished. An open end is *reached* if it is a port, or an end of a
 * part that is entered from a reached end and whose other ends can all be finished. A part is of use if
 * it can be entered from a reached end while all its others can be finished. Both are least fixed
 * points, found by going over the parts until nothing changes.
 */
#include <string.h>

#include "catalog/audit.h"
#include "joints/meeting.h"
#include "oilway/joint.h"

typedef struct ow_use {
    ow_audit *audit;
    ow_map names; /* canonical text of an end to its kind */
    ow_arena arena;
    const ow_end **kinds;
    size_t kind_count, kind_capacity;
    size_t (*part_kinds)[OW_PART_ENDS]; /* of each entry */
    ow_meeting *pairs;                  /* of kinds that mate */
    size_t pair_count;
    size_t *link_offset; /* kind_count + 1: what mates kind k is links[link_offset[k]] and on */
    uint32_t *links;
    bool *port, *finished, *reached;
    bool *entered;    /* a part may be entered there, all its other ends finished */
    bool any_machine; /* without one, any end may be a port that somebody asks from */
} ow_use;

static ow_status kind_of(ow_use *use, const ow_end *end, size_t *kind)
{
    char name[OW_END_TEXT_SIZE];
    *kind = ow_map_get(&use->names, ow_end_name(end, name));
    if (*kind != OW_MAP_NONE)
        return OW_OK;
    ow_status status = ow_grow(use->audit->context, (void **)&use->kinds, &use->kind_capacity,
                               use->kind_count + 1, sizeof *use->kinds);
    if (status != OW_OK)
        return status;
    char *key = ow_arena_copy(&use->arena, name, strlen(name));
    if (!key)
        return OW_MEMORY;
    status = ow_map_put(&use->names, key, use->kind_count);
    if (status == OW_OK) {
        *kind = use->kind_count;
        use->kinds[use->kind_count++] = end;
    }
    return status;
}

/* Interns all ends; those of machines, switches and senders are ports. */
static ow_status collect(ow_use *use)
{
    const ow_catalog *catalog = use->audit->catalog;
    ow_status status = OW_OK;
    size_t kind;
    for (size_t i = 0; i < catalog->entry_count && status == OW_OK; i++) {
        const ow_entry *entry = &catalog->entries[i];
        for (size_t end = 0; entry->part && end < entry->part->end_count && status == OW_OK; end++)
            status = kind_of(use, &entry->part->ends[end], &use->part_kinds[i][end]);
        for (size_t port = 0; entry->machine && port < entry->machine->port_count && status == OW_OK; port++)
            status = kind_of(use, &entry->machine->ports[port].end, &kind);
        use->any_machine = use->any_machine || entry->machine;
    }
    return status;
}

static ow_status mark_ports(ow_use *use)
{
    const ow_catalog *catalog = use->audit->catalog;
    size_t kind;
    for (size_t i = 0; i < catalog->entry_count; i++) {
        const ow_entry *entry = &catalog->entries[i];
        if (entry->part && !ow_kind_is_part(entry->part->kind))
            use->port[use->part_kinds[i][0]] = true;
        for (size_t port = 0; entry->machine && port < entry->machine->port_count; port++) {
            ow_status status = kind_of(use, &entry->machine->ports[port].end, &kind);
            if (status != OW_OK)
                return status;
            use->port[kind] = true;
        }
    }
    for (kind = 0; kind < use->kind_count && !use->any_machine; kind++)
        use->port[kind] = true;
    return OW_OK;
}

/* Of the pairs that may be joined keeps those that a rule joins. */
static ow_status find_pairs(ow_use *use)
{
    ow_status status = ow_joint_meeting_pairs(use->audit->context, use->kinds, use->kind_count, &use->pairs,
                                              &use->pair_count);
    size_t kept = 0;
    for (size_t i = 0; status == OW_OK && i < use->pair_count; i++)
        if (ow_joint_find(use->kinds[use->pairs[i].a], use->kinds[use->pairs[i].b]) != NULL)
            use->pairs[kept++] = use->pairs[i];
    use->pair_count = kept;
    return status;
}

/* Both directions of every pair, in lists by kind. */
static ow_status link_up(ow_use *use)
{
    size_t *offset = ow_new_array(use->audit->context, use->kind_count + 2, sizeof *offset);
    use->links = ow_new_array(use->audit->context, 2 * use->pair_count + 1, sizeof *use->links);
    use->link_offset = offset;
    if (offset == NULL || use->links == NULL)
        return OW_MEMORY;
    size_t *next = offset + 1; /* counts first; then, moved on while placing, they end as offsets */
    for (size_t i = 0; i < use->pair_count; i++) {
        next[use->pairs[i].a]++;
        next[use->pairs[i].b] += use->pairs[i].a != use->pairs[i].b;
    }
    for (size_t kind = 0, sum = 0; kind <= use->kind_count; kind++) {
        size_t here = next[kind];
        next[kind] = sum;
        sum += here;
    }
    for (size_t i = 0; i < use->pair_count; i++) {
        const ow_meeting *pair = &use->pairs[i];
        use->links[next[pair->a]++] = pair->b;
        if (pair->a != pair->b)
            use->links[next[pair->b]++] = pair->a;
    }
    return OW_OK;
}

static ow_status pair_up(ow_use *use)
{
    const ow_context *context = use->audit->context;
    size_t count = use->kind_count;
    use->port = ow_new_array(context, count + 1, sizeof *use->port);
    use->finished = ow_new_array(context, count + 1, sizeof *use->finished);
    use->reached = ow_new_array(context, count + 1, sizeof *use->reached);
    use->entered = ow_new_array(context, count + 1, sizeof *use->entered);
    if (!use->port || !use->finished || !use->reached || !use->entered)
        return OW_MEMORY;
    ow_status status = find_pairs(use);
    if (status == OW_OK)
        status = link_up(use);
    return status == OW_OK ? mark_ports(use) : status;
}

static bool is_mated(const ow_use *use, size_t kind)
{
    return use->link_offset[kind] < use->link_offset[kind + 1];
}

static bool mates_any(const ow_use *use, size_t kind, const bool *set)
{
    for (size_t i = use->link_offset[kind]; i < use->link_offset[kind + 1]; i++)
        if (set[use->links[i]])
            return true;
    return false;
}

/* Whether all ends of entry i but two (which may be the same) can be finished. */
static bool others_finished(const ow_use *use, size_t i, size_t but, size_t and_but)
{
    const ow_part *part = use->audit->catalog->entries[i].part;
    for (size_t end = 0; end < part->end_count; end++)
        if (end != but && end != and_but && !use->finished[use->part_kinds[i][end]])
            return false;
    return true;
}

static bool is_net_part(const ow_use *use, size_t i)
{
    const ow_part *part = use->audit->catalog->entries[i].part;
    return part && ow_kind_is_part(part->kind);
}

static void find_finished(ow_use *use)
{
    const ow_catalog *catalog = use->audit->catalog;
    bool changed = true;
    while (changed) {
        changed = false;
        for (size_t i = 0; i < catalog->entry_count; i++)
            for (size_t end = 0; is_net_part(use, i) && end < catalog->entries[i].part->end_count; end++)
                use->entered[use->part_kinds[i][end]] =
                    use->entered[use->part_kinds[i][end]] || others_finished(use, i, end, end);
        for (size_t kind = 0; kind < use->kind_count; kind++) {
            if (use->finished[kind] ||
                (!mates_any(use, kind, use->port) && !mates_any(use, kind, use->entered)))
                continue;
            use->finished[kind] = changed = true;
        }
    }
}

static void find_reached(ow_use *use)
{
    const ow_catalog *catalog = use->audit->catalog;
    bool changed = true;
    memcpy(use->reached, use->port, use->kind_count * sizeof *use->reached);
    while (changed) {
        changed = false;
        memset(use->entered, 0, use->kind_count * sizeof *use->entered);
        for (size_t kind = 0; kind < use->kind_count; kind++)
            use->entered[kind] = mates_any(use, kind, use->reached);
        for (size_t i = 0; i < catalog->entry_count; i++) {
            size_t count = is_net_part(use, i) ? catalog->entries[i].part->end_count : 0;
            for (size_t in = 0; in < count; in++) {
                for (size_t out = 0; out < count; out++) {
                    bool *reached = &use->reached[use->part_kinds[i][out]];
                    if (out == in || *reached || !use->entered[use->part_kinds[i][in]] ||
                        !others_finished(use, i, in, out))
                        continue;
                    *reached = changed = true;
                }
            }
        }
    }
}

static bool is_of_use(const ow_use *use, size_t i)
{
    const ow_part *part = use->audit->catalog->entries[i].part;
    for (size_t end = 0; end < part->end_count; end++)
        if (use->entered[use->part_kinds[i][end]] && others_finished(use, i, end, end))
            return true;
    return false;
}

/* The first end that stands in the way: nothing mates it, or what does leads nowhere. */
static void tell_of(ow_use *use, size_t i, ow_gather *lonely, ow_gather *useless)
{
    const ow_entry *entry = &use->audit->catalog->entries[i];
    for (size_t end = 0; end < entry->part->end_count; end++) {
        if (!is_mated(use, use->part_kinds[i][end])) {
            ow_gather_add_end(lonely, entry, entry->part->end_names[end]);
            return;
        }
    }
    if (ow_kind_is_part(entry->part->kind) && !is_of_use(use, i))
        ow_gather_add(useless, entry);
}

static void tell_ports(ow_use *use, const ow_entry *entry)
{
    char name[OW_END_TEXT_SIZE];
    for (size_t port = 0; port < entry->machine->port_count; port++) {
        const ow_port *at = &entry->machine->ports[port];
        size_t kind;
        if (kind_of(use, &at->end, &kind) == OW_OK && !is_mated(use, kind))
            ow_audit_tell(use->audit, OW_WARNING, entry, NULL, NULL,
                          "nothing in the catalogue mates port \"%s:%s\" (%s)", entry->machine->id, at->name,
                          ow_end_name(&at->end, name));
    }
}

static void tell(ow_use *use)
{
    const ow_catalog *catalog = use->audit->catalog;
    ow_gather lonely =
        ow_gather_new(use->audit, OW_WARNING, "an end that nothing in the catalogue mates", NULL);
    ow_gather useless =
        ow_gather_new(use->audit, OW_WARNING, "no stack can use it: an end can be neither closed nor served",
                      "a plug or a cap for that end is missing, or a part that leads on");
    for (size_t i = 0; i < catalog->entry_count; i++) {
        if (catalog->entries[i].machine)
            tell_ports(use, &catalog->entries[i]);
        else
            tell_of(use, i, &lonely, &useless);
    }
    ow_gather_end(&useless);
    ow_gather_end(&lonely);
}

void ow_audit_use(ow_audit *audit)
{
    const ow_context *context = audit->context;
    ow_use use = {.audit = audit, .names = ow_map_new(context), .arena = ow_arena_new(context)};
    ow_status status = OW_MEMORY;
    use.part_kinds = ow_new_array(context, audit->catalog->entry_count + 1, sizeof *use.part_kinds);
    if (use.part_kinds)
        status = collect(&use);
    if (status == OW_OK)
        status = pair_up(&use);
    if (status == OW_OK) {
        find_finished(&use);
        find_reached(&use);
        tell(&use);
    } else {
        audit->status = status;
    }
    ow_release(context, use.entered);
    ow_release(context, use.reached);
    ow_release(context, use.finished);
    ow_release(context, use.port);
    ow_release(context, use.links);
    ow_release(context, use.link_offset);
    ow_release(context, use.pairs);
    ow_release(context, use.part_kinds);
    ow_release(context, use.kinds);
    ow_arena_done(&use.arena);
    ow_map_done(&use.names);
}
