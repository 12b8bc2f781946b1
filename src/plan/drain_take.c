/* SPDX-License-Identifier: MIT */
/* Which return each outlet takes: no port of the engine twice, most outlets that do, least work, fewest
 * parts. */
#include <string.h>

#include "plan/planning.h"

#define NO_LAYOUT_PARTS 1000 /* worse than any layout */

typedef struct score { /* compared in this order: more, more, more, less, less */
    size_t outlets;    /* that got a port */
    size_t ok, clean;
    size_t work;
    size_t parts;
} score;

typedef struct choosing {
    ow_plan_drain *drain;
    size_t chosen[OW_PLAN_RETURNS], best[OW_PLAN_RETURNS];
    score now, best_score;
    bool any;
} choosing;

static bool is_port_free(const choosing *now, const ow_port *port)
{
    for (size_t index = 0; index < now->now.outlets; index++) {
        if (now->drain->returns[now->chosen[index]].port == port)
            return false;
    }
    return true;
}

static bool is_better(const score *a, const score *b)
{
    if (a->outlets != b->outlets)
        return a->outlets > b->outlets;
    if (a->ok != b->ok)
        return a->ok > b->ok;
    if (a->clean != b->clean)
        return a->clean > b->clean;
    return a->work != b->work ? a->work < b->work : a->parts < b->parts;
}

static score add_return(score sum, const ow_plan_return *home)
{
    sum.outlets++;
    sum.ok += home->ok;
    sum.clean += home->clean;
    sum.work += home->work;
    sum.parts += home->layout != NULL ? ow_layout_part_count(home->layout) : NO_LAYOUT_PARTS;
    return sum;
}

/* Tries every return of the outlet that begins at `first`, then of those behind it. Up to 3 outlets of 8
 * ports: at most 9 to the third power. */
static void choose(choosing *now, size_t first)
{
    ow_plan_drain *drain = now->drain;
    size_t past = first;
    if (first == drain->return_count) {
        if (!now->any || is_better(&now->now, &now->best_score)) {
            memcpy(now->best, now->chosen, sizeof now->best);
            now->best_score = now->now;
            now->any = true;
        }
        return;
    }
    while (past < drain->return_count &&
           drain->returns[past].outlet_number == drain->returns[first].outlet_number)
        past++;
    for (size_t index = first; index < past; index++) {
        if (!is_port_free(now, drain->returns[index].port))
            continue;
        score before = now->now;
        now->chosen[before.outlets] = index;
        now->now = add_return(before, &drain->returns[index]);
        choose(now, past);
        now->now = before;
    }
    choose(now, past); /* this outlet goes without */
}

static bool is_served(const ow_plan_drain *drain, size_t first)
{
    for (size_t index = first; index < drain->return_count; index++) {
        if (drain->returns[index].outlet_number == drain->returns[first].outlet_number &&
            drain->returns[index].taken)
            return true;
    }
    return false;
}

ow_status ow_plan_drain_take(ow_planning *planning)
{
    ow_plan_drain *drain = &planning->plan->drain;
    choosing now = {.drain = drain};
    ow_status status = OW_OK;
    choose(&now, 0);
    for (size_t index = 0; index < now.best_score.outlets; index++)
        drain->returns[now.best[index]].taken = true;
    for (size_t index = 0; index < drain->return_count && status == OW_OK; index++) {
        const ow_plan_return *home = &drain->returns[index];
        bool first = index == 0 || drain->returns[index - 1].outlet_number != home->outlet_number;
        if (first && !is_served(drain, index))
            status = ow_findings_add(&planning->plan->findings, "no-return", OW_ERROR, home->turbo->id, NULL,
                                     "every return is taken: none is left for %s:%s", home->turbo->id,
                                     home->outlet->name);
    }
    return status;
}
