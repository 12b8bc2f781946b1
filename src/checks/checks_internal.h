/* SPDX-License-Identifier: MIT */
/* Shared by the files that re-walk a layout. Nothing here is used by, or uses, the net and the search. */
#ifndef OW_CHECKS_INTERNAL_H
#define OW_CHECKS_INTERNAL_H

#include "base/memory.h"
#include "oilway/check.h"

typedef struct ow_checking {
    const ow_context *context;
    const ow_layout *layout;
    ow_limits limits;      /* what it is held to */
    ow_findings *findings; /* what is wrong */
    ow_findings *passed;   /* what was looked at and is right; NULL = not wanted */
    ow_status status;      /* the first failure; later steps do nothing */
} ow_checking;

/* The name of a node, or of one of its ends ("tee-2.branch"), in a buffer of the caller's. */
#define OW_WHERE_SIZE 160
const char *ow_checking_node(const ow_checking *checking, size_t node, char *buffer);
const char *ow_checking_end(const ow_checking *checking, size_t node, size_t end, char *buffer);

/* A finding of the rule's own severity, or a pass; the status is kept in checking. */
void ow_checking_find(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
void ow_checking_warn(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
void ow_checking_pass(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
    __attribute__((format(printf, 4, 5)));

/* The node of a given port in the tree, or OW_NODE_NONE. */
size_t ow_checking_port_node(const ow_checking *checking, size_t given);
/* The end of the parent through which a path that ends at `node` leaves its parent is nodes[node].parent_end.
 */

void ow_check_tree(ow_checking *checking);   /* open ends, ports served once */
void ow_check_joints(ow_checking *checking); /* every joint, and what somebody sealed it with */
void ow_check_parts(ow_checking *checking);  /* rating, temperature, fluid, tees: every part */
void ow_check_paths(ow_checking *checking);  /* bore, hoses, restrictors on the path to each port */
void ow_check_pieces(ow_checking *checking); /* closing joints; machines rigidly joined */

#endif
