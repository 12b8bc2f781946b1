/* SPDX-License-Identifier: MIT */
/* What each part of the feed costs: the losses of its pieces together, and the steps of bore beside it. */
#include <string.h>

#include "plan/planning.h"

#define NO_ROW ((size_t)-1)

static bool is_rise(const ow_piece_loss *loss)
{
    return strcmp(loss->kind, "rise") == 0;
}

/* A step of bore is put to its narrower side: the part before it where it widens, the one behind it where it
 * narrows. */
static bool belongs_before(const ow_piece_loss *loss)
{
    return strcmp(loss->kind, "expansion") == 0 || strcmp(loss->kind, "exit") == 0;
}

static void add_to_row(ow_plan_loss *row, const ow_piece_loss *loss)
{
    row->loss_pa += loss->loss_pa;
    if (loss->bore_m > 0.0 && (row->bore_m <= 0.0 || loss->bore_m < row->bore_m)) {
        row->bore_m = loss->bore_m;
        row->reynolds = loss->reynolds;
    }
}

/* Whether oil goes to more than one place: dead ends are no branches of this table. */
static bool is_forked(const ow_feed_result *result)
{
    size_t live = 0;
    for (size_t index = 0; index < result->load_count; index++)
        live += !result->loads[index].dead;
    return live > 1;
}

static void fill_rows(const ow_feed_result *result, ow_plan_feed *feed)
{
    bool forks = is_forked(result);
    double pending_pa = 0.0; /* of steps that belong to the part behind them */
    size_t row = NO_ROW;
    const char *branch = "";
    for (size_t index = 0; index < result->loss_count; index++) {
        const ow_piece_loss *loss = &result->losses[index];
        if (loss->loss_pa == 0.0) /* of a dead end */
            continue;
        const char *here = forks ? result->loss_branches[index] : "";
        if (strcmp(branch, here) != 0)
            row = NO_ROW;
        branch = here;
        if (loss->is_step) {
            *(belongs_before(loss) && row != NO_ROW ? &feed->parts[row].loss_pa : &pending_pa) +=
                loss->loss_pa;
            continue;
        }
        const char *name = is_rise(loss) ? "rise" : loss->name;
        if (row == NO_ROW || strcmp(feed->parts[row].part, name) != 0) {
            row = feed->part_count++;
            feed->parts[row] = (ow_plan_loss){.part = name, .branch = branch, .loss_pa = pending_pa};
            pending_pa = 0.0;
        }
        add_to_row(&feed->parts[row], loss);
    }
    if (row != NO_ROW)
        feed->parts[row].loss_pa += pending_pa;
}

ow_status ow_plan_feed_parts(ow_planning *planning, ow_plan_feed *feed)
{
    const ow_feed_result *hot = &feed->answer.results[feed->hot_rev];
    feed->parts = ow_arena_get_array(&planning->arena, hot->loss_count + 1, sizeof *feed->parts);
    if (feed->parts == NULL)
        return OW_MEMORY;
    fill_rows(hot, feed);
    feed->costliest = feed->part_count;
    for (size_t row = 0; row < feed->part_count; row++) {
        const ow_plan_loss *part = &feed->parts[row];
        if (part->bore_m > 0.0 &&
            (feed->costliest == feed->part_count || part->loss_pa > feed->parts[feed->costliest].loss_pa))
            feed->costliest = row;
    }
    if (feed->costliest == feed->part_count)
        return OW_OK;
    const ow_plan_loss *most = &feed->parts[feed->costliest];
    feed->limiting = ow_planning_words(planning, "%s, bore %.3g mm: %.3g bar of %.3g", most->part,
                                       most->bore_m * 1e3, most->loss_pa / 1e5, hot->loss_pa / 1e5);
    return feed->limiting == NULL ? OW_MEMORY : OW_OK;
}
