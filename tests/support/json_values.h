/* SPDX-License-Identifier: MIT */
/* Reading a JSON answer in a test: what is missing or of another kind fails it. */
#ifndef OW_TESTS_JSON_VALUES_H
#define OW_TESTS_JSON_VALUES_H

#include <cjson/cJSON.h>
#include <string.h>

#include "oilway/text.h"
#include "support/near.h"

static inline double number(const cJSON *object, const char *name)
{
    const cJSON *item = cJSON_GetObjectItemCaseSensitive(object, name);
    if (!cJSON_IsNumber(item))
        fail_msg("no number %s", name);
    return item->valuedouble;
}

static inline bool truth(const cJSON *object, const char *name)
{
    const cJSON *item = cJSON_GetObjectItemCaseSensitive(object, name);
    if (!cJSON_IsBool(item))
        fail_msg("no truth %s", name);
    return cJSON_IsTrue(item);
}

static inline const cJSON *list(const cJSON *object, const char *name)
{
    const cJSON *item = cJSON_GetObjectItemCaseSensitive(object, name);
    if (!cJSON_IsArray(item))
        fail_msg("no list %s", name);
    return item;
}

/* Takes the text, which is freed; the caller deletes the JSON. */
static inline cJSON *parsed(ow_text *text)
{
    assert_int_equal(ow_text_status(text), OW_OK);
    cJSON *json = cJSON_Parse(ow_text_words(text));
    assert_non_null(json);
    ow_text_done(text);
    return json;
}

/* The finding of a rule, or NULL. */
static inline const cJSON *finding(const cJSON *json, const char *rule)
{
    const cJSON *item;
    cJSON_ArrayForEach(item, list(json, "findings"))
    {
        if (strcmp(cJSON_GetObjectItemCaseSensitive(item, "rule")->valuestring, rule) == 0)
            return item;
    }
    return NULL;
}

/* Its severity, "" if there is none. */
static inline const char *severity(const cJSON *json, const char *rule)
{
    const cJSON *found = finding(json, rule);
    return found != NULL ? cJSON_GetObjectItemCaseSensitive(found, "severity")->valuestring : "";
}

#endif
