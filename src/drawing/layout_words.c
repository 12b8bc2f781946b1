/* SPDX-License-Identifier: MIT */
#include "drawing/layout_words.h"

#include <string.h>

#include "oilway/joint.h"

static void add_end(ow_text *text, const ow_end *end)
{
    char buffer[OW_END_TEXT_SIZE];
    ow_text_add(text, ow_end_name(end, buffer));
}

static void add_givens(ow_text *text, const ow_layout *layout, ow_role role, const char *before)
{
    bool first = true;
    for (size_t index = 0; index < layout->given_count; index++)
        if (layout->givens[index].role == role) {
            ow_text_add(text, first ? before : " and ");
            ow_text_add(text, layout->givens[index].name);
            first = false;
        }
}

void ow_words_of_layout(const ow_layout *layout, ow_text *text)
{
    if (layout->title != NULL && layout->title[0] != '\0') {
        ow_text_add(text, layout->title);
        return;
    }
    const char *circuit = ow_circuit_word(layout->circuit);
    ow_text_add(text, circuit[0] == '\0' ? "layout" : circuit);
    add_givens(text, layout, OW_ROLE_SOURCE, " from ");
    add_givens(text, layout, OW_ROLE_TO, " to ");
    add_givens(text, layout, OW_ROLE_KEEP, ", keeping ");
}

void ow_words_of_part(const ow_layout *layout, size_t node, ow_text cells[4])
{
    const ow_layout_node *own = &layout->nodes[node];
    const ow_part *part = own->part;
    double bore = 0.0;
    ow_layout_node_name(&cells[0], layout, node);
    ow_text_add(&cells[1], part->title);
    for (size_t end = 0; end < part->end_count; end++) {
        double passage = ow_part_bore_m(part, own->enter, end);
        if (end != own->enter && passage > 0.0 && (bore <= 0.0 || passage < bore))
            bore = passage;
    }
    if (bore > 0.0)
        ow_quantity_write(&cells[2], OW_LENGTH, bore, 2);
    if (part->kind == OW_RESTRICTOR && part->orifice_m > 0.0) {
        ow_text_add(&cells[2], ", hole ");
        ow_quantity_write(&cells[2], OW_LENGTH, part->orifice_m, 2);
    }
    double length = part->kind == OW_HOSE ? own->length_m : part->length_m;
    if (length > 0.0)
        ow_quantity_write(&cells[3], OW_LENGTH, length, 1);
    else if (part->kind == OW_HOSE)
        ow_text_add(&cells[3], "to be chosen");
}

void ow_words_of_joint(const ow_layout *layout, size_t child, ow_text *between, ow_text *seal)
{
    const ow_end *a = ow_layout_parent_end(layout, child), *b = ow_layout_child_end(layout, child);
    const ow_joint_rule *rule = ow_joint_find(a, b);
    ow_layout_node_name(between, layout, layout->nodes[child].parent);
    ow_text_add(between, " to ");
    ow_layout_node_name(between, layout, child);
    ow_text_add(between, ": ");
    add_end(between, a);
    ow_text_add(between, " \xC3\x97 ");
    add_end(between, b);
    if (rule == NULL) {
        ow_text_add(seal, "does not seal");
        return;
    }
    ow_text_add(seal, rule->seals_by);
    for (size_t need = 0; need < 3 && rule->needs[need] != NULL; need++) {
        ow_text_add(seal, need == 0 ? "; needs " : ", ");
        ow_text_add(seal, rule->needs[need]);
    }
    ow_text_format(seal, " (%s)", rule->source);
}

void ow_words_of_finding(const ow_finding *finding, ow_text *text)
{
    static const char *const SEVERITIES[] = {"note", "warning", "error"};
    ow_text_add(text, SEVERITIES[finding->severity]);
    if (finding->where != NULL && finding->where[0] != '\0')
        ow_text_format(text, ", %s", finding->where);
    ow_text_format(text, ": %s", finding->message);
    size_t length = strlen(finding->message);
    if (length > 0 && finding->message[length - 1] != '.')
        ow_text_char(text, '.');
    if (finding->mend != NULL && finding->mend[0] != '\0')
        ow_text_format(text, " To mend: %s", finding->mend);
    if (finding->rule != NULL)
        ow_text_format(text, " (%s)", finding->rule->source);
}

void ow_words_along_layout(const ow_layout *layout, const ow_findings *findings, ow_text *text)
{
    for (size_t child = 1; child < layout->node_count; child++) {
        ow_text seal = ow_text_new(text->context);
        ow_words_of_joint(layout, child, text, &seal);
        ow_text_format(text, ", %s. ", ow_text_words(&seal));
        text->failed = text->failed || seal.failed;
        ow_text_done(&seal);
    }
    double narrowest = ow_layout_narrowest_bore_m(layout);
    if (narrowest > 0.0) {
        ow_text_add(text, "Narrowest bore ");
        ow_quantity_write(text, OW_LENGTH, narrowest, 2);
        ow_text_add(text, ". ");
    }
    for (size_t index = 0; findings != NULL && index < findings->count; index++) {
        ow_text_format(text, "Finding %zu: ", index + 1);
        ow_words_of_finding(&findings->items[index], text);
        ow_text_add(text, " ");
    }
}
