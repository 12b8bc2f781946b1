/* SPDX-License-Identifier: MIT */
/*
 * The limits of an ask as a path sees them: what a path remembers (its history), what a joint and a part do
 * to it, what a port wants of it. A history is carried from the source outward, so all ports beyond an end
 * share one; what no port beyond asks about is dropped from it.
 */
#ifndef OW_SEARCH_RULES_H
#define OW_SEARCH_RULES_H

#include "net/net.h"
#include "search/search_input.h"

/* Bits of a history. The last two are permissions: more is never worse. */
#define OW_PASSED_HOSE 1u
#define OW_PASSED_RESTRICTOR 2u
#define OW_MAY_FIX 4u     /* the piece here, cut at joints that turn, may still take a fixed port */
#define OW_MAY_MACHINE 8u /* the piece here, cut at hoses, may still take a machine's port */
#define OW_HISTORY_BITS 16u

/* A set of ports (bits 0 .. 5), with the event of a table of events above them. */
typedef unsigned ow_ports;
static inline size_t ow_ports_first(ow_ports set) /* not of the empty set */
{
    size_t port = 0;
    while ((set >> port & 1u) == 0)
        port++;
    return port;
}
#define OW_SETS_MAX ((size_t)2 << OW_SEARCH_PORTS_MAX)

typedef struct ow_rules {
    ow_hoses hoses;
    bool closing, remote_switch;
    bool apart;      /* machines' ports must be kept apart by a hose */
    ow_ports served; /* ports to be fed */
    ow_ports kept;
    ow_ports needing, barring; /* served ones that want a restrictor on their path, or none … */
    ow_ports single;           /* … or no second one: those that need one, too */
    ow_ports machines;         /* of the served ones */
    ow_ports first;            /* the first served one, or none */
} ow_rules;

/* Whether each path to a served port wants a hose. */
static inline bool ow_rules_want_hose(const ow_rules *rules)
{
    return rules->hoses == OW_HOSES_ONE || rules->hoses == OW_HOSES_SOME;
}

ow_rules ow_rules_of(const ow_search_input *ask);

/* The bits that a set of ports asks about; a subset asks no more. */
unsigned ow_rules_asked(const ow_rules *rules, ow_ports set);
/* Bits that a port's joint must find in the history to be accepted. */
unsigned ow_rules_wanted(const ow_rules *rules, size_t port);
/* The history behind a joint. */
unsigned ow_rules_join(unsigned history, bool turns);
/* Whether the share of an exit may be served through a part of those traits, from that history on. */
bool ow_rules_may_pass(const ow_rules *rules, unsigned traits, unsigned history, ow_ports share);
/* The history at the exit, of which the caller keeps what the share asks about. fix, machine: this exit
 * is handed the permission, if the part has it. */
unsigned ow_rules_pass(unsigned traits, unsigned history, bool fix, bool machine);
/* Whether a part's length adds to the stick-out, entered with that history to serve that set. */
bool ow_rules_sticks_out(const ow_rules *rules, unsigned traits, unsigned history, ow_ports set);

#endif
