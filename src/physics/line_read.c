/* SPDX-License-Identifier: MIT */
#include "oilway/line.h"

#include "physics/feed_internal.h"
#include "physics/reading.h"
#include "physics/whole_text.h"

static const ow_physics_field oil_at = {"oil", OW_TEMPERATURE, OW_OIL_TEMPERATURE_LOW_C,
                                        OW_OIL_TEMPERATURE_HIGH_C};
static const ow_physics_field gallery = {"gallery", OW_PRESSURE, 0.0, OW_SOURCE_HIGH_PA};
static const ow_physics_field rise = {"rise", OW_LENGTH, -OW_RISE_HIGH_M, OW_RISE_HIGH_M};
static const ow_physics_field roughness = {"roughness", OW_LENGTH, 0.0, OW_ROUGHNESS_HIGH_M};
static const ow_physics_field hole_length = {"length", OW_LENGTH, 0.0, OW_LENGTH_HIGH_M};
static const ow_physics_field target = {"target", OW_PRESSURE, 100.0, OW_SOURCE_HIGH_PA};

/* ---- loads ---------------------------------------------------------------------------------- */

static const ow_physics_field load_flow = {"flow", OW_FLOW, 1e-9, OW_FLOW_HIGH_M3S};
static const ow_physics_field load_at = {"at", OW_PRESSURE, 1.0, OW_SOURCE_HIGH_PA};
static const ow_physics_field load_viscosity = {"viscosity", OW_DYNAMIC_VISCOSITY, 1e-5, 1e4};
static const ow_physics_field load_density = {"density", OW_DENSITY, 100.0, 5000.0};
static const ow_physics_field load_share = {"laminar-share", OW_RATIO, 0.0, 1.0};

/* Which typical load stands in: `bearing` and `size`, a medium journal where neither is said. */
static ow_load_kind read_kind(ow_physics_reading *reading, const ow_yaml *map)
{
    static const char *const bearings[] = {"journal", "ball"};
    static const char *const sizes[] = {"small", "medium", "large"};
    size_t bearing = 0, size = 1;
    const ow_yaml *bearing_at = ow_yaml_member(map, "bearing"), *size_at = ow_yaml_member(map, "size");
    if (bearing_at != NULL)
        ow_physics_note(reading,
                        ow_yaml_choice(reading->context, reading->source, bearing_at, bearings, 2, &bearing));
    if (size_at != NULL)
        ow_physics_note(reading, ow_yaml_choice(reading->context, reading->source, size_at, sizes, 3, &size));
    return bearing == 1 ? OW_LOAD_BALL : (ow_load_kind)(OW_LOAD_JOURNAL_SMALL + size);
}

/* Every figure of a load that is not given is the typical one's, and an assumption. */
static void read_figure(ow_physics_reading *reading, const ow_yaml *map, const ow_physics_field *field,
                        double *value, const ow_typical_load *typical, const char *what)
{
    if (ow_physics_may(reading, map, field, value))
        return;
    ow_text words = ow_text_new(reading->context);
    ow_quantity_write(&words, field->dimension, *value, 4);
    ow_status status = ow_text_status(&words);
    if (status == OW_OK)
        status = ow_assumptions_add(reading->assumptions, typical->mark, what, typical->source, "%s",
                                    ow_text_words(&words));
    ow_physics_note(reading, status);
    ow_text_done(&words);
}

static void read_load(ow_physics_reading *reading, const ow_yaml *node, ow_branch *branch)
{
    static const char *const known[] = {"name",    "flow",          "at",      "viscosity",
                                        "density", "laminar-share", "bearing", "size"};
    if (!ow_physics_map(reading, node, known, sizeof known / sizeof known[0]))
        return;
    ow_load_kind kind = read_kind(reading, node);
    const ow_typical_load *typical = ow_typical_load_at(kind);
    branch->has_load = true;
    branch->ball_bearing = kind == OW_LOAD_BALL;
    branch->load = typical->load;
    branch->load.name =
        ow_physics_words(reading, node, "name", branch->name[0] != '\0' ? branch->name : "turbo");
    read_figure(reading, node, &load_flow, &branch->load.flow_m3s, typical, "turbo's oil flow");
    read_figure(reading, node, &load_at, &branch->load.pressure_pa, typical, "turbo's flow is at");
    read_figure(reading, node, &load_viscosity, &branch->load.viscosity_pas, typical,
                "turbo's flow is for a viscosity of");
    read_figure(reading, node, &load_density, &branch->load.density_kgm3, typical,
                "turbo's flow is for a density of");
    read_figure(reading, node, &load_share, &branch->load.laminar_share, typical,
                "laminar share of the turbo's pressure");
}

/* ---- the tree ------------------------------------------------------------------------------- */

static void read_branch(ow_physics_reading *reading, const ow_yaml *map, size_t depth, ow_branch *branch);

static void read_split(ow_physics_reading *reading, const ow_yaml *node, size_t depth, ow_branch *branch)
{
    static const char *const known[] = {"name", "rise", "pieces", "load", "split"};
    if (node->kind != OW_YAML_LIST || node->count == 0 || node->count > OW_BRANCHES_MAX ||
        depth == OW_BRANCH_DEPTH_MAX) {
        ow_physics_fault(reading, node, "a list of 1 to 8 branches, at most 3 splits behind one another",
                         NULL, "no split that can be reckoned");
        return;
    }
    ow_branch *branches = ow_arena_get_array(reading->arena, node->count, sizeof *branches);
    if (branches == NULL) {
        ow_physics_note(reading, OW_MEMORY);
        return;
    }
    size_t count = 0;
    for (const ow_yaml *item = node->first; item != NULL; item = item->next, count++)
        if (ow_physics_map(reading, item, known, 5))
            read_branch(reading, ow_yaml_real(item), depth + 1, &branches[count]);
    branch->branches = branches;
    branch->branch_count = count;
}

static void read_branch(ow_physics_reading *reading, const ow_yaml *map, size_t depth, ow_branch *branch)
{
    const ow_yaml *pieces = ow_yaml_member(map, "pieces"), *load = ow_yaml_member(map, "load"),
                  *split = ow_yaml_member(map, "split");
    branch->name = depth > 0 ? ow_physics_words(reading, map, "name", "") : "";
    ow_physics_may(reading, map, &rise, &branch->rise_m);
    if (pieces != NULL)
        ow_physics_pieces(reading, pieces, true, &branch->pieces, &branch->piece_count);
    if (load != NULL)
        read_load(reading, load, branch);
    if (split != NULL && load != NULL)
        ow_physics_fault(reading, split, "either a load or a split", NULL, "a line ends in one thing only");
    else if (split != NULL)
        read_split(reading, split, depth, branch);
}

/* ---- states --------------------------------------------------------------------------------- */

static ow_status assume_states(ow_physics_reading *reading, ow_feed *feed)
{
    feed->states = ow_typical_state_at(0);
    feed->state_count = OW_FEED_STATES_TYPICAL;
    for (size_t i = 0; i < feed->state_count; i++) {
        ow_status status =
            ow_assumptions_add(reading->assumptions, OW_MARK_ASSUMED, "state",
                               "usual for an engine; measure yours", "%s: oil at %.0f C, gallery at %.1f bar",
                               feed->states[i].name, feed->states[i].oil_c, feed->states[i].source_pa / 1e5);
        if (status != OW_OK)
            return status;
    }
    return OW_OK;
}

static void read_state(ow_physics_reading *reading, const ow_yaml *node, const ow_oil *oil,
                       ow_feed_state *state)
{
    static const char *const known[] = {"name", "oil", "gallery"};
    *state = (ow_feed_state){.name = "state", .oil_c = 100.0};
    if (!ow_physics_map(reading, node, known, 3))
        return;
    state->name = ow_physics_words(reading, node, "name", "state");
    ow_physics_need(reading, node, &oil_at, &state->oil_c);
    ow_physics_need(reading, node, &gallery, &state->source_pa);
    ow_liquid liquid;
    if (reading->status == OW_OK && ow_oil_liquid(oil, state->oil_c, &liquid) != OW_OK)
        ow_physics_fault(reading, ow_yaml_member(node, "oil"), "a temperature at which the oil flows", NULL,
                         "at %.4g C this oil is as good as solid", state->oil_c);
}

static void read_states(ow_physics_reading *reading, const ow_yaml *node, ow_feed *feed)
{
    if (node == NULL) {
        ow_physics_note(reading, assume_states(reading, feed));
        return;
    }
    if (node->kind != OW_YAML_LIST || node->count == 0 || node->count > OW_FEED_STATES_MAX) {
        ow_physics_fault(reading, node,
                         "a list of 1 to 16 states, such as [{name: hot, oil: 100 C, gallery: 4 bar}]", NULL,
                         "no list of states");
        return;
    }
    ow_feed_state *states = ow_arena_get_array(reading->arena, node->count, sizeof *states);
    if (states == NULL) {
        ow_physics_note(reading, OW_MEMORY);
        return;
    }
    size_t count = 0;
    for (const ow_yaml *item = node->first; item != NULL; item = item->next)
        read_state(reading, ow_yaml_real(item), &feed->oil, &states[count++]);
    feed->states = states;
    feed->state_count = count;
}

/* ---- the restrictor ------------------------------------------------------------------------- */

static void read_restrictor(ow_physics_reading *reading, const ow_yaml *node, ow_feed *feed)
{
    static const char *const known[] = {"length", "target", "state"};
    const char *words[OW_FEED_STATES_MAX];
    if (!ow_physics_map(reading, node, known, 3))
        return;
    if (reading->wanted == NULL) {
        ow_physics_fault(reading, node, "`- restrictor: wanted` among the pieces", NULL,
                         "a restrictor is asked for, but its place is not said");
        return;
    }
    ow_feed_restrictor *restrictor = &feed->restrictor;
    restrictor->wanted = true;
    restrictor->piece = reading->wanted;
    ow_physics_need(reading, node, &hole_length, &restrictor->piece->length_m);
    ow_physics_need(reading, node, &target, &restrictor->target_pa);
    for (size_t i = 0; i < feed->state_count; i++)
        words[i] = feed->states[i].name;
    restrictor->state = feed->state_count > 0 ? feed->state_count - 1 : 0;
    const ow_yaml *state = ow_yaml_member(node, "state");
    if (state != NULL)
        ow_physics_note(reading, ow_yaml_choice(reading->context, reading->source, state, words,
                                                feed->state_count, &restrictor->state));
    else if (feed->state_count > 0)
        ow_physics_note(reading, ow_assumptions_add(reading->assumptions, OW_MARK_ASSUMED,
                                                    "state that the restrictor holds in", "the last one",
                                                    "%.60s", feed->states[restrictor->state].name));
}

/* ---- the whole ------------------------------------------------------------------------------ */

static void read_roughness(ow_physics_reading *reading, const ow_yaml *map, ow_feed *feed)
{
    feed->roughness_m = OW_FEED_ROUGHNESS_M;
    if (!ow_physics_may(reading, map, &roughness, &feed->roughness_m))
        ow_physics_note(reading, ow_assumptions_add(reading->assumptions, OW_MARK_FROM_MEMORY, "roughness",
                                                    "drawn tube and PTFE; without effect where laminar",
                                                    "%.1f um", feed->roughness_m * 1e6));
}

static void read_line(ow_physics_reading *reading, const ow_yaml *map, void *into)
{
    static const char *const known[] = {"line",   "oil",  "rise",  "roughness", "states",
                                        "pieces", "load", "split", "restrictor"};
    ow_feed *feed = into;
    if (!ow_physics_note(reading,
                         ow_yaml_is_document(reading->context, reading->source, map, OW_DOCUMENT_LINE)) ||
        !ow_physics_map(reading, map, known, sizeof known / sizeof known[0]))
        return;
    feed->title = ow_physics_words(reading, map, "line", "");
    const ow_yaml *oil = ow_yaml_need_such(reading->context, reading->source, map, "oil", "oil: 15W-40");
    if (oil != NULL)
        ow_physics_oil(reading, oil, &feed->oil);
    else
        ow_physics_note(reading, OW_INPUT);
    read_roughness(reading, map, feed);
    read_states(reading, ow_yaml_member(map, "states"), feed);
    if (ow_yaml_need_such(reading->context, reading->source, map, "pieces",
                          "pieces: [chamber, pipe: {bore: 4.4 mm, length: 650 mm}, chamber]") == NULL)
        ow_physics_note(reading, OW_INPUT);
    read_branch(reading, map, 0, &feed->trunk);
    const ow_yaml *restrictor = ow_yaml_member(map, "restrictor");
    if (restrictor != NULL)
        read_restrictor(reading, restrictor, feed);
    else if (reading->wanted != NULL)
        ow_physics_fault(reading, reading->wanted_at, "restrictor: {length: 3 mm, target: 3.0 bar}", NULL,
                         "a restrictor is wanted, but not what it must hold");
    if (reading->status == OW_OK && !ow_branch_has_load(&feed->trunk))
        ow_physics_fault(reading, map, "load: {…}, or split: with a load in it", NULL,
                         "the line ends in no load");
    if (reading->status == OW_OK && ow_feed_check(feed) != OW_OK)
        ow_physics_fault(reading, map, "at most 200 pieces and 24 branches in all", NULL,
                         "the line is too large");
}

ow_status ow_line_read(const ow_context *context, const char *file, const char *text, size_t length,
                       ow_line *line)
{
    ow_line made = {.assumptions = ow_assumptions_new(context)};
    ow_status status = ow_whole_text_read(context, file, text, length, read_line, &made.feed,
                                          &made.assumptions, &made.storage);
    if (status == OW_OK)
        *line = made;
    return status;
}

void ow_line_free(ow_line *line)
{
    ow_assumptions_done(&line->assumptions);
    ow_whole_text_free(line->storage);
    *line = (ow_line){.assumptions = line->assumptions};
}
