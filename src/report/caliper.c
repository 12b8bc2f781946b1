/* SPDX-License-Identifier: MIT */
/* What a caliper has named, for a person and for a program. */
#include "oilway/report_thread.h"
#include "report/json.h"
#include "report/look.h"

#define MM(metres) ((metres)*1e3)
#define NAME_COLUMN 16

static void write_name(ow_text *text, const ow_candidate *candidate)
{
    size_t start = text->length;
    ow_thread_write(text, &candidate->thread);
    if (candidate->thread.family == OW_THREAD_NPT)
        ow_text_add(text, "(F)");
    ow_look_pad(text, start, NAME_COLUMN);
}

static void write_candidate(ow_text *text, const ow_candidate *candidate, const ow_style *style)
{
    ow_text_format(text, "  %5.1f %%  ", 100 * candidate->likelihood);
    write_name(text, candidate);
    ow_look_fold(text, style, 11 + NAME_COLUMN, 11 + NAME_COLUMN, candidate->why);
    ow_text_char(text, '\n');
}

static void write_given(ow_text *text, const ow_caliper_ask *ask)
{
    static const char *const sides[] = {"male or female", "male, over the crests", "female, across the bore"};
    ow_text_format(text, "%.2f mm give or take %.2f, %s", MM(ask->diameter_m), MM(ask->accuracy_m),
                   sides[ask->side]);
    if (ask->pitch_m > 0)
        ow_text_format(text, ", pitch %.3f mm (%.1f tpi)", MM(ask->pitch_m), 25.4e-3 / ask->pitch_m);
    if (ask->taper != OW_TAPER_NOT_SAID)
        ow_text_add(text, ask->taper == OW_TAPER_YES ? ", taper" : ", parallel");
    ow_text_char(text, '\n');
}

static void write_paragraph(ow_text *text, const char *head, const char *words, const ow_style *style)
{
    ow_text_format(text, "%-8s", head);
    ow_look_fold(text, style, 8, 8, words);
    ow_text_char(text, '\n');
}

/* What happens to the others in a part made for the first. */
static void write_mistakes(ow_text *text, const ow_caliper_answer *answer, const ow_style *style)
{
    bool headed = false;
    for (size_t i = 1; i < answer->count; i++) {
        const ow_candidate *candidate = &answer->candidates[i];
        if (!candidate->has_mistake || candidate->likelihood < 0.005)
            continue;
        if (!headed)
            ow_text_add(text, "Taken for the first, and it is\n");
        headed = true;
        ow_text_add(text, "  ");
        write_name(text, candidate);
        ow_text_format(text, "%-9s", ow_fit_word(candidate->mistake.fit));
        ow_look_fold(text, style, 11 + NAME_COLUMN, 11 + NAME_COLUMN, candidate->mistake.why);
        ow_text_char(text, '\n');
    }
}

void ow_report_caliper_text(ow_text *text, const ow_caliper_ask *ask, const ow_caliper_answer *answer,
                            const ow_style *style)
{
    write_given(text, ask);
    if (answer->doubt[0]) {
        ow_text_format(text, "%s ", ow_sign_words(OW_SIGN_WARN, style));
        ow_look_fold(text, style, 2, 2, answer->doubt);
        ow_text_char(text, '\n');
    }
    for (size_t i = 0; i < answer->count; i++)
        write_candidate(text, &answer->candidates[i], style);
    if (answer->left_out >= 0.0005)
        ow_text_format(text, "  %5.1f %%  something else known\n", 100 * answer->left_out);
    ow_text_format(text, "%-8s%s", "Decides", ow_measure_word(answer->decide));
    if (answer->decide != OW_MEASURE_NONE)
        ow_text_format(text, " (%.2f of %.2f bits that are open)", answer->bits[answer->decide],
                       answer->open_bits);
    ow_text_char(text, '\n');
    write_paragraph(text, "", answer->how, style);
    write_paragraph(text, "Jaws", answer->jaws, style);
    if (answer->place[0])
        write_paragraph(text, "Here", answer->place, style);
    write_mistakes(text, answer, style);
}

static void add_candidate(ow_json *json, cJSON *list, const ow_text *text, const ow_candidate *candidate)
{
    cJSON *object = ow_json_object(json, list, NULL);
    ow_text name = ow_text_new(text->context);
    ow_thread_write(&name, &candidate->thread);
    ow_json_text(json, object, "thread", &name);
    ow_json_words(json, object, "gender", candidate->male ? "male" : "female");
    ow_json_rounded(json, object, "likelihood", candidate->likelihood, 4);
    ow_json_words(json, object, "why", candidate->why);
    ow_json_scaled(json, object, "least_mm", candidate->least_m, 1e3, 3);
    ow_json_scaled(json, object, "most_mm", candidate->most_m, 1e3, 3);
    if (candidate->has_mistake) {
        cJSON *mistake = ow_json_object(json, object, "mistaken");
        ow_json_words(json, mistake, "verdict", ow_fit_word(candidate->mistake.fit));
        ow_json_words(json, mistake, "why", candidate->mistake.why);
    }
}

static ow_status write_none(ow_text *text)
{
    ow_json json = ow_json_new(false);
    ow_json_list(&json, json.root, "candidates");
    cJSON *decide = ow_json_object(&json, json.root, "decide");
    ow_json_words(&json, decide, "measure", "diameter");
    ow_json_words(&json, decide, "how", "No thread known reads like that: measure again, over full crests.");
    ow_json_number(&json, decide, "bits", 0);
    cJSON *bits = ow_json_object(&json, json.root, "bits");
    for (int m = 0; m < OW_MEASURE_NONE; m++)
        ow_json_number(&json, bits, ow_measure_word((ow_measure)m), 0);
    ow_json_number(&json, json.root, "open_bits", 0);
    ow_json_words(&json, json.root, "doubt", "No thread known reads like that.");
    ow_json_words(&json, json.root, "jaws", NULL);
    ow_json_words(&json, json.root, "place", NULL);
    return ow_json_done(&json, text);
}

ow_status ow_report_caliper_json(ow_text *text, const ow_caliper_answer *answer)
{
    if (answer == NULL)
        return write_none(text);
    ow_json json = ow_json_new(false);
    cJSON *candidates = ow_json_list(&json, json.root, "candidates");
    for (size_t i = 0; i < answer->count; i++)
        add_candidate(&json, candidates, text, &answer->candidates[i]);
    cJSON *decide = ow_json_object(&json, json.root, "decide");
    ow_json_words(&json, decide, "measure", ow_measure_word(answer->decide));
    ow_json_words(&json, decide, "how", answer->how);
    ow_json_rounded(&json, decide, "bits", answer->bits[answer->decide], 3);
    cJSON *bits = ow_json_object(&json, json.root, "bits");
    for (int m = 0; m < OW_MEASURE_NONE; m++)
        ow_json_rounded(&json, bits, ow_measure_word((ow_measure)m), answer->bits[m], 3);
    ow_json_rounded(&json, json.root, "open_bits", answer->open_bits, 3);
    ow_json_words(&json, json.root, "doubt", answer->doubt[0] ? answer->doubt : NULL);
    ow_json_words(&json, json.root, "jaws", answer->jaws);
    ow_json_words(&json, json.root, "place", answer->place[0] ? answer->place : NULL);
    return ow_json_done(&json, text);
}
