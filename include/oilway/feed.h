/* SPDX-License-Identifier: MIT */
/*
 * The pressurised feed: a line, or a tree of lines, from the gallery to the bearing, reckoned in each of its
 * states. Built by hand, by the reader of a LINE, or from a layout. SI throughout. Formulas, sources and
 * marks: docs/physics.md.
 */
#ifndef OILWAY_FEED_H
#define OILWAY_FEED_H

#include "oilway/assumption.h"
#include "oilway/finding.h"
#include "oilway/oil.h"

/* Limits that a feed is held to, all common practice; gauge. */
#define OW_FEED_JOURNAL_HIGH_PA 450000.0 /* about 65 psi */
/* 2.8 to 3.1 bar (40 to 45 psi), full speed hot, behind the restrictor; pressures are printed to a hundredth
 * of a bar, and one that prints as the limit keeps it. */
#define OW_FEED_BALL_LOW_PA 279500.0
#define OW_FEED_BALL_HIGH_PA 310500.0
#define OW_FEED_IDLE_LOW_PA 70000.0 /* about 10 psi, hot idle */
#define OW_FEED_ROUGHNESS_M 1.5e-6  /* drawn tube and PTFE; without effect where laminar */
#define OW_RESTRICTOR_BORE_LOW_M 0.0003
#define OW_RESTRICTOR_BORE_HIGH_M 0.004
#define OW_RESTRICTOR_CLOGS_M 0.0008 /* smaller holes clog (common practice) */
#define OW_RESTRICTOR_DRILL_STEP_M 0.0001

/* ---- figures for where nobody gives any ---------------------------------------------------- */

typedef enum ow_load_kind {
    OW_LOAD_JOURNAL_SMALL,
    OW_LOAD_JOURNAL_MEDIUM,
    OW_LOAD_JOURNAL_LARGE,
    OW_LOAD_BALL,
    OW_LOAD_KIND_COUNT
} ow_load_kind;
typedef struct ow_typical_load {
    ow_load_kind kind;
    const char *title; /* "journal bearing, medium turbo" */
    ow_load load;
    ow_mark mark;
    const char *source;
} ow_typical_load;
const ow_typical_load *ow_typical_load_at(ow_load_kind kind); /* NULL past the last */

typedef struct ow_feed_state {
    const char *name; /* "cold", "hot idle", "hot rev"; lent */
    double oil_c;
    double source_pa; /* gallery, gauge */
    bool assumed;
} ow_feed_state;
/* The states assumed when none are given: cold, hot idle, hot rev. */
#define OW_FEED_STATES_TYPICAL 3
const ow_feed_state *ow_typical_state_at(size_t index); /* NULL past the last */

/* ---- a feed -------------------------------------------------------------------------------- */

#define OW_FEED_STATES_MAX 16

typedef struct ow_feed_restrictor {
    bool wanted;
    ow_piece *piece;  /* the piece of the tree whose bore is to be found; written to */
    double target_pa; /* at the first load behind it */
    size_t state;     /* index of the state it must hold in */
} ow_feed_restrictor;

/* All pointers are lent, for as long as an answer lives. */
typedef struct ow_feed {
    const char *title;
    ow_oil oil;
    double roughness_m;
    size_t state_count;
    const ow_feed_state *states;
    ow_branch trunk;
    ow_feed_restrictor restrictor;
} ow_feed;

/* What one load gets, or what a dead branch (a switch) sees. */
typedef struct ow_feed_load {
    const char *name;
    double flow_m3s;
    double pressure_pa;
    bool dead;         /* a branch without a load */
    bool ball_bearing; /* as the branch */
} ow_feed_load;

typedef struct ow_feed_result { /* in one state */
    const ow_feed_state *state;
    ow_liquid liquid;
    double viscosity_mm2s;
    double flow_m3s; /* from the source */
    double turbo_pa; /* at the load; the lowest where there are several */
    double loss_pa;  /* source less turbo_pa: flow and rise */
    double rise_pa;  /* of that, to the rise of the trunk */
    size_t load_count;
    ow_feed_load *loads;
    size_t loss_count;
    ow_piece_loss *losses;      /* trunk first, then its branches in order; the rises among them */
    const char **loss_branches; /* name of each loss's branch, "" for the trunk */
    size_t costliest;           /* index among losses, rises left out; loss_count if there is none */
    double first_oil_s;         /* no later than this after a dry start: volume over line-only flow */
    bool first_oil_known;
} ow_feed_result;

typedef struct ow_restrictor_offer { /* a drill size, and what it gives */
    double bore_m;
    ow_feed_result *results; /* one for each state */
} ow_restrictor_offer;

typedef struct ow_restrictor_answer {
    bool wanted;
    bool needed;     /* false: the pressure is not above the target without one */
    bool possible;   /* false: even the smallest hole gives more than the target */
    double bore_m;   /* exact; 0 if none is needed or possible */
    double flow_m3s; /* through the load in the state asked for */
    size_t offer_count;
    ow_restrictor_offer offers[2]; /* the drill sizes on either side */
} ow_restrictor_answer;

typedef struct ow_feed_answer {
    size_t state_count;
    ow_feed_result *results;
    ow_restrictor_answer restrictor;
    void *storage; /* what it owns; freed by ow_feed_answer_free */
} ow_feed_answer;

/* OW_RANGE if anything lies outside what can be worked in: oil that does not flow in a state included. */
ow_status ow_feed_check(const ow_feed *feed);
/*
 * Solves every state, and the restrictor first if one is wanted; its bore is left in the piece. OW_RANGE,
 * OW_MEMORY: *answer untouched. The caller frees it with ow_feed_answer_free; the feed must outlive it.
 */
ow_status ow_feed_solve(const ow_context *context, const ow_feed *feed, ow_feed_answer *answer);
void ow_feed_answer_free(ow_feed_answer *answer);

/* What is to be said of an answer: pressures against the limits above, restrictor, unsure ranges. OW_OK,
 * OW_MEMORY. */
ow_status ow_feed_judge(const ow_feed *feed, const ow_feed_answer *answer, ow_findings *findings);

/* ---- how sure ------------------------------------------------------------------------------ */

#define OW_UNSURE_TEMPERATURE_K 10.0 /* oil temperature, either way (assumption) */
#define OW_UNSURE_BORE_M 0.0002      /* bores of pipes and fittings, not of drilled holes (assumption) */

typedef struct ow_feed_band { /* least and most over the corners of the two */
    double turbo_low_pa, turbo_high_pa;
    double flow_low_m3s, flow_high_m3s;
} ow_feed_band;
/* OW_RANGE, OW_MEMORY. Temperatures are kept within the oil's range. */
ow_status ow_feed_state_band(const ow_context *context, const ow_feed *feed, size_t state,
                             ow_feed_band *band);

#endif
