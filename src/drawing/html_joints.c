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
        ow_text_format(text, "%g to %g %s", least, most, unit);
    else
        ow_text_format(text, "%g %s", most, unit);
}

/* Sources are numbered as they first occur, and told below the table. */
#define SOURCES_MAX 32
typedef struct source_list {
    const char *items[SOURCES_MAX];
    size_t count;
} source_list;

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
        ow_text_add(text, card->has_thread ? "no published figure" : "");
        return;
    }
    if (card->torques[0].most_turns > 0.0)
        write_range(text, card->torques[0].least_turns, card->torques[0].most_turns,
                    "turns from finger tight");
    else
        write_range(text, card->least_nm, card->most_nm, "N m");
    for (size_t index = 0; index < card->torque_count; index++) {
        size_t number = source_number(sources, card->torques[index].source);
        if (number > last) /* rows of one source follow one another */
            ow_text_format(text, "%s%zu", last == 0 ? " [" : ", ", number);
        last = number > last ? number : last;
    }
    ow_text_char(text, ']');
}

static void write_between(ow_text *text, const ow_card *card)
{
    for (size_t index = 0; index < card->consumable_count; index++) {
        const ow_consumable *item = &card->consumables[index];
        ow_text_add(text, index > 0 ? ", " : "");
        if (item->count > 0)
            ow_text_format(text, "%zu x ", item->count);
        ow_text_format(text, "%s%s%s", item->what, item->size[0] ? " " : "", item->size);
    }
    if (card->ring_hint[0])
        ow_text_format(text, "%s%s", card->consumable_count > 0 ? ", " : "", card->ring_hint);
    if (card->consumable_count == 0 && card->ring_hint[0] == '\0')
        ow_text_add(text, "nothing");
}

static void write_thread(ow_text *text, const ow_engagement *engagement)
{
    if (engagement->pitch_m <= 0.0 || !engagement->has_length)
        return;
    ow_text_format(text, "%.1f mm, %.1f turns%s", engagement->least_m * 1e3,
                   engagement->least_m / engagement->pitch_m,
                   engagement->enough == OW_NOT_ENOUGH ? ": NOT ENOUGH" : "");
}

/* What seals it, what goes between, how tight, how far the threads engage. */
static void write_card(ow_text *text, const ow_card *card, source_list *sources)
{
    ow_text cells[3];
    for (size_t cell = 0; cell < 3; cell++)
        cells[cell] = ow_text_new(text->context);
    write_between(&cells[0], card);
    write_tightening(&cells[1], card, sources);
    write_thread(&cells[2], &card->engagement);
    ow_text_add(text, "<td>");
    ow_escape(text, card->rule->seals_by);
    ow_text_add(text, " <small>");
    ow_escape(text, card->rule->source);
    ow_text_add(text, "</small></td>\n");
    for (size_t cell = 0; cell < 3; cell++) {
        ow_html_cell(text, ow_text_words(&cells[cell]));
        ow_text_done_into(&cells[cell], text);
    }
}

static void write_joint(ow_text *text, const ow_layout *layout, size_t child, source_list *sources)
{
    char letter[8], name[OW_END_TEXT_SIZE];
    ow_card card;
    ow_text between = ow_text_new(text->context);
    ow_joint_letter(ow_scene_joint_number(child), letter);
    ow_text_add(text, "<tr>");
    ow_html_element(text, "th scope=\"row\"", letter);
    ow_layout_node_name(&between, layout, layout->nodes[child].parent);
    ow_text_add(&between, " to ");
    ow_layout_node_name(&between, layout, child);
    ow_text_add(text, "<td>");
    ow_escape(text, ow_text_words(&between));
    ow_text_add(text, "<br/><small>");
    ow_escape(text, ow_end_name(ow_layout_parent_end(layout, child), name));
    ow_text_add(text, " \xC3\x97 ");
    ow_escape(text, ow_end_name(ow_layout_child_end(layout, child), name));
    ow_text_add(text, "</small></td>\n");
    if (ow_layout_joint_card(layout, child, &card) == OW_OK)
        write_card(text, &card, sources);
    else
        ow_text_add(text, "<td class=\"error\" colspan=\"4\">does not seal</td>\n");
    ow_text_add(text, "</tr>\n");
    ow_text_done_into(&between, text);
}

void ow_html_joints(ow_text *text, const ow_layout *const *layouts, size_t count)
{
    source_list sources = {.count = 0};
    ow_html_table_begin(text, "Joint by joint", ":3|joint:36|sealed by:20|between:18|tighten:14|thread:10");
    for (size_t index = 0; index < count; index++) {
        if (count > 1) { /* letters begin anew with each layout */
            ow_text words = ow_text_new(text->context);
            ow_words_of_layout(layouts[index], &words);
            ow_text_add(text, "<tr>");
            ow_html_element(text, "th colspan=\"6\" scope=\"rowgroup\"", ow_text_words(&words));
            ow_text_add(text, "</tr>\n");
            ow_text_done_into(&words, text);
        }
        for (size_t child = 1; child < layouts[index]->node_count; child++)
            write_joint(text, layouts[index], child, &sources);
    }
    ow_html_table_end(text);
    if (sources.count == 0)
        return;
    ow_text_add(text, "<p><small>Figures: ");
    for (size_t index = 0; index < sources.count; index++) {
        ow_text_format(text, "%s[%zu] ", index > 0 ? "; " : "", index + 1);
        ow_escape(text, sources.items[index]);
    }
    ow_text_add(text, "</small></p>\n");
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
    ow_text_add(text, "<ul>\n");
    for (size_t index = 0; index < known_count; index++)
        ow_html_element(text, "li", known[index]);
    ow_text_add(text, "</ul>\n</section>\n");
}
