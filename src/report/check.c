/* SPDX-License-Identifier: MIT */
/* What `check` found: one line for everything looked at, wrong things with their mend. */
#include <string.h>

#include "report/look.h"
#include "report/parts_json.h"

static void write_passed(ow_text *text, const ow_findings *passed, const ow_style *style)
{
    const char *sign = ow_sign_words(OW_SIGN_GOOD, style);
    for (size_t index = 0; index < passed->count; index++) {
        const ow_finding *pass = &passed->items[index];
        ow_text line = ow_text_new(text->context);
        ow_text_char(text, ' ');
        ow_look_paint(text, OW_PAINT_GOOD, style, sign);
        ow_text_char(text, ' ');
        if (strncmp(pass->where, "between ", 8) == 0)
            ow_text_format(&line, "%s: ", pass->where);
        ow_text_add(&line, pass->message);
        /* A joint names the standard that it is by itself; what was asked has no other source. */
        size_t length = strlen(pass->message);
        if (length > 0 && pass->message[length - 1] != ')' && strcmp(pass->rule->source, "asked") != 0)
            ow_text_format(&line, " (%s)", pass->rule->source);
        ow_look_fold(text, style, 4, 4, ow_text_words(&line));
        ow_text_char(text, '\n');
        ow_text_done_into(&line, text);
    }
}

static size_t count_of(const ow_findings *findings, ow_severity severity)
{
    size_t count = 0;
    for (size_t index = 0; index < findings->count; index++)
        count += findings->items[index].severity == severity;
    return count;
}

static void write_source(ow_text *text, const ow_layout *layout)
{
    char words[OW_END_TEXT_SIZE];
    const ow_given *from = &layout->givens[layout->nodes[0].given];
    ow_text_add(text,
                from->machine != NULL || from->fixture != NULL ? from->name : ow_end_name(&from->end, words));
}

static void write_counted(ow_text *text, size_t count, const char *one, const char *many)
{
    ow_text_format(text, "%zu %s", count, count == 1 ? one : many);
}

void ow_report_check_text(ow_text *text, const ow_layout *layout, const ow_findings *findings,
                          const ow_findings *passed, const ow_style *style)
{
    bool complete = true;
    if (layout->title[0] != '\0') {
        ow_look_paint(text, OW_PAINT_STRONG, style, layout->title);
    } else {
        ow_text_add(text, layout->circuit != OW_CIRCUIT_NONE ? ow_circuit_word(layout->circuit) : "layout");
        ow_text_add(text, " from ");
        write_source(text, layout);
    }
    ow_text_add(text, ": ");
    write_counted(text, ow_layout_part_count(layout), "part", "parts");
    ow_text_add(text, ", ");
    write_counted(text, ow_layout_joint_count(layout), "joint", "joints");
    ow_text_add(text, ", price ");
    ow_look_price(text, ow_layout_price_cents(layout, &complete));
    ow_text_add(text, complete ? "\n" : " and parts without a price\n");
    ow_report_layout_text(text, layout, style);
    ow_text_add(text, "checked:\n");
    write_passed(text, passed, style);
    ow_report_findings_text(text, findings, style);
    size_t errors = count_of(findings, OW_ERROR);
    size_t warnings = count_of(findings, OW_WARNING);
    size_t notes = count_of(findings, OW_NOTE);
    if (errors > 0)
        ow_look_paint(text, OW_PAINT_BAD, style, "not right");
    else
        ow_look_paint(text, OW_PAINT_GOOD, style, "right");
    ow_text_add(text, ": ");
    write_counted(text, errors, "error", "errors");
    ow_text_add(text, ", ");
    write_counted(text, warnings, "warning", "warnings");
    ow_text_add(text, ", ");
    write_counted(text, notes, "note", "notes");
    ow_text_char(text, '\n');
}

ow_status ow_report_check_json(ow_text *text, const ow_layout *layouts, const ow_findings *findings,
                               const ow_findings *passed, size_t count)
{
    ow_json json = ow_json_new(false);
    bool right = true;
    for (size_t index = 0; index < count; index++)
        right = right && !ow_findings_have(&findings[index], OW_ERROR);
    ow_json_bool(&json, json.root, "ok", right);
    cJSON *all = ow_json_list(&json, json.root, "findings");
    for (size_t index = 0; index < count; index++)
        ow_json_more_findings(&json, all, &findings[index]);
    cJSON *list = ow_json_list(&json, json.root, "layouts");
    for (size_t index = 0; index < count; index++) {
        cJSON *item = ow_json_object(&json, list, NULL);
        ow_json_words(&json, item, "title", layouts[index].title);
        ow_json_words(&json, item, "circuit", ow_circuit_word(layouts[index].circuit));
        ow_json_bool(&json, item, "ok", !ow_findings_have(&findings[index], OW_ERROR));
        ow_json_layout(&json, item, text->context, &layouts[index]);
        ow_json_findings(&json, item, "findings", &findings[index]);
        ow_json_findings(&json, item, "passed", &passed[index]);
    }
    return ow_json_done(&json, text);
}
