/* SPDX-License-Identifier: MIT */
/* The stack joint by joint: what seals it, what goes between, how tight. */
#include <string.h>

#include "drawing/escape.h"
#include "drawing/html.h"
#include "drawing/layout_words.h"
#include "drawing/marks.h"
#include "drawing/scene.h"

static void write_range(ow_text *text, double least, double most, const char *unit)
{
    if (most > least)
        ow_text_format(text, "%g\xE2\x80\x93%g %s", least, most, unit); /* an en dash */
    else
        ow_text_format(text, "%g %s", most, unit);
}

/* Sources of figures are numbered as they first occur, those of seals go by the seal's name; both are told
 * below the table. */
#define SOURCES_MAX 32
typedef struct source_list {
    const char *items[SOURCES_MAX];
    size_t count;
    const ow_joint_rule *seals[SOURCES_MAX];
    size_t seal_count;
} source_list;

static void note_seal(source_list *sources, const ow_joint_rule *rule)
{
    for (size_t index = 0; index < sources->seal_count; index++)
        if (strcmp(sources->seals[index]->seals_by, rule->seals_by) == 0 &&
            strcmp(sources->seals[index]->source, rule->source) == 0)
            return;
    if (sources->seal_count < SOURCES_MAX)
        sources->seals[sources->seal_count++] = rule;
}

static size_t source_number(source_list *sources, const char *source)
{
    for (size_t index = 0; index < sources->count; index++)
        if (strcmp(sources->items[index], source) == 0)
            return index + 1;
    if (sources->count == SOURCES_MAX)
        return SOURCES_MAX;
    sources->items[sources->count++] = source;
    return sources->count;
}

static void write_tightening(ow_text *text, const ow_card *card, source_list *sources)
{
    size_t last = 0;
    if (card->torque_count == 0) {
        ow_text_add(text, card->has_thread ? "none published" : "");
        return;
    }
    if (card->torques[0].most_turns > 0.0)
        write_range(text, card->torques[0].least_turns, card->torques[0].most_turns, "turns");
    else
        write_range(text, card->least_nm, card->most_nm, "N m");
    for (size_t index = 0; index < card->torque_count; index++) {
        size_t number = source_number(sources, card->torques[index].source);
        if (number > last) /* rows of one source follow one another */
            ow_text_format(text, "%s%zu", last == 0 ? " [" : ",", number);
        last = number > last ? number : last;
    }
    ow_text_char(text, ']');
}

/* The size; of a ring, inside and outside alone: the bill has its thickness too. */
static void write_size(ow_text *text, const ow_consumable *item)
{
    if (item->measure || item->inner_mm <= 0.0)
        return; /* to be measured, or for a hose or pattern that the ends name: in the bill alone */
    const char *first = strstr(item->size, " x "), *last = first;
    for (const char *next = first; next != NULL; next = strstr(next + 1, " x "))
        last = next;
    ow_text_char(text, ' ');
    ow_text_bytes(text, item->size, last != first ? (size_t)(last - item->size) : strlen(item->size));
}

static void write_between(ow_text *text, const ow_card *card)
{
    for (size_t index = 0; index < card->consumable_count; index++) {
        const ow_consumable *item = &card->consumables[index];
        ow_text_add(text, index > 0 ? ", " : "");
        if (item->count > 1)
            ow_text_format(text, "%zu ", item->count);
        ow_text_format(text, "%s%s", item->what, item->count > 1 ? "s" : "");
        write_size(text, item);
    }
    if (card->ring_hint[0])
        ow_text_format(text, "%s%s", card->consumable_count > 0 ? ", " : "", card->ring_hint);
    if (card->consumable_count == 0 && card->ring_hint[0] == '\0')
        ow_text_add(text, "dry");
}

static void write_thread(ow_text *text, const ow_engagement *engagement)
{
    if (engagement->pitch_m <= 0.0 || !engagement->has_length)
        return;
    ow_text_format(text, "%.1f (%.1f)%s", engagement->least_m * 1e3,
                   engagement->least_m / engagement->pitch_m,
                   engagement->enough == OW_NOT_ENOUGH ? ": NOT ENOUGH" : "");
}

/* What seals it, what goes between, how tight, how far the threads engage. */
static void write_card(ow_text *text, const ow_card *card, source_list *sources)
{
    ow_text cells[3];
    for (size_t cell = 0; cell < 3; cell++)
        cells[cell] = ow_text_new(text->context);
    ow_text_format(&cells[0], "%s: ", card->rule->seals_by);
    write_between(&cells[0], card);
    write_tightening(&cells[1], card, sources);
    write_thread(&cells[2], &card->engagement);
    note_seal(sources, card->rule);
    for (size_t cell = 0; cell < 3; cell++) {
        ow_html_cell(text, ow_text_words(&cells[cell]));
        ow_text_done_into(&cells[cell], text);
    }
}

/* How much of the upper end's name is told: a seat that both have at their end is told once. */
static size_t told_length(const char *upper, const char *lower)
{
    const char *seat = strrchr(upper, ' '), *other = strrchr(lower, ' ');
    if (seat == NULL || other == NULL || strcmp(seat, other) != 0 || strchr(upper, ' ') == seat)
        return strlen(upper);
    return (size_t)(seat - upper);
}

/* Letter and sign, as in the drawing; then who meets whom, by which two ends. */
static void write_ends(ow_text *text, const ow_layout *layout, size_t child)
{
    char letter[8], names[2][OW_END_TEXT_SIZE];
    const ow_end *upper = ow_layout_parent_end(layout, child), *lower = ow_layout_child_end(layout, child);
    ow_text between = ow_text_new(text->context);
    ow_canvas canvas = ow_canvas_new(text->context);
    ow_seat_mark mark = ow_seat_mark_of(upper, lower);
    ow_joint_letter(ow_scene_joint_number(child), letter);
    ow_text_format(text, "<th scope=\"row\">%s ", letter);
    ow_draw_seat_mark(&canvas, mark, (ow_spot){0.0, 0.0});
    ow_html_mark(text, &canvas, ow_seat_mark_words(mark));
    ow_text_add(text, "</th>\n");
    ow_layout_node_name(&between, layout, layout->nodes[child].parent);
    ow_text_add(&between, " \xE2\x86\x92 "); /* an arrow: "from" and "to" are names of bare ends */
    ow_layout_node_name(&between, layout, child);
    ow_html_cell(text, ow_text_words(&between));
    const char *above = ow_end_name(upper, names[0]), *below = ow_end_name(lower, names[1]);
    ow_text_add(text, "<td>");
    ow_escape_bytes(text, above, told_length(above, below));
    ow_text_add(text, " \xC3\x97 ");
    ow_escape(text, below);
    ow_text_add(text, "</td>\n");
    ow_text_done_into(&between, text);
}

static void write_joint(ow_text *text, const ow_layout *layout, size_t child, source_list *sources)
{
    ow_card card;
    write_ends(text, layout, child);
    if (ow_layout_joint_card(layout, child, &card) == OW_OK)
        write_card(text, &card, sources);
    else
        ow_text_add(text, "<td class=\"error\" colspan=\"3\">does not seal</td>\n");
    ow_text_add(text, "</tr>\n");
}

/* All seals that have one source, where that is told first. */
static void write_seals_of(ow_text *text, const source_list *sources, size_t first)
{
    const char *source = sources->seals[first]->source;
    for (size_t before = 0; before < first; before++)
        if (strcmp(sources->seals[before]->source, source) == 0)
            return;
    ow_text_add(text, first > 0 ? "; " : "");
    for (size_t index = first; index < sources->seal_count; index++) {
        if (strcmp(sources->seals[index]->source, source) != 0)
            continue;
        ow_escape(text, sources->seals[index]->seals_by);
        ow_text_add(text, ", ");
    }
    ow_escape(text, source);
}

static void write_sources(ow_text *text, const source_list *sources)
{
    if (sources->seal_count == 0)
        return;
    ow_text_add(text, "<p class=\"notes\">");
    if (sources->count > 0)
        ow_text_add(text, "Turns are from finger tight; engaged are mm (turns) of thread. Figures: ");
    for (size_t index = 0; index < sources->count; index++) {
        ow_text_format(text, "%s[%zu] ", index > 0 ? "; " : "", index + 1);
        ow_escape(text, sources->items[index]);
    }
    ow_text_format(text, "%s", sources->count > 0 ? ". Seals: " : "Seals: ");
    for (size_t index = 0; index < sources->seal_count; index++)
        write_seals_of(text, sources, index);
    ow_text_add(text, "</p>\n");
}

#define FEW 12 /* joints that one does not want to turn the page for */

/* The joints of one layout; where there are several, letters begin anew with each, so its circuit stands
 * beside them. */
static void write_layout_joints(ow_text *text, const ow_layout *layout, bool named, source_list *sources)
{
    const char *circuit = ow_circuit_word(layout->circuit);
    ow_text_add(text, "<tbody>\n");
    for (size_t child = 1; child < layout->node_count; child++) {
        ow_text_add(text, "<tr>");
        if (named && child == 1) {
            ow_text_format(text, "<th rowspan=\"%zu\" scope=\"rowgroup\">", layout->node_count - 1);
            ow_escape(text, circuit[0] != '\0' ? circuit : "layout");
            ow_text_add(text, "</th>");
        }
        write_joint(text, layout, child, sources);
    }
    ow_text_add(text, "</tbody>\n");
}

void ow_html_joints(ow_text *text, const ow_layout *const *layouts, size_t count)
{
    source_list sources = {.count = 0};
    size_t joints = 0;
    for (size_t index = 0; index < count; index++)
        joints += ow_layout_joint_count(layouts[index]);
    ow_text_format(text, "<div class=\"joints%s\">\n<table>\n", joints > FEW ? "" : " few");
    ow_html_element(text, "caption", "Joint by joint");
    ow_html_table_head(text, count > 1 ? ":2|:4|joint:26|ends:25|sealed by:27|tighten:11|engaged:5"
                                       : ":4|joint:26|ends:25|sealed by:27|tighten:11|engaged:5");
    for (size_t index = 0; index < count; index++)
        write_layout_joints(text, layouts[index], count > 1, &sources);
    ow_text_add(text, "</table>\n");
    write_sources(text, &sources);
    ow_text_add(text, "</div>\n");
}

/* ---- cautions ------------------------------------------------------------------------------------ */

#define CAUTIONS_MAX 32

static void add_once(const char **known, size_t *count, const char *words)
{
    for (size_t index = 0; index < *count; index++)
        if (strcmp(known[index], words) == 0)
            return;
    if (words[0] != '\0' && *count < CAUTIONS_MAX)
        known[(*count)++] = words;
}

void ow_html_joint_cautions(ow_text *text, const ow_layout *const *layouts, size_t count)
{
    const char *known[CAUTIONS_MAX];
    size_t known_count = 0;
    for (size_t index = 0; index < count; index++)
        for (size_t child = 1; child < layouts[index]->node_count; child++) {
            ow_card card;
            if (ow_layout_joint_card(layouts[index], child, &card) != OW_OK)
                continue;
            for (size_t caution = 0; caution < card.caution_count; caution++)
                add_once(known, &known_count, card.cautions[caution]);
            if (card.reuse != NULL)
                add_once(known, &known_count, card.reuse);
        }
    if (known_count == 0)
        return;
    ow_text_add(text, "<section class=\"run\">\n");
    ow_html_element(text, "h2", "At the joints");
    ow_text_add(text, "\n<ul>\n");
    for (size_t index = 0; index < known_count; index++)
        ow_html_element(text, "li", known[index]);
    ow_text_add(text, "</ul>\n</section>\n");
}
