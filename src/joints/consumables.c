/* SPDX-License-Identifier: MIT */
/* What goes between two ends, by size. */
#include <math.h>
#include <string.h>

#include "base/format.h"
#include "ends/sizes.h"
#include "joints/card_internal.h"

const ow_ring_row *ow_ring_find(const ow_thread *thread, ow_ring_kind kind)
{
    for (size_t i = 0; i < ow_face_rings.count; i++)
        if (ow_face_rings.rows[i].kind == kind && ow_thread_same(&ow_face_rings.rows[i].thread, thread))
            return &ow_face_rings.rows[i];
    return NULL;
}

const ow_o_ring_row *ow_o_ring_find(const ow_end *end)
{
    const ow_o_ring_row *row;
    for (size_t i = 0; (row = ow_o_ring_at(i)); i++)
        if (row->form == end->form && row->seat == end->seat &&
            row->size == (end->form == OW_FORM_DASH ? end->size : end->thread.size) &&
            (end->form == OW_FORM_DASH || row->pitch == end->thread.pitch))
            return row;
    return NULL;
}

/* The narrowest crush ring that passes a thread of that diameter, whatever thread it is made for. */
static const ow_ring_row *nearest_ring(double major_mm)
{
    const ow_ring_row *best = NULL;
    for (size_t i = 0; i < ow_face_rings.count; i++) {
        const ow_ring_row *row = &ow_face_rings.rows[i];
        if (row->kind == OW_CRUSH_RING && row->inner_mm >= major_mm &&
            (!best || row->inner_mm < best->inner_mm))
            best = row;
    }
    return best;
}

/* No published ring: the least inside that passes the thread, rounded up, and the word to measure. */
static void fill_unpublished_ring(const ow_thread *thread, ow_consumable *item)
{
    double major_mm = ow_thread_major_m(thread) * 1000.0;
    double least_mm = ceil(major_mm * 100.0 - 1e-6) / 100.0;
    const ow_ring_row *near = nearest_ring(major_mm);
    item->inner_mm = least_mm;
    item->measure = true;
    item->source = "no published size; the thread's major diameter";
    (void)ow_format_to(item->size, sizeof item->size, "inside at least %.2f mm: measure", least_mm);
    if (near && near->inner_mm - major_mm < 1.0)
        (void)ow_format_to(
            item->note, sizeof item->note,
            "measure the shoulder and the port's face for the outside; a ring of %g x %g x %g mm "
            "passes with %.2f mm of play",
            near->inner_mm, near->outer_mm, near->thickness_mm, near->inner_mm - major_mm);
    else
        (void)ow_format_to(item->note, sizeof item->note,
                           "measure the shoulder and the port's face for the outside");
}

static void fill_ring(const ow_thread *thread, bool banjo, ow_consumable *item)
{
    const ow_ring_row *crush = ow_ring_find(thread, OW_CRUSH_RING);
    const ow_ring_row *bonded = ow_ring_find(thread, OW_BONDED_WASHER);
    item->what = "crush ring";
    if (!crush) {
        fill_unpublished_ring(thread, item);
        return;
    }
    item->inner_mm = crush->inner_mm;
    item->outer_mm = crush->outer_mm;
    item->thickness_mm = crush->thickness_mm;
    item->source = crush->source;
    (void)ow_format_to(item->size, sizeof item->size, "%g x %g x %g mm", crush->inner_mm, crush->outer_mm,
                       crush->thickness_mm);
    if (bonded && !banjo)
        (void)ow_format_to(
            item->note, sizeof item->note,
            "copper or aluminium; or a bonded washer %g x %g x %g mm (%s) where the flat is wider "
            "than it",
            bonded->inner_mm, bonded->outer_mm, bonded->thickness_mm, bonded->source);
    else
        (void)ow_format_to(item->note, sizeof item->note, "copper or aluminium");
}

static void fill_o_ring(const ow_end *end, const ow_ring_service *service, ow_consumable *item)
{
    const ow_o_ring_row *row = ow_o_ring_find(end);
    char name[OW_END_TEXT_SIZE], rubbers[OW_RING_WORDS_SIZE];
    ow_ring_rubbers_write(service, rubbers);
    item->what = "O-ring";
    item->count = 1;
    if (!row) {
        item->measure = true;
        item->source = "no published size known here";
        (void)ow_format_to(item->size, sizeof item->size, "of %s: measure", ow_end_name(end, name));
        (void)ow_format_to(item->note, sizeof item->note, "rubber: %s", rubbers);
        return;
    }
    item->inner_mm = row->inner_mm;
    item->thickness_mm = row->section_mm;
    item->outer_mm = row->inner_mm + 2.0 * row->section_mm;
    item->source = row->source;
    (void)ow_format_to(item->size, sizeof item->size, "%s%s%.2f x %.2f mm", row->name,
                       row->name[0] ? ", " : "", row->inner_mm, row->section_mm);
    (void)ow_format_to(item->note, sizeof item->note, "inside x section; %.1f mm outside; rubber: %s",
                       item->outer_mm, rubbers);
}

static const ow_end *end_with(const ow_card *card, ow_form form)
{
    return card->ends[0].form == form ? &card->ends[0] : card->ends[1].form == form ? &card->ends[1] : NULL;
}

static void fill_tube(const ow_card *card, bool nut, ow_consumable *item)
{
    const ow_end *cone = end_with(card, OW_FORM_THREAD), *tube = end_with(card, OW_FORM_TUBE);
    item->what = nut ? "tube nut" : "cutting ring";
    item->count = 1;
    item->source = "ISO 8434-1";
    if (cone && tube)
        (void)ow_format_to(item->size, sizeof item->size, "%s, for %g mm tube", cone->name,
                           tube->size / 1000.0);
}

static void fill_clamp(const ow_card *card, ow_consumable *item)
{
    const ow_end *hose = end_with(card, OW_FORM_HOSE);
    item->what = "hose clamp";
    item->count = 1;
    item->source = "SAE J1508";
    if (hose)
        (void)ow_format_to(item->size, sizeof item->size, "for hose of %g mm inside", hose->size / 1000.0);
    (void)ow_format_to(item->note, sizeof item->note,
                       "measure over the hose on its tail and take a clamp whose "
                       "range has that in its middle");
}

static void fill_banjo_rings(ow_card *card, const ow_card_ask *ask, ow_consumable *item)
{
    ow_thread thread = {OW_THREAD_METRIC, card->ends[0].size, card->ends[0].size > 10000 ? 1500 : 1000};
    if (card->has_thread)
        thread = card->thread;
    fill_ring(&thread, true, item);
    item->count = ask->eye == 0 ? 2 : 1;
    if (!card->has_thread)
        (void)ow_format_to(
            item->note, sizeof item->note,
            "copper or aluminium; for a metric bolt: an inch bolt wants a ring that passes it, measure");
}

static void fill_one(ow_card *card, const char *need, const ow_card_ask *ask, ow_consumable *item)
{
    const ow_end *male = card->ends[0].gender == OW_MALE ? &card->ends[0] : &card->ends[1];
    const ow_end *flange = end_with(card, OW_FORM_FLANGE);
    if (card->ends[0].form == OW_FORM_BANJO) {
        fill_banjo_rings(card, ask, item);
    } else if (strstr(need, "washer")) {
        fill_ring(&card->thread, false, item);
        item->count = 1;
    } else if (strcmp(need, "O-ring") == 0) {
        fill_o_ring(male, &ask->ring, item);
    } else if (strcmp(need, "tube nut") == 0 || strcmp(need, "cutting ring") == 0) {
        fill_tube(card, need[0] == 't', item);
    } else if (strcmp(need, "hose clamp") == 0) {
        fill_clamp(card, item);
    } else {
        item->what = need;
        item->source = card->rule->source;
        item->count = flange ? 1 : 0;
        if (flange)
            (void)ow_format_to(item->size, sizeof item->size, "pattern %s", flange->name);
    }
}

void ow_card_fill_consumables(ow_card *card, const ow_card_ask *ask)
{
    for (size_t i = 0; i < OW_CARD_CONSUMABLES && card->rule->needs[i]; i++)
        fill_one(card, card->rule->needs[i], ask, &card->consumables[card->consumable_count++]);
    const ow_end *male = card->ends[0].gender == OW_MALE ? &card->ends[0] : &card->ends[1];
    if (male->form == OW_FORM_THREAD && male->seat == OW_SEAT_BANJO) {
        ow_consumable ring = {0};
        fill_ring(&card->thread, true, &ring);
        (void)ow_format_to(card->ring_hint, sizeof card->ring_hint, "%s, counted with the eyes", ring.size);
    }
}
