/* SPDX-License-Identifier: MIT */
#include "counter/call.h"

#include <stdlib.h>
#include <string.h>

void counter_call_begin(counter_call *call, counter_keeper *keeper, const counter_shop *shop)
{
    memset(call, 0, sizeof *call);
    call->context = (ow_context)OW_CONTEXT_INIT;
    call->context.report = counter_faults_add;
    call->context.report_user = &call->faults;
    call->keeper = keeper;
    call->shop = shop;
    call->text = ow_text_new(&call->context);
    call->type = "application/json; charset=utf-8";
}

void counter_call_done(counter_call *call)
{
    ow_text_done(&call->text);
    counter_faults_done(&call->faults);
}

void counter_call_refuse(counter_call *call, const char *error)
{
    cJSON *answer = cJSON_CreateObject();
    cJSON_AddStringToObject(answer, "error", error);
    if (call->faults.list != NULL && cJSON_AddItemToObject(answer, "faults", call->faults.list))
        call->faults.list = NULL;
    else
        cJSON_AddArrayToObject(answer, "faults");
    char *words = cJSON_Print(answer);
    cJSON_Delete(answer);
    ow_text_done(&call->text);
    call->text = ow_text_new(&call->context);
    call->type = "application/json; charset=utf-8";
    call->policy[0] = '\0';
    if (words != NULL)
        ow_text_format(&call->text, "%s\n", words);
    cJSON_free(words);
}

/* Whether `name` is one of the words of `takes`; *repeats if a star stands behind it. */
static bool is_taken(const char *takes, const char *name, bool *repeats)
{
    size_t length = strlen(name);
    for (const char *at = takes; *at != '\0';) {
        size_t item = strcspn(at, " ");
        *repeats = item > 0 && at[item - 1] == '*';
        if (item - *repeats == length && strncmp(at, name, length) == 0)
            return true;
        at += item;
        at += strspn(at, " ");
    }
    return false;
}

/* Whether every parameter is known to the route, and comes but once unless it may repeat. */
static bool check_parameters(counter_call *call, const counter_route *route)
{
    for (size_t index = 0; index < call->parameter_count; index++) {
        const counter_parameter *given = &call->parameters[index];
        bool repeats = false;
        if (!is_taken(route->takes, given->name, &repeats))
            counter_fault(call, given->name, given->value, "there is no such parameter here", route->takes);
        for (size_t before = 0; before < index && !repeats; before++) {
            if (strcmp(call->parameters[before].name, given->name) == 0)
                counter_fault(call, given->name, given->value, "this is given twice", NULL);
        }
    }
    return call->faults.errors == 0;
}

unsigned counter_call_answer(counter_call *call, const counter_route *route)
{
    ow_status status = check_parameters(call, route) ? route->answer(call) : OW_INPUT;
    if (status == OW_OK)
        status = ow_text_status(&call->text);
    if (status == OW_OK)
        return 200;
    counter_call_refuse(call, ow_status_text(status));
    switch (status) {
    case OW_INPUT:
    case OW_RANGE:
    case OW_LIMIT:
        return 400;
    case OW_NONE:
        return 404;
    case OW_MEMORY:
    case OW_STOPPED:
        return 503;
    case OW_OK:
    case OW_IO:
    case OW_FAULT:
    case OW_STATUS_COUNT:
        break;
    }
    return 500;
}

const char *counter_value(const counter_call *call, const char *name)
{
    const char *value = NULL;
    return counter_values(call, name, &value, 1) > 0 ? value : NULL;
}

bool counter_is_blank(const char *value)
{
    return value[strspn(value, " \t")] == '\0';
}

size_t counter_values(const counter_call *call, const char *name, const char **values, size_t most)
{
    size_t count = 0;
    for (size_t index = 0; index < call->parameter_count; index++) {
        const counter_parameter *given = &call->parameters[index];
        if (strcmp(given->name, name) != 0 || counter_is_blank(given->value))
            continue;
        if (count < most)
            values[count] = given->value;
        count++;
    }
    return count;
}

bool counter_flag(counter_call *call, const char *name)
{
    const char *value = counter_value(call, name);
    if (value == NULL || strcmp(value, "no") == 0)
        return false;
    if (strcmp(value, "yes") != 0)
        counter_fault(call, name, value, "not a word known here", "yes or no");
    return true;
}

void counter_count(counter_call *call, const char *name, size_t most, size_t *count)
{
    const char *value = counter_value(call, name);
    if (value == NULL)
        return;
    char *end = NULL;
    unsigned long number = strtoul(value, &end, 10);
    if (value[0] < '0' || value[0] > '9' || *end != '\0' || number < 1 || number > most) {
        ow_context quiet = OW_CONTEXT_INIT;
        ow_text expected = ow_text_new(&quiet);
        ow_text_format(&expected, "a whole number from 1 to %zu", most);
        counter_fault(call, name, value, "this is out of range", ow_text_words(&expected));
        ow_text_done(&expected);
        return;
    }
    *count = number;
}

static size_t characters(const char *words)
{
    size_t count = 0;
    for (; *words != '\0'; words++)
        count += ((unsigned char)*words & 0xC0) != 0x80;
    return count;
}

void counter_fault(counter_call *call, const char *name, const char *value, const char *message,
                   const char *expected)
{
    ow_diagnostic told = {.severity = OW_ERROR,
                          .status = OW_INPUT,
                          .file = name,
                          .line = 1,
                          .column = 1,
                          .line_text = value,
                          .line_length = strlen(value),
                          .mark_width = value[0] != '\0' ? characters(value) : 1,
                          .message = message,
                          .expected = expected};
    counter_faults_add(&call->faults, &told);
}
