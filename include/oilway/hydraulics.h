/* SPDX-License-Identifier: MIT */
/*
 * Pressure lost by a liquid in pipes, fittings, steps of bore and short holes, from creeping to
 * turbulent, and the flows in a tree of such lines. SI throughout; no allocation, no state.
 * Formulas, sources and marks: docs/physics.md.
 */
#ifndef OILWAY_HYDRAULICS_H
#define OILWAY_HYDRAULICS_H

#include <stdbool.h>
#include <stddef.h>

#include "oilway/status.h"

#define OW_GRAVITY_MS2 9.80665 /* standard gravity, ISO 80000-3 */

/* What the solver works in; anything else is OW_RANGE. */
#define OW_BORE_LOW_M 0.0001
#define OW_BORE_HIGH_M 0.2
#define OW_LENGTH_HIGH_M 100.0
#define OW_HOLES_HIGH 100
#define OW_FLOW_HIGH_M3S 0.1
#define OW_SOURCE_HIGH_PA 10.0e6
#define OW_RISE_HIGH_M 20.0 /* up or down */
#define OW_ROUGHNESS_HIGH_M 1.0e-3
#define OW_LOSS_COEFFICIENT_HIGH 1.0e4

typedef struct ow_liquid {
    double density_kgm3;
    double dynamic_viscosity_pas;
} ow_liquid;

/* ---- single losses ------------------------------------------------------------------------- */

/*
 * A loss of total pressure: (viscous / Re + inertial) times the dynamic pressure in the small bore.
 * The two parts are kept apart so that a vanishing flow gives a vanishing loss and never 0 / 0.
 * Both may depend on Re.
 */
typedef struct ow_loss {
    double viscous;
    double inertial;
} ow_loss;

/* K = viscous / Re + inertial. Re > 0. */
double ow_loss_coefficient(ow_loss loss, double reynolds);
/* Pa; velocity in the bore, m/s, >= 0. */
double ow_loss_pa(ow_loss loss, const ow_liquid *liquid, double bore_m, double velocity_ms);

/* Darcy friction factor after Churchill 1977, all Re > 0, relative roughness 0..0.05. laminar is f Re of
 * the section: 64 for a full pipe. */
double ow_friction_factor(double reynolds, double relative_roughness, double laminar);
ow_loss ow_pipe_loss(double reynolds, double length_per_bore, double relative_roughness);
/* Contraction or expansion: area_ratio = small area / large area, 0 = from or to a chamber; Re in the
 * small bore. */
ow_loss ow_contraction_loss(double area_ratio, double reynolds);
ow_loss ow_expansion_loss(double area_ratio, double reynolds);
/* A hole with its entry and exit, from thin plate to short pipe; Re of one hole. */
ow_loss ow_short_tube_loss(double length_per_bore, double reynolds);

/* ---- pieces in a row ----------------------------------------------------------------------- */

/* kind in code, word in a LINE */
#define OW_PIECE_LIST(X)                                 \
    X(OW_PIECE_CHAMBER, "chamber")                       \
    X(OW_PIECE_PIPE, "pipe")                             \
    X(OW_PIECE_ELBOW_90, "elbow-90")                     \
    X(OW_PIECE_ELBOW_90_LONG, "elbow-90-long")           \
    X(OW_PIECE_ELBOW_45, "elbow-45")                     \
    X(OW_PIECE_TEE_BRANCH, "tee-branch")                 \
    X(OW_PIECE_TEE_BRANCH_DRILLED, "tee-branch-drilled") \
    X(OW_PIECE_TEE_RUN, "tee-run")                       \
    X(OW_PIECE_HOLES, "holes")                           \
    X(OW_PIECE_RESTRICTOR, "restrictor")                 \
    X(OW_PIECE_FIXED, "fixed")
#define OW_PIECE_NAME(name, word) name,
typedef enum ow_piece_kind { OW_PIECE_LIST(OW_PIECE_NAME) OW_PIECE_KIND_COUNT } ow_piece_kind;
#undef OW_PIECE_NAME
const char *ow_piece_word(ow_piece_kind kind);

/*
 * One piece of a line. A chamber is wide and still; holes and restrictor are short tubes side by side
 * between two chambers, so that a pipe that meets them ends or begins in one; fixed is a loss of a given
 * coefficient on its bore, without steps.
 */
typedef struct ow_piece {
    ow_piece_kind kind;
    const char *name;   /* for the reader, lent; NULL or "" if none */
    double bore_m;      /* not for a chamber */
    double length_m;    /* pipe, holes, restrictor */
    int count;          /* holes: how many side by side; else 1 */
    double coefficient; /* fixed */
} ow_piece;

/* 3-K figures of a fitting (Darby); kinds without them give NULL. */
typedef struct ow_three_k {
    ow_piece_kind kind;
    double k1, ki, kd;
    const char *source;
} ow_three_k;
const ow_three_k *ow_three_k_find(ow_piece_kind kind);
ow_loss ow_fitting_loss(ow_piece_kind kind, double bore_m);

/* What one piece, or one step of bore between two, costs. */
typedef struct ow_piece_loss {
    const char *kind; /* the piece's word, or "entry", "contraction", "expansion", "exit", "rise"; constant */
    const char *name; /* the piece's, or "" */
    size_t piece;     /* its index; for a step, the piece after it */
    bool is_step;     /* a step of bore, entry or exit; not a piece of its own */
    double bore_m;    /* the small one; 0 for a rise */
    double velocity_ms;
    double reynolds; /* 0 where nothing flows, and for a rise */
    double loss_pa;
} ow_piece_loss;

/* Enough room for ow_pieces_losses. */
#define OW_PIECE_LOSSES_MAX(piece_count) (2 * (piece_count) + 1)

/*
 * OW_RANGE if a piece lies outside what can be worked in (*wrong is its index), else OW_OK.
 */
ow_status ow_pieces_check(const ow_piece *pieces, size_t count, size_t *wrong);
/*
 * Loss along the pieces at a flow >= 0, Pa. `before` is the piece upstream of the first, for the
 * step into it, or NULL. The pieces are trusted: see ow_pieces_check.
 */
double ow_pieces_loss_pa(const ow_piece *before, const ow_piece *pieces, size_t count,
                         const ow_liquid *liquid, double roughness_m, double flow_m3s);
/* The same, one by one in order of flow; chambers are not listed. Returns how many were written, at most
 * OW_PIECE_LOSSES_MAX(count). */
size_t ow_pieces_losses(const ow_piece *before, const ow_piece *pieces, size_t count, const ow_liquid *liquid,
                        double roughness_m, double flow_m3s, ow_piece_loss *losses);
/* Volume inside pipes, holes and restrictors, m3. */
double ow_pieces_volume_m3(const ow_piece *pieces, size_t count);

/* ---- loads and trees ----------------------------------------------------------------------- */

/*
 * A bearing as a load: p = a mu Q + b rho Q^2 through one reference point, of whose pressure
 * laminar_share is the first term's. Back pressure zero.
 */
typedef struct ow_load {
    const char *name; /* lent */
    double flow_m3s;
    double pressure_pa;
    double viscosity_pas;
    double density_kgm3;
    double laminar_share; /* 0..1 */
} ow_load;

double ow_load_pressure_pa(const ow_load *load, const ow_liquid *liquid, double flow_m3s);
double ow_load_flow_m3s(const ow_load *load, const ow_liquid *liquid, double pressure_pa);

#define OW_BRANCH_DEPTH_MAX 3 /* splits behind one another */
#define OW_BRANCHES_MAX 8     /* at one split */
#define OW_BRANCHES_IN_ALL 24
#define OW_PIECES_MAX 200 /* in all */

/* A line that ends in a load, in a split, or dead (neither): no flow, the pressure of its root. */
typedef struct ow_branch ow_branch;
struct ow_branch {
    const char *name; /* lent; NULL or "" if none */
    size_t piece_count;
    const ow_piece *pieces;
    double rise_m; /* its end above its start */
    bool has_load;
    ow_load load;
    bool ball_bearing;   /* the load is one, and is held to the pressure that it wants */
    size_t branch_count; /* a split, if not 0 */
    const ow_branch *branches;
};

typedef struct ow_branch_flow {
    const ow_branch *branch;
    const ow_piece *before; /* last piece of the branch it hangs on, or NULL */
    size_t parent;          /* index of that branch; its own for the trunk */
    double flow_m3s;
    double start_pa; /* where it begins */
    double loss_pa;  /* by flow */
    double rise_pa;
    double end_pa; /* at its load, split or dead end; below 0 only at a split too high for its source, or
                      pulled at */
} ow_branch_flow;

/* Branches in the tree, the trunk counted. */
size_t ow_branch_total(const ow_branch *trunk);
bool ow_branch_has_load(const ow_branch *trunk);
/* OW_RANGE if any number, or the shape, lies outside what can be worked in. */
ow_status ow_branch_check(const ow_branch *trunk);
/*
 * Solves the tree for a source pressure (Pa gauge, 0..10 MPa) by bracketing, to a relative 1e-12: in each
 * branch the pressure drop rises with the flow, so there is one answer. flows takes ow_branch_total items, in
 * walking order, the trunk first. A line too high for the source's pressure carries nothing.
 * OW_RANGE: flows untouched.
 */
ow_status ow_branch_solve(const ow_branch *trunk, const ow_liquid *liquid, double roughness_m,
                          double source_pa, ow_branch_flow *flows);
/* Flow through the pieces alone, into nothing: what fills a dry line. OW_RANGE as above. */
ow_status ow_pieces_free_flow_m3s(const ow_piece *pieces, size_t count, const ow_liquid *liquid,
                                  double roughness_m, double drop_pa, double *flow_m3s);

#endif
