/* SPDX-License-Identifier: MIT */
#include "catalog/ranges.h"

#include <string.h>

#define METRIC(size_mm, pitch_um)                    \
    {                                                \
        OW_THREAD_METRIC, (size_mm)*1000, (pitch_um) \
    }
#define FORM(form) (1u << (form))

/* A public sheet of caps, AN929, has the same bores for -4 to -8 and -20, and others for three sizes. */
#define DASH_SOURCE "SAE J514 (bores from memory), SAE J517"
#define DASH_SOURCE_BUT(mm) "SAE J514 (bores from memory; AN929 has " mm " mm), SAE J517"
#define DIN_7643 "DIN 7643, as a public drawing library has it"

/* clang-format off */
static const ow_dash_range dashes[] = {
    /* dash, tube, fitting, hose by tube, hose by hole */
    {2, 3.175, 1.6, 2.4, 3.2, DASH_SOURCE},      {3, 4.762, 3.2, 3.2, 4.8, DASH_SOURCE},
    {4, 6.350, 4.4, 4.8, 6.4, DASH_SOURCE},      {5, 7.938, 5.9, 6.4, 7.9, DASH_SOURCE},
    {6, 9.525, 7.5, 7.9, 9.5, DASH_SOURCE},      {8, 12.700, 9.9, 10.3, 12.7, DASH_SOURCE},
    {10, 15.875, 12.3, 12.7, 15.9, DASH_SOURCE_BUT("11.1")}, {12, 19.050, 15.5, 15.9, 19.1, DASH_SOURCE_BUT("14.3")},
    {14, 22.225, 18.3, 18.3, 22.2, DASH_SOURCE}, {16, 25.400, 21.4, 22.2, 25.4, DASH_SOURCE_BUT("20.6")},
    {20, 31.750, 27.4, 28.6, 31.8, DASH_SOURCE}, {24, 38.100, 33.3, 34.9, 38.1, DASH_SOURCE},
    {32, 50.800, 45.2, 46.0, 50.8, DASH_SOURCE},
};

static const ow_banjo_range banjos[] = {
    {METRIC(10, 1000), 5.5, 2.8, DIN_7643},
    {METRIC(12, 1500), 7.0, 3.5, DIN_7643},
    {METRIC(14, 1500), 9.0, 4.5, DIN_7643},
    {METRIC(16, 1500), 11.0, 5.5, DIN_7643},
    {METRIC(18, 1500), 13.0, 7.0, DIN_7643},
    {METRIC(22, 1500), 16.0, 9.0, DIN_7643},
    {METRIC(26, 1500), 20.0, 11.0, DIN_7643},
};

static const ow_length_range lengths[] = {
    {OW_ADAPTER, 5, 300, "common practice"},
    {OW_ELBOW, 10, 300, "common practice"},
    {OW_TEE, 10, 400, "common practice"},
    {OW_CROSS, 10, 400, "common practice"},
    {OW_GAUGE_ADAPTER, 10, 300, "common practice"},
    {OW_BANJO_BOLT, 10, 150, "common practice"},
    {OW_BANJO_EYE, 5, 300, "common practice"},
    {OW_HOSE_END, 10, 400, "common practice"},
    {OW_LINE, 30, 20000, "common practice"},
    {OW_PLUG, 3, 150, "common practice"},
    {OW_CAP, 3, 150, "common practice"},
    {OW_RESTRICTOR, 3, 200, "common practice"},
    {OW_FLANGE, 2, 300, "common practice"},
    {OW_STUB, 5, 600, "common practice"},
    {OW_BUNG, 3, 300, "common practice"},
    {OW_SWITCH, 5, 200, "common practice"},
    {OW_SENDER, 5, 300, "common practice"},
};

static const ow_form_range forms[] = {
    {OW_BANJO_BOLT, "thread", FORM(OW_FORM_THREAD), OW_MALE,
     "a male thread with the seat banjo, such as M10x1 male banjo"},
    {OW_BANJO_BOLT, "stud", FORM(OW_FORM_BANJO), OW_MALE, "banjo N stud"},
    {OW_BANJO_BOLT, "stud-a", FORM(OW_FORM_BANJO), OW_MALE, "banjo N stud"},
    {OW_BANJO_BOLT, "stud-b", FORM(OW_FORM_BANJO), OW_MALE, "banjo N stud"},
    {OW_BANJO_EYE, "eye", FORM(OW_FORM_BANJO), OW_FEMALE, "banjo N eye"},
    {OW_HOSE, "a", FORM(OW_FORM_HOSE), OW_GENDER_NONE, "the cut end of a hose, such as hose -4 ptfe"},
    {OW_HOSE, "b", FORM(OW_FORM_HOSE), OW_GENDER_NONE, "the cut end of a hose, such as hose -4 ptfe"},
    {OW_HOSE_END, "tail", FORM(OW_FORM_TAIL) | FORM(OW_FORM_BARB) | FORM(OW_FORM_BEAD), OW_GENDER_NONE,
     "a tail: hose SIZE CLASS tail, barb MM or bead MM"},
};
/* clang-format on */

const ow_dash_range *ow_dash_range_find(int32_t dash)
{
    for (size_t i = 0; i < sizeof dashes / sizeof *dashes; i++)
        if (dashes[i].dash == dash)
            return &dashes[i];
    return NULL;
}

const ow_banjo_range *ow_banjo_range_find(const ow_thread *thread)
{
    for (size_t i = 0; i < sizeof banjos / sizeof *banjos; i++)
        if (ow_thread_same(&banjos[i].thread, thread))
            return &banjos[i];
    return NULL;
}

const ow_length_range *ow_length_range_find(ow_kind kind)
{
    for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++)
        if (lengths[i].kind == kind)
            return &lengths[i];
    return NULL;
}

size_t ow_form_range_count(void)
{
    return sizeof forms / sizeof *forms;
}

const ow_form_range *ow_form_range_at(size_t index)
{
    return index < ow_form_range_count() ? &forms[index] : NULL;
}
