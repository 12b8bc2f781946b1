/* SPDX-License-Identifier: MIT */
/* A layout: the tree of parts from a source port outward, as stack writes it and check and bill read it. */
#ifndef OILWAY_LAYOUT_H
#define OILWAY_LAYOUT_H

#include "oilway/catalog.h"

typedef enum ow_role { OW_ROLE_SOURCE, OW_ROLE_TO, OW_ROLE_KEEP } ow_role;

/* A given port, as an ask or a layout names it. Strings are lent by the layout or the ask. */
typedef struct ow_given {
    const char *name; /* "brockle-4:gallery", "sw-2", or "from", "to", "to#2", "keep" for a bare END */
    ow_role role;
    ow_end end;
    const ow_machine *machine; /* NULL for a bare END, a switch or a sender */
    const ow_port *port;       /* with machine */
    const ow_part *fixture;    /* a switch or a sender of the catalogue, else NULL */
} ow_given;

#define OW_PORTS_MAX 6 /* ports served: --to and --keep together */
#define OW_TO_MAX 3
/* Lengths that a hose is cut to. */
#define OW_HOSE_LENGTH_LOW_M 0.001
#define OW_HOSE_LENGTH_HIGH_M 100.0
#define OW_NODE_NONE ((size_t)-1)

/* A node is a part, or a given port that closes an end. Node 0 is the source port; its only exit
 * is exits[0]. */
typedef struct ow_layout_node {
    const ow_part *part;            /* NULL: a given port */
    size_t given;                   /* index of the given port if part is NULL */
    size_t parent;                  /* node it hangs on; OW_NODE_NONE for the source */
    size_t parent_end;              /* end of the parent that it is joined to */
    size_t enter;                   /* its own end joined to the parent */
    size_t exits[OW_PART_ENDS];     /* node on each other end; OW_NODE_NONE: the entry, or left open */
    size_t occurrence;              /* 1 for the first of that id in walking order, then 2, … */
    double length_m;                /* hose: chosen length, else OW_NOT_SAID */
    const char *seal[OW_PART_ENDS]; /* what somebody used on that end ("tape"), or NULL */
    ow_place place;                 /* in the layout's file, if read from one */
} ow_layout_node;

typedef enum ow_choice { OW_ANY, OW_YES, OW_NO, OW_SOME } ow_choice;
typedef enum ow_restrictor_ask {
    OW_RESTRICTOR_ANY,
    OW_RESTRICTOR_REQUIRED,
    OW_RESTRICTOR_FORBIDDEN,
    OW_RESTRICTOR_BY_UNIT /* of each --to as its own unit wants: units of both kinds on one feed */
} ow_restrictor_ask;

/*
 * What the unit behind a given port wants: FORBIDDEN for a journal bearing or where one is built in, REQUIRED
 * for a ball bearing with none built in, ANY where that is not known. `said` is the bearing that an asker
 * named, else OW_BEARING_UNKNOWN. Source: common practice.
 */
ow_restrictor_ask ow_given_wants(const ow_given *to, ow_bearing said);

/* What is asked of a layout beside its ports. Lengths m, pressures Pa; OW_NOT_SAID = not asked. */
typedef struct ow_limits {
    double least_bore_m;
    ow_choice flexible; /* YES: exactly one hose on the path to each --to; SOME: one or more; NO: none */
    bool closing;
    ow_restrictor_ask restrictor;
    double orifice_low_m, orifice_high_m;
    double rating_pa;
    bool has_temperature;
    double temperature_c;
    ow_fluid fluid;
    bool tolerate;
    bool remote_switch; /* a hose may stand before a kept port */
    bool no_tee;        /* drains */
    bool no_clamp;      /* feeds: no hose is held by a clamp alone */
    bool bore_warns;    /* the least bore is a default: it warns, it does not refuse */
} ow_limits;
#define OW_LIMITS_INIT                                                                                    \
    {                                                                                                     \
        OW_NOT_SAID, OW_ANY, false, OW_RESTRICTOR_ANY, OW_NOT_SAID, OW_NOT_SAID, OW_NOT_SAID, false, 0.0, \
            OW_FLUID_NONE, false, false, false, false, false                                              \
    }

/* Whether the fluid presses on the parts: in every circuit but a drain; without a circuit where more is asked
 * of them than a drain's 0.3 bar. Some hoses stand oil without pressure only. */
bool ow_limits_pressed(ow_circuit circuit, const ow_limits *limits);

typedef struct ow_layout {
    const char *title;
    ow_circuit circuit;
    bool has_asked; /* false: nothing was said, the defaults of circuit and machines hold */
    ow_limits asked;
    size_t given_count;
    const ow_given *givens; /* [0] is the source */
    size_t node_count;
    ow_layout_node *nodes; /* in walking order: source outward, exits in the part's order */
    void *storage;         /* what it owns; freed by ow_layout_free */
} ow_layout;

void ow_layout_free(ow_layout *layout);

size_t ow_layout_part_count(const ow_layout *layout);  /* every part but given ports */
size_t ow_layout_joint_count(const ow_layout *layout); /* nodes - 1 when nothing is left open */
/* "id" or "id#2" of a node, or the given port's name; appended. */
void ow_layout_node_name(ow_text *text, const ow_layout *layout, size_t node);
/* The end of node `child` that faces its parent, and the parent's end that faces it. */
const ow_end *ow_layout_child_end(const ow_layout *layout, size_t child);
const ow_end *ow_layout_parent_end(const ow_layout *layout, size_t child);
/* Whether node lies on the path from the source to given port `given` (inclusive). */
bool ow_layout_on_path(const ow_layout *layout, size_t node, size_t given);
/* Whether a given port other than the source lies at node or beyond it: what does not is a dead end. */
bool ow_layout_leads_to_port(const ow_layout *layout, size_t node);
/* The least bore of the parts on the path to given port `given`, m (restrictors' orifices and given ports
 * left out); OW_NOT_SAID if a part does not say, or there is no part. */
double ow_layout_bore_to_m(const ow_layout *layout, size_t given);
/* The same of the path to the first --to; OW_NOT_SAID also if there is none. */
double ow_layout_narrowest_bore_m(const ow_layout *layout);
/* Sum of the known prices, cents; *complete false if a part has none. A hose counts by its length,
 * or as one metre where none is chosen. */
int64_t ow_layout_price_cents(const ow_layout *layout, bool *complete);

/*
 * Reads the layouts of a YAML text (several documents: several circuits). All faults are reported.
 * *layouts is an array of *count, freed by the caller with ow_layouts_free. OW_INPUT, OW_LIMIT,
 * OW_MEMORY: untouched. An exit left out stays OW_NODE_NONE: for check to judge. The catalogue must
 * outlive the layouts.
 */
ow_status ow_layouts_read(const ow_context *context, const ow_catalog *catalog, const char *file,
                          const char *text, size_t length, ow_layout **layouts, size_t *count);
void ow_layouts_free(const ow_context *context, ow_layout *layouts, size_t count);
/* Appends the YAML of one layout: reading it gives the same layout. */
void ow_layout_write(ow_text *text, const ow_layout *layout);

#endif
