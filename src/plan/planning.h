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
    const ow_layout *layout; /* that is reckoned, where none is searched for */
    ow_plan *plan;
    ow_arena arena; /* what the plan owns */
    const ow_machine *machines[1 + OW_JOB_TURBOS];
    size_t machine_count;
    ow_feed_state states[OW_FEED_STATES_MAX];
    size_t state_count;
    ow_oil oil;
    size_t hot_rev; /* the state with the most gallery pressure among the warm ones */
} ow_planning;

/* printf into the arena; NULL when out of memory. */
const char *ow_planning_words(ow_planning *planning, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
/* Lists an assumption; `what` NULL is out of memory. A failure marks the list, which is looked at once the
 * plan is made. */
void ow_planning_assume(ow_planning *planning, ow_mark mark, const char *what, const char *source,
                        const char *value_format, ...) __attribute__((format(printf, 5, 6)));
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
/* The hose that an ask wants. */
typedef struct ow_planning_hose {
    const char *class_name; /* NULL: any */
    double length_m;        /* that it is cut to */
    double least_m, most_m; /* a hose that is bought made up: lengths that do */
    bool hot; /* it sees the hottest oil: one whose material does not stand that is the last choice */
    size_t
        too_cool; /* such hoses: as many as stand last among the words' `without`, where choosing puts them */
} ow_planning_hose;
/* Said, or from the straight way between two ports (0: not known), or assumed; listed under `what`. */
ow_planning_hose ow_planning_hose_between(ow_planning *planning, const ow_said *said, double straight_m,
                                          double assumed_m, const char *what);
/* Writes it into the words of an ask. */
ow_status ow_planning_choose_hose(ow_planning *planning, ow_planning_hose *hose, ow_ask_words *words);
/* The hottest of the states. */
const ow_feed_state *ow_planning_hottest(const ow_planning *planning);
/* The same with a hose: by one; where no single one does and `several`, by several that share its length; and
 * by one that does not stand the heat only where no other does. */
ow_status ow_planning_answer_hose(ow_planning *planning, const ow_ask_words *words,
                                  const ow_planning_hose *hose, bool several, ow_ask_set *set,
                                  ow_answers *answers, const ow_layout **layout);
/* The straight way between two ports whose positions are known. */
bool ow_planning_apart(const ow_port *a, const ow_port *b, double *straight_m);

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
ow_status ow_plan_oil(ow_planning *planning);
ow_status ow_plan_limits(ow_planning *planning);
ow_status ow_plan_feed_make(ow_planning *planning);
/* The same of a layout that is there: nothing is searched for. */
ow_status ow_plan_feed_take(ow_planning *planning, const ow_layout *layout);
void ow_plan_feed_done(ow_plan_feed *feed);
ow_status ow_plan_feed_judge(ow_planning *planning, ow_plan_feed *feed);
ow_status ow_plan_feed_parts(ow_planning *planning, ow_plan_feed *feed);
ow_status ow_plan_feed_sizes(ow_planning *planning, ow_plan_feed *feed);
ow_status ow_plan_feed_verdicts(ow_planning *planning, ow_plan_feed *feed);
/* Most that a turbo may see: the job's limit, a journal bearing's; OW_NOT_SAID where no limit is known. */
double ow_plan_pressure_limit_pa(const ow_planning *planning);
ow_status ow_plan_feed_line(ow_planning *planning, const ow_layout *layout, ow_plan_feed *feed);
/* The load assumed of a turbo by its bearing and size. */
const ow_typical_load *ow_plan_typical_load(const ow_machine *turbo);

/* Where the most oil comes, hot, and what comes in the coldest state, at one outlet. */
typedef struct ow_plan_flows {
    double hot_m3s, cold_m3s;
    ow_liquid hot, cold;
} ow_plan_flows;
ow_status ow_plan_drain_flows(ow_planning *planning, const ow_machine *turbo, ow_plan_flows *flows);
void ow_plan_drain_route(ow_planning *planning, ow_plan_return *home);
double ow_plan_drain_length_m(const ow_plan_return *home); /* along the route */
ow_status ow_plan_drain_reckon(ow_planning *planning, ow_plan_return *home);
ow_status ow_plan_return_judge(ow_planning *planning, ow_plan_return *home);
ow_status ow_plan_return_sureness(ow_planning *planning, ow_plan_return *home);
ow_status ow_plan_drain_take(ow_planning *planning);
ow_status ow_plan_drain_made(ow_planning *planning);
ow_status ow_plan_drain_make(ow_planning *planning);
void ow_plan_legs_done(ow_plan_coolant *loop);
ow_status ow_plan_coolant_reckon(ow_planning *planning, ow_plan_coolant *loop);
ow_status ow_plan_coolant_judge(ow_planning *planning, const ow_plan_coolant *loop);
ow_status ow_plan_coolant_make(ow_planning *planning);
ow_status ow_plan_notes(ow_planning *planning);

#endif
