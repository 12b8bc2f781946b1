/* SPDX-License-Identifier: MIT */
/* The net of a catalogue: its ends as numbered kinds, which of them mate, its parts in integers. */
#include <math.h>
#include <string.h>

#include "base/sort.h"
#include "base/source.h"
#include "layout/from_search.h"

/* What is at hand while a net is built; dies with the building. */
typedef struct building {
    ow_net *net;
    const char **texts; /* of kinds as they turn up */
    const ow_end **ends;
    size_t count, texts_capacity, ends_capacity;
    uint16_t *found; /* kind of each part's each end, as it turned up */
    ow_net_kind *kinds;
    ow_net_mate *mates;
    size_t mate_count;
    ow_net_part *parts;
} building;

int64_t ow_um_of(double metres)
{
    if (!(metres >= 0))
        return OW_NET_NOT_SAID;
    return metres >= 1000.0 ? OW_NET_AMOUNT_MAX : llround(metres * 1e6);
}

/* ---- kinds ---------------------------------------------------------------------------------- */

static ow_status note_kind(building *now, const ow_end *end, uint16_t *kind)
{
    const ow_context *context = now->net->context;
    char name[OW_END_TEXT_SIZE];
    ow_end_name(end, name);
    size_t known = ow_map_get(&now->net->by_text, name);
    if (known != OW_MAP_NONE) {
        *kind = (uint16_t)known;
        return OW_OK;
    }
    if (now->count >= OW_NET_KINDS_MAX)
        return ow_report(context, OW_ERROR, OW_LIMIT, NULL, NULL, "split the catalogue",
                         "the catalogue has more than %d kinds of end", OW_NET_KINDS_MAX);
    char *text = ow_arena_copy(&now->net->arena, name, strlen(name));
    if (text == NULL ||
        ow_grow(context, (void **)&now->texts, &now->texts_capacity, now->count + 1, sizeof *now->texts) !=
            OW_OK ||
        ow_grow(context, (void **)&now->ends, &now->ends_capacity, now->count + 1, sizeof *now->ends) !=
            OW_OK ||
        ow_map_put(&now->net->by_text, text, now->count) != OW_OK)
        return OW_MEMORY;
    now->texts[now->count] = text;
    now->ends[now->count] = end;
    *kind = (uint16_t)now->count++;
    return OW_OK;
}

/* Rows of a page have the same ends again and again: the part before is asked first. */
static ow_status note_part(building *now, size_t index)
{
    const ow_part *part = ow_catalog_part_at(now->net->catalog, index);
    const ow_part *before = index > 0 ? ow_catalog_part_at(now->net->catalog, index - 1) : NULL;
    for (size_t end = 0; end < part->end_count; end++) {
        uint16_t *kind = &now->found[index * OW_PART_ENDS + end];
        if (before != NULL && end < before->end_count && ow_end_same(&part->ends[end], &before->ends[end])) {
            *kind = now->found[(index - 1) * OW_PART_ENDS + end];
            continue;
        }
        ow_status status = note_kind(now, &part->ends[end], kind);
        if (status != OW_OK)
            return status;
    }
    return OW_OK;
}

static int compare_texts(const void *items, uint32_t left, uint32_t right)
{
    const char *const *texts = items;
    return strcmp(texts[left], texts[right]);
}

/* Numbers the kinds anew in order of their text; place[old] = new. */
static ow_status order_kinds(building *now, uint16_t *place)
{
    ow_net *net = now->net;
    uint32_t *order = ow_new_array(net->context, now->count + 1, sizeof *order);
    net->kinds = ow_arena_get_array(&net->arena, now->count, sizeof *net->kinds);
    ow_status status = order == NULL || net->kinds == NULL ? OW_MEMORY : OW_OK;
    for (size_t i = 0; status == OW_OK && i < now->count; i++)
        order[i] = (uint32_t)i;
    if (status == OW_OK)
        status = ow_sort(net->context, order, now->count, compare_texts, now->texts);
    net->kind_count = now->count;
    for (size_t i = 0; status == OW_OK && i < now->count; i++) {
        place[order[i]] = (uint16_t)i;
        net->kinds[i] = *now->ends[order[i]];
        status = ow_map_put(&net->by_text, now->texts[order[i]], i);
    }
    ow_release(net->context, order);
    return status;
}

static ow_status build_kinds(building *now)
{
    const ow_context *context = now->net->context;
    size_t parts = ow_catalog_part_count(now->net->catalog);
    now->found = ow_new_array(context, parts * OW_PART_ENDS + 1, sizeof *now->found);
    if (now->found == NULL)
        return OW_MEMORY;
    ow_status status = OW_OK;
    for (size_t i = 0; status == OW_OK && i < parts; i++)
        status = note_part(now, i);
    if (status != OW_OK)
        return status;
    uint16_t *place = ow_new_array(context, now->count + 1, sizeof *place);
    now->kinds = ow_new_array(context, now->count + 1, sizeof *now->kinds);
    status = place == NULL || now->kinds == NULL ? OW_MEMORY : order_kinds(now, place);
    for (size_t i = 0; status == OW_OK && i < parts * OW_PART_ENDS; i++)
        now->found[i] = place[now->found[i]]; /* ends that a part has not stay some kind or other */
    for (size_t i = 0; status == OW_OK && i < now->count; i++) {
        now->kinds[i].turns = ow_end_turns(&now->net->kinds[i]);
        now->kinds[i].clamped = ow_end_clamps(&now->net->kinds[i]);
    }
    ow_release(context, place);
    return status;
}

/* ---- parts ---------------------------------------------------------------------------------- */

static ow_net_part part_of(const building *now, size_t index)
{
    const ow_part *part = ow_catalog_part_at(now->net->catalog, index);
    const ow_standing stands = ow_part_standing(part);
    ow_net_part made = {.id = (uint32_t)index, /* the catalogue stands in order of id */
                        .end_count = (uint16_t)part->end_count,
                        .hose = ow_part_is_hose(part),
                        .restrictor = part->kind == OW_RESTRICTOR,
                        .by_metre = part->kind == OW_HOSE,
                        .orifice_um = ow_um_of(part->orifice_m),
                        .rating_pa = stands.rating_pa >= 0 ? llround(stands.rating_pa) : OW_NET_NOT_SAID,
                        .has_temperature = stands.has_temperature,
                        .fluids = stands.fluids | OW_PRESSED(stands.pressed_fluids),
                        .price_cents = part->has_price ? part->price_cents : OW_NET_NOT_SAID,
                        .length_um = ow_um_of(part->length_m)};
    if (stands.has_temperature) {
        made.low_mc = llround(stands.temperature_low_c * 1e3);
        made.high_mc = llround(stands.temperature_high_c * 1e3);
    }
    for (size_t end = 0; end < part->end_count; end++) {
        made.kinds[end] = now->found[index * OW_PART_ENDS + end];
        made.leg_um[end] = ow_um_of(part->leg_bore_m[end]);
    }
    return made;
}

static ow_status build_parts(building *now)
{
    const ow_net *net = now->net;
    size_t count = ow_catalog_part_count(net->catalog);
    now->parts = ow_new_array(net->context, count + 1, sizeof *now->parts);
    if (now->parts == NULL)
        return OW_MEMORY;
    for (size_t i = 0; i < count; i++) {
        now->parts[i] = part_of(now, i);
        if (now->parts[i].price_cents > OW_NET_AMOUNT_MAX)
            return ow_report(net->context, OW_ERROR, OW_LIMIT, NULL, NULL, NULL,
                             "the price of %s is more than can be reckoned with",
                             ow_catalog_part_at(net->catalog, i)->id);
    }
    return OW_OK;
}

static ow_status build_index(building *now)
{
    ow_net *net = now->net;
    ow_net_input input = {.kind_count = net->kind_count,
                          .kinds = now->kinds,
                          .mate_count = now->mate_count,
                          .mates = now->mates,
                          .part_count = ow_catalog_part_count(net->catalog),
                          .parts = now->parts};
    return ow_net_index_build(net->context, &input, &net->index);
}

ow_status ow_net_build(const ow_context *context, const ow_catalog *catalog, ow_net **net)
{
    ow_net *made = ow_new_array(context, 1, sizeof *made);
    if (made == NULL)
        return OW_MEMORY;
    *made = (ow_net){.context = context,
                     .catalog = catalog,
                     .arena = ow_arena_new(context),
                     .by_text = ow_map_new(context)};
    building now = {.net = made};
    ow_status status = build_kinds(&now);
    if (status == OW_OK)
        status = ow_net_find_mates(made, &now.mates, &now.mate_count);
    if (status == OW_OK)
        status = build_parts(&now);
    if (status == OW_OK)
        status = build_index(&now);
    ow_release(context, now.parts);
    ow_release(context, now.mates);
    ow_release(context, now.kinds);
    ow_release(context, now.found);
    ow_release(context, now.ends);
    ow_release(context, now.texts);
    if (status != OW_OK) {
        ow_net_free(made);
        return status;
    }
    *net = made;
    return OW_OK;
}

void ow_net_free(ow_net *net)
{
    if (net == NULL)
        return;
    const ow_context *context = net->context;
    ow_net_index_free(net->index);
    ow_map_done(&net->by_text);
    ow_arena_done(&net->arena);
    ow_release(context, net);
}

size_t ow_net_kind_count(const ow_net *net)
{
    return net->kind_count;
}

const ow_end *ow_net_kind_at(const ow_net *net, size_t index)
{
    return &net->kinds[index];
}

size_t ow_net_shape_count(const ow_net *net)
{
    return net->index->shape_count;
}

size_t ow_net_distinct_count(const ow_net *net)
{
    return net->index->distinct_count;
}
