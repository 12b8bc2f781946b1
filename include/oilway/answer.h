/* SPDX-License-Identifier: MIT */
/* An ask set answered: layouts in order, checked; or what is missing, and how far it got. */
#ifndef OILWAY_ANSWER_H
#define OILWAY_ANSWER_H

#include "oilway/ask.h"

typedef struct ow_answer_stack {
    ow_layout layout;
    ow_findings findings; /* of the layout, checked by code that shares nothing with the search */
} ow_answer_stack;

/* A limit that alone keeps every layout out. */
typedef struct ow_lifted {
    const char *limit; /* as a layout's `asked` says it: "rating 345 bar" */
    size_t
        part_count; /* of the best layout without it; of a quantity, of that with the most that can be had */
    const char *words; /* "3 parts"; of a quantity "3 parts; 160 bar is the most that can be had" */
} ow_lifted;

/* The answer to one reading. */
typedef struct ow_answer {
    const char *reading; /* NULL if nothing was left open; lent by the ask set */
    const ow_ask *ask;   /* of the best source port; lent by the ask set */
    bool found;
    ow_answer_stack *stacks; /* best first */
    size_t stack_count;
    const char *cut;     /* why the list ended; lent */
    bool is_short;       /* fewer than were asked for */
    ow_missing *missing; /* if not found, plainest first */
    size_t missing_count;
    ow_reach reach;    /* if not found */
    ow_lifted *lifted; /* if not found: limits of which lifting one alone is enough */
    size_t lifted_count;
    ow_findings findings; /* of the ask */
    bool explained;
    ow_explanation explanation; /* words lent by the answer */
} ow_answer;

typedef struct ow_answers {
    const ow_context *context;
    size_t count; /* 1, or one for each reading */
    ow_answer *items;
    const char *decide; /* lent by the ask set; NULL with one reading */
    bool found;         /* any */
    void *storage;
} ow_answers;

typedef struct ow_answer_options {
    size_t best;         /* how many layouts, 1 or more */
    size_t most_missing; /* how many made parts to name */
    const char *explain; /* a part's id, or NULL */
} ow_answer_options;
#define OW_ANSWER_OPTIONS_INIT \
    {                          \
        1, 3, NULL             \
    }

/* Runs the searches. OW_OK whether or not there is a layout; OW_INPUT if `explain` names no part. The set,
 * net and catalogue must outlive the answers. */
ow_status ow_answers_find(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                          const ow_ask_set *set, const ow_answer_options *options, ow_answers *answers);
void ow_answers_done(ow_answers *answers);

/*
 * Appends why a part stands in a layout: what it serves ("opens a branch for sw-2", "the one hose on the way
 * to plover-41:oil-in"). The node at `index` must hold a part.
 */
void ow_layout_why(ow_text *text, const ow_layout *layout, size_t index);

#endif
