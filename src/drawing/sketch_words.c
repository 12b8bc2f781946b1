/* SPDX-License-Identifier: MIT */
/* What a turner must know of each end. */
#include <math.h>
#include <string.h>

#include "drawing/sketch.h"
#include "oilway/thread_size.h"

void ow_sketch_thread_words(ow_text *text, const ow_end *end)
{
    ow_thread thread;
    ow_thread_size size;
    char name[OW_END_TEXT_SIZE];
    if (!ow_end_thread(end, &thread)) {
        ow_text_add(text, ow_end_name(end, name));
        return;
    }
    ow_thread_write(text, &thread);
    if (ow_thread_size_of(&thread, end->gender == OW_MALE, OW_CLASS_USUAL, &size) != OW_OK)
        return;
    if (size.class_name[0] != '\0')
        ow_text_format(text, " - %s", size.class_name);
    if (size.taper > 0.0)
        ow_text_add(text, ", taper 1:16");
}

static void add_degrees(ow_text *text, const ow_drawn_end *form, const char *what)
{
    ow_text_format(text, "%s %.0f deg included, smooth, square to the thread", what,
                   2.0 * form->half_angle * 180.0 / 3.14159265358979323846);
}

void ow_sketch_seat_words(ow_text *text, const ow_end *end, const ow_drawn_end *form)
{
    bool male = end->gender == OW_MALE;
    switch ((int)end->seat) {
    case OW_SEAT_WASHER:
    case OW_SEAT_WASHER_CAPTIVE:
    case OW_SEAT_BANJO:
        ow_text_format(text, "face for a ring, dia %.1f at least, flat, square to the thread",
                       form->ring_outer_mm + 0.5);
        break;
    case OW_SEAT_O_RING:
        ow_text_format(text, "%s for an O-ring of section %.2f: %s", male ? "stud end" : "port",
                       form->ring_mm,
                       end->form == OW_FORM_DASH ? (male ? "to SAE J1926-2" : "to SAE J1926-1")
                                                 : (male ? "to ISO 6149-2" : "to ISO 6149-1"));
        break;
    case OW_SEAT_FACE_O_RING:
        ow_text_add(text, "flat face with its groove: to SAE J1453");
        break;
    case OW_SEAT_CONE24:
    case OW_SEAT_CONE60:
    case OW_SEAT_FLARE30:
    case OW_SEAT_FLARE37:
    case OW_SEAT_FLARE45:
        add_degrees(text, form, (form->nose == OW_NOSE_RAISED) == male ? "raised cone" : "hollow cone");
        break;
    case OW_SEAT_FLARE45_INVERTED:
    case OW_SEAT_CONVEX:
        ow_text_add(text, male ? "nut behind a flared pipe"
                               : "seat at the bottom of the port: to the tube's standard");
        break;
    case OW_SEAT_TAPER:
        ow_text_add(text, "seals on its flanks: gauge it");
        break;
    default:
        break;
    }
}

/* ---- the table ------------------------------------------------------------------------------- */

static void add_limits(ow_text *text, const ow_size_limits *limits)
{
    if (limits->has_least && limits->has_most)
        ow_text_format(text, "%.3f to %.3f", 1e3 * limits->least_m, 1e3 * limits->most_m);
    else if (limits->has_most)
        ow_text_format(text, "%.3f at most", 1e3 * limits->most_m);
    else if (limits->has_least)
        ow_text_format(text, "%.3f at least", 1e3 * limits->least_m);
    else if (limits->basic_m > 0.0)
        ow_text_format(text, "%.3f basic", 1e3 * limits->basic_m);
}

static void add_lengths(ow_text *text, const ow_thread_size *size, const ow_drawn_end *form)
{
    if (size->taper > 0.0 && size->male)
        ow_text_format(text,
                       "small end dia %.3f (pitch), gauge plane %.2f from it, +/- %.2f; useful thread %.2f",
                       1e3 * size->small_end_m, 1e3 * size->gauge_m, 1e3 * size->gauge_tolerance_m,
                       1e3 * size->useful_m);
    else if (size->taper > 0.0)
        ow_text_format(text, "gauge plane %.2f from the face, +/- %.2f; depth of thread %.1f",
                       1e3 * size->gauge_m, 1e3 * size->gauge_tolerance_m, form->depth_mm);
    else if (size->male)
        ow_text_format(text, "thread %.1f long", form->stub_mm);
    else
        ow_text_format(text, "full thread %.1f deep", form->depth_mm);
}

static void put_end(ow_sheet *sheet, const ow_column *columns, const ow_sketch *sketch, size_t index)
{
    const ow_end *end = &sketch->part.ends[index];
    const ow_drawn_end *form = &sketch->placed.anatomy.legs[index].form;
    ow_thread thread;
    ow_thread_size size;
    ow_text cells[6];
    char name[OW_END_TEXT_SIZE];
    for (size_t cell = 0; cell < 6; cell++)
        cells[cell] = ow_text_new(sheet->canvas.body.context);
    ow_text_add(&cells[0], ow_end_name(end, name));
    if (ow_end_thread(end, &thread) &&
        ow_thread_size_of(&thread, end->gender == OW_MALE, OW_CLASS_USUAL, &size) == OW_OK) {
        add_limits(&cells[1], &size.major);
        add_limits(&cells[2], &size.pitch_diameter);
        add_limits(&cells[3], &size.minor);
        ow_text_format(&cells[4], "%.4g", 1e3 * size.pitch_m);
        add_lengths(&cells[5], &size, form);
        ow_text_format(&cells[5], "; %s, %s", size.source, ow_basis_words(size.limits_basis));
    } else {
        ow_text_add(&cells[5], "no limits known: make it to the part that it joins");
    }
    const char *row[6];
    for (size_t cell = 0; cell < 6; cell++)
        row[cell] = ow_text_words(&cells[cell]);
    ow_sheet_table_row(sheet, columns, 6, row);
    for (size_t cell = 0; cell < 6; cell++)
        ow_text_done_into(&cells[cell], &sheet->canvas.body);
}

void ow_sketch_put_limits(ow_sheet *sheet, const ow_sketch *sketch)
{
    static const ow_column COLUMNS[] = {{2.0, 32.0, "end"},        {36.0, 26.0, "major"},
                                        {64.0, 26.0, "pitch dia"}, {92.0, 26.0, "minor"},
                                        {120.0, 12.0, "pitch"},    {134.0, 54.0, "lengths and source"}};
    ow_sheet_table_head(sheet, "Limits of size, mm (a taper's at its gauge plane)", COLUMNS, 6);
    for (size_t end = 0; end < sketch->part.end_count; end++)
        put_end(sheet, COLUMNS, sketch, end);
}
