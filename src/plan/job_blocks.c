/* SPDX-License-Identifier: MIT */
/* The blocks of a job: feed, drain, coolant, states, oil. */
#include <string.h>

#include "base/words.h"
#include "plan/job_fields.h"
#include "plan/job_reading.h"

/* The name of a port that the job's engine (or each turbo) must have. */
static const char *read_port(ow_job_reading *reading, const ow_machine *machine, const ow_yaml *node)
{
    const char *name = ow_job_words(reading, node, "the name of a port");
    if (name == NULL || machine == NULL || ow_machine_port(machine, name) != NULL)
        return name;
    ow_text expected = ow_text_new(reading->context);
    ow_text_format(&expected, "one of the ports of %s:", machine->id);
    for (size_t index = 0; index < machine->port_count; index++)
        ow_text_format(&expected, " %s", machine->ports[index].name);
    ow_job_fault(reading, node, ow_text_words(&expected), NULL, "%s has no port \"%s\"", machine->id, name);
    ow_text_done(&expected);
    return NULL;
}

void ow_job_read_feed(ow_job_reading *reading, const ow_yaml *map)
{
    ow_job *job = reading->job;
    job->has_feed = true;
    ow_job_block(reading, "feed", map, ow_job_feed_keys);
    const ow_yaml *from = ow_yaml_member(map, "from");
    const ow_yaml *to = ow_yaml_member(map, "to");
    if (from != NULL)
        job->feed.from = read_port(reading, job->engine, from);
    if (to != NULL)
        job->feed.to = read_port(reading, job->turbo_count > 0 ? job->turbos[0] : NULL, to);
}

static void read_point(ow_job_reading *reading, const ow_yaml *node)
{
    ow_job_drain *drain = &reading->job->drain;
    node = ow_yaml_real(node);
    if (node->kind != OW_YAML_LIST || node->count != 3 || drain->point_count == OW_ROUTE_POINTS_MAX) {
        ow_job_fault(reading, node, "a list of up to 64 points [x, y, z], each with its unit, z up", NULL,
                     "this is no point of a route");
        return;
    }
    double values[3] = {0.0, 0.0, 0.0};
    size_t index = 0;
    for (const ow_yaml *item = node->first; item != NULL; item = item->next) {
        ow_job_note(reading, ow_yaml_quantity(reading->context, reading->source, item, OW_LENGTH, -20.0, 20.0,
                                              &values[index]));
        index++;
    }
    drain->points[drain->point_count++] = (ow_point){values[0], values[1], values[2]};
}

static void read_returns(ow_job_reading *reading, const ow_yaml *node)
{
    ow_job_drain *drain = &reading->job->drain;
    if (node->kind == OW_YAML_SCALAR) {
        drain->to[drain->to_count++] = read_port(reading, reading->job->engine, node);
        return;
    }
    for (const ow_yaml *item = node->first; item != NULL; item = item->next) {
        if (drain->to_count == OW_JOB_RETURNS) {
            ow_job_fault(reading, item, "up to 8 returns", NULL, "too many returns");
            return;
        }
        drain->to[drain->to_count++] = read_port(reading, reading->job->engine, ow_yaml_real(item));
    }
}

void ow_job_read_drain(ow_job_reading *reading, const ow_yaml *map)
{
    ow_job *job = reading->job;
    job->has_drain = true;
    ow_job_block(reading, "drain", map, ow_job_drain_keys);
    const ow_yaml *to = ow_yaml_member(map, "to");
    const ow_yaml *route = ow_yaml_member(map, "route");
    const ow_yaml *hose = ow_yaml_member(map, "hose");
    if (to != NULL)
        read_returns(reading, to);
    if (hose != NULL)
        job->drain.hose = ow_job_words(reading, hose, "the class of a hose, such as fluoro-silicone");
    if (route == NULL)
        return;
    if (route->kind != OW_YAML_LIST)
        ow_job_fault(reading, route, "a list of points [x, y, z], each with its unit, z up", NULL,
                     "the route is no list");
    for (const ow_yaml *item = route->first; item != NULL && route->kind == OW_YAML_LIST; item = item->next)
        read_point(reading, item);
    if (job->drain.point_count == 1)
        ow_job_fault(reading, route, "two points or more", NULL, "a route of one point leads nowhere");
}

/* hoses: [cold, hot] */
static void read_hoses(ow_job_reading *reading, const ow_yaml *node)
{
    ow_said *lengths[2] = {&reading->job->coolant.cold_hose_m, &reading->job->coolant.hot_hose_m};
    size_t index = 0;
    if (node->kind != OW_YAML_LIST || node->count != 2) {
        ow_job_fault(reading, node, "two lengths [cold, hot], such as [1.0 m, 0.6 m]", NULL,
                     "this does not say the two hoses");
        return;
    }
    for (const ow_yaml *item = node->first; item != NULL && index < 2; item = item->next) {
        ow_status status = ow_yaml_quantity(reading->context, reading->source, item, OW_LENGTH, 0.05, 20.0,
                                            &lengths[index]->value);
        lengths[index++]->said = status == OW_OK;
        ow_job_note(reading, status);
    }
}

void ow_job_read_coolant(ow_job_reading *reading, const ow_yaml *map)
{
    ow_job_coolant *coolant = &reading->job->coolant;
    reading->job->has_coolant = true;
    ow_job_block(reading, "coolant", map, ow_job_coolant_keys);
    const ow_yaml *from = ow_yaml_member(map, "from");
    const ow_yaml *to = ow_yaml_member(map, "to");
    const ow_yaml *heater = ow_yaml_member(map, "heater");
    const ow_yaml *fluid = ow_yaml_member(map, "coolant");
    const ow_yaml *hoses = ow_yaml_member(map, "hoses");
    if (from != NULL)
        coolant->from = read_port(reading, reading->job->engine, from);
    if (to != NULL)
        coolant->to = read_port(reading, reading->job->engine, to);
    if (heater != NULL) {
        ow_status status = ow_yaml_bool(reading->context, reading->source, heater, &coolant->heater);
        coolant->has_heater = status == OW_OK;
        ow_job_note(reading, status);
    }
    if (fluid != NULL) {
        coolant->has_coolant =
            fluid->kind == OW_YAML_SCALAR && ow_coolant_find(fluid->words, &coolant->coolant);
        if (!coolant->has_coolant)
            ow_job_fault(reading, fluid, "water or 50 % glycol", NULL, "this coolant is not known");
    }
    if (hoses != NULL)
        read_hoses(reading, hoses);
}

static void read_state(ow_job_reading *reading, const ow_yaml *node)
{
    static const char *const known[] = {"name", "oil", "gallery"};
    ow_job *job = reading->job;
    node = ow_yaml_real(node);
    if (node->kind != OW_YAML_MAP || job->state_count == OW_JOB_STATES) {
        ow_job_fault(reading, node, "up to 8 states such as {name: cold, oil: 0 C, gallery: 5.5 bar}", NULL,
                     "this is no state");
        return;
    }
    ow_job_note(reading, ow_yaml_known_keys(reading->context, reading->source, node, known, 3));
    ow_job_state *state = &job->states[job->state_count++];
    const ow_yaml *name = ow_yaml_need(reading->context, reading->source, node, "name");
    const ow_yaml *oil = ow_yaml_member(node, "oil");
    const ow_yaml *gallery = ow_yaml_member(node, "gallery");
    ow_job_note(reading, name == NULL ? OW_INPUT : OW_OK);
    if (name != NULL)
        state->name = ow_job_words(reading, name, "the name of a state");
    if (oil != NULL) {
        ow_job_note(reading, ow_yaml_quantity(reading->context, reading->source, oil, OW_TEMPERATURE,
                                              OW_OIL_TEMPERATURE_LOW_C, OW_OIL_TEMPERATURE_HIGH_C,
                                              &state->oil_c.value));
        state->oil_c.said = true;
    }
    if (gallery != NULL) {
        ow_job_note(reading, ow_yaml_quantity(reading->context, reading->source, gallery, OW_PRESSURE, 0.0,
                                              50e5, &state->gallery_pa.value));
        state->gallery_pa.said = true;
    }
}

void ow_job_read_states(ow_job_reading *reading, const ow_yaml *list)
{
    if (list->kind != OW_YAML_LIST) {
        ow_job_fault(reading, list, "a list of states", NULL, "the states are no list");
        return;
    }
    for (const ow_yaml *item = list->first; item != NULL; item = item->next)
        read_state(reading, item);
}

/* {kv40: 110 mm2/s, kv100: 14.7 mm2/s, rho15: 878 kg/m3}; bare numbers are taken in these units, as in a
 * LINE. */
static void read_oil_figures(ow_job_reading *reading, const ow_yaml *node)
{
    static const char *const known[] = {"kv40", "kv100", "rho15"};
    double values[3] = {0.0, 0.0, OW_OIL_DENSITY15_DEFAULT_KGM3};
    ow_job_note(reading, ow_yaml_known_keys(reading->context, reading->source, node, known, 3));
    for (size_t index = 0; index < 3; index++) {
        const ow_yaml *member = ow_yaml_member(node, known[index]);
        if (member != NULL)
            ow_job_note(reading,
                        ow_yaml_number(reading->context, reading->source, member, 0.0, 1e6, &values[index]));
        else if (index < 2)
            ow_job_note(reading, ow_yaml_need(reading->context, reading->source, node, known[index]) == NULL
                                     ? OW_INPUT
                                     : OW_OK);
    }
    if (reading->status != OW_OK)
        return;
    reading->job->has_oil = ow_oil_set("", values[0], values[1], values[2], &reading->job->oil) == OW_OK;
    if (!reading->job->has_oil)
        ow_job_fault(reading, node, "kv100 from 2 to 100 mm2/s, kv40 above it, rho15 from 700 to 1000 kg/m3",
                     NULL, "these figures are no engine oil");
}

void ow_job_read_oil(ow_job_reading *reading, const ow_yaml *node)
{
    ow_job *job = reading->job;
    if (node->kind == OW_YAML_MAP) {
        read_oil_figures(reading, node);
        return;
    }
    const char *grade = ow_job_words(reading, node, "an SAE grade such as 15W-40");
    if (grade == NULL)
        return;
    const ow_typical_oil *typical = ow_typical_oil_find(grade);
    if (typical == NULL) {
        ow_text expected = ow_text_new(reading->context);
        ow_text_add(&expected, "kv40 and kv100, or one of:");
        for (size_t index = 0; index < ow_typical_oil_count(); index++)
            ow_text_format(&expected, "%s %s", index > 0 ? "," : "", ow_typical_oil_at(index)->name);
        ow_job_fault(reading, node, ow_text_words(&expected), NULL, "no figures are known for the oil \"%s\"",
                     grade);
        ow_text_done(&expected);
        return;
    }
    job->oil_grade = typical->name;
    job->has_oil = ow_oil_set(typical->name, typical->kv40_mm2s, typical->kv100_mm2s, typical->density15_kgm3,
                              &job->oil) == OW_OK;
}
