/* SPDX-License-Identifier: MIT */
#include "drawing/scene.h"

#include <math.h>
#include <string.h>

#include "drawing/embed.h"

#define FIGURE_WIDTH 164.0 /* of the figure itself; labels and dimensions stand beside it */
#define FIGURE_HEIGHT 150.0
#define WORDS_ABOVE 6.0 /* of height, that labels and dimensions take at the least */
#define A_LITTLE 8.0    /* of height, mm, that a larger scale is worth */
#define LEAST_SCALE 0.3 /* below it a small thread cannot be told from a big one: rather higher than that */

/* Scales of ISO 5455 and steps between them, so that the paper is used. */
static const double SCALES[] = {2.0, 1.5,       1.25, 1.0, 0.8, 2.0 / 3.0, 0.5,
                                0.4, 1.0 / 3.0, 0.25, 0.2, 0.1, 0.05};

/* Puts the figure in the middle of the paper's width. */
static void centre(ow_figure *figure)
{
    double across = 0.5 * OW_PAPER_WIDTH - 0.5 * (figure->bounds.x0 + figure->bounds.x1);
    double down = -figure->bounds.y0;
    for (size_t index = 0; index < figure->group_count; index++) {
        ow_group *group = &figure->groups[index];
        group->shift.x += across;
        group->shift.y += down;
        ow_place_group(figure, index, group->shift);
    }
    figure->bounds.x0 += across;
    figure->bounds.x1 += across;
    figure->bounds.y0 += down;
    figure->bounds.y1 += down;
}

/* The part with the least bore on the way to the first port served. */
static size_t find_narrowest(const ow_layout *layout)
{
    size_t narrowest = OW_NODE_NONE, target = 0;
    double least = 0.0;
    for (size_t index = 1; index < layout->given_count && target == 0; index++)
        if (layout->givens[index].role == OW_ROLE_TO)
            target = index;
    for (size_t index = 1; index < layout->node_count && target != 0; index++) {
        const ow_layout_node *node = &layout->nodes[index];
        if (node->part == NULL || !ow_layout_on_path(layout, index, target))
            continue;
        for (size_t end = 0; end < node->part->end_count; end++) {
            if (node->exits[end] == OW_NODE_NONE || !ow_layout_on_path(layout, node->exits[end], target))
                continue;
            double bore = ow_part_bore_m(node->part, node->enter, end);
            if (bore > 0.0 && (narrowest == OW_NODE_NONE || bore < least - 1e-9)) {
                narrowest = index;
                least = bore;
            }
        }
    }
    return narrowest;
}

/* Parts are numbered as they follow one another from the source. */
static void number_parts(ow_scene *scene)
{
    size_t number = 0;
    for (size_t index = 0; index < scene->layout->node_count; index++)
        if (scene->layout->nodes[index].part != NULL)
            scene->part_numbers[index] = ++number;
}

static bool fits(const ow_scene *scene, double most_height)
{
    const ow_box *bounds = &scene->figure.bounds;
    double tall = most_height > 0.0 ? fmin(most_height - WORDS_ABOVE, FIGURE_HEIGHT) : FIGURE_HEIGHT;
    return bounds->x1 - bounds->x0 <= FIGURE_WIDTH && bounds->y1 - bounds->y0 <= tall;
}

/* Measures and labels anew what is arranged, within a height unless that is 0. */
static void put_words(ow_scene *scene, double most_height)
{
    ow_labels_done(&scene->labels);
    scene->dimension_count = 0;
    centre(&scene->figure);
    ow_scene_block(scene);
    ow_scene_measure(scene);
    if (most_height > 0.0) {
        ow_box bounds = ow_labels_bounds(&scene->labels); /* parts and dimensions */
        double spare = fmax(most_height - (bounds.y1 - bounds.y0), 0.0);
        scene->labels.least_y = bounds.y0 - 0.5 * spare;
        scene->labels.most_y = bounds.y1 + 0.5 * spare;
    }
    ow_scene_label(scene);
}

/* Tries the words at the scale that is set, within a height or a little more; whether all found a place. */
static bool words_fit(ow_scene *scene, double most_height)
{
    for (int more = 0; more < 2 && !scene->labels.failed; more++) {
        put_words(scene, most_height > 0.0 ? most_height + A_LITTLE * more : 0.0);
        if (most_height <= 0.0 || !ow_labels_are_crowded(&scene->labels))
            return true;
    }
    return false;
}

/* Tries scales from the largest to the least that may be; whether one holds all words. */
static bool find_scale(ow_scene *scene, double most_height)
{
    for (size_t index = 0; index < sizeof SCALES / sizeof SCALES[0] && !scene->labels.failed; index++) {
        if (most_height > 0.0 && (SCALES[index] < LEAST_SCALE || ow_labels_are_spent(&scene->labels)))
            return false;
        ow_figure_arrange(&scene->figure, SCALES[index]);
        if (fits(scene, most_height) && words_fit(scene, most_height))
            return true;
    }
    return false;
}

/* The largest scale at which figure and words keep to the height; where none is, to a greater one. */
static void lay_out(ow_scene *scene, double most_height)
{
    for (int more = 0; more < 3 && most_height > 0.0; more++)
        if (find_scale(scene, most_height + 2.0 * A_LITTLE * more) || scene->labels.failed)
            return;
    scene->labels.looked = 0; /* as much effort again for a drawing as tall as it likes */
    if (find_scale(scene, 0.0) || scene->labels.failed)
        return;
    ow_figure_arrange(&scene->figure, SCALES[sizeof SCALES / sizeof SCALES[0] - 1]);
    put_words(scene, 0.0);
}

ow_status ow_scene_new(const ow_context *context, const ow_layout *layout, const ow_findings *findings,
                       double most_height, ow_scene *scene)
{
    ow_scene made = {.layout = layout, .findings = findings};
    ow_status status = ow_figure_new(context, layout, &made.figure);
    if (status != OW_OK)
        return status;
    made.words = ow_arena_new(context);
    made.labels = ow_labels_new(context, 1.0, OW_PAPER_WIDTH - 1.0);
    made.part_numbers = ow_arena_get_array(&made.words, layout->node_count, sizeof *made.part_numbers);
    if (made.part_numbers == NULL) {
        ow_scene_done(&made);
        return OW_MEMORY;
    }
    number_parts(&made);
    made.narrowest = find_narrowest(layout);
    ow_figure_choose(&made.figure, most_height > 0.0);
    lay_out(&made, most_height);
    if (made.labels.failed) {
        ow_scene_done(&made);
        return OW_MEMORY;
    }
    *scene = made;
    return OW_OK;
}

void ow_scene_done(ow_scene *scene)
{
    ow_figure_done(&scene->figure);
    ow_labels_done(&scene->labels);
    ow_arena_done(&scene->words);
}
