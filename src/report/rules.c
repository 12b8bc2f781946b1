/* SPDX-License-Identifier: MIT */
/* The table of rules, as a person, a page and a program want it. */
#include <string.h>

#include "report/json.h"
#include "report/look.h"

static void write_rule(ow_text *text, const ow_rule *rule, const ow_style *style)
{
    static const ow_paint paints[] = {
        [OW_NOTE] = OW_PAINT_FAINT, [OW_WARNING] = OW_PAINT_WARN, [OW_ERROR] = OW_PAINT_BAD};
    ow_text line = ow_text_new(text->context);
    ow_look_paint(text, OW_PAINT_STRONG, style, rule->id);
    ow_text_char(text, ' ');
    ow_look_paint(text, paints[rule->severity], style, ow_severity_name(rule->severity));
    ow_text_format(text, " (%s)\n    ", rule->circuits);
    ow_text_format(&line, "%s %s (%s)", rule->says, rule->mend, rule->source);
    ow_look_fold(text, style, 4, 4, ow_text_words(&line));
    ow_text_char(text, '\n');
    text->failed = text->failed || line.failed;
    ow_text_done(&line);
}

void ow_report_rules_text(ow_text *text, const ow_rule *rule, const ow_style *style)
{
    const char *group = NULL;
    for (size_t index = 0; index < ow_rule_count(); index++) {
        if (rule != NULL && ow_rule_at(index) != rule)
            continue;
        if (rule == NULL && (group == NULL || strcmp(group, ow_rule_group(index)) != 0)) {
            ow_text_format(text, "%s%s\n", group != NULL ? "\n" : "", ow_rule_group(index));
            group = ow_rule_group(index);
        }
        write_rule(text, ow_rule_at(index), style);
    }
}

/* A bar would end the cell. */
static void write_cell(ow_text *text, const char *words)
{
    ow_text_add(text, " ");
    for (const char *at = words; *at != '\0'; at++) {
        if (*at == '|')
            ow_text_char(text, '\\');
        ow_text_char(text, *at);
    }
    ow_text_add(text, " |");
}

void ow_report_rules_markdown(ow_text *text)
{
    const char *group = NULL;
    ow_text_format(text,
                   "# Rules\n\n"
                   "The %zu rules that `check`, `plan`, `stack` and the quick physics judge by, printed by "
                   "`oilway rules --format md`.\nAn id is for ever.\n\n"
                   "| severity | means |\n| --- | --- |\n"
                   "| error | it must not be built so; the command ends with 1 |\n"
                   "| warning | a fitter would say it aloud: look, measure, decide |\n"
                   "| note | worth knowing |\n\n"
                   "A rule's usual severity is given. A finding is milder where a limit is passed only while "
                   "cold, or only on figures\nthat nobody gave and the program had to assume.\n",
                   ow_rule_count());
    for (size_t index = 0; index < ow_rule_count(); index++) {
        const ow_rule *rule = ow_rule_at(index);
        if (group == NULL || strcmp(group, ow_rule_group(index)) != 0) {
            group = ow_rule_group(index);
            ow_text_format(
                text,
                "\n## %s\n\n| rule | severity | circuits | what is wrong | how to mend it | source "
                "|\n| --- | --- | --- | --- | --- | --- |\n",
                group);
        }
        ow_text_format(text, "| `%s` | %s |", rule->id, ow_severity_name(rule->severity));
        write_cell(text, rule->circuits);
        write_cell(text, rule->says);
        write_cell(text, rule->mend);
        write_cell(text, rule->source);
        ow_text_char(text, '\n');
    }
}

ow_status ow_report_rules_json(ow_text *text, const ow_rule *rule)
{
    ow_json json = ow_json_new(true);
    for (size_t index = 0; index < ow_rule_count(); index++) {
        const ow_rule *row = ow_rule_at(index);
        if (rule != NULL && row != rule)
            continue;
        cJSON *item = ow_json_object(&json, json.root, NULL);
        ow_json_words(&json, item, "rule", row->id);
        ow_json_words(&json, item, "severity", ow_severity_name(row->severity));
        ow_json_words(&json, item, "circuits", row->circuits);
        ow_json_words(&json, item, "says", row->says);
        ow_json_words(&json, item, "mend", row->mend);
        ow_json_words(&json, item, "source", row->source);
        ow_json_words(&json, item, "group", ow_rule_group(index));
    }
    return ow_json_done(&json, text);
}
