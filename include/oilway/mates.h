/* SPDX-License-Identifier: MIT */
/*
 * The verdict on two ends: whether they seal and, if not, how they deceive. Joins the table of joint rules
 * with the seats and the geometry of the threads. docs/mates.md tells how each verdict is reached.
 */
#ifndef OILWAY_MATES_H
#define OILWAY_MATES_H

#include "oilway/joint.h"

#define OW_MATES_WHY_SIZE 640
#define OW_MATES_SOURCE_SIZE 160

typedef struct ow_mates {
    ow_end ends[2]; /* in the order asked */
    ow_verdict verdict;
    const ow_joint_rule *rule;         /* OW_SEALS and OW_TOLERATED, else NULL */
    bool has_turns;                    /* a thread runs */
    double turns_least, turns_most;    /* over the limits of size: until home, or until it jams or wedges */
    char why[OW_MATES_WHY_SIZE];       /* with the figures */
    char source[OW_MATES_SOURCE_SIZE]; /* standards by number, or "common practice" */
} ow_mates;

/*
 * Judges a pair; the order of the two does not change the verdict. A thread whose seat is not said is judged
 * as long as geometry decides. OW_RANGE: the answer hangs on what is not said (pitch, or seat of threads that
 * belong together); *mates is then untouched. Allocates nothing.
 */
ow_status ow_mates_judge(const ow_end *a, const ow_end *b, ow_mates *mates);

typedef struct ow_mates_list {
    const ow_context *context;
    ow_mates *items; /* ends[0]: the reading of the end asked about; ends[1]: the other */
    size_t count, capacity;
} ow_mates_list;

/*
 * Everything that screws, slips or clamps onto `end`, rightly or wrongly, over the kinds given (a
 * catalogue's; may be none) and all that the tables know. An end whose pitch or seat is not said is judged in
 * each of its readings. Of what does not start only near misses are listed (diameters within 1.3 mm). Of
 * threads that geometry alone decides, one end a thread is listed unless the kinds given hold others. In
 * order of reading, verdict (seals first), text. OW_OK, OW_MEMORY; *list is untouched on failure, else freed
 * with ow_mates_list_done. Cost: kinds times readings, and sorting.
 */
ow_status ow_mates_of(const ow_context *context, const ow_end *end, const ow_end *kinds, size_t kind_count,
                      ow_mates_list *list);
/*
 * Judges a pair of which either may be half said: once, if that does not matter, else in each reading of both
 * (over the kinds given and the tables). Never an empty list unless nothing known is a reading. Same
 * statuses.
 */
ow_status ow_mates_pair(const ow_context *context, const ow_end *a, const ow_end *b, const ow_end *kinds,
                        size_t kind_count, ow_mates_list *list);
void ow_mates_list_done(ow_mates_list *list);

/* Every kind of end that the tables of threads, dashes, tubes and series know, one at a time: false where a
 * number stands for none and past the last. Hoses, tails, barbs, flanges and welds have no table and are not
 * among them. */
size_t ow_known_end_count(void);
bool ow_known_end_at(size_t index, ow_end *end);

#endif
