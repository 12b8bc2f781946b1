/* SPDX-License-Identifier: MIT */
/*
 * JSON through cJSON. Every call takes a builder that remembers a failed allocation, so that a report checks
 * once, at the end. cJSON's own allocations go through the C library: it has one global hook, which a library
 * may not touch.
 */
#ifndef OW_REPORT_JSON_H
#define OW_REPORT_JSON_H

#include <cjson/cJSON.h>
#include <stdint.h>

#include "oilway/text.h"

typedef struct ow_json {
    cJSON *root;
    bool failed;
} ow_json;

/* A builder whose root is an object (or a list). */
ow_json ow_json_new(bool is_list);
/* Members: `parent` an object with `name`, or a list with name NULL. NULL once anything failed. */
cJSON *ow_json_object(ow_json *json, cJSON *parent, const char *name);
cJSON *ow_json_list(ow_json *json, cJSON *parent, const char *name);
void ow_json_words(ow_json *json, cJSON *parent, const char *name, const char *words); /* NULL: null */
/* The words of a text, which is freed; the builder has failed if the text has. */
void ow_json_text(ow_json *json, cJSON *parent, const char *name, ow_text *text);
void ow_json_number(ow_json *json, cJSON *parent, const char *name, double number); /* not finite: null */
void ow_json_bool(ow_json *json, cJSON *parent, const char *name, bool value);
void ow_json_null(ow_json *json, cJSON *parent, const char *name);
/* SI value times factor, rounded to `decimals` decimals so that 0.0044 m prints as 4.4; negative = not said:
 * null. */
void ow_json_scaled(ow_json *json, cJSON *parent, const char *name, double value, double factor,
                    int decimals);
/* The same where negative values are values. */
void ow_json_rounded(ow_json *json, cJSON *parent, const char *name, double value, int decimals);
void ow_json_cents(ow_json *json, cJSON *parent, const char *name, bool known, int64_t cents);

/* Appends the JSON and a newline, and frees the builder. OW_MEMORY if anything failed. */
ow_status ow_json_done(ow_json *json, ow_text *text);

#endif
