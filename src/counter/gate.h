/* SPDX-License-Identifier: MIT */
/* Who may ask: under which names the page is served, and from which pages a browser may send a request. */
#ifndef OW_COUNTER_GATE_H
#define OW_COUNTER_GATE_H

#include <stdbool.h>
#include <stddef.h>

typedef struct counter_gate {
    bool loopback; /* only this machine can reach it */
    unsigned port;
    const char *const *hosts; /* further names, lent */
    size_t host_count;
} counter_gate;

/* The headers that a browser sets and a page cannot; NULL where absent. */
typedef struct counter_caller {
    const char *host;
    const char *origin;
    const char *fetch_site; /* Sec-Fetch-Site */
    const char *fetch_mode; /* Sec-Fetch-Mode */
    bool whole_page;        /* GET of the page itself: a link from elsewhere may lead there */
} counter_caller;

/*
 * NULL if the caller may come in, else why not. A host name that was rebound to this machine's address is not
 * among ours; an address written in numbers cannot be rebound. A page of another site is known by its Origin,
 * or by Sec-Fetch-Site.
 */
const char *counter_gate_refuses(const counter_gate *gate, const counter_caller *caller);

#endif
