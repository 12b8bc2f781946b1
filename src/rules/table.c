/* SPDX-License-Identifier: MIT */
/*
 * Every rule: id, usual severity, circuits, what is wrong, how to mend it, where it comes from. An id
 * is for ever: layouts, tests and people quote it. Kept in groups: the tree and its joints, limits,
 * the switch, the ask itself.
 */
#include "rules/table.h"

#define ALL "feed drain coolant"

const ow_rule ow_rules[] = {
    /* ---- the tree and its joints ---- */
    {"open-end", OW_ERROR, ALL, "An end of a part is left open.",
     "Close it with a plug or cap of the same thread and seat, or lead it to a port.", "common practice"},
    {"wrong-joint", OW_ERROR, ALL, "Two ends that are joined do not seal on each other.",
     "Put an adapter between them whose two ends match thread, gender and seat.",
     "the standards of the two ends"},
    {"tolerated-joint", OW_WARNING, ALL, "A joint that practice tolerates but no standard blesses.",
     "Use the standard's own pair of ends, or accept the joint knowingly with --tolerate.",
     "common practice"},
    {"unserved", OW_ERROR, ALL, "A port that is asked for is not reached, or reached twice.",
     "Lead exactly one exit of the layout to it.", "common practice"},
    {"closing-joint", OW_ERROR, ALL, "Between two fixed ports there is no joint that can be made last.",
     "Put a swivel nut, banjo, clamped tail, tube nut or bolted flange between them.", "common practice"},
    {"wrong-seal", OW_ERROR, ALL, "Something is used to seal a joint that does not seal that way.",
     "Take it off; tape and paste go on taper threads only.", "common practice"},
    /* ---- limits of the ask ---- */
    {"bore", OW_ERROR, ALL, "A passage is narrower than asked.",
     "Use a part with the bore that was asked for.", "asked"},
    {"bore-not-said", OW_WARNING, ALL, "A part on the path does not say its bore.",
     "Measure the bore and write it on the part's page.", "common practice"},
    {"rating", OW_ERROR, ALL, "A part's pressure rating is lower than what it sees, or is not said.",
     "Use a part rated for the pressure.", "common practice"},
    {"temperature", OW_ERROR, ALL, "A part is not made for the temperature, or does not say.",
     "Use a part whose range covers the temperature.", "common practice"},
    {"fluid", OW_ERROR, ALL, "A part is not made for the fluid, or does not say.",
     "Use a part that is listed for the fluid.", "common practice"},
    {"no-hose", OW_ERROR, ALL, "The path to a port has no hose: a rigid pipe fractures.",
     "Put one flexible hose between the two.", "common practice"},
    {"two-hoses", OW_ERROR, ALL, "The path to a port has more than one hose.",
     "Use one hose of the full length, or ask with --flexible some.", "common practice"},
    {"hose", OW_ERROR, ALL, "The path to a port has a hose though none is wanted.",
     "Use rigid parts, or ask with --flexible yes.", "asked"},
    {"rigid-pair", OW_ERROR, ALL, "Two machines are joined rigidly behind one hose.",
     "Lead a hose of its own to each.", "common practice"},
    {"restrictor-missing", OW_ERROR, "feed",
     "A ball-bearing unit that has no restrictor built in is fed without one.",
     "Put a restrictor of the maker's size, about 1 mm, at the turbo's inlet.", "common practice"},
    {"restrictor-wrong", OW_ERROR, ALL, "There is a restrictor on a path where none may be.",
     "Take it out: it starves a bearing that does not want it.", "common practice"},
    {"orifice", OW_ERROR, "feed", "The restrictor's hole lies outside the range asked for.",
     "Use a restrictor with a hole in that range.", "asked"},
    {"tee-in-drain", OW_ERROR, "drain", "There is a tee in a drain.", "Give each turbo a drain of its own.",
     "common practice"},
    /* ---- the switch and sender ---- */
    {"switch-behind-restrictor", OW_ERROR, "feed",
     "A kept switch or sender stands behind a restrictor and does not see the gallery's pressure.",
     "Put its tee upstream of the restrictor.", "common practice"},
    {"switch-behind-hose", OW_ERROR, "feed", "A kept switch or sender stands behind a hose.",
     "Put its tee on the block's side of the hose, or allow it with --remote-switch.", "common practice"},
    {"switch-loses-place", OW_WARNING, "feed",
     "The source port holds a switch now, and the layout does not keep it.",
     "Keep it on a tee with --keep, or give it another port that sees the gallery's pressure.",
     "common practice"},
    /* ---- the ask itself ---- */
    {"restrictor-unknown", OW_WARNING, "feed", "Whether the turbo has a restrictor built in is not known.",
     "Find out before buying: a second restrictor starves the bearing, none floods a ball-bearing unit.",
     "common practice"},
    {"feed-backwards", OW_WARNING, "feed", "The feed begins at a turbo.",
     "Exchange the two ports: the source is the engine's.", "common practice"},
    {"drain-not-home", OW_ERROR, "drain", "A drain leads from one turbo to another.",
     "Lead each outlet to a return of the engine, above the sump's oil.", "common practice"},
    {"pressure-assumed", OW_NOTE, ALL, "The source's pressure is assumed.",
     "Measure it, or give the rating wanted with --rating.", "assumption of this program"},
};

const size_t ow_rules_count = sizeof ow_rules / sizeof ow_rules[0];
