/* SPDX-License-Identifier: MIT */
/*
 * Dimensions against what the ends leave room for. What cannot be (a bore wider than the thread's core)
 * is an error; what no counter sells (a bore a third of the usual) is a warning.
 */
#include <math.h>
#include <string.h>

#include "catalog/audit.h"
#include "catalog/ranges.h"
#include "oilway/thread_size.h"

#define MM 1e3 /* from m */

/* Beyond these shares of the usual bore somebody mistook a figure (common practice). */
#define BORE_LEAST_SHARE 0.35
#define BORE_MOST_SHARE 1.25
#define BANJO_LEAST_SHARE 0.5
#define BANJO_MOST_SHARE 1.5

/* What an end leaves room for, mm; 0 = not known. */
typedef struct ow_room {
    double most_mm;  /* no metal beyond it */
    double usual_mm; /* of a straight fitting with this end */
    const char *what, *source;
} ow_room;

/* The widest core that the thread's standard allows: root of a male, crest of a female, m; 0 if not known. A
 * taper is taken at the gauge plane. */
static double core_m(const ow_thread *thread, bool male)
{
    ow_thread_size size;
    if (ow_thread_size_of(thread, male, OW_CLASS_USUAL, &size) != OW_OK)
        return 0;
    return size.minor.has_most ? size.minor.most_m : size.minor.basic_m;
}

static ow_room room_by_thread(const ow_end *end)
{
    ow_thread thread;
    ow_room room = {.what = "core of the thread",
                    .source = "ISO 965-1, ASME B1.1, ASME B1.20.1, ISO 7-1, ISO 228-1"};
    if (ow_end_thread(end, &thread))
        room.most_mm = core_m(&thread, end->gender == OW_MALE) * MM;
    return room;
}

static ow_room room_by_dash(const ow_end *end)
{
    ow_room room = {.what = "size"};
    const ow_dash_range *dash = end->size_unit == OW_SIZE_DASH ? ow_dash_range_find(end->size) : NULL;
    if (!dash)
        return room;
    room.source = dash->source;
    bool hose = end->form == OW_FORM_HOSE || end->form == OW_FORM_TAIL;
    if (!hose && end->seat != OW_SEAT_FLARE37) {
        room = room_by_thread(end);
        room.usual_mm = dash->fitting_mm;
        return room;
    }
    room.most_mm = hose ? dash->hose_most_mm * 1.05 : dash->tube_mm;
    room.usual_mm = hose ? dash->hose_least_mm : dash->fitting_mm;
    return room;
}

static ow_room room_of(const ow_end *end)
{
    ow_room room = {.what = "size", .source = "common practice"};
    switch (end->form) {
    case OW_FORM_THREAD:
        return room_by_thread(end);
    case OW_FORM_DASH:
        return end->seat == OW_SEAT_FLARE37 || end->gender == OW_MALE ? room_by_dash(end)
                                                                      : room_by_thread(end);
    case OW_FORM_TUBE_NUT:
        room.most_mm = end->size_unit == OW_SIZE_INCH_64 ? end->size * 25.4 / 64 : end->size * 1e-3;
        room.what = "tube";
        room.source = "SAE J512, ISO 4038";
        return room;
    case OW_FORM_HOSE:
    case OW_FORM_TAIL:
        if (end->size_unit == OW_SIZE_DASH)
            return room_by_dash(end);
        room.usual_mm = end->size * 1e-3;
        room.most_mm = room.usual_mm * 1.05;
        return room;
    case OW_FORM_BARB:
    case OW_FORM_BEAD:
    case OW_FORM_TUBE:
    case OW_FORM_WELD:
        room.most_mm = end->size * 1e-3;
        room.what = "outside diameter";
        return room;
    case OW_FORM_BANJO:
    case OW_FORM_FLANGE:
    case OW_FORM_COUNT:
        break;
    }
    return room;
}

/* Whether there was something to tell: one wrong bore is told once. */
static bool look_at_leg(ow_audit *audit, const ow_entry *entry, size_t end)
{
    const ow_part *part = entry->part;
    double bore_mm = part->leg_bore_m[end] * MM;
    ow_room room = room_of(&part->ends[end]);
    char name[OW_END_TEXT_SIZE];
    if (bore_mm < 0)
        return false;
    bool too_wide = room.most_mm > 0 && bore_mm > room.most_mm * 1.0001;
    bool unusual = room.usual_mm > 0 && bore_mm > room.usual_mm * BORE_MOST_SHARE &&
                   part->ends[end].form == OW_FORM_DASH;
    ow_end_name(&part->ends[end], name);
    if (too_wide)
        ow_audit_tell(audit, OW_ERROR, entry, NULL, "measure the bore again, or the end",
                      "the bore of \"%s\" (%.4g mm) is wider than the %s of its end %s \"%s\" (%.4g mm; %s)",
                      part->id, bore_mm, room.what, part->end_names[end], name, room.most_mm, room.source);
    else if (unusual)
        ow_audit_tell(audit, OW_WARNING, entry, NULL, NULL,
                      "the bore of \"%s\" (%.4g mm) is unusually wide for its end %s \"%s\" (%.4g mm; %s)",
                      part->id, bore_mm, part->end_names[end], name, room.usual_mm, room.source);
    return too_wide || unusual;
}

/* Too narrow is measured at the narrowest end: a reducer is as narrow as its small side. */
static void look_at_narrowness(ow_audit *audit, const ow_entry *entry)
{
    const ow_part *part = entry->part;
    double least_mm = 0, bore_mm = HUGE_VAL;
    for (size_t end = 0; end < part->end_count; end++) {
        ow_room room = room_of(&part->ends[end]);
        double usual = room.usual_mm > 0 ? room.usual_mm : 0.6 * room.most_mm;
        if (usual > 0 && (least_mm <= 0 || usual < least_mm))
            least_mm = usual;
        if (part->leg_bore_m[end] >= 0 && part->leg_bore_m[end] * MM < bore_mm)
            bore_mm = part->leg_bore_m[end] * MM;
    }
    if (part->kind == OW_RESTRICTOR || part->kind == OW_BANJO_BOLT || least_mm <= 0)
        return;
    if (bore_mm < least_mm * BORE_LEAST_SHARE)
        ow_audit_tell(
            audit, OW_WARNING, entry, NULL, "if it is meant to restrict, its kind is restrictor",
            "the bore of \"%s\" (%.4g mm) is unusually narrow for its ends (about %.2g mm is usual)",
            part->id, bore_mm, least_mm);
}

static void look_at_hose(ow_audit *audit, const ow_entry *entry)
{
    const ow_part *part = entry->part;
    double bore_mm = part->leg_bore_m[0] * MM;
    const ow_end *end = &part->ends[0];
    if (part->kind != OW_HOSE || bore_mm < 0 || end->form != OW_FORM_HOSE)
        return;
    double nominal_mm = end->size_unit == OW_SIZE_UM ? end->size * 1e-3 : 0;
    if (nominal_mm > 0 && fabs(bore_mm - nominal_mm) > 0.5)
        ow_audit_tell(
            audit, OW_WARNING, entry, "a hose sized in millimetres goes by its true bore, within 0.5 mm",
            NULL, "hose \"%s\" is called %.4g mm and has a bore of %.4g mm", part->id, nominal_mm, bore_mm);
    if (part->bend_radius_m >= 0 && part->bend_radius_m * MM < 2 * bore_mm)
        ow_audit_tell(audit, OW_WARNING, entry, NULL, NULL,
                      "hose \"%s\" would kink: a bend radius of %.4g mm at a bore of %.4g mm", part->id,
                      part->bend_radius_m * MM, bore_mm);
}

static void look_at_banjo(ow_audit *audit, const ow_entry *entry)
{
    const ow_part *part = entry->part;
    ow_thread thread;
    if (part->kind != OW_BANJO_BOLT || !ow_end_thread(&part->ends[0], &thread))
        return;
    double bore_mm = part->leg_bore_m[0] * MM, hole_mm = part->hole_bore_m * MM;
    const ow_banjo_range *range = ow_banjo_range_find(&thread);
    if (bore_mm > 0 && hole_mm > bore_mm)
        ow_audit_tell(audit, OW_WARNING, entry, NULL, NULL,
                      "the cross-holes of \"%s\" (%.4g mm) are wider than its bore (%.4g mm)", part->id,
                      hole_mm, bore_mm);
    if (range && bore_mm > 0 &&
        (bore_mm < range->bore_mm * BANJO_LEAST_SHARE || bore_mm > range->bore_mm * BANJO_MOST_SHARE))
        ow_audit_tell(audit, OW_WARNING, entry, NULL, NULL,
                      "the bore of \"%s\" (%.4g mm) is far from %.4g mm (%s)", part->id, bore_mm,
                      range->bore_mm, range->source);
    if (range && hole_mm > 0 &&
        (hole_mm < range->hole_mm * BANJO_LEAST_SHARE || hole_mm > range->hole_mm * BANJO_MOST_SHARE))
        ow_audit_tell(audit, OW_WARNING, entry, NULL, NULL,
                      "the cross-holes of \"%s\" (%.4g mm) are far from %.4g mm (%s)", part->id, hole_mm,
                      range->hole_mm, range->source);
}

static void look_at_lengths(ow_audit *audit, const ow_entry *entry)
{
    const ow_part *part = entry->part;
    const ow_length_range *range = ow_length_range_find(part->kind);
    double length_mm = part->length_m * MM;
    if (range && length_mm >= 0 && (length_mm < range->least_mm || length_mm > range->most_mm))
        ow_audit_tell(audit, OW_WARNING, entry, NULL, NULL,
                      "\"%s\" is %.4g mm long; from %.4g to %.4g mm is usual of kind %s (%s)", part->id,
                      length_mm, range->least_mm, range->most_mm, ow_kind_word(part->kind), range->source);
    if (part->kind == OW_RESTRICTOR && part->orifice_m >= 0 && part->leg_bore_m[0] >= 0 &&
        part->orifice_m > part->leg_bore_m[0])
        ow_audit_tell(audit, OW_ERROR, entry, NULL, NULL,
                      "the orifice of \"%s\" (%.4g mm) is wider than its bore (%.4g mm)", part->id,
                      part->orifice_m * MM, part->leg_bore_m[0] * MM);
}

/* A female end is cut into the hexagon: there must be metal around it. */
static void look_at_hexagon(ow_audit *audit, const ow_entry *entry)
{
    const ow_part *part = entry->part;
    ow_thread thread;
    char name[OW_END_TEXT_SIZE];
    for (size_t end = 0; end < part->end_count && part->hexagon_m >= 0; end++) {
        const ow_end *at = &part->ends[end];
        if (at->gender != OW_FEMALE || at->swivel || !ow_end_thread(at, &thread))
            continue;
        if (part->hexagon_m <= ow_thread_major_m(&thread))
            ow_audit_tell(audit, OW_ERROR, entry, NULL, NULL,
                          "the hexagon of \"%s\" (%.4g mm) has no metal left around its end \"%s\" (%.4g mm)",
                          part->id, part->hexagon_m * MM, ow_end_name(at, name),
                          ow_thread_major_m(&thread) * MM);
    }
}

void ow_audit_sizes(ow_audit *audit)
{
    for (size_t i = 0; i < audit->catalog->entry_count; i++) {
        const ow_entry *entry = &audit->catalog->entries[i];
        if (entry->machine)
            continue;
        for (size_t end = 0; end < entry->part->end_count; end++)
            if (look_at_leg(audit, entry, end))
                break;
        look_at_narrowness(audit, entry);
        look_at_hose(audit, entry);
        look_at_banjo(audit, entry);
        look_at_lengths(audit, entry);
        look_at_hexagon(audit, entry);
    }
}
