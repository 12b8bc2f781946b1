/* SPDX-License-Identifier: MIT */
#include "joints/torque.h"

/* Service literature that the figures were printed in; makers are not named. */
static const char *const SOURCES[] = {
    "",
    "a harvester maker's operator manual, 2010s",
    "a harvester maker's older manual, 2000s",
    "US Army TM 55-1730-229-12",
    "a tractor maker's manual, 1996",
    "a diesel engine maker's workshop manual",
    "a telehandler maker's service manual",
    "a V-diesel maker's manual, 2015",
    "a generator-set diesel manual, 2017",
    "a V-diesel maker's technical publication, 1998",
    "a marine diesel operation manual",
    "a diesel maker's service manual",
    "a car maker's engine data, about 2001",
    "an aerial platform maker's service manual",
    "truck diesel data, 1990; thread system not named there",
    "another engine maker's data",
};

static const char *condition(ow_thread_state state)
{
    switch (state) {
    case OW_THREAD_DRY:
        return "dry";
    case OW_THREAD_OILED:
        return "threads oiled";
    case OW_THREAD_RING_OILED:
        return "O-ring oiled";
    case OW_THREAD_SEALANT:
        return "with sealant";
    case OW_THREAD_NOT_SAID:
        break;
    }
    return "";
}

/* What a source says of other materials than the one that its figures are for. */
static const struct other_material {
    int source;
    unsigned materials;
    double factor;
    const char *what;
} OTHERS[] = {
    {5, OW_ALUMINIUM | OW_COPPER_ALLOY, 0.5, "half the figure for iron and steel, as the source says"},
    {10, OW_ALUMINIUM, 0.8, "four fifths of the figure for steel, as the source says"},
};

static const struct other_material *other_material(int source, unsigned materials)
{
    for (size_t i = 0; i < sizeof OTHERS / sizeof OTHERS[0]; i++)
        if (OTHERS[i].source == source && (OTHERS[i].materials & materials) != 0)
            return &OTHERS[i];
    return NULL;
}

static const char *material_words(unsigned bits)
{
    switch (bits) {
    case OW_STEEL:
        return "steel or iron";
    case OW_ALUMINIUM:
        return "light alloy";
    case OW_STEEL | OW_ALUMINIUM:
        return "steel, iron or light alloy";
    case OW_COPPER_ALLOY:
        return "copper alloy";
    default:
        return "";
    }
}

static bool is_on(const ow_torque_row *row, const ow_thread *thread, ow_seat seat)
{
    ow_thread_family family = thread->family == OW_THREAD_NPTF ? OW_THREAD_NPT : thread->family;
    return row->thread.family == family && row->thread.size == thread->size && row->seat == seat &&
           (row->thread.pitch == 0 || row->thread.pitch == thread->pitch);
}

static void add(const ow_torque *torque, ow_card *card)
{
    if (card->torque_count == OW_CARD_TORQUES)
        return;
    card->torques[card->torque_count++] = *torque;
    if (torque->most_nm <= 0.0)
        return;
    if (!card->has_torque || torque->least_nm < card->least_nm)
        card->least_nm = torque->least_nm;
    if (!card->has_torque || torque->most_nm > card->most_nm)
        card->most_nm = torque->most_nm;
    card->has_torque = true;
}

static void add_row(const ow_torque_row *row, unsigned materials, ow_card *card)
{
    const struct other_material *other = NULL;
    if (materials != 0 && (row->materials & materials) == 0) {
        other = other_material(row->source, materials);
        if (!other)
            return;
    }
    double factor = other ? other->factor : 1.0;
    ow_torque torque = {row->least_nm * factor,
                        row->most_nm * factor,
                        row->least_turns,
                        row->most_turns,
                        other ? other->what : row->what,
                        material_words(other ? materials : row->materials),
                        condition(row->state),
                        row->state == OW_THREAD_OILED || row->state == OW_THREAD_SEALANT ? 0.15 : 0.2,
                        SOURCES[row->source]};
    add(&torque, card);
}

void ow_torque_fill(const ow_thread *thread, ow_seat seat, unsigned materials, ow_card *card)
{
    const ow_torque_rows *tables[] = {&ow_torque_inch_rows, &ow_torque_metric_rows, &ow_torque_flat_rows};
    for (size_t t = 0; t < sizeof tables / sizeof tables[0]; t++)
        for (size_t i = 0; i < tables[t]->count; i++)
            if (is_on(&tables[t]->rows[i], thread, seat))
                add_row(&tables[t]->rows[i], materials, card);
}
