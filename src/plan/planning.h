/* SPDX-License-Identifier: MIT */
/* One plan under way: shared by the files of src/plan. */
#ifndef OW_PLAN_PLANNING_H
#define OW_PLAN_PLANNING_H

#include "base/memory.h"
#include "oilway/plan.h"

typedef struct ow_planning {
    const ow_context *context;
    const ow_catalog *catalog;
    const ow_net *net;
    const ow_job *job;
    ow_plan *plan;
    ow_arena arena; /* what the plan owns */
    const ow_machine *machines[1 + OW_JOB_TURBOS];
    size_t machine_count;
    ow_feed_state states[OW_FEED_STATES_MAX];
    size_t state_count;
    size_t hot_rev; /* the state with the most gallery pressure among the warm ones */
} ow_planning;

/* printf into the arena; NULL when out of memory. */
const char *ow_planning_words(ow_planning *planning, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
/* The value said, or the assumption, which is then listed. `unit` follows the shown number; shown = value *
 * scale. */
double ow_planning_value(ow_planning *planning, const ow_said *said, double assumed, const char *what,
                         double scale, const char *unit, ow_mark mark, const char *source);

/* The words of an ask of this job: its own machines known, `from` and `to` full names. */
ow_ask_words ow_planning_ask(const ow_planning *planning, const char *from, const char *to);
/* Reads and answers an ask; *layout the best stack's, or NULL. The set and answers are the caller's to free.
 */
ow_status ow_planning_answer(ow_planning *planning, const ow_ask_words *words, ow_ask_set *set,
                             ow_answers *answers, const ow_layout **layout);
/* Adds the ask's and the layout's findings; or that there is none, with what is missing. `circuit` is named.
 */
ow_status ow_planning_judge_answer(ow_planning *planning, const ow_answers *answers, const char *circuit,
                                   ow_findings *findings);
/* Ids of all hoses that are not of a class, for `without`; in the arena. */
ow_status ow_planning_other_hoses(ow_planning *planning, const char *hose_class, const char *const **without,
                                  size_t *count);

/* ---- pieces: what the liquid sees of a part ---- */
typedef struct ow_piece_list {
    ow_piece *items;
    size_t *nodes; /* the layout's node of each */
    size_t count, capacity;
    bool unknown; /* a bore is not said */
    ow_status status;
} ow_piece_list;

/* Appends one piece; a bore of 0 or less marks the list as unknown, a pipe of no length is left out. */
void ow_plan_add_piece(ow_planning *planning, ow_piece_list *list, size_t node, ow_piece piece);
/* Appends the pieces of passing the part at `node` from its entry to end `leave`. When `from_fork`, only what
 * lies beyond the fork: the tee itself and the leg behind it; when `to_fork`, only the leg before it. */
typedef enum ow_passing { OW_PASS_WHOLE, OW_PASS_TO_FORK, OW_PASS_FROM_FORK } ow_passing;
void ow_plan_pass(ow_planning *planning, const ow_layout *layout, size_t node, size_t leave,
                  ow_passing passing, ow_piece_list *list);
void ow_plan_chamber(ow_planning *planning, const char *name, size_t node, ow_piece_list *list);
/* The pieces from the source to given port `given`, chambers at both ends. */
void ow_plan_path(ow_planning *planning, const ow_layout *layout, size_t given, ow_piece_list *list);

/* ---- circuits ---- */
ow_status ow_plan_states(ow_planning *planning);
void ow_plan_oil(ow_planning *planning, ow_feed *feed); /* the job's, or the one assumed */
ow_status ow_plan_feed_make(ow_planning *planning);
ow_status ow_plan_feed_judge(ow_planning *planning);
ow_status ow_plan_feed_line(ow_planning *planning, const ow_layout *layout, ow_plan_feed *feed);
ow_status ow_plan_return_judge(ow_planning *planning, ow_plan_return *home);
ow_status ow_plan_drain_make(ow_planning *planning);
ow_status ow_plan_coolant_judge(ow_planning *planning, const ow_plan_coolant *loop);
ow_status ow_plan_coolant_make(ow_planning *planning);
ow_status ow_plan_notes(ow_planning *planning);

#endif
