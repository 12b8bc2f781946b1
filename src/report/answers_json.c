/* SPDX-License-Identifier: MIT */
/* The answers of `stack` as JSON: docs/json.md, docs/schema/stack.json. */
#include "report/parts_json.h"

static void write_missing(ow_json *json, cJSON *parent, const ow_answer *answer)
{
    cJSON *list = ow_json_list(json, parent, "missing");
    for (size_t index = 0; index < answer->missing_count; index++) {
        const ow_missing *missing = &answer->missing[index];
        cJSON *item = ow_json_object(json, list, NULL);
        ow_json_end(json, item, "from", &missing->from);
        if (missing->is_plug)
            ow_json_null(json, item, "to");
        else
            ow_json_end(json, item, "to", &missing->to);
        ow_json_number(json, item, "part_count", (double)missing->part_count);
        ow_json_words(json, item, "why", missing->why);
    }
}

static void write_lifted(ow_json *json, cJSON *parent, const ow_answer *answer)
{
    cJSON *list = ow_json_list(json, parent, "lifted");
    for (size_t index = 0; index < answer->lifted_count; index++) {
        cJSON *item = ow_json_object(json, list, NULL);
        ow_json_words(json, item, "limit", answer->lifted[index].limit);
        ow_json_number(json, item, "part_count", (double)answer->lifted[index].part_count);
        ow_json_words(json, item, "words", answer->lifted[index].words);
    }
}

static void write_explanation(ow_json *json, cJSON *parent, const ow_answer *answer)
{
    if (!answer->explained)
        return;
    const ow_explanation *explanation = &answer->explanation;
    cJSON *item = ow_json_object(json, parent, "explanation");
    ow_json_bool(json, item, "in_best", explanation->in_best);
    ow_json_bool(json, item, "possible", explanation->possible);
    bool known = explanation->possible && answer->found;
    if (known)
        ow_json_number(json, item, "worse_by_parts", (double)explanation->worse_parts);
    else
        ow_json_null(json, item, "worse_by_parts");
    ow_json_cents(json, item, "worse_by_price", known, explanation->worse_cents);
    ow_json_words(json, item, "limit", explanation->limit);
    ow_json_words(json, item, "words", explanation->words);
}

static void write_answer(ow_json *json, cJSON *parent, const ow_context *context, const ow_answer *answer)
{
    ow_json_words(json, parent, "status", answer->found ? "found" : "none");
    cJSON *stacks = ow_json_list(json, parent, "stacks");
    for (size_t index = 0; index < answer->stack_count; index++) {
        cJSON *stack = ow_json_object(json, stacks, NULL);
        ow_json_layout(json, stack, context, &answer->stacks[index].layout);
        ow_json_findings(json, stack, "findings", &answer->stacks[index].findings);
    }
    ow_json_words(json, parent, "list_ended", answer->cut);
    write_missing(json, parent, answer);
    write_lifted(json, parent, answer);
    ow_json_words(json, parent, "reach", answer->found ? NULL : answer->reach.words);
    write_explanation(json, parent, answer);
    cJSON *findings = ow_json_list(json, parent, "findings");
    ow_json_more_findings(json, findings, &answer->findings);
    if (answer->stack_count > 0)
        ow_json_more_findings(json, findings, &answer->stacks[0].findings);
}

ow_status ow_report_answers_json(ow_text *text, const ow_answers *answers)
{
    ow_json json = ow_json_new(false);
    if (answers->count == 1 && answers->items[0].reading == NULL) {
        write_answer(&json, json.root, answers->context, &answers->items[0]);
        return ow_json_done(&json, text);
    }
    ow_json_words(&json, json.root, "status", answers->found ? "found" : "none");
    cJSON *asks = ow_json_list(&json, json.root, "asks");
    for (size_t index = 0; index < answers->count; index++) {
        cJSON *ask = ow_json_object(&json, asks, NULL);
        ow_json_words(&json, ask, "reading", answers->items[index].reading);
        write_answer(&json, ask, answers->context, &answers->items[index]);
    }
    ow_json_words(&json, json.root, "decide", answers->decide);
    return ow_json_done(&json, text);
}
