/* SPDX-License-Identifier: MIT */
/* The order of checks, and the small things that all of them need. */
#include <stdarg.h>
#include <stdio.h>

#include "ask/unit.h"
#include "checks/checks_internal.h"

const char *ow_checking_node(const ow_checking *checking, size_t node, char *buffer)
{
    ow_text text = ow_text_new(checking->context);
    ow_layout_node_name(&text, checking->layout, node);
    snprintf(buffer, OW_WHERE_SIZE, "%s", ow_text_words(&text));
    ow_text_done(&text);
    return buffer;
}

const char *ow_checking_end(const ow_checking *checking, size_t node, size_t end, char *buffer)
{
    char name[OW_WHERE_SIZE];
    const ow_part *part = checking->layout->nodes[node].part;
    ow_checking_node(checking, node, name);
    if (part == NULL || end >= part->end_count)
        snprintf(buffer, OW_WHERE_SIZE, "%s", name);
    else
        snprintf(buffer, OW_WHERE_SIZE, "%.120s.%.30s", name, part->end_names[end]);
    return buffer;
}

static void add(ow_checking *checking, ow_findings *list, const char *rule, ow_severity severity,
                const char *where, const char *format, va_list arguments)
    __attribute__((format(printf, 6, 0)));

static void add(ow_checking *checking, ow_findings *list, const char *rule, ow_severity severity,
                const char *where, const char *format, va_list arguments)
{
    char message[512];
    if (checking->status != OW_OK || list == NULL)
        return;
    vsnprintf(message, sizeof message, format, arguments);
    checking->status = ow_findings_add(list, rule, severity, where, NULL, "%s", message);
}

void ow_checking_find(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
{
    const ow_rule *row = ow_rule_find(rule);
    va_list arguments;
    va_start(arguments, format);
    add(checking, checking->findings, rule, row != NULL ? row->severity : OW_ERROR, where, format, arguments);
    va_end(arguments);
}

void ow_checking_warn(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    add(checking, checking->findings, rule, OW_WARNING, where, format, arguments);
    va_end(arguments);
}

void ow_checking_pass(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    add(checking, checking->passed, rule, OW_NOTE, where, format, arguments);
    va_end(arguments);
}

size_t ow_checking_port_node(const ow_checking *checking, size_t given)
{
    const ow_layout *layout = checking->layout;
    for (size_t node = 0; node < layout->node_count; node++) {
        if (layout->nodes[node].part == NULL && layout->nodes[node].given == given)
            return node;
    }
    return OW_NODE_NONE;
}

/* A layout that does not say what it is held to is held to its circuit's and machines' defaults. */
static void find_limits(ow_checking *checking)
{
    const ow_layout *layout = checking->layout;
    if (layout->has_asked) {
        checking->limits = layout->asked;
        return;
    }
    ow_ask ask = {.circuit = layout->circuit, .given_count = layout->given_count, .givens = layout->givens};
    checking->limits = (ow_limits)OW_LIMITS_INIT;
    checking->status =
        ow_unit_lay_defaults(&ask, OW_BEARING_UNKNOWN, false, &checking->limits, checking->findings);
}

ow_status ow_check_layout(const ow_context *context, const ow_layout *layout, ow_findings *findings,
                          ow_findings *passed)
{
    ow_checking checking = {context, layout, OW_LIMITS_INIT, findings, passed, OW_OK};
    find_limits(&checking);
    ow_check_tree(&checking);
    ow_check_joints(&checking);
    ow_check_parts(&checking);
    ow_check_paths(&checking);
    ow_check_pieces(&checking);
    return checking.status;
}
