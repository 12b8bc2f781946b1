/* SPDX-License-Identifier: MIT */
/* A return drawn from the side along its route, unrolled into one plane, to scale. */
#include <float.h>
#include <math.h>
#include <string.h>

#include "drawing/labels.h"
#include "drawing/letters.h"
#include "drawing/marks.h"
#include "drawing/plan_svg.h"
#include "oilway/draw.h"

#define DEGREES(radians) ((radians)*180.0 / 3.14159265358979323846)
#define TYPE 2.6

/* Where things stand, mm: on a page's width, and in a column, where runs have numbers in place of words. */
typedef struct drain_look {
    double left, top;            /* of the outlet's mouth, within the sheet */
    double most_wide, most_tall; /* of the run */
    double wall, height, side; /* of the bearing housing: floor, inside over it, its width beside the bore */
    double drop;               /* the dimension of the drop: off the run */
    double strokes;            /* of the engine's wall */
    double level, level_wide;  /* the sump's level: off the run's end, and its length */
    bool numbered;
} drain_look;
static const drain_look WIDE = {62.0, 30.0, 90.0, 110.0, 9.0, 16.0, 10.0, 26.0, 8.0, 22.0, 26.0, false};
static const drain_look COLUMN = {21.0, 17.0, 24.0, 62.0, 5.0, 10.0, 8.0, 15.0, 5.0, 9.0, 14.0, true};

typedef struct drain_figure {
    const ow_plan_return *home;
    const ow_job_drain *asked;
    drain_look look;
    ow_canvas *canvas;
    ow_labels labels;
    ow_text words[OW_ROUTE_POINTS_MAX * 2 + 9]; /* of the labels */
    size_t word_count;
    ow_spot corners[OW_ROUTE_POINTS_MAX + 1]; /* of the centre line, on paper */
    double scale;
} drain_figure;

/* The centre line in metres, then fitted to the paper. */
static void unroll(drain_figure *figure, ow_spot origin)
{
    const ow_plan_return *home = figure->home;
    double x = 0.0, z = 0.0, low = 0.0, wide = 0.01;
    figure->corners[0] = (ow_spot){0.0, 0.0};
    for (size_t index = 0; index < home->segment_count; index++) {
        const ow_drain_segment *segment = &home->segments[index];
        x += segment->length_m * cos(segment->slope_rad);
        z -= segment->length_m * sin(segment->slope_rad);
        figure->corners[index + 1] = (ow_spot){x, z};
        low = fmin(low, z);
        wide = fmax(wide, x);
    }
    if (figure->asked->oil_level_m.said)
        low = fmin(low, figure->asked->oil_level_m.value);
    figure->scale =
        fmin(fmin(figure->look.most_wide / wide, figure->look.most_tall / fmax(-low, 0.02)), 800.0);
    for (size_t index = 0; index <= home->segment_count; index++)
        figure->corners[index] = (ow_spot){origin.x + figure->scale * figure->corners[index].x,
                                           origin.y - figure->scale * figure->corners[index].y};
}

static ow_text *new_words(drain_figure *figure)
{
    ow_text *words = &figure->words[figure->word_count++];
    *words = ow_text_new(figure->canvas->body.context);
    return words;
}

static void add_label(drain_figure *figure, ow_label label, bool bold)
{
    label.size = TYPE;
    label.bold = bold;
    label.width = label.line_count == 0 ? OW_MARK_SIZE + 0.4 : 0.0;
    for (size_t line = 0; line < label.line_count; line++)
        label.width = fmax(label.width, ow_words_width(label.lines[line], TYPE, bold) + 0.6);
    label.height = label.line_count == 0 ? OW_MARK_SIZE + 0.4 : 3.4 * (double)label.line_count + 0.4;
    ow_labels_add(&figure->labels, &label);
}

/* ---- the pipe ------------------------------------------------------------------------------- */

/* One straight run: its walls, and the oil along its lower one. */
static void draw_segment(drain_figure *figure, size_t index)
{
    const ow_plan_return *home = figure->home;
    ow_spot a = figure->corners[index], b = figure->corners[index + 1];
    double length = fmax(hypot(b.x - a.x, b.y - a.y), 1e-6),
           half = 0.5 * home->segments[index].bore_m * figure->scale;
    double fill = home->hot[index].flow.flooded ? 1.0 : fmin(fmax(home->hot[index].flow.fill, 0.0), 1.0);
    ow_spot down = {-(b.y - a.y) / length, (b.x - a.x) / length}; /* square to the run, on its lower side */
    if (down.y < 0.0)
        down = (ow_spot){-down.x, -down.y};
    double surface = half - 2.0 * half * fill;
    ow_shape_move(figure->canvas, (ow_spot){a.x + half * down.x, a.y + half * down.y});
    ow_shape_line(figure->canvas, (ow_spot){b.x + half * down.x, b.y + half * down.y});
    ow_shape_line(figure->canvas, (ow_spot){b.x + surface * down.x, b.y + surface * down.y});
    ow_shape_line(figure->canvas, (ow_spot){a.x + surface * down.x, a.y + surface * down.y});
    ow_shape_close(figure->canvas);
    ow_shape_end(figure->canvas, OW_PEN_NONE, OW_FILL_PALE);
    ow_draw_line(figure->canvas, OW_PEN_THIN, (ow_spot){a.x + surface * down.x, a.y + surface * down.y},
                 (ow_spot){b.x + surface * down.x, b.y + surface * down.y});
    for (int side = -1; side <= 1; side += 2)
        ow_draw_line(figure->canvas, OW_PEN_THICK,
                     (ow_spot){a.x + side * half * down.x, a.y + side * half * down.y},
                     (ow_spot){b.x + side * half * down.x, b.y + side * half * down.y});
    for (int part = 0; part < 6; part++) { /* labels keep off it */
        ow_spot p = {a.x + part / 6.0 * (b.x - a.x), a.y + part / 6.0 * (b.y - a.y)};
        ow_spot q = {a.x + (part + 1) / 6.0 * (b.x - a.x), a.y + (part + 1) / 6.0 * (b.y - a.y)};
        ow_labels_block(&figure->labels,
                        &(ow_box){fmin(p.x, q.x) - half, fmin(p.y, q.y) - half, fmax(p.x, q.x) + half,
                                  fmax(p.y, q.y) + half},
                        false);
    }
}

const char *ow_drain_fault_words(unsigned faults)
{
    if (faults & OW_SEGMENT_FLAT)
        return "level or rising: oil does not leave";
    if (faults & OW_SEGMENT_SAG)
        return "behind a low point: holds a slug of oil";
    if (faults & OW_SEGMENT_FILL)
        return "more than half full";
    if (faults & OW_SEGMENT_SHALLOW)
        return "less than 15 deg";
    if (faults & OW_SEGMENT_NARROWS)
        return "narrows";
    return faults & OW_SEGMENT_BORE ? "less than 15 mm inside" : NULL;
}

static void fill_words(ow_text *words, const ow_plan_return *home, size_t index)
{
    if (home->hot[index].flow.flooded)
        ow_text_add(words, "flooded");
    else
        ow_text_format(words, "%.0f %% full hot", 100.0 * home->hot[index].flow.fill);
    if (home->cold[index].flow.flooded)
        ow_text_add(words, ", flooded cold");
    else
        ow_text_format(words, ", %.0f %% cold", 100.0 * home->cold[index].flow.fill);
}

static void label_segment(drain_figure *figure, size_t index)
{
    const ow_plan_return *home = figure->home;
    const ow_drain_segment *segment = &home->segments[index];
    ow_spot a = figure->corners[index], b = figure->corners[index + 1];
    double length = fmax(hypot(b.x - a.x, b.y - a.y), 1e-6), half = 0.5 * segment->bore_m * figure->scale;
    ow_text *first = new_words(figure), *second = new_words(figure);
    ow_text_format(first, "%zu: %.0f mm at %.1f deg, bore %.1f mm", index + 1, 1e3 * segment->length_m,
                   DEGREES(segment->slope_rad), 1e3 * segment->bore_m);
    fill_words(second, home, index);
    ow_label label = {
        .kind = OW_LABEL_NOTE, .lines = {ow_text_words(first), ow_text_words(second)}, .line_count = 2};
    const char *fault = ow_drain_fault_words(home->hot[index].faults);
    if (fault != NULL)
        label.lines[label.line_count++] = fault;
    if (figure->look.numbered)
        label = (ow_label){.kind = OW_LABEL_PART, .number = index + 1};
    for (int side = -1; side <= 1; side += 2)
        label.anchors[label.anchor_count++] =
            (ow_spot){0.5 * (a.x + b.x) + side * half * (b.y - a.y) / length,
                      0.5 * (a.y + b.y) - side * half * (b.x - a.x) / length};
    add_label(figure, label,
              (home->hot[index].faults & (OW_SEGMENT_FLAT | OW_SEGMENT_SAG | OW_SEGMENT_FILL)) != 0);
}

/* ---- its ends -------------------------------------------------------------------------------- */

/* The bearing housing's floor with the pool over its outlet. */
static void draw_outlet(drain_figure *figure)
{
    const ow_plan_return *home = figure->home;
    ow_spot at = figure->corners[0];
    double bore = home->outlet->bore_m > 0.0 ? home->outlet->bore_m : home->segments[0].bore_m;
    double half = 0.5 * bore * figure->scale, wall = figure->look.wall, height = figure->look.height,
           outside = half + figure->look.side, inside = outside - 4.0,
           pool = fmin(home->pool_m * figure->scale, height);
    ow_draw_box(figure->canvas, OW_PEN_NONE, OW_FILL_PALE, (ow_spot){at.x - inside, at.y - wall - pool},
                2.0 * inside, pool);
    ow_draw_box(figure->canvas, OW_PEN_NONE, OW_FILL_PALE, (ow_spot){at.x - half, at.y - wall}, 2.0 * half,
                wall);
    ow_draw_line(figure->canvas, OW_PEN_THIN, (ow_spot){at.x - inside, at.y - wall - pool},
                 (ow_spot){at.x + inside, at.y - wall - pool});
    for (int side = -1; side <= 1; side += 2) {
        ow_shape_move(figure->canvas, (ow_spot){at.x + side * inside, at.y - wall - height});
        ow_shape_line(figure->canvas, (ow_spot){at.x + side * inside, at.y - wall});
        ow_shape_line(figure->canvas, (ow_spot){at.x + side * half, at.y - wall});
        ow_shape_line(figure->canvas, (ow_spot){at.x + side * half, at.y});
        ow_shape_line(figure->canvas, (ow_spot){at.x + side * outside, at.y});
        ow_shape_line(figure->canvas, (ow_spot){at.x + side * outside, at.y - wall - height});
        ow_shape_end(figure->canvas, OW_PEN_THICK, OW_FILL_NONE);
    }
    ow_labels_block(&figure->labels, &(ow_box){at.x - outside, at.y - wall - height, at.x + outside, at.y},
                    false);
    ow_text *name = new_words(figure), *words = new_words(figure);
    if (figure->look.numbered) { /* the turbo's name is in the caption */
        ow_text_format(name, "from %s", home->outlet->name);
        ow_text_format(words, "%.1f mm of oil over it", 1e3 * home->pool_m);
    } else {
        ow_text_format(name, "from %s:%s", home->turbo->id, home->outlet->name);
        ow_text_format(words, "%.1f mm stand over the outlet", 1e3 * home->pool_m);
    }
    ow_label label = {.kind = OW_LABEL_PORT,
                      .lines = {ow_text_words(name), ow_text_words(words)},
                      .line_count = 2,
                      .anchors = {{at.x + outside, at.y - 0.5 * wall}, {at.x - outside, at.y - 0.5 * wall}},
                      .anchor_count = 2};
    add_label(figure, label, true);
}

/* The engine's wall where the return goes in, square to the end of the pipe. */
static void draw_wall(const drain_figure *figure, ow_spot at, ow_spot along, double half)
{
    ow_spot across = {-along.y, along.x};
    for (int side = -1; side <= 1; side += 2) {
        double near = side * half, far = side * (half + figure->look.strokes);
        ow_draw_line(figure->canvas, OW_PEN_THICK, (ow_spot){at.x + near * across.x, at.y + near * across.y},
                     (ow_spot){at.x + far * across.x, at.y + far * across.y});
        for (double stroke = 0.4; stroke < figure->look.strokes - 1.0; stroke += 1.6) {
            double on = side * (half + stroke), off = on + 1.4;
            ow_draw_line(
                figure->canvas, OW_PEN_HATCH, (ow_spot){at.x + on * across.x, at.y + on * across.y},
                (ow_spot){at.x + 3.0 * along.x + off * across.x, at.y + 3.0 * along.y + off * across.y});
        }
    }
}

static void draw_inlet(drain_figure *figure)
{
    const ow_plan_return *home = figure->home;
    size_t last = home->segment_count;
    ow_spot before = figure->corners[last - 1], at = figure->corners[last];
    double half = 0.5 * home->segments[last - 1].bore_m * figure->scale;
    double length = fmax(hypot(at.x - before.x, at.y - before.y), 1e-6);
    ow_spot along = {(at.x - before.x) / length, (at.y - before.y) / length};
    draw_wall(figure, at, along, half);
    double tall = (half + figure->look.strokes) * fabs(along.x) + 3.0,
           wide = (half + figure->look.strokes) * fabs(along.y) + 3.0;
    ow_labels_block(&figure->labels, &(ow_box){at.x - wide, at.y - tall, at.x + wide, at.y + tall}, false);
    ow_text *words = new_words(figure);
    ow_text_format(words, "to %s", home->port->name);
    ow_label label = {.kind = OW_LABEL_PORT,
                      .lines = {ow_text_words(words)},
                      .line_count = 1,
                      .anchors = {{at.x + wide, at.y}, {at.x, at.y + tall}},
                      .anchor_count = 2};
    add_label(figure, label, true);
}

/* The sump's oil: a level line with its triangle (the sign of a free surface). */
static void draw_level(drain_figure *figure)
{
    if (!figure->asked->oil_level_m.said)
        return;
    ow_spot at = figure->corners[figure->home->segment_count];
    double y = figure->corners[0].y - figure->scale * figure->asked->oil_level_m.value;
    double wide = figure->look.level_wide,
           x = fmin(at.x + figure->look.level, figure->labels.most_x - wide - 1.0);
    ow_draw_line(figure->canvas, OW_PEN_THIN, (ow_spot){x, y}, (ow_spot){x + wide, y});
    ow_draw_line(figure->canvas, OW_PEN_THIN, (ow_spot){x + 3.0, y + 1.2},
                 (ow_spot){x + 0.6 * wide, y + 1.2});
    ow_draw_line(figure->canvas, OW_PEN_THIN, (ow_spot){x + 6.0, y + 2.4},
                 (ow_spot){x + 0.5 * wide, y + 2.4});
    ow_shape_move(figure->canvas, (ow_spot){x + 8.0, y});
    ow_shape_line(figure->canvas, (ow_spot){x + 6.0, y - 3.0});
    ow_shape_line(figure->canvas, (ow_spot){x + 10.0, y - 3.0});
    ow_shape_close(figure->canvas);
    ow_shape_end(figure->canvas, OW_PEN_THIN, OW_FILL_WHITE);
    ow_labels_block(&figure->labels, &(ow_box){x, y - 3.2, x + wide, y + 2.6}, false);
    ow_text *words = new_words(figure), *second = new_words(figure);
    bool below = figure->asked->oil_level_m.value < 0.0;
    double off = fabs(1e3 * figure->asked->oil_level_m.value);
    ow_label label = {.kind = OW_LABEL_NOTE,
                      .line_count = figure->look.numbered ? 2 : 1,
                      .anchors = {{x + wide - 3.0, y}, {x + 10.0, y + 2.4}},
                      .anchor_count = 2};
    if (figure->look.numbered) {
        ow_text_add(words, "sump oil");
        ow_text_format(second, "%.0f mm %s", off, below ? "below" : "above");
    } else {
        ow_text_format(words, "sump oil, %.0f mm %s the outlet", off, below ? "below" : "above");
    }
    label.lines[0] = ow_text_words(words);
    label.lines[1] = ow_text_words(second);
    add_label(figure, label, false);
}

/* ---- dimensions --------------------------------------------------------------------------------- */

static void draw_drop(drain_figure *figure)
{
    ow_spot a = figure->corners[0], b = figure->corners[figure->home->segment_count];
    double x = fmin(a.x, b.x) - figure->look.drop;
    if (fabs(b.y - a.y) < 6.0)
        return;
    ow_text *words = new_words(figure);
    ow_text_format(words, "drop %.0f mm", (b.y - a.y) / figure->scale * 1e3);
    ow_draw_line(figure->canvas, OW_PEN_THIN, (ow_spot){a.x - figure->look.side - 2.0, a.y},
                 (ow_spot){x - 1.2, a.y});
    ow_draw_line(figure->canvas, OW_PEN_THIN, (ow_spot){b.x - 2.0, b.y}, (ow_spot){x - 1.2, b.y});
    ow_draw_line(figure->canvas, OW_PEN_THIN, (ow_spot){x, a.y}, (ow_spot){x, b.y});
    ow_draw_arrowhead(figure->canvas, (ow_spot){x, b.y}, (ow_spot){0.0, b.y - a.y}, 2.4);
    ow_draw_arrowhead(figure->canvas, (ow_spot){x, a.y}, (ow_spot){0.0, a.y - b.y}, 2.4);
    ow_type type = {.size = TYPE, .anchor = OW_AT_MIDDLE, .turned = true};
    double width = ow_words_width(ow_text_words(words), TYPE, false);
    if (width > fabs(b.y - a.y)) { /* the figure alone is shorter than its line */
        words->length = 0;
        ow_text_format(words, "%.0f mm", (b.y - a.y) / figure->scale * 1e3);
        width = ow_words_width(ow_text_words(words), TYPE, false);
    }
    ow_draw_words(figure->canvas, &type, (ow_spot){x - 0.8, 0.5 * (a.y + b.y)}, ow_text_words(words));
    ow_labels_block(&figure->labels, &(ow_box){x - 3.4, fmin(a.y, b.y), x + 1.0, fmax(a.y, b.y)}, true);
    ow_labels_block(&figure->labels,
                    &(ow_box){x - 3.4, 0.5 * (a.y + b.y) - 0.5 * width, x, 0.5 * (a.y + b.y) + 0.5 * width},
                    true);
    ow_labels_block(&figure->labels, &(ow_box){x - 1.0, b.y - 0.4, b.x - 2.0, b.y + 0.4}, false);
    ow_labels_block(&figure->labels, &(ow_box){x - 1.0, a.y - 0.4, a.x - figure->look.side - 2.0, a.y + 0.4},
                    false);
}

static void draw_labels(drain_figure *figure)
{
    ow_type type = {.size = TYPE};
    for (size_t index = 0; index < figure->labels.count; index++) {
        const ow_label *label = &figure->labels.items[index];
        ow_draw_line(figure->canvas, OW_PEN_LEADER, label->at.from, label->at.anchor);
        ow_draw_circle(figure->canvas, OW_PEN_NONE, OW_FILL_BLACK, label->at.anchor, 0.45);
        if (label->line_count == 0)
            ow_draw_number(figure->canvas, label->number,
                           (ow_spot){label->at.box.x0 + 0.2, label->at.box.y0 + 0.2});
        type.bold = label->bold;
        for (size_t line = 0; line < label->line_count; line++)
            ow_draw_words(figure->canvas, &type,
                          (ow_spot){label->at.box.x0 + 0.3, label->at.box.y0 + 2.6 + 3.4 * (double)line},
                          label->lines[line]);
    }
}

#define BELOW 8.0 /* the run: for the wall's strokes and the level's words */

static ow_status draw_figure(drain_figure *figure, ow_sheet *sheet)
{
    figure->look = sheet->width < OW_SHEET_NARROW ? COLUMN : WIDE;
    if (sheet->room > 0.0)
        figure->look.most_tall =
            fmax(sheet->room - sheet->y - figure->look.top - BELOW, 0.2 * figure->look.most_tall);
    unroll(figure, (ow_spot){figure->look.left, sheet->y + figure->look.top});
    for (size_t index = 0; index < figure->home->segment_count; index++)
        draw_segment(figure, index);
    draw_outlet(figure);
    draw_inlet(figure);
    draw_level(figure);
    draw_drop(figure);
    for (size_t index = 0; index < figure->home->segment_count; index++)
        label_segment(figure, index);
    if (!figure->labels.failed)
        ow_labels_place(&figure->labels);
    draw_labels(figure);
    ow_box bounds = ow_labels_bounds(&figure->labels);
    sheet->y = bounds.y1 + (sheet->captioned ? 0.5 : 3.0);
    for (size_t index = 0; index < figure->word_count; index++) {
        figure->labels.failed = figure->labels.failed || figure->words[index].failed;
        if (figure->words[index].length > 0)
            ow_text_format(&sheet->description, "%s. ", ow_text_words(&figure->words[index]));
        ow_text_done(&figure->words[index]);
    }
    return figure->labels.failed ? OW_MEMORY : OW_OK;
}

ow_status ow_sheet_put_drain(ow_sheet *sheet, const ow_plan_return *home, const ow_job_drain *asked)
{
    const ow_context *context = sheet->canvas.body.context;
    drain_figure figure = {.home = home,
                           .asked = asked,
                           .canvas = &sheet->canvas,
                           .labels = ow_labels_new(context, 1.0, sheet->width - 1.0)};
    ow_text title = ow_text_new(context), line = ow_text_new(context);
    ow_text_format(&title, "Drain from %s:%s to %s, from the side along its route", home->turbo->id,
                   home->outlet->name, home->port->name);
    ow_sheet_heading(sheet, &title);
    ow_text_format(&line, "%.2f L/min of oil, hot%s. Grey: oil in the pipe.", home->flow_m3s * 6e4,
                   home->straight ? "; no route is given: drawn as a straight line" : "");
    if (!sheet->captioned)
        ow_sheet_words(sheet, 2.0, 2.8, false, ow_text_words(&line));
    ow_status status = line.failed ? OW_MEMORY : OW_OK;
    if (status == OW_OK && home->segment_count > 0)
        status = draw_figure(&figure, sheet);
    ow_text_done(&title);
    ow_text_done(&line);
    ow_labels_done(&figure.labels);
    return status;
}

ow_status ow_draw_drain_svg(ow_text *text, const ow_plan_return *home, const ow_job_drain *asked)
{
    ow_sheet sheet = ow_sheet_new(text->context, OW_DRAWING_WIDTH_MM);
    return ow_sheet_finish(&sheet, ow_sheet_put_drain(&sheet, home, asked), text);
}
