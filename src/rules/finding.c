/* SPDX-License-Identifier: MIT */
/* The list of findings, and the look-up of a rule. The rules themselves stand in table*.c.
 */
#include "oilway/finding.h"

#include <stdarg.h>
#include <string.h>

#include "base/format.h"
#include "base/memory.h"
#include "base/words.h"
#include "rules/table.h"

typedef struct rule_group {
    const char *title;
    const ow_rule *rules;
    size_t count;
} rule_group;

/* The groups, in the order in which they are listed; false past the last. */
static bool group_at(size_t index, rule_group *group)
{
    const rule_group groups[] = {
        {"What a layout is held to", ow_rules, ow_rules_count},
        {"The practice of the trade", ow_practice_rules, ow_practice_rules_count},
        {"What is reckoned", ow_physics_rules, ow_physics_rules_count},
        {"A whole job", ow_plan_rules, ow_plan_rules_count},
    };
    if (index >= sizeof groups / sizeof groups[0])
        return false;
    *group = groups[index];
    return true;
}

size_t ow_rule_count(void)
{
    size_t sum = 0;
    rule_group group;
    for (size_t at = 0; group_at(at, &group); at++)
        sum += group.count;
    return sum;
}

/* The group that holds the rule of that index, which becomes its index there. */
static bool find_group(size_t *index, rule_group *group)
{
    for (size_t at = 0; group_at(at, group); at++) {
        if (*index < group->count)
            return true;
        *index -= group->count;
    }
    return false;
}

const ow_rule *ow_rule_at(size_t index)
{
    rule_group group;
    return find_group(&index, &group) ? &group.rules[index] : NULL;
}

const char *ow_rule_group(size_t index)
{
    rule_group group;
    return find_group(&index, &group) ? group.title : NULL;
}

const ow_rule *ow_rule_find(const char *id)
{
    for (size_t index = 0; index < ow_rule_count(); index++) {
        const ow_rule *rule = ow_rule_at(index);
        if (rule && strcmp(rule->id, id) == 0)
            return rule;
    }
    return NULL;
}

const char *ow_rule_nearest(const char *id)
{
    const char *nearest = NULL;
    size_t least = 0;
    for (size_t index = 0; index < ow_rule_count(); index++) {
        const char *known = ow_rule_at(index)->id;
        size_t distance = 0;
        if (!ow_words_near(id, strlen(id), known, strlen(known), &distance) ||
            (nearest != NULL && distance >= least))
            continue;
        nearest = known;
        least = distance;
    }
    return nearest;
}

ow_findings ow_findings_new(const ow_context *context)
{
    ow_findings findings = {context, NULL, 0, 0, false};
    return findings;
}

static void drop(const ow_context *context, ow_finding *finding)
{
    /* Where, message and mend share one block that begins with the message. */
    union {
        const char *lent;
        void *owned;
    } block = {finding->message};
    ow_release(context, block.owned);
}

void ow_findings_done(ow_findings *findings)
{
    for (size_t index = 0; index < findings->count; index++)
        drop(findings->context, &findings->items[index]);
    ow_release(findings->context, findings->items);
    *findings = ow_findings_new(findings->context);
}

/* Puts one finding behind the others; `words` is the block that it then owns. */
static ow_status append(ow_findings *findings, const ow_rule *rule, ow_severity severity, const char *words,
                        const char *where, const char *mend)
{
    void *items = findings->items;
    if (ow_grow(findings->context, &items, &findings->capacity, findings->count + 1, sizeof(ow_finding)) !=
        OW_OK)
        return OW_MEMORY;
    findings->items = items;
    ow_finding *finding = &findings->items[findings->count++];
    finding->rule = rule;
    finding->severity = severity;
    finding->message = words;
    finding->where = where;
    finding->mend = mend;
    return OW_OK;
}

ow_status ow_findings_add(ow_findings *findings, const char *id, ow_severity severity, const char *where,
                          const char *mend, const char *message_format, ...)
{
    const ow_rule *rule = ow_rule_find(id);
    if (rule == NULL)
        return OW_FAULT;
    if (mend == NULL)
        mend = rule->mend;
    va_list arguments;
    va_start(arguments, message_format);
    int message_length = ow_format(NULL, 0, message_format, arguments);
    va_end(arguments);
    if (message_length < 0)
        return OW_FAULT;
    size_t message_size = (size_t)message_length + 1;
    size_t where_size = strlen(where) + 1;
    size_t mend_size = strlen(mend) + 1;
    char *words = ow_resize(findings->context, NULL, message_size + where_size + mend_size);
    if (words == NULL)
        goto failed;
    va_start(arguments, message_format);
    ow_format(words, message_size, message_format, arguments);
    va_end(arguments);
    memcpy(words + message_size, where, where_size);
    memcpy(words + message_size + where_size, mend, mend_size);
    if (append(findings, rule, severity, words, words + message_size, words + message_size + where_size) ==
        OW_OK)
        return OW_OK;
    ow_release(findings->context, words);
failed:
    findings->failed = true;
    return OW_MEMORY;
}

static bool stands_in(const ow_findings *findings, const ow_finding *finding)
{
    for (size_t index = 0; findings != NULL && index < findings->count; index++) {
        const ow_finding *other = &findings->items[index];
        if (other->rule == finding->rule && strcmp(other->where, finding->where) == 0 &&
            strcmp(other->message, finding->message) == 0)
            return true;
    }
    return false;
}

ow_status ow_findings_join(ow_findings *to, const ow_findings *from, const ow_findings *but)
{
    for (size_t index = 0; index < from->count; index++) {
        const ow_finding *finding = &from->items[index];
        if (stands_in(to, finding) || stands_in(but, finding))
            continue;
        ow_status status = ow_findings_add(to, finding->rule->id, finding->severity, finding->where,
                                           finding->mend, "%s", finding->message);
        if (status != OW_OK)
            return status;
    }
    return OW_OK;
}

bool ow_findings_have(const ow_findings *findings, ow_severity at_least)
{
    for (size_t index = 0; index < findings->count; index++) {
        if (findings->items[index].severity >= at_least)
            return true;
    }
    return false;
}

void ow_findings_sort(ow_findings *findings)
{
    /* Insertion: lists are short, and equal severities must keep their order. */
    for (size_t index = 1; index < findings->count; index++) {
        ow_finding moved = findings->items[index];
        size_t place = index;
        while (place > 0 && findings->items[place - 1].severity < moved.severity) {
            findings->items[place] = findings->items[place - 1];
            place--;
        }
        findings->items[place] = moved;
    }
}
