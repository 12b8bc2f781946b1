/* SPDX-License-Identifier: MIT */
/* The drawing of a layout: its figure, and below it what the figure's numbers and letters stand for. */
#include <math.h>
#include <string.h>

#include "base/format.h"
#include "drawing/layout_svg.h"
#include "drawing/layout_words.h"
#include "drawing/letters.h"
#include "drawing/marks.h"
#include "drawing/paint.h"
#include "drawing/scene.h"
#include "drawing/sheet.h"
#include "oilway/draw.h"

/* ---- figure --------------------------------------------------------------------------------- */

/* The figure, moved so that it begins at the sheet's height. */
static ow_status put_figure(ow_sheet *sheet, const ow_scene *scene)
{
    ow_box bounds = ow_labels_bounds(&scene->labels);
    ow_canvas *canvas = &sheet->canvas;
    ow_text_add(&canvas->body, "<g transform=\"translate(0 ");
    ow_svg_number(canvas, &canvas->body, sheet->y - bounds.y0 + 2.0);
    ow_text_add(&canvas->body, ")\">\n");
    ow_status status = ow_paint_figure(canvas, &scene->figure);
    ow_scene_flow(canvas, scene);
    ow_scene_words(canvas, scene);
    ow_group_end(canvas);
    sheet->y += bounds.y1 - bounds.y0 + 4.0;
    return status;
}

/* ---- lists ----------------------------------------------------------------------------------- */

static void put_parts(ow_sheet *sheet, const ow_scene *scene)
{
    static const ow_column COLUMNS[] = {{2.0, 6.0, ""},
                                        {9.0, 34.0, "part"},
                                        {45.0, 88.0, "what it is"},
                                        {135.0, 29.0, "bore"},
                                        {166.0, 22.0, "length"}};
    const ow_layout *layout = scene->layout;
    ow_sheet_table_head(sheet, "Parts", COLUMNS, 5);
    for (size_t index = 0; index < layout->node_count; index++) {
        const ow_layout_node *node = &layout->nodes[index];
        if (node->part == NULL)
            continue;
        ow_text cells[4];
        for (size_t cell = 0; cell < 4; cell++)
            cells[cell] = ow_text_new(scene->labels.context);
        ow_words_of_part(layout, index, cells);
        const char *row[] = {"", ow_text_words(&cells[0]), ow_text_words(&cells[1]), ow_text_words(&cells[2]),
                             ow_text_words(&cells[3])};
        double top = ow_sheet_table_row(sheet, COLUMNS, 5, row);
        ow_draw_number(&sheet->canvas, scene->part_numbers[index], (ow_spot){2.0, top + 0.2});
        for (size_t cell = 0; cell < 4; cell++) {
            sheet->canvas.body.failed = sheet->canvas.body.failed || cells[cell].failed;
            ow_text_done(&cells[cell]);
        }
    }
}

static void put_joints(ow_sheet *sheet, const ow_scene *scene)
{
    const ow_layout *layout = scene->layout;
    double more = 0.0; /* for letters of more than one */
    for (size_t child = 1; child < layout->node_count; child++)
        more = fmax(more, ow_joint_letter_more(ow_scene_joint_number(child), OW_JOINT_LETTER));
    const ow_column columns[] = {
        {2.0, 5.0 + more, ""}, {13.0 + more, 76.0 - more, "joint"}, {91.0, 97.0, "sealed by"}};
    ow_sheet_table_head(sheet, "Joints", columns, 3);
    for (size_t child = 1; child < layout->node_count; child++) {
        char letter[8];
        ow_text between = ow_text_new(scene->labels.context), seal = ow_text_new(scene->labels.context);
        ow_joint_letter(ow_scene_joint_number(child), letter);
        ow_words_of_joint(layout, child, &between, &seal);
        const char *row[] = {letter, ow_text_words(&between), ow_text_words(&seal)};
        double top = ow_sheet_table_row(sheet, columns, 3, row);
        ow_draw_seat_mark(
            &sheet->canvas,
            ow_seat_mark_of(ow_layout_parent_end(layout, child), ow_layout_child_end(layout, child)),
            (ow_spot){6.5 + more, top + 0.1});
        sheet->canvas.body.failed = sheet->canvas.body.failed || between.failed || seal.failed;
        ow_text_done(&between);
        ow_text_done(&seal);
    }
}

static void put_findings(ow_sheet *sheet, const ow_scene *scene)
{
    static const ow_column COLUMNS[] = {{2.0, 5.0, ""}, {9.0, 179.0, ""}};
    if (scene->findings == NULL || scene->findings->count == 0)
        return;
    ow_sheet_table_head(sheet, "Findings", COLUMNS, 2);
    for (size_t index = 0; index < scene->findings->count; index++) {
        const ow_finding *finding = &scene->findings->items[index];
        ow_text words = ow_text_new(scene->labels.context);
        ow_words_of_finding(finding, &words);
        const char *row[] = {"", ow_text_words(&words)};
        double top = ow_sheet_table_row(sheet, COLUMNS, 2, row);
        ow_draw_finding_mark(&sheet->canvas, finding->severity, index + 1, (ow_spot){2.0, top + 0.2});
        sheet->canvas.body.failed = sheet->canvas.body.failed || words.failed;
        ow_text_done(&words);
    }
}

/* ---- key --------------------------------------------------------------------------------------- */

/* A bar of a round length with its scale, to measure by even where the print is reduced. */
static void put_scale(ow_sheet *sheet, const ow_figure *figure)
{
    char words[64];
    double length = figure->scale >= 0.8 ? 20.0 : figure->scale >= 0.4 ? 50.0 : 100.0;
    double shown = length * figure->scale, x = 2.0, y = sheet->y + 3.0;
    ow_type type = {.size = 2.6};
    for (int part = 0; part < 2; part++)
        ow_draw_box(&sheet->canvas, OW_PEN_THIN, part == 0 ? OW_FILL_BLACK : OW_FILL_WHITE,
                    (ow_spot){x + 0.5 * shown * part, y - 1.2}, 0.5 * shown, 1.2);
    ow_format_to(words, sizeof words, "%.0f mm; scale %s%.4g%s, %d mm wide", length,
                 figure->scale > 1.0 ? "" : "1:", figure->scale > 1.0 ? figure->scale : 1.0 / figure->scale,
                 figure->scale > 1.0 ? ":1" : "", (int)OW_DRAWING_WIDTH_MM);
    ow_draw_words(&sheet->canvas, &type, (ow_spot){x + shown + 2.0, y}, words);
    double key = 102.0;
    ow_draw_line(&sheet->canvas, OW_PEN_FLOW, (ow_spot){key, y - 0.8}, (ow_spot){key + 12.0, y - 0.8});
    ow_draw_arrowhead(&sheet->canvas, (ow_spot){key + 13.0, y - 0.8}, (ow_spot){1.0, 0.0}, 2.6);
    ow_draw_words(&sheet->canvas, &type, (ow_spot){key + 15.0, y}, "flow");
    ow_draw_line(&sheet->canvas, OW_PEN_CENTRE, (ow_spot){key + 25.0, y - 0.8},
                 (ow_spot){key + 39.0, y - 0.8});
    ow_draw_words(&sheet->canvas, &type, (ow_spot){key + 41.0, y}, "pressure, no flow");
    sheet->y += 5.0;
}

/* The seat marks that occur, with their meaning. */
static void put_marks(ow_sheet *sheet, const ow_layout *layout)
{
    bool seen[OW_MARK_COUNT] = {false};
    ow_type type = {.size = 2.6};
    double x = 2.0;
    for (size_t child = 1; child < layout->node_count; child++)
        seen[ow_seat_mark_of(ow_layout_parent_end(layout, child), ow_layout_child_end(layout, child))] = true;
    for (int mark = 0; mark < OW_MARK_COUNT; mark++) {
        if (!seen[mark])
            continue;
        const char *words = ow_seat_mark_words((ow_seat_mark)mark);
        double width = 6.0 + ow_words_width(words, 2.6, false) + 5.0;
        if (x + width > sheet->width) {
            x = 2.0;
            sheet->y += 5.0;
        }
        ow_draw_seat_mark(&sheet->canvas, (ow_seat_mark)mark, (ow_spot){x, sheet->y});
        ow_draw_words(&sheet->canvas, &type, (ow_spot){x + 5.2, sheet->y + 3.0}, words);
        x += width;
    }
    sheet->y += 5.4;
}

static const char *const CAUTION =
    "Lengths in millimetres. Proportions follow the catalogue and the threads; what neither gives is "
    "derived, and "
    "hoses are shown shortened: do not make or cut by this drawing. Hot oil burns and catches fire: have the "
    "work checked by a qualified fitter.";

#define AROUND 13.0 /* mm that the scale's bar and the edges take beside the figure */

/* ---- all ---------------------------------------------------------------------------------------- */

static ow_status put_all(ow_sheet *sheet, const ow_scene *scene, bool bare)
{
    ow_status status = put_figure(sheet, scene);
    put_scale(sheet, &scene->figure);
    if (bare)
        return status;
    put_marks(sheet, scene->layout);
    put_parts(sheet, scene);
    put_joints(sheet, scene);
    put_findings(sheet, scene);
    sheet->y += 2.0;
    ow_sheet_words(sheet, 2.0, 2.6, false, CAUTION);
    return status;
}

ow_status ow_sheet_put_layout(ow_sheet *sheet, const ow_layout *layout, const ow_findings *findings,
                              const ow_layout_look *look)
{
    const ow_context *context = sheet->canvas.body.context;
    ow_scene scene;
    ow_text name = ow_text_new(context);
    ow_words_of_layout(layout, &name);
    ow_status status =
        ow_scene_new(context, layout, findings,
                     look->most_height > 0.0 ? fmax(look->most_height - AROUND, 1.0) : 0.0, &scene);
    if (status == OW_OK) {
        if (look->bare && look->alone)
            ow_sheet_name(sheet, &name);
        else
            ow_sheet_heading(sheet, &name);
        status = put_all(sheet, &scene, look->bare);
        ow_scene_done(&scene);
    }
    if (status == OW_OK)
        ow_words_along_layout(layout, findings, &sheet->description);
    ow_text_done(&name);
    return status;
}

ow_status ow_draw_layouts_svg(ow_text *text, const ow_layout *layouts, const ow_findings *findings,
                              size_t count, const ow_draw_options *options)
{
    ow_sheet sheet = ow_sheet_new(text->context, OW_PAPER_WIDTH);
    const ow_layout_look look = {.bare = options != NULL && options->bare, .alone = count == 1};
    ow_status status = OW_OK;
    for (size_t index = 0; index < count && status == OW_OK; index++)
        status =
            ow_sheet_put_layout(&sheet, &layouts[index], findings == NULL ? NULL : &findings[index], &look);
    return ow_sheet_finish(&sheet, status, text);
}

ow_status ow_draw_layout_svg(ow_text *text, const ow_layout *layout, const ow_findings *findings,
                             const ow_draw_options *options)
{
    return ow_draw_layouts_svg(text, layout, findings, 1, options);
}
