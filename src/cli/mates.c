/* SPDX-License-Identifier: MIT */
/* oilway mates END [END]. */
#include <stdio.h>
#include <stdlib.h>

#include "cli/commands.h"
#include "oilway/report_joint.h"

static const cli_option options[] = {
    {"card", 'd', NULL, "also the card of each joint that seals: rings, tightening, engagement, cautions",
     false, NULL},
    {"material", 'm', "WORD", "for the card: the softer part's material, such as steel, aluminium, brass",
     false, NULL},
    {"bolt", 0, "THREAD", "for the card of a banjo's eye: the thread of its bolt", false, NULL},
    {"engaged", 0, "Q", "for the card: measured length of full thread engaged", false, NULL},
};

/* The words of --card's companions. */
static bool read_card_ask(const cli_run *run, ow_thread *bolt, ow_card_ask *ask)
{
    const char *words = cli_value(run, "bolt"), *engaged = cli_value(run, "engaged");
    size_t used = 0;
    ask->material = cli_value(run, "material");
    if (ask->material != NULL && !ow_material_is_known(ask->material)) {
        cli_complain("material",
                     "%s: steel, iron, stainless, aluminium, light alloy, brass, bronze or copper is wanted",
                     ask->material);
        return false;
    }
    if (words != NULL) {
        if (ow_thread_read(words, bolt, &used) != OW_OK || words[used] != '\0' || bolt->pitch == 0) {
            cli_complain("bolt", "\"%s\" is no thread with its pitch, such as M10x1 or \"3/8-24 UNF\"",
                         words);
            return false;
        }
        ask->bolt = bolt;
    }
    if (engaged != NULL &&
        (ow_quantity_read(engaged, OW_LENGTH, &ask->engaged_m) != OW_OK || ask->engaged_m <= 0.0)) {
        cli_complain("engaged", "\"%s\" is not %s", engaged, ow_dimension_expected(OW_LENGTH));
        return false;
    }
    return true;
}

/* The kinds of end in the catalogue, freed with ow_release. */
static ow_status copy_kinds(cli_run *run, const cli_shop *shop, ow_end **kinds, size_t *count)
{
    *count = ow_net_kind_count(shop->net);
    *kinds = ow_resize(&run->context, NULL, (*count + 1) * sizeof **kinds);
    if (*kinds == NULL)
        return OW_MEMORY;
    for (size_t i = 0; i < *count; i++)
        (*kinds)[i] = *ow_net_kind_at(shop->net, i);
    return OW_OK;
}

static ow_status list_mates(cli_run *run, const cli_shop *shop, const ow_end *ends, ow_mates_list *list)
{
    ow_end *kinds = NULL;
    size_t count = 0;
    ow_status status = copy_kinds(run, shop, &kinds, &count);
    if (status == OW_OK)
        status = run->argument_count == 2
                     ? ow_mates_pair(&run->context, &ends[0], &ends[1], kinds, count, list)
                     : ow_mates_of(&run->context, &ends[0], kinds, count, list);
    ow_release(&run->context, kinds);
    return status;
}

/* A bolt goes through the hole of its eye, and fills it: 3/8-24 goes with 10 mm (DIN 7643), 7/16 with 11 and
 * G1/4 with 13, which are names to the millimetre. */
static bool bolt_fits(const ow_end *ends, size_t count, const ow_thread *bolt)
{
    for (size_t i = 0; i < count; i++) {
        double hole_m = (double)ends[i].size * 1e-6;
        double play_m = hole_m - ow_thread_major_m(bolt);
        if (ends[i].form == OW_FORM_BANJO && (play_m < -0.00025 || play_m > 0.001))
            return false;
    }
    return true;
}

/* Of an end whose pitch or seat is not said: what tells its readings apart. */
static ow_status tell_apart(cli_run *run, const cli_shop *shop, const ow_end *end, ow_text *apart)
{
    ow_typed typed;
    char name[OW_END_TEXT_SIZE];
    if (ow_end_is_whole(end))
        return OW_OK;
    ow_status status =
        ow_typed_read(&run->context, shop->catalog, shop->net, ow_end_name(end, name), OW_WANTED_END, &typed);
    if (status != OW_OK)
        return status;
    if (typed.decide != NULL)
        ow_report_apart_text(apart, name, typed.decide, &run->style);
    ow_typed_done(&typed);
    return ow_text_status(apart);
}

static ow_status find_mates(cli_run *run, const ow_card_ask *ask, ow_mates_list *list, ow_text *apart)
{
    cli_shop shop;
    ow_end ends[2];
    ow_status status = cli_open_shop(run, true, &shop);
    if (status != OW_OK)
        return status;
    for (size_t i = 0; i < run->argument_count; i++)
        if (!cli_find_end(run, &shop, run->arguments[i], &ends[i]))
            status = OW_INPUT;
    if (status == OW_OK && ask->bolt != NULL && !bolt_fits(ends, run->argument_count, ask->bolt)) {
        cli_complain("bolt", "%s does not go with an eye of that size", cli_value(run, "bolt"));
        run->errors++;
        status = OW_INPUT;
    }
    if (status == OW_OK)
        status = list_mates(run, &shop, ends, list);
    for (size_t i = 0; i < run->argument_count && status == OW_OK; i++) {
        status = tell_apart(run, &shop, &ends[i], apart);
        if (status != OW_OK)
            ow_mates_list_done(list);
    }
    cli_close_shop(&shop);
    return status;
}

static bool any_seals(const ow_mates_list *list)
{
    for (size_t i = 0; i < list->count; i++)
        if (list->items[i].verdict == OW_SEALS)
            return true;
    return false;
}

static void write_cards(ow_text *text, const cli_run *run, const ow_mates_list *list, const ow_card_ask *ask)
{
    for (size_t i = 0; i < list->count; i++) {
        ow_card card;
        if (ow_card_of(&list->items[i].ends[0], &list->items[i].ends[1], ask, &card) != OW_OK)
            continue;
        ow_text_char(text, '\n');
        ow_report_card_text(text, &card, &run->style);
    }
}

static cli_exit run_mates(cli_run *run)
{
    ow_thread bolt;
    ow_card_ask ask = {0};
    ow_mates_list list;
    if (!read_card_ask(run, &bolt, &ask))
        return CLI_COULD_NOT;
    ow_text apart = ow_text_new(&run->context);
    ow_status status = find_mates(run, &ask, &list, &apart);
    if (status != OW_OK) {
        ow_text_done(&apart);
        return cli_fail(run, status);
    }
    bool card = cli_has(run, "card");
    cli_exit exit = any_seals(&list) ? CLI_YES : CLI_NO;
    ow_text text = ow_text_new(&run->context);
    if (cli_is_format(run, "json")) {
        status = ow_report_mates_json(&text, &list, card ? &ask : NULL);
    } else {
        ow_report_mates_text(&text, &list, &run->style);
        ow_text_add(&text, ow_text_words(&apart));
        if (card)
            write_cards(&text, run, &list, &ask);
    }
    ow_mates_list_done(&list);
    ow_text_done(&apart);
    if (status == OW_OK)
        return cli_print(run, &text, exit);
    ow_text_done(&text);
    return cli_fail(run, status);
}

const cli_command cli_mates = {
    .name = "mates",
    .arguments = "END [END]",
    .summary = "what screws onto an end and seals, and what only looks right",
    .detail =
        "END is as docs/ends.md has it: \"1/8-27 NPT male\", \"-4 flare37 female swivel\", \"M10x1 female\n"
        "washer\"; pitch or seat may be left out. It may be that of a thing in the catalogue too: "
        "MACHINE:PORT, a\n"
        "switch's id, PART.END. With two, the verdict on that pair: exit 0 if it seals, else 1.",
    .options = options,
    .option_count = sizeof options / sizeof options[0],
    .least = 1,
    .most = 2,
    .formats = "text json",
    .run = run_mates,
};
