/* SPDX-License-Identifier: MIT */
/* Jobs that pass, and what spoils each. */
#ifndef OW_TESTS_RULES_JOBS_H
#define OW_TESTS_RULES_JOBS_H

#include "rules/rule_case.h"

#define JOB_OIL "oil: {kv40: 110, kv100: 14.7, rho15: 878}\n"
#define JOB_STATES                                                                                      \
    "states: [{name: warm idle, oil: 90 C, gallery: 1.5 bar}, {name: hot rev, oil: 95 C, gallery: 4.0 " \
    "bar}]\n"
#define JOB_FEED "feed: {from: gallery, to: oil-in, hose: 650 mm, rise: 0.25 m}\n"
#define JOB_DRAIN                                                                                        \
    "drain: {to: [plate], route: [[0 mm, 0 mm, 0 mm], [30 mm, 0 mm, -150 mm], [100 mm, 0 mm, -300 mm]]," \
    " oil-level: -400 mm, crankcase: 0.5 kPa, hose: fluoro-silicone, flow: 1.5 L/min, aeration: 2}\n"
#define JOB_COOLANT                                                                                     \
    "coolant: {from: head, to: bottom, angle: 15 deg, coolant: 50 % glycol, cap: 1.0 bar, rise: 0.2 m," \
    " heat: 15 W, hoses: [700 mm, 600 mm]}\n"

static const char job_plain[] =
    "job: plain\nengine: brockle\nturbo: plover\nkeep: [sw-2]\n" JOB_OIL JOB_STATES JOB_FEED JOB_DRAIN
        JOB_COOLANT;
/* A ball-bearing unit with the restrictor that it wants. */
static const char job_ball[] = "job: ball\nengine: brockle\nturbo: curlew\nkeep: [sw-2]\n" JOB_OIL
                               "states: [{name: warm idle, oil: 90 C, gallery: 1.5 bar}, {name: hot rev, "
                               "oil: 95 C, gallery: 4.8 bar}]\n" JOB_FEED JOB_DRAIN;

/* The hose that goes soft. */
static const char job_nitrile[] =
    "job: nitrile\nengine: brockle\nturbo: plover\nkeep: [sw-2]\n" JOB_OIL JOB_STATES JOB_FEED
    "drain: {to: [plate], route: [[0 mm, 0 mm, 0 mm], [100 mm, 0 mm, -300 mm]], oil-level: -400 mm,"
    " crankcase: 0.5 kPa, hose: nitrile, flow: 1.5 L/min, aeration: 2}\n" JOB_COOLANT;
/* A turbo that stands low over its sump. */
static const char job_low[] =
    "job: low\nengine: brockle\nturbo: plover\nkeep: [sw-2]\n" JOB_OIL JOB_STATES JOB_FEED
    "drain: {to: [door], route: [[0 mm, 0 mm, 0 mm], [40 mm, 0 mm, -120 mm]], oil-level: -170 mm,"
    " crankcase: 0.5 kPa, hose: fluoro-silicone, flow: 1.5 L/min, aeration: 2}\n" JOB_COOLANT;
/* The engine's coolant ports are found by themselves. */
static const char job_loop[] =
    "job: loop\nengine: brockle\nturbo: plover\nkeep: [sw-2]\n" JOB_OIL JOB_STATES JOB_FEED JOB_DRAIN
    "coolant: {angle: 15 deg, coolant: water, cap: 1.0 bar, rise: 0.2 m, heat: 100 W, hoses: [700 mm, 600 "
    "mm]}\n";

static const rule_case job_cases[] = {
    /* ---- all circuits ---- */
    {"no-stack", SUBJECT_JOB, job_plain,
     PAGE("oil-in: {end: -4 flare37 male, circuit: feed, bore: 4.4 mm, position: [0 m, 0 m, 0.095 m]}",
          "oil-in: {end: M18x1.5 female washer, circuit: feed, bore: 4.4 mm, position: [0 m, 0 m, 0.095 m]}"),
     OW_ERROR, "one made part", "Buy or have made the part",
     PAGE("  - [rf,",
          "  - [made, by the turner, M18x1.5 male washer, -4 flare37 male, 4.4 mm, 30 mm, 25.00]\n  - [rf,")},
    {"not-reckoned", SUBJECT_JOB, job_plain,
     PAGE("hose -4 ptfe, hose -4 ptfe, 4.8 mm", "hose -4 ptfe, hose -4 ptfe, ~"), OW_WARNING,
     "a bore is not said", "Give the bore of every part",
     PAGE("hose -4 ptfe, hose -4 ptfe, ~", "hose -4 ptfe, hose -4 ptfe, 4.7 mm")},
    /* ---- feed ---- */
    {"turbo-pressure", SUBJECT_JOB, job_plain,
     TEXT("coolant: {from", "limits: {turbo-pressure: 3.0 bar}\ncoolant: {from"), OW_ERROR,
     "the turbo sees 3.66 bar, the job allows 3.00 bar", "mend the relief valve",
     TEXT("gallery: 4.0 bar", "gallery: 3.0 bar")},
    {"restrictor-size", SUBJECT_JOB, job_ball, TEXT("gallery: 4.8 bar", "gallery: 6.0 bar"), OW_WARNING,
     "with the hole of 1.00 mm the turbo gets", "Fit the drill size that is named",
     PAGE("4.4 mm, 1.0 mm, 29 mm", "4.4 mm, 0.9 mm, 29 mm")},
    {"unsure", SUBJECT_JOB, job_plain, TEXT("gallery: 1.5 bar", "gallery: 0.78 bar"), OW_NOTE,
     "would change the verdict", "Measure, then reckon again", TEXT("gallery: 0.78 bar", "gallery: 1.3 bar")},
    {"hose-heat", SUBJECT_JOB, job_nitrile, TEXT("oil: 95 C", "oil: 105 C"), OW_ERROR,
     "nitrile rubber stands -40 to 100 C; it sees 105 C", "Use a hose made for it",
     TEXT("hose: nitrile", "hose: fluoro-silicone")},
    {"hose-fluid", SUBJECT_JOB, job_plain, TEXT("hose: fluoro-silicone", "hose: silicone"), OW_ERROR,
     "silicone without a liner does not stand oil", "fluoro-lined for oil",
     TEXT("hose: silicone", "hose: fluoro-silicone")},
    /* ---- drain ---- */
    {"no-return", SUBJECT_JOB, job_plain,
     PAGE("  plate: {end: flange p48, circuit: drain,", "  plate: {end: flange p48,"), OW_ERROR,
     "brockle offers no return for the oil of plover", "Have a stub plated",
     PAGE("  plate: {end: flange p48,", "  plate: {end: flange p48, circuit: drain,")},
    {"outlet-unknown", SUBJECT_JOB, job_plain,
     PAGE("oil-out: {end: flange f38, circuit: drain, bore: 15.5 mm,",
          "oil-out: {end: flange f38, bore: 15.5 mm,"),
     OW_WARNING, "the record of plover names no oil outlet", "Write the outlet into its record",
     PAGE("oil-out: {end: flange f38, bore: 15.5 mm,",
          "oil-out: {end: flange f38, circuit: drain, bore: 15.5 mm,")},
    {"oil-level-unknown", SUBJECT_JOB, job_plain, TEXT(" oil-level: -400 mm,", ""), OW_NOTE,
     "oil level is not given", "Measure it from the turbo's outlet",
     TEXT(" crankcase", " oil-level: -390 mm, crankcase")},
    {"drain-drowned", SUBJECT_JOB, job_plain, TEXT("-400 mm", "-280 mm"), OW_ERROR,
     "the return enters 20 mm below the sump's oil", "Lead it in above", TEXT("-280 mm", "-310 mm")},
    {"drain-head", SUBJECT_JOB, job_low, TEXT("0.5 kPa", "0.99 kPa"), OW_ERROR,
     "0.99 kPa in the crankcase needs 176 mm, 4 of them for friction", "or lower the crankcase's pressure",
     TEXT("0.99 kPa", "0.4 kPa")},
    {"crankcase-pressure", SUBJECT_JOB, job_plain, TEXT("0.5 kPa", "2 kPa"), OW_WARNING,
     "the crankcase stands at 2.00 kPa", "Mend the breather", TEXT("2 kPa", "0.8 kPa")},
    {"drain-level", SUBJECT_JOB, job_plain, TEXT("[30 mm, 0 mm, -150 mm]", "[30 mm, 0 mm, 0 mm]"), OW_ERROR,
     "oil does not leave", "Lead the drain downhill", TEXT("[30 mm, 0 mm, 0 mm]", "[30 mm, 0 mm, -60 mm]")},
    {"drain-sag", SUBJECT_JOB, job_plain, TEXT("[30 mm, 0 mm, -150 mm]", "[30 mm, 0 mm, -350 mm]"), OW_ERROR,
     "behind a low point", "Shorten the hose", TEXT("[30 mm, 0 mm, -350 mm]", "[30 mm, 0 mm, -150 mm]")},
    {"drain-slope", SUBJECT_JOB, job_plain, TEXT("[100 mm, 0 mm, -300 mm]", "[700 mm, 0 mm, -300 mm]"),
     OW_WARNING, "its slope is 12.6 degrees; 15 or more", "Lead it down more steeply",
     TEXT("[700 mm, 0 mm, -300 mm]", "[300 mm, 0 mm, -300 mm]")},
    {"drain-narrows", SUBJECT_JOB, job_plain, PAGE("bead 19, 19.2 mm", "bead 19, 15.2 mm"), OW_WARNING,
     "st-p narrows it from 15.5 mm to 15.2 mm", "Use the same bore or a wider one",
     PAGE("bead 19, 15.2 mm", "bead 19, 19 mm")},
    /* ---- coolant ---- */
    {"coolant-left-out", SUBJECT_JOB, job_plain, TEXT(JOB_COOLANT, ""), OW_WARNING,
     "is water-cooled and the job leads it no water", "Lead it water",
     TEXT(JOB_DRAIN, JOB_DRAIN JOB_COOLANT)},
    {"no-coolant-port", SUBJECT_JOB, job_loop, PAGE("circuit: coolant, bore: 8 mm", "bore: 8 mm"), OW_ERROR,
     "brockle has not two coolant ports", "or tee into a heater hose",
     PAGE("bore: 8 mm, pressure: 1.0 bar", "circuit: coolant, bore: 8 mm, pressure: 1.0 bar")},
    {"coolant-port-shared", SUBJECT_JOB, job_plain, TEXT("from: head, to: bottom", "from: head, to: head"),
     OW_ERROR, "begins and ends in this one port", "Name another port in the job",
     TEXT("from: head, to: head", "from: head, to: bottom")},
    {"coolant-flat", SUBJECT_JOB, job_plain, TEXT("angle: 15 deg", "angle: 2 deg"), OW_WARNING,
     "the ports are clocked 2 degrees off level", "about 15 degrees off level", TEXT("2 deg", "15 deg")},
    {"coolant-falls", SUBJECT_JOB, job_plain, TEXT("rise: 0.2 m", "rise: -0.004 m"), OW_WARNING,
     "ends 4 mm below the high port", "so that it rises all the way", TEXT("-0.004 m", "0.1 m")},
    {"coolant-no-rise", SUBJECT_JOB, job_plain, TEXT("rise: 0.2 m", "rise: 0 m"), OW_NOTE, "does not rise",
     "Let the return rise", TEXT("rise: 0 m", "rise: 0.1 m")},
    {"heater-valve", SUBJECT_JOB, job_plain,
     TEXT("coolant: {from: head", "coolant: {heater: yes, from: head"), OW_WARNING,
     "a heater valve that is shut stops it", "Lead it past the valve", TEXT("heater: yes, ", "")},
};

#endif
