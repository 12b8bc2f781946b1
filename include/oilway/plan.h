/* SPDX-License-Identifier: MIT */
/*
 * A job planned: feed, drain and coolant resolved by the one search under each circuit's limits, reckoned by
 * the physics, judged by the rules. docs/plan.md tells it to users; docs/schema/plan.json fixes the JSON.
 */
#ifndef OILWAY_PLAN_H
#define OILWAY_PLAN_H

#include "oilway/answer.h"
#include "oilway/assumption.h"
#include "oilway/bill.h"
#include "oilway/feed.h"
#include "oilway/job.h"

/* What the feed would give with a hose of another size, all else the same. */
typedef struct ow_plan_size {
    int dash;
    double bore_m;
    bool carried;      /* the size in the layout */
    double hot_rev_pa; /* at the turbo that gets least */
    double flow_m3s;
    double first_oil_s; /* in the coldest state; OW_NOT_SAID if not known */
} ow_plan_size;
#define OW_PLAN_SIZES 3
#define OW_PLAN_HOSES OW_TO_MAX

/* The pressurised feed. */
typedef struct ow_plan_feed {
    ow_ask_set asks;
    ow_answers answers;      /* one answer, at best one stack */
    const ow_layout *layout; /* of that stack; NULL if there is none */
    ow_feed feed;            /* the layout as a tree of pieces; valid with layout */
    bool solved;
    ow_feed_answer answer; /* with solved */
    const char *limiting;  /* the one part that costs most, in words; NULL if not solved */
    size_t hot_rev;        /* the state that limits are held to: index of a result */
    size_t size_count;
    ow_plan_size sizes[OW_PLAN_SIZES];
    size_t hose_count;
    ow_piece *hoses[OW_PLAN_HOSES]; /* the hoses' pieces in the tree */
    double restrictor_m;            /* bore that would hold the target; OW_NOT_SAID if none is wanted */
    double carried_restrictor_m;    /* bore of the one in the layout; OW_NOT_SAID if there is none */
} ow_plan_feed;

/* One return that the engine offers. */
typedef struct ow_plan_return {
    const ow_machine *turbo;
    const ow_port *outlet; /* the turbo's */
    const ow_port *port;   /* the engine's */
    ow_ask_set asks;
    ow_answers answers;
    bool answered;
    const ow_layout *layout; /* NULL: nothing in the catalogue fits; answers say what is missing */
    size_t point_count;
    ow_point points[OW_ROUTE_POINTS_MAX]; /* the route that was reckoned with */
    bool straight;                        /* no route was given: the straight line to the port */
    size_t segment_count;
    ow_drain_segment segments[OW_ROUTE_POINTS_MAX]; /* at the layout's narrowest bore */
    ow_segment_flow hot[OW_ROUTE_POINTS_MAX];       /* at the most flow, hot */
    ow_segment_flow cold[OW_ROUTE_POINTS_MAX];      /* in the coldest state */
    bool reckoned;
    size_t governing;       /* the segment that fills deepest, hot */
    double pool_m;          /* over the outlet */
    double flow_m3s;        /* of oil; aeration comes on top */
    double least_bore_m;    /* that would do on the flattest segment */
    double least_slope_rad; /* that would do at that bore; OW_NOT_SAID if none */
    bool taken;             /* the best of its outlet: billed */
    bool ok;                /* no error among the findings */
    ow_findings findings;
} ow_plan_return;

#define OW_PLAN_RETURNS (OW_JOB_TURBOS * OW_JOB_RETURNS)
typedef struct ow_plan_drain {
    size_t return_count;
    ow_plan_return *returns; /* ranked: those that are ok first, then fewest parts; the first is billed */
    double aeration;
} ow_plan_drain;

/* The coolant loop of one water-cooled turbo: engine (and heater) to the low port, high port home. */
#define OW_PLAN_CURVE 13
#define OW_PLAN_LEGS 3
typedef struct ow_plan_leg {
    bool hot; /* from the turbo home; the others lead to it */
    ow_ask_set asks;
    ow_answers answers;
    bool answered;
    const ow_layout *layout; /* NULL where nothing fits */
} ow_plan_leg;

typedef struct ow_plan_coolant {
    const ow_machine *turbo;
    const ow_machine *heater;  /* in the loop, or NULL */
    const ow_port *low, *high; /* the turbo's: cold in, hot out */
    size_t leg_count;
    ow_plan_leg legs[OW_PLAN_LEGS]; /* in order of flow */
    bool reckoned;                  /* what follows holds */
    ow_loop loop;
    ow_siphon siphon;
    double forced_m3s;
    ow_forced forced;
    size_t curve_count;
    double curve_angle_rad[OW_PLAN_CURVE];
    ow_siphon curve[OW_PLAN_CURVE];
} ow_plan_coolant;

typedef struct ow_plan {
    const ow_context *context;
    const ow_job *job; /* lent */
    ow_plan_feed feed;
    ow_plan_drain drain;
    size_t coolant_count; /* one for each water-cooled turbo */
    ow_plan_coolant *coolants;
    ow_findings findings; /* of all circuits, errors first */
    ow_assumptions assumptions;
    ow_bill bill; /* of every layout that is taken */
    size_t layout_count;
    ow_layout *layouts; /* those layouts, lent from the circuits: feed, drains, coolant */
    size_t note_count;
    const char *const *notes; /* assembly, in order of work */
    bool ok;                  /* no finding of severity error */
    void *storage;
} ow_plan;

/*
 * Plans a job. OW_OK whether or not everything is right. OW_INPUT if the job's ends or ports cannot be asked
 * about (reported); OW_MEMORY. The job, catalogue and net must outlive the plan; freed by ow_plan_done.
 */
ow_status ow_plan_make(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                       const ow_job *job, ow_plan *plan);
void ow_plan_done(ow_plan *plan);

#endif
