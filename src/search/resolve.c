/* SPDX-License-Identifier: MIT */
#include "search/resolve.h"

#include "base/progress.h"
#include "search/rank.h"
#include "search/resolve_inner.h"
#include "search/tree.h"

#define LAYOUTS_BETWEEN 256 /* tellings of progress */

ow_status ow_resolve_new(const ow_context *context, const ow_net_index *net, const ow_search_input *ask,
                         ow_resolve **resolve)
{
    ow_resolve *made = ow_new_array(context, 1, sizeof *made);
    if (made == NULL)
        return OW_MEMORY;
    made->context = context;
    made->net = net;
    made->ask = ask;
    ow_status status = ow_table_new(context, net, ask, OW_EVENT_NONE, 0, false, &made->table);
    if (status != OW_OK) {
        ow_release(context, made);
        return status;
    }
    *resolve = made;
    return OW_OK;
}

void ow_resolve_free(ow_resolve *resolve)
{
    if (resolve == NULL)
        return;
    const ow_context *context = resolve->context;
    for (size_t i = 0; i < resolve->listed_count; i++)
        ow_release(context, resolve->listed[i].shapes);
    ow_release(context, resolve->listed);
    ow_rank_done(&resolve->rank);
    ow_table_free(resolve->table);
    ow_release(context, resolve);
}

ow_status ow_resolve_best_parts(const ow_resolve *resolve, size_t *parts, bool *capped)
{
    size_t best = resolve->table->best;
    *capped = resolve->table->capped;
    if (best == OW_TABLE_NONE)
        return OW_NONE;
    *parts = best;
    return OW_OK;
}

ow_status ow_rank_source(ow_rank *rank, size_t number, const ow_derivation **derivation)
{
    const ow_table *table = rank->table;
    ow_rank_state *state;
    ow_status status = ow_rank_state_of(rank, false, table->all, 0, table->ask->source, &state);
    return status == OW_OK ? ow_rank_get(rank, state, number, derivation) : status;
}

static size_t most_parts(const ow_resolve *resolve)
{
    size_t above = resolve->ask->parts_above == 0 ? OW_LIST_USUAL_ABOVE : resolve->ask->parts_above;
    size_t best = resolve->table->best;
    return above > OW_SEARCH_PARTS_MAX - best ? OW_SEARCH_PARTS_MAX : best + above;
}

ow_status ow_resolve_complete(ow_resolve *resolve)
{
    if (resolve->table->whole)
        return OW_OK;
    ow_rank_done(&resolve->rank); /* its states know the table as it was */
    return ow_table_complete(resolve->table);
}

/* The derivation of the next number. All but the first need the whole table. */
static ow_status look_at_next(ow_resolve *resolve, const ow_derivation **derivation)
{
    bool first = resolve->looked == 0 && !resolve->table->torn;
    ow_status status = first ? OW_OK : ow_resolve_complete(resolve);
    if (status == OW_OK && resolve->rank.table == NULL)
        status = ow_rank_new(resolve->table, most_parts(resolve), &resolve->rank);
    if (status == OW_OK)
        status = ow_rank_source(&resolve->rank, resolve->looked, derivation);
    if (status == OW_OK)
        resolve->looked++;
    else if (status != OW_NONE)
        ow_rank_done(&resolve->rank); /* half done: begun anew if asked again */
    return status;
}

static bool holds_listed(const ow_resolve *resolve, const uint32_t *bill, size_t count)
{
    for (size_t i = 0; i < resolve->listed_count; i++)
        if (ow_tree_bill_holds(bill, count, resolve->listed[i].shapes, resolve->listed[i].count))
            return true;
    return false;
}

/* OW_OK: it is really different, and remembered. OW_NONE: it is not. */
static ow_status note_bill(ow_resolve *resolve, const ow_derivation *derivation)
{
    const ow_context *context = resolve->context;
    size_t count = derivation->outside;
    ow_status status = ow_grow(context, (void **)&resolve->listed, &resolve->listed_capacity,
                               resolve->listed_count + 1, sizeof *resolve->listed);
    uint32_t *bill = status == OW_OK ? ow_new_array(context, count + 1, sizeof *bill) : NULL;
    if (bill == NULL) {
        resolve->looked--; /* to be looked at again */
        return OW_MEMORY;
    }
    ow_tree_bill(resolve->table, derivation, bill);
    if (holds_listed(resolve, bill, count)) {
        ow_release(context, bill);
        return OW_NONE;
    }
    resolve->listed[resolve->listed_count++] = (ow_listed_bill){bill, count};
    return OW_OK;
}

/* A layout that could not be written is not listed yet. */
static ow_status write_listed(ow_resolve *resolve, const ow_derivation *derivation, ow_tree *tree)
{
    ow_status status = ow_tree_write(resolve->table, derivation, tree);
    if (status == OW_OK)
        return OW_OK;
    ow_release(resolve->context, resolve->listed[--resolve->listed_count].shapes);
    resolve->looked--;
    return status;
}

ow_status ow_resolve_next(ow_resolve *resolve, ow_tree *tree)
{
    size_t looked_most = resolve->ask->looked_most == 0 ? OW_LIST_USUAL_LOOKED : resolve->ask->looked_most;
    if (resolve->table->best == OW_TABLE_NONE)
        resolve->end = OW_LIST_ALL;
    while (resolve->end == OW_LIST_GOES_ON) {
        if (resolve->looked >= looked_most) {
            resolve->end = OW_LIST_LOOKED;
            break;
        }
        const ow_derivation *derivation;
        ow_status status = OW_OK;
        if (resolve->looked % LAYOUTS_BETWEEN == LAYOUTS_BETWEEN - 1)
            status = ow_progress_tell(resolve->context, "looking for the next best", "layouts",
                                      resolve->looked, 0);
        if (status == OW_OK)
            status = look_at_next(resolve, &derivation);
        if (status == OW_NONE)
            resolve->end = resolve->rank.cut ? OW_LIST_PARTS_ABOVE : OW_LIST_ALL;
        else if (status == OW_OK)
            status = note_bill(resolve, derivation);
        if (status == OW_OK)
            return write_listed(resolve, derivation, tree);
        if (status != OW_NONE)
            return status;
    }
    return OW_NONE;
}

ow_list_end ow_resolve_end(const ow_resolve *resolve)
{
    return resolve->end;
}

ow_status ow_forced_find(const ow_context *context, const ow_net_index *net, const ow_search_input *ask,
                         size_t part, ow_tree *tree)
{
    if (part >= net->part_count)
        return OW_RANGE;
    ow_table *table;
    ow_status status = ow_table_new(context, net, ask, OW_EVENT_FORCED, net->place[part], false, &table);
    if (status != OW_OK)
        return status;
    ow_rank rank = {.table = NULL};
    const ow_derivation *derivation;
    if (table->best == OW_TABLE_NONE)
        status = OW_NONE;
    else if ((status = ow_rank_new(table, OW_SEARCH_PARTS_MAX, &rank)) == OW_OK &&
             (status = ow_rank_source(&rank, 0, &derivation)) == OW_OK)
        status = ow_tree_write(table, derivation, tree);
    ow_rank_done(&rank);
    ow_table_free(table);
    return status;
}

ow_status ow_resolve_forced(ow_resolve *resolve, size_t part, ow_tree *tree)
{
    return ow_forced_find(resolve->context, resolve->net, resolve->ask, part, tree);
}
