/* SPDX-License-Identifier: MIT */
/* The counter: a local web page over the library, and the JSON behind it. docs/counter.md tells it to users.
 */
#ifndef OW_COUNTER_H
#define OW_COUNTER_H

#include "oilway/oilway.h"

typedef struct counter_options {
    ow_catalog_options catalog;
    const char *address;      /* numeric, to listen on; NULL: 127.0.0.1, which other machines cannot reach */
    unsigned port;            /* 0: any that is free */
    const char *const *hosts; /* further names that the page may be asked for under; only with an address */
    size_t host_count;
} counter_options;

/* Says a line to the person at the terminal: the page's address, or what went wrong. */
typedef void (*counter_say)(void *user, bool wrong, const char *words);

/*
 * Opens the catalogue and serves until SIGTERM, SIGINT or SIGHUP. Faults of the catalogue are reported
 * through the context, at the start and whenever it changes. OW_INPUT: the catalogue or an option is wrong;
 * OW_IO: the address cannot be listened on; OW_MEMORY. Blocks those signals and SIGPIPE in the whole process
 * for as long as it runs.
 */
ow_status counter_serve(const ow_context *context, const counter_options *options, counter_say say,
                        void *user);

#endif
