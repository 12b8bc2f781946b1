/* SPDX-License-Identifier: MIT */
/* The blocks of a job: feed, drain, coolant, states, oil. */
#include <math.h>
#include <string.h>

#include "base/words.h"
#include "oilway/hose_material.h"
#include "physics/reading.h"
#include "plan/job_fields.h"
#include "plan/job_reading.h"

#define QUARTER_TURN_RAD 1.5707963267948966

/* The name of a port that the job's engine (or each turbo) must have. */
static const char *read_port(ow_job_reading *reading, const ow_machine *machine, const ow_yaml *node,
                             ow_circuit circuit)
{
    const char *name = ow_job_words(reading, node, "the name of a port");
    const ow_port *port = name != NULL && machine != NULL ? ow_machine_port(machine, name) : NULL;
    if (name == NULL || machine == NULL ||
        (port != NULL && (port->circuit == circuit || port->circuit == OW_CIRCUIT_NONE)))
        return name;
    ow_text expected = ow_text_new(reading->context);
    ow_text_format(&expected, "one of the %s ports of %s:", ow_circuit_word(circuit), machine->id);
    for (size_t index = 0; index < machine->port_count; index++) {
        if (machine->ports[index].circuit == circuit)
            ow_text_format(&expected, " %s", machine->ports[index].name);
    }
    if (port != NULL)
        ow_job_fault_among(reading, node, &expected, "\"%s\" is a port of the %s", name,
                           ow_circuit_word(port->circuit));
    else
        ow_job_fault_among(reading, node, &expected, "%s has no port \"%s\"", machine->id, name);
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
        job->feed.from = read_port(reading, job->engine, from, OW_FEED);
    if (to != NULL) {
        for (size_t turbo = 0; turbo < (job->turbo_count > 0 ? job->turbo_count : 1); turbo++)
            job->feed.to = read_port(reading, job->turbos[turbo], to, OW_FEED);
    }
}

static void add_point(ow_job_reading *reading, const ow_yaml *node, ow_point point)
{
    ow_job_drain *drain = &reading->job->drain;
    const ow_point *last = drain->point_count > 0 ? &drain->points[drain->point_count - 1] : NULL;
    if (last != NULL &&
        hypot(hypot(point.x_m - last->x_m, point.y_m - last->y_m), point.z_m - last->z_m) < 1e-6)
        ow_job_fault(reading, node,
                     "a point apart from the one before it; the first is apart from the outlet", NULL,
                     "two points of the route are in one place");
    else if (drain->point_count == OW_ROUTE_POINTS_MAX)
        ow_job_fault(reading, node, "up to 63 points or pieces", NULL, "the route is too long");
    else
        drain->points[drain->point_count++] = point;
}

/* [x, y, z] from the outlet; the first may be the outlet itself. */
static void read_point(ow_job_reading *reading, const ow_yaml *node, bool first)
{
    double values[3] = {0.0, 0.0, 0.0};
    size_t index = 0;
    ow_status status = OW_OK;
    for (const ow_yaml *item = node->first; item != NULL && index < 3; item = item->next) {
        ow_status read = ow_yaml_quantity(reading->context, reading->source, item, OW_LENGTH, -20.0, 20.0,
                                          &values[index++]);
        status = read == OW_OK ? status : read;
    }
    ow_job_note(reading, status);
    bool is_outlet = hypot(hypot(values[0], values[1]), values[2]) < 1e-6;
    if (status == OW_OK && !(first && is_outlet))
        add_point(reading, node, (ow_point){values[0], values[1], values[2]});
}

/* {length:, slope:}: on from the point before it, straight ahead; a negative slope rises. */
static void read_piece(ow_job_reading *reading, const ow_yaml *node)
{
    static const char *const known[] = {"length", "slope"};
    const ow_job_drain *drain = &reading->job->drain;
    double length_m = 0.0, slope_rad = 0.0;
    ow_status status = ow_yaml_known_keys(reading->context, reading->source, node, known, 2);
    const ow_yaml *length = ow_yaml_need(reading->context, reading->source, node, "length");
    const ow_yaml *slope = ow_yaml_need(reading->context, reading->source, node, "slope");
    if (length == NULL || slope == NULL)
        status = OW_INPUT;
    if (length != NULL && ow_yaml_quantity(reading->context, reading->source, length, OW_LENGTH, 0.001, 20.0,
                                           &length_m) != OW_OK)
        status = OW_INPUT;
    if (slope != NULL && ow_yaml_quantity(reading->context, reading->source, slope, OW_ANGLE,
                                          -QUARTER_TURN_RAD, QUARTER_TURN_RAD, &slope_rad) != OW_OK)
        status = OW_INPUT;
    ow_job_note(reading, status);
    if (status != OW_OK)
        return;
    ow_point point = drain->points[drain->point_count - 1];
    point.x_m += length_m * cos(slope_rad);
    point.z_m -= length_m * sin(slope_rad);
    add_point(reading, node, point);
}

static void read_route(ow_job_reading *reading, const ow_yaml *route)
{
    static const char expected[] =
        "a list of points [x, y, z], each with its unit, z up, or of pieces {length: 200 mm, slope: 30 deg}";
    ow_job_drain *drain = &reading->job->drain;
    if (route->kind != OW_YAML_LIST || route->count == 0) {
        ow_job_fault(reading, route, expected, NULL, "the route is no list");
        return;
    }
    drain->points[0] = (ow_point){0.0, 0.0, 0.0}; /* the turbo's outlet */
    drain->point_count = 1;
    for (const ow_yaml *item = route->first; item != NULL; item = item->next) {
        const ow_yaml *node = ow_yaml_real(item);
        if (node->kind == OW_YAML_MAP)
            read_piece(reading, node);
        else if (node->kind != OW_YAML_LIST || node->count != 3)
            ow_job_fault(reading, node, expected, NULL, "this is no point of a route");
        else
            read_point(reading, node, item == route->first);
    }
    if (drain->point_count == 1 && reading->status == OW_OK)
        ow_job_fault(reading, route, "a point beside the outlet itself", NULL, "the route leads nowhere");
}

static void add_return(ow_job_reading *reading, const ow_yaml *node)
{
    ow_job *job = reading->job;
    const char *name = read_port(reading, job->engine, node, OW_DRAIN);
    for (size_t index = 0; name != NULL && index < job->drain.to_count; index++) {
        if (strcmp(job->drain.to[index], name) == 0) {
            ow_job_fault(reading, node, "each return once", NULL, "\"%s\" is named twice", name);
            return;
        }
    }
    if (name != NULL)
        job->drain.to[job->drain.to_count++] = name;
}

static void read_returns(ow_job_reading *reading, const ow_yaml *node)
{
    if (node->kind == OW_YAML_SCALAR) {
        add_return(reading, node);
        return;
    }
    if (node->kind != OW_YAML_LIST) {
        ow_job_fault(reading, node, "a port, or a list of ports", NULL, "this names no return");
        return;
    }
    for (const ow_yaml *item = node->first; item != NULL; item = item->next) {
        if (reading->job->drain.to_count == OW_JOB_RETURNS) {
            ow_job_fault(reading, ow_yaml_real(item), "up to 8 returns", NULL, "too many returns");
            return;
        }
        add_return(reading, ow_yaml_real(item));
    }
}

/* A class that some hose of the catalogue, or the table of materials, has. */
static const char *read_hose_class(ow_job_reading *reading, const ow_yaml *node)
{
    const char *words = ow_job_words(reading, node, "the class of a hose, such as fluoro-silicone");
    if (words == NULL)
        return NULL;
    const ow_hose_material *material = ow_hose_material_find(words);
    if (material != NULL)
        return material->word;
    for (size_t index = 0; index < ow_catalog_part_count(reading->catalog); index++) {
        const ow_part *part = ow_catalog_part_at(reading->catalog, index);
        if (part->kind == OW_HOSE && ow_words_equal(part->ends[0].name, words))
            return part->ends[0].name;
    }
    ow_text expected = ow_text_new(reading->context);
    ow_text_add(&expected, "one of:");
    for (size_t index = 0; index < ow_hose_material_count(); index++)
        ow_text_format(&expected, "%s %s", index > 0 ? "," : "", ow_hose_material_at(index)->word);
    ow_job_fault_among(reading, node, &expected, "no hose of class \"%s\" is known", words);
    return NULL;
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
        job->drain.hose = read_hose_class(reading, hose);
    if (route != NULL)
        read_route(reading, route);
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

/* yes, no, a heater of the catalogue, or teed: the loop is teed into the heater's hoses, whose bore
 * `heater-hose` gives. */
static void read_heater(ow_job_reading *reading, const ow_yaml *node)
{
    ow_job_coolant *coolant = &reading->job->coolant;
    const char *words = ow_job_words(reading, node, "yes, no, teed, or a heater's id");
    if (words == NULL)
        return;
    coolant->has_heater = true;
    if (ow_words_equal(words, "teed")) {
        coolant->teed = true;
        return;
    }
    const ow_machine *machine = ow_catalog_machine(reading->catalog, words);
    if (machine == NULL) {
        ow_job_note(reading, ow_yaml_bool(reading->context, reading->source, node, &coolant->heater));
        return;
    }
    const ow_port *in = ow_machine_port(machine, "in");
    const ow_port *out = ow_machine_port(machine, "out");
    if (machine->kind != OW_HEATER || in == NULL || out == NULL || in->circuit != OW_COOLANT ||
        out->circuit != OW_COOLANT)
        ow_job_fault(reading, node, "a heater whose record has the coolant ports in and out", NULL,
                     "\"%s\" is no such heater", words);
    coolant->heater = true;
    coolant->heater_machine = machine;
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
    const ow_yaml *hose = ow_yaml_member(map, "hose");
    if (from != NULL)
        coolant->from = read_port(reading, reading->job->engine, from, OW_COOLANT);
    if (to != NULL)
        coolant->to = read_port(reading, reading->job->engine, to, OW_COOLANT);
    if (heater != NULL)
        read_heater(reading, heater);
    if (hose != NULL)
        coolant->hose = read_hose_class(reading, hose);
    if (fluid != NULL) {
        coolant->has_coolant =
            fluid->kind == OW_YAML_SCALAR && ow_coolant_find(fluid->words, &coolant->coolant);
        if (!coolant->has_coolant)
            ow_job_fault(reading, fluid, "water or 50 % glycol", NULL, "this coolant is not known");
    }
    if (hoses != NULL)
        read_hoses(reading, hoses);
    if (coolant->teed && (from != NULL || to != NULL))
        ow_job_fault(reading, from != NULL ? from : to, "heater-hose, the bore of the heater's hoses", NULL,
                     "a loop that is teed into the heater's hoses uses no port of the engine");
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
    for (const ow_job_state *other = job->states; other < state && state->name != NULL; other++) {
        if (other->name != NULL && ow_words_equal(other->name, state->name))
            ow_job_fault(reading, name, "each state once", NULL, "the state \"%s\" is given twice",
                         state->name);
    }
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

/* As in a LINE. What is assumed the plan says for itself, of all its jobs alike. */
void ow_job_read_oil(ow_job_reading *reading, const ow_yaml *node)
{
    ow_job *job = reading->job;
    ow_assumptions assumed = ow_assumptions_new(reading->context);
    ow_physics_reading physics = {.context = reading->context,
                                  .source = reading->source,
                                  .arena = reading->arena,
                                  .assumptions = &assumed};
    ow_oil oil;
    ow_physics_oil(&physics, node, &oil);
    ow_assumptions_done(&assumed);
    ow_job_note(reading, physics.status);
    if (physics.status != OW_OK)
        return;
    job->oil = oil;
    job->has_oil = true;
    if (node->kind == OW_YAML_MAP)
        job->oil_density_assumed = ow_yaml_member(node, "rho15") == NULL;
    else
        job->oil_grade = ow_typical_oil_find(node->words)->name;
}
