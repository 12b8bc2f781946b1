/* SPDX-License-Identifier: MIT */
/* A layout as JSON: parts with entry and exits, joints with what seals them, the YAML that check reads. */
#include "oilway/bill.h"
#include "report/bores.h"
#include "report/joint_json.h"
#include "report/parts_json.h"

void ow_json_end(ow_json *json, cJSON *parent, const char *name, const ow_end *end)
{
    char words[OW_END_TEXT_SIZE];
    ow_json_words(json, parent, name, ow_end_name(end, words));
}

static void write_part(ow_json *json, cJSON *list, const ow_context *context, const ow_layout *layout,
                       size_t index)
{
    const ow_layout_node *node = &layout->nodes[index];
    const ow_part *part = node->part;
    cJSON *item = ow_json_object(json, list, NULL);
    ow_json_words(json, item, "id", part->id);
    ow_json_words(json, item, "kind", ow_kind_word(part->kind));
    ow_json_words(json, item, "title", part->title);
    ow_json_words(json, item, "enter", part->end_names[node->enter]);
    cJSON *leave = ow_json_list(json, item, "leave");
    for (size_t end = 0; end < part->end_count; end++) {
        if (end != node->enter)
            ow_json_words(json, leave, NULL, part->end_names[end]);
    }
    cJSON *path = ow_json_list(json, item, "on_path_to");
    for (size_t given = 1; given < layout->given_count; given++) {
        if (ow_layout_on_path(layout, index, given))
            ow_json_words(json, path, NULL, layout->givens[given].name);
    }
    ow_nominal nominal;
    ow_bores_json(json, item, ow_bores_least_m(part),
                  ow_bores_nominal(part, OW_ALL_ENDS, &nominal) ? &nominal : NULL);
    ow_text why = ow_text_new(context);
    ow_layout_why(&why, layout, index);
    ow_json_text(json, item, "why", &why);
}

/* "tf-2-2m.a", "tee-2#2.branch", or a given port's name. */
static void write_side(ow_json *json, cJSON *list, const ow_context *context, const ow_layout *layout,
                       size_t node, size_t end)
{
    const ow_part *part = layout->nodes[node].part;
    ow_text name = ow_text_new(context);
    ow_layout_node_name(&name, layout, node);
    if (part != NULL)
        ow_text_format(&name, ".%s", part->end_names[end]);
    ow_json_text(json, list, NULL, &name);
}

static void write_joint(ow_json *json, cJSON *list, const ow_context *context, const ow_layout *layout,
                        size_t child)
{
    const ow_layout_node *node = &layout->nodes[child];
    const ow_end *outer = ow_layout_parent_end(layout, child);
    const ow_end *inner = ow_layout_child_end(layout, child);
    const ow_joint_rule *rule = ow_joint_find(outer, inner);
    cJSON *item = ow_json_object(json, list, NULL);
    cJSON *between = ow_json_list(json, item, "between");
    write_side(json, between, context, layout, node->parent, node->parent_end);
    write_side(json, between, context, layout, child, node->enter);
    cJSON *ends = ow_json_list(json, item, "ends");
    ow_json_end(json, ends, NULL, outer);
    ow_json_end(json, ends, NULL, inner);
    ow_json_words(json, item, "verdict", rule != NULL ? ow_verdict_word(rule->verdict) : NULL);
    ow_json_words(json, item, "seals_by", rule != NULL ? rule->seals_by : NULL);
    cJSON *needs = ow_json_list(json, item, "needs");
    for (size_t need = 0; rule != NULL && need < sizeof rule->needs / sizeof rule->needs[0]; need++) {
        if (rule->needs[need] != NULL)
            ow_json_words(json, needs, NULL, rule->needs[need]);
    }
    ow_json_words(json, item, "source", rule != NULL ? rule->source : NULL);
    ow_card card;
    if (ow_layout_joint_card(layout, child, &card) == OW_OK)
        ow_json_card(json, ow_json_object(json, item, "card"), &card);
    else
        ow_json_null(json, item, "card");
}

void ow_json_layout(ow_json *json, cJSON *parent, const ow_context *context, const ow_layout *layout)
{
    bool complete = true;
    int64_t cents = ow_layout_price_cents(layout, &complete);
    ow_json_number(json, parent, "part_count", (double)ow_layout_part_count(layout));
    ow_json_number(json, parent, "joint_count", (double)ow_layout_joint_count(layout));
    ow_json_cents(json, parent, "price", complete, cents);
    ow_json_scaled(json, parent, "narrowest_bore_mm", ow_layout_narrowest_bore_m(layout), 1e3, 3);
    cJSON *parts = ow_json_list(json, parent, "parts");
    cJSON *joints = ow_json_list(json, parent, "joints");
    for (size_t node = 1; node < layout->node_count; node++) {
        if (layout->nodes[node].part != NULL)
            write_part(json, parts, context, layout, node);
        write_joint(json, joints, context, layout, node);
    }
    ow_text yaml = ow_text_new(context);
    ow_layout_write(&yaml, layout);
    ow_json_text(json, parent, "layout", &yaml);
}
