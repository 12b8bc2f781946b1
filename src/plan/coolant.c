/* SPDX-License-Identifier: MIT */
/* The coolant loop of a job: engine (and heater) to the turbo's low port, high port home; natural circulation
 * after shutdown solved, also over the clocking angle; the pump's flow. */
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

/* The two coolant ports of a turbo that go together: those with the same ending behind the letter, the first
 * low. */
static size_t coolant_ports(const ow_machine *turbo, const ow_port **ports, size_t most)
{
    size_t count = 0;
    for (size_t index = 0; index < turbo->port_count && count < most; index++) {
        if (turbo->ports[index].circuit == OW_COOLANT)
            ports[count++] = &turbo->ports[index];
    }
    return count;
}

static ow_status make_leg(ow_planning *planning, ow_plan_coolant *loop, const ow_machine *from,
                          const char *from_port, const ow_machine *to, const char *to_port,
                          const ow_said *hose_m, bool hot)
{
    ow_plan_leg *leg = &loop->legs[loop->leg_count++];
    const char *from_name = from_port != NULL ? ow_planning_words(planning, "%s:%s", from->id, from_port)
                                              : ow_planning_words(planning, "%s", from->id);
    const char *to_name = ow_planning_words(planning, "%s:%s", to->id, to_port);
    if (from_name == NULL || to_name == NULL)
        return OW_MEMORY;
    ow_ask_words words = ow_planning_ask(planning, from_name, to_name);
    words.circuit = "coolant";
    double length_m = ow_planning_value(
        planning, hose_m, 0.8, hot ? "length of the hot coolant hose" : "length of each cold coolant hose",
        1.0, "m", OW_MARK_ASSUMED, "assumption of this program");
    words.hose = ow_planning_words(planning, "%.9g m", length_m);
    leg->hot = hot;
    ow_status status = ow_planning_answer(planning, &words, &leg->asks, &leg->answers, &leg->layout);
    leg->answered = status == OW_OK;
    if (status == OW_OK)
        status =
            ow_planning_judge_answer(planning, &leg->answers, hot ? "coolant, hot leg" : "coolant, cold leg",
                                     &planning->plan->findings);
    return status;
}

/* The engine's other coolant port: where the coolant goes home if the job does not say. */
static const char *other_port(const ow_machine *engine, const char *not_this)
{
    for (size_t index = 0; index < engine->port_count; index++) {
        const ow_port *port = &engine->ports[index];
        if (port->circuit == OW_COOLANT && (not_this == NULL || strcmp(port->name, not_this) != 0))
            return port->name;
    }
    return NULL;
}

static const ow_port *coolant_port_named(const ow_machine *heater, const char *name)
{
    const ow_port *port = ow_machine_port(heater, name);
    return port != NULL && port->circuit == OW_COOLANT ? port : NULL;
}

/* The first heater of the catalogue that has both its ports. */
static const ow_machine *find_heater(const ow_planning *planning)
{
    for (size_t index = 0; index < ow_catalog_machine_count(planning->catalog); index++) {
        const ow_machine *machine = ow_catalog_machine_at(planning->catalog, index);
        if (machine->kind == OW_HEATER && coolant_port_named(machine, "in") != NULL &&
            coolant_port_named(machine, "out") != NULL)
            return machine;
    }
    return NULL;
}

static ow_status make_legs(ow_planning *planning, ow_plan_coolant *loop)
{
    const ow_job_coolant *coolant = &planning->job->coolant;
    const ow_machine *engine = planning->job->engine;
    const char *from = coolant->from != NULL ? coolant->from : other_port(engine, coolant->to);
    const char *to = coolant->to != NULL ? coolant->to : other_port(engine, from);
    if (from == NULL || to == NULL)
        return ow_findings_add(&planning->plan->findings, "no-coolant-port", OW_ERROR, engine->id, NULL,
                               "%s has not two coolant ports for the loop of %s", engine->id,
                               loop->turbo->id);
    ow_status status = OW_OK;
    loop->heater = coolant->heater ? find_heater(planning) : NULL;
    if (coolant->heater && loop->heater == NULL)
        return ow_findings_add(&planning->plan->findings, "no-coolant-port", OW_ERROR, "heater", NULL,
                               "the job leads the coolant through the heater, and the catalogue has none");
    if (loop->heater != NULL) {
        status = make_leg(planning, loop, engine, from, loop->heater, "in", &coolant->cold_hose_m, false);
        if (status == OW_OK)
            status = make_leg(planning, loop, loop->heater, "out", loop->turbo, loop->low->name,
                              &coolant->cold_hose_m, false);
    } else {
        status = make_leg(planning, loop, engine, from, loop->turbo, loop->low->name, &coolant->cold_hose_m,
                          false);
    }
    if (status == OW_OK)
        status =
            make_leg(planning, loop, loop->turbo, loop->high->name, engine, to, &coolant->hot_hose_m, true);
    return status;
}

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
        if (leg->hot != hot)
            continue;
        if (leg->layout == NULL)
            return OW_RANGE;
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
    const ow_plan_leg *home = &loop->legs[loop->leg_count - 1];
    const ow_port *to = home->layout->givens[1].port;
    if (!said->said && to != NULL && to->has_position && loop->high->has_position) {
        double rise_m = to->position_m[2] - loop->high->position_m[2];
        ow_assumptions_add(&planning->plan->assumptions, OW_MARK_DERIVED, "hot return above the high port",
                           "the positions of the two ports in the catalogue", "%.3g m", rise_m);
        return rise_m;
    }
    return ow_planning_value(planning, said, 0.0, "hot return above the high port", 1.0, "m", OW_MARK_ASSUMED,
                             "level hoses: assumption of this program");
}

static double find_apart(ow_planning *planning, const ow_machine *turbo)
{
    ow_said said = {turbo->coolant_apart_m > 0.0, turbo->coolant_apart_m};
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
        ow_assumptions_add(&planning->plan->assumptions, OW_MARK_ASSUMED, "the coolant",
                           "assumption of this program", "%s", ow_coolant_word(OW_GLYCOL_50));
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
    made->apart_m = find_apart(planning, loop->turbo);
    made->rise_m = find_rise(planning, loop);
    made->jacket_coefficient = OW_JACKET_COEFFICIENT;
    made->jacket_bore_m = loop->low->bore_m > 0.0 ? loop->low->bore_m : DEFAULT_PORT_BORE_M;
    made->roughness_m = 1.0e-5;
    ow_assumptions_add(&planning->plan->assumptions, OW_MARK_ASSUMED,
                       "resistance of the turbo's water jacket", "assumption of this program",
                       "%.3g velocity heads in a bore of %.3g mm", OW_JACKET_COEFFICIENT,
                       made->jacket_bore_m * 1e3);
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
    ow_assumptions_add(&planning->plan->assumptions, OW_MARK_ASSUMED, "resistance of the heater's core",
                       "assumption of this program", "%.3g velocity heads in a bore of %.3g mm",
                       HEATER_COEFFICIENT, bore_m * 1e3);
}

static ow_status solve(ow_planning *planning, ow_plan_coolant *loop)
{
    loop->forced_m3s = OW_COOLANT_FORCED_M3S;
    ow_status status = ow_loop_check(&loop->loop);
    if (status == OW_OK)
        status = ow_siphon_solve(&loop->loop, &loop->siphon);
    if (status == OW_OK)
        status = ow_loop_forced(&loop->loop, loop->forced_m3s, &loop->forced);
    ow_assumptions_add(&planning->plan->assumptions, OW_MARK_ASSUMED, "pump's flow through the housing",
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

static ow_status reckon(ow_planning *planning, ow_plan_coolant *loop)
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

static ow_status make_loop(ow_planning *planning, ow_plan_coolant *loop)
{
    ow_status status = make_legs(planning, loop);
    bool whole = loop->leg_count > 0;
    for (size_t index = 0; index < loop->leg_count; index++)
        whole = whole && loop->legs[index].layout != NULL;
    if (status != OW_OK || !whole)
        return status;
    status = reckon(planning, loop);
    if (status == OW_RANGE)
        return ow_findings_add(
            &planning->plan->findings, "not-reckoned", OW_WARNING, "coolant", NULL,
            "the loop is not reckoned: a bore is not said or a figure lies outside what the "
            "formulas can work in");
    return status == OW_OK ? ow_plan_coolant_judge(planning, loop) : status;
}

static ow_status say_dry(ow_planning *planning, const ow_machine *turbo)
{
    return ow_findings_add(
        &planning->plan->findings, "coolant-left-out", OW_WARNING, turbo->id, NULL,
        "%s is water-cooled and the job leads it no water: it runs so, but some 100 to 600 W soak into "
        "the bearing after each hot stop",
        turbo->id);
}

ow_status ow_plan_coolant_make(ow_planning *planning)
{
    const ow_job *job = planning->job;
    ow_plan *plan = planning->plan;
    ow_status status = OW_OK;
    plan->coolants = ow_arena_get_array(&planning->arena, 2 * OW_JOB_TURBOS, sizeof *plan->coolants);
    if (plan->coolants == NULL)
        return OW_MEMORY;
    for (size_t turbo = 0; turbo < job->turbo_count && status == OW_OK; turbo++) {
        const ow_port *ports[4];
        size_t count = coolant_ports(job->turbos[turbo], ports, 4);
        if (count >= 2 && !job->has_coolant)
            status = say_dry(planning, job->turbos[turbo]);
        if (count == 0 && job->has_coolant)
            status =
                ow_findings_add(&plan->findings, "no-coolant-port", OW_NOTE, job->turbos[turbo]->id, NULL,
                                "%s has no coolant ports: there is no loop to plan", job->turbos[turbo]->id);
        for (size_t pair = 0; pair + 1 < count && job->has_coolant && status == OW_OK; pair += 2) {
            ow_plan_coolant *loop = &plan->coolants[plan->coolant_count++];
            loop->turbo = job->turbos[turbo];
            loop->low = ports[pair];
            loop->high = ports[pair + 1];
            status = make_loop(planning, loop);
        }
    }
    return status;
}
