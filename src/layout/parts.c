/* SPDX-License-Identifier: MIT */
/* The tree under `parts`: lists that go on from part to part, and maps that open branches. */
#include <string.h>

#include "base/words.h"
#include "layout/reading.h"

/* Where the next thing of a list hangs. */
typedef struct ow_hook {
    size_t node, end;
    bool closed; /* nothing can follow */
    bool behind_hose;
} ow_hook;

static void walk(ow_reading *reading, const ow_yaml *list, ow_hook hook);

static const ow_end *hook_end(const ow_reading *reading, ow_hook hook)
{
    const ow_layout_node *node = &reading->nodes[hook.node];
    return node->part ? &node->part->ends[hook.end] : &reading->leaves[node->given].given.end;
}

/* A new node on the hook; its index, or OW_NODE_NONE. */
static size_t add_node(ow_reading *reading, ow_hook hook, ow_span span)
{
    if (reading->node_count == OW_LAYOUT_NODES_MAX) {
        ow_reading_note(reading, ow_source_report(reading->context, OW_ERROR, OW_LIMIT, reading->source, span,
                                                  "at most 2000 parts", NULL, "the layout is too large"));
        return OW_NODE_NONE;
    }
    if (ow_grow(reading->context, (void **)&reading->nodes, &reading->node_capacity, reading->node_count + 1,
                sizeof *reading->nodes) != OW_OK) {
        ow_reading_note(reading, OW_MEMORY);
        return OW_NODE_NONE;
    }
    ow_layout_node *node = &reading->nodes[reading->node_count];
    *node = (ow_layout_node){.parent = hook.node, .parent_end = hook.end, .length_m = OW_NOT_SAID};
    for (size_t end = 0; end < OW_PART_ENDS; end++)
        node->exits[end] = OW_NODE_NONE;
    node->place.file = reading->file;
    ow_source_position(reading->source, span.start, &node->place.line, &node->place.column);
    if (hook.node != OW_NODE_NONE)
        reading->nodes[hook.node].exits[hook.end] = reading->node_count;
    return reading->node_count++;
}

static void add_leaf(ow_reading *reading, const ow_named *named, ow_span span, ow_hook hook)
{
    if (reading->leaf_count == OW_LEAVES_MAX) {
        ow_reading_note(reading, ow_source_report(reading->context, OW_ERROR, OW_LIMIT, reading->source, span,
                                                  "at most six ports beside the source", NULL,
                                                  "the layout serves too many ports"));
        return;
    }
    size_t node = add_node(reading, hook, span);
    if (node == OW_NODE_NONE)
        return;
    ow_leaf *leaf = &reading->leaves[reading->leaf_count];
    *leaf = (ow_leaf){
        .given = named->given, .words = named->words, .occurrence = 1, .behind_hose = hook.behind_hose};
    for (size_t i = 1; i < reading->leaf_count; i++)
        leaf->occurrence += strcmp(reading->leaves[i].words, named->words) == 0;
    reading->nodes[node].given = reading->leaf_count++;
}

/* Names of the part's ends in words, for "expected". */
static void unknown_end(ow_reading *reading, const ow_part *part, const char *word, ow_span span)
{
    ow_text expected = ow_text_new(reading->context);
    for (size_t end = 0; end < part->end_count; end++)
        ow_text_format(&expected, "%s%s", end ? ", " : "an end of it: ", part->end_names[end]);
    ow_reading_note(reading, ow_text_status(&expected));
    if (!expected.failed)
        ow_reading_unknown(reading, span, ow_text_words(&expected),
                           ow_words_nearest(word, strlen(word), part->end_names, part->end_count),
                           "the part has no such end", word);
    ow_text_done(&expected);
}

static size_t read_enter(ow_reading *reading, const ow_part *part, const ow_yaml *options, size_t usual)
{
    const ow_yaml *enter = options && options->kind == OW_YAML_MAP ? ow_yaml_member(options, "enter") : NULL;
    if (!enter)
        return usual;
    size_t end = enter->kind == OW_YAML_SCALAR ? ow_part_end_index(part, enter->words) : OW_PART_ENDS;
    if (end < OW_PART_ENDS)
        return end;
    unknown_end(reading, part, enter->words, enter->span);
    return usual;
}

static void read_seals(ow_reading *reading, const ow_part *part, const ow_yaml *seal, ow_layout_node *node)
{
    if (seal->kind != OW_YAML_MAP) {
        ow_reading_fault(reading, seal->span, "a map from ends to words, such as {b: tape}", NULL,
                         "\"seal\" is not a map");
        return;
    }
    for (const ow_yaml *member = seal->first; member && !ow_reading_enough(reading); member = member->next) {
        size_t end = ow_part_end_index(part, member->key);
        const ow_yaml *words = ow_yaml_real(member);
        if (end == OW_PART_ENDS)
            unknown_end(reading, part, member->key, member->key_span);
        else if (words->kind != OW_YAML_SCALAR)
            ow_reading_fault(reading, words->span, "a word, such as tape or paste", NULL,
                             "\"seal\" needs a word");
        else
            node->seal[end] = ow_reading_copy(reading, words->words);
    }
}

/* An exit among the part's own options: it belongs one level further out. Whether there was one. */
static bool has_exit_inside(ow_reading *reading, const ow_part *part, const ow_yaml *options)
{
    bool has = false;
    for (const ow_yaml *member = options->first; member && !ow_reading_enough(reading);
         member = member->next) {
        if (ow_part_end_index(part, member->key) == OW_PART_ENDS)
            continue;
        has = true;
        ow_reading_fault(reading, member->key_span, "enter, length or seal",
                         "write it beside the part's id, as a key of the same map",
                         "\"%.60s\" is an exit of \"%.60s\", and stands inside the part's own map",
                         member->key, part->id);
    }
    return has;
}

static void read_options(ow_reading *reading, const ow_part *part, const ow_yaml *options,
                         ow_layout_node *node)
{
    static const char *const known[] = {"enter", "length", "seal"};
    if (!options || ow_yaml_is_null(options))
        return;
    if (options->kind != OW_YAML_MAP) {
        ow_reading_fault(reading, options->span, "a map, such as {length: 650 mm}", NULL,
                         "what stands behind the part is not a map");
        return;
    }
    if (!has_exit_inside(reading, part, options))
        ow_reading_note(reading, ow_yaml_known_keys(reading->context, reading->source, options, known, 3));
    const ow_yaml *length = ow_yaml_member(options, "length"), *seal = ow_yaml_member(options, "seal");
    if (length && part->kind != OW_HOSE)
        ow_reading_fault(reading, length->span, NULL, NULL, "only a hose is cut to length, \"%.60s\" is none",
                         part->id);
    else if (length)
        ow_reading_note(reading,
                        ow_yaml_quantity(reading->context, reading->source, length, OW_LENGTH,
                                         OW_HOSE_LENGTH_LOW_M, OW_HOSE_LENGTH_HIGH_M, &node->length_m));
    if (seal)
        read_seals(reading, part, seal, node);
}

/* Which member of the map is the part: the first that names one, else the first. */
static const ow_yaml *part_member(const ow_reading *reading, const ow_yaml *map)
{
    for (const ow_yaml *member = map->first; member; member = member->next)
        if (ow_catalog_part(reading->catalog, member->key))
            return member;
    return map->first;
}

/* Keys beside the part's own: exits, and nothing else. */
static void check_exits(ow_reading *reading, const ow_part *part, size_t enter, const ow_yaml *map,
                        const ow_yaml *own)
{
    for (const ow_yaml *member = map ? map->first : NULL; member && !ow_reading_enough(reading);
         member = member->next) {
        if (member == own)
            continue;
        size_t end = ow_part_end_index(part, member->key);
        if (end == OW_PART_ENDS)
            unknown_end(reading, part, member->key, member->key_span);
        else if (end == enter)
            ow_reading_fault(reading, member->key_span, "one of the other ends",
                             "say \"enter\" if it is entered elsewhere",
                             "\"%.60s\" is the end by which \"%.60s\" is entered", member->key, part->id);
    }
}

/* Walks what hangs on the exits, in the part's order; the hook for what follows in the list. */
static ow_hook follow_exits(ow_reading *reading, size_t node, const ow_part *part, size_t enter,
                            const ow_yaml *map, const ow_yaml *own, bool behind_hose)
{
    ow_hook next = {.node = node, .closed = true, .behind_hose = behind_hose || ow_part_is_hose(part)};
    bool keyed = false;
    for (size_t end = 0; end < part->end_count; end++) {
        const ow_yaml *branch = map && end != enter ? ow_yaml_member(map, part->end_names[end]) : NULL;
        if (!branch || branch == ow_yaml_real(own))
            continue;
        keyed = true;
        walk(reading, branch, (ow_hook){node, end, false, next.behind_hose});
    }
    if (part->end_count == 2 && !keyed) {
        next.closed = false;
        next.end = 1 - enter;
    }
    return next;
}

static ow_hook place_part(ow_reading *reading, const ow_part *part, const ow_yaml *map, const ow_yaml *own,
                          ow_span span, ow_hook hook)
{
    const ow_yaml *options = own ? ow_yaml_real(own) : NULL;
    size_t usual = ow_layout_usual_entry(part, hook_end(reading, hook));
    size_t enter = read_enter(reading, part, options, usual);
    size_t node = add_node(reading, hook, span);
    if (node == OW_NODE_NONE)
        return (ow_hook){.closed = true};
    reading->nodes[node].part = part;
    reading->nodes[node].enter = enter;
    read_options(reading, part, options, &reading->nodes[node]);
    check_exits(reading, part, enter, map, own);
    return follow_exits(reading, node, part, enter, map, own, hook.behind_hose);
}

static ow_hook place_item(ow_reading *reading, const ow_yaml *item, ow_hook hook)
{
    const ow_yaml *own = item->kind == OW_YAML_MAP ? part_member(reading, item) : NULL;
    const char *words = own ? own->key : item->words;
    ow_span span = own ? own->key_span : item->span;
    ow_named named;
    if (item->kind == OW_YAML_LIST || (item->kind == OW_YAML_MAP && !own) || ow_yaml_is_null(item)) {
        ow_reading_fault(reading, item->span, "the id of a part, MACHINE:PORT, or an end in quotes", NULL,
                         "this is no part and no port");
        return hook;
    }
    if (!ow_reading_find(reading, words, span, &named))
        return hook;
    if (named.part)
        return place_part(reading, named.part, item->kind == OW_YAML_MAP ? item : NULL, own, span, hook);
    if (own)
        ow_reading_fault(reading, span, "the port alone", NULL, "a port has no keys: \"%.60s\"", words);
    add_leaf(reading, &named, span, hook);
    return (ow_hook){.closed = true};
}

static void say_closed(ow_reading *reading, const ow_yaml *item, ow_hook hook)
{
    const ow_part *part = reading->nodes[hook.node].part;
    const char *key = item->kind == OW_YAML_MAP && item->first ? item->first->key : "";
    bool is_exit = part && ow_part_end_index(part, key) < OW_PART_ENDS;
    ow_reading_fault(reading, item->span, "the end of the list",
                     is_exit ? "write the exit without a dash of its own, beside the part's id and its colon"
                             : "key what hangs on a part with several exits by the exit's name",
                     "nothing can follow here");
}

/* A branch may be a list, or the one thing that hangs there. */
static void walk(ow_reading *reading, const ow_yaml *list, ow_hook hook)
{
    const ow_yaml *item = list->kind == OW_YAML_LIST ? list->first : NULL;
    if (list->kind != OW_YAML_LIST && !ow_yaml_is_null(list)) {
        (void)place_item(reading, list, hook);
        return;
    }
    for (; item && !ow_reading_enough(reading); item = item->next) {
        if (hook.closed) {
            say_closed(reading, ow_yaml_real(item), hook);
            return;
        }
        hook = place_item(reading, ow_yaml_real(item), hook);
    }
}

void ow_reading_parts(ow_reading *reading, const ow_yaml *parts)
{
    size_t source = add_node(reading, (ow_hook){.node = OW_NODE_NONE}, parts->span);
    if (source == OW_NODE_NONE)
        return;
    if (parts->kind != OW_YAML_LIST && !ow_yaml_is_null(parts)) {
        ow_reading_fault(reading, parts->span, "a list of parts", NULL, "\"parts\" is not a list");
        return;
    }
    walk(reading, parts, (ow_hook){.node = source});
}
