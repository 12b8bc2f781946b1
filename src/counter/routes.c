/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "counter/api.h"

#define ASK                                                                                                  \
    "from to* keep* best circuit bearing bore flexible closing restrictor orifice rating temperature fluid " \
    "hose tolerate remote-switch without* explain"

static const counter_route routes[] = {
    {"GET", "/api/stack", ASK, counter_api_stack},
    {"GET", "/api/sketch", ASK, counter_api_sketch},
    {"GET", "/sheet", ASK " show reading layout job bare", counter_sheet},
    {"POST", "/sheet", "bare", counter_sheet_posted},
    {"GET", "/sheet.css", "", counter_sheet_style},
    {"POST", "/api/check", "", counter_api_check},
    {"POST", "/api/bill", "", counter_api_bill},
    {"POST", "/api/plan", "", counter_api_plan},
    {"POST", "/api/flow", "oil", counter_api_flow},
    {"POST", "/api/draw", "format bare of number oil", counter_api_draw},
    {"POST", "/api/swap", "place", counter_api_swap},
    {"GET", "/api/caliper", "diameter tpi pitch accuracy taper male female", counter_api_caliper},
    {"GET", "/api/thread", "name class tap", counter_api_thread},
    {"GET", "/api/mates", "end* card material bolt engaged", counter_api_mates},
    {"GET", "/api/oil", "oil kv40 kv100 rho15 at", counter_api_oil},
    {"GET", "/api/drain", "bore slope flow aeration oil kv40 kv100 rho15 at", counter_api_drain},
    {"POST", "/api/feed", "", counter_api_feed},
    {"POST", "/api/siphon", "", counter_api_siphon},
    {"GET", "/api/read", "words for", counter_api_read},
    {"GET", "/api/shop", "", counter_api_shop},
    {"GET", "/api/catalog", "id only", counter_api_catalog},
};

const counter_route *counter_route_find(const char *method, const char *path, bool *known)
{
    *known = false;
    for (size_t index = 0; index < sizeof routes / sizeof routes[0]; index++) {
        if (strcmp(routes[index].path, path) != 0)
            continue;
        *known = true;
        if (strcmp(routes[index].method, method) == 0)
            return &routes[index];
    }
    return NULL;
}
