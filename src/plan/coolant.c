/* SPDX-License-Identifier: MIT */
/* The coolant loop of a job, resolved: from the engine (and through the heater), or from a tee in the
 * heater's hose, to the turbo's low port, and home from its high one. */
#include <math.h>
#include <string.h>

#include "oilway/hose_material.h"
#include "plan/planning.h"

#define DEFAULT_HOSE_M 0.8
#define PORT_SHARE 0.75 /* of a port's bore that a fitting in it leaves (common practice) */
#define DEFAULT_HEATER_HOSE_M 0.016

static size_t coolant_ports(const ow_machine *turbo, const ow_port **ports, size_t most)
{
    size_t count = 0;
    for (size_t index = 0; index < turbo->port_count && count < most; index++) {
        if (turbo->ports[index].circuit == OW_COOLANT)
            ports[count++] = &turbo->ports[index];
    }
    return count;
}

/* One end of a leg: a machine's port, or the cut end of a hose. */
typedef struct leg_end {
    const char *name;
    const ow_port *port; /* NULL for a hose */
} leg_end;

static leg_end end_at(ow_planning *planning, const ow_machine *machine, const ow_port *port)
{
    if (port == NULL) /* the caller has looked: no name says so to make_leg */
        return (leg_end){NULL, NULL};
    return (leg_end){ow_planning_words(planning, "%s:%s", machine->id, port->name), port};
}

/* A class that does not stand coolant is judged, not used. */
static const char *usable_class(const char *hose_class)
{
    const ow_hose_material *material = hose_class != NULL ? ow_hose_material_find(hose_class) : NULL;
    return material != NULL && material->coolant == OW_STANDS_NOT ? NULL : hose_class;
}

/* Not much narrower than the narrower of the two ports where that can be had: what goes round by itself falls
 * with the fourth power of the bore. Else as it comes. */
static ow_status answer_leg(ow_planning *planning, ow_ask_words *words, const ow_planning_hose *hose,
                            leg_end from, leg_end to, ow_plan_leg *leg)
{
    double port_m = HUGE_VAL;
    if (from.port != NULL && from.port->bore_m > 0.0)
        port_m = from.port->bore_m;
    if (to.port != NULL && to.port->bore_m > 0.0)
        port_m = fmin(port_m, to.port->bore_m);
    if (port_m < HUGE_VAL) {
        words->bore = ow_planning_words(planning, "%.9g m", PORT_SHARE * port_m);
        if (words->bore == NULL)
            return OW_MEMORY;
        ow_status status =
            ow_planning_answer_hose(planning, words, hose, true, &leg->asks, &leg->answers, &leg->layout);
        if (status != OW_OK || leg->layout != NULL)
            return status;
        ow_answers_done(&leg->answers);
        ow_ask_set_done(&leg->asks);
        words->bore = NULL;
    }
    return ow_planning_answer_hose(planning, words, hose, true, &leg->asks, &leg->answers, &leg->layout);
}

static ow_status make_leg(ow_planning *planning, ow_plan_coolant *loop, leg_end from, leg_end to, bool hot)
{
    const ow_job_coolant *coolant = &planning->job->coolant;
    ow_plan_leg *leg = &loop->legs[loop->leg_count++];
    double straight_m = 0.0;
    leg->hot = hot;
    if (from.name == NULL || to.name == NULL)
        return OW_MEMORY;
    ow_ask_words words = ow_planning_ask(planning, from.name, to.name);
    words.circuit = "coolant";
    if (from.port == NULL || to.port == NULL) { /* the other half of the hose that is cut for the tee */
        words.keep[words.keep_count++] = from.port == NULL ? from.name : to.name;
        words.remote_switch = to.port == NULL;
    } else if (!ow_planning_apart(from.port, to.port, &straight_m)) {
        straight_m = 0.0;
    }
    ow_planning_hose hose = ow_planning_hose_between(
        planning, hot ? &coolant->hot_hose_m : &coolant->cold_hose_m, straight_m, DEFAULT_HOSE_M,
        hot ? "length of the hot coolant hose" : "length of the cold coolant hose");
    hose.class_name = usable_class(coolant->hose);
    ow_status status = ow_planning_choose_hose(planning, &hose, &words);
    if (status == OW_OK)
        status = answer_leg(planning, &words, &hose, from, to, leg);
    leg->answered = status == OW_OK;
    return status;
}

/* ---- where the loop begins and ends ------------------------------------------------------------ */

/* Which loop begins or ends in that port of the engine, or NULL; one is left out. */
static const ow_plan_coolant *loop_at(const ow_plan *plan, const ow_port *port, const ow_plan_coolant *but)
{
    for (size_t index = 0; index < plan->coolant_count; index++) {
        const ow_plan_coolant *loop = &plan->coolants[index];
        if (loop != but && (loop->from == port || loop->to == port))
            return loop;
    }
    return NULL;
}

static bool is_better(const ow_plan *plan, const ow_port *port, const ow_port *than, bool highest)
{
    if (than == NULL)
        return true;
    bool is_free = loop_at(plan, port, NULL) == NULL;
    if (is_free != (loop_at(plan, than, NULL) == NULL))
        return is_free;
    if (!port->has_position || !than->has_position)
        return false;
    return highest ? port->position_m[2] > than->position_m[2] : port->position_m[2] < than->position_m[2];
}

/* The port of that name; else, of the engine's coolant ports beside `other`, one that no loop has taken, the
 * lowest (or the highest), and the first where their places are not known: what is warm goes home upwards. */
static const ow_port *engine_port(const ow_planning *planning, const char *name, const ow_port *other,
                                  bool highest)
{
    const ow_machine *engine = planning->job->engine;
    const ow_port *best = NULL;
    if (name != NULL)
        return ow_machine_port(engine, name);
    for (size_t index = 0; index < engine->port_count; index++) {
        const ow_port *port = &engine->ports[index];
        if (port->circuit == OW_COOLANT && port != other && is_better(planning->plan, port, best, highest))
            best = port;
    }
    return best;
}

static const ow_port *coolant_port_named(const ow_machine *heater, const char *name)
{
    const ow_port *port = ow_machine_port(heater, name);
    return port != NULL && port->circuit == OW_COOLANT ? port : NULL;
}

/* The heaters of the catalogue that have both their ports, in its order; NULL past the last. */
static const ow_machine *heater_at(const ow_planning *planning, size_t nth)
{
    for (size_t index = 0; index < ow_catalog_machine_count(planning->catalog); index++) {
        const ow_machine *machine = ow_catalog_machine_at(planning->catalog, index);
        if (machine->kind == OW_HEATER && coolant_port_named(machine, "in") != NULL &&
            coolant_port_named(machine, "out") != NULL && nth-- == 0)
            return machine;
    }
    return NULL;
}

static ow_status make_teed(ow_planning *planning, ow_plan_coolant *loop)
{
    const ow_job_coolant *coolant = &planning->job->coolant;
    const char *hose_class = usable_class(coolant->hose);
    double bore_m = ow_planning_value(planning, &coolant->heater_hose_m, DEFAULT_HEATER_HOSE_M,
                                      "bore of the heater's hoses", 1e3, "mm", OW_MARK_ASSUMED,
                                      "assumption of this program; measure it");
    leg_end hose = {
        ow_planning_words(planning, "hose %.4g %s", bore_m * 1e3, hose_class != NULL ? hose_class : "epdm"),
        NULL};
    loop->teed = true;
    ow_status status = make_leg(planning, loop, hose, end_at(planning, loop->turbo, loop->low), false);
    return status == OW_OK ? make_leg(planning, loop, end_at(planning, loop->turbo, loop->high), hose, true)
                           : status;
}

void ow_plan_legs_done(ow_plan_coolant *loop)
{
    for (size_t index = 0; index < loop->leg_count; index++) {
        if (!loop->legs[index].answered)
            continue;
        ow_answers_done(&loop->legs[index].answers);
        ow_ask_set_done(&loop->legs[index].asks);
    }
    memset(loop->legs, 0, sizeof loop->legs);
    loop->leg_count = 0;
}

/* The two cold legs by one heater. */
static ow_status lead_through(ow_planning *planning, ow_plan_coolant *loop, leg_end cold,
                              const ow_machine *heater)
{
    loop->heater = heater;
    ow_status status =
        make_leg(planning, loop, cold, end_at(planning, heater, coolant_port_named(heater, "in")), false);
    if (status == OW_OK)
        status = make_leg(planning, loop, end_at(planning, heater, coolant_port_named(heater, "out")),
                          end_at(planning, loop->turbo, loop->low), false);
    return status;
}

/* Whether both cold legs are made; with `by_one`, each by a single hose. */
static bool legs_do(const ow_plan_coolant *loop, bool by_one)
{
    for (size_t index = 0; index < 2; index++) {
        const ow_layout *layout = loop->legs[index].layout;
        if (layout == NULL || (by_one && layout->asked.flexible == OW_SOME))
            return false;
    }
    return true;
}

/* By the heater that the job names; else by the first of the catalogue that both legs can be made to by one
 * hose each, or by several; else, so that something can be said, by its first. */
static ow_status pass_heater(ow_planning *planning, ow_plan_coolant *loop, leg_end cold)
{
    const ow_machine *named = planning->job->coolant.heater_machine;
    const ow_machine *heater = named;
    for (int pass = 0; named == NULL && pass < 2; pass++)
        for (size_t nth = 0; (heater = heater_at(planning, nth)) != NULL; nth++) {
            ow_status status = lead_through(planning, loop, cold, heater);
            if (status != OW_OK || legs_do(loop, pass == 0))
                return status;
            ow_plan_legs_done(loop);
        }
    if (heater == NULL)
        heater = heater_at(planning, 0);
    if (heater == NULL)
        return ow_findings_add(
            &planning->plan->findings, "no-coolant-port", OW_ERROR, "heater", NULL,
            "the job leads the coolant through the heater, and the catalogue has none with a "
            "port \"in\" and one \"out\"");
    return lead_through(planning, loop, cold, heater);
}

/* One hole takes one fitting: a second hose to it is not to be made as it is drawn. */
static ow_status judge_ports(ow_planning *planning, const ow_plan_coolant *loop)
{
    const ow_machine *engine = planning->job->engine;
    const ow_port *ports[] = {loop->from, loop->to};
    ow_status status = OW_OK;
    for (size_t index = 0; index < 2 && status == OW_OK; index++) {
        const ow_plan_coolant *other = loop_at(planning->plan, ports[index], loop);
        const char *where = ow_planning_words(planning, "%s:%s", engine->id, ports[index]->name);
        if (where == NULL)
            return OW_MEMORY;
        if (other != NULL)
            status = ow_findings_add(&planning->plan->findings, "coolant-port-shared", OW_ERROR, where, NULL,
                                     "the loops of %s:%s and of %s:%s both need this one port",
                                     other->turbo->id, other->low->name, loop->turbo->id, loop->low->name);
        else if (index == 1 && loop->from == loop->to)
            status = ow_findings_add(&planning->plan->findings, "coolant-port-shared", OW_ERROR, where, NULL,
                                     "the loop of %s begins and ends in this one port", loop->turbo->id);
    }
    return status;
}

static ow_status make_piped(ow_planning *planning, ow_plan_coolant *loop)
{
    const ow_job_coolant *coolant = &planning->job->coolant;
    const ow_machine *engine = planning->job->engine;
    const ow_port *given_to = coolant->to != NULL ? ow_machine_port(engine, coolant->to) : NULL;
    const ow_port *from = engine_port(planning, coolant->from, given_to, false);
    const ow_port *to = engine_port(planning, coolant->to, from, true);
    if (from == NULL || to == NULL)
        return ow_findings_add(&planning->plan->findings, "no-coolant-port", OW_ERROR, engine->id, NULL,
                               "%s has not two coolant ports for the loop of %s", engine->id,
                               loop->turbo->id);
    loop->from = from;
    loop->to = to;
    leg_end cold = end_at(planning, engine, from);
    ow_status status = judge_ports(planning, loop);
    if (status != OW_OK)
        return status;
    status = coolant->heater
                 ? pass_heater(planning, loop, cold)
                 : make_leg(planning, loop, cold, end_at(planning, loop->turbo, loop->low), false);
    if (status == OW_OK && loop->leg_count > 0)
        status = make_leg(planning, loop, end_at(planning, loop->turbo, loop->high),
                          end_at(planning, engine, to), true);
    return status;
}

static ow_status judge_legs(ow_planning *planning, const ow_plan_coolant *loop)
{
    ow_status status = OW_OK;
    for (size_t index = 0; index < loop->leg_count && status == OW_OK; index++)
        status = ow_planning_judge_answer(planning, &loop->legs[index].answers,
                                          loop->legs[index].hot ? "coolant, hot leg" : "coolant, cold leg",
                                          &planning->plan->findings);
    return status;
}

static ow_status make_loop(ow_planning *planning, ow_plan_coolant *loop)
{
    ow_status status = planning->job->coolant.teed ? make_teed(planning, loop) : make_piped(planning, loop);
    if (status == OW_OK)
        status = judge_legs(planning, loop);
    bool whole = loop->leg_count > 0;
    for (size_t index = 0; index < loop->leg_count; index++)
        whole = whole && loop->legs[index].layout != NULL;
    if (status != OW_OK || !whole)
        return status;
    status = ow_plan_coolant_reckon(planning, loop);
    if (status == OW_RANGE)
        return ow_findings_add(
            &planning->plan->findings, "not-reckoned", OW_WARNING, "coolant", NULL,
            "the loop is not reckoned: a bore is not said or a figure lies outside what the "
            "formulas can work in");
    return status == OW_OK ? ow_plan_coolant_judge(planning, loop) : status;
}

/* ---- all loops ------------------------------------------------------------------------------------ */

static ow_status say_dry(ow_planning *planning, const ow_machine *turbo)
{
    return ow_findings_add(
        &planning->plan->findings, "coolant-left-out", OW_WARNING, turbo->id, NULL,
        "%s is water-cooled and the job leads it no water: it runs so, but the 100 to 600 W that soak into "
        "the "
        "bearing after each hot stop stay there, the oil in it cokes, and it lives shorter",
        turbo->id);
}

static ow_status make_turbo(ow_planning *planning, const ow_machine *turbo)
{
    ow_plan *plan = planning->plan;
    const ow_port *ports[4];
    size_t count = coolant_ports(turbo, ports, 4);
    ow_status status = OW_OK;
    if (count >= 2 && !planning->job->has_coolant)
        status = say_dry(planning, turbo);
    if (count < 2 && planning->job->has_coolant)
        status = ow_findings_add(&plan->findings, "no-coolant-port", OW_NOTE, turbo->id, NULL,
                                 "%s has no pair of coolant ports: there is no loop to plan", turbo->id);
    for (size_t pair = 0; pair + 1 < count && planning->job->has_coolant && status == OW_OK; pair += 2) {
        ow_plan_coolant *loop = &plan->coolants[plan->coolant_count++];
        loop->turbo = turbo;
        loop->low = ports[pair];
        loop->high = ports[pair + 1];
        status = make_loop(planning, loop);
    }
    return status;
}

ow_status ow_plan_coolant_make(ow_planning *planning)
{
    const ow_job *job = planning->job;
    ow_status status = OW_OK;
    planning->plan->coolants =
        ow_arena_get_array(&planning->arena, 2 * OW_JOB_TURBOS, sizeof *planning->plan->coolants);
    if (planning->plan->coolants == NULL)
        return OW_MEMORY;
    for (size_t turbo = 0; turbo < job->turbo_count && status == OW_OK; turbo++)
        status = make_turbo(planning, job->turbos[turbo]);
    return status;
}
