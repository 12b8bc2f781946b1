/* SPDX-License-Identifier: MIT */
/* The table of joint rules as the look-up sees it: which ends each rule speaks of. */
#ifndef OW_JOINTS_RULES_H
#define OW_JOINTS_RULES_H

#include "oilway/joint.h"

#define OW_FAMILY(family) (1u << (family))

/* One side of a joint. families: bits of ow_thread_family, for OW_FORM_THREAD only. */
typedef struct ow_joint_side {
    ow_form form;
    ow_seat seat;
    unsigned families;
} ow_joint_side;

/* What must agree between the two ends, beside form, seat and gender. */
typedef enum ow_joint_agree {
    OW_AGREE_THREAD,        /* size and pitch of the thread */
    OW_AGREE_SIZE,          /* dash, tube or nominal hole */
    OW_AGREE_SERIES,        /* thread and cone series */
    OW_AGREE_TUBE_SERIES,   /* the tube's diameter with that of the cone's series */
    OW_AGREE_SIZE_AND_NAME, /* hose: dash and class */
    OW_AGREE_BORE,          /* hose and clamped tail: within half a millimetre; any class but ptfe */
    OW_AGREE_NAME           /* flange: bolt pattern */
} ow_joint_agree;

typedef struct ow_joint_row {
    ow_joint_rule rule;
    ow_gender first_gender; /* OW_MALE: first is male and second female; OW_GENDER_NONE: neither has one */
    ow_joint_side first, second;
    ow_joint_agree agree;
} ow_joint_row;

size_t ow_joint_row_count(void);
const ow_joint_row *ow_joint_row_at(size_t index); /* NULL past the end */
/* Whether a and b, in this order, are the two sides of the row. */
bool ow_joint_row_fits(const ow_joint_row *row, const ow_end *a, const ow_end *b);

/* A clamped tail holds a hose whose true bore is its own size within this (common practice). */
#define OW_TAIL_FIT_UM 500

#endif
