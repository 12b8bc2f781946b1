/* SPDX-License-Identifier: MIT */
#include "oilway/feed.h"

#define LPM (1.0 / 60000.0)       /* m3/s */
#define AT 300000.0, 0.008, 830.0 /* 3 bar, 8 mPa s, 830 kg/m3 */

static const ow_typical_load loads[OW_LOAD_KIND_COUNT] = {
    {OW_LOAD_JOURNAL_SMALL,
     "journal bearing, small turbo",
     {"turbo", 1.0 * LPM, AT, 1.0},
     OW_MARK_PRACTICE,
     "from memory; no published table was found"},
    {OW_LOAD_JOURNAL_MEDIUM,
     "journal bearing, medium turbo",
     {"turbo", 2.0 * LPM, AT, 1.0},
     OW_MARK_PRACTICE,
     "from memory; no published table was found"},
    {OW_LOAD_JOURNAL_LARGE,
     "journal bearing, large turbo",
     {"turbo", 4.0 * LPM, AT, 1.0},
     OW_MARK_PRACTICE,
     "from memory; no published table was found"},
    {OW_LOAD_BALL,
     "ball bearing",
     {"turbo", 0.8 * LPM, AT, 0.5},
     OW_MARK_ASSUMED,
     "chosen so that a 1 mm hole gives 2.8 to 3.1 bar from 5 bar, as the trade finds"},
};

static const ow_feed_state states[OW_FEED_STATES_TYPICAL] = {
    {"cold", 0.0, 550000.0, true}, /* relief valve */
    {"hot idle", 100.0, 120000.0, true},
    {"hot rev", 100.0, 450000.0, true},
};

const ow_typical_load *ow_typical_load_at(ow_load_kind kind)
{
    return kind < OW_LOAD_KIND_COUNT ? &loads[kind] : NULL;
}

const ow_feed_state *ow_typical_state_at(size_t index)
{
    return index < OW_FEED_STATES_TYPICAL ? &states[index] : NULL;
}
