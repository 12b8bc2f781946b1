/* SPDX-License-Identifier: MIT */
/* The order of checks, and the small things that all of them need. */
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "ask/unit.h"
#include "base/format.h"
#include "checks/checks_internal.h"

/* As ow_layout_node_name, but without memory, which might not be had. */
const char *ow_checking_node(const ow_checking *checking, size_t node, char *buffer)
{
    const ow_layout_node *at = &checking->layout->nodes[node];
    if (at->part == NULL)
        snprintf(buffer, OW_WHERE_SIZE, "%s", checking->layout->givens[at->given].name);
    else if (at->occurrence > 1)
        snprintf(buffer, OW_WHERE_SIZE, "%.120s#%zu", at->part->id, at->occurrence);
    else
        snprintf(buffer, OW_WHERE_SIZE, "%s", at->part->id);
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

const char *ow_checking_joint(const ow_checking *checking, size_t node, char *buffer)
{
    const ow_layout_node *at = &checking->layout->nodes[node];
    char from[OW_WHERE_SIZE], to[OW_WHERE_SIZE];
    ow_checking_end(checking, at->parent, at->parent_end, from);
    ow_checking_end(checking, node, at->enter, to);
    snprintf(buffer, OW_JOINT_WHERE_SIZE, "between %s and %s", from, to);
    return buffer;
}

const char *ow_checking_port(const ow_given *given, char words[OW_END_TEXT_SIZE])
{
    return given->machine != NULL || given->fixture != NULL ? given->name : ow_end_name(&given->end, words);
}

static void add(ow_checking *checking, ow_findings *list, const char *rule, ow_severity severity,
                const char *where, const char *mend, const char *format, va_list arguments)
    __attribute__((format(printf, 7, 0)));

static void add(ow_checking *checking, ow_findings *list, const char *rule, ow_severity severity,
                const char *where, const char *mend, const char *format, va_list arguments)
{
    char message[1024]; /* a verdict on two threads with its reason is the longest */
    if (checking->status != OW_OK || list == NULL)
        return;
    ow_format(message, sizeof message, format, arguments);
    checking->status = ow_findings_add(list, rule, severity, where, mend, "%s", message);
}

static ow_severity severity_of(const char *rule)
{
    const ow_rule *row = ow_rule_find(rule);
    return row != NULL ? row->severity : OW_ERROR;
}

void ow_checking_find(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    add(checking, checking->findings, rule, severity_of(rule), where, NULL, format, arguments);
    va_end(arguments);
}

void ow_checking_find_mend(ow_checking *checking, const char *rule, const char *where, const char *mend,
                           const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    add(checking, checking->findings, rule, severity_of(rule), where, mend, format, arguments);
    va_end(arguments);
}

void ow_checking_warn_mend(ow_checking *checking, const char *rule, const char *where, const char *mend,
                           const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    add(checking, checking->findings, rule, OW_WARNING, where, mend, format, arguments);
    va_end(arguments);
}

void ow_checking_warn(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    add(checking, checking->findings, rule, OW_WARNING, where, NULL, format, arguments);
    va_end(arguments);
}

void ow_checking_note(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    add(checking, checking->findings, rule, OW_NOTE, where, NULL, format, arguments);
    va_end(arguments);
}

void ow_checking_pass(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    add(checking, checking->passed, rule, OW_NOTE, where, NULL, format, arguments);
    va_end(arguments);
}

bool ow_checking_has(const ow_checking *checking, const char *rule, const char *where)
{
    for (size_t index = checking->first; index < checking->findings->count; index++) {
        const ow_finding *finding = &checking->findings->items[index];
        if (strcmp(finding->rule->id, rule) == 0 && (where == NULL || strcmp(finding->where, where) == 0))
            return true;
    }
    return false;
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

size_t ow_checking_piece(const ow_layout *layout, size_t node)
{
    while (layout->nodes[node].parent != OW_NODE_NONE &&
           !ow_joint_turns(ow_layout_parent_end(layout, node), ow_layout_child_end(layout, node)))
        node = layout->nodes[node].parent;
    return node;
}

/* Whether an end leaves a part sideways: the branch of a tee or cross, the side port of a gauge adapter. */
static bool is_sideways(const ow_part *part, size_t end)
{
    return end >= 2 && (part->kind == OW_TEE || part->kind == OW_CROSS || part->kind == OW_GAUGE_ADAPTER);
}

double ow_checking_way_m(const ow_part *part, size_t from, size_t to)
{
    size_t sides = (is_sideways(part, from) ? 1 : 0) + (is_sideways(part, to) ? 1 : 0);
    if (sides == 0)
        return part->length_m;
    if (part->branch_length_m < 0.0 || (sides == 1 && part->length_m < 0.0))
        return OW_NOT_SAID;
    return sides == 1 ? part->length_m / 2.0 + part->branch_length_m : 2.0 * part->branch_length_m;
}

/* A layout that does not say what it is held to is held to its circuit's and machines' defaults. What these
 * bring up, such as a switch that loses its place, is said either way. */
static void find_limits(ow_checking *checking)
{
    const ow_layout *layout = checking->layout;
    ow_ask ask = {.circuit = layout->circuit, .given_count = layout->given_count, .givens = layout->givens};
    const ow_port *port = layout->givens[0].port;
    checking->limits = (ow_limits)OW_LIMITS_INIT;
    checking->status = ow_unit_lay_defaults(&ask, OW_BEARING_UNKNOWN, layout->has_asked, &checking->limits,
                                            checking->findings);
    if (layout->has_asked)
        checking->limits = layout->asked;
    else
        checking->rating_assumed = port == NULL || port->pressure_pa < 0.0;
    if (port != NULL && port->holds[0] != '\0' && !ow_checking_has(checking, "switch-loses-place", NULL))
        ow_checking_pass(checking, "switch-loses-place", layout->givens[0].name,
                         "%s, which sits in %s now, is kept", port->holds, layout->givens[0].name);
}

ow_status ow_check_layout(const ow_context *context, const ow_catalog *catalog, const ow_layout *layout,
                          ow_findings *findings, ow_findings *passed)
{
    ow_checking checking = {context,  catalog,         layout, OW_LIMITS_INIT, false,
                            findings, findings->count, passed, OW_OK};
    find_limits(&checking);
    ow_check_tree(&checking);
    ow_check_joints(&checking);
    ow_check_parts(&checking);
    ow_check_paths(&checking);
    ow_check_pieces(&checking);
    ow_check_block(&checking);
    ow_check_hoses(&checking);
    return checking.status;
}
