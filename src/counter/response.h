/* SPDX-License-Identifier: MIT */
/* Answers on their way out, each with the headers that keep a browser from doing anything else with it. */
#ifndef OW_COUNTER_RESPONSE_H
#define OW_COUNTER_RESPONSE_H

#include <microhttpd.h>

#include "counter/assets.h"
#include "counter/call.h"

/* What was answered, with the milliseconds that it took; negative: not said. */
enum MHD_Result counter_respond(struct MHD_Connection *connection, unsigned status, counter_call *call,
                                double milliseconds);
/* A short refusal in JSON; `allow` names the methods of a 405, else NULL. */
enum MHD_Result counter_respond_refusal(struct MHD_Connection *connection, unsigned status, const char *words,
                                        const char *allow);
/* A file of the page, or only that it has not changed. */
enum MHD_Result counter_respond_asset(struct MHD_Connection *connection, const counter_asset *asset);

#endif
