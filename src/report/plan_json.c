/* SPDX-License-Identifier: MIT */
/* A plan as JSON: docs/json.md, docs/schema/plan.json. */
#include "report/plan_parts.h"

void ow_plan_stack_json(ow_json *json, cJSON *parent, const ow_context *context, const ow_layout *layout)
{
    if (layout == NULL) {
        ow_json_null(json, parent, "stack");
        return;
    }
    ow_json_layout(json, ow_json_object(json, parent, "stack"), context, layout);
}

static void write_assumptions(ow_json *json, const ow_plan *plan)
{
    cJSON *assumptions = ow_json_list(json, json->root, "assumptions");
    for (size_t index = 0; index < plan->assumptions.count; index++) {
        const ow_assumption *one = &plan->assumptions.items[index];
        cJSON *item = ow_json_object(json, assumptions, NULL);
        ow_json_words(json, item, "what", one->what);
        ow_json_words(json, item, "value", one->value);
        ow_json_words(json, item, "mark", ow_mark_words(one->mark));
        ow_json_words(json, item, "source", one->source);
    }
}

ow_status ow_report_plan_feed_json(ow_text *text, const ow_plan *plan)
{
    ow_json json = ow_json_new(false);
    ow_json_bool(&json, json.root, "ok", plan->ok);
    ow_plan_feed_json(&json, json.root, plan);
    ow_json_findings(&json, json.root, "findings", &plan->findings);
    write_assumptions(&json, plan);
    return ow_json_done(&json, text);
}

ow_status ow_report_plan_json(ow_text *text, const ow_plan *plan)
{
    ow_json json = ow_json_new(false);
    ow_json_words(&json, json.root, "job", plan->job->title);
    ow_json_bool(&json, json.root, "ok", plan->ok);
    cJSON *circuits = ow_json_object(&json, json.root, "circuits");
    ow_plan_feed_json(&json, circuits, plan);
    ow_plan_drain_json(&json, circuits, plan);
    ow_plan_coolant_json(&json, circuits, plan);
    ow_json_findings(&json, json.root, "findings", &plan->findings);
    write_assumptions(&json, plan);
    ow_json_bill(&json, ow_json_object(&json, json.root, "bill"), &plan->bill);
    cJSON *notes = ow_json_list(&json, json.root, "notes");
    for (size_t index = 0; index < plan->note_count; index++)
        ow_json_words(&json, notes, NULL, plan->notes[index]);
    return ow_json_done(&json, text);
}
