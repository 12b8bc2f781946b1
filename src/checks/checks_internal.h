/* SPDX-License-Identifier: MIT */
/* Shared by the files that re-walk a layout. Nothing here is used by, or uses, the net and the search. */
#ifndef OW_CHECKS_INTERNAL_H
#define OW_CHECKS_INTERNAL_H

#include "base/memory.h"
#include "oilway/check.h"
#include "oilway/joint.h"

typedef struct ow_checking {
    const ow_context *context;
    const ow_catalog *catalog; /* where mends are looked for; NULL = nowhere */
    const ow_layout *layout;
    ow_limits limits;      /* what it is held to */
    bool rating_assumed;   /* the pressure in limits is an assumption of the circuit */
    ow_findings *findings; /* what is wrong */
    size_t first;          /* of them that is this layout's */
    ow_findings *passed;   /* what was looked at and is right; NULL = not wanted */
    ow_status status;      /* the first failure; later steps do nothing */
} ow_checking;

/* The name of a node, or of one of its ends ("tee-2.branch"), in a buffer of the caller's. */
#define OW_WHERE_SIZE 160
const char *ow_checking_node(const ow_checking *checking, size_t node, char *buffer);
const char *ow_checking_end(const ow_checking *checking, size_t node, size_t end, char *buffer);
/* The joint over which a node is entered, "between tf-2-4.b and he-4-s.nut". */
#define OW_JOINT_WHERE_SIZE (2 * OW_WHERE_SIZE + 16)
const char *ow_checking_joint(const ow_checking *checking, size_t node, char *buffer);
/* A given port in a sentence: its name, or the end that somebody asked for, which is only called "to". */
const char *ow_checking_port(const ow_given *given, char words[OW_END_TEXT_SIZE]);

/* What nobody measures: the search reckons in whole micrometres, pascals and thousandths of a degree, and
 * what it lets pass so is not refused here. */
#define OW_CHECKING_SLACK_M 1e-6
#define OW_CHECKING_SLACK_PA 1.0
#define OW_CHECKING_SLACK_K 1e-3

/* A finding of the rule's own severity, one milder, or a pass; the status is kept in checking. */
void ow_checking_find(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
void ow_checking_warn(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
void ow_checking_note(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
void ow_checking_pass(ow_checking *checking, const char *rule, const char *where, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
/* A finding with a mend of its own for this case. */
void ow_checking_find_mend(ow_checking *checking, const char *rule, const char *where, const char *mend,
                           const char *format, ...) __attribute__((format(printf, 5, 6)));
void ow_checking_warn_mend(ow_checking *checking, const char *rule, const char *where, const char *mend,
                           const char *format, ...) __attribute__((format(printf, 5, 6)));
/* Whether that rule has been raised at that place (NULL: at any) in this layout: one cause is told once. */
bool ow_checking_has(const ow_checking *checking, const char *rule, const char *where);

/* The node of a given port in the tree, or OW_NODE_NONE. */
size_t ow_checking_port_node(const ow_checking *checking, size_t given);
/* The end of the parent through which a path that ends at `node` leaves its parent is nodes[node].parent_end.
 */
/* The node nearest to the source that hangs together with `node` when the layout is cut at turning joints. */
size_t ow_checking_piece(const ow_layout *layout, size_t node);
/* Way through a part between two of its ends, m; OW_NOT_SAID if a length is not said. */
double ow_checking_way_m(const ow_part *part, size_t from, size_t to);

void ow_check_tree(ow_checking *checking);   /* open ends, ports served once */
void ow_check_joints(ow_checking *checking); /* every joint */
/* What somebody used to seal the joint of `child` with its parent, which seals by `rule`. */
void ow_check_seal(ow_checking *checking, size_t child, const ow_joint_rule *rule);
/* How to mend a joint that is wrong since two exits or a part's two ends were exchanged, into mend[size];
 * false if it is not that. */
bool ow_check_exchanged(const ow_checking *checking, size_t child, char *mend, size_t size);
void ow_check_parts(ow_checking *checking);  /* rating, temperature, fluid, tees: every part */
void ow_check_paths(ow_checking *checking);  /* bore, hoses, restrictors on the path to each port */
void ow_check_pieces(ow_checking *checking); /* closing joints; machines rigidly joined */
void ow_check_block(ow_checking *checking);  /* what hangs on a block or housing: senders, swing, aim */
void ow_check_hoses(ow_checking *checking);  /* what a hose is made of, how long, how held */

#endif
