/* SPDX-License-Identifier: MIT */
/*
 * The catalogue that is served. A shop is one catalogue with its net, immutable and counted: a request holds
 * the shop that it began with until it is answered, while the keeper may already show a newer one to others.
 * A catalogue with faults never takes the place of a good one.
 */
#ifndef OW_COUNTER_SHOP_H
#define OW_COUNTER_SHOP_H

#include <pthread.h>
#include <stdint.h>

#include "oilway/oilway.h"

typedef struct counter_shop {
    ow_context context;
    ow_catalog *catalog;
    ow_net *net;
    unsigned long generation; /* 1 for the first, one more with every change */
    size_t holders;           /* under the keeper's lock */
} counter_shop;

typedef struct counter_keeper {
    const ow_context *context; /* reports faults of the catalogue */
    ow_catalog_options options;
    pthread_mutex_t lock;
    counter_shop *shop;
    char *faults;         /* JSON list of what is wrong with the catalogue as it stands now; NULL: nothing */
    uint64_t seen;        /* signature of the files as last looked at … */
    uint64_t loaded;      /* … and as last loaded, well or badly */
    unsigned long newest; /* generation of the last good one */
} counter_keeper;

/* Loads the catalogue. OW_INPUT and the like: there is nothing to serve, nothing to free. The options must
 * outlive the keeper. */
ow_status counter_keeper_open(counter_keeper *keeper, const ow_context *context,
                              const ow_catalog_options *options);
/* All shops must have been released. */
void counter_keeper_close(counter_keeper *keeper);

/* The newest good shop, to be given back. Never NULL. */
counter_shop *counter_shop_hold(counter_keeper *keeper);
void counter_shop_release(counter_keeper *keeper, counter_shop *shop);

typedef enum counter_change { COUNTER_SAME, COUNTER_NEW_SHOP, COUNTER_BAD_SHOP } counter_change;

/*
 * Looks whether a page was changed, came or went; called once in a while by one thread. Files that are still
 * being written are left alone: two looks in a row must agree. What cannot be loaded is remembered as faults.
 */
counter_change counter_keeper_look(counter_keeper *keeper);

/* {generation, parts, machines, fixtures, pages, kinds, stale, faults: […]} of a held shop and of the
 * catalogue as it lies there. */
ow_status counter_keeper_state(counter_keeper *keeper, const counter_shop *shop, ow_text *text);

#endif
