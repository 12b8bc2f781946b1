/* SPDX-License-Identifier: MIT */
/* Assembly notes in order of work; which of them a plan needs. All common practice. */
#include <string.h>

#include "plan/planning.h"

/* What a note depends on: bits of what the plan has. */
enum {
    HAS_TAPER = 1,
    HAS_WASHER = 2,
    HAS_FLARE = 4,
    HAS_BANJO = 8,
    HAS_O_RING = 16,
    HAS_SWITCH = 32,
    HAS_RESTRICTOR = 64,
    HAS_DRAIN = 128,
    HAS_COOLANT = 256,
    HAS_MADE_RETURN = 512
};

static const struct {
    unsigned needs; /* all of these bits; 0 = always */
    const char *words;
} notes[] = {
    {0, "Let engine, oil and coolant go cold and the pressure go down before anything is opened."},
    {0, "Lay every part out in the order of the drawing; screw each joint together by hand first: a thread "
        "that binds "
        "within a turn or two is the wrong one."},
    {0, "Wash every part and blow the hoses through; one crumb of rubber or tape stops an oil hole in a "
        "bearing."},
    {HAS_MADE_RETURN,
     "Where a hole is drilled or a bung welded, take the sump or cover off and wash the swarf out of it "
     "before it goes back."},
    {HAS_TAPER,
     "Put sealant on taper threads only, the first thread left bare, and tighten from the direction that "
     "ends where the branch should point; a taper thread is never backed off to aim it."},
    {HAS_WASHER, "A new ring for every washer joint; the face must be flat, clean and as wide as the ring."},
    {HAS_BANJO,
     "A banjo takes a ring on each side of its eye; set the eye's direction before the bolt is tightened."},
    {HAS_O_RING, "Oil the O-ring, run the stud in by hand, then tighten; no tape, no paste."},
    {HAS_FLARE, "Flares and cones go together dry but for a drop of oil on thread and back of the nut: no "
                "tape, no paste."},
    {0, "Hold the fitting with a second spanner while the nut is turned, so that nothing behind it turns "
        "along."},
    {HAS_SWITCH,
     "Screw switch and sender in by their own hexagon, with the tee held; support a heavy sender."},
    {HAS_RESTRICTOR,
     "The restrictor goes in last before the turbo; look through its hole before it is fitted."},
    {0,
     "Make the closing joints last, with the hose neither twisted nor stretched, and 5 to 8 % slack in it."},
    {0, "Before the feed meets the turbo, flush it: crank the engine without fuel or spark until clean oil "
        "runs into a can."},
    {0, "Prime the turbo: fill its oil inlet by hand, turn the shaft with a finger, then close the joint."},
    {HAS_DRAIN, "Lead the drain downhill all the way, clear of the turbine by 50 mm or behind a shield; "
                "clamps beyond the "
                "bead."},
    {HAS_COOLANT,
     "Fill the coolant slowly with the return at its highest, and bleed it at the turbo's high port."},
    {0, "Start without load. In the first minute look at the gauge, at every joint, and at the oil level; "
        "stop at once if "
        "there is no pressure or a drop."},
    {0, "After the first heat cycle, cold again, look at every joint and clamp once more, and top up oil and "
        "coolant."},
};

static unsigned needs_of(const ow_end *end)
{
    switch (end->seat) {
    case OW_SEAT_TAPER:
        return HAS_TAPER;
    case OW_SEAT_WASHER:
    case OW_SEAT_WASHER_CAPTIVE:
        return HAS_WASHER;
    case OW_SEAT_O_RING:
    case OW_SEAT_FACE_O_RING:
        return HAS_O_RING;
    case OW_SEAT_CONE24:
    case OW_SEAT_CONE60:
    case OW_SEAT_FLARE30:
    case OW_SEAT_FLARE37:
    case OW_SEAT_FLARE45:
    case OW_SEAT_FLARE45_INVERTED:
    case OW_SEAT_CONVEX:
        return HAS_FLARE;
    case OW_SEAT_BANJO:
        return HAS_BANJO;
    case OW_SEAT_NONE:
    case OW_SEAT_UNKNOWN:
    case OW_SEAT_NPSM:
    case OW_SEAT_COUNT:
        break;
    }
    return end->form == OW_FORM_BANJO ? HAS_BANJO : 0;
}

static unsigned needs_of_layout(const ow_layout *layout)
{
    unsigned needs = 0;
    for (size_t node = 1; node < layout->node_count; node++) {
        const ow_part *part = layout->nodes[node].part;
        needs |= needs_of(ow_layout_child_end(layout, node));
        if (part == NULL) {
            if (layout->givens[layout->nodes[node].given].role == OW_ROLE_KEEP)
                needs |= HAS_SWITCH;
            continue;
        }
        if (part->kind == OW_RESTRICTOR)
            needs |= HAS_RESTRICTOR;
        if (part->kind == OW_BUNG)
            needs |= HAS_MADE_RETURN;
    }
    if (layout->circuit == OW_DRAIN)
        needs |= HAS_DRAIN;
    if (layout->circuit == OW_COOLANT)
        needs |= HAS_COOLANT;
    return needs;
}

ow_status ow_plan_notes(ow_planning *planning)
{
    ow_plan *plan = planning->plan;
    size_t most = sizeof notes / sizeof notes[0];
    const char **chosen = ow_arena_get_array(&planning->arena, most, sizeof *chosen);
    unsigned has = 0;
    if (chosen == NULL)
        return OW_MEMORY;
    for (size_t index = 0; index < plan->layout_count; index++)
        has |= needs_of_layout(&plan->layouts[index]);
    if (plan->drain.made_count > 0)
        has |= HAS_MADE_RETURN;
    for (size_t index = 0; index < most; index++) {
        if ((notes[index].needs & has) == notes[index].needs)
            chosen[plan->note_count++] = notes[index].words;
    }
    plan->notes = chosen;
    return OW_OK;
}
