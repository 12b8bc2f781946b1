/* SPDX-License-Identifier: MIT */
/* The made part in words: the ends that a lathe would give it, plainest first. */
#include <string.h>

#include "base/sort.h"
#include "layout/from_search.h"
#include "oilway/joint.h"

/* How far an end is from one that a lathe can cut on a bar: 0 is a plain thread. */
static unsigned trouble(const ow_end *end)
{
    static const unsigned BY_FORM[OW_FORM_COUNT] = {
        [OW_FORM_THREAD] = 0, [OW_FORM_DASH] = 1,   [OW_FORM_TUBE_NUT] = 2, [OW_FORM_BANJO] = 4,
        [OW_FORM_HOSE] = 8,   [OW_FORM_TAIL] = 5,   [OW_FORM_BARB] = 1,     [OW_FORM_BEAD] = 1,
        [OW_FORM_TUBE] = 6,   [OW_FORM_FLANGE] = 3, [OW_FORM_WELD] = 2,
    };
    unsigned sum = BY_FORM[end->form];
    if (end->swivel)
        sum += 4; /* a nut of its own */
    if (end->seat == OW_SEAT_BANJO || end->seat == OW_SEAT_WASHER_CAPTIVE)
        sum += 2;
    if (end->form == OW_FORM_THREAD && end->thread.family == OW_THREAD_METRIC_TAPER)
        sum += 1; /* where a taper is rare, a parallel thread and a washer do */
    return sum;
}

/* The end a made part needs to seal on a given one. */
typedef struct matching {
    const ow_end *onto;
    ow_end best;
    bool found;
} matching;

static void try_end(matching *now, const ow_end *made)
{
    if (!ow_end_is_whole(made))
        return;
    const ow_joint_rule *rule = ow_joint_find(now->onto, made);
    if (rule == NULL || rule->verdict != OW_SEALS)
        return;
    char name[OW_END_TEXT_SIZE], best[OW_END_TEXT_SIZE];
    unsigned mine = trouble(made), least = now->found ? trouble(&now->best) : 0;
    if (now->found && (mine > least || (mine == least &&
                                        strcmp(ow_end_name(made, name), ow_end_name(&now->best, best)) >= 0)))
        return;
    now->best = *made;
    now->found = true;
}

/* The same end with the other gender, in every seat and on every family of thread that might answer it. */
static void try_likely(matching *now)
{
    ow_end made = *now->onto;
    made.swivel = false;
    if (made.gender != OW_GENDER_NONE)
        made.gender = made.gender == OW_MALE ? OW_FEMALE : OW_MALE;
    try_end(now, &made);
    if (made.form == OW_FORM_HOSE || made.form == OW_FORM_TAIL)
        made.form = made.form == OW_FORM_HOSE ? OW_FORM_TAIL : OW_FORM_HOSE;
    try_end(now, &made);
    if (made.form != OW_FORM_THREAD)
        return;
    for (int seat = 0; seat < OW_SEAT_COUNT; seat++)
        for (int family = 0; family < OW_THREAD_FAMILY_COUNT; family++) {
            made.seat = (ow_seat)seat;
            made.thread.family = (ow_thread_family)family;
            try_end(now, &made);
        }
}

static bool find_end(const ow_search *search, const ow_end *onto, ow_end *made)
{
    matching now = {.onto = onto};
    try_likely(&now);
    if (!now.found || trouble(&now.best) > 1)
        for (size_t kind = 0; kind < search->net->kind_count; kind++)
            try_end(&now, &search->net->kinds[kind]);
    if (now.found)
        *made = now.best;
    return now.found;
}

static void write_why(const ow_search *search, const ow_made *made, size_t parts, ow_text *why)
{
    char name[OW_END_TEXT_SIZE];
    if (made->plug) {
        ow_text_format(why, "closes a spare %s", ow_end_name(ow_search_kind_end(search, made->from), name));
    } else {
        ow_text_add(why, "joins ");
        if (made->at_source)
            ow_search_write_given(search, 0, why);
        else
            ow_text_format(why, "a part's %s", ow_end_name(ow_search_kind_end(search, made->from), name));
        ow_text_add(why, " to ");
        if (made->to_port)
            ow_search_write_given(search, made->port + 1, why);
        else
            ow_text_format(why, "a part's %s", ow_end_name(ow_search_kind_end(search, made->to), name));
    }
    if (made->at_source && made->to_port)
        ow_text_add(why, ": one part from port to port, which with a single port is always a way");
    else
        ow_text_format(why, "; the layout then has %zu part%s", parts, parts == 1 ? "" : "s");
}

/* Made parts as found, and the order in which they are told. */
typedef struct naming {
    const ow_search *search;
    ow_missing *items;
    const ow_made **made; /* behind each item */
    size_t *choice;       /* of each item, parts of the catalogue with the end it leads to */
    uint32_t *order;
    size_t count;
} naming;

/* Parts that have an end of that kind. A port has no choice and goes before all. */
static size_t parts_with(const ow_search *search, const ow_made *made)
{
    const ow_net_index *index = search->net->index;
    size_t count = 0;
    if (made->plug || made->to_port)
        return SIZE_MAX;
    for (size_t i = index->entry_offset[made->to]; i < index->entry_offset[made->to + 1]; i++)
        count += index->shapes[index->entry_shapes[i]].count;
    return count;
}

/* Plainest first; of equally plain ones that which meets the commoner end. */
static int compare_missing(const void *items, uint32_t left, uint32_t right)
{
    const naming *now = items;
    const ow_missing *a = &now->items[left], *b = &now->items[right];
    unsigned trouble_a = trouble(&a->from) + (a->is_plug ? 0 : trouble(&a->to));
    unsigned trouble_b = trouble(&b->from) + (b->is_plug ? 0 : trouble(&b->to));
    if (trouble_a != trouble_b)
        return trouble_a < trouble_b ? -1 : 1;
    if (now->choice[left] != now->choice[right])
        return now->choice[left] > now->choice[right] ? -1 : 1;
    char name_a[OW_END_TEXT_SIZE], name_b[OW_END_TEXT_SIZE];
    int order = strcmp(ow_end_name(&a->from, name_a), ow_end_name(&b->from, name_b));
    if (order == 0 && a->is_plug != b->is_plug)
        order = a->is_plug ? -1 : 1;
    if (order != 0 || a->is_plug)
        return order;
    return strcmp(ow_end_name(&a->to, name_a), ow_end_name(&b->to, name_b));
}

static bool same_missing(const ow_missing *a, const ow_missing *b)
{
    return a->is_plug == b->is_plug && ow_end_same(&a->from, &b->from) &&
           (a->is_plug || ow_end_same(&a->to, &b->to));
}

static void name_all(naming *now, const ow_made *made, size_t count, size_t parts)
{
    const ow_search *search = now->search;
    for (size_t i = 0; i < count; i++) {
        ow_missing *item = &now->items[now->count];
        *item = (ow_missing){.is_plug = made[i].plug, .part_count = parts};
        if (!find_end(search, ow_search_kind_end(search, made[i].from), &item->from) ||
            (!made[i].plug && !find_end(search, ow_search_kind_end(search, made[i].to), &item->to)))
            continue; /* nothing could be made that seals there */
        item->direct = made[i].at_source && made[i].to_port;
        now->made[now->count] = &made[i];
        now->choice[now->count] = parts_with(search, &made[i]);
        now->order[now->count] = (uint32_t)now->count;
        now->count++;
    }
}

/* One part made may do in several places: it is told once, whatever stands between the two in the order. */
static bool is_kept(const naming *now, size_t kept, const ow_missing *item)
{
    for (size_t i = 0; i < kept; i++)
        if (same_missing(&now->items[now->order[i]], item))
            return true;
    return false;
}

/* The first `most` different ones, with their words behind them in one block. */
static ow_status hand_over(const naming *now, size_t most, ow_missing **missing, size_t *count)
{
    const ow_context *context = now->search->context;
    size_t kept = 0;
    for (size_t i = 0; i < now->count && kept < most; i++)
        if (!is_kept(now, kept, &now->items[now->order[i]]))
            now->order[kept++] = now->order[i];
    if (kept == 0)
        return OW_NONE;
    ow_text words = ow_text_new(context);
    for (size_t i = 0; i < kept; i++) {
        const ow_missing *item = &now->items[now->order[i]];
        write_why(now->search, now->made[now->order[i]], item->part_count, &words);
        ow_text_char(&words, '\0');
    }
    ow_missing *block = NULL;
    ow_status status = ow_text_status(&words);
    if (status == OW_OK)
        block = ow_resize(context, NULL, kept * sizeof *block + words.length);
    if (block != NULL) {
        char *why = memcpy((char *)(block + kept), words.data, words.length);
        for (size_t i = 0; i < kept; i++, why += strlen(why) + 1) {
            block[i] = now->items[now->order[i]];
            block[i].why = why;
        }
        *missing = block;
        *count = kept;
    }
    ow_text_done(&words);
    return block == NULL ? OW_MEMORY : OW_OK;
}

ow_status ow_search_missing(ow_search *search, size_t most, ow_missing **missing, size_t *count)
{
    const ow_context *context = search->context;
    ow_made *made;
    size_t made_count, parts;
    ow_status status = ow_resolve_missing(search->resolve, &made, &made_count, &parts);
    if (status != OW_OK)
        return status;
    naming now = {search,
                  ow_new_array(context, made_count + 1, sizeof *now.items),
                  ow_new_array(context, made_count + 1, sizeof *now.made),
                  ow_new_array(context, made_count + 1, sizeof *now.choice),
                  ow_new_array(context, made_count + 1, sizeof *now.order),
                  0};
    status =
        now.items == NULL || now.made == NULL || now.choice == NULL || now.order == NULL ? OW_MEMORY : OW_OK;
    if (status == OW_OK) {
        name_all(&now, made, made_count, parts);
        status = ow_sort(context, now.order, now.count, compare_missing, &now);
    }
    if (status == OW_OK)
        status = hand_over(&now, most, missing, count);
    ow_release(context, now.order);
    ow_release(context, now.choice);
    ow_release(context, now.made);
    ow_release(context, now.items);
    ow_release(context, made);
    return status;
}

void ow_missing_free(const ow_context *context, ow_missing *missing, size_t count)
{
    (void)count;
    ow_release(context, missing);
}
