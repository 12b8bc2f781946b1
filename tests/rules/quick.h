/* SPDX-License-Identifier: MIT */
/* Lines, loops, drains and oils that pass, and what spoils each. */
#ifndef OW_TESTS_RULES_QUICK_H
#define OW_TESTS_RULES_QUICK_H

#include "rules/rule_case.h"

#define LINE_LOAD(flow, share)                                                                     \
    "load: {name: turbo, flow: " flow " L/min, at: 3 bar, viscosity: 8 mPa.s, density: 830 kg/m3," \
    " laminar-share: " share "}\n"
#define LINE_PIPES "pipe: {bore: 4.4 mm, length: 60 mm}, pipe: {bore: 4.8 mm, length: 650 mm}"

static const char line_plain[] = "line: plain\noil: {kv40: 110, kv100: 14.7, rho15: 878}\nrise: 0.25 m\n"
                                 "states: [{name: hot, oil: 100 C, gallery: 1.6 bar}]\n"
                                 "pieces: [chamber, " LINE_PIPES ", chamber]\n" LINE_LOAD("2", "1");
static const char line_short[] =
    "line: short\noil: {kv40: 110, kv100: 14.7, rho15: 878}\n"
    "states: [{name: hot, oil: 100 C, gallery: 2.6 bar}]\n"
    "pieces: [chamber, pipe: {bore: 4.4 mm, length: 60 mm}, chamber]\n" LINE_LOAD("4", "1");
static const char line_ball[] = "line: ball bearing\noil: {kv40: 110, kv100: 14.7, rho15: 878}\n"
                                "states: [{name: hot, oil: 100 C, gallery: 3 bar}]\n"
                                "pieces: [chamber, " LINE_PIPES ", chamber]\nload: {bearing: ball}\n";
#define HELD(target)                                                                                 \
    "restrictor: {length: 3 mm, target: " target " bar, state: warm}\npieces: [chamber, " LINE_PIPES \
    ", restrictor: wanted, chamber]\n"
#define LET "pieces: [chamber, " LINE_PIPES ", chamber]\n"
#define DRILLED "pieces: [chamber, " LINE_PIPES ", holes: {count: 1, bore: 1.4 mm, length: 3 mm}, chamber]\n"
/* Held by a hole that is solved for; here the gallery gives too little to need one. */
static const char line_held[] =
    "line: held\noil: 10W-40\nstates: [{name: warm, oil: 100 C, gallery: 3.0 bar}]\n" LINE_LOAD("0.8", "0.5")
        HELD("3.2");
static const char line_held_right[] =
    "line: held\noil: 10W-40\nstates: [{name: warm, oil: 100 C, gallery: 5.0 bar}]\n" LINE_LOAD("0.8", "0.5")
        HELD("3.0");

#define LOOP(heat, cold, angle, rise)                                                                        \
    "loop: risen\ncoolant: 50 % glycol\nheat: " heat "\ncold: " cold "\nports: {apart: 70 mm, angle: " angle \
    "}\nrise: " rise "\ncold-leg: [pipe: {bore: 10 mm, length: 1.0 m}]\n"                                    \
    "hot-leg: [pipe: {bore: 10 mm, length: 0.6 m}]\njacket: {k: 6, bore: 10 mm}\ncap: 1.0 bar\n"
static const char loop_risen[] = LOOP("300 W", "90 C", "15 deg", "0.20 m");
static const char loop_cool[] = LOOP("10 W", "70 C", "15 deg", "0.20 m");

static const char drain_steep[] =
    "bore=15.9 mm\nslope=30 deg\nflow=1.5 L/min\naeration=2\ngrade=15W-40\nat=100 C\n";
static const char oil_light[] = "kv40=8\nkv100=2.1\nat=100 C\n";
static const char oil_hot[] = "kv40=110\nkv100=14.7\ngrade=15W-40\nat=100 C\n";

static const rule_case quick_cases[] = {
    /* ---- oil ---- */
    {"oil-window", SUBJECT_OIL, oil_hot, TEXT("kv100=14.7", "kv100=17.7"), OW_WARNING,
     "17.7 mm2/s at 100 C lies outside 12.5 to 16.3 of 15W-40", "KV100 or the grade is wrong",
     TEXT("15W-40", "20W-50")},
    {"oil-cold", SUBJECT_OIL, oil_hot, TEXT("at=100 C", "at=5 C"), OW_WARNING, "good to about 40 %",
     "from 20 C up", TEXT("at=5 C", "at=20 C")},
    {"oil-hot", SUBJECT_OIL, oil_hot, TEXT("at=100 C", "at=135 C"), OW_WARNING, "135 C is hot for an oil",
     "80 to 110 C is normal", TEXT("at=135 C", "at=110 C")},
    {"oil-thin", SUBJECT_OIL, oil_light, TEXT("at=100 C", "at=110 C"), OW_WARNING,
     "is less than the formula is made for", "where the oil has 2 mm2/s", TEXT("at=110 C", "at=95 C")},
    /* ---- feed ---- */
    {"feed-pressure-high", SUBJECT_LINE, line_plain, TEXT("1.6 bar", "5.5 bar"), OW_WARNING,
     "above the 4.5 bar (65 psi)", "mend the relief valve", TEXT("5.5 bar", "4.5 bar")},
    {"feed-ball-high", SUBJECT_LINE, line_ball, TEXT("gallery: 3 bar", "gallery: 4.5 bar"), OW_WARNING,
     "above the 2.8 to 3.1 bar (40 to 45 psi) that a ball bearing wants", "Fit a restrictor",
     TEXT("pipe: {bore: 4.8 mm, length: 650 mm}, chamber]",
          "pipe: {bore: 4.8 mm, length: 650 mm}, holes: {count: 1, bore: 1 mm, length: 3 mm}, chamber]")},
    {"feed-pressure-low", SUBJECT_LINE, line_plain, TEXT("1.6 bar", "0.6 bar"), OW_WARNING,
     "less than 0.7 bar (10 psi)", "or another take-off", TEXT("0.6 bar", "1.2 bar")},
    {"feed-dry", SUBJECT_LINE, line_plain, TEXT("1.6 bar", "0.01 bar"), OW_ERROR, "0.01 bar do not lift it",
     "Take the oil from a port with more pressure", TEXT("0.01 bar", "2 bar")},
    {"feed-transition", SUBJECT_LINE, line_short, TEXT("flow: 4 L/min", "flow: 16 L/min"), OW_NOTE,
     "The pipe of 4.4 mm runs at Re", "use a bore that keeps it laminar", TEXT("bore: 4.4 mm", "bore: 8 mm")},
    {"oil-cold", SUBJECT_LINE, line_plain, TEXT("oil: 100 C", "oil: 10 C"), OW_WARNING,
     "At 10 C the viscosity", "from 20 C up", TEXT("oil: 10 C", "oil: 40 C")},
    {"oil-hot", SUBJECT_LINE, line_plain, TEXT("oil: 100 C", "oil: 155 C"), OW_ERROR, "The oil is at 155 C",
     "Cool the oil", TEXT("oil: 155 C", "oil: 105 C")},
    {"restrictor-needless", SUBJECT_LINE, line_held_right, TEXT("5.0 bar", "2.8 bar"), OW_NOTE,
     "does not exceed 3.00 bar without a restrictor", "Leave it out", TEXT(HELD("3.0"), LET)},
    {"restrictor-clogs", SUBJECT_LINE, line_held_right, TEXT("gallery: 5.0 bar", "gallery: 12 bar"),
     OW_WARNING, "clogs", "with less pressure", TEXT("12 bar", "5 bar")},
    {"restrictor-cold", SUBJECT_LINE, line_held_right,
     TEXT("{name: warm,", "{name: cool, oil: 25 C, gallery: 5.0 bar}, {name: warm,"), OW_NOTE,
     "At 25 C the turbo sees 4.38 bar behind the restrictor", "Warm the engine",
     TEXT("25 C, gallery: 5.0 bar", "25 C, gallery: 3.2 bar")},
    {"restrictor-band", SUBJECT_LINE, line_held, TEXT("3.2 bar", "2.5 bar"), OW_NOTE,
     "A hole of 1.39 mm gives 2.50 bar to about 10 %", "Measure the pressure behind it and drill to suit",
     TEXT(HELD("2.5"), DRILLED)},
    /* ---- drain ---- */
    {"drain-fill", SUBJECT_DRAIN, drain_steep, TEXT("at=100 C", "at=36 C"), OW_ERROR, "L/min of froth fill",
     "or use a wider hose", TEXT("15.9 mm", "25 mm")},
    {"drain-flooded", SUBJECT_DRAIN, drain_steep, TEXT("at=100 C", "at=22 C"), OW_ERROR,
     "more than the pipe carries with a free surface", "or use a wider hose", TEXT("15.9 mm", "28 mm")},
    {"drain-pool", SUBJECT_DRAIN, drain_steep, TEXT("flow=1.5 L/min", "flow=2.5 L/min"), OW_ERROR,
     "is 20.0 mm deep; 17.1 mm of bore keep it at 15 mm", "Use a wider outlet fitting",
     TEXT("15.9 mm", "17.2 mm")},
    {"drain-slope", SUBJECT_DRAIN, drain_steep, TEXT("30 deg", "13 deg"), OW_WARNING,
     "slope is 13 degrees; 15 or more", "Lead it down more steeply", TEXT("13 deg", "15 deg")},
    {"drain-bore", SUBJECT_DRAIN, drain_steep, TEXT("15.9 mm", "14.8 mm"), OW_WARNING,
     "14.8 mm inside; 15 mm or more", "with true bores, not dash sizes", TEXT("14.8 mm", "15.2 mm")},
    /* ---- coolant ---- */
    {"coolant-boils", SUBJECT_LOOP, loop_risen, TEXT("300 W", "1500 W"), OW_ERROR, "boils at 129.5 C",
     "Let the return rise", TEXT("0.20 m", "0.80 m")},
    {"coolant-margin", SUBJECT_LOOP, loop_risen, TEXT("300 W", "940 W"), OW_WARNING, "K below boiling",
     "Let the return rise more", TEXT("0.20 m", "0.50 m")},
    {"coolant-stands-still", SUBJECT_LOOP, loop_risen, TEXT("0.20 m", "-0.30 m"), OW_ERROR,
     "does not go round by itself", "let the return rise", TEXT("-0.30 m", "0.20 m")},
    {"coolant-cold-port-high", SUBJECT_LOOP, loop_risen, TEXT("15 deg", "-10 deg"), OW_WARNING,
     "At -10 degrees", "Turn the housing", TEXT("-10 deg", "15 deg")},
    {"coolant-clocking", SUBJECT_LOOP, loop_risen, TEXT("15 deg", "40 deg"), OW_ERROR, "At 40 degrees",
     "Turn it to about 15 degrees", TEXT("40 deg", "15 deg")},
    {"coolant-no-rise", SUBJECT_LOOP, loop_cool, TEXT("0.20 m", "0 m"), OW_NOTE, "does not rise above",
     "Let the return rise", TEXT("rise: 0 m", "rise: 0.20 m")},
    {"coolant-falls", SUBJECT_LOOP, loop_cool, TEXT("0.20 m", "-0.005 m"), OW_WARNING,
     "ends 5 mm below the high port", "so that it rises all the way", TEXT("-0.005 m", "0.10 m")},
    {"coolant-beyond-fit", SUBJECT_LOOP, loop_cool, TEXT("10 W", "600 W"), OW_NOTE, "is beyond the 100 C",
     "a return that rises more", TEXT("0.20 m", "0.60 m")},
};

#endif
