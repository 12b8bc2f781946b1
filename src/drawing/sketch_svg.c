/* SPDX-License-Identifier: MIT */
/* A dimensioned drawing of a made part, for a turner: a proposal, marked as one. */
#include <math.h>
#include <string.h>

#include "drawing/labels.h"
#include "drawing/letters.h"
#include "drawing/paint.h"
#include "drawing/sketch.h"

#define TYPE 2.7
#define FIGURE_WIDTH 92.0
#define FIGURE_HEIGHT 62.0

typedef struct sketch_figure {
    const ow_sketch *sketch;
    ow_canvas *canvas;
    ow_labels labels;
    ow_text words[16];
    size_t word_count;
    double scale, y;    /* y of the axis */
    double left, right; /* x of the tips */
    double half;        /* of the body, on paper */
} sketch_figure;

static void place(sketch_figure *figure, ow_sketch *sketch, double top)
{
    const ow_anatomy *anatomy = &sketch->placed.anatomy;
    double length = anatomy->legs[0].length + (anatomy->closed ? anatomy->head : anatomy->legs[1].length);
    double radius = ow_leg_radius(&sketch->placed, 0);
    if (!anatomy->closed)
        radius = fmax(radius, ow_leg_radius(&sketch->placed, 1));
    static const double SCALES[] = {5.0, 4.0, 3.0, 2.5, 2.0, 1.5, 1.0, 0.8, 0.5, 0.25};
    size_t at = 0;
    while (at + 1 < sizeof SCALES / sizeof SCALES[0] &&
           (SCALES[at] * length > FIGURE_WIDTH || 2.0 * SCALES[at] * radius > FIGURE_HEIGHT))
        at++;
    figure->scale = SCALES[at];
    figure->half = figure->scale * radius;
    figure->left = 95.0 - 0.5 * figure->scale * length;
    figure->right = figure->left + figure->scale * length;
    figure->y = top + 30.0 + figure->half;
    sketch->placed.pose = (ow_pose){
        {figure->left + figure->scale * anatomy->legs[0].length, figure->y}, 0.0, 1.0, figure->scale};
}

/* ---- dimensions ------------------------------------------------------------------------------ */

static void block(sketch_figure *figure, double x0, double y0, double x1, double y1, bool words)
{
    ow_labels_block(&figure->labels, &(ow_box){x0, y0, x1, y1}, words);
}

/* A length below the part, in a tier; the words go beside the line where they do not fit over it. */
static void length_below(sketch_figure *figure, double from, double to, int tier, double from_radius,
                         double to_radius)
{
    double y = figure->y + figure->half + 7.0 + 6.0 * tier;
    ow_text words = ow_text_new(figure->canvas->body.context);
    ow_text_format(&words, "%.1f", fabs(to - from) / figure->scale);
    double width = ow_words_width(ow_text_words(&words), TYPE, false);
    bool fits = to - from > width + 6.0;
    for (int end = 0; end < 2; end++) {
        double x = end == 0 ? from : to;
        double near = figure->y + figure->scale * (end == 0 ? from_radius : to_radius) + 0.8;
        ow_draw_line(figure->canvas, OW_PEN_THIN, (ow_spot){x, near}, (ow_spot){x, y + 1.2});
        block(figure, x - 0.4, near, x + 0.4, y + 1.2, true);
        double out = (end == 0) == fits ? -1.0 : 1.0;
        ow_draw_arrowhead(figure->canvas, (ow_spot){x, y}, (ow_spot){out, 0.0}, 2.4);
    }
    double over = fits ? 0.0 : 5.0;
    ow_draw_line(figure->canvas, OW_PEN_THIN, (ow_spot){from - over, y}, (ow_spot){to + over, y});
    ow_type type = {.size = TYPE, .anchor = OW_AT_MIDDLE};
    ow_draw_words(figure->canvas, &type, (ow_spot){0.5 * (from + to), y - 0.8}, ow_text_words(&words));
    block(figure, fmin(from - over, 0.5 * (from + to - width)), y - TYPE - 1.0,
          fmax(to + over, 0.5 * (from + to + width)), y + 0.8, true);
    ow_text_done_into(&words, &figure->canvas->body);
}

/* Radius of what stands at a tip. */
static double tip_radius(const ow_anatomy *anatomy, size_t leg)
{
    const ow_drawn_end *form = &anatomy->legs[leg].form;
    if (form->look == OW_LOOK_POCKET || form->look == OW_LOOK_NUT)
        return anatomy->body;
    return 0.5 * fmax(form->major_mm, form->outer_mm) -
           (form->nose == OW_NOSE_RAISED ? 0.4 * form->major_mm : 0.0);
}

static void put_lengths(sketch_figure *figure)
{
    const ow_anatomy *anatomy = &figure->sketch->placed.anatomy;
    const ow_drawn_end *a = &anatomy->legs[0].form;
    double shoulder_a = figure->left + figure->scale * (a->look == OW_LOOK_POCKET ? 0.0 : a->stub_mm);
    double shoulder_b = figure->right, body = anatomy->body;
    double left = tip_radius(anatomy, 0), right = anatomy->closed ? body : tip_radius(anatomy, 1);
    if (!anatomy->closed && anatomy->legs[1].form.look != OW_LOOK_POCKET)
        shoulder_b -= figure->scale * anatomy->legs[1].form.stub_mm;
    if (shoulder_a > figure->left)
        length_below(figure, figure->left, shoulder_a, 0, left, body);
    if (shoulder_b - shoulder_a < figure->right - figure->left - 0.1)
        length_below(figure, shoulder_a, shoulder_b, 1, body, body);
    if (shoulder_b < figure->right)
        length_below(figure, shoulder_b, figure->right, 0, body, right);
    length_below(figure, figure->left, figure->right, 2, left, right);
}

/* ---- words ------------------------------------------------------------------------------------- */

static ow_text *new_words(sketch_figure *figure)
{
    ow_text *words = &figure->words[figure->word_count++];
    *words = ow_text_new(figure->canvas->body.context);
    return words;
}

/* One line of words pointing at a spot given in mm from the hub: on the cut side, or either if it shows from
 * outside. */
static void note(sketch_figure *figure, const ow_text *words, double x, double radius, bool bold, bool inside)
{
    const ow_pose *pose = &figure->sketch->placed.pose;
    ow_label label = {.kind = OW_LABEL_NOTE,
                      .lines = {ow_text_words(words)},
                      .line_count = 1,
                      .size = TYPE,
                      .bold = bold,
                      .anchors = {ow_pose_spot(pose, x, radius), ow_pose_spot(pose, x, -radius)},
                      .anchor_count = inside ? 1 : 2};
    label.width = ow_words_width(label.lines[0], TYPE, bold) + 0.6;
    label.height = 3.8;
    if (words->length > 0)
        ow_labels_add(&figure->labels, &label);
}

static void note_end(sketch_figure *figure, size_t index)
{
    const ow_sketch *sketch = figure->sketch;
    const ow_leg *leg = &sketch->placed.anatomy.legs[index];
    const ow_drawn_end *form = &leg->form;
    double outward = index == 0 ? -1.0 : 1.0;
    double tip = outward * leg->length, shoulder = outward * (leg->length - form->stub_mm);
    bool pocket = form->look == OW_LOOK_POCKET;
    ow_text *thread = new_words(figure), *seat = new_words(figure), *relief = new_words(figure);
    ow_sketch_thread_words(thread, &sketch->part.ends[index]);
    ow_sketch_seat_words(seat, &sketch->part.ends[index], form);
    double crest = 0.5 * (form->major_mm > 0.0 ? form->major_mm : form->outer_mm);
    note(figure, thread, pocket ? tip - outward * 0.6 * form->depth_mm : 0.5 * (tip + shoulder), crest, true,
         pocket);
    bool at_shoulder = form->ring_mm > 0.0 && !pocket;
    double seat_x = at_shoulder ? shoulder
                    : pocket && form->nose != OW_NOSE_FLAT
                        ? tip - outward * form->depth_mm
                        : tip - (form->nose == OW_NOSE_RAISED ? outward * 0.2 * form->major_mm : 0.0);
    note(figure, seat, seat_x,
         at_shoulder                  ? 0.5 * form->ring_outer_mm
         : form->nose == OW_NOSE_FLAT ? crest
                                      : 0.68 * crest,
         false, pocket);
    if (form->look == OW_LOOK_STUB && form->taper <= 0.0) {
        ow_text_format(relief, "undercut %.1f wide, dia %.1f", 1.2 * form->pitch_mm, form->minor_mm - 0.2);
        note(figure, relief, shoulder + outward * 0.6 * form->pitch_mm, 0.5 * form->minor_mm - 0.1, false,
             false);
    }
}

static void put_notes(sketch_figure *figure)
{
    const ow_sketch *sketch = figure->sketch;
    ow_text *hexagon = new_words(figure), *bore = new_words(figure);
    ow_text_format(hexagon, "hexagon %.0f across flats, corners turned off at 30 deg", sketch->hexagon_mm);
    note(figure, hexagon, sketch->placed.anatomy.closed ? 0.5 * sketch->placed.anatomy.head : 0.0,
         0.9 * sketch->placed.anatomy.body, false, false);
    if (sketch->bore_mm > 0.0) {
        ow_text_format(bore, "bore dia %.1f through", sketch->bore_mm);
        note(figure, bore, 0.0, 0.0, false, true);
    }
    for (size_t end = 0; end < sketch->part.end_count; end++)
        note_end(figure, end);
}

static void draw_notes(sketch_figure *figure, ow_sheet *sheet)
{
    for (size_t index = 0; index < figure->labels.count; index++) {
        const ow_label *label = &figure->labels.items[index];
        ow_type type = {.size = TYPE, .bold = label->bold};
        ow_draw_line(figure->canvas, OW_PEN_LEADER, label->at.from, label->at.anchor);
        ow_draw_arrowhead(
            figure->canvas, label->at.anchor,
            (ow_spot){label->at.anchor.x - label->at.from.x, label->at.anchor.y - label->at.from.y}, 2.0);
        ow_draw_words(figure->canvas, &type, (ow_spot){label->at.box.x0 + 0.3, label->at.box.y0 + 2.8},
                      label->lines[0]);
    }
    for (size_t index = 0; index < figure->word_count; index++) {
        if (figure->words[index].length > 0)
            ow_text_format(&sheet->description, "%s. ", ow_text_words(&figure->words[index]));
        ow_text_done_into(&figure->words[index], &figure->canvas->body);
    }
}

/* ---- all ---------------------------------------------------------------------------------------- */

static ow_status draw_figure(sketch_figure *figure, ow_sketch *sketch, ow_sheet *sheet)
{
    ow_painter painter = {.canvas = figure->canvas, .placed = &sketch->placed, .spacing = 1.4};
    ow_box boxes[OW_PLACED_BOXES];
    place(figure, sketch, 0.0);
    ow_paint_straight(&painter);
    ow_draw_line(figure->canvas, OW_PEN_CENTRE, (ow_spot){figure->left - 5.0, figure->y},
                 (ow_spot){figure->right + 5.0, figure->y});
    size_t count = ow_placed_boxes(&sketch->placed, boxes);
    for (size_t box = 0; box < count; box++)
        ow_labels_block(&figure->labels, &boxes[box], false);
    put_lengths(figure);
    put_notes(figure);
    if (!figure->labels.failed)
        ow_labels_place(&figure->labels);
    draw_notes(figure, sheet);
    return figure->labels.failed ? OW_MEMORY : ow_canvas_status(figure->canvas);
}

/* The figure is drawn by itself first: only then is it known how high its words reach. */
static ow_status put_figure(ow_sheet *sheet, ow_sketch *sketch, double *scale)
{
    const ow_context *context = sheet->canvas.body.context;
    ow_canvas canvas = ow_canvas_new(context);
    sketch_figure figure = {.sketch = sketch,
                            .canvas = &canvas,
                            .labels = ow_labels_new(context, 1.0, OW_DRAWING_WIDTH_MM - 1.0)};
    ow_status status = draw_figure(&figure, sketch, sheet);
    if (status == OW_OK) {
        ow_box bounds = ow_labels_bounds(&figure.labels);
        ow_text_add(&sheet->canvas.body, "<g transform=\"translate(0 ");
        ow_svg_number(&sheet->canvas, &sheet->canvas.body, sheet->y + 3.0 - bounds.y0);
        ow_text_add(&sheet->canvas.body, ")\">\n");
        ow_text_bytes(&sheet->canvas.body, canvas.body.data, canvas.body.length);
        ow_group_end(&sheet->canvas);
        sheet->y += bounds.y1 - bounds.y0 + 6.0;
    }
    *scale = figure.scale;
    ow_labels_done(&figure.labels);
    ow_canvas_done(&canvas);
    return status;
}

static const char PROPOSAL[] =
    "PROPOSAL, to be checked by a competent person before anything is made. Not said: material "
    "and its strength, surface, heat; prove it with oil at one and a half times the working "
    "pressure. Lengths in millimetres; untoleranced ones to ISO 2768-m. Deburr and wash.";

ow_status ow_sheet_put_sketch(ow_sheet *sheet, const ow_missing *missing, double least_bore_m)
{
    const ow_context *context = sheet->canvas.body.context;
    ow_sketch sketch = ow_sketch_of(missing, least_bore_m);
    double shown = 1.0;
    ow_text title = ow_text_new(context), scale = ow_text_new(context);
    char name[OW_END_TEXT_SIZE];
    ow_text_format(&title, "Made part: %s", ow_end_name(&missing->from, name));
    ow_text_add(&title, missing->is_plug ? ", a plug" : " to ");
    ow_text_add(&title, missing->is_plug ? "" : ow_end_name(&missing->to, name));
    ow_sheet_heading(sheet, &title);
    ow_sheet_words(sheet, 2.0, 2.8, true, PROPOSAL);
    ow_sheet_words(sheet, 2.0, 2.8, false, missing->why);
    ow_status status = put_figure(sheet, &sketch, &shown);
    ow_text_format(&scale, "Scale %g:%g at %d mm wide. Half section; thread as ISO 6410-1.",
                   shown >= 1.0 ? shown : 1.0, shown >= 1.0 ? 1.0 : 1.0 / shown, OW_DRAWING_WIDTH_MM);
    ow_sheet_words(sheet, 2.0, 2.6, false, ow_text_words(&scale));
    ow_sketch_put_limits(sheet, &sketch);
    ow_text_done_into(&title, &sheet->canvas.body);
    ow_text_done_into(&scale, &sheet->canvas.body);
    return status == OW_OK ? ow_canvas_status(&sheet->canvas) : status;
}

ow_status ow_draw_sketch_svg(ow_text *text, const ow_missing *missing, double least_bore_m)
{
    ow_sheet sheet = ow_sheet_new(text->context, OW_DRAWING_WIDTH_MM);
    return ow_sheet_finish(&sheet, ow_sheet_put_sketch(&sheet, missing, least_bore_m), text);
}
