/* SPDX-License-Identifier: MIT */
/* Words for the cards. Common practice, except where a rule's own standard says the same. */
#include "joints/words.h"

#include <string.h>

#define FLANKS "flank on flank: the taper wedges, sealant fills the spiral at crest and root"
#define SEALANT                                                                                          \
    "thread sealant on the male, first thread left bare; anaerobic or paste in an oil feed, tape sheds " \
    "shreds"
#define NO_SEALANT "none: the thread does not seal"
#define NO_SEALANT_CONE "none: metal on metal, and sealant keeps the faces apart"
#define RENEW_SEALANT "clean off the old sealant and renew it each time"
#define NEVER_BACK "never back off to aim an elbow or a tee: the seal is lost"
#define SPLITS "a taper thread splits a soft or thin boss: count turns, do not lean on it"
#define RING_ONCE "a crush ring is used once; a bonded washer may serve again if its lip is whole"
#define FLAT "the port needs a flat face square to the thread, wider than the ring"
#define OIL_RING "oil the ring and both faces; a dry O-ring twists and cuts"
#define RING_NEW "replace the O-ring whenever the joint is opened"
#define NOSE "look at both cones: a score, a step or a crack leaks, and tightening more does not mend it"
#define CONE_AGAIN "may be made again while both faces are smooth; replace what is scored"
#define SIZES_SHARED "other seats share this thread: make sure of the angle"
#define HOLD_BODY "hold the body with a second spanner, so that neither hose nor port is twisted"

static const ow_card_words WORDS[] = {
    {"taper-npt", FLANKS, SEALANT, RENEW_SEALANT, {NEVER_BACK, SPLITS}},
    {"taper-nptf", FLANKS, SEALANT, RENEW_SEALANT, {NEVER_BACK, SPLITS}},
    {"taper-nptf-in-npt", FLANKS, SEALANT, RENEW_SEALANT, {NEVER_BACK, SPLITS}},
    {"taper-r-rc", FLANKS, SEALANT, RENEW_SEALANT, {NEVER_BACK, SPLITS}},
    {"taper-r-rp", FLANKS, SEALANT, RENEW_SEALANT, {NEVER_BACK, SPLITS}},
    {"taper-metric",
     FLANKS,
     SEALANT,
     RENEW_SEALANT,
     {NEVER_BACK, "measure that the male is taper: a parallel one of this thread wants a washer"}},
    {"taper-r-in-g",
     FLANKS,
     SEALANT,
     RENEW_SEALANT,
     {"stop if the hexagon nears the port before it wedges: this pair is not in the standard", NEVER_BACK,
      SPLITS}},
    {"npsm-swivel",
     "nose of the swivel in the 30 degree chamfer of the male's mouth",
     "none: the nose seals, not the thread",
     CONE_AGAIN,
     {"look into the male: without a 30 degree chamfer it leaks", HOLD_BODY}},
    {"washer-metric", "shoulder and port face on the ring", NO_SEALANT, RING_ONCE, {FLAT}},
    {"washer-pipe", "shoulder and port face on the ring", NO_SEALANT, RING_ONCE, {FLAT}},
    {"washer-unified", "shoulder and port face on the ring", NO_SEALANT, RING_ONCE, {FLAT, SIZES_SHARED}},
    {"captive-metric",
     "the stud's own ring on the port face",
     NO_SEALANT,
     "the stud's ring serves again while it is not cut or set",
     {FLAT, "add no second washer"}},
    {"captive-pipe",
     "the stud's own ring on the port face",
     NO_SEALANT,
     "the stud's ring serves again while it is not cut or set",
     {FLAT, "add no second washer"}},
    {"captive-unified",
     "the stud's own ring on the port face",
     NO_SEALANT,
     "the stud's ring serves again while it is not cut or set",
     {FLAT, "add no second washer"}},
    {"banjo-thread-metric",
     "eye on port, with a ring between",
     NO_SEALANT,
     "new rings each time",
     {"a hollow bolt is weak: it breaks at the cross-holes when overtightened", FLAT}},
    {"banjo-thread-pipe",
     "eye on port, with a ring between",
     NO_SEALANT,
     "new rings each time",
     {"a hollow bolt is weak: it breaks at the cross-holes when overtightened", FLAT}},
    {"banjo-thread-unified",
     "eye on port, with a ring between",
     NO_SEALANT,
     "new rings each time",
     {"a hollow bolt is weak: it breaks at the cross-holes when overtightened", FLAT, SIZES_SHARED}},
    {"banjo-eye",
     "bolt head on eye and eye on port, or eye on eye, with a ring at each face",
     NO_SEALANT,
     "new rings each time",
     {"one eye takes two rings, two eyes on one bolt three",
      "see that the cross-holes stand inside the eye and nothing covers them"}},
    {"o-ring-inch",
     "O-ring in the chamfered recess at the mouth of the port",
     "none: sealant and tape hold the ring off its seat",
     RING_NEW,
     {OIL_RING, "an adjustable stud: back its nut off fully before it goes in", SIZES_SHARED}},
    {"o-ring-metric",
     "O-ring in the chamfered recess at the mouth of the port",
     "none: sealant and tape hold the ring off its seat",
     RING_NEW,
     {OIL_RING, "an adjustable stud: back its nut off fully before it goes in", SIZES_SHARED}},
    {"face-o-ring",
     "O-ring in the groove of the male's face, on the flat sleeve",
     "none: sealant holds the ring off its seat",
     RING_NEW,
     {"grease holds the ring in its groove while the nut goes on", HOLD_BODY}},
    {"flare37",
     "37 degree nose on 37 degree cone",
     NO_SEALANT_CONE,
     CONE_AGAIN,
     {NOSE, SIZES_SHARED, HOLD_BODY}},
    {"flare45",
     "45 degree nose on 45 degree cone",
     NO_SEALANT_CONE,
     CONE_AGAIN,
     {NOSE, SIZES_SHARED, HOLD_BODY}},
    {"flare45-inverted",
     "the tube's double flare on the seat inside the port",
     NO_SEALANT_CONE,
     CONE_AGAIN,
     {"start the nut by hand and several turns before a spanner touches it", SIZES_SHARED}},
    {"convex",
     "the tube's convex flare on the bottom of the port",
     NO_SEALANT_CONE,
     CONE_AGAIN,
     {"start the nut by hand and several turns before a spanner touches it", SIZES_SHARED}},
    {"cone24",
     "nose with its O-ring, or cutting ring, in the 24 degree mouth",
     NO_SEALANT_CONE,
     "renew the nose's O-ring when the joint is opened",
     {NOSE, "light and heavy series share threads: series and tube must both agree", HOLD_BODY}},
    {"cone24-tube",
     "the cutting ring's edge in the tube and its back in the 24 degree mouth",
     NO_SEALANT_CONE,
     "the ring stays on its tube and may be made again in the same cone",
     {"cut the tube square, push it home, and look for the raised bead after the first tightening",
      "a soft tube needs a sleeve inside"}},
    {"cone60-pipe",
     "nose of the nut in the male's 60 degree cone",
     NO_SEALANT_CONE,
     CONE_AGAIN,
     {NOSE, HOLD_BODY}},
    {"cone60-metric",
     "nose of the nut in the male's 60 degree cone",
     NO_SEALANT_CONE,
     CONE_AGAIN,
     {NOSE, SIZES_SHARED, HOLD_BODY}},
    {"flare30-pipe",
     "raised 30 degree cone of the male in the nut's flare",
     NO_SEALANT_CONE,
     CONE_AGAIN,
     {NOSE, "it looks like a 37 degree one: measure", HOLD_BODY}},
    {"flare30-metric",
     "raised 30 degree cone of the male in the nut's flare",
     NO_SEALANT_CONE,
     CONE_AGAIN,
     {NOSE, "it looks like a 37 degree one: measure", HOLD_BODY}},
    {"hose-tail",
     "hose gripped on its own tail by its socket",
     "none",
     "a crimped socket is used once; a reusable one only with new hose",
     {"cut square and blow the hose clean before and after: swarf kills bearings",
      "make it up as its maker says: tail, socket and hose of one kind"}},
    {"hose-barb",
     "the hose's inside on the barb, under the clamp",
     "none",
     "a clamp serves again while its band is straight; cut the hose back to fresh rubber",
     {"for a drain, a vent or coolant: not for a pressurised oil feed",
      "look at it again after the first heat: the rubber sets"}},
    {"hose-bead",
     "the hose's inside behind the bead, under the clamp",
     "none",
     "a clamp serves again while its band is straight; cut the hose back to fresh rubber",
     {"for a drain, a vent or coolant: not for a pressurised oil feed",
      "look at it again after the first heat: the rubber sets"}},
    {"flange",
     "both faces on the gasket",
     "none, unless the unit's maker asks for it: squeezed-out sealant chokes a drain",
     "a new gasket each time",
     {"check that the gasket's hole is no smaller than the passage", "tighten the bolts by turns, evenly"}},
    {"weld",
     "the weld itself",
     "none",
     "not to be undone",
     {"a qualified welder; drain, clean and vent what held oil or fuel before any heat",
      "take out spatter and scale, then flush"}},
};

size_t ow_card_words_count(void)
{
    return sizeof WORDS / sizeof WORDS[0];
}

const ow_card_words *ow_card_words_find(const char *rule)
{
    for (size_t i = 0; i < sizeof WORDS / sizeof WORDS[0]; i++)
        if (strcmp(WORDS[i].rule, rule) == 0)
            return &WORDS[i];
    return NULL;
}
