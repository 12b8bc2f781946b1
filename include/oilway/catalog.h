/* SPDX-License-Identifier: MIT */
/*
 * The shop's catalogue: YAML pages read into parts (things on the bill) and fixtures (engines,
 * turbos, heaters, switches, senders: given things with ports). Immutable once loaded, so any
 * number of threads may read it. docs/catalogue.md gives the format.
 */
#ifndef OILWAY_CATALOG_H
#define OILWAY_CATALOG_H

#include "oilway/end.h"
#include "oilway/hose_material.h"
#include "oilway/quantity.h"

/* kind in code, word in YAML, words for its ends in order, is it a part of the net */
#define OW_KIND_LIST(X)                                                                    \
    X(OW_ADAPTER, "adapter", "a b", true)                                                  \
    X(OW_ELBOW, "elbow", "a b", true)                                                      \
    X(OW_TEE, "tee", "run-a run-b branch", true)                                           \
    X(OW_CROSS, "cross", "run-a run-b branch-a branch-b", true)                            \
    X(OW_GAUGE_ADAPTER, "gauge-adapter", "a b side", true)                                 \
    X(OW_BANJO_BOLT, "banjo-bolt", "thread stud", true) /* double: thread stud-a stud-b */ \
    X(OW_BANJO_EYE, "banjo-eye", "eye tail", true)                                         \
    X(OW_HOSE_END, "hose-end", "nut tail", true)                                           \
    X(OW_HOSE, "hose", "a b", true)                                                        \
    X(OW_LINE, "line", "a b", true)                                                        \
    X(OW_PLUG, "plug", "a", true)                                                          \
    X(OW_CAP, "cap", "a", true)                                                            \
    X(OW_RESTRICTOR, "restrictor", "a b", true)                                            \
    X(OW_FLANGE, "flange", "face tail", true)                                              \
    X(OW_STUB, "stub", "face tail", true)                                                  \
    X(OW_BUNG, "bung", "face tail", true)                                                  \
    X(OW_SWITCH, "switch", "a", false)                                                     \
    X(OW_SENDER, "sender", "a", false)                                                     \
    X(OW_ENGINE, "engine", "", false)                                                      \
    X(OW_TURBO, "turbo", "", false)                                                        \
    X(OW_HEATER, "heater", "", false)
#define OW_KIND_NAME(name, word, ends, part) name,
typedef enum ow_kind { OW_KIND_LIST(OW_KIND_NAME) OW_KIND_COUNT } ow_kind;
#undef OW_KIND_NAME
const char *ow_kind_word(ow_kind kind);
bool ow_kind_is_part(ow_kind kind); /* may stand in a stack */

typedef enum ow_circuit { OW_CIRCUIT_NONE, OW_FEED, OW_DRAIN, OW_COOLANT } ow_circuit;
const char *ow_circuit_word(ow_circuit circuit); /* "feed" …; "" for NONE */
typedef enum ow_fluid { OW_FLUID_NONE = 0, OW_FLUID_OIL = 1, OW_FLUID_COOLANT = 2 } ow_fluid; /* bits */
typedef enum ow_bearing { OW_BEARING_UNKNOWN, OW_BEARING_JOURNAL, OW_BEARING_BALL } ow_bearing;
typedef enum ow_built_in { OW_BUILT_IN_UNKNOWN, OW_BUILT_IN_NONE, OW_BUILT_IN_YES } ow_built_in;
typedef enum ow_turbo_size { OW_SIZE_NOT_SAID, OW_SMALL, OW_MEDIUM, OW_LARGE } ow_turbo_size;
/* The words of the pages; "" for what is not said, but "unknown" of a restrictor. */
const char *ow_bearing_word(ow_bearing bearing);
const char *ow_built_in_word(ow_built_in built_in);
const char *ow_turbo_size_word(ow_turbo_size size);

typedef struct ow_place { /* where a record was written; line and column from 1, 0 = nowhere */
    const char *file;
    size_t line, column;
} ow_place;

#define OW_PART_ENDS 4
#define OW_NOT_SAID (-1.0) /* for lengths, bores, ratings: none of them can be negative */

/* A record of any kind but a machine. SI; what is not said is OW_NOT_SAID. Lent by the catalogue. */
typedef struct ow_part {
    const char *id;
    ow_kind kind;
    const char *page; /* name of its page */
    const char *title;
    const char *material; /* "" if not said */
    size_t end_count;
    ow_end ends[OW_PART_ENDS];
    const char *end_names[OW_PART_ENDS]; /* "a", "run-a", "stud", … */
    /*
     * Bore of each end's leg, m. The bore of the passage i to j is the lesser of the two legs: see
     * ow_part_bore_m. Banjo bolt: the stud's leg is the single hole of the same area as all
     * cross-holes together, sqrt(count) times their bore.
     */
    double leg_bore_m[OW_PART_ENDS];
    double length_m; /* along the run */
    double branch_length_m;
    double angle_rad;     /* elbow, hose end: 0 straight; OW_NOT_SAID elsewhere */
    double orifice_m;     /* restrictor */
    double bend_radius_m; /* hose: least */
    double hole_bore_m;   /* banjo bolt: one cross-hole */
    int hole_count;       /* openings, 0 if not said */
    double rating_pa;     /* gauge */
    bool has_temperature;
    double temperature_low_c, temperature_high_c;
    unsigned fluids; /* ow_fluid bits; 0 = not said */
    bool has_price;
    int64_t price_cents; /* hundredths of the shop's currency; hose: per metre */
    bool rigid_tube;     /* a line made of pipe: not a hose */
    bool typical;        /* dimensions are typical, not a standard's */
    double mass_kg;
    double hexagon_m;         /* across flats */
    const char *bolt_pattern; /* flange, stub: words, "" if not said */
    const char *standards;    /* comma separated, "" if not said */
    const char *note;         /* "" if none */
    bool has_stock;
    double stock_quantity; /* pieces; hose: metres */
    ow_place place;
} ow_part;

/* Whether passing it counts as one hose: a hose, or a line that is not rigid pipe. */
bool ow_part_is_hose(const ow_part *part);
/* What a hose, or a line that is not rigid pipe, is made of: by the class of its cut end, else by the first
 * word of its page's material. NULL: no hose, or a material that is not known. */
const ow_hose_material *ow_part_hose_material(const ow_part *part);
/*
 * What a part stands: the lesser of what its page claims and what its hose is made of; the heat for minutes
 * included, which a check warns of. What the page does not say stays not said.
 */
typedef struct ow_standing {
    double rating_pa; /* OW_NOT_SAID */
    bool has_temperature;
    double temperature_low_c, temperature_high_c;
    unsigned fluids;         /* ow_fluid bits */
    unsigned pressed_fluids; /* those it stands under pressure, too */
} ow_standing;
ow_standing ow_part_standing(const ow_part *part);
/* What one of it costs, cents: of a hose a cut of that length, OW_NOT_SAID as one metre, half a cent rounded
 * up. 0 if it has no price. */
int64_t ow_part_price_cents(const ow_part *part, double length_m);
/* The least bore along the passage between two of its ends, m; OW_NOT_SAID if one is not said. A
 * restrictor's orifice is left out. */
double ow_part_bore_m(const ow_part *part, size_t from, size_t to);
/* Index of the end of that name, or OW_PART_ENDS. */
size_t ow_part_end_index(const ow_part *part, const char *name);

/* A port of a machine. */
typedef struct ow_port {
    const char *name;
    ow_end end;
    ow_circuit circuit;
    double bore_m;
    double pressure_pa; /* a source's */
    const char *holds;  /* id of the switch that sits there now, or "" */
    bool has_position;
    double position_m[3]; /* x y z, z up, in the machine's own frame */
    bool has_direction;
    double direction[3];
    const char *note; /* "" if none */
    ow_place place;
} ow_port;

/* An engine, a turbo or a heater. */
typedef struct ow_machine {
    const char *id;
    ow_kind kind;
    const char *title;
    size_t port_count;
    const ow_port *ports;
    ow_bearing bearing;     /* turbo */
    ow_built_in restrictor; /* turbo */
    ow_turbo_size size;     /* turbo */
    double coolant_apart_m; /* turbo: centres of its two coolant ports */
    const char *note;
    ow_place place;
} ow_machine;

const ow_port *ow_machine_port(const ow_machine *machine, const char *name); /* NULL if none */

typedef struct ow_catalog ow_catalog;

typedef struct ow_catalog_options {
    const char *const *folders; /* later ones overlay earlier ones */
    size_t folder_count;
    const char *stock_file; /* may be NULL; laid over all */
    bool skip_bad;          /* leave out bad rows and pages, warning of each */
    bool notes;             /* report replaced ids and the like */
} ow_catalog_options;

/*
 * Reads every *.yaml page under the folders, in order of name. Reports all faults of all pages.
 * OW_INPUT if there was an error (unless skip_bad), OW_IO, OW_LIMIT, OW_MEMORY; *catalog is then
 * untouched. The caller frees it with ow_catalog_free. The context must outlive it.
 */
ow_status ow_catalog_load(const ow_context *context, const ow_catalog_options *options, ow_catalog **catalog);
/* The same from texts in memory, for tests and embedders: names and YAML, no folder touched. */
ow_status ow_catalog_load_texts(const ow_context *context, const char *const *names, const char *const *texts,
                                size_t count, const ow_catalog_options *options, ow_catalog **catalog);
void ow_catalog_free(ow_catalog *catalog);

/* Parts in order of id; fixtures (switches and senders) are not among them. Lent. */
size_t ow_catalog_part_count(const ow_catalog *catalog);
const ow_part *ow_catalog_part_at(const ow_catalog *catalog, size_t index);
size_t ow_catalog_fixture_count(const ow_catalog *catalog); /* switches and senders, by id */
const ow_part *ow_catalog_fixture_at(const ow_catalog *catalog, size_t index);
size_t ow_catalog_machine_count(const ow_catalog *catalog);
const ow_machine *ow_catalog_machine_at(const ow_catalog *catalog, size_t index);
size_t ow_catalog_page_count(const ow_catalog *catalog);
size_t ow_catalog_left_out_count(const ow_catalog *catalog);                 /* rows skipped under skip_bad */
const char *ow_catalog_left_out_at(const ow_catalog *catalog, size_t index); /* id or "page NAME" */

/* By id, in O(1); NULL if there is none. ow_catalog_part also finds switches and senders. */
const ow_part *ow_catalog_part(const ow_catalog *catalog, const char *id);
const ow_machine *ow_catalog_machine(const ow_catalog *catalog, const char *id);
/* The nearest known id (part, fixture, machine), or NULL when none is near enough to be of help. */
const char *ow_catalog_nearest_id(const ow_catalog *catalog, const char *id);

/*
 * Proves the catalogue whole beyond what loading checks: dimensions against the standards' ranges,
 * parts that no stack could ever use, ends that nothing mates, values missing that a limit asks
 * about, replaced ids. Reports each; *errors and *warnings count them. OW_OK or OW_MEMORY.
 */
ow_status ow_catalog_check(const ow_context *context, const ow_catalog *catalog, size_t *errors,
                           size_t *warnings);

#endif
