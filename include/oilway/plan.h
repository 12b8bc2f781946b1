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
#include "oilway/thread_size.h"

/* What the feed would give with hoses of another size, all else the same. */
typedef struct ow_plan_size {
    int dash;
    double bore_m;
    bool carried;      /* the size in the layout */
    bool enough;       /* holds what the size is held to: see ow_plan_feed.needed_dash */
    double idle_pa;    /* least at a turbo in the warm states */
    double hot_rev_pa; /* at the turbo that gets least */
    double flow_m3s;
    double first_oil_s; /* in the coldest state; OW_NOT_SAID if not known */
} ow_plan_size;
#define OW_PLAN_SIZES 3
#define OW_PLAN_HOSES OW_TO_MAX

/* What one part of the feed costs in the state that limits are held to: all its pieces, and the steps of bore
 * between neighbours counted to the narrower. The rise to the turbo is a row of its own. */
typedef struct ow_plan_loss {
    const char *part;
    const char *branch; /* the port that it leads to, behind a fork; "" before it */
    double bore_m;      /* its narrowest; 0 for the rise */
    double reynolds;    /* there */
    double loss_pa;
} ow_plan_loss;

/* The pressurised feed. */
typedef struct ow_plan_feed ow_plan_feed;
struct ow_plan_feed {
    ow_ask_set asks;
    ow_answers answers;      /* one answer, at best one stack */
    const ow_layout *layout; /* of that stack; NULL if there is none */
    ow_feed feed;            /* the layout as a tree of pieces; valid with layout */
    bool solved;
    ow_feed_answer answer;       /* with solved */
    const char *const *verdicts; /* of each state, a few words: "enough", "too much"; with solved */
    const char *limiting;        /* the one part that costs most, in words; NULL if not solved */
    size_t part_count;
    ow_plan_loss *parts; /* along the path, in state hot_rev */
    size_t costliest;    /* among them, the rise left out; part_count if there is none */
    size_t hot_rev;      /* the state that limits are held to: index of a result */
    size_t size_count;
    ow_plan_size sizes[OW_PLAN_SIZES];
    int needed_dash; /* the smallest size that is enough; 0 if none is */
    size_t hose_count;
    ow_piece *hoses[OW_PLAN_HOSES]; /* the hoses' pieces in the tree */
    double restrictor_m;            /* bore that would hold the target; OW_NOT_SAID if none is wanted */
    double carried_restrictor_m;    /* bore of the one in the layout; OW_NOT_SAID if there is none */
    const char *size_verdict;       /* sentences, without a full stop; NULL if there is nothing to say */
    const char *restrictor_verdict;
    const char *drain_verdict;
    const char *supposing; /* where it is not known whether the turbo has a restrictor built in: what this way
                              supposes; else NULL */
    ow_findings findings;
    ow_plan_feed *other; /* then, the way for the other case; not billed; else NULL */
};

/* What a return asks to be done at the engine, the least first. */
typedef enum ow_plan_work {
    OW_WORK_NONE,  /* a hose goes on what is there */
    OW_WORK_SCREW, /* a fitting is screwed in */
    OW_WORK_BOLT,  /* a plate or stub is bolted on */
    OW_WORK_WELD   /* a bung or stub is welded on */
} ow_plan_work;
const char *ow_plan_work_words(ow_plan_work work);

/* One return that the engine offers. */
typedef struct ow_plan_return {
    const ow_machine *turbo;
    const ow_port *outlet; /* the turbo's */
    size_t outlet_number;  /* counted over all turbos: returns of one outlet have the same */
    const ow_port *port;   /* the engine's */
    ow_plan_work work;
    ow_ask_set asks;
    ow_answers answers;
    bool answered;
    const ow_layout *layout; /* NULL: nothing in the catalogue fits; answers say what is missing */
    size_t point_count;
    ow_point points[OW_ROUTE_POINTS_MAX]; /* the route that was reckoned with */
    bool straight;                        /* no route was given: the straight line to the port */
    size_t segment_count;
    ow_drain_segment segments[OW_ROUTE_POINTS_MAX]; /* rigid parts and hose, each at its own true bore */
    const char *segment_parts[OW_ROUTE_POINTS_MAX]; /* the part that each runs through */
    ow_segment_flow hot[OW_ROUTE_POINTS_MAX];       /* at the most flow, hot */
    ow_segment_flow cold[OW_ROUTE_POINTS_MAX];      /* in the coldest state */
    bool reckoned;
    size_t governing;       /* the segment that fills deepest, hot */
    double outlet_bore_m;   /* that the pool stands over: the outlet's or the first fitting's */
    double pool_m;          /* over the outlet */
    double flow_m3s;        /* of oil, hot; aeration comes on top */
    double cold_flow_m3s;   /* the same in the coldest state */
    double margin;          /* what its worst segment carries half full, hot, over the froth that comes */
    double cold_margin;     /* the same in the coldest state */
    double least_bore_m;    /* that would do at the slope of the fullest segment */
    double least_slope_rad; /* that would do at the bore of that segment; OW_NOT_SAID if none */
    double least_outlet_m;  /* bore of outlet at which the pool just does */
    bool level_said;        /* the next three hold */
    double entry_over_m;    /* of the return's end over the sump's oil */
    double outlet_over_m;   /* of the turbo's outlet over the sump's oil */
    double head_needed_m; /* of outlet over oil, by the crankcase's pressure, friction and the margin kept */
    double friction_head_m; /* of it, the friction of the drain run full by froth, hot or cold */
    bool taken;             /* the best of its outlet: billed */
    bool ok;                /* no error among the findings */
    bool clean;             /* no warning either */
    ow_findings findings;
} ow_plan_return;

/* A drain that has to be made, for an outlet that no return of the engine does for. */
typedef struct ow_plan_made {
    const ow_machine *turbo;
    const ow_port *outlet;
    double bore_m;           /* least inside, all the way */
    int hose_mm;             /* of the hose that carries it */
    const char *hose;        /* its class */
    const char *fitting;     /* of the catalogue, onto the turbo's outlet; NULL: it is made */
    const char *pattern;     /* then, the bolts of the plate in words; NULL if the catalogue does not say */
    const char *thread;      /* to tap in the engine: the END; NULL if no fitting of the shop goes into one */
    const char *tapped_with; /* the catalogue's fitting that screws in there */
    ow_tapping tapping;      /* with thread */
    const char *welded_with; /* a bung or stub that is welded on instead, and what it wants; or NULL */
    double least_slope_rad;  /* at the hose's bore; OW_NOT_SAID if the flow is not reckoned */
    double lowest_m;         /* the hole's lower edge stands no further under the outlet; OW_NOT_SAID */
    size_t step_count;
    const char *const *steps; /* what to make and where not to, one sentence each, in order */
} ow_plan_made;

#define OW_PLAN_RETURNS (OW_JOB_TURBOS * OW_JOB_RETURNS)
typedef struct ow_plan_drain {
    size_t return_count;
    ow_plan_return *returns; /* outlet by outlet; of each, ranked: those that do, without a warning, with the
                                least work, fewest parts */
    size_t made_count;
    ow_plan_made *made; /* one for each outlet that no return does for */
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
    bool teed;                 /* into the heater's hoses */
    const ow_port *from, *to;  /* the engine's: where it begins and ends; NULL where teed */
    size_t leg_count;
    ow_plan_leg legs[OW_PLAN_LEGS]; /* in order of flow */
    bool reckoned;                  /* what follows holds */
    ow_loop loop;
    double height_m; /* of the high port over the low one, at the clocking angle */
    ow_siphon siphon;
    double most_heat_w; /* that it carries off after shutdown with the margin to boiling kept; 0: none */
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
/*
 * The feed of a layout that is there, reckoned and judged as a plan's: nothing is searched for, drain,
 * coolant, bill and notes stay empty. Of the job its oil, states, rise and limit of pressure are taken, if
 * said; engine and turbos are the layout's, and where those are bare ENDs, a medium turbo with a plain
 * bearing is assumed. OW_NONE if the layout is of another circuit; OW_MEMORY. The layout must outlive the
 * plan, the job need not.
 */
ow_status ow_plan_reckon_feed(const ow_context *context, const ow_job *job, const ow_layout *layout,
                              ow_plan *plan);
void ow_plan_done(ow_plan *plan);

#endif
