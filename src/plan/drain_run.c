/* SPDX-License-Identifier: MIT */
/* One return reckoned: its route, the run through each of its parts, what fills them, what stands over the
 * outlet. */
#include <math.h>
#include <string.h>

#include "plan/planning.h"

#define GUESS_ACROSS_M 0.15 /* where neither route nor position is known: an assumption, listed */
#define GUESS_DOWN_M 0.25

/* ---- what comes ------------------------------------------------------------------------------ */

/* Oil of one turbo in a state, shared by its outlets. */
static double outlet_flow(const ow_planning *planning, const ow_feed_result *result, const ow_machine *turbo)
{
    size_t length = strlen(turbo->id), outlets = 0;
    double sum = 0.0;
    for (size_t index = 0; index < result->load_count; index++) {
        const ow_feed_load *load = &result->loads[index];
        if (!load->dead && strncmp(load->name, turbo->id, length) == 0 && load->name[length] == ':')
            sum += load->flow_m3s;
    }
    for (size_t index = 0; index < planning->job->turbo_count; index++) {
        const ow_machine *other = planning->job->turbos[index];
        for (size_t port = 0; strcmp(other->id, turbo->id) == 0 && port < other->port_count; port++)
            outlets += other->ports[port].circuit == OW_DRAIN;
    }
    return outlets > 0 ? sum / (double)outlets : sum;
}

static size_t coldest_state(const ow_planning *planning)
{
    size_t coldest = 0;
    for (size_t index = 1; index < planning->state_count; index++) {
        if (planning->states[index].oil_c < planning->states[coldest].oil_c)
            coldest = index;
    }
    return coldest;
}

/* From the feed where it was solved; else the typical load at its reference point, hot. */
ow_status ow_plan_drain_flows(ow_planning *planning, const ow_machine *turbo, ow_plan_flows *flows)
{
    const ow_plan_feed *feed = &planning->plan->feed;
    const ow_said *said = &planning->job->drain.flow_m3s;
    size_t coldest = coldest_state(planning);
    *flows = (ow_plan_flows){0};
    ow_status status = ow_oil_liquid(&planning->oil, planning->states[planning->hot_rev].oil_c, &flows->hot);
    if (status == OW_OK)
        status = ow_oil_liquid(&planning->oil, planning->states[coldest].oil_c, &flows->cold);
    if (status != OW_OK)
        return status;
    if (feed->solved) {
        flows->hot_m3s = outlet_flow(planning, &feed->answer.results[planning->hot_rev], turbo);
        flows->cold_m3s = outlet_flow(planning, &feed->answer.results[coldest], turbo);
    }
    if (flows->hot_m3s <= 0.0) {
        const ow_typical_load *typical = ow_plan_typical_load(turbo);
        flows->hot_m3s = ow_load_flow_m3s(&typical->load, &flows->hot, typical->load.pressure_pa);
        flows->cold_m3s = ow_load_flow_m3s(&typical->load, &flows->cold, typical->load.pressure_pa);
        ow_planning_assume(planning, typical->mark,
                           ow_planning_words(planning, "oil that %s gives back, hot", turbo->id),
                           typical->source, "%.3g L/min (%s)", flows->hot_m3s * 60000.0, typical->title);
    }
    if (said->said) {
        flows->cold_m3s *= said->value / flows->hot_m3s;
        flows->hot_m3s = said->value;
    }
    flows->hot_m3s = fmax(flows->hot_m3s, OW_DRAIN_FLOW_LOW_M3S);
    flows->cold_m3s = fmax(flows->cold_m3s, OW_DRAIN_FLOW_LOW_M3S);
    return OW_OK;
}

/* ---- where it runs --------------------------------------------------------------------------- */

static void assume_way(ow_planning *planning, const ow_plan_return *home, const char *source)
{
    const char *what = ow_planning_words(planning, "way of the drain to %s", home->port->name);
    const ow_point *end = &home->points[1];
    ow_planning_assume(planning, OW_MARK_ASSUMED, what, source, "%.0f mm down over %.0f mm", -end->z_m * 1e3,
                       hypot(end->x_m, end->y_m) * 1e3);
}

/* The route in points: the job's own, else the straight line to the port, else a guess. */
void ow_plan_drain_route(ow_planning *planning, ow_plan_return *home)
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
        static const double origin[3] = {0.0, 0.0, 0.0};
        const double *at = home->port->position_m;
        const double *from = home->outlet->has_position ? home->outlet->position_m : origin;
        home->points[1] = (ow_point){at[0] - from[0], at[1] - from[1], at[2] - from[2]};
        assume_way(planning, home, "no route is given: the straight line to the port's position");
        return;
    }
    home->points[1] = (ow_point){GUESS_ACROSS_M, 0.0, -GUESS_DOWN_M};
    assume_way(planning, home, "neither route nor position is given: assumption of this program");
}

double ow_plan_drain_length_m(const ow_plan_return *home)
{
    double length_m = 0.0;
    for (size_t index = 1; index < home->point_count; index++) {
        const ow_point *a = &home->points[index - 1];
        const ow_point *b = &home->points[index];
        length_m += hypot(hypot(b->x_m - a->x_m, b->y_m - a->y_m), b->z_m - a->z_m);
    }
    return length_m;
}

/* OW_LIMIT: there are too many. */
static ow_status add_segment(ow_plan_return *home, const char *part, double bore_m, double length_m,
                             double slope_rad)
{
    if (bore_m <= 0.0 || length_m <= 0.0)
        return OW_OK;
    if (home->segment_count == OW_ROUTE_POINTS_MAX)
        return OW_LIMIT;
    home->segment_parts[home->segment_count] = part;
    home->segments[home->segment_count++] = (ow_drain_segment){bore_m, length_m, slope_rad};
    return OW_OK;
}

/* The way through a layout, from the port back to the source, and where its hoses lie on it. */
typedef struct drain_way {
    const ow_layout *layout;
    size_t path[OW_ROUTE_POINTS_MAX]; /* nodes */
    size_t count;
    size_t first, last; /* places of the hose nearest the source and of that nearest the port; 0: none */
    size_t hoses;
} drain_way;

static drain_way find_way(const ow_layout *layout)
{
    drain_way way = {.layout = layout};
    size_t node = 0;
    for (size_t index = 1; index < layout->node_count; index++)
        if (layout->nodes[index].part == NULL)
            node = index;
    for (; node != OW_NODE_NONE && way.count < OW_ROUTE_POINTS_MAX; node = layout->nodes[node].parent) {
        const ow_part *part = layout->nodes[node].part;
        if (part != NULL && ow_part_is_hose(part)) {
            way.first = way.count;
            way.last = way.hoses++ == 0 ? way.count : way.last;
        }
        way.path[way.count++] = node;
    }
    return way;
}

/* The part at a place of the way; NULL: the source, the port, or nothing. */
static const ow_part *part_at(const drain_way *way, size_t place)
{
    return place < way->count ? way->layout->nodes[way->path[place]].part : NULL;
}

static double bore_at(const drain_way *way, size_t place)
{
    const ow_layout_node *node = &way->layout->nodes[way->path[place]];
    return ow_part_bore_m(node->part, node->enter, way->layout->nodes[way->path[place - 1]].parent_end);
}

/* The rigid parts before the first hose or behind the last, each a run of its own length and bore at the
 * slope of its neighbour. */
static ow_status add_rigid(ow_plan_return *home, const drain_way *way, bool before, double slope_rad)
{
    ow_status status = OW_OK;
    size_t place = before ? way->count : way->last, least = before ? way->first + 1 : 1;
    while (status == OW_OK && place-- > least) {
        const ow_part *part = part_at(way, place);
        if (part != NULL)
            status = add_segment(home, part->id, bore_at(way, place), part->length_m, slope_rad);
    }
    return status;
}

/* How much of the way they take up. */
static double rigid_length(const drain_way *way, bool before)
{
    double length_m = 0.0;
    for (size_t place = before ? way->count : way->last; place-- > (before ? way->first + 1 : 1);) {
        const ow_part *part = part_at(way, place);
        length_m += part != NULL && part->length_m > 0.0 ? part->length_m : 0.0;
    }
    return length_m;
}

/* The hose lies along what the rigid parts leave of the route, at its beginning and at its end. */
static void shorten(ow_drain_segment *runs, size_t count, double length_m, bool at_end)
{
    for (size_t step = 0; step < count && length_m > 0.0; step++) {
        ow_drain_segment *run = &runs[at_end ? count - 1 - step : step];
        double taken_m = fmin(run->length_m, length_m);
        run->length_m -= taken_m;
        length_m -= taken_m;
    }
}

/* What lies between the first hose and the last, those included: they share what the joiners leave. */
typedef struct middle {
    const char *names[OW_ROUTE_POINTS_MAX];
    double bores_m[OW_ROUTE_POINTS_MAX], lengths_m[OW_ROUTE_POINTS_MAX];
    size_t count;
} middle;

static middle find_middle(const ow_plan_return *home, const drain_way *way, double whole_m)
{
    middle found = {.count = 0};
    double hose_m = whole_m;
    for (size_t place = way->first + 1; way->hoses > 0 && place-- > way->last;) {
        const ow_part *part = part_at(way, place);
        if (part == NULL)
            continue;
        found.names[found.count] = part->id;
        found.bores_m[found.count] = bore_at(way, place);
        found.lengths_m[found.count] = ow_part_is_hose(part) ? OW_NOT_SAID : fmax(part->length_m, 0.0);
        hose_m -= fmax(found.lengths_m[found.count++], 0.0);
    }
    for (size_t item = 0; item < found.count; item++)
        if (found.lengths_m[item] < 0.0)
            found.lengths_m[item] = fmax(hose_m, 0.0) / (double)way->hoses;
    if (found.count == 0) { /* all of it rigid: the route as a pipe as narrow as the narrowest */
        found.names[0] = home->port->name;
        found.bores_m[0] = ow_layout_narrowest_bore_m(home->layout);
        found.lengths_m[0] = whole_m;
        found.count = 1;
    }
    return found;
}

/* Lays them along the runs, one after the other. */
static ow_status lay_middle(ow_plan_return *home, const middle *found, const ow_drain_segment *runs,
                            size_t count)
{
    ow_status status = OW_OK;
    size_t item = 0;
    double left_m = found->lengths_m[0];
    for (size_t run = 0; run < count; run++)
        for (double run_m = runs[run].length_m; run_m > 0.0 && status == OW_OK;) {
            bool last = item + 1 == found->count; /* takes what rounding leaves */
            double taken_m = last ? run_m : fmin(run_m, left_m);
            status =
                add_segment(home, found->names[item], found->bores_m[item], taken_m, runs[run].slope_rad);
            run_m -= taken_m;
            left_m -= taken_m;
            if (!last && left_m <= 0.0)
                left_m = found->lengths_m[++item];
        }
    return status;
}

/* Segments from the layout and the route: rigid parts, then hoses along the route, then rigid parts. */
static ow_status find_segments(ow_plan_return *home)
{
    ow_drain_segment runs[OW_ROUTE_POINTS_MAX];
    size_t wrong = 0, run_count = home->point_count - 1;
    const drain_way way = find_way(home->layout);
    double bore_m = way.hoses > 0 ? bore_at(&way, way.last) : ow_layout_narrowest_bore_m(home->layout);
    double whole_m = 0.0;
    if (bore_m <= 0.0)
        return OW_RANGE;
    ow_status status = ow_route_segments(home->points, home->point_count, bore_m, runs, &wrong);
    if (status != OW_OK)
        return status;
    shorten(runs, run_count, rigid_length(&way, true), false);
    shorten(runs, run_count, rigid_length(&way, false), true);
    for (size_t run = 0; run < run_count; run++)
        whole_m += runs[run].length_m;
    const middle found = find_middle(home, &way, whole_m);
    status = add_rigid(home, &way, true, runs[0].slope_rad);
    if (status == OW_OK)
        status = lay_middle(home, &found, runs, run_count);
    return status == OW_OK ? add_rigid(home, &way, false, runs[run_count - 1].slope_rad) : status;
}

/* ---- how full ---------------------------------------------------------------------------------- */

/* What the worst segment carries half full over what comes; 0 where one is level. */
static double margin_of(const ow_segment_flow *flows, size_t count, double froth_m3s)
{
    double least = HUGE_VAL;
    for (size_t index = 0; index < count; index++) {
        bool flat = (flows[index].faults & OW_SEGMENT_FLAT) != 0;
        least = fmin(least, flat ? 0.0 : flows[index].flow.half_full_m3s / froth_m3s);
    }
    return least;
}

static void find_least(const ow_plan_flows *flows, double aeration, ow_plan_return *home)
{
    const ow_drain_segment *fullest = &home->segments[home->governing];
    ow_drain_ask ask = {fullest->bore_m, fullest->slope_rad, flows->hot_m3s * aeration, flows->hot};
    home->least_bore_m = OW_NOT_SAID;
    home->least_slope_rad = OW_NOT_SAID;
    home->least_outlet_m = ow_pool_least_bore_m(flows->hot_m3s * aeration, OW_DRAIN_POOL_LIMIT_M);
    if (fullest->slope_rad > 0.0 && ow_drain_least_bore_m(&ask, &home->least_bore_m) != OW_OK)
        home->least_bore_m = OW_NOT_SAID;
    if (ow_drain_least_slope_rad(&ask, &home->least_slope_rad) != OW_OK)
        home->least_slope_rad = OW_NOT_SAID;
}

static double narrower_outlet(const ow_plan_return *home)
{
    double bore_m = home->outlet->bore_m;
    if (home->segment_count > 0 && (bore_m <= 0.0 || home->segments[0].bore_m < bore_m))
        bore_m = home->segments[0].bore_m;
    return bore_m;
}

/* Head that friction takes where the drain runs full to the sump, by the froth that comes; hot or cold,
 * whichever is more: the bearings let less of the thick oil through. */
static double full_friction_m(const ow_plan_flows *flows, double aeration, const ow_plan_return *home)
{
    double hot_pa =
        ow_drain_full_loss_pa(home->segments, home->segment_count, flows->hot_m3s * aeration, &flows->hot);
    double cold_pa =
        ow_drain_full_loss_pa(home->segments, home->segment_count, flows->cold_m3s * aeration, &flows->cold);
    return fmax(ow_head_m(hot_pa, &flows->hot), ow_head_m(cold_pa, &flows->cold));
}

ow_status ow_plan_drain_reckon(ow_planning *planning, ow_plan_return *home)
{
    ow_plan_flows flows;
    double aeration = planning->plan->drain.aeration;
    double outlet_m = home->outlet->bore_m > 0.0 ? home->outlet->bore_m : 0.0;
    size_t governing = 0;
    ow_status status = ow_plan_drain_flows(planning, home->turbo, &flows);
    if (status == OW_OK)
        status = find_segments(home);
    if (status == OW_OK)
        status = ow_drain_route(home->segments, home->segment_count, outlet_m, flows.hot_m3s * aeration,
                                &flows.hot, home->hot, &home->governing);
    if (status == OW_OK)
        status = ow_drain_route(home->segments, home->segment_count, outlet_m, flows.cold_m3s * aeration,
                                &flows.cold, home->cold, &governing);
    if (status != OW_OK)
        return status;
    home->flow_m3s = flows.hot_m3s;
    home->cold_flow_m3s = flows.cold_m3s;
    home->margin = margin_of(home->hot, home->segment_count, flows.hot_m3s * aeration);
    home->cold_margin = margin_of(home->cold, home->segment_count, flows.cold_m3s * aeration);
    home->outlet_bore_m = narrower_outlet(home);
    home->pool_m = fmax(ow_pool_weir_m(home->outlet_bore_m, flows.hot_m3s * aeration),
                        ow_pool_orifice_m(home->outlet_bore_m, flows.hot_m3s * aeration));
    home->friction_head_m = full_friction_m(&flows, aeration, home);
    find_least(&flows, aeration, home);
    home->reckoned = true;
    return OW_OK;
}
