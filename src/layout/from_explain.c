/* SPDX-License-Identifier: MIT */
/* Why a part is not in the best layout: by how much it is worse, or which limit it fails. */
#include <stdlib.h>

#include "layout/from_search.h"

/* Lifts a limit if the ask has it. */
typedef bool lift_limit(ow_search_input *ask);

static bool lift_without(ow_search_input *ask)
{
    bool had = ask->without_count > 0;
    ask->without_count = 0;
    return had;
}

static bool lift_rating(ow_search_input *ask)
{
    bool had = ask->limits.rating_pa != OW_NET_NOT_SAID;
    ask->limits.rating_pa = OW_NET_NOT_SAID;
    return had;
}

static bool lift_temperature(ow_search_input *ask)
{
    bool had = ask->limits.has_temperature;
    ask->limits.has_temperature = false;
    return had;
}

static bool lift_fluid(ow_search_input *ask)
{
    bool had = ask->limits.fluid != 0;
    ask->limits.fluid = 0;
    return had;
}

static bool lift_orifice(ow_search_input *ask)
{
    bool had =
        ask->limits.orifice_low_um != OW_NET_NOT_SAID || ask->limits.orifice_high_um != OW_NET_NOT_SAID;
    ask->limits.orifice_low_um = ask->limits.orifice_high_um = OW_NET_NOT_SAID;
    return had;
}

static bool lift_tee(ow_search_input *ask)
{
    bool had = ask->limits.no_tee;
    ask->limits.no_tee = false;
    return had;
}

static bool lift_clamp(ow_search_input *ask)
{
    bool had = ask->limits.no_clamp;
    ask->limits.no_clamp = false;
    return had;
}

static bool lift_bore(ow_search_input *ask)
{
    bool had = ask->limits.least_bore_um != OW_NET_NOT_SAID;
    ask->limits.least_bore_um = OW_NET_NOT_SAID;
    return had;
}

static bool lift_one_hose(ow_search_input *ask)
{
    bool had = ask->limits.hoses == OW_HOSES_ONE;
    ask->limits.hoses = OW_HOSES_FREE;
    return had;
}

static bool lift_some_hose(ow_search_input *ask)
{
    bool had = ask->limits.hoses == OW_HOSES_SOME;
    ask->limits.hoses = OW_HOSES_FREE;
    return had;
}

static bool lift_no_hose(ow_search_input *ask)
{
    bool had = ask->limits.hoses == OW_HOSES_NONE;
    ask->limits.hoses = OW_HOSES_FREE;
    return had;
}

static bool lift_needed(ow_search_input *ask)
{
    bool had =
        ask->limits.restricting == OW_RESTRICTING_NEEDED || ask->limits.restricting == OW_RESTRICTING_BY_PORT;
    ask->limits.restricting = OW_RESTRICTING_FREE;
    return had;
}

static bool lift_barred(ow_search_input *ask)
{
    bool had = ask->limits.restricting == OW_RESTRICTING_BARRED;
    ask->limits.restricting = OW_RESTRICTING_FREE;
    return had;
}

static bool lift_single(ow_search_input *ask)
{
    bool had = ask->limits.restricting == OW_RESTRICTING_SINGLE;
    ask->limits.restricting = OW_RESTRICTING_FREE;
    return had;
}

static bool lift_closing(ow_search_input *ask)
{
    bool had = ask->limits.closing;
    ask->limits.closing = false;
    return had;
}

static bool lift_remote(ow_search_input *ask)
{
    bool had = !ask->limits.remote_switch;
    for (size_t i = 0; had && i < ask->port_count; i++)
        if (!ask->ports[i].served) {
            ask->limits.remote_switch = true;
            return true;
        }
    return false;
}

static bool lift_tolerate(ow_search_input *ask)
{
    bool had = !ask->limits.tolerate;
    ask->limits.tolerate = true;
    return had;
}

/* In this order they are tried: what belongs to the part itself first. */
static const struct {
    lift_limit *lift;
    const char *words;
} LIMITS[] = {
    {lift_without, "it was left out by name"},
    {lift_rating, "the pressure rating asked for"},
    {lift_temperature, "the temperature asked for"},
    {lift_fluid, "the fluid"},
    {lift_orifice, "the range of the orifice"},
    {lift_tee, "no tee"},
    {lift_clamp, "no clamp against the feed's pressure"},
    {lift_bore, "the least bore"},
    {lift_no_hose, "no hose on the path"},
    {lift_one_hose, "exactly one hose on the path"},
    {lift_some_hose, "a hose on the path"},
    {lift_barred, "no restrictor on the path"},
    {lift_needed, "a restrictor on the path"},
    {lift_single, "no second restrictor on the path"},
    {lift_closing, "a closing joint between fixed ports"},
    {lift_remote, "no hose before a kept port"},
    {lift_tolerate, "joints that are only tolerated are not used"},
};
#define LIMIT_COUNT (sizeof LIMITS / sizeof LIMITS[0])

/* ---- not possible --------------------------------------------------------------------------- */

static ow_status try_forced(const ow_search *search, const ow_search_input *ask, size_t part)
{
    ow_tree tree;
    ow_status status = ow_forced_find(search->context, search->net->index, ask, part, &tree);
    if (status == OW_OK)
        ow_release(search->context, tree.nodes);
    return status;
}

/* The first limit whose removal makes it possible; *all tells whether lifting everything does. */
static ow_status find_limit(const ow_search *search, size_t part, const char **limit, bool *all)
{
    ow_search_input bare = search->input;
    for (size_t i = 0; i < LIMIT_COUNT; i++) {
        ow_search_input ask = search->input;
        if (!LIMITS[i].lift(&ask))
            continue;
        ow_status status = try_forced(search, &ask, part);
        if (status == OW_OK) {
            *limit = LIMITS[i].words;
            *all = true;
            return OW_OK;
        }
        if (status != OW_NONE)
            return status;
        LIMITS[i].lift(&bare);
    }
    ow_status status = try_forced(search, &bare, part);
    *all = status == OW_OK;
    return status == OW_NONE ? OW_OK : status;
}

/* What a part's hose is made of, where that stands against the limits. */
static void write_material(ow_search *search, size_t index)
{
    const ow_hose_material *material = ow_part_hose_material(ow_catalog_part_at(search->net->catalog, index));
    const ow_limits *limits = &search->ask->limits;
    bool knows_fluid = limits->fluid != OW_FLUID_NONE;
    const ow_hose_service service = {limits->fluid == OW_FLUID_OIL,
                                     knows_fluid && ow_limits_pressed(search->ask->circuit, limits),
                                     limits->rating_pa, limits->temperature_c};
    unsigned faults = material != NULL ? ow_hose_faults(material, &service) : 0;
    const char *what = NULL;
    if (knows_fluid && (faults & OW_HOSE_FLUID) != 0)
        what = service.oil ? "oil" : "coolant";
    else if (limits->has_temperature && (faults & OW_HOSE_HEAT) != 0)
        what = "the temperature";
    else if ((faults & OW_HOSE_PRESSURE) != 0)
        what = "the pressure";
    if (what != NULL)
        ow_text_format(&search->words, " It is made of %s, which does not stand %s (%s).", material->title,
                       what, material->source);
}

static ow_status explain_impossible(ow_search *search, size_t part, const char *id, ow_explanation *made)
{
    bool all = false;
    ow_status status = find_limit(search, part, &made->limit, &all);
    if (status != OW_OK)
        return status;
    if (made->limit != NULL)
        ow_text_format(&search->words,
                       "%s is in no layout here: %s. Without that limit there is one with it.", id,
                       made->limit);
    else if (all)
        ow_text_format(
            &search->words,
            "%s is in no layout here, and no single limit is the reason: with all of them lifted there "
            "is one with it.",
            id);
    else
        ow_text_format(&search->words,
                       "%s is in no layout here, whatever the limits: its ends do not lead from the source "
                       "to the ports.",
                       id);
    if (all)
        write_material(search, part);
    return OW_OK;
}

/* ---- possible, but worse -------------------------------------------------------------------- */

static void write_cents(ow_text *text, long long cents)
{
    ow_text_format(text, "%lld.%02lld", cents / 100, cents % 100);
}

static void write_price(ow_text *text, const ow_key *best, const ow_key *with)
{
    long long cents = with->cents - best->cents;
    if (with->unpriced != best->unpriced)
        ow_text_format(text, "; %u of its parts have no price, against %u", with->unpriced, best->unpriced);
    if (cents == 0)
        return;
    ow_text_add(text, "; ");
    write_cents(text, llabs(cents));
    ow_text_add(text, cents > 0 ? " dearer" : " cheaper");
}

static void write_worse(ow_text *text, const char *id, const ow_key *best, const ow_key *with)
{
    long long parts = (long long)with->parts - best->parts;
    ow_text_format(text, "%s is not in the best layout: the best one with it has %u part%s, ", id,
                   with->parts, with->parts == 1 ? "" : "s");
    if (parts > 0)
        ow_text_format(text, "%lld more", parts);
    else
        ow_text_add(text, "as many");
    write_price(text, best, with);
    if (with->stick_out_um != best->stick_out_um)
        ow_text_format(text, "; it stands out %.1f mm %s",
                       (double)llabs(with->stick_out_um - best->stick_out_um) / 1e3,
                       with->stick_out_um > best->stick_out_um ? "further" : "less far");
    if (parts == 0 && with->unpriced == best->unpriced && with->cents == best->cents &&
        with->stick_out_um == best->stick_out_um)
        ow_text_add(text, ", as dear and no longer; only the order of ids decides");
    ow_text_char(text, '.');
}

static bool tree_has(const ow_tree *tree, size_t part)
{
    for (size_t i = 0; i < tree->node_count; i++)
        if (tree->nodes[i].part == part)
            return true;
    return false;
}

static ow_status explain_part(ow_search *search, size_t part, const char *id, ow_explanation *made)
{
    ow_status found = ow_search_best(search);
    if (found != OW_OK && found != OW_NONE)
        return found;
    if (found == OW_OK && tree_has(&search->best, part)) {
        made->in_best = made->possible = true;
        ow_text_format(&search->words, "%s is in the best layout.", id);
        return OW_OK;
    }
    ow_tree with;
    ow_status status = found == OW_NONE
                           ? OW_NONE
                           : ow_forced_find(search->context, search->net->index, &search->input, part, &with);
    if (status == OW_NONE)
        return explain_impossible(search, part, id, made);
    if (status != OW_OK)
        return status;
    made->possible = true;
    made->worse_parts = (long long)with.key.parts - search->best.key.parts;
    made->worse_cents = with.key.cents - search->best.key.cents;
    made->worse_stick_out_um = with.key.stick_out_um - search->best.key.stick_out_um;
    write_worse(&search->words, id, &search->best.key, &with.key);
    ow_release(search->context, with.nodes);
    return OW_OK;
}

ow_status ow_search_explain(ow_search *search, const char *id, ow_explanation *explanation)
{
    ow_explanation made = {.known = false};
    ow_text_done(&search->words);
    size_t part;
    ow_status status = OW_OK;
    if (ow_search_part_index(search, id, &part)) {
        made.known = true;
        status = explain_part(search, part, id, &made);
    } else if (ow_catalog_part(search->net->catalog, id) != NULL) {
        made.known = true;
        ow_text_format(&search->words, "%s is a given thing, never a part of a layout.", id);
    } else {
        ow_text_format(&search->words, "the catalogue has no part %s.", id);
    }
    if (status == OW_OK)
        status = ow_search_keep_words(search, &made.words);
    if (status != OW_OK)
        return status;

    *explanation = made;
    return OW_OK;
}
