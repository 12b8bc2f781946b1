/* SPDX-License-Identifier: MIT */
/* Natural circulation after shutdown over the clocking angle: how much goes round, and how hot it comes out.
 */
#include <float.h>
#include <math.h>

#include "drawing/graph.h"
#include "drawing/plan_svg.h"
#include "oilway/draw.h"

#define DEGREES(radians) ((radians)*180.0 / 3.14159265358979323846)
#define POINTS_MAX 64

typedef struct curve {
    ow_spot flow[POINTS_MAX], hot[POINTS_MAX];
    size_t count, hot_count; /* what stands still comes out at no temperature */
    double most_flow, least_hot, most_hot;
} curve;

static curve follow(const double *angles_rad, const ow_siphon *siphons, size_t count)
{
    curve way = {.least_hot = DBL_MAX, .most_hot = -DBL_MAX};
    for (size_t index = 0; index < count && way.count < POINTS_MAX; index++) {
        double angle = DEGREES(angles_rad[index]);
        way.flow[way.count++] = (ow_spot){angle, siphons[index].flow_m3s * 6e4};
        way.most_flow = fmax(way.most_flow, siphons[index].flow_m3s * 6e4);
        way.least_hot = fmin(way.least_hot, siphons[index].boiling_c);
        way.most_hot = fmax(way.most_hot, siphons[index].boiling_c);
        if (siphons[index].stands_still)
            continue;
        way.hot[way.hot_count++] = (ow_spot){angle, siphons[index].hot_c};
        way.least_hot = fmin(way.least_hot, siphons[index].hot_c);
        way.most_hot = fmax(way.most_hot, siphons[index].hot_c);
    }
    return way;
}

/* The angle that the housing has, and those where practice warns and refuses (from memory). */
static void put_angles(const ow_graph *graph, double angle_rad, bool named)
{
    static const struct {
        double degrees;
        const char *words;
    } LIMITS[] = {{20.0, "warn above 20 deg"}, {35.0, "refuse above 35 deg"}};
    for (size_t index = 0; index < 2; index++)
        if (LIMITS[index].degrees < graph->x.high)
            ow_graph_plumb(graph, OW_PEN_HIDDEN, LIMITS[index].degrees, named ? LIMITS[index].words : "");
    if (DEGREES(angle_rad) >= graph->x.low && DEGREES(angle_rad) <= graph->x.high)
        ow_graph_plumb(graph, OW_PEN_EDGE, DEGREES(angle_rad), named ? "as planned" : "");
}

/* The two frames side by side in a column, what they show over each. */
static void put_narrow_graphs(ow_sheet *sheet, const curve *way, const ow_siphon *siphon, double angle_rad)
{
    ow_range x = ow_range_around(way->flow[0].x, way->flow[way->count - 1].x, 6);
    double half = 0.5 * sheet->width, top = sheet->y + 3.5, width = half - 10.5;
    ow_graph flow = {&sheet->canvas, {8.5, top}, width, 14.0, x, ow_range_around(0.0, way->most_flow, 3)};
    ow_graph hot = {&sheet->canvas,
                    {half + 8.5, top},
                    width,
                    14.0,
                    x,
                    ow_range_around(way->least_hot - 2.0, way->most_hot + 8.0, 3)};
    ow_type type = {.size = 2.6};
    ow_graph_frame(&flow, "", "", false);
    put_angles(&flow, angle_rad, false);
    ow_graph_curve(&flow, OW_PEN_BOLD, way->flow, way->count);
    ow_graph_frame(&hot, "", "", false);
    put_angles(&hot, angle_rad, false);
    ow_graph_level(&hot, OW_PEN_DASHED, siphon->boiling_c, "");
    ow_graph_curve(&hot, OW_PEN_BOLD, way->hot, way->hot_count);
    ow_type boils = {.size = 2.6, .anchor = OW_AT_END};
    ow_draw_words(
        &sheet->canvas, &boils,
        (ow_spot){hot.corner.x + width - 0.8, ow_graph_spot(&hot, x.high, siphon->boiling_c).y - 0.8},
        "boils");
    ow_draw_words(&sheet->canvas, &type, (ow_spot){8.5, top - 1.0}, "goes round, L/min");
    ow_draw_words(&sheet->canvas, &type, (ow_spot){half + 8.5, top - 1.0}, "comes out at, C");
    sheet->y = top + 14.0 + 5.0;
}

static void put_graphs(ow_sheet *sheet, const curve *way, const ow_siphon *siphon, double angle_rad)
{
    ow_range x = ow_range_around(way->flow[0].x, way->flow[way->count - 1].x, 6);
    ow_graph flow = {
        &sheet->canvas, {14.0, sheet->y + 3.0}, 74.0, 60.0, x, ow_range_around(0.0, way->most_flow, 5)};
    ow_graph hot = {&sheet->canvas,
                    {108.0, sheet->y + 3.0},
                    74.0,
                    60.0,
                    x,
                    ow_range_around(way->least_hot - 2.0, way->most_hot + 2.0, 5)};
    ow_graph_frame(&flow, "clocking angle, degrees", "goes round, L/min", false);
    put_angles(&flow, angle_rad, true);
    ow_graph_curve(&flow, OW_PEN_BOLD, way->flow, way->count);
    ow_graph_frame(&hot, "clocking angle, degrees", "comes out at, C", false);
    put_angles(&hot, angle_rad, false);
    ow_graph_level(&hot, OW_PEN_DASHED, siphon->boiling_c, "boils");
    ow_graph_curve(&hot, OW_PEN_BOLD, way->hot, way->hot_count);
    sheet->y += 76.0;
}

static void describe(ow_text *words, const ow_loop *loop, const ow_siphon *siphon)
{
    ow_text_format(words, "At %.0f degrees: ", DEGREES(loop->angle_rad));
    if (siphon->stands_still)
        ow_text_add(words, "it stands still");
    else
        ow_text_format(words, "%.3f L/min go round and come out at %.0f C; it boils at %.0f C",
                       siphon->flow_m3s * 6e4, siphon->hot_c, siphon->boiling_c);
    ow_text_format(words, ". %.0f W of heat, %s.", loop->heat_w, ow_coolant_word(loop->coolant));
}

ow_status ow_sheet_put_siphon(ow_sheet *sheet, const ow_loop *loop, const ow_siphon *siphon,
                              const double *angles_rad, const ow_siphon *siphons, size_t count)
{
    ow_text title = ow_text_new(sheet->canvas.body.context), words = ow_text_new(sheet->canvas.body.context);
    curve way = follow(angles_rad, siphons, count);
    ow_text_add(&title, "Coolant going round after shutdown, over the clocking angle");
    ow_sheet_heading(sheet, &title);
    describe(&words, loop, siphon);
    if (!sheet->captioned)
        ow_sheet_words(sheet, 2.0, 2.8, false, ow_text_words(&words));
    if (way.count > 1)
        (sheet->width < OW_SHEET_NARROW ? put_narrow_graphs : put_graphs)(sheet, &way, siphon,
                                                                          loop->angle_rad);
    for (size_t index = 0, hot = 0; index < way.count; index++) {
        bool flows = hot < way.hot_count && way.hot[hot].x == way.flow[index].x;
        ow_text_format(&words, " %.0f degrees: %.3f L/min", way.flow[index].x, way.flow[index].y);
        if (flows)
            ow_text_format(&words, ", %.0f C", way.hot[hot++].y);
        ow_text_char(&words, '.');
    }
    ow_text_format(&sheet->description, "%s ", ow_text_words(&words));
    sheet->canvas.body.failed = sheet->canvas.body.failed || words.failed;
    ow_text_done(&title);
    ow_text_done(&words);
    return ow_canvas_status(&sheet->canvas);
}

ow_status ow_draw_siphon_svg(ow_text *text, const ow_loop *loop, const ow_siphon *siphon,
                             const double *angles_rad, const ow_siphon *siphons, size_t count)
{
    ow_sheet sheet = ow_sheet_new(text->context, OW_DRAWING_WIDTH_MM);
    return ow_sheet_finish(&sheet, ow_sheet_put_siphon(&sheet, loop, siphon, angles_rad, siphons, count),
                           text);
}
