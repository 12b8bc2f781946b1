/* SPDX-License-Identifier: MIT */
/* The pressure along a feed, a curve for each state: cold, hot idle, hot at full revs, or whatever was given.
 */
#include <math.h>
#include <string.h>

#include "drawing/graph.h"
#include "drawing/letters.h"
#include "drawing/plan_svg.h"
#include "oilway/draw.h"

#define STOPS_MAX 40
#define CURVES_MAX 3 /* more would not be told apart */

/* A stretch of the feed: all losses of one part together. */
typedef struct stops {
    const char *names[STOPS_MAX];
    double pressures_pa[CURVES_MAX][STOPS_MAX + 1]; /* before the first, then behind each */
    size_t count, curves;
} stops;

static const ow_pen PENS[CURVES_MAX] = {OW_PEN_DASHED, OW_PEN_DOTTED, OW_PEN_BOLD};

/* The stop that a loss belongs to: its own name's, or for a step of bore that of what follows. */
static const char *name_of(const ow_feed_result *result, size_t loss, const char *last)
{
    for (size_t index = loss; index < result->loss_count; index++) {
        const char *name = result->losses[index].name;
        if (strcmp(result->losses[index].kind, "rise") == 0)
            return index == loss ? "rise" : last;
        if (name != NULL && name[0] != '\0')
            return name;
    }
    return last;
}

/* Whether the branch of that name leads to the first load, and so does everything on the way to it. */
static bool leads_to_load(const ow_branch *trunk, const char *name)
{
    for (size_t index = 0; index < trunk->branch_count; index++) {
        const ow_branch *own = &trunk->branches[index];
        if (!own->has_load && own->branch_count == 0)
            continue; /* a dead branch: a switch */
        return (own->name != NULL && strcmp(own->name, name) == 0) || leads_to_load(own, name);
    }
    return false;
}

static bool on_the_way(const ow_feed *feed, const ow_feed_result *result, size_t loss)
{
    const char *branch = result->loss_branches[loss];
    return branch == NULL || branch[0] == '\0' || leads_to_load(&feed->trunk, branch);
}

static void follow(const ow_feed *feed, const ow_feed_result *result, size_t curve, stops *way)
{
    const char *name = "";
    size_t at = 0;
    double pressure = result->state->source_pa;
    way->pressures_pa[curve][0] = pressure;
    for (size_t loss = 0; loss < result->loss_count; loss++) {
        if (!on_the_way(feed, result, loss))
            continue;
        const char *own = name_of(result, loss, name);
        if (at == 0 || strcmp(own, name) != 0) {
            if (at == STOPS_MAX)
                break;
            name = own;
            way->names[at++] = name;
        }
        pressure -= result->losses[loss].loss_pa;
        way->pressures_pa[curve][at] = pressure;
    }
    way->count = at;
}

/* Names of the stops, read upwards below the frame. */
static double put_stop_names(const ow_graph *graph, const stops *way)
{
    ow_type type = {.size = 2.5, .turned = true, .anchor = OW_AT_END};
    double longest = 0.0;
    for (size_t stop = 0; stop < way->count; stop++) {
        const char *name = way->names[stop][0] == '\0' ? "inlet" : way->names[stop];
        ow_spot foot = ow_graph_spot(graph, (double)stop + 0.5, graph->y.low);
        ow_spot edge = ow_graph_spot(graph, (double)stop + 1.0, graph->y.low);
        ow_draw_words(graph->canvas, &type, (ow_spot){foot.x + 0.9, foot.y + 1.6}, name);
        ow_draw_line(graph->canvas, OW_PEN_GRID, edge, (ow_spot){edge.x, graph->corner.y});
        longest = fmax(longest, ow_words_width(name, 2.5, false));
    }
    return longest;
}

/* In a column curves are named within the frame, by their states alone: the figures stand in a table. */
static void put_curves(const ow_graph *graph, const ow_feed_answer *answer, const stops *way, bool narrow)
{
    ow_graph_names names = {.count = 0};
    ow_text words[CURVES_MAX];
    for (size_t curve = 0; curve < way->curves; curve++) {
        const ow_feed_result *result = &answer->results[curve];
        ow_spot values[STOPS_MAX + 1];
        words[curve] = ow_text_new(graph->canvas->body.context);
        for (size_t stop = 0; stop <= way->count; stop++)
            values[stop] = (ow_spot){(double)stop, way->pressures_pa[curve][stop] / 1e5};
        ow_graph_curve(graph, PENS[curve], values, way->count + 1);
        if (narrow)
            ow_text_add(&words[curve], result->state->name);
        else
            ow_text_format(&words[curve], "%s, %.0f C: %.2f bar", result->state->name, result->state->oil_c,
                           way->pressures_pa[curve][way->count] / 1e5);
        names.values[names.count] = way->pressures_pa[curve][way->count] / 1e5;
        names.pens[names.count] = PENS[curve];
        names.words[names.count++] = ow_text_words(&words[curve]);
    }
    if (narrow)
        ow_graph_put_names_within(graph, &names);
    else
        ow_graph_put_names(graph, &names);
    for (size_t curve = 0; curve < way->curves; curve++) {
        graph->canvas->body.failed = graph->canvas->body.failed || words[curve].failed;
        ow_text_done(&words[curve]);
    }
}

/* The limit's name, on the side where the curves leave more room at their beginning. */
static void name_limit(const ow_graph *graph, const stops *way, double limit_pa)
{
    double over = graph->y.high * 1e5 - limit_pa, under = limit_pa;
    for (size_t curve = 0; curve < way->curves; curve++) {
        double off = way->pressures_pa[curve][0] - limit_pa;
        over = off >= 0.0 ? fmin(over, off) : over;
        under = off < 0.0 ? fmin(under, -off) : under;
    }
    ow_spot at = ow_graph_spot(graph, graph->x.low, limit_pa / 1e5);
    ow_type type = {.size = 2.6};
    ow_draw_words(graph->canvas, &type, (ow_spot){at.x + 1.0, at.y + (over >= under ? -0.8 : 2.7)},
                  "most at the turbo");
}

/* The curves in words, for those who listen. */
static void describe(ow_sheet *sheet, const ow_feed_answer *answer, const stops *way)
{
    for (size_t curve = 0; curve < way->curves; curve++) {
        ow_text_format(&sheet->description, "%s: %.2f bar at the source", answer->results[curve].state->name,
                       way->pressures_pa[curve][0] / 1e5);
        for (size_t stop = 0; stop < way->count; stop++)
            ow_text_format(&sheet->description, ", %.2f behind %s", way->pressures_pa[curve][stop + 1] / 1e5,
                           way->names[stop][0] == '\0' ? "the inlet" : way->names[stop]);
        ow_text_add(&sheet->description, ". ");
    }
}

ow_status ow_sheet_put_pressure(ow_sheet *sheet, const ow_feed *feed, const ow_feed_answer *answer,
                                double limit_pa)
{
    stops way = {.count = 0, .curves = answer->state_count < CURVES_MAX ? answer->state_count : CURVES_MAX};
    double high = limit_pa > 0.0 ? limit_pa : 0.0;
    for (size_t curve = 0; curve < way.curves; curve++) {
        follow(feed, &answer->results[curve], curve, &way);
        high = fmax(high, answer->results[curve].state->source_pa);
    }
    ow_text title = ow_text_new(sheet->canvas.body.context);
    ow_text_format(&title, "Pressure along the feed%s%s", feed->title != NULL ? ": " : "",
                   feed->title != NULL ? feed->title : "");
    ow_sheet_heading(sheet, &title);
    ow_text_done(&title);
    bool narrow = sheet->width < OW_SHEET_NARROW;
    ow_graph graph = {&sheet->canvas,
                      {narrow ? 5.0 : 14.0, sheet->y + (narrow ? 0.5 : 3.0)},
                      narrow ? sheet->width - 6.0 : 122.0,
                      narrow ? 19.0 : 62.0,
                      {0.0, fmax((double)way.count, 1.0), 1.0},
                      ow_range_around(0.0, (narrow ? 1.15 : 1.0) * high / 1e5, narrow ? 3 : 6)};
    ow_graph_frame(&graph, "", narrow ? "" : "pressure, bar", true); /* its caption says so */
    if (limit_pa > 0.0)
        ow_graph_level(&graph, OW_PEN_HIDDEN, limit_pa / 1e5, "");
    double names = put_stop_names(&graph, &way);
    put_curves(&graph, answer, &way, narrow);
    if (limit_pa > 0.0)
        name_limit(&graph, &way, limit_pa);
    describe(sheet, answer, &way);
    sheet->y = graph.corner.y + graph.height + names + (narrow ? 1.0 : 4.0);
    return ow_canvas_status(&sheet->canvas);
}

ow_status ow_draw_pressure_svg(ow_text *text, const ow_feed *feed, const ow_feed_answer *answer,
                               double limit_pa)
{
    ow_sheet sheet = ow_sheet_new(text->context, OW_DRAWING_WIDTH_MM);
    return ow_sheet_finish(&sheet, ow_sheet_put_pressure(&sheet, feed, answer, limit_pa), text);
}
