/* SPDX-License-Identifier: MIT */
/* What the machines at the ports want of the limits: source pressure, restrictor, least bore. */
#include <string.h>

#include "ask/unit.h"

static ow_status lay_restrictor(const ow_ask *ask, ow_bearing said, ow_limits *limits, ow_findings *findings)
{
    ow_restrictor_ask wanted = OW_RESTRICTOR_ANY;
    bool first = true;
    ow_status status = OW_OK;
    for (size_t index = 1; index < ask->given_count && status == OW_OK; index++) {
        const ow_given *to = &ask->givens[index];
        if (to->role != OW_ROLE_TO || (to->machine != NULL && to->machine->kind == OW_ENGINE))
            continue;
        ow_restrictor_ask unit = ow_given_wants(to, said);
        if (unit == OW_RESTRICTOR_ANY)
            status = ow_findings_add(findings, "restrictor-unknown", OW_WARNING, to->name, NULL,
                                     "it is not known whether %s has a restrictor built in, so the answer "
                                     "neither asks for one nor refuses one",
                                     to->machine != NULL ? to->machine->id : "the unit fed");
        wanted = first || wanted == unit ? unit : OW_RESTRICTOR_BY_UNIT;
        first = false;
    }
    limits->restrictor = wanted;
    return status;
}

static ow_status lay_pressure(const ow_ask *ask, ow_limits *limits, bool rating_said, ow_findings *findings)
{
    const ow_given *from = &ask->givens[0];
    if (from->port != NULL && from->port->pressure_pa >= 0.0) {
        limits->rating_pa = from->port->pressure_pa;
        return OW_OK;
    }
    if (rating_said || limits->rating_pa < 0.0)
        return OW_OK;
    return ow_findings_add(
        findings, "pressure-assumed", OW_NOTE, from->name, NULL,
        "the source's pressure is not given: %.3g bar is assumed for the rating of every part",
        limits->rating_pa / 1e5);
}

/* A switch that sits in the source port now must be kept, or somebody must say where it goes. */
static ow_status look_at_switch(const ow_ask *ask, ow_findings *findings)
{
    const ow_given *from = &ask->givens[0];
    if (from->port == NULL || from->port->holds == NULL || from->port->holds[0] == '\0')
        return OW_OK;
    for (size_t index = 1; index < ask->given_count; index++) {
        const ow_given *given = &ask->givens[index];
        if (given->role != OW_ROLE_KEEP)
            continue;
        if (given->fixture == NULL || strcmp(given->fixture->id, from->port->holds) == 0)
            return OW_OK;
    }
    return ow_findings_add(findings, "switch-loses-place", OW_WARNING, from->name, NULL,
                           "%s sits in %s now and is not kept: it loses its place", from->port->holds,
                           from->name);
}

/* Oil under pressure comes from the engine: a switch or a restrictor is on the wrong side otherwise. */
static ow_status look_at_direction(const ow_ask *ask, ow_findings *findings)
{
    const ow_given *from = &ask->givens[0];
    if (from->machine == NULL || from->machine->kind != OW_TURBO)
        return OW_OK;
    return ow_findings_add(findings, "feed-backwards", OW_WARNING, from->name, NULL,
                           "%s is where the oil goes, not where it comes from", from->name);
}

/* Oil that leaves one turbo by its outlet cannot go home by that of another. */
static ow_status look_for_home(const ow_ask *ask, ow_findings *findings)
{
    for (size_t index = 0; index < ask->given_count; index++) {
        if (ask->givens[index].machine == NULL || ask->givens[index].machine->kind != OW_TURBO)
            return OW_OK;
    }
    return ow_findings_add(findings, "drain-not-home", OW_ERROR, ask->givens[0].name, NULL,
                           "%s and %s are both outlets of turbos: nothing leads the oil to the engine",
                           ask->givens[0].name, ask->givens[ask->given_count - 1].name);
}

/* A drain is no narrower than the turbo's outlet, from whichever side it is asked for. */
static void lay_bore(const ow_ask *ask, ow_limits *limits)
{
    for (size_t index = 0; index < ask->given_count; index++) {
        const ow_given *given = &ask->givens[index];
        if (given->port == NULL || given->port->bore_m < 0.0 || given->machine->kind != OW_TURBO)
            continue;
        limits->least_bore_m = given->port->bore_m;
        return;
    }
}

ow_status ow_unit_lay_defaults(const ow_ask *ask, ow_bearing said, bool rating_said, ow_limits *limits,
                               ow_findings *findings)
{
    ow_limits_for_circuit(ask->circuit, limits);
    ow_status status = look_at_switch(ask, findings);
    if (ask->circuit == OW_CIRCUIT_NONE || status != OW_OK)
        return status;
    status = lay_pressure(ask, limits, rating_said, findings);
    if (status == OW_OK && ask->circuit == OW_FEED)
        status = look_at_direction(ask, findings);
    if (status == OW_OK && ask->circuit == OW_FEED)
        status = lay_restrictor(ask, said, limits, findings);
    if (ask->circuit == OW_DRAIN)
        lay_bore(ask, limits);
    if (status == OW_OK && ask->circuit == OW_DRAIN)
        status = look_for_home(ask, findings);
    return status;
}
