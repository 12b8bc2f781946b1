/* SPDX-License-Identifier: MIT */
/* The quantities of a job, as data: block, key, dimension, range, where they go. */
#ifndef OW_PLAN_JOB_FIELDS_H
#define OW_PLAN_JOB_FIELDS_H

#include "oilway/job.h"
#include "oilway/quantity.h"

typedef struct ow_job_field {
    const char *block; /* "feed", … */
    const char *key;
    ow_dimension dimension;
    double low, high; /* SI */
    size_t offset;    /* of an ow_said in ow_job */
} ow_job_field;

extern const ow_job_field ow_job_fields[];
extern const size_t ow_job_field_count;

/* Keys of each block that are no plain quantities, NULL-ended. */
extern const char *const ow_job_keys[];
extern const char *const ow_job_feed_keys[];
extern const char *const ow_job_drain_keys[];
extern const char *const ow_job_coolant_keys[];

#endif
