/* SPDX-License-Identifier: MIT */
/* The coolant loop: the bearing housing seen along its shaft at the clocking angle, its two legs as a
 * diagram. */
#include <math.h>

#include "drawing/letters.h"
#include "drawing/plan_svg.h"
#include "oilway/draw.h"

#define DEGREES(radians) ((radians)*180.0 / 3.14159265358979323846)
#define TYPE 2.7

typedef struct loop_figure {
    const ow_plan_coolant *coolant;
    ow_canvas *canvas;
    ow_spot middle;
    ow_spot low, high; /* mouths of the ports */
    double angle;
    double radius;             /* of the housing on paper, mm */
    double reach;              /* of its ports from the middle */
    ow_spot hot_box, cold_box; /* top left corners */
    ow_spot hot_words, cold_words;
    double box_width;
    bool narrow; /* in a column: what stands in the words beside the figure is left out */
} loop_figure;

/* A spot of the housing: along the line through its ports, and square to it (positive downward). */
static ow_spot spot(const loop_figure *figure, double along, double below)
{
    return (ow_spot){figure->middle.x + along * cos(figure->angle) + below * sin(figure->angle),
                     figure->middle.y - along * sin(figure->angle) + below * cos(figure->angle)};
}

static void draw_boss(const loop_figure *figure, double from, double to, double half, bool along)
{
    const double ends[4][2] = {{from, -half}, {to, -half}, {to, half}, {from, half}};
    for (int end = 0; end < 4; end++) {
        ow_spot at =
            along ? spot(figure, ends[end][0], ends[end][1]) : spot(figure, ends[end][1], ends[end][0]);
        if (end == 0)
            ow_shape_move(figure->canvas, at);
        else
            ow_shape_line(figure->canvas, at);
    }
    ow_shape_close(figure->canvas);
    ow_shape_end(figure->canvas, OW_PEN_THICK, OW_FILL_WHITE);
}

static void draw_housing(const loop_figure *figure)
{
    double half = figure->narrow ? 2.8 : 4.0; /* of a port's boss */
    draw_boss(figure, -figure->reach, -figure->radius + 3.0, half, true);
    draw_boss(figure, figure->radius - 3.0, figure->reach, half, true);
    draw_boss(figure, figure->radius - 3.0, figure->reach, 1.5 * half, false);
    ow_draw_circle(figure->canvas, OW_PEN_THICK, OW_FILL_WHITE, figure->middle, figure->radius);
    ow_draw_circle(figure->canvas, OW_PEN_THIN, OW_FILL_PALE, figure->middle, 0.72 * figure->radius);
    ow_draw_circle(figure->canvas, OW_PEN_THIN, OW_FILL_WHITE, figure->middle, 0.43 * figure->radius);
    ow_draw_circle(figure->canvas, OW_PEN_THICK, OW_FILL_NONE, figure->middle, 0.15 * figure->radius);
    ow_draw_line(figure->canvas, OW_PEN_CENTRE, spot(figure, -figure->reach - 6.0, 0.0),
                 spot(figure, figure->reach + 6.0, 0.0));
    ow_draw_line(figure->canvas, OW_PEN_CENTRE, spot(figure, 0.0, -figure->radius - 3.0),
                 spot(figure, 0.0, figure->reach + 5.0));
}

/* The level line, the angle between it and the ports' line, and how far it may go. */
static void draw_angle(const loop_figure *figure)
{
    double reach = figure->reach * (figure->narrow ? 1.6 : 1.9);
    ow_spot m = figure->middle;
    ow_text words = ow_text_new(figure->canvas->body.context);
    ow_draw_line(figure->canvas, OW_PEN_HIDDEN, (ow_spot){m.x + figure->reach + 2.0, m.y},
                 (ow_spot){m.x + reach + (figure->narrow ? 2.0 : 6.0), m.y});
    ow_draw_line(figure->canvas, OW_PEN_THIN, spot(figure, figure->reach + 2.0, 0.0),
                 spot(figure, reach + (figure->narrow ? 2.0 : 4.0), 0.0));
    for (int step = 0; step <= 12; step++) {
        double at = figure->angle * step / 12.0;
        ow_spot on = {m.x + reach * cos(at), m.y - reach * sin(at)};
        if (step == 0)
            ow_shape_move(figure->canvas, on);
        else
            ow_shape_line(figure->canvas, on);
    }
    ow_shape_end(figure->canvas, OW_PEN_THIN, OW_FILL_NONE);
    ow_draw_arrowhead(figure->canvas,
                      (ow_spot){m.x + reach * cos(figure->angle), m.y - reach * sin(figure->angle)},
                      (ow_spot){-sin(figure->angle), -cos(figure->angle)}, 2.4);
    ow_text_format(&words, figure->narrow ? "%.0f deg" : "clocked %.0f deg", DEGREES(figure->angle));
    ow_type type = {.size = TYPE, .bold = true};
    ow_draw_words(figure->canvas, &type,
                  (ow_spot){m.x + reach + 2.0, m.y - 0.5 * reach * sin(figure->angle) +
                                                   (fabs(figure->angle) < 0.1 ? -2.0 : 1.0)},
                  ow_text_words(&words));
    type.bold = false;
    ow_draw_words(figure->canvas, &type, (ow_spot){m.x + reach + 2.0, m.y + (figure->narrow ? 3.4 : 4.0)},
                  "level");
    figure->canvas->body.failed = figure->canvas->body.failed || words.failed;
    ow_text_done(&words);
}

/* ---- legs -------------------------------------------------------------------------------------- */

/* A hose of the diagram: from a port's mouth over a corner to a box, with an arrow at its middle. */
static void draw_leg(const loop_figure *figure, ow_spot from, ow_spot corner, ow_spot to, bool cold)
{
    ow_pen pen = cold ? OW_PEN_BOLD : OW_PEN_DASHED;
    ow_shape_move(figure->canvas, from);
    ow_shape_curve(figure->canvas,
                   (ow_spot){from.x + 0.6 * (corner.x - from.x), from.y + 0.6 * (corner.y - from.y)}, corner,
                   (ow_spot){0.5 * (corner.x + to.x), 0.5 * (corner.y + to.y)});
    ow_shape_line(figure->canvas, to);
    ow_shape_end(figure->canvas, pen, OW_FILL_NONE);
    ow_spot a = cold ? to : corner, b = cold ? corner : to;
    ow_spot tip = {a.x + 0.75 * (b.x - a.x), a.y + 0.75 * (b.y - a.y)};
    if (cold)
        tip = (ow_spot){a.x + 0.35 * (b.x - a.x), a.y + 0.35 * (b.y - a.y)};
    ow_draw_arrowhead(figure->canvas, tip, (ow_spot){b.x - a.x, b.y - a.y}, 3.4);
}

static void put_lines(const loop_figure *figure, ow_spot at, const char *const *lines, size_t count)
{
    for (size_t line = 0; line < count; line++) {
        ow_type type = {.size = TYPE, .bold = line == 0};
        ow_draw_words(figure->canvas, &type, (ow_spot){at.x, at.y + 3.6 * (double)line}, lines[line]);
    }
}

/* The name of a port of a leg's layout: its source, or the first port served. */
static const char *leg_end(const ow_plan_coolant *coolant, bool hot)
{
    for (size_t leg = 0; leg < coolant->leg_count; leg++) {
        const ow_layout *layout = coolant->legs[leg].layout;
        if (coolant->legs[leg].hot == hot && layout != NULL && layout->given_count > 1)
            return layout->givens[hot ? 1 : 0].machine != NULL ? layout->givens[hot ? 1 : 0].name
                                                               : "the heater's hose";
    }
    return "the engine";
}

static double leg_length_m(const ow_piece *pieces, size_t count)
{
    double length = 0.0;
    for (size_t piece = 0; piece < count; piece++)
        length += pieces[piece].kind == OW_PIECE_PIPE ? pieces[piece].length_m : 0.0;
    return length;
}

/* How long the hot leg is, and how high over the port its end stands. */
static void add_hot_way(ow_text *words, const ow_loop *loop)
{
    ow_text_format(words, "%.2f m of way, return %.0f mm %s", leg_length_m(loop->hot_leg, loop->hot_count),
                   1e3 * fabs(loop->rise_m), loop->rise_m < 0.0 ? "below" : "above");
}

static void draw_box(const loop_figure *figure, ow_spot corner, const char *words)
{
    ow_type type = {.size = TYPE, .anchor = OW_AT_MIDDLE};
    double height = figure->narrow ? 5.6 : 8.0;
    ow_draw_box(figure->canvas, OW_PEN_THICK, OW_FILL_WHITE, corner, figure->box_width, height);
    ow_draw_words(figure->canvas, &type,
                  (ow_spot){corner.x + 0.5 * figure->box_width, corner.y + 0.62 * height}, words);
}

static void draw_cold(const loop_figure *figure)
{
    const ow_plan_coolant *coolant = figure->coolant;
    double x = figure->cold_box.x + 0.5 * figure->box_width;
    ow_text length = ow_text_new(figure->canvas->body.context),
            heat = ow_text_new(figure->canvas->body.context);
    draw_leg(figure, figure->low, (ow_spot){x, figure->low.y + 4.0}, (ow_spot){x, figure->cold_box.y}, true);
    draw_box(figure, figure->cold_box, "engine, cold side");
    ow_text_format(
        &length, "%.2f m of way%s%s", leg_length_m(coolant->loop.cold_leg, coolant->loop.cold_count),
        coolant->heater != NULL ? ", through " : "", coolant->heater != NULL ? coolant->heater->id : "");
    ow_text_format(&heat, "%.0f C", coolant->loop.cold_c);
    const char *lines[] = {figure->narrow ? "cold in" : "cold in at the low port", coolant->low->name,
                           ow_text_words(&heat), leg_end(coolant, false), ow_text_words(&length)};
    put_lines(figure, figure->cold_words, lines, figure->narrow ? 3 : 5);
    ow_text_done_into(&length, &figure->canvas->body);
    ow_text_done_into(&heat, &figure->canvas->body);
}

static void draw_hot(const loop_figure *figure)
{
    const ow_plan_coolant *coolant = figure->coolant;
    double x = figure->hot_box.x + 0.5 * figure->box_width;
    ow_text length = ow_text_new(figure->canvas->body.context),
            heat = ow_text_new(figure->canvas->body.context);
    draw_leg(figure, figure->high, (ow_spot){x, figure->high.y - 3.0},
             (ow_spot){x, figure->hot_box.y + (figure->narrow ? 5.6 : 8.0)}, false);
    draw_box(figure, figure->hot_box, "engine, hot return");
    add_hot_way(&length, &coolant->loop);
    if (coolant->siphon.stands_still)
        ow_text_add(&heat, figure->narrow ? "stands still" : "stands still after shutdown");
    else if (figure->narrow)
        ow_text_format(&heat, "%.0f C", coolant->siphon.hot_c);
    else
        ow_text_format(&heat, "%.0f C after shutdown, boils at %.0f C", coolant->siphon.hot_c,
                       coolant->siphon.boiling_c);
    const char *lines[] = {figure->narrow ? "hot out" : "hot out at the high port", coolant->high->name,
                           ow_text_words(&heat), leg_end(coolant, true), ow_text_words(&length)};
    put_lines(figure, figure->hot_words, lines, figure->narrow ? 3 : 5);
    ow_text_done_into(&length, &figure->canvas->body);
    ow_text_done_into(&heat, &figure->canvas->body);
}

static void describe(ow_text *words, const ow_plan_coolant *coolant)
{
    const ow_siphon *siphon = &coolant->siphon;
    if (siphon->stands_still)
        ow_text_add(words, "After shutdown it stands still. ");
    else
        ow_text_format(
            words,
            "After shutdown %.3f L/min go round by themselves, driven by %.0f Pa, %.0f K warmer at the "
            "high port. ",
            siphon->flow_m3s * 6e4, siphon->drive_pa, siphon->rise_k);
    ow_text_format(
        words,
        "Engine running: %.1f L/min, %.1f kPa round the loop. Heat reckoned with: %.0f W; %s. The oil "
        "outlet leans as much as the housing is clocked.",
        coolant->forced_m3s * 6e4, coolant->forced.loss_pa / 1e3, coolant->loop.heat_w,
        ow_coolant_word(coolant->loop.coolant));
}

void ow_words_of_loop_leg(const ow_plan_coolant *coolant, bool hot, ow_text *words)
{
    const ow_loop *loop = &coolant->loop;
    if (hot) {
        ow_text_format(words, "Hot: %s, high, to %s; ", coolant->high->name, leg_end(coolant, true));
        add_hot_way(words, loop);
        return;
    }
    ow_text_format(words, "Cold: %s to %s, low; %.2f m of way", leg_end(coolant, false), coolant->low->name,
                   leg_length_m(loop->cold_leg, loop->cold_count));
    if (coolant->heater != NULL)
        ow_text_format(words, ", through %s", coolant->heater->id);
}

void ow_words_of_loop_shortly(const ow_plan_coolant *coolant, ow_text *words)
{
    const ow_siphon *siphon = &coolant->siphon;
    if (siphon->stands_still)
        ow_text_add(words, "After shutdown it stands still");
    else
        ow_text_format(words,
                       "After shutdown: %.3f L/min by itself, %.0f Pa of drive; %.0f C, boils at %.0f C",
                       siphon->flow_m3s * 6e4, siphon->drive_pa, siphon->hot_c, siphon->boiling_c);
    ow_text_format(words, ". Reckoned with %.0f W and %s. Engine running: %.1f L/min, %.1f kPa",
                   coolant->loop.heat_w, ow_coolant_word(coolant->loop.coolant), coolant->forced_m3s * 6e4,
                   coolant->forced.loss_pa / 1e3);
}

static void put_words(ow_sheet *sheet, const ow_plan_coolant *coolant)
{
    ow_text title = ow_text_new(sheet->canvas.body.context), words = ow_text_new(sheet->canvas.body.context);
    ow_text_format(&title, "Coolant loop of %s, seen along its shaft", coolant->turbo->id);
    ow_sheet_heading(sheet, &title);
    describe(&words, coolant);
    if (!sheet->captioned)
        ow_sheet_words(sheet, 2.0, 2.8, false, ow_text_words(&words));
    ow_text_format(&sheet->description, "%s Cold in at %s, hot out at %s. ", ow_text_words(&words),
                   coolant->low->name, coolant->high->name);
    sheet->canvas.body.failed = sheet->canvas.body.failed || words.failed;
    ow_text_done(&title);
    ow_text_done(&words);
}

static void put_key(const loop_figure *figure, double x, double y)
{
    ow_type type = {.size = TYPE, .anchor = OW_AT_START};
    ow_spot outlet = spot(figure, 0.0, figure->reach + 4.0);
    double beside = figure->narrow ? figure->cold_box.x + figure->box_width + 1.5 : 0.0; /* the box */
    ow_draw_words(figure->canvas, &type, (ow_spot){fmax(outlet.x + 2.5, beside), outlet.y + 1.0},
                  "oil outlet");
    if (figure->narrow) /* the words at the ports tell which is which */
        return;
    ow_draw_line(figure->canvas, OW_PEN_BOLD, (ow_spot){x, y}, (ow_spot){x + 10.0, y});
    ow_draw_words(figure->canvas, &type, (ow_spot){x + 12.0, y + 1.0}, "cold");
    ow_draw_line(figure->canvas, OW_PEN_DASHED, (ow_spot){x + 22.0, y}, (ow_spot){x + 32.0, y});
    ow_draw_words(figure->canvas, &type, (ow_spot){x + 34.0, y + 1.0}, "hot");
}

/* Where things stand on a whole page's width: words beside the boxes. */
static void lay_wide(loop_figure *figure, double top)
{
    double lift = figure->reach * sin(fmin(fmax(figure->angle, 0.0), 1.0));
    figure->middle = (ow_spot){82.0, top + 37.0 + lift};
    figure->low = spot(figure, -figure->reach, 0.0);
    figure->high = spot(figure, figure->reach, 0.0);
    figure->hot_box = (ow_spot){figure->high.x - 2.0, figure->high.y - 34.0};
    figure->hot_words = (ow_spot){figure->hot_box.x + 34.0, figure->hot_box.y + 2.5};
    figure->cold_box = (ow_spot){18.0, figure->middle.y + 51.0};
    figure->cold_words = (ow_spot){38.0, fmax(figure->low.y, figure->middle.y) + 14.0};
}

/* In a column: the boxes over and under the housing. */
static void lay_narrow(loop_figure *figure, double top)
{
    /* Ports on a level stand as low as clocked ones: the words over them need the room. */
    double lift = fmax(figure->reach * sin(fmin(figure->angle, 1.0)), 4.2);
    figure->middle = (ow_spot){24.0, top + 17.5 + lift};
    figure->low = spot(figure, -figure->reach, 0.0);
    figure->high = spot(figure, figure->reach, 0.0);
    figure->hot_box = (ow_spot){32.0, top};
    figure->hot_words = (ow_spot){11.0, top + 3.0};
    figure->cold_box = (ow_spot){1.0, figure->middle.y + 17.0};
    figure->cold_words = (ow_spot){43.0, figure->middle.y + 14.6};
}

ow_status ow_sheet_put_coolant(ow_sheet *sheet, const ow_plan_coolant *coolant)
{
    put_words(sheet, coolant);
    bool narrow = sheet->width < OW_SHEET_NARROW;
    loop_figure figure = {.coolant = coolant,
                          .canvas = &sheet->canvas,
                          .angle = coolant->loop.angle_rad,
                          .radius = narrow ? 8.5 : 21.0,
                          .reach = narrow ? 12.0 : 27.0,
                          .box_width = narrow ? 27.0 : 32.0,
                          .narrow = narrow};
    if (narrow)
        lay_narrow(&figure, sheet->y);
    else
        lay_wide(&figure, sheet->y);
    draw_angle(&figure);
    draw_housing(&figure);
    draw_cold(&figure);
    draw_hot(&figure);
    put_key(&figure, 120.0, figure.middle.y + 54.0);
    sheet->y = figure.middle.y + (narrow ? 23.0 : 62.0);
    return ow_canvas_status(&sheet->canvas);
}

ow_status ow_draw_coolant_svg(ow_text *text, const ow_plan_coolant *coolant)
{
    ow_sheet sheet = ow_sheet_new(text->context, OW_DRAWING_WIDTH_MM);
    return ow_sheet_finish(&sheet, ow_sheet_put_coolant(&sheet, coolant), text);
}
