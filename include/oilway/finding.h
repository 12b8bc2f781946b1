/* SPDX-License-Identifier: MIT */
/* What a check has to say, and the table of rules it says it by (docs/rules.md is printed from it). */
#ifndef OILWAY_FINDING_H
#define OILWAY_FINDING_H

#include "oilway/text.h"

typedef struct ow_rule {
    const char *id;       /* short, trade words: "open-end", "wrong-seat", "bore" */
    ow_severity severity; /* its usual one; a finding may be milder (assumed figures, cold only) */
    const char *circuits; /* "feed drain coolant": where it applies */
    const char *says;     /* what is wrong, one general sentence */
    const char *mend;     /* how to mend it, one general sentence */
    const char *source;   /* standard by number, or "common practice" */
} ow_rule;

size_t ow_rule_count(void);
const ow_rule *ow_rule_at(size_t index);
/* What the rules around that one have in common, as a heading: "What a layout is held to". NULL past the
 * last. */
const char *ow_rule_group(size_t index);
const ow_rule *ow_rule_find(const char *id); /* NULL if there is none */
const char *
ow_rule_nearest(const char *id); /* the nearest id, or NULL when none is near enough to be of help */

typedef struct ow_finding {
    const ow_rule *rule;
    ow_severity severity;
    const char *where;   /* "tee-2.branch", "brockle-4:gallery to tf-2-2m.a", "drain, segment 2"; may be "" */
    const char *message; /* the sentence for this case, with its figures */
    const char *mend;
} ow_finding;

/* A list that owns its strings. */
typedef struct ow_findings {
    const ow_context *context;
    ow_finding *items;
    size_t count, capacity;
    bool failed; /* an allocation failed: the list is not complete */
} ow_findings;

ow_findings ow_findings_new(const ow_context *context);
void ow_findings_done(ow_findings *findings);
/* Adds one of rule `id` (which must exist: OW_FAULT otherwise); the strings are copied; mend NULL =
 * the rule's own. */
ow_status ow_findings_add(ow_findings *findings, const char *id, ow_severity severity, const char *where,
                          const char *mend, const char *message_format, ...)
    __attribute__((format(printf, 6, 7)));
/* Copies those of `from` that stand neither in `to` nor in `but` (which may be NULL) with the same rule,
 * place and message. */
ow_status ow_findings_join(ow_findings *to, const ow_findings *from, const ow_findings *but);
bool ow_findings_have(const ow_findings *findings, ow_severity at_least);
/* Puts errors first, then warnings, then notes; else in order of arrival. */
void ow_findings_sort(ow_findings *findings);

#endif
