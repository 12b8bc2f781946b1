/* SPDX-License-Identifier: MIT */
/*
 * The drain that has to be made, where no return of the engine does: plate or stub for the turbo, hose, and
 * the hole at the engine, tapped or with a bung welded in, as far as the shop's own fittings reach.
 */
#include <stdio.h>
#include <string.h>

#include "plan/making.h"

/* Holes that a drain is led into, the plainest that is wide enough first; a parallel thread does not split a
 * thin wall (common practice). */
static const char *const holes[] = {
    "M18x1.5 female washer", "M22x1.5 female washer", "M26x1.5 female washer", "G3/4 female washer",
    "1/2-14 NPT female",     "3/4-14 NPT female",     "1-11.5 NPT female",     "Rc3/4 female",
};

/* The ids of a rigid way between two ports, joined by " + "; NULL if there is none. */
static ow_status find_way(ow_making *making, const char *from, const char *to, double bore_m,
                          const char **ids)
{
    ow_planning *planning = making->planning;
    ow_ask_words words = ow_planning_ask(planning, from, to);
    ow_ask_set set;
    ow_answers answers;
    const ow_layout *layout = NULL;
    words.circuit = "drain";
    words.flexible = "no";
    words.closing = "no";
    words.bore = ow_planning_words(planning, "%.9g m", bore_m);
    *ids = NULL;
    if (words.bore == NULL)
        return OW_MEMORY;
    ow_status status = ow_planning_answer(planning, &words, &set, &answers, &layout);
    if (status != OW_OK)
        return status;
    ow_text text = ow_text_new(planning->context);
    for (size_t node = 1; layout != NULL && node < layout->node_count; node++) {
        if (layout->nodes[node].part != NULL)
            ow_text_format(&text, "%s%s", text.length > 0 ? " + " : "", layout->nodes[node].part->id);
    }
    const char *parts = ow_arena_keep(&planning->arena, &text);
    status = parts == NULL ? OW_MEMORY : OW_OK;
    if (parts != NULL && parts[0] != '\0')
        *ids = parts;
    ow_answers_done(&answers);
    ow_ask_set_done(&set);
    return status;
}

/* ---- the hose -------------------------------------------------------------------------------- */

static bool is_drain_hose(const ow_making *making, const ow_part *part)
{
    const char *wanted = making->planning->job->drain.hose;
    const ow_hose_material *asked = wanted != NULL ? ow_hose_material_find(wanted) : NULL;
    bool is_asked = wanted == NULL || (asked != NULL && asked->oil == OW_STANDS_NOT) ||
                    strcmp(part->ends[0].name, wanted) == 0;
    return part->kind == OW_HOSE && part->ends[0].form == OW_FORM_HOSE &&
           part->ends[0].size_unit == OW_SIZE_UM && (ow_part_standing(part).fluids & OW_FLUID_OIL) != 0 &&
           is_asked;
}

/* The next wider hose than `than_m`; NULL if there is none. */
static const ow_part *next_hose(const ow_making *making, double than_m)
{
    const ow_part *best = NULL;
    for (size_t index = 0; index < ow_catalog_part_count(making->planning->catalog); index++) {
        const ow_part *part = ow_catalog_part_at(making->planning->catalog, index);
        if (is_drain_hose(making, part) && part->leg_bore_m[0] > than_m + 1e-6 &&
            (best == NULL || part->leg_bore_m[0] < best->leg_bore_m[0]))
            best = part;
    }
    return best;
}

/* The narrowest hose that a fitting of the shop leads the outlet into without narrowing; else the narrowest
 * that a made pipe, whose wall takes OW_MADE_WALL_M on each side, carries full bore. */
static ow_status choose_hose(ow_making *making)
{
    ow_plan_made *made = making->made;
    const char *outlet = ow_planning_words(making->planning, "%s:%s", made->turbo->id, made->outlet->name);
    /* A fitting cannot be wider than the outlet's own hole. */
    double own_m = made->outlet->bore_m;
    double outlet_m = own_m > 0.0 && own_m < made->bore_m ? own_m : made->bore_m;
    ow_status status = outlet == NULL ? OW_MEMORY : OW_OK;
    const ow_part *hose = next_hose(making, made->bore_m - 2e-6);
    for (; hose != NULL && status == OW_OK && made->fitting == NULL;
         hose = next_hose(making, hose->leg_bore_m[0])) {
        char words[OW_END_TEXT_SIZE];
        const char *end = ow_planning_words(making->planning, "%s", ow_end_name(&hose->ends[0], words));
        if (end == NULL)
            return OW_MEMORY;
        status = find_way(making, outlet, end, outlet_m, &made->fitting);
        bool fits_pipe = hose->leg_bore_m[0] - 2.0 * OW_MADE_WALL_M >= made->bore_m - 1e-6;
        if (made->fitting == NULL && (!fits_pipe || making->hose_end != NULL))
            continue;
        making->hose_end = end;
        made->hose_mm = (int)(hose->leg_bore_m[0] * 1e3 + 0.5);
        made->hose = hose->ends[0].name;
    }
    return status;
}

/* ---- the hole at the engine --------------------------------------------------------------------- */

static ow_status choose_hole(ow_making *making)
{
    ow_plan_made *made = making->made;
    ow_status status = OW_OK;
    for (size_t index = 0; index < sizeof holes / sizeof holes[0] && status == OW_OK && made->thread == NULL;
         index++) {
        ow_end end;
        status = find_way(making, making->hose_end, holes[index], made->bore_m, &made->tapped_with);
        if (status == OW_OK && made->tapped_with != NULL && ow_end_read(holes[index], &end, NULL) == OW_OK &&
            ow_end_thread(&end, &making->thread) &&
            ow_thread_tapping(&making->thread, &made->tapping) == OW_OK)
            made->thread = holes[index];
    }
    return status;
}

/* The smallest bung or stub to be welded that takes the hose. */
static ow_status choose_weld(ow_making *making)
{
    const ow_catalog *catalog = making->planning->catalog;
    int32_t smaller = 0;
    ow_status status = OW_OK;
    while (status == OW_OK && making->made->welded_with == NULL) {
        const ow_end *best = NULL;
        for (size_t index = 0; index < ow_catalog_part_count(catalog); index++) {
            const ow_part *part = ow_catalog_part_at(catalog, index);
            for (size_t at = 0; at < part->end_count && (part->kind == OW_BUNG || part->kind == OW_STUB);
                 at++) {
                const ow_end *end = &part->ends[at];
                if (end->form == OW_FORM_WELD && end->size > smaller &&
                    (best == NULL || end->size < best->size))
                    best = end;
            }
        }
        if (best == NULL)
            return OW_OK;
        char words[OW_END_TEXT_SIZE];
        const char *end = ow_planning_words(making->planning, "%s", ow_end_name(best, words));
        smaller = best->size;
        making->weld_mm = best->size / 1e3;
        status = end == NULL ? OW_MEMORY
                             : find_way(making, making->hose_end, end, making->made->bore_m,
                                        &making->made->welded_with);
    }
    return status;
}

/* ---- all of it ------------------------------------------------------------------------------------ */

static double widest(double a, double b)
{
    return a > b ? a : b;
}

static ow_status make(ow_planning *planning, const ow_machine *turbo, const ow_port *outlet,
                      ow_plan_made *made)
{
    ow_making making = {.planning = planning, .made = made};
    ow_plan_flows flows;
    const ow_job_drain *drain = &planning->job->drain;
    made->turbo = turbo;
    made->outlet = outlet;
    made->bore_m = widest(outlet->bore_m, OW_DRAIN_BORE_M);
    made->lowest_m = drain->oil_level_m.said ? -drain->oil_level_m.value : OW_NOT_SAID;
    made->least_slope_rad = OW_NOT_SAID;
    ow_status status = choose_hose(&making);
    if (status == OW_OK && making.hose_end != NULL)
        status = choose_hole(&making);
    if (status == OW_OK && making.hose_end != NULL)
        status = choose_weld(&making);
    if (status != OW_OK)
        return status;
    if (ow_plan_drain_flows(planning, turbo, &flows) == OW_OK) {
        ow_drain_ask ask = {made->bore_m, 1.0, flows.hot_m3s * planning->plan->drain.aeration, flows.hot};
        if (ow_drain_least_slope_rad(&ask, &made->least_slope_rad) != OW_OK)
            made->least_slope_rad = OW_NOT_SAID;
    }
    return ow_plan_made_steps(&making);
}

static bool has_return(const ow_plan_drain *drain, size_t number)
{
    for (size_t index = 0; index < drain->return_count; index++) {
        const ow_plan_return *home = &drain->returns[index];
        if (home->outlet_number == number && home->taken && home->ok && home->layout != NULL)
            return true;
    }
    return false;
}

ow_status ow_plan_drain_made(ow_planning *planning)
{
    const ow_job *job = planning->job;
    ow_plan_drain *drain = &planning->plan->drain;
    ow_status status = OW_OK;
    size_t number = 0;
    for (size_t turbo = 0; turbo < job->turbo_count && status == OW_OK; turbo++) {
        const ow_machine *machine = job->turbos[turbo];
        for (size_t index = 0; index < machine->port_count && status == OW_OK; index++) {
            if (machine->ports[index].circuit != OW_DRAIN || has_return(drain, number++))
                continue;
            if (drain->made == NULL)
                drain->made = ow_arena_get_array(&planning->arena, OW_PLAN_RETURNS, sizeof *drain->made);
            if (drain->made == NULL)
                return OW_MEMORY;
            if (drain->made_count < OW_PLAN_RETURNS)
                status = make(planning, machine, &machine->ports[index], &drain->made[drain->made_count++]);
        }
    }
    return status;
}
