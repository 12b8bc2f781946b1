/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "oilway/line.h"
#include "physics/whole_text.h"

static const double right_angle = 1.5707963267948966;

static const ow_physics_field heat = {"heat", OW_POWER, OW_COOLANT_HEAT_LOW_W, OW_COOLANT_HEAT_HIGH_W};
static const ow_physics_field cold = {"cold", OW_TEMPERATURE, OW_COOLANT_LOW_C, OW_COOLANT_HIGH_C};
static const ow_physics_field rise = {"rise", OW_LENGTH, -OW_RISE_HIGH_M, OW_RISE_HIGH_M};
static const ow_physics_field roughness = {"roughness", OW_LENGTH, 0.0, OW_ROUGHNESS_HIGH_M};
static const ow_physics_field cap = {"cap", OW_PRESSURE, 0.0, OW_COOLANT_CAP_HIGH_PA};
static const ow_physics_field apart = {"apart", OW_LENGTH, 0.0, OW_COOLANT_APART_HIGH_M};
static const ow_physics_field jacket_k = {"k", OW_RATIO, 0.0, OW_LOSS_COEFFICIENT_HIGH};
static const ow_physics_field jacket_bore = {"bore", OW_LENGTH, OW_BORE_LOW_M, OW_BORE_HIGH_M};

/* A member that may be left out; its value is then an assumption. */
static void read_or_assume(ow_physics_reading *reading, const ow_yaml *map, const ow_physics_field *field,
                           double *value, const char *what, const char *source)
{
    if (ow_physics_may(reading, map, field, value))
        return;
    ow_text words = ow_text_new(reading->context);
    if (field->dimension == OW_RATIO) /* a coefficient, no percentage */
        ow_text_format(&words, "%.4g", *value);
    else
        ow_quantity_write(&words, field->dimension, *value, 4);
    ow_status status = ow_text_status(&words);
    if (status == OW_OK)
        status = ow_assumptions_add(reading->assumptions, OW_MARK_ASSUMED, what, source, "%s",
                                    ow_text_words(&words));
    ow_physics_note(reading, status);
    ow_text_done(&words);
}

static void read_coolant(ow_physics_reading *reading, const ow_yaml *map, ow_loop *loop)
{
    const ow_yaml *node = ow_yaml_member(map, "coolant");
    loop->coolant = OW_GLYCOL_50;
    if (node == NULL)
        ow_physics_note(reading, ow_assumptions_add(reading->assumptions, OW_MARK_ASSUMED, "coolant", "usual",
                                                    "%s", ow_coolant_word(loop->coolant)));
    else if (node->kind != OW_YAML_SCALAR || !ow_coolant_find(node->words, &loop->coolant))
        ow_physics_fault(reading, node, "water or 50 % glycol", NULL, "coolant: \"%.40s\" is not known",
                         node->words);
}

static void read_ports(ow_physics_reading *reading, const ow_yaml *map, ow_loop *loop)
{
    static const char *const known[] = {"apart", "angle"};
    static const ow_physics_field angle = {"angle", OW_ANGLE, -right_angle - 1e-9, right_angle + 1e-9};
    const ow_yaml *ports = ow_yaml_need_such(reading->context, reading->source, map, "ports",
                                             "ports: {apart: 70 mm, angle: 15 deg}");
    if (ports == NULL)
        ow_physics_note(reading, OW_INPUT);
    else if (ow_physics_map(reading, ports, known, 2)) {
        ow_physics_need(reading, ports, &apart, &loop->apart_m);
        ow_physics_need(reading, ports, &angle, &loop->angle_rad);
    }
}

static void read_leg(ow_physics_reading *reading, const ow_yaml *map, const char *key,
                     const ow_piece **pieces, size_t *count)
{
    const ow_yaml *leg = ow_yaml_need(reading->context, reading->source, map, key);
    if (leg == NULL)
        ow_physics_note(reading, OW_INPUT);
    else if (leg->kind == OW_YAML_LIST && leg->count == 0)
        ow_physics_fault(reading, leg, "at least one piece", NULL, "%s: no pieces", key);
    else
        ow_physics_pieces(reading, leg, false, pieces, count);
}

/* The bore of the first piece that has one. */
static double first_bore_m(const ow_loop *loop)
{
    for (size_t i = 0; i < loop->cold_count; i++)
        if (loop->cold_leg[i].kind != OW_PIECE_CHAMBER)
            return loop->cold_leg[i].bore_m;
    return 0.010;
}

static void read_jacket(ow_physics_reading *reading, const ow_yaml *map, ow_loop *loop)
{
    static const char *const known[] = {"k", "bore"};
    const ow_yaml *jacket = ow_yaml_member(map, "jacket");
    loop->jacket_coefficient = OW_JACKET_COEFFICIENT;
    loop->jacket_bore_m = first_bore_m(loop);
    if (jacket != NULL && !ow_physics_map(reading, jacket, known, 2))
        return;
    read_or_assume(reading, jacket, &jacket_k, &loop->jacket_coefficient,
                   "loss coefficient of the water jacket", "no published figure was found");
    read_or_assume(reading, jacket, &jacket_bore, &loop->jacket_bore_m, "bore of the water jacket's ports",
                   "as the cold leg");
}

static void read_loop(ow_physics_reading *reading, const ow_yaml *map, void *into)
{
    static const char *const known[] = {"loop",     "coolant", "heat",   "cold", "ports",    "rise",
                                        "cold-leg", "hot-leg", "jacket", "cap",  "roughness"};
    ow_loop *loop = into;
    if (!ow_physics_note(reading,
                         ow_yaml_is_document(reading->context, reading->source, map, OW_DOCUMENT_LOOP)) ||
        !ow_physics_map(reading, map, known, sizeof known / sizeof known[0]))
        return;
    loop->title = ow_physics_words(reading, map, "loop", "");
    loop->heat_w = OW_SOAK_HEAT_W;
    loop->cold_c = 90.0;
    loop->cap_pa = 100000.0;
    loop->roughness_m = OW_FEED_ROUGHNESS_M;
    read_coolant(reading, map, loop);
    read_or_assume(reading, map, &heat, &loop->heat_w, "heat soaking in after shutdown",
                   "the middle of 100 to 600 W");
    read_or_assume(reading, map, &cold, &loop->cold_c, "temperature of the cold coolant",
                   "usual for a thermostat");
    read_or_assume(reading, map, &cap, &loop->cap_pa, "pressure of the cap", "usual");
    read_or_assume(reading, map, &rise, &loop->rise_m, "rise of the hot return above the high port",
                   "none is given");
    ow_physics_may(reading, map, &roughness,
                   &loop->roughness_m); /* without effect: not worth an assumption */
    read_ports(reading, map, loop);
    read_leg(reading, map, "cold-leg", &loop->cold_leg, &loop->cold_count);
    read_leg(reading, map, "hot-leg", &loop->hot_leg, &loop->hot_count);
    read_jacket(reading, map, loop);
    if (reading->status == OW_OK && ow_loop_check(loop) != OW_OK)
        ow_physics_fault(reading, map, NULL, NULL, "the loop cannot be reckoned");
}

ow_status ow_loop_read(const ow_context *context, const char *file, const char *text, size_t length,
                       ow_loop_text *loop)
{
    ow_loop_text made = {.assumptions = ow_assumptions_new(context)};
    ow_status status = ow_whole_text_read(context, file, text, length, read_loop, &made.loop,
                                          &made.assumptions, &made.storage);
    if (status == OW_OK)
        *loop = made;
    return status;
}

void ow_loop_free(ow_loop_text *loop)
{
    ow_assumptions_done(&loop->assumptions);
    ow_whole_text_free(loop->storage);
    *loop = (ow_loop_text){.assumptions = loop->assumptions};
}
