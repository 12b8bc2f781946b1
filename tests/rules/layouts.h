/* SPDX-License-Identifier: MIT */
/* Layouts that pass, and what spoils each. */
#ifndef OW_TESTS_RULES_LAYOUTS_H
#define OW_TESTS_RULES_LAYOUTS_H

#include "rules/rule_case.h"

#define HOSE "he, hose: {length: 650 mm}, he"
#define HOSE_WIDE "hw, hose: {length: 650 mm}, hw"
#define HOSE_STRONG "hw, hose-hp: {length: 650 mm}, hw"

#define ASKED "asked: {bore: 3 mm, flexible: any, temperature: 120 C, fluid: oil, rating: 4 bar}\n"
#define DRAIN "h19: {length: 300 mm}, st-p, brockle:plate"
#define TWO_HOSES                             \
    "  - tm: {enter: run-a}\n"                \
    "    branch: [" HOSE ", dunlin:oil-in]\n" \
    "    run-b: [" HOSE ", plover:oil-in]\n"
#define ONE_HOSE                                   \
    "  - mf\n"                                     \
    "  - he\n  - hose: {length: 650 mm}\n  - he\n" \
    "  - un\n"                                     \
    "  - ts: {enter: run-a}\n"                     \
    "    branch: [sx, dunlin:oil-in]\n"            \
    "    run-b: [sx, plover:oil-in]\n"

/* The kept switch on the side of a gauge adapter, the turbo straight on. */
static const char keeps[] = "layout: keeps\ncircuit: feed\nfrom: brockle:gallery\nparts:\n"
                            "  - ga: {enter: a, seal: {a: paste}}\n"
                            "    side: [sw-2]\n"
                            "    b: [" HOSE ", plover:oil-in]\n";
/* No switch: the side port is plugged. */
static const char plugged[] = "layout: plugged\ncircuit: feed\nfrom: brockle:boss\nparts:\n"
                              "  - ga: {enter: a}\n"
                              "    side: [pl-2]\n"
                              "    b: [" HOSE ", plover:oil-in]\n";
static const char plain[] =
    "layout: plain\ncircuit: feed\nfrom: brockle:boss\nparts: [tf, " HOSE ", plover:oil-in]\n";
/* Held to what somebody asked. */
static const char asked[] =
    "layout: asked\ncircuit: feed\nfrom: brockle:boss\n" ASKED "parts: [tf, " HOSE ", plover:oil-in]\n";
static const char iso[] =
    "layout: iso\ncircuit: feed\nfrom: brockle:side\nparts: [rf, " HOSE ", plover:oil-in]\n";
static const char washered[] = "layout: washered\ncircuit: feed\nfrom: brockle:rear\nparts:\n"
                               "  - mf: {seal: {a: washer}}\n  - he\n  - hose: {length: 650 mm}\n  - he\n"
                               "  - plover:oil-in\n";
static const char fixed[] = "layout: fixed\ncircuit: feed\nfrom: brockle:boss\n"
                            "parts: [ht, hose: {length: 650 mm}, he, tf, knot:oil-in]\n";
static const char ball[] =
    "layout: ball\ncircuit: feed\nfrom: brockle:boss\nparts: [tf, " HOSE ", rs, curlew:oil-in]\n";
static const char holed[] = "layout: holed\ncircuit: feed\nfrom: brockle:boss\n"
                            "asked: {restrictor: required, orifice: 0.8..1.1 mm, flexible: yes}\n"
                            "parts: [tf, " HOSE ", rs, curlew:oil-in]\n";
static const char ball_keeps[] = "layout: ball and switch\ncircuit: feed\nfrom: brockle:rear\nparts:\n"
                                 "  - mf\n"
                                 "  - ts: {enter: run-a}\n"
                                 "    run-b: [" HOSE ", rs, curlew:oil-in]\n"
                                 "    branch: [fs, sw-2]\n";
static const char twins[] = "layout: twins\ncircuit: feed\nfrom: brockle:rear\nparts:\n" TWO_HOSES;
static const char capped[] = "layout: capped\ncircuit: feed\nfrom: brockle:boss\nparts:\n"
                             "  - tt: {enter: run-a}\n"
                             "    run-b: [" HOSE ", plover:oil-in]\n"
                             "    branch: [cap-4]\n";
static const char sender[] = "layout: sender\ncircuit: feed\nfrom: brockle:boss\nparts:\n"
                             "  - ga: {enter: a}\n"
                             "    side: [sender-2]\n"
                             "    b: [" HOSE ", plover:oil-in]\n";
static const char thirty[] = "layout: thirty\ncircuit: feed\nfrom: brockle:boss\n"
                             "asked: {flexible: yes, fluid: oil, rating: 3 bar}\n"
                             "parts: [tf, h7, h30: {length: 650 mm}, h7, plover:oil-in]\n";
static const char drain_layout[] =
    "layout: drain\ncircuit: drain\nfrom: plover:oil-out\nparts: [st-f, " DRAIN "]\n";
static const char hot_drain[] =
    "layout: hot drain\ncircuit: drain\nfrom: plover:oil-out\nasked: {temperature: 95 C, fluid: oil}\n"
    "parts: [st-f, n19: {length: 300 mm}, st-p, brockle:plate]\n";
static const char rigid_water[] =
    "layout: water\ncircuit: coolant\nfrom: brockle:head\nasked: {flexible: no, fluid: coolant}\n"
    "parts: [water-pipe, plover:coolant-a]\n";

static const rule_case layout_cases[] = {
    /* ---- the tree and its joints ---- */
    {"open-end", SUBJECT_LAYOUT, plugged, TEXT("    side: [pl-2]\n", ""), OW_ERROR,
     "1/8-27 NPT female is left open", "Close it with a plug",
     TEXT("    b: [", "    side: [pl-2]\n    b: [")},
    {"wrong-joint", SUBJECT_LAYOUT, plain, TEXT("tf, he,", "tf, h45,"), OW_ERROR, "wrong-seat",
     "Put f45 between them: 45 to 37 degree flare", TEXT("tf, h45", "tf, f45, h45")},
    {"tolerated-joint", SUBJECT_LAYOUT, iso, PAGE("Rp1/8 female", "G1/8 female washer"), OW_WARNING,
     "ISO 7-1 has R seal in Rc or Rp only", "the standard's own pair",
     PAGE("G1/8 female washer", "Rc1/8 female")},
    {"unserved", SUBJECT_LAYOUT, twins, TEXT("dunlin:oil-in", "plover:oil-in"), OW_ERROR,
     "plover:oil-in is reached more than once", "Lead exactly one exit",
     TEXT("branch: [" HOSE ", plover", "branch: [" HOSE ", dunlin")},
    {"closing-joint", SUBJECT_LAYOUT, fixed, TEXT("he, tf", "ht"), OW_ERROR, "the last joint cannot be made",
     "Put a swivel nut", TEXT("mm}, ht", "mm}, he, tf")},
    {"wrong-seal", SUBJECT_LAYOUT, keeps, TEXT("b: [he,", "b: [he: {seal: {nut: tape}},"), OW_ERROR,
     "tape is used on this joint, which seals by 37 degree flare", "Take it off",
     TEXT("he: {seal: {nut: tape}}", "he")},
    {"no-seal", SUBJECT_LAYOUT, keeps, TEXT("a: paste", "a: none"), OW_ERROR,
     "seals by taper thread and needs thread sealant", "Use what the joint's card names",
     TEXT("a: none", "a: thread sealant")},
    {"ring-reused", SUBJECT_LAYOUT, washered, TEXT("a: washer", "a: used washer"), OW_WARNING, "used washer",
     "Use a new one", TEXT("used washer", "washer")},
    {"tape-in-feed", SUBJECT_LAYOUT, keeps, TEXT("a: paste", "a: tape"), OW_WARNING,
     "tape is used on a taper thread of the feed", "Use paste", TEXT("a: tape", "a: paste")},
    /* ---- limits of the ask ---- */
    {"bore", SUBJECT_LAYOUT, asked, TEXT("bore: 3 mm", "bore: 3.65 mm"), OW_ERROR,
     "the bore of he is 3.6 mm; 3.65 mm is asked for", "Use a part with the bore", TEXT(HOSE, HOSE_WIDE)},
    {"bore-not-said", SUBJECT_LAYOUT, asked,
     PAGE("hose -4 ptfe, hose -4 ptfe, 4.8 mm", "hose -4 ptfe, hose -4 ptfe, ~"), OW_WARNING,
     "hose does not say its bore; 3 mm is wanted", "Measure the bore",
     PAGE("hose -4 ptfe, hose -4 ptfe, ~", "hose -4 ptfe, hose -4 ptfe, 4.7 mm")},
    {"rating", SUBJECT_LAYOUT, asked, TEXT("rating: 4 bar", "rating: 150 bar"), OW_ERROR,
     "hose is rated for 103 bar; 150 bar is wanted", "Use a part rated", TEXT(HOSE, HOSE_STRONG)},
    {"temperature", SUBJECT_LAYOUT, asked, TEXT("temperature: 120 C", "temperature: 160 C"), OW_ERROR,
     "tf is made for -40 to 150 C; 160 C is wanted", "Use a part whose range",
     TEXT("tf, " HOSE, "tf-hot, " HOSE_STRONG)},
    {"fluid", SUBJECT_LAYOUT, plain, TEXT("tf, ", "tf-air, "), OW_ERROR, "tf-air is not listed for oil",
     "Use a part that is listed", TEXT("tf-air", "tf")},
    {"no-hose", SUBJECT_LAYOUT, plain, TEXT(HOSE, "pipe"), OW_ERROR,
     "there is no hose on the way to plover:oil-in", "Put one flexible hose between", TEXT("pipe", HOSE)},
    {"two-hoses", SUBJECT_LAYOUT, plain, TEXT(HOSE, HOSE ", un, " HOSE), OW_ERROR,
     "there are 2 hoses on the way", "Use one hose of the full length", TEXT(HOSE ", un, " HOSE, HOSE)},
    {"hose", SUBJECT_LAYOUT, rigid_water, TEXT("water-pipe", "tb, h10: {length: 400 mm}"), OW_ERROR,
     "and none is wanted", "Use rigid parts", TEXT("tb, h10: {length: 400 mm}", "water-pipe")},
    {"rigid-pair", SUBJECT_LAYOUT, twins, TEXT(TWO_HOSES, ONE_HOSE), OW_ERROR,
     "are joined rigidly behind one hose", "Lead a hose of its own", TEXT(ONE_HOSE, TWO_HOSES)},
    {"restrictor-missing", SUBJECT_LAYOUT, plain,
     PAGE("id: plover, bearing: journal", "id: plover, bearing: ball"), OW_ERROR,
     "there is no restrictor on the way to plover:oil-in", "Put a restrictor", TEXT(HOSE, HOSE ", rs")},
    {"restrictor-wrong", SUBJECT_LAYOUT, plain, TEXT(HOSE, HOSE ", rs"), OW_ERROR,
     "rs stands before plover:oil-in, which wants none", "Take it out", TEXT(HOSE ", rs", HOSE)},
    {"restrictor-clogs", SUBJECT_LAYOUT, ball, TEXT("rs", "rs-07"), OW_WARNING,
     "the hole of rs-07 is 0.70 mm; less than 0.8 mm clogs", "take the oil from a port with less pressure",
     TEXT("rs-07", "rs")},
    {"narrow-feed", SUBJECT_LAYOUT, plain,
     PAGE("hose -4 ptfe tail, 3.6 mm, 46 mm", "hose -4 ptfe tail, 2.4 mm, 46 mm"), OW_NOTE,
     "it is 2.4 mm wide on the way to plover:oil-in", "-4 is usual there",
     PAGE("hose -4 ptfe tail, 2.4 mm, 46 mm", "hose -4 ptfe tail, 3.1 mm, 46 mm")},
    {"second-restrictor", SUBJECT_LAYOUT, ball,
     PAGE("id: curlew, bearing: ball, restrictor: none", "id: curlew, bearing: ball, restrictor: built-in"),
     OW_ERROR, "rs stands before curlew, which has a restrictor built in", "Take one of them out",
     TEXT(", rs", "")},
    {"second-restrictor", SUBJECT_LAYOUT, ball, TEXT(", rs", ", rs, rs-12"), OW_ERROR,
     "2 restrictors stand in a row", "Take one of them out", TEXT(", rs-12", "")},
    {"restrictor-unknown", SUBJECT_LAYOUT, ball,
     PAGE("id: curlew, bearing: ball, restrictor: none", "id: curlew, bearing: ball"), OW_WARNING,
     "it is not known whether curlew has a restrictor built in", "Find out before buying",
     PAGE("id: curlew, bearing: ball", "id: curlew, bearing: ball, restrictor: none")},
    {"feed-backwards", SUBJECT_LAYOUT, asked,
     TEXT("from: brockle:boss\n" ASKED "parts: [tf, " HOSE ", plover:oil-in]",
          "from: plover:oil-in\n" ASKED "parts: [" HOSE ", tf, brockle:boss]"),
     OW_WARNING, "plover:oil-in is where the oil goes", "Exchange the two ports",
     TEXT("from: plover:oil-in\n" ASKED "parts: [" HOSE ", tf, brockle:boss]",
          "from: brockle:boss\n" ASKED "parts: [tf, " HOSE ", plover:oil-in]")},
    {"orifice", SUBJECT_LAYOUT, holed, TEXT("orifice: 0.8..1.1 mm", "orifice: 1.1..1.3 mm"), OW_ERROR,
     "the hole of rs is 1 mm; 1.1 to 1.3 mm is asked for", "Use a restrictor with a hole in that range",
     TEXT("rs", "rs-12")},
    {"drain-not-home", SUBJECT_LAYOUT, drain_layout, TEXT("st-p, brockle:plate", "st-f, dunlin:oil-out"),
     OW_ERROR, "plover:oil-out and dunlin:oil-out are both outlets of turbos",
     "Lead each outlet to a return of the engine", TEXT("st-f, dunlin:oil-out", "st-p, brockle:plate")},
    {"tee-in-drain", SUBJECT_LAYOUT, drain_layout,
     TEXT("[st-f, " DRAIN "]", "\n  - td: {enter: run-a}\n    branch: [cap-19]\n    run-b: [" DRAIN "]"),
     OW_ERROR, "td branches a drain", "Give each turbo a drain of its own",
     TEXT("\n  - td: {enter: run-a}\n    branch: [cap-19]\n    run-b: [" DRAIN "]", "[st-f, " DRAIN "]")},
    {"port-bore", SUBJECT_LAYOUT, asked, PAGE("circuit: feed, bore: 7 mm", "circuit: feed, bore: 2.5 mm"),
     OW_WARNING, "brockle:boss itself has a bore of 2.5 mm; 3 mm is asked for", "take another port",
     TEXT("brockle:boss", "brockle:front")},
    {"pressure-assumed", SUBJECT_LAYOUT, plain, PAGE("bore: 7 mm, pressure: 4.4 bar", "bore: 7 mm"), OW_NOTE,
     "6 bar is assumed for the rating of every part", "Measure it",
     PAGE("bore: 7 mm", "bore: 7 mm, pressure: 4.1 bar")},
    /* ---- the switch and sender ---- */
    {"switch-behind-restrictor", SUBJECT_LAYOUT, ball_keeps, TEXT("branch: [fs", "branch: [rs-12, fs"),
     OW_ERROR, "sw-2 stands behind a restrictor", "Put its tee upstream", TEXT("rs-12, ", "")},
    {"switch-behind-hose", SUBJECT_LAYOUT, ball_keeps, TEXT("branch: [fs", "branch: [" HOSE ", un, fs"),
     OW_ERROR, "sw-2 stands behind a hose", "Put its tee on the block's side",
     TEXT("branch: [" HOSE ", un, fs", "branch: [fs")},
    {"switch-loses-place", SUBJECT_LAYOUT, plugged, PAGE("bore: 7 mm", "bore: 7 mm, holds: sw-2"), OW_WARNING,
     "sw-2 sits in brockle:boss now and is not kept", "Keep it on a tee", TEXT("pl-2", "sw-2")},
    /* ---- what hangs on the block ---- */
    {"overhung-sender", SUBJECT_LAYOUT, sender, TEXT("- ga:", "- ga-br:"), OW_WARNING,
     "its 151 g hang 68 mm out from the block on ga-br", "Hang it on a short steel fitting",
     TEXT("ga-br", "ga")},
    {"overhung-sender", SUBJECT_LAYOUT, sender,
     PAGE("4.5 mm, 35 mm, 20 mm]\n  - [gm", "4.5 mm, 70 mm, 20 mm]\n  - [gm"), OW_NOTE,
     "its 151 g hang 86 mm out from the block", "Hang it on a short steel fitting", TEXT("ga:", "ga-short:")},
    {"long-stick-out", SUBJECT_LAYOUT, plain, TEXT("tf,", "tf-long,"), OW_NOTE,
     "156 mm of rigid parts stand out from brockle:boss", "Use shorter parts", TEXT("tf-long", "tf")},
    {"swing-room", SUBJECT_LAYOUT, plugged,
     PAGE("4.5 mm, 35 mm, 20 mm]\n  - [gm", "4.5 mm, 35 mm, 45 mm]\n  - [gm"), OW_NOTE,
     "sweeps 45 mm about it", "use a part with a swivel",
     TEXT("- ga: {enter: a}", "- tf\n  - gs: {enter: a}")},
    {"taper-aimed", SUBJECT_LAYOUT, capped,
     TEXT("run-b: [" HOSE ", plover:oil-in]\n    branch: [cap-4]",
          "run-b: [cap-4]\n    branch: [" HOSE ", plover:oil-in]"),
     OW_NOTE, "it points where the taper thread toward brockle:boss is tight", "or use a swivel",
     TEXT("- tt:", "- tf\n  - ts:")},
    /* ---- hoses ---- */
    {"clamped-feed", SUBJECT_LAYOUT, plain, TEXT(HOSE, "fb, h8: {length: 650 mm}, fb"), OW_ERROR,
     "only a clamp holds the hose here", "Use a hose with screwed ends",
     TEXT("fb, h8: {length: 650 mm}, fb", HOSE)},
    {"rigid-feed", SUBJECT_LAYOUT, asked, TEXT(HOSE, "pipe"), OW_WARNING,
     "the whole way to plover:oil-in is rigid", "Put one flexible hose", TEXT("pipe", HOSE)},
    {"hose-bend", SUBJECT_LAYOUT, plain, TEXT("650 mm", "70 mm"), OW_WARNING,
     "it is cut 70 mm long; a quarter turn at its least radius of 51 mm takes 80 mm", "Cut it longer",
     TEXT("70 mm", "90 mm")},
    {"hose-short", SUBJECT_LAYOUT, keeps, TEXT("650 mm", "150 mm"), OW_ERROR,
     "the ports stand 302 mm apart or more", "Cut it 184 to 189 mm long", TEXT("150 mm", "186 mm")},
    {"hose-short", SUBJECT_LAYOUT, keeps, TEXT("650 mm", "180 mm"), OW_WARNING, "would be taut",
     "Cut it 184 to 189 mm long", TEXT("180 mm", "189 mm")},
    {"hose-fluid", SUBJECT_LAYOUT, drain_layout, TEXT("h19", "s19"), OW_ERROR,
     "silicone without a liner does not stand oil", "fluoro-lined for oil", TEXT("s19", "h19")},
    {"hose-heat", SUBJECT_LAYOUT, hot_drain, TEXT("95 C", "130 C"), OW_ERROR,
     "nitrile rubber stands -40 to 100 C; it sees 130 C", "Use a hose made for it", TEXT("n19", "h19")},
    {"hose-pressure", SUBJECT_LAYOUT, thirty, TEXT("rating: 3 bar", "rating: 4 bar"), OW_ERROR,
     "is made for 3.5 bar; it sees 4 bar", "Use a reinforced hose",
     TEXT("h7, h30: {length: 650 mm}, h7", HOSE)},
};

#endif
