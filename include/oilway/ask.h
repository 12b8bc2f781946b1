/* SPDX-License-Identifier: MIT */
/*
 * From the words of an ask (command line, page, job) to asks that the search understands: ports
 * found, the circuit's defaults laid on, every reading of an end whose pitch or seat is not said.
 * docs/asking.md tells it to users.
 */
#ifndef OILWAY_ASK_H
#define OILWAY_ASK_H

#include "oilway/finding.h"
#include "oilway/stack.h"

/* Words as typed; NULL = not given. Each string must outlive the ask set. */
typedef struct ow_ask_words {
    const char *from;
    const char *to[OW_TO_MAX];
    size_t to_count;
    const char *keep[OW_PORTS_MAX - 1];
    size_t keep_count;
    const char *circuit;     /* feed | drain | coolant */
    const char *bearing;     /* journal | ball */
    const char *bore;        /* quantity */
    const char *flexible;    /* yes | some | no | any */
    const char *closing;     /* yes | no */
    const char *restrictor;  /* required | forbidden | any */
    const char *orifice;     /* LO..HI */
    const char *rating;      /* quantity */
    const char *temperature; /* quantity */
    const char *fluid;       /* oil | coolant */
    const char *hose;        /* length of each hose in the answer, quantity */
    bool tolerate;
    bool remote_switch;
    const char *const *without;
    size_t without_count;
    const ow_machine *const *machines; /* known beside the catalogue's, and before them: a job's own */
    size_t machine_count;
} ow_ask_words;

#define OW_WITHOUT_MAX 64

/* The words of an ask as they come, one option after another. It stays where it is: its words point into it.
 * Begin with {0}. */
typedef struct ow_ask_typed {
    ow_ask_words words;
    const char *without[OW_WITHOUT_MAX];
} ow_ask_typed;

/*
 * Takes one option by its name, "bore" or "to", and its value, which is lent; of a flag NULL or "yes", or
 * "no". Of an option that may be given once the last counts. OW_NONE: no ask has such an option. OW_INPUT: a
 * flag has another value. OW_RANGE: it was given *most times already. *most is told in any case but OW_NONE.
 */
ow_status ow_ask_typed_put(ow_ask_typed *typed, const char *name, const char *value, size_t *most);

/* One ask of a set. Two or more with the same reading differ in the engine's source port. */
typedef struct ow_ask_item {
    ow_ask ask;
    const char *reading;  /* the END(s) read, " and " between several; NULL if nothing was left open */
    ow_findings findings; /* what the ask itself brings up: assumptions, a switch that loses its place */
} ow_ask_item;

typedef struct ow_ask_set {
    const ow_context *context;
    size_t count;
    ow_ask_item *items;
    const char *decide; /* with readings: the measurement that tells them apart, in words; else NULL */
    void *storage;
} ow_ask_set;

/* The most readings that are answered at once; an ask with more is refused with OW_LIMIT. */
#define OW_READINGS_MAX 64

/*
 * Reads the words. Faults are reported, each under the name of its option ("--from"). OW_INPUT,
 * OW_LIMIT, OW_MEMORY: *set untouched. The set lends from the catalogue and the words. O(readings).
 */
ow_status ow_ask_read(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                      const ow_ask_words *words, ow_ask_set *set);
void ow_ask_set_done(ow_ask_set *set);

/* The circuit's defaults (docs/asking.md), for a job's circuits too: flexible, closing, fluid, rating. */
void ow_limits_for_circuit(ow_circuit circuit, ow_limits *limits);
/* Pressure assumed of a source that gives none, Pa gauge: an assumption of this project (A). */
double ow_circuit_assumed_pressure_pa(ow_circuit circuit);

#endif
