/* SPDX-License-Identifier: MIT */
/* A sink for diagnostics that keeps them as JSON. */
#ifndef OW_COUNTER_FAULTS_H
#define OW_COUNTER_FAULTS_H

#include <cjson/cJSON.h>

#include "oilway/context.h"
#include "oilway/text.h"

typedef struct counter_faults {
    cJSON *list;
    size_t errors;
    const ow_context *also; /* told too; may be NULL */
} counter_faults;

/* For ow_context.report; user is the faults. */
void counter_faults_add(void *user, const ow_diagnostic *diagnostic);
void counter_faults_done(counter_faults *faults);
/* The list as text, freed by cJSON_free; NULL when out of memory. */
char *counter_faults_print(const counter_faults *faults);

#endif
