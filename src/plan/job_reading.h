/* SPDX-License-Identifier: MIT */
/* One job while it is being read. */
#ifndef OW_PLAN_JOB_READING_H
#define OW_PLAN_JOB_READING_H

#include "oilway/job.h"
#include "yaml/yaml.h"

typedef struct ow_job_reading {
    const ow_context *context;
    const ow_catalog *catalog;
    const ow_source *source;
    ow_arena *arena; /* the job's */
    ow_job *job;
    ow_status status; /* the worst so far; OW_INPUT goes on, anything else stops */
} ow_job_reading;

void ow_job_note(ow_job_reading *reading, ow_status status);
void ow_job_fault(ow_job_reading *reading, const ow_yaml *node, const char *expected, const char *mend,
                  const char *format, ...) __attribute__((format(printf, 5, 6)));
/* The same with a list of what may stand there, written for this: it is freed. */
void ow_job_fault_among(ow_job_reading *reading, const ow_yaml *node, ow_text *expected, const char *format,
                        ...) __attribute__((format(printf, 4, 5)));
/* A scalar's words, copied; NULL after a report. */
const char *ow_job_words(ow_job_reading *reading, const ow_yaml *node, const char *expected);
/* Every quantity of a block, and a report of every key that the block has not. */
void ow_job_block(ow_job_reading *reading, const char *block, const ow_yaml *map, const char *const *others);

void ow_job_read_feed(ow_job_reading *reading, const ow_yaml *map);
void ow_job_read_drain(ow_job_reading *reading, const ow_yaml *map);
void ow_job_read_coolant(ow_job_reading *reading, const ow_yaml *map);
void ow_job_read_states(ow_job_reading *reading, const ow_yaml *list);
void ow_job_read_oil(ow_job_reading *reading, const ow_yaml *node);

#endif
