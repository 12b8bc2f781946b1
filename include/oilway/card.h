/* SPDX-License-Identifier: MIT */
/*
 * The card of one joint: which face seals, what goes between by size, how far the thread engages, how tight,
 * what may be used again, what to mind. Figures stand with their sources; where none is published it says so.
 * docs/joints.md tells what each part rests on.
 */
#ifndef OILWAY_CARD_H
#define OILWAY_CARD_H

#include "oilway/joint.h"
#include "oilway/metal.h"
#include "oilway/ring_material.h"

/* Something that is used up in a joint. What equal in `what` and `size` is one line of a bill. */
typedef struct ow_consumable {
    const char *what; /* "crush ring", "O-ring", "thread sealant", "hose clamp", "gasket", … */
    char size[80];    /* "10 x 13.5 x 1 mm"; "inside at least 9.53 mm: measure"; "" if it has none */
    size_t count;     /* 0: by need (sealant) */
    const char *source;
    char note[224]; /* what else would do, what to mind; "" if nothing */
    /* mm; 0: not known. An O-ring's thickness is its section. When `measure`, inner is the least that
     * passes the thread and the others are 0: no size is published. */
    double inner_mm, outer_mm, thickness_mm;
    bool measure;
} ow_consumable;

/* One published tightening figure: torque, or turns from finger tight. */
typedef struct ow_torque {
    double least_nm, most_nm;       /* N m; 0: counted in turns */
    double least_turns, most_turns; /* 0: given as torque */
    const char *what;               /* what it was printed for: "stud end, flat ring" */
    const char *material;           /* "steel or iron", "light alloy", …; "" for any */
    const char *condition;          /* "threads oiled", "" if the source does not say */
    double friction_factor;         /* assumed: torque over pull times diameter; 0.15 oiled, else 0.2 */
    const char *source;
} ow_torque;

typedef enum ow_enough { OW_ENOUGH_UNKNOWN, OW_ENOUGH, OW_NOT_ENOUGH } ow_enough;

/* How far the threads engage. Turns are lengths over the pitch. */
typedef struct ow_engagement {
    double pitch_m; /* 0: no thread */
    bool has_length;
    double least_m, most_m; /* of full thread, once tightened */
    const char *source;     /* of the length: "measured", or a standard's stud */
    bool has_needed;
    double needed_m; /* least that bears the highest torque of the card; a taper: its hand-tight length */
    char needed_why[224];
    double bears_nm;  /* most torque that the shortest engagement bears; 0: not known */
    ow_enough enough; /* for the lowest torque of the card, at least */
} ow_engagement;

/* What is known of the joint beside its ends. All zero is "nothing more". */
typedef struct ow_card_ask {
    const char
        *material; /* of the softer part, in words: "steel", "aluminium", "brass"; NULL or "": not known */
    const ow_thread *bolt; /* banjo stud and eye: the thread of the bolt; NULL: the metric one of its size */
    size_t eye;            /* banjo stud and eye: eyes already on that bolt; the first needs two washers, each
                              further one */
    double engaged_m;      /* measured length of full thread engaged; 0: not measured */
    ow_ring_service ring;  /* what an O-ring sees */
} ow_card_ask;

#define OW_CARD_CONSUMABLES 2
#define OW_CARD_TORQUES 10
#define OW_CARD_CAUTIONS 4

/* Everything pointed to is constant; nothing is to be freed. */
typedef struct ow_card {
    ow_end ends[2];
    bool has_thread;
    ow_thread thread; /* that both are on, or the bolt's */
    const ow_joint_rule *rule;
    const char *face;    /* which face seals against which */
    const char *sealant; /* "thread sealant: …", or "none: …" */
    ow_consumable consumables[OW_CARD_CONSUMABLES];
    size_t consumable_count;
    char ring_hint[128]; /* a banjo bolt's thread: the size of the rings, which are counted with its eyes;
                            else "" */
    ow_engagement engagement;
    ow_torque torques[OW_CARD_TORQUES];
    size_t torque_count;      /* 0: no published figure for this thread, seat and material */
    bool has_torque;          /* some of them are torques: */
    double least_nm, most_nm; /* the lowest and the highest of all listed */
    const char *reuse;        /* of the consumable, or of the seat where there is none */
    const char *cautions[OW_CARD_CAUTIONS];
    size_t caution_count;
} ow_card;

/*
 * The card of a joint, whichever way round its ends are named. ask may be NULL. OW_NONE if they do not join,
 * *card is untouched then. Pure table work and arithmetic; allocates nothing.
 */
ow_status ow_card_of(const ow_end *a, const ow_end *b, const ow_card_ask *ask, ow_card *card);

#endif
