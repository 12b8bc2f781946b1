/* SPDX-License-Identifier: MIT */
/* The oil and the states that a job is reckoned in: its own, filled up with typical ones where it does not
 * say. */
#include <string.h>

#include "base/words.h"
#include "plan/planning.h"

#define WARM_C 60.0

static const ow_feed_state *typical_named(const char *name)
{
    for (size_t index = 0; index < OW_FEED_STATES_TYPICAL; index++) {
        if (ow_words_equal(ow_typical_state_at(index)->name, name))
            return ow_typical_state_at(index);
    }
    return ow_typical_state_at(OW_FEED_STATES_TYPICAL - 1);
}

/* The engine's own word on its gallery, which is told hot at full revs. */
static double own_pressure(const ow_planning *planning)
{
    const ow_job *job = planning->job;
    for (size_t index = 0; index < job->engine->port_count; index++) {
        const ow_port *port = &job->engine->ports[index];
        if (port->circuit == OW_FEED && port->pressure_pa > 0.0 &&
            (job->feed.from == NULL || strcmp(job->feed.from, port->name) == 0))
            return port->pressure_pa;
    }
    return OW_NOT_SAID;
}

static void assume(ow_planning *planning, const char *name, const char *what, double value, const char *unit,
                   const char *source)
{
    ow_planning_assume(planning, OW_MARK_ASSUMED, ow_planning_words(planning, "%s, %s", what, name), source,
                       "%.4g %s", value, unit);
}

/* The pressure that the engine's record gives: known, and yet nobody wrote it in the job. */
static void tell_own(ow_planning *planning, ow_feed_state *state, double own_pa)
{
    state->source_pa = own_pa;
    ow_planning_assume(planning, OW_MARK_DERIVED,
                       ow_planning_words(planning, "gallery pressure, %s", state->name),
                       "the record of the engine's port", "%.4g bar", own_pa / 1e5);
}

static void fill_state(ow_planning *planning, const char *name, const ow_said *oil_c,
                       const ow_said *gallery_pa)
{
    const ow_feed_state *typical = typical_named(name);
    double own_pa = own_pressure(planning);
    ow_feed_state *state = &planning->states[planning->state_count++];
    bool is_hot_rev = ow_words_equal(name, "hot rev");
    *state = *typical;
    state->name = name;
    state->assumed = !oil_c->said || (!gallery_pa->said && !(is_hot_rev && own_pa > 0.0));
    if (oil_c->said)
        state->oil_c = oil_c->value;
    else
        assume(planning, name, "oil temperature", state->oil_c, "C", "typical of this state, from memory");
    if (gallery_pa->said)
        state->source_pa = gallery_pa->value;
    else if (is_hot_rev && own_pa > 0.0)
        tell_own(planning, state, own_pa);
    else
        assume(planning, name, "gallery pressure", state->source_pa / 1e5, "bar",
               "typical of this state, from memory");
}

static void find_hot_rev(ow_planning *planning)
{
    planning->hot_rev = 0;
    for (size_t index = 1; index < planning->state_count; index++) {
        const ow_feed_state *best = &planning->states[planning->hot_rev];
        const ow_feed_state *state = &planning->states[index];
        bool warmer = state->oil_c >= WARM_C && best->oil_c < WARM_C;
        bool as_warm = (state->oil_c >= WARM_C) == (best->oil_c >= WARM_C);
        if (warmer || (as_warm && state->source_pa > best->source_pa))
            planning->hot_rev = index;
    }
}

/* The job's own states replace the typical ones. */
ow_status ow_plan_states(ow_planning *planning)
{
    static const ow_said not_said = {false, 0.0};
    const ow_job *job = planning->job;
    for (size_t index = 0; index < job->state_count; index++)
        fill_state(planning, job->states[index].name, &job->states[index].oil_c,
                   &job->states[index].gallery_pa);
    for (size_t index = 0; index < OW_FEED_STATES_TYPICAL && job->state_count == 0; index++)
        fill_state(planning, ow_typical_state_at(index)->name, &not_said, &not_said);
    find_hot_rev(planning);
    return planning->plan->assumptions.failed ? OW_MEMORY : OW_OK;
}

ow_status ow_plan_oil(ow_planning *planning)
{
    const ow_job *job = planning->job;
    ow_assumptions *assumptions = &planning->plan->assumptions;
    if (job->has_oil) {
        planning->oil = job->oil;
        if (job->oil_grade != NULL)
            return ow_assumptions_add(assumptions, OW_MARK_ASSUMED, "viscosities of the oil",
                                      "typical of the grade, from memory",
                                      "%.4g mm2/s at 40 C, %.4g at 100 C (%s)", job->oil.kv40_mm2s,
                                      job->oil.kv100_mm2s, job->oil_grade);
        if (job->oil_density_assumed)
            return ow_oil_density_assume(job->oil.density15_kgm3, assumptions);
        return OW_OK;
    }
    const ow_typical_oil *typical = ow_typical_oil_find("15W-40");
    ow_status status = ow_oil_set(typical->name, typical->kv40_mm2s, typical->kv100_mm2s,
                                  typical->density15_kgm3, &planning->oil);
    if (status == OW_OK)
        status = ow_assumptions_add(assumptions, OW_MARK_ASSUMED, "the oil", "assumption of this program",
                                    "%s", typical->name);
    return status;
}
