/* SPDX-License-Identifier: MIT */
/* A resolved coolant loop reckoned: natural circulation after shutdown, also over the clocking angle, the
 * heat that it carries at most, and the pump's flow. */
#include <math.h>
#include <string.h>

#include "plan/planning.h"

#define DEGREE_RAD 0.017453292519943295
#define CURVE_STEP_DEG 5.0
#define CURVE_FIRST_DEG (-15.0)
#define HEATER_COEFFICIENT 10.0 /* of a heater's core on its port's bore: an assumption, listed */
#define DEFAULT_ANGLE_DEG 15.0
#define DEFAULT_COLD_C 90.0
#define DEFAULT_APART_M 0.07
#define DEFAULT_PORT_BORE_M 0.008
#define HOSE_ROUGHNESS_M 1.0e-5 /* rubber hose, from memory; without effect here */

/* A loop's pieces are given without the chambers at its ends. */
static void trim_chambers(ow_piece_list *list)
{
    while (list->count > 0 && list->items[list->count - 1].kind == OW_PIECE_CHAMBER)
        list->count--;
    while (list->count > 0 && list->items[0].kind == OW_PIECE_CHAMBER) {
        list->items++;
        list->nodes++;
        list->count--;
        list->capacity--;
    }
}

static ow_status gather_pieces(ow_planning *planning, ow_plan_coolant *loop, bool hot, ow_piece_list *list)
{
    for (size_t index = 0; index < loop->leg_count; index++) {
        const ow_plan_leg *leg = &loop->legs[index];
        if (leg->hot == hot)
            ow_plan_path(planning, leg->layout, 1, list);
    }
    trim_chambers(list);
    if (list->status != OW_OK)
        return list->status;
    return list->unknown || list->count == 0 ? OW_RANGE : OW_OK;
}

/* The engine port where the hot leg ends, above the turbo's high port, from the two positions. */
static double find_rise(ow_planning *planning, const ow_plan_coolant *loop)
{
    const ow_said *said = &planning->job->coolant.rise_m;
    const ow_port *to = loop->legs[loop->leg_count - 1].layout->givens[1].port;
    if (!said->said && to != NULL && to->has_position && loop->high->has_position) {
        double rise_m = to->position_m[2] - loop->high->position_m[2];
        ow_planning_assume(planning, OW_MARK_DERIVED, "hot return above the high port",
                           "the positions of the two ports", "%.0f mm", rise_m * 1e3);
        return rise_m;
    }
    return ow_planning_value(planning, said, 0.0, "hot return above the high port", 1e3, "mm",
                             OW_MARK_ASSUMED, "level hoses: assumption of this program");
}

static double find_apart(ow_planning *planning, const ow_plan_coolant *loop)
{
    ow_said said = {loop->turbo->coolant_apart_m > 0.0, loop->turbo->coolant_apart_m};
    double straight_m = 0.0;
    if (!said.said && ow_planning_apart(loop->low, loop->high, &straight_m) && straight_m > 0.0) {
        ow_planning_assume(planning, OW_MARK_DERIVED, "coolant ports apart", "the positions of the two ports",
                           "%.0f mm", straight_m * 1e3);
        return straight_m;
    }
    return ow_planning_value(planning, &said, DEFAULT_APART_M, "coolant ports apart", 1e3, "mm",
                             OW_MARK_ASSUMED, "assumption of this program");
}

static void fill_loop(ow_planning *planning, ow_plan_coolant *loop)
{
    const ow_job_coolant *job = &planning->job->coolant;
    static const ow_said not_said = {false, 0.0};
    ow_loop *made = &loop->loop;
    made->title = loop->turbo->id;
    made->coolant = job->has_coolant ? job->coolant : OW_GLYCOL_50;
    if (!job->has_coolant)
        ow_planning_assume(planning, OW_MARK_ASSUMED, "the coolant", "assumption of this program", "%s",
                           ow_coolant_word(OW_GLYCOL_50));
    made->heat_w =
        ow_planning_value(planning, &job->heat_w, OW_SOAK_HEAT_W, "heat that soaks in after shutdown", 1.0,
                          "W", OW_MARK_ASSUMED, "the middle of 100 to 600 W; no published figure was found");
    made->cold_c = ow_planning_value(planning, &not_said, DEFAULT_COLD_C, "coolant at shutdown", 1.0, "C",
                                     OW_MARK_ASSUMED, "assumption of this program");
    made->cap_pa = ow_planning_value(planning, &job->cap_pa, 1.0e5, "pressure of the radiator's cap", 1e-5,
                                     "bar", OW_MARK_ASSUMED, "assumption of this program");
    made->angle_rad =
        ow_planning_value(planning, &job->angle_rad, DEFAULT_ANGLE_DEG * DEGREE_RAD, "clocking angle",
                          1.0 / DEGREE_RAD, "degrees", OW_MARK_PRACTICE, "common practice");
    made->apart_m = find_apart(planning, loop);
    made->rise_m = find_rise(planning, loop);
    made->jacket_coefficient = OW_JACKET_COEFFICIENT;
    made->jacket_bore_m = loop->low->bore_m > 0.0 ? loop->low->bore_m : DEFAULT_PORT_BORE_M;
    made->roughness_m = HOSE_ROUGHNESS_M;
    loop->height_m = made->apart_m * sin(made->angle_rad);
    ow_planning_assume(planning, OW_MARK_ASSUMED, "resistance of the turbo's water jacket",
                       "assumption of this program", "%.3g velocity heads in a bore of %.3g mm",
                       OW_JACKET_COEFFICIENT, made->jacket_bore_m * 1e3);
}

/* A heater's core, as a fixed resistance in the cold leg. */
static void add_heater(ow_planning *planning, ow_plan_coolant *loop, ow_piece_list *list)
{
    if (loop->heater == NULL)
        return;
    const ow_port *in = ow_machine_port(loop->heater, "in");
    double bore_m = in->bore_m > 0.0 ? in->bore_m : DEFAULT_PORT_BORE_M;
    ow_plan_add_piece(planning, list, 0,
                      (ow_piece){.kind = OW_PIECE_FIXED,
                                 .name = loop->heater->id,
                                 .bore_m = bore_m,
                                 .count = 1,
                                 .coefficient = HEATER_COEFFICIENT});
    ow_planning_assume(planning, OW_MARK_ASSUMED, "resistance of the heater's core",
                       "assumption of this program", "%.3g velocity heads in a bore of %.3g mm",
                       HEATER_COEFFICIENT, bore_m * 1e3);
}

/* More heat never leaves the water cooler, so the most that keeps the margin to boiling is found by halving.
 */
static ow_status find_most_heat(ow_plan_coolant *loop)
{
    double low_w = OW_COOLANT_HEAT_LOW_W, high_w = OW_COOLANT_HEAT_HIGH_W;
    ow_loop other = loop->loop;
    ow_siphon siphon;
    other.heat_w = low_w;
    ow_status status = ow_siphon_solve(&other, &siphon);
    if (status != OW_OK || siphon.near_boiling)
        return status;
    while (high_w - low_w > 0.001 * high_w && status == OW_OK) {
        other.heat_w = sqrt(low_w * high_w);
        status = ow_siphon_solve(&other, &siphon);
        *(siphon.near_boiling ? &high_w : &low_w) = other.heat_w;
    }
    loop->most_heat_w = low_w;
    return status;
}

static ow_status solve(ow_planning *planning, ow_plan_coolant *loop)
{
    loop->forced_m3s = OW_COOLANT_FORCED_M3S;
    ow_status status = ow_loop_check(&loop->loop);
    if (status == OW_OK)
        status = ow_siphon_solve(&loop->loop, &loop->siphon);
    if (status == OW_OK)
        status = find_most_heat(loop);
    if (status == OW_OK)
        status = ow_loop_forced(&loop->loop, loop->forced_m3s, &loop->forced);
    ow_planning_assume(planning, OW_MARK_ASSUMED, "pump's flow through the housing",
                       "assumption of this program", "%.3g L/min", loop->forced_m3s * 60000.0);
    for (size_t index = 0; index < OW_PLAN_CURVE && status == OW_OK; index++) {
        ow_loop other = loop->loop;
        other.angle_rad = (CURVE_FIRST_DEG + CURVE_STEP_DEG * (double)index) * DEGREE_RAD;
        loop->curve_angle_rad[index] = other.angle_rad;
        status = ow_siphon_solve(&other, &loop->curve[index]);
        loop->curve_count = index + 1;
    }
    return status;
}

ow_status ow_plan_coolant_reckon(ow_planning *planning, ow_plan_coolant *loop)
{
    ow_piece_list cold = {0};
    ow_piece_list hot = {0};
    ow_status status = gather_pieces(planning, loop, false, &cold);
    if (status == OW_OK)
        status = gather_pieces(planning, loop, true, &hot);
    if (status != OW_OK)
        return status;
    fill_loop(planning, loop);
    add_heater(planning, loop, &cold);
    loop->loop.cold_leg = cold.items;
    loop->loop.cold_count = cold.count;
    loop->loop.hot_leg = hot.items;
    loop->loop.hot_count = hot.count;
    status = solve(planning, loop);
    loop->reckoned = status == OW_OK;
    return status;
}
