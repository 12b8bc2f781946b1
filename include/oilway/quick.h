/* SPDX-License-Identifier: MIT */
/*
 * Quick physics at the counter: words as a person gives them, read into a request, reckoned into an answer.
 * Needs no catalogue. report_physics.h prints the answers.
 */
#ifndef OILWAY_QUICK_H
#define OILWAY_QUICK_H

#include "oilway/drain.h"
#include "oilway/line.h"

/* An oil as it is given in words; NULL = not given. Viscosities in mm2/s, density in kg/m3; the unit may stay
 * away. */
typedef struct ow_oil_words {
    const char *grade; /* "15W-40"; or the next two */
    const char *kv40, *kv100, *rho15;
    const char *at; /* temperature, "100 C" */
} ow_oil_words;

typedef struct ow_oil_request {
    ow_oil oil;
    const char *grade; /* lent from the words; NULL if none was given */
    double temperature_c;
    ow_assumptions assumptions;
} ow_oil_request;

typedef struct ow_oil_answer {
    double viscosity_mm2s;
    ow_liquid liquid;
    ow_findings findings;
} ow_oil_answer;

/*
 * Reads the words; all faults are reported, ranges with them. OW_INPUT, OW_MEMORY: *request untouched. The
 * words must outlive the request, which is freed with ow_oil_request_done.
 */
ow_status ow_oil_request_read(const ow_context *context, const ow_oil_words *words, ow_oil_request *request);
void ow_oil_request_done(ow_oil_request *request);
/* OW_INPUT, reported: the oil does not flow at that temperature. OW_MEMORY. */
ow_status ow_oil_reckon(const ow_context *context, const ow_oil_request *request, ow_oil_answer *answer);
void ow_oil_answer_done(ow_oil_answer *answer);

typedef struct ow_drain_words {
    const char *bore, *slope, *flow; /* "15.9 mm", "20 deg", "2 L/min" of oil */
    const char *aeration;            /* "2"; may be NULL */
    ow_oil_words oil;
} ow_drain_words;

typedef struct ow_drain_request {
    double bore_m, slope_rad, flow_m3s; /* flow of oil */
    double aeration;
    bool aeration_assumed;
    ow_oil_request oil;
} ow_drain_request;

typedef struct ow_drain_band {  /* over oil 10 C and bore 0.2 mm either way */
    double fill_low, fill_high; /* 1 = flooded */
    double pool_low_m, pool_high_m;
} ow_drain_band;

typedef struct ow_drain_answer {
    ow_liquid liquid;
    double viscosity_mm2s;
    ow_drain_flow flow;
    bool least_bore_known;
    double least_bore_m;      /* for half full at that slope */
    double least_pool_bore_m; /* for the pool's limit */
    bool least_slope_known;   /* false: even plumb is too little */
    double least_slope_rad;
    double pool_weir_m, pool_orifice_m;
    ow_drain_band band;
    bool ok; /* no finding is an error */
    ow_findings findings;
} ow_drain_answer;

/* As for the oil. */
ow_status ow_drain_request_read(const ow_context *context, const ow_drain_words *words,
                                ow_drain_request *request);
void ow_drain_request_done(ow_drain_request *request);
ow_status ow_drain_reckon(const ow_context *context, const ow_drain_request *request,
                          ow_drain_answer *answer);
void ow_drain_answer_done(ow_drain_answer *answer);
/* Fill and pool over the corners of what is unsure. OW_RANGE. */
ow_status ow_drain_band_find(const ow_drain_request *request, ow_drain_band *band);

typedef struct ow_line_answer {
    ow_feed_answer feed;
    ow_feed_band *bands; /* one for each state */
    bool ok;             /* no finding is an error */
    ow_findings findings;
} ow_line_answer;

/* OW_INPUT, reported: the line cannot be reckoned. OW_MEMORY. The line must outlive the answer. */
ow_status ow_line_reckon(const ow_context *context, const ow_line *line, ow_line_answer *answer);
void ow_line_answer_done(ow_line_answer *answer);

#define OW_CURVE_POINTS 10 /* 0, 5, … 45 degrees */
typedef struct ow_curve_point {
    double angle_rad;
    ow_siphon siphon;
} ow_curve_point;

typedef struct ow_loop_answer {
    ow_siphon siphon;
    ow_curve_point curve[OW_CURVE_POINTS];
    ow_forced forced; /* at OW_COOLANT_FORCED_M3S, engine running */
    bool ok;          /* it goes round and does not boil */
    ow_findings findings;
} ow_loop_answer;

ow_status ow_loop_reckon(const ow_context *context, const ow_loop_text *loop, ow_loop_answer *answer);
void ow_loop_answer_done(ow_loop_answer *answer);
/* What is to be said of a loop: boiling, margin, angle, rise. OW_OK, OW_MEMORY. */
ow_status ow_loop_judge(const ow_loop *loop, const ow_siphon *siphon, ow_findings *findings);

#endif
