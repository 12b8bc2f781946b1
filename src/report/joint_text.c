/* SPDX-License-Identifier: MIT */
/* Joint cards and verdicts as a person reads them. */
#include <stdio.h>
#include <string.h>

#include "oilway/report_joint.h"
#include "report/look.h"

#define SOURCES_DIFFER 1.5 /* the highest figure over the lowest: then one range misleads */
#define INDENT 14          /* where the words of an entry stand, behind its verdict or its label */

static ow_paint paint_of(ow_verdict verdict)
{
    if (verdict == OW_SEALS)
        return OW_PAINT_GOOD;
    return verdict == OW_TOLERATED ? OW_PAINT_WARN : OW_PAINT_BAD;
}

static void write_turns(ow_text *text, double least, double most)
{
    if (most - least < 0.05)
        ow_text_format(text, "%.1f turns", least);
    else
        ow_text_format(text, "%.1f to %.1f turns", least, most);
}

/* A label in the margin and folded words behind it. */
static void write_entry(ow_text *text, const ow_style *style, const char *label, const char *words)
{
    ow_text_format(text, "  %-11s ", label);
    ow_look_fold(text, style, INDENT, INDENT, words);
    ow_text_char(text, '\n');
}

static void write_mates(ow_text *text, const ow_mates *mates, const ow_style *style)
{
    char name[OW_END_TEXT_SIZE];
    const char *verdict = ow_verdict_word(mates->verdict);
    ow_text why = ow_text_new(text->context);
    ow_text_add(text, "  ");
    ow_look_paint(text, paint_of(mates->verdict), style, verdict);
    ow_text_repeat(text, ' ', strlen(verdict) < INDENT - 2 ? INDENT - 2 - strlen(verdict) : 1);
    ow_text_add(text, ow_end_name(&mates->ends[1], name));
    if (mates->has_turns) {
        ow_text_add(text, ", ");
        write_turns(text, mates->turns_least, mates->turns_most);
    }
    ow_text_char(text, '\n');
    ow_text_repeat(text, ' ', INDENT);
    ow_text_format(&why, "%s (%s)", mates->why, mates->source);
    ow_look_fold(text, style, INDENT, INDENT, ow_text_words(&why));
    ow_text_char(text, '\n');
    ow_text_done_into(&why, text);
}

void ow_report_mates_text(ow_text *text, const ow_mates_list *list, const ow_style *style)
{
    char name[OW_END_TEXT_SIZE];
    if (list->count == 0)
        ow_text_add(text, "nothing known goes onto it, rightly or wrongly\n");
    for (size_t i = 0; i < list->count; i++) {
        if (i == 0 || !ow_end_same(&list->items[i].ends[0], &list->items[i - 1].ends[0])) {
            if (i > 0)
                ow_text_char(text, '\n');
            ow_look_paint(text, OW_PAINT_STRONG, style, ow_end_name(&list->items[i].ends[0], name));
            ow_text_char(text, '\n');
        }
        write_mates(text, &list->items[i], style);
    }
}

void ow_report_apart_text(ow_text *text, const char *end, const char *decide, const ow_style *style)
{
    ow_text words = ow_text_new(text->context);
    ow_text_format(&words, "What tells %s apart: %s.", end, decide);
    ow_text_char(text, '\n');
    ow_look_fold(text, style, 0, 2, ow_text_words(&words));
    ow_text_char(text, '\n');
    text->failed = text->failed || words.failed;
    ow_text_done(&words);
}

/* ---- cards ------------------------------------------------------------------------------------------------
 */

static void write_consumable(ow_text *text, const ow_consumable *item, const ow_style *style)
{
    ow_text words = ow_text_new(text->context);
    if (item->count > 0)
        ow_text_format(&words, "%zu x ", item->count);
    ow_text_format(&words, "%s%s%s%s", item->what, item->size[0] ? " " : "", item->size,
                   item->count == 0 ? ", by need" : "");
    if (item->note[0])
        ow_text_format(&words, "; %s", item->note);
    ow_text_format(&words, " (%s)", item->source);
    write_entry(text, style, "between", ow_text_words(&words));
    ow_text_done_into(&words, text);
}

static void write_engagement(ow_text *text, const ow_engagement *engagement, const ow_style *style)
{
    double pitch_m = engagement->pitch_m;
    if (pitch_m <= 0.0)
        return;
    ow_text words = ow_text_new(text->context);
    if (engagement->has_length) {
        write_turns(&words, engagement->least_m / pitch_m, engagement->most_m / pitch_m);
        if (engagement->most_m - engagement->least_m > 0.05e-3)
            ow_text_format(&words, ", %.1f to", engagement->least_m * 1e3);
        else
            ow_text_char(&words, ',');
        ow_text_format(&words, " %.1f mm (%s)", engagement->most_m * 1e3, engagement->source);
    } else {
        ow_text_format(&words, "length not known: measure; a turn is %.3g mm", pitch_m * 1e3);
    }
    if (engagement->has_needed)
        ow_text_format(&words, "; needs %.1f turns, %.1f mm: %s", engagement->needed_m / pitch_m,
                       engagement->needed_m * 1e3, engagement->needed_why);
    if (engagement->enough != OW_ENOUGH_UNKNOWN)
        ow_text_add(&words, engagement->enough == OW_ENOUGH ? "; enough" : "; NOT ENOUGH");
    if (engagement->bears_nm > 0.0 && engagement->least_m < engagement->needed_m)
        ow_text_format(&words, "; measure it: so much bears no more than %.0f N m", engagement->bears_nm);
    write_entry(text, style, "thread", ow_text_words(&words));
    ow_text_done_into(&words, text);
}

static void write_torque(ow_text *text, const ow_torque *torque, const ow_style *style)
{
    ow_text words = ow_text_new(text->context);
    bool turns = torque->most_turns > 0.0;
    bool flats = turns && torque->most_turns < 1.0; /* of a hexagon */
    double scale = flats ? 6.0 : 1.0;
    double least = turns ? scale * torque->least_turns : torque->least_nm,
           most = turns ? scale * torque->most_turns : torque->most_nm;
    if (most > least)
        ow_text_format(&words, "%g to %g", least, most);
    else
        ow_text_format(&words, "%g", most);
    ow_text_format(&words, "%s %s%s%s%s%s (%s)",
                   flats   ? most > 1.0 ? " flats," : " flat,"
                   : turns ? ""
                           : " N m,",
                   torque->what, torque->material[0] ? ", " : "", torque->material,
                   torque->condition[0] ? ", " : "", torque->condition, torque->source);
    write_entry(text, style, "tighten", ow_text_words(&words));
    ow_text_done_into(&words, text);
}

/* Ranges that agree are told once. */
static void write_range(ow_text *text, double least, double most, const char *unit)
{
    if (most > least)
        ow_text_format(text, "; %g to %g %s", least, most, unit);
    else
        ow_text_format(text, "; %g %s", most, unit);
}

static size_t count_torque_sources(const ow_card *card)
{
    size_t count = 0;
    for (size_t i = 0; i < card->torque_count; i++) {
        bool again = card->torques[i].most_nm <= 0.0;
        for (size_t before = 0; before < i && !again; before++)
            again = strcmp(card->torques[i].source, card->torques[before].source) == 0;
        count += !again;
    }
    return count;
}

/* Torques, with their source, or how many there are: the card has them one by one. */
static void write_torques(ow_text *text, const ow_card *card)
{
    size_t count = count_torque_sources(card);
    const char *one = "";
    for (size_t i = card->torque_count; i-- > 0;)
        one = card->torques[i].most_nm > 0.0 ? card->torques[i].source : one;
    write_range(text, card->least_nm, card->most_nm, "N m");
    if (count == 1)
        ow_text_format(text, " (%s)", one);
    else
        ow_text_format(text, " (%zu sources%s: see its card)", count,
                       card->most_nm > SOURCES_DIFFER * card->least_nm ? ", which differ" : "");
}

void ow_look_card(ow_text *text, const ow_card *card)
{
    for (size_t i = 0; i < card->consumable_count; i++) {
        const ow_consumable *item = &card->consumables[i];
        ow_text_add(text, ", ");
        if (item->count > 0)
            ow_text_format(text, "%zu x ", item->count);
        ow_text_format(text, "%s%s%s", item->what, item->size[0] ? " " : "", item->size);
        if (item->size[0] != '\0')
            ow_text_format(text, " (%s)", item->source);
    }
    if (card->ring_hint[0])
        ow_text_format(text, ", %s", card->ring_hint);
    if (card->torque_count > 0 && card->torques[0].most_turns > 0.0) {
        write_range(text, card->torques[0].least_turns, card->torques[0].most_turns,
                    "turns from finger tight");
        ow_text_format(text, " (%s)", card->torques[0].source);
    } else if (card->has_torque) {
        write_torques(text, card);
    } else if (card->engagement.pitch_m > 0.0) {
        ow_text_add(text, "; no published torque");
    }
}

void ow_report_card_text(ow_text *text, const ow_card *card, const ow_style *style)
{
    char first[OW_END_TEXT_SIZE], second[OW_END_TEXT_SIZE];
    ow_look_paint(text, OW_PAINT_STRONG, style, ow_end_name(&card->ends[0], first));
    ow_text_format(text, " with %s: ", ow_end_name(&card->ends[1], second));
    ow_look_paint(text, paint_of(card->rule->verdict), style, ow_verdict_word(card->rule->verdict));
    ow_text_format(text, " (%s)\n", card->rule->source);
    write_entry(text, style, "seals", card->face);
    if (card->rule->remark)
        write_entry(text, style, "mind", card->rule->remark);
    for (size_t i = 0; i < card->consumable_count; i++)
        write_consumable(text, &card->consumables[i], style);
    if (card->ring_hint[0])
        write_entry(text, style, "rings", card->ring_hint);
    write_entry(text, style, "sealant", card->sealant);
    write_engagement(text, &card->engagement, style);
    for (size_t i = 0; i < card->torque_count; i++)
        write_torque(text, &card->torques[i], style);
    bool banjo = card->ends[0].form == OW_FORM_BANJO;
    if (card->torque_count == 0 && banjo && !card->has_thread)
        write_entry(text, style, "tighten", "by the thread of its bolt");
    else if (card->torque_count == 0 && card->has_thread)
        write_entry(text, style, "tighten", "no published figure: go by the unit's own data");
    write_entry(text, style, "again", card->reuse);
    for (size_t i = 0; i < card->caution_count; i++)
        write_entry(text, style, "caution", card->cautions[i]);
}

static bool same_card(const ow_card *a, const ow_card *b)
{
    bool straight = ow_end_same(&a->ends[0], &b->ends[0]) && ow_end_same(&a->ends[1], &b->ends[1]);
    bool turned = ow_end_same(&a->ends[0], &b->ends[1]) && ow_end_same(&a->ends[1], &b->ends[0]);
    return (straight || turned) && a->torque_count == b->torque_count && a->least_nm == b->least_nm &&
           a->most_nm == b->most_nm && a->consumable_count == b->consumable_count &&
           (a->consumable_count == 0 || (strcmp(a->consumables[0].size, b->consumables[0].size) == 0 &&
                                         a->consumables[0].count == b->consumables[0].count));
}

/* The first child before this one whose joint has the same card, or this one. */
static size_t first_alike(const ow_layout *layout, size_t child, const ow_card *card)
{
    for (size_t earlier = 1; earlier < child; earlier++) {
        ow_card other;
        if (ow_layout_joint_card(layout, earlier, &other) == OW_OK && same_card(&other, card))
            return earlier;
    }
    return child;
}

static void write_between(ow_text *text, const ow_layout *layout, size_t child)
{
    ow_layout_node_name(text, layout, layout->nodes[child].parent);
    ow_text_add(text, " to ");
    ow_layout_node_name(text, layout, child);
}

void ow_report_layout_cards_text(ow_text *text, const ow_layout *layout, const ow_style *style)
{
    for (size_t child = 1; child < layout->node_count; child++) {
        ow_card card;
        if (ow_layout_joint_card(layout, child, &card) != OW_OK)
            continue;
        size_t alike = first_alike(layout, child, &card);
        ow_text_char(text, '\n');
        write_between(text, layout, child);
        ow_text_add(text, ": ");
        if (alike == child) {
            ow_report_card_text(text, &card, style);
        } else {
            ow_text_add(text, "as ");
            write_between(text, layout, alike);
            ow_text_char(text, '\n');
        }
    }
}
