/* SPDX-License-Identifier: MIT */
/* One request as the routes see it, and the answer that they write; knows nothing of HTTP but its numbers. */
#ifndef OW_COUNTER_CALL_H
#define OW_COUNTER_CALL_H

#include "counter/faults.h"
#include "counter/shop.h"

#define COUNTER_PARAMETERS_MAX 96
#define COUNTER_BODY_MAX ((size_t)1024 * 1024)

typedef struct counter_parameter {
    const char *name, *value;
} counter_parameter;

typedef struct counter_call {
    ow_context context; /* reports into faults */
    counter_faults faults;
    counter_keeper *keeper;
    const counter_shop *shop;
    counter_parameter parameters[COUNTER_PARAMETERS_MAX];
    size_t parameter_count;
    const char *body;
    size_t body_length;
    /* The answer. */
    ow_text text;
    const char *type; /* application/json unless a route says otherwise */
    char policy[256]; /* Content-Security-Policy of its own, or "" */
} counter_call;

typedef struct counter_route {
    const char *method; /* "GET" or "POST" */
    const char *path;
    const char *takes; /* parameters, blank separated; a star behind one that may come several times */
    ow_status (*answer)(counter_call *call);
} counter_route;

/* The route, or NULL; *known tells whether the path is one, whatever the method. */
const counter_route *counter_route_find(const char *method, const char *path, bool *known);

/* Begins a call without parameters. The call stays where it is: its context points into it. */
void counter_call_begin(counter_call *call, counter_keeper *keeper, const counter_shop *shop);
/* Frees what was answered. */
void counter_call_done(counter_call *call);
/* Runs the route; returns the HTTP status. Whatever happens, call->text holds an answer, but for want of
 * memory: then it is empty. */
unsigned counter_call_answer(counter_call *call, const counter_route *route);
/* Writes {"error": …, "faults": […]}. */
void counter_call_refuse(counter_call *call, const char *error);

/* Parameters. One that was given without a value counts as not given. */
bool counter_is_blank(const char *value);
const char *counter_value(const counter_call *call, const char *name); /* NULL if not given */
size_t counter_values(const counter_call *call, const char *name, const char **values, size_t most);
/* A flag is given as "yes" (or "no"); anything else is a fault. */
bool counter_flag(counter_call *call, const char *name);
/* A whole number from 1 to most; a fault otherwise. Not given: *count stays. */
void counter_count(counter_call *call, const char *name, size_t most, size_t *count);
/* Reports a fault of a parameter. */
void counter_fault(counter_call *call, const char *name, const char *value, const char *message,
                   const char *expected);

#endif
