/* SPDX-License-Identifier: MIT */
/* What a fitter says at the bench beside what the standards of the ends and the limits of the ask say. */
#include "rules/table.h"

const ow_rule ow_practice_rules[] = {
    /* ---- what seals ---- */
    {"no-seal", OW_ERROR, "feed drain coolant", "Nothing is used on a joint that needs something to seal it.",
     "Use what the joint's card names, new.", "the standard of the joint"},
    {"ring-reused", OW_WARNING, "feed drain coolant", "A ring or gasket is used a second time.",
     "Use a new one: it seals by being crushed once.", "common practice"},
    {"tape-in-feed", OW_WARNING, "feed", "Tape is used on a taper thread of the feed.",
     "Use paste or anaerobic sealant, away from the first thread: shreds of tape go into the bearing.",
     "common practice"},
    /* ---- what hangs on the block ---- */
    {"overhung-sender", OW_WARNING, "feed",
     "A heavy sender (100 g) hangs far out (80 mm), or on a small thread in brass, on a shaking block.",
     "Hang it on a short steel fitting, or fix it to the body and lead a hose to it.",
     "common practice; its figures are assumptions"},
    {"long-stick-out", OW_NOTE, "feed", "The rigid parts stand more than 150 mm out from the block.",
     "Use shorter parts, or let the hose begin sooner.", "common practice; its figure is an assumption"},
    {"swing-room", OW_NOTE, "feed drain coolant",
     "An elbow or tee that is screwed in by its own thread sweeps more than 30 mm.",
     "Look that nothing stands within that radius, or use a part with a swivel.",
     "common practice; its figure is an assumption"},
    {"taper-aimed", OW_NOTE, "feed drain coolant",
     "An elbow or tee on a taper thread points where the thread is tight.",
     "Never back it off to aim it: lead the hose to where it points, or use a swivel or an adjustable port.",
     "common practice"},
    /* ---- hoses ---- */
    {"clamped-feed", OW_ERROR, "feed", "A clamped hose carries the feed's pressure.",
     "Use a hose with screwed ends; clamps are for drains and coolant.", "SAE J1508; common practice"},
    {"rigid-feed", OW_WARNING, "feed", "The feed is rigid from end to end.",
     "Put one flexible hose into it: a rigid pipe fractures where the engine shakes it.", "common practice"},
    {"hose-bend", OW_WARNING, "feed coolant", "A hose is too short to bend a quarter turn.",
     "Cut it longer, or use a hose with a smaller bend radius.", "the hose's least bend radius"},
    {"hose-short", OW_ERROR, "feed drain coolant", "A hose does not reach, or hangs taut.",
     "Cut it longer: 5 to 8 % more than the straight way.",
     "positions of the ports; slack: a navy's engine manual"},
    {"narrow-feed", OW_NOTE, "feed", "A hose or its end is under 3 mm wide on the way to a journal bearing.",
     "Reckon what arrives, oilway plan, or use the next size: -4 is usual there.",
     "common practice; its figure is an assumption"},
    /* ---- ports and restrictors ---- */
    {"port-bore", OW_WARNING, "feed drain coolant", "A given port is narrower than the bore that is wanted.",
     "Have the port drilled out if its wall allows, take another port, or ask for less.", "common practice"},
    {"second-restrictor", OW_ERROR, "feed", "A restrictor stands before another.",
     "Take one of them out: together they starve the bearing.", "common practice"},
};

const size_t ow_practice_rules_count = sizeof ow_practice_rules / sizeof ow_practice_rules[0];
