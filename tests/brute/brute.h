/* SPDX-License-Identifier: MIT */
/*
 * A second, independent way to the fewest-part layout, for tests only: it goes forward from the
 * source, best partial layout first, and knows neither sets of ports nor tables. It shares no line
 * with src/net and src/search and keeps structures of its own. docs: tests/brute/README.md.
 *
 * Everything is a whole number (micrometres, kilopascals, degrees, cents), so that two reckonings
 * can be compared exactly. A part's index is its rank by id.
 */
#ifndef BRUTE_H
#define BRUTE_H

#include <stdbool.h>
#include <stdint.h>

#define BRUTE_KINDS 32
#define BRUTE_ENDS 4
#define BRUTE_PORTS 6
#define BRUTE_PARTS 64
#define BRUTE_TREE_PARTS 32
#define BRUTE_TREE_NODES (BRUTE_TREE_PARTS + BRUTE_PORTS)
#define BRUTE_NOT_SAID (-1)

typedef enum brute_mating { BRUTE_NEVER, BRUTE_SEALS, BRUTE_TOLERATED } brute_mating;

typedef struct brute_part {
    int end_count;
    int kind[BRUTE_ENDS];
    int leg_bore_um[BRUTE_ENDS]; /* or BRUTE_NOT_SAID, as all figures below */
    bool is_hose, is_restrictor;
    bool first_only; /* may be entered by its first end only; for parts that are tried, not for real ones */
    bool by_metre;   /* its price is for a metre */
    int orifice_um;
    int length_um;
    int rating_kpa;
    bool has_temperature;
    int low_c, high_c;
    unsigned fluids; /* bits; 0 = not said */
    int material;    /* of a hose: what it is made of, in brute_material_at; 0 = not known */
    bool has_price;
    int price_cents;
} brute_part;

/* What hoses are made of. */
typedef struct brute_material {
    const char *word;
    unsigned fluids, pressed_fluids; /* stood at all; under pressure, too */
    int low_c, high_c;
    int most_kpa; /* or BRUTE_NOT_SAID: by the hose's own size */
} brute_material;
enum { BRUTE_MATERIALS = 8 };
const brute_material *brute_material_at(int material);

typedef struct brute_net {
    int kind_count;
    brute_mating mates[BRUTE_KINDS][BRUTE_KINDS]; /* symmetric */
    bool turns[BRUTE_KINDS][BRUTE_KINDS];         /* the joint of two kinds, symmetric */
    bool kind_turns[BRUTE_KINDS];                 /* the end itself, where a made part meets it */
    bool kind_clamped[BRUTE_KINDS];               /* what it is joined to is held by a clamp alone */
    int part_count;
    brute_part parts[BRUTE_PARTS];
} brute_net;

typedef enum brute_restrictor {
    BRUTE_FREE,
    BRUTE_REQUIRED, /* exactly one */
    BRUTE_FORBIDDEN,
    BRUTE_MOST_ONE,
    BRUTE_BY_PORT
} brute_restrictor;

typedef struct brute_port {
    int kind;
    bool is_to; /* else kept */
    bool is_machine;
    brute_restrictor restrictor; /* what it wants itself, where the ask says BY_PORT */
} brute_port;

typedef enum brute_flexible { BRUTE_FLEX_ANY, BRUTE_FLEX_YES, BRUTE_FLEX_NO, BRUTE_FLEX_SOME } brute_flexible;

typedef struct brute_ask {
    int source; /* kind of the source port */
    int port_count;
    brute_port ports[BRUTE_PORTS];
    int least_bore_um;
    brute_flexible flexible;
    bool closing;
    brute_restrictor restrictor;
    int orifice_low_um, orifice_high_um;
    int rating_kpa;
    bool has_temperature;
    int temperature_c;
    unsigned fluid; /* 0 = not asked */
    bool pressed;   /* the fluid is under pressure */
    bool tolerate, remote_switch, no_tee, no_clamp;
    int hose_length_mm;  /* of what is sold by the metre, for prices */
    bool pages_believed; /* for comparison only: nobody knows what hoses are made of */
    bool kept_free;      /* for comparison only: kept ports may stand behind anything */
    bool without[BRUTE_PARTS];
    int forced;       /* a part that must be used, or -1 */
    bool forced_once; /* and not more than once */
} brute_ask;

/* Whether each path to a port that is fed wants a hose, or several. */
bool brute_flexes(const brute_ask *ask);
/* What is wanted on the path to a port that is fed: never BY_PORT. */
brute_restrictor brute_wanted(const brute_ask *ask, const brute_port *port);

brute_ask brute_ask_plain(int source);

/* Order of preference, from the left; ids in walking order. */
typedef struct brute_key {
    int parts;
    int unpriced;
    long long cents;
    long long stick_out_um;
    int id_count; /* = parts */
    uint8_t ids[BRUTE_TREE_PARTS];
} brute_key;

int brute_key_compare(const brute_key *a, const brute_key *b);

/* A whole layout, in walking order: every node but the first hangs on an end of an earlier one. */
typedef struct brute_node {
    int part;   /* index, or -1: a port */
    int port;   /* if part is -1 */
    int parent; /* index of node, or -1: the source */
    int parent_end;
    int entry;
} brute_node;

typedef struct brute_tree {
    int count;
    brute_node nodes[BRUTE_TREE_NODES];
} brute_tree;

/* validate.c: from scratch over a complete tree. The fault in words, or NULL. */
const char *brute_tree_fault(const brute_net *net, const brute_ask *ask, const brute_tree *tree);
void brute_tree_key(const brute_net *net, const brute_ask *ask, const brute_tree *tree, brute_key *key);
/* The multiset of parts outside closings, ascending. Returns how many. */
int brute_tree_path_parts(const brute_tree *tree, int parts[BRUTE_TREE_PARTS]);
/* The first served port, whose path gives the stick-out; -1 if there is none. */
int brute_first_to(const brute_ask *ask);
int brute_part_entries(const brute_part *part); /* it may be entered by this many ends, the first ones */
long long brute_part_cents(const brute_ask *ask, const brute_part *part);
bool brute_part_passes(const brute_net *net, const brute_ask *ask, int part);

/* best.c: the best layout, found and proved; or BRUTE_NONE, proved too. */
typedef enum brute_answer { BRUTE_FOUND, BRUTE_NONE, BRUTE_TOO_LARGE } brute_answer;
typedef struct brute_result {
    brute_answer answer;
    brute_key key;
    brute_tree tree;
    long states; /* partial layouts looked at */
} brute_result;
void brute_best(const brute_net *net, const brute_ask *ask, brute_result *result);
/* saturate.c: whether any layout exists at all. BRUTE_FOUND or BRUTE_NONE, or too large to tell. */
brute_answer brute_exists(const brute_net *net, const brute_ask *ask, long *states);

/* every.c: each complete tree of at most `most` parts, limits not looked at; stops when visit says
 * false. Returns the number visited. */
typedef bool (*brute_visit)(void *user, const brute_tree *tree);
long brute_every_tree(const brute_net *net, const brute_ask *ask, int most, brute_visit visit, void *user);

#endif
