/* SPDX-License-Identifier: MIT */
/* A job: the engine, the turbo (or two, or three) and what is known of feed, drain and coolant; docs/job.md.
 */
#ifndef OILWAY_JOB_H
#define OILWAY_JOB_H

#include "oilway/catalog.h"
#include "oilway/coolant.h"
#include "oilway/drain.h"
#include "oilway/layout.h"
#include "oilway/oil.h"

/* A number that may not have been said; SI, unit by its name. */
typedef struct ow_said {
    bool said;
    double value;
} ow_said;

typedef struct ow_job_state {
    const char *name; /* "cold", "hot idle", "hot rev", or the writer's own */
    ow_said oil_c;
    ow_said gallery_pa;
    ow_place place;
} ow_job_state;

typedef struct ow_job_feed {
    const char *from; /* the engine's port, or NULL: every source port is tried */
    const char *to;   /* the turbos' port, or NULL: their only feed port */
    ow_said hose_m;   /* length of the hose */
    ow_said rise_m;   /* turbo inlet above the source */
    ow_said bore_m;   /* least bore asked for */
} ow_job_feed;

#define OW_JOB_RETURNS 8
typedef struct ow_job_drain {
    size_t to_count;
    const char *to[OW_JOB_RETURNS]; /* the engine's drain ports; none: every one is tried */
    size_t point_count;
    ow_point points[OW_ROUTE_POINTS_MAX]; /* from the turbo's oil outlet, z up, the outlet itself first; none:
                                             a straight line */
    ow_said oil_level_m;                  /* of the sump's oil against the outlet: negative is below */
    ow_said crankcase_pa;
    const char *hose; /* class, or NULL */
    ow_said flow_m3s; /* of oil, if measured */
    ow_said aeration; /* froth over oil */
} ow_job_drain;

typedef struct ow_job_coolant {
    const char *from, *to;            /* the engine's ports, or NULL */
    bool has_heater, heater;          /* the loop goes through a heater */
    const ow_machine *heater_machine; /* which; NULL: one of the catalogue that fits */
    bool teed;                        /* or it is teed into the heater's hoses */
    ow_said heater_hose_m;            /* their bore */
    const char *hose;                 /* class of the loop's hoses, or NULL */
    ow_said angle_rad;                /* clocking */
    bool has_coolant;
    ow_coolant coolant;
    ow_said cap_pa;
    ow_said rise_m; /* of the hot return above the high port */
    ow_said cold_hose_m, hot_hose_m;
    ow_said heat_w;
} ow_job_coolant;

#define OW_JOB_TURBOS OW_TO_MAX
#define OW_JOB_KEEPS (OW_PORTS_MAX - 1)
#define OW_JOB_STATES 8

typedef struct ow_job {
    const char *title;
    const ow_machine *engine;
    size_t turbo_count;
    const ow_machine *turbos[OW_JOB_TURBOS];
    size_t keep_count;
    const char *keep[OW_JOB_KEEPS]; /* ids or ENDs */
    bool has_oil;
    ow_oil oil;
    const char *oil_grade;    /* as written, or NULL */
    bool oil_density_assumed; /* figures were given, without rho15 */
    size_t state_count;
    ow_job_state states[OW_JOB_STATES];
    bool has_feed, has_drain, has_coolant; /* whether the block is there */
    ow_job_feed feed;
    ow_job_drain drain;
    ow_job_coolant coolant;
    ow_said turbo_pressure_pa; /* limits: highest at the turbo */
    ow_said fill, slope_rad;   /* limits of the drain */
    const char *stock;         /* prefer: path of a stock page, relative to the job's file, or NULL */
    void *storage;
} ow_job;

/*
 * Reads a job of one document. All faults are reported with their places. OW_INPUT, OW_LIMIT, OW_MEMORY: *job
 * untouched. The caller frees it with ow_job_free; it lends from the catalogue; `text` need not outlive the
 * call.
 */
ow_status ow_job_read(const ow_context *context, const ow_catalog *catalog, const char *file,
                      const char *text, size_t length, ow_job **job);
void ow_job_free(ow_job *job);
/* Whether a text looks like a job rather than a layout: it has a key `job` at its left edge. */
bool ow_job_is(const char *text, size_t length);

#endif
