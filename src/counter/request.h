/* SPDX-License-Identifier: MIT */
/* One HTTP request while it comes in. */
#ifndef OW_COUNTER_REQUEST_H
#define OW_COUNTER_REQUEST_H

#include <microhttpd.h>

#include "counter/call.h"
#include "counter/gate.h"

typedef struct counter_request {
    char *body; /* NUL-terminated behind length */
    size_t length, capacity;
    bool too_large;
} counter_request;

/* NULL when out of memory. */
counter_request *counter_request_new(void);
void counter_request_free(counter_request *request);
/* Takes in a piece of the body; what is more than COUNTER_BODY_MAX is dropped and marked. False when out of
 * memory. */
bool counter_request_take(counter_request *request, const char *bytes, size_t length);

/* What its headers say of the caller. */
counter_caller counter_request_caller(struct MHD_Connection *connection, const char *method, const char *url);
/* Whether its headers announce a body so large that it is not even read to be refused. */
bool counter_request_announces_too_much(struct MHD_Connection *connection);
/* Takes the parameters over into the call; lent by the connection. False after reporting one that is no text.
 */
bool counter_request_parameters(struct MHD_Connection *connection, counter_call *call);

#endif
