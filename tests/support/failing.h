/* SPDX-License-Identifier: MIT */
/*
 * An allocator that counts, fails on demand, and notices what was leaked, freed twice or never its own.
 * Fresh memory is filled with rubbish and a block moves whenever its size changes, so that a stale pointer or
 * a byte taken for zero shows.
 */
#ifndef OW_TESTS_FAILING_H
#define OW_TESTS_FAILING_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/context.h"

typedef struct ow_failing_slot ow_failing_slot;

typedef struct ow_failing {
    size_t asked;                     /* allocations and resizings asked for, frees not counted */
    size_t failed;                    /* of these, refused */
    size_t fail_at;                   /* the n-th is refused, counted from 1; 0 = none */
    bool fail_onward;                 /* and all after it */
    size_t live;                      /* blocks not freed */
    size_t live_bytes;                /* bytes in them */
    size_t peak_bytes;                /* the most there were at once */
    size_t wrong_frees;               /* frees or resizings of what is no live block of this allocator */
    ow_failing_slot *slots;           /* live blocks by address */
    size_t slot_capacity, slots_used; /* used: live and freed */
} ow_failing;

ow_failing ow_failing_new(void);
/* Frees what was leaked. */
void ow_failing_done(ow_failing *failing);
/* A context that allocates through it; its sink is ow_test_check_diagnostic. */
ow_context ow_failing_context(ow_failing *failing);

/* A job for ow_test_fail_each: does its work through the context and frees all of it, whatever comes. */
typedef ow_status (*ow_test_job)(const ow_context *context, void *data);

/*
 * Runs the job untouched, then with its first allocation failing, its second, and so on until it is untouched
 * again; then the same with all later ones failing too. Asserts each time that a job that was touched says
 * OW_MEMORY, one that was not says what it said first, and that nothing leaks or is freed twice. Asserts that
 * the job allocates at all. Returns how many allocations it makes. Under a slow tool (OW_SLOW_TOOL) a long
 * job meets some fifty failures only.
 */
size_t ow_test_fail_each(ow_test_job job, void *data);

#endif
