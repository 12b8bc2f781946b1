/* SPDX-License-Identifier: MIT */
/*
 * Geometry of a thread: the profile, basic and limiting diameters, gauge plane and engagement, the hole
 * to tap it in. Reckoned from the standards' formulas: ISO 68-1, ISO 965-1, ASME B1.1, ASME B1.20.1,
 * ISO 7-1, ISO 228-1, DIN 158-1. docs/threads.md gives the formulas with worked examples.
 */
#ifndef OILWAY_THREAD_SIZE_H
#define OILWAY_THREAD_SIZE_H

#include "oilway/thread.h"

/* Tolerance classes. USUAL: 6g/6H, 2A/2B, G class A; taper threads have none. */
typedef enum ow_thread_class {
    OW_CLASS_USUAL,
    OW_CLASS_6G_EXTERNAL, /* 6g */
    OW_CLASS_6H_EXTERNAL, /* 6h */
    OW_CLASS_6H_INTERNAL, /* 6H */
    OW_CLASS_2A,
    OW_CLASS_3A,
    OW_CLASS_2B,
    OW_CLASS_3B,
    OW_CLASS_A, /* ISO 228-1 external */
    OW_CLASS_B,
    OW_CLASS_COUNT
} ow_thread_class;

/* Limits of size, m. A limit that no standard gives (a root's, mostly) is not there. */
typedef struct ow_size_limits {
    double basic_m;
    bool has_least, has_most;
    double least_m, most_m;
} ow_size_limits;

/* What a figure of a size rests on. */
typedef enum ow_basis {
    OW_BASIS_PUBLISHED, /* tabulated in the standard, or its formula gives the tabulated figure */
    OW_BASIS_COMPUTED,  /* the standard's formula, whose rounding may differ by a step from its table */
    OW_BASIS_MEMORY     /* from memory: a hint, not an authority */
} ow_basis;
const char *ow_basis_words(ow_basis basis);

/* One side of a thread, male or female. Lengths in m. Taper: diameters at the gauge plane. */
typedef struct ow_thread_size {
    ow_thread thread;
    bool male;
    const char *class_name; /* "6g", "2B", "class A", "" for a taper */
    double pitch_m;
    double flank_angle_rad; /* half the profile angle: 30 or 27.5 degrees */
    double triangle_m;      /* H, the sharp-V height */
    double depth_m;         /* of the basic profile, on the radius */
    double taper;           /* on the diameter, per length: 0 or 1/16 */
    ow_size_limits major, pitch_diameter, minor;
    /* Taper only, else 0. The gauge plane is where the tabulated diameters are: the hand-tight length
     * from the small end of a male, the face of an NPT female, half a pitch inside that of an Rc. */
    double gauge_m;           /* male: small end to gauge plane; female: face to gauge plane */
    double gauge_tolerance_m; /* plus or minus, along the axis */
    double useful_m;          /* effective thread: L2 of NPT, least useful thread of R */
    double wrench_m;          /* thread kept for the wrench beyond hand-tight */
    double hand_tight_m;      /* engagement hand-tight: L1, or the gauge length */
    double small_end_m;       /* male: pitch diameter at the small end (E0) */
    double mouth_m;           /* female: pitch diameter at the face */
    ow_basis diameters_basis, limits_basis, lengths_basis;
    const char *source; /* standard by number, edition where seen */
} ow_thread_size;

/*
 * The size of one side. OW_NONE if the standard has no such side (a female DIN 158 thread, a male Rc,
 * a female R), OW_RANGE if the pitch is not said, the size is in no table, or the class belongs to
 * another family or the other gender; *size is untouched then. Cost: a few formulas.
 */
ow_status ow_thread_size_of(const ow_thread *thread, bool male, ow_thread_class class_wanted,
                            ow_thread_size *size);

/* The class of that word: "6g", "6H", "2A", "A", "class B", any case but for g/G and h/H, which decide
 * between male and female; false if it is none. */
bool ow_thread_class_read(const char *words, ow_thread_class *class_read);
const char *ow_thread_class_name(ow_thread_class class_named);
/*
 * The whole of words as a designation with its class behind it, as drawings write it: "7/16-20 UNF-2A",
 * "M12x1.5-6g", "G1/4 A"; OW_CLASS_USUAL if none is said. OW_INPUT: not readable; nothing is reported.
 */
ow_status ow_thread_read_class(const char *words, ow_thread *thread, ow_thread_class *class_read);

/* Diameter of the male's crest (major) or of the female's crest (minor) at a distance from the male's
 * small end or the female's face, m; the same everywhere for a parallel thread. */
ow_size_limits ow_thread_crest_at(const ow_thread_size *size, double distance_m);

/* The hole that a female thread is cut in. */
typedef struct ow_tapping {
    ow_thread hole;       /* the thread that is cut */
    double drill_m;       /* to the 0.1 mm that drills come in */
    double minor_least_m; /* limits of the bore that the drill must make; taper: at the small end */
    double minor_most_m;
    double thread_depth_m;       /* full thread: for a stud in steel */
    double thread_depth_light_m; /* the same in light alloy */
    double drill_depth_m;        /* blind hole: thread_depth_light plus the tap's lead */
    double wall_least_m;         /* least metal around the major diameter (common practice) */
    double face_m;     /* flat face that a washer wants around a parallel port, diameter; 0 for a taper */
    bool taper_reamed; /* wants a 1:16 reamer after the drill to be at its best */
    ow_basis basis;
    const char *source;
} ow_tapping;
/* The hole for a male-only thread is that of the female it screws into: Rc for R, the parallel metric for DIN
 * 158. OW_RANGE: as above. */
ow_status ow_thread_tapping(const ow_thread *thread, ow_tapping *tapping);

/* What to mind when tapping a port into an engine or a pan: one sentence each. */
size_t ow_tapping_caution_count(void);
const char *ow_tapping_caution_at(size_t index);
bool ow_tapping_caution_is_for(size_t index,
                               const ow_thread *thread); /* some are for a taper, some for none */

/* The row's remarks: series letters, what the thread is met on ("" if nothing), and whether it is an everyday
 * one on fittings; false everywhere for a thread that no table carries. */
const char *ow_thread_use(const ow_thread *thread);
bool ow_thread_is_everyday(const ow_thread *thread);

#endif
