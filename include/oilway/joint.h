/* SPDX-License-Identifier: MIT */
/* Two ends put together: whether they seal, on which face, with what between them, by which source. */
#ifndef OILWAY_JOINT_H
#define OILWAY_JOINT_H

#include "oilway/end.h"

/* One list: name in code, word in output. docs/joints.md says what each means. */
#define OW_VERDICT_LIST(X)       \
    X(OW_SEALS, "seals")         \
    X(OW_TOLERATED, "tolerated") \
    X(OW_LEAKS, "leaks")         \
    X(OW_BINDS, "binds")         \
    X(OW_WEAK, "weak")           \
    X(OW_NO_START, "no-start")   \
    X(OW_WRONG_SEAT, "wrong-seat")
#define OW_VERDICT_NAME(name, word) name,
typedef enum ow_verdict { OW_VERDICT_LIST(OW_VERDICT_NAME) OW_VERDICT_COUNT } ow_verdict;
#undef OW_VERDICT_NAME
const char *ow_verdict_word(ow_verdict verdict);

/* A row of the table of joint rules (src/joints/rules.c): which two seats, and what makes it tight. */
typedef struct ow_joint_rule {
    const char *id;       /* "taper-npt", "flare37", … */
    ow_verdict verdict;   /* OW_SEALS or OW_TOLERATED */
    const char *seals_by; /* "taper thread", "washer on the face", … */
    const char *needs[3]; /* consumables in words; NULL-filled */
    const char *source;   /* standard by number, or "common practice" */
    const char *remark;   /* may be NULL; for OW_TOLERATED why no standard blesses it */
} ow_joint_rule;

size_t ow_joint_rule_count(void);
const ow_joint_rule *ow_joint_rule_at(size_t index);

/* The rule by which a and b seal (or are tolerated), whichever way round they are named; NULL if
 * they do neither. Both must be whole ends. Pure table work: no geometry. O(number of rules). */
const ow_joint_rule *ow_joint_find(const ow_end *a, const ow_end *b);

/* Whether that joint can be made last: one of the two turns or clamps freely. */
bool ow_joint_turns(const ow_end *a, const ow_end *b);

#endif
