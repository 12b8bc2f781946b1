/* SPDX-License-Identifier: MIT */
/* The drain of a job: every return that the engine offers, resolved, reckoned along its route, ranked. */
#include <math.h>
#include <string.h>

#include "oilway/hose_material.h"
#include "plan/planning.h"

/* Hose cut over the length of its way: 5 to 8 % of slack between fixed ports (a US Navy engine-mechanics
 * manual). */
#define HOSE_SLACK 1.065

/* Where the most oil comes, hot, and what comes in the coldest state, at one turbo. */
typedef struct drain_flows {
    double hot_m3s, cold_m3s;
    ow_liquid hot, cold;
} drain_flows;

static bool is_asked_for(const ow_job *job, const ow_port *port)
{
    for (size_t index = 0; index < job->drain.to_count; index++) {
        if (strcmp(job->drain.to[index], port->name) == 0)
            return true;
    }
    return job->drain.to_count == 0;
}

static double load_flow(const ow_feed_result *result, const ow_machine *turbo)
{
    double most = 0.0;
    for (size_t index = 0; index < result->load_count; index++) {
        size_t length = strlen(turbo->id);
        if (!result->loads[index].dead && strncmp(result->loads[index].name, turbo->id, length) == 0 &&
            result->loads[index].flow_m3s > most)
            most = result->loads[index].flow_m3s;
    }
    return most;
}

/* From the feed where it was solved; else the typical load at its reference point, hot. */
static ow_status find_flows(ow_planning *planning, const ow_machine *turbo, drain_flows *flows)
{
    const ow_plan_feed *feed = &planning->plan->feed;
    const ow_job *job = planning->job;
    size_t coldest = 0;
    for (size_t index = 1; index < planning->state_count; index++) {
        if (planning->states[index].oil_c < planning->states[coldest].oil_c)
            coldest = index;
    }
    ow_status status = ow_oil_liquid(&feed->feed.oil, planning->states[planning->hot_rev].oil_c, &flows->hot);
    if (status == OW_OK)
        status = ow_oil_liquid(&feed->feed.oil, planning->states[coldest].oil_c, &flows->cold);
    if (status != OW_OK)
        return status;
    if (feed->solved) {
        flows->hot_m3s = load_flow(&feed->answer.results[planning->hot_rev], turbo);
        flows->cold_m3s = load_flow(&feed->answer.results[coldest], turbo);
    }
    if (flows->hot_m3s <= 0.0) {
        const ow_typical_load *typical =
            ow_typical_load_at(turbo->bearing == OW_BEARING_BALL ? OW_LOAD_BALL : OW_LOAD_JOURNAL_MEDIUM);
        flows->hot_m3s = typical->load.flow_m3s;
        flows->cold_m3s = ow_load_flow_m3s(&typical->load, &flows->cold, typical->load.pressure_pa);
    }
    if (job->drain.flow_m3s.said) {
        flows->cold_m3s *= job->drain.flow_m3s.value / flows->hot_m3s;
        flows->hot_m3s = job->drain.flow_m3s.value;
    }
    return OW_OK;
}

/* The route in points: the job's own, else the straight line to the port, else a plumb guess. */
static void find_route(ow_planning *planning, ow_plan_return *home)
{
    const ow_job_drain *drain = &planning->job->drain;
    if (drain->point_count >= 2) {
        memcpy(home->points, drain->points, drain->point_count * sizeof home->points[0]);
        home->point_count = drain->point_count;
        return;
    }
    home->straight = true;
    home->point_count = 2;
    home->points[0] = (ow_point){0.0, 0.0, 0.0};
    if (home->port->has_position) {
        const double *at = home->port->position_m;
        home->points[1] = (ow_point){at[0], at[1], at[2]};
        ow_assumptions_add(&planning->plan->assumptions, OW_MARK_ASSUMED,
                           ow_planning_words(planning, "way of the drain to %s", home->port->name),
                           "no route is given: the straight line to the port's position",
                           "%.0f mm down over %.0f mm", -at[2] * 1e3, hypot(at[0], at[1]) * 1e3);
        return;
    }
    home->points[1] = (ow_point){0.15, 0.0, -0.25};
    ow_assumptions_add(&planning->plan->assumptions, OW_MARK_ASSUMED,
                       ow_planning_words(planning, "way of the drain to %s", home->port->name),
                       "neither route nor position is given: assumption of this program",
                       "250 mm down over 150 mm");
}

static void add_segment(ow_plan_return *home, double bore_m, double length_m, double slope_rad)
{
    if (bore_m > 0.0 && length_m > 0.0 && home->segment_count < OW_ROUTE_POINTS_MAX)
        home->segments[home->segment_count++] = (ow_drain_segment){bore_m, length_m, slope_rad};
}

/* The rigid parts before or behind the hose, each a run of its own length and bore at the slope of its
 * neighbour. */
static void add_rigid(ow_plan_return *home, const size_t *path, size_t count, bool before, double slope_rad)
{
    const ow_layout *layout = home->layout;
    bool hose_passed = false;
    for (size_t index = count; index-- > 1;) {
        const ow_layout_node *node = &layout->nodes[path[index]];
        if (node->part == NULL)
            continue;
        if (ow_part_is_hose(node->part)) {
            hose_passed = true;
            continue;
        }
        if (hose_passed != before)
            add_segment(home,
                        ow_part_bore_m(node->part, node->enter, layout->nodes[path[index - 1]].parent_end),
                        node->part->length_m, slope_rad);
    }
}

/* Segments from the layout and the route: rigid parts, then the hose along the route, then rigid parts. */
static ow_status find_segments(ow_plan_return *home)
{
    ow_drain_segment runs[OW_ROUTE_POINTS_MAX];
    size_t path[OW_ROUTE_POINTS_MAX];
    size_t count = 0;
    size_t wrong = 0;
    const ow_layout *layout = home->layout;
    double hose_bore_m = ow_layout_narrowest_bore_m(layout);
    size_t node = 0;
    for (size_t index = 1; index < layout->node_count; index++) {
        if (layout->nodes[index].part == NULL)
            node = index;
        else if (ow_part_is_hose(layout->nodes[index].part))
            hose_bore_m = layout->nodes[index].part->leg_bore_m[0];
    }
    if (hose_bore_m <= 0.0)
        return OW_RANGE;
    ow_status status = ow_route_segments(home->points, home->point_count, hose_bore_m, runs, &wrong);
    if (status != OW_OK)
        return status;
    for (; node != OW_NODE_NONE && count < OW_ROUTE_POINTS_MAX; node = layout->nodes[node].parent)
        path[count++] = node;
    size_t run_count = home->point_count - 1;
    add_rigid(home, path, count, true, runs[0].slope_rad);
    for (size_t run = 0; run < run_count; run++)
        add_segment(home, runs[run].bore_m, runs[run].length_m, runs[run].slope_rad);
    add_rigid(home, path, count, false, runs[run_count - 1].slope_rad);
    return OW_OK;
}

static double outlet_bore(const ow_plan_return *home)
{
    double bore_m = home->outlet->bore_m;
    if (home->segment_count > 0 && (bore_m <= 0.0 || home->segments[0].bore_m < bore_m))
        bore_m = home->segments[0].bore_m;
    return bore_m;
}

static ow_status reckon(ow_planning *planning, ow_plan_return *home)
{
    drain_flows flows = {0};
    double aeration = planning->plan->drain.aeration;
    size_t governing = 0;
    ow_status status = find_flows(planning, home->turbo, &flows);
    if (status == OW_OK)
        status = find_segments(home);
    if (status != OW_OK || home->segment_count == 0)
        return status == OW_OK ? OW_RANGE : status;
    double outlet_m = home->outlet->bore_m > 0.0 ? home->outlet->bore_m : 0.0;
    home->flow_m3s = flows.hot_m3s;
    status = ow_drain_route(home->segments, home->segment_count, outlet_m, flows.hot_m3s * aeration,
                            &flows.hot, home->hot, &governing);
    home->governing = governing;
    if (status == OW_OK)
        status = ow_drain_route(home->segments, home->segment_count, outlet_m, flows.cold_m3s * aeration,
                                &flows.cold, home->cold, &governing);
    if (status != OW_OK)
        return status;
    double bore_m = outlet_bore(home);
    home->pool_m = fmax(ow_pool_weir_m(bore_m, flows.hot_m3s * aeration),
                        ow_pool_orifice_m(bore_m, flows.hot_m3s * aeration));
    const ow_drain_segment *flattest = &home->segments[home->governing];
    ow_drain_ask ask = {flattest->bore_m, flattest->slope_rad, flows.hot_m3s * aeration, flows.hot};
    home->least_bore_m = OW_NOT_SAID;
    home->least_slope_rad = OW_NOT_SAID;
    if (flattest->slope_rad > 0.0 && ow_drain_least_bore_m(&ask, &home->least_bore_m) != OW_OK)
        home->least_bore_m = OW_NOT_SAID;
    if (flattest->slope_rad > 0.0 && ow_drain_least_slope_rad(&ask, &home->least_slope_rad) != OW_OK)
        home->least_slope_rad = OW_NOT_SAID;
    home->reckoned = true;
    return OW_OK;
}

/* A class that does not stand oil is judged, not used: the rest is resolved with what does. */
static bool stands_oil(const char *hose_class)
{
    const ow_hose_material *material = hose_class != NULL ? ow_hose_material_find(hose_class) : NULL;
    return hose_class != NULL && (material == NULL || material->oil != OW_STANDS_NOT);
}

static ow_status make_return(ow_planning *planning, ow_plan_return *home)
{
    const ow_job *job = planning->job;
    const char *from = ow_planning_words(planning, "%s:%s", home->turbo->id, home->outlet->name);
    const char *to = ow_planning_words(planning, "%s:%s", job->engine->id, home->port->name);
    home->findings = ow_findings_new(planning->context);
    if (from == NULL || to == NULL)
        return OW_MEMORY;
    ow_ask_words words = ow_planning_ask(planning, from, to);
    ow_status status = OW_OK;
    find_route(planning, home);
    if (stands_oil(job->drain.hose))
        status = ow_planning_other_hoses(planning, job->drain.hose, &words.without, &words.without_count);
    double length_m = 0.0;
    for (size_t index = 1; index < home->point_count; index++) {
        const ow_point *a = &home->points[index - 1];
        const ow_point *b = &home->points[index];
        length_m += sqrt((b->x_m - a->x_m) * (b->x_m - a->x_m) + (b->y_m - a->y_m) * (b->y_m - a->y_m) +
                         (b->z_m - a->z_m) * (b->z_m - a->z_m));
    }
    length_m *= HOSE_SLACK;
    words.hose = ow_planning_words(planning, "%.9g m", length_m > 0.01 ? length_m : 0.01);
    if (status == OW_OK)
        status = ow_planning_answer(planning, &words, &home->asks, &home->answers, &home->layout);
    home->answered = status == OW_OK;
    if (status == OW_OK)
        status = ow_planning_judge_answer(planning, &home->answers, to, &home->findings);
    if (status == OW_OK && home->layout != NULL) {
        status = reckon(planning, home);
        if (status == OW_RANGE)
            status = ow_findings_add(
                &home->findings, "not-reckoned", OW_WARNING, to, NULL,
                "the drain is not reckoned: a bore is not said or a figure lies outside what the "
                "formulas can work in");
    }
    if (status == OW_OK)
        status = ow_plan_return_judge(planning, home);
    home->ok = !ow_findings_have(&home->findings, OW_ERROR);
    return status;
}

static bool is_better(const ow_plan_return *a, const ow_plan_return *b)
{
    if (a->ok != b->ok)
        return a->ok;
    if ((a->layout != NULL) != (b->layout != NULL))
        return a->layout != NULL;
    if (a->layout == NULL)
        return false;
    double a_fill = a->reckoned ? a->hot[a->governing].flow.fill : 1.0;
    double b_fill = b->reckoned ? b->hot[b->governing].flow.fill : 1.0;
    size_t a_parts = ow_layout_part_count(a->layout);
    size_t b_parts = ow_layout_part_count(b->layout);
    return a_parts != b_parts ? a_parts < b_parts : a_fill < b_fill;
}

/* Returns of one turbo are put in order among themselves; insertion keeps equals as the engine lists them. */
static void rank(ow_plan_return *returns, size_t count)
{
    for (size_t index = 1; index < count; index++) {
        for (size_t at = index; at > 0 && is_better(&returns[at], &returns[at - 1]); at--) {
            ow_plan_return moved = returns[at];
            returns[at] = returns[at - 1];
            returns[at - 1] = moved;
        }
    }
}

static ow_status make_outlet(ow_planning *planning, const ow_machine *turbo, const ow_port *outlet)
{
    ow_plan_drain *drain = &planning->plan->drain;
    const ow_machine *engine = planning->job->engine;
    size_t first = drain->return_count;
    ow_status status = OW_OK;
    for (size_t index = 0; index < engine->port_count && status == OW_OK; index++) {
        const ow_port *port = &engine->ports[index];
        if (port->circuit != OW_DRAIN || !is_asked_for(planning->job, port) ||
            drain->return_count == OW_PLAN_RETURNS)
            continue;
        ow_plan_return *home = &drain->returns[drain->return_count++];
        home->turbo = turbo;
        home->outlet = outlet;
        home->port = port;
        status = make_return(planning, home);
    }
    rank(&drain->returns[first], drain->return_count - first);
    if (status == OW_OK && drain->return_count == first)
        return ow_findings_add(&planning->plan->findings, "no-return", OW_ERROR, engine->id, NULL,
                               "%s offers no return for the oil of %s", engine->id, turbo->id);
    return status;
}

/* One return of each outlet, no engine port twice: the choice with the most that do, then the fewest parts.
 */
typedef struct choosing {
    ow_plan_drain *drain;
    size_t chosen[OW_PLAN_RETURNS], best[OW_PLAN_RETURNS];
    size_t count, best_count; /* outlets that got a port */
    size_t ok, best_ok;
    size_t parts, best_parts;
    bool any;
} choosing;

static bool is_port_free(const choosing *now, const ow_port *port)
{
    for (size_t index = 0; index < now->count; index++) {
        if (now->drain->returns[now->chosen[index]].port == port)
            return false;
    }
    return true;
}

static void keep_best(choosing *now)
{
    bool better = !now->any || now->count > now->best_count ||
                  (now->count == now->best_count && now->ok > now->best_ok) ||
                  (now->count == now->best_count && now->ok == now->best_ok && now->parts < now->best_parts);
    if (!better)
        return;
    memcpy(now->best, now->chosen, sizeof now->best);
    now->best_count = now->count;
    now->best_ok = now->ok;
    now->best_parts = now->parts;
    now->any = true;
}

/* Tries every return of the outlet that begins at `first`, then of those behind it. Up to 3 outlets of 8
 * ports. */
static void choose(choosing *now, size_t first)
{
    ow_plan_drain *drain = now->drain;
    size_t past = first;
    if (first == drain->return_count) {
        keep_best(now);
        return;
    }
    while (past < drain->return_count && drain->returns[past].outlet == drain->returns[first].outlet)
        past++;
    for (size_t index = first; index < past; index++) {
        const ow_plan_return *home = &drain->returns[index];
        size_t parts = home->layout != NULL ? ow_layout_part_count(home->layout) : 1000;
        if (!is_port_free(now, home->port))
            continue;
        now->chosen[now->count++] = index;
        now->ok += home->ok;
        now->parts += parts;
        choose(now, past);
        now->count--;
        now->ok -= home->ok;
        now->parts -= parts;
    }
    choose(now, past); /* this outlet goes without */
}

static ow_status take_returns(ow_planning *planning)
{
    ow_plan_drain *drain = &planning->plan->drain;
    choosing now = {.drain = drain};
    ow_status status = OW_OK;
    choose(&now, 0);
    for (size_t index = 0; index < now.best_count; index++)
        drain->returns[now.best[index]].taken = true;
    for (size_t index = 0; index < drain->return_count && status == OW_OK; index++) {
        const ow_plan_return *home = &drain->returns[index];
        bool first = index == 0 || drain->returns[index - 1].outlet != home->outlet;
        bool taken = false;
        for (size_t other = 0; other < drain->return_count; other++)
            taken = taken || (drain->returns[other].outlet == home->outlet && drain->returns[other].taken);
        if (first && !taken)
            status = ow_findings_add(&planning->plan->findings, "no-return", OW_ERROR, home->turbo->id, NULL,
                                     "every return is taken: none is left for %s:%s", home->turbo->id,
                                     home->outlet->name);
    }
    return status;
}

ow_status ow_plan_drain_make(ow_planning *planning)
{
    ow_plan_drain *drain = &planning->plan->drain;
    const ow_job *job = planning->job;
    ow_status status = OW_OK;
    drain->returns = ow_arena_get_array(&planning->arena, OW_PLAN_RETURNS, sizeof *drain->returns);
    if (drain->returns == NULL)
        return OW_MEMORY;
    drain->aeration = ow_planning_value(planning, &job->drain.aeration, OW_DRAIN_AERATION,
                                        "froth over oil in the drain", 1.0, "volumes", OW_MARK_ASSUMED,
                                        "half gas by volume; no published figure was found");
    for (size_t turbo = 0; turbo < job->turbo_count && status == OW_OK; turbo++) {
        for (size_t index = 0; index < job->turbos[turbo]->port_count && status == OW_OK; index++) {
            if (job->turbos[turbo]->ports[index].circuit == OW_DRAIN)
                status = make_outlet(planning, job->turbos[turbo], &job->turbos[turbo]->ports[index]);
        }
    }
    return status == OW_OK ? take_returns(planning) : status;
}
