/* SPDX-License-Identifier: MIT */
/*
 * 37 degree flares tightened without a torque wrench: flats of the nut's hexagon from finger tight, a sixth
 * of a turn each. Service literature (torque.c names the sources), which disagrees: both stand here.
 */
#include "joints/torque.h"

#define FLATS(inch_64, threads_per_inch, flats, source, what)                                  \
    {                                                                                          \
        {OW_THREAD_UNIFIED, inch_64, 2 * (threads_per_inch)}, OW_SEAT_FLARE37, OW_STEEL, 0, 0, \
            (flats) / 6.0, (flats) / 6.0, OW_THREAD_OILED, source, what                        \
    }
#define TUBE "nut on a tube, from finger tight"
#define SWIVEL "swivel nut, from finger tight"
#define EITHER "nut, from finger tight"

static const ow_torque_row ROWS[] = {
    FLATS(28, 20, 2.5, 1, TUBE),    FLATS(28, 20, 2, 1, SWIVEL),    FLATS(32, 20, 2, 1, TUBE),
    FLATS(32, 20, 2, 1, SWIVEL),    FLATS(36, 18, 2, 1, TUBE),      FLATS(36, 18, 1.5, 1, SWIVEL),
    FLATS(48, 16, 2, 1, TUBE),      FLATS(48, 16, 1.5, 1, SWIVEL),  FLATS(56, 14, 1.5, 1, TUBE),
    FLATS(56, 14, 1.5, 1, SWIVEL),  FLATS(68, 12, 1.5, 1, TUBE),    FLATS(68, 12, 1.25, 1, SWIVEL),
    FLATS(76, 12, 1.5, 1, TUBE),    FLATS(76, 12, 1.25, 1, SWIVEL), FLATS(84, 12, 1.5, 1, TUBE),
    FLATS(84, 12, 1, 1, SWIVEL),    FLATS(104, 12, 1, 1, TUBE),     FLATS(104, 12, 1, 1, SWIVEL),
    FLATS(24, 24, 1, 2, EITHER),    FLATS(28, 20, 1, 2, EITHER),    FLATS(32, 20, 1, 2, EITHER),
    FLATS(36, 18, 1, 2, EITHER),    FLATS(48, 16, 1, 2, EITHER),    FLATS(56, 14, 1, 2, EITHER),
    FLATS(68, 12, 0.75, 2, EITHER), FLATS(76, 12, 0.75, 2, EITHER), FLATS(84, 12, 0.75, 2, EITHER),
};

const ow_torque_rows ow_torque_flat_rows = {ROWS, sizeof ROWS / sizeof ROWS[0]};
