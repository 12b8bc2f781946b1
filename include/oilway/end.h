/* SPDX-License-Identifier: MIT */
/* One connection of a part, and the one grammar for it: the same words in YAML, on the command line,
 * in JSON and on a page (docs/ends.md). */
#ifndef OILWAY_END_H
#define OILWAY_END_H

#include "oilway/thread.h"

typedef enum ow_form {
    OW_FORM_THREAD,   /* thread + gender + seat */
    OW_FORM_DASH,     /* by dash: seat FLARE37, O_RING or FACE_O_RING; size = dash number */
    OW_FORM_TUBE_NUT, /* by tube: seat FLARE45, FLARE45_INVERTED or CONVEX; size = tube OD */
    OW_FORM_BANJO,    /* banjo MM stud|eye; size = nominal hole */
    OW_FORM_HOSE,     /* cut end of a hose; size by dash or mm, class in name */
    OW_FORM_TAIL,     /* "hose … tail": the fitting's end that fits that hose */
    OW_FORM_BARB,
    OW_FORM_BEAD,
    OW_FORM_TUBE,
    OW_FORM_FLANGE, /* name = bolt pattern */
    OW_FORM_WELD,
    OW_FORM_COUNT
} ow_form;

typedef enum ow_gender { OW_GENDER_NONE, OW_MALE, OW_FEMALE } ow_gender; /* banjo: stud MALE, eye FEMALE */

typedef enum ow_seat {
    OW_SEAT_NONE,    /* forms that need none */
    OW_SEAT_UNKNOWN, /* not said: legal to ask about, not in a catalogue */
    OW_SEAT_TAPER,   /* NPT, R, Rc, Rp, DIN 158: on the flanks */
    OW_SEAT_WASHER,
    OW_SEAT_WASHER_CAPTIVE,
    OW_SEAT_BANJO,
    OW_SEAT_O_RING,
    OW_SEAT_FACE_O_RING,
    OW_SEAT_CONE24,
    OW_SEAT_CONE60,
    OW_SEAT_FLARE30,
    OW_SEAT_NPSM, /* the straight swivel's 30 degree nose */
    OW_SEAT_FLARE37,
    OW_SEAT_FLARE45,
    OW_SEAT_FLARE45_INVERTED,
    OW_SEAT_CONVEX,
    OW_SEAT_COUNT
} ow_seat;

typedef enum ow_size_unit { OW_SIZE_NONE, OW_SIZE_DASH, OW_SIZE_UM, OW_SIZE_INCH_64 } ow_size_unit;

#define OW_END_NAME_SIZE 32
#define OW_END_TEXT_SIZE 96 /* enough for any canonical text with its NUL */

typedef struct ow_end {
    ow_form form;
    ow_gender gender;
    ow_seat seat;
    bool swivel;
    ow_size_unit size_unit;
    int32_t size;                /* in size_unit; 0 for OW_FORM_THREAD */
    ow_thread thread;            /* OW_FORM_THREAD only; all zero otherwise */
    char name[OW_END_NAME_SIZE]; /* hose class, flange pattern, cone24 series ("10L"), else "" */
} ow_end;

/*
 * Reads the whole of `words` as an end. On OW_INPUT *fault (may be NULL) says where and why: byte
 * span in words, a sentence, what was expected, the nearest known word. Nothing is reported and
 * *end is untouched. Ends whose pitch or seat is not said are read; ow_end_is_whole tells.
 * `9/16-18 UNF female o-ring` and the like become their dash form.
 */
typedef struct ow_end_fault {
    size_t start, length; /* bytes in words */
    char message[128];
    char expected[192];
    char mend[128]; /* "" if nothing can be suggested */
} ow_end_fault;
ow_status ow_end_read(const char *words, ow_end *end, ow_end_fault *fault);
/* The same, reporting a fault with `words` as the text named `name` ("END", "--from"). */
ow_status ow_end_read_told(const ow_context *context, const char *name, const char *words, ow_end *end);

/* Appends the canonical text: reading it gives the same end. */
void ow_end_write(ow_text *text, const ow_end *end);
/* The same into a buffer of OW_END_TEXT_SIZE. Returns buffer. */
const char *ow_end_name(const ow_end *end, char *buffer);

bool ow_end_same(const ow_end *a, const ow_end *b); /* field by field, not bytes */
bool ow_end_is_whole(const ow_end *end);            /* pitch, seat and cone series are known */
/* Whether `whole` is a reading of `asked`: equal in all that asked says. A thread without seat also
 * reads as a dash or tube end on that thread. */
bool ow_end_is_reading(const ow_end *asked, const ow_end *whole);

/* The thread under an end: its own, or that of its dash (SAE J514, J1926-1, J1453), tube nut (SAE
 * J512, ISO 4038). False for ends without one. */
bool ow_end_thread(const ow_end *end, ow_thread *thread);

/*
 * The size that an end is called by. None of these is its hole: a dash is a tube's outside diameter in
 * sixteenths of an inch, a pipe's inches are the name of neither thread nor hole, a barb goes by the hose
 * that fits it.
 */
typedef enum ow_nominal_of {
    OW_NOMINAL_TUBE, /* outside diameter of the tube: dash, tube, 24 degree cone, weld */
    OW_NOMINAL_HOSE, /* inside diameter of the hose: barb, bead, hose by mm */
    OW_NOMINAL_PIPE, /* NPT, R, G: inches by name */
    OW_NOMINAL_THREAD,
    OW_NOMINAL_EYE,
    OW_NOMINAL_COUNT
} ow_nominal_of;
const char *ow_nominal_of_word(ow_nominal_of of); /* "tube outside", "hose inside", … */

typedef struct ow_nominal {
    ow_nominal_of of;
    double size_m;
    char name[OW_END_NAME_SIZE]; /* "-10", "3/16", "barb 16", "10L", "M12" */
} ow_nominal;
/* False for an end that goes by no size (a flange); *nominal is then untouched. */
bool ow_end_nominal(const ow_end *end, ow_nominal *nominal);

/* Whether it turns or clamps freely, so that its joint may be made last: swivel, banjo, barb and
 * bead, a cut hose end sized in mm, tube nut (male flare45-inverted and convex), tube, bolted flange. */
bool ow_end_turns(const ow_end *end);
/* Whether a clamp alone holds what it is joined to: a barb, a bead, a cut hose end sized in mm. */
bool ow_end_clamps(const ow_end *end);

#endif
