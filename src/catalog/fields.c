/* SPDX-License-Identifier: MIT */
#include "catalog/fields.h"

#include <string.h>

#define KIND(kind) (UINT32_C(1) << (kind))
#define MACHINES (KIND(OW_ENGINE) | KIND(OW_TURBO) | KIND(OW_HEATER))
#define ALL (KIND(OW_KIND_COUNT) - 1)
#define FIXTURES (KIND(OW_SWITCH) | KIND(OW_SENDER))
#define BOUGHT (ALL & ~MACHINES)   /* parts, switches and senders */
#define PARTS (BOUGHT & ~FIXTURES) /* of the net */
#define CLOSERS (KIND(OW_PLUG) | KIND(OW_CAP))
#define CROSSWISE (KIND(OW_TEE) | KIND(OW_CROSS))
#define FACED (KIND(OW_FLANGE) | KIND(OW_STUB) | KIND(OW_BUNG))
#define BENT (KIND(OW_ELBOW) | KIND(OW_HOSE_END) | KIND(OW_BANJO_EYE))
#define NONE 0

#define MM 1e-3
#define BAR 1e5
#define DEGREE 0.017453292519943295

#define IN(member) offsetof(ow_draft, member)
#define IN_PORT(member) offsetof(ow_port_draft, member)
#define IN_STOCK(member) offsetof(ow_stock_draft, member)

/* One row a field, so that the table can be proofread. */
/* clang-format off */
/* Ranges catch slips of a unit or a point, they judge nothing: what is fit for a dash or a thread is
 * the business of ow_catalog_check. */
static const ow_field record_fields[] = {
    {"id", OW_FIELD_ID, 0, 0, 0, ALL, ALL, IN(part.id), {0}, "the name it is called by"},
    {"title", OW_FIELD_WORDS, 0, 0, 0, ALL, NONE, IN(part.title), {0}, "words; left out, the page's name"},
    {"note", OW_FIELD_WORDS, 0, 0, 0, ALL, NONE, IN(part.note), {0}, "words"},
    {"material", OW_FIELD_WORDS, 0, 0, 0, BOUGHT, NONE, IN(part.material), {0}, "words"},
    {"standards", OW_FIELD_LIST, 0, 0, 0, BOUGHT, NONE, IN(part.standards), {0}, "a list of words, or one"},
    {"rating", OW_FIELD_QUANTITY, OW_PRESSURE, 0, 2000 * BAR, BOUGHT, NONE, IN(part.rating_pa),
     {0}, "pressure that it bears, above the air's"},
    {"temperature", OW_FIELD_RANGE, OW_TEMPERATURE, -200, 1200, BOUGHT, NONE, IN(temperature),
     {0}, "LO..HI, as -40..150 C"},
    {"fluids", OW_FIELD_FLAGS, 0, 0, 0, BOUGHT, NONE, IN(part.fluids),
     {"oil", "coolant"}, "a list of the fluids that it bears, or one"},
    {"price", OW_FIELD_PRICE, 0, 0, 1e6, BOUGHT, NONE, IN(price),
     {0}, "a decimal number with at most two decimals; ~ = none"},
    {"bore", OW_FIELD_QUANTITY, OW_LENGTH, 0.1 * MM, 200 * MM, PARTS & ~CLOSERS, NONE, IN(bore_m),
     {0}, "least passage of the whole part"},
    {"run-bore", OW_FIELD_QUANTITY, OW_LENGTH, 0.1 * MM, 200 * MM, CROSSWISE, NONE, IN(run_bore_m),
     {0}, "of the run"},
    {"branch-bore", OW_FIELD_QUANTITY, OW_LENGTH, 0.1 * MM, 200 * MM, CROSSWISE, NONE, IN(branch_bore_m),
     {0}, "of the branch"},
    {"side-bore", OW_FIELD_QUANTITY, OW_LENGTH, 0.1 * MM, 200 * MM, KIND(OW_GAUGE_ADAPTER), NONE,
     IN(side_bore_m), {0}, "of the side port"},
    {"length", OW_FIELD_QUANTITY, OW_LENGTH, 0, 50, BOUGHT & ~KIND(OW_HOSE), NONE, IN(part.length_m),
     {0}, "along the run, seat to seat"},
    {"branch-length", OW_FIELD_QUANTITY, OW_LENGTH, 0, 1, CROSSWISE | KIND(OW_GAUGE_ADAPTER), NONE,
     IN(part.branch_length_m), {0}, "centre of the run to the branch's end"},
    {"angle", OW_FIELD_QUANTITY, OW_ANGLE, 0, 180 * DEGREE, BENT, NONE, IN(part.angle_rad),
     {0}, "turn of the path, 0 = straight"},
    {"orifice", OW_FIELD_QUANTITY, OW_LENGTH, 0.1 * MM, 50 * MM, KIND(OW_RESTRICTOR), NONE,
     IN(part.orifice_m), {0}, "the restriction"},
    {"bend-radius", OW_FIELD_QUANTITY, OW_LENGTH, 1 * MM, 5, KIND(OW_HOSE) | KIND(OW_LINE), NONE,
     IN(part.bend_radius_m), {0}, "least, at the middle of the hose"},
    {"hole-count", OW_FIELD_COUNT, 0, 1, 16, KIND(OW_BANJO_BOLT), NONE, IN(part.hole_count),
     {0}, "cross-holes at one stud"},
    {"hole-bore", OW_FIELD_QUANTITY, OW_LENGTH, 0.1 * MM, 50 * MM, KIND(OW_BANJO_BOLT), NONE,
     IN(part.hole_bore_m), {0}, "of one cross-hole"},
    {"hexagon", OW_FIELD_QUANTITY, OW_LENGTH, 3 * MM, 200 * MM, BOUGHT, NONE, IN(part.hexagon_m),
     {0}, "across the flats"},
    {"mass", OW_FIELD_QUANTITY, OW_MASS, 0, 100, BOUGHT, NONE, IN(part.mass_kg), {0}, "a mass"},
    {"typical", OW_FIELD_YES, 0, 0, 0, PARTS, NONE, IN(part.typical),
     {0}, "yes: dimensions are typical, no standard's"},
    {"tube", OW_FIELD_YES, 0, 0, 0, KIND(OW_LINE), NONE, IN(part.rigid_tube),
     {0}, "yes: rigid pipe, no hose"},
    {"bolt-pattern", OW_FIELD_WORDS, 0, 0, 0, FACED, NONE, IN(part.bolt_pattern),
     {0}, "words: bolts, spacing, gasket"},
    {"ports", OW_FIELD_PORTS, 0, 0, 0, MACHINES, MACHINES, IN(ports), {0}, "a map of named ports"},
    {"bearing", OW_FIELD_CHOICE, 0, 0, 0, KIND(OW_TURBO), NONE, IN(bearing),
     {"journal", "ball"}, "kind of bearing"},
    {"restrictor", OW_FIELD_CHOICE, 0, 0, 0, KIND(OW_TURBO), NONE, IN(restrictor),
     {"unknown", "none", "built-in"}, "whether its inlet holds a restrictor"},
    {"size", OW_FIELD_CHOICE, 0, 0, 0, KIND(OW_TURBO), NONE, IN(size),
     {"small", "medium", "large"}, "for an oil flow that nobody gives"},
    {"coolant-apart", OW_FIELD_QUANTITY, OW_LENGTH, 1 * MM, 1, KIND(OW_TURBO), NONE, IN(coolant_apart_m),
     {0}, "between the centres of the coolant ports"},
};

static const ow_field port_fields[] = {
    {"end", OW_FIELD_END, 0, 0, 0, ALL, ALL, IN_PORT(port.end), {0}, "the port's own end"},
    {"circuit", OW_FIELD_CHOICE, 0, 0, 0, ALL, NONE, IN_PORT(circuit),
     {"feed", "drain", "coolant"}, "where it belongs"},
    {"bore", OW_FIELD_QUANTITY, OW_LENGTH, 0.1 * MM, 200 * MM, ALL, NONE, IN_PORT(port.bore_m),
     {0}, "of the passage behind it"},
    {"pressure", OW_FIELD_QUANTITY, OW_PRESSURE, 0, 2000 * BAR, ALL, NONE, IN_PORT(port.pressure_pa),
     {0}, "a source's, hot at full revs"},
    {"holds", OW_FIELD_ID, 0, 0, 0, ALL, NONE, IN_PORT(port.holds),
     {0}, "id of the switch or sender that sits there now"},
    {"position", OW_FIELD_PLACE, OW_LENGTH, -20, 20, ALL, NONE, IN_PORT(position),
     {0}, "[x, y, z], each with its unit, z up"},
    {"direction", OW_FIELD_DIRECTION, 0, -1e6, 1e6, ALL, NONE, IN_PORT(direction),
     {0}, "[x, y, z], out of the port, bare numbers"},
    {"note", OW_FIELD_WORDS, 0, 0, 0, ALL, NONE, IN_PORT(port.note), {0}, "words"},
};

static const ow_field stock_fields[] = {
    {"id", OW_FIELD_ID, 0, 0, 0, ALL, ALL, IN_STOCK(id), {0}, "id of the part"},
    {"quantity", OW_FIELD_NUMBER, 0, 0, 1e9, ALL, NONE, IN_STOCK(quantity),
     {0}, "on hand: pieces, of a hose metres"},
    {"price", OW_FIELD_PRICE, 0, 0, 1e6, ALL, NONE, IN_STOCK(price),
     {0}, "as in the catalogue; of a hose for a metre"},
};

/* clang-format on */

#define TABLE(fields)                          \
    {                                          \
        fields, sizeof fields / sizeof *fields \
    }

ow_field_table ow_record_fields(void)
{
    ow_field_table table = TABLE(record_fields);
    return table;
}

ow_field_table ow_port_fields(void)
{
    ow_field_table table = TABLE(port_fields);
    return table;
}

ow_field_table ow_stock_fields(void)
{
    ow_field_table table = TABLE(stock_fields);
    return table;
}

const ow_field *ow_field_find(ow_field_table table, const char *key)
{
    for (size_t i = 0; i < table.count; i++)
        if (strcmp(table.fields[i].key, key) == 0)
            return &table.fields[i];
    return NULL;
}
