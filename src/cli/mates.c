/* SPDX-License-Identifier: MIT */
/* oilway mates END [END]. */
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

/* Of an end whose pitch or seat is not said: what tells its readings apart. */
static ow_status tell_apart(cli_run *run, const cli_shop *shop, const ow_end *end, ow_text *text)
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
        ow_report_apart_text(text, name, typed.decide, &run->style);
    ow_typed_done(&typed);
    return ow_text_status(text);
}

static ow_status write_text(cli_run *run, const cli_shop *shop, const ow_mates_ask *ask,
                            const ow_mates_list *list, ow_text *text)
{
    ow_status status = OW_OK;
    ow_report_mates_text(text, list, &run->style);
    for (size_t i = 0; i < ask->end_count && status == OW_OK; i++)
        status = tell_apart(run, shop, &ask->ends[i], text);
    if (cli_has(run, "card"))
        write_cards(text, run, list, &ask->card);
    return status;
}

static cli_exit print_mates(cli_run *run, const cli_shop *shop, const ow_mates_ask *ask,
                            const ow_mates_list *list)
{
    ow_text text = ow_text_new(&run->context);
    ow_status status = cli_is_format(run, "json")
                           ? ow_report_mates_json(&text, list, cli_has(run, "card") ? &ask->card : NULL)
                           : write_text(run, shop, ask, list, &text);
    if (status == OW_OK)
        return cli_print(run, &text, any_seals(list) ? CLI_YES : CLI_NO);
    ow_text_done(&text);
    return cli_fail(run, status);
}

static cli_exit find_mates(cli_run *run, const cli_shop *shop)
{
    ow_mates_words words = {.end_count = run->argument_count,
                            .material = cli_value(run, "material"),
                            .bolt = cli_value(run, "bolt"),
                            .engaged = cli_value(run, "engaged")};
    ow_mates_ask ask;
    ow_mates_list list;
    for (size_t i = 0; i < run->argument_count; i++)
        words.ends[i] = run->arguments[i];
    ow_status status = ow_mates_ask_read(&run->context, shop->catalog, &words, &ask);
    if (status == OW_OK)
        status = ow_mates_find(&run->context, shop->net, &ask, &list);
    if (status != OW_OK)
        return cli_fail(run, status);
    cli_exit exit = print_mates(run, shop, &ask, &list);
    ow_mates_list_done(&list);
    return exit;
}

/* What is asked of cards only. */
static bool card_is_asked(const cli_run *run)
{
    static const char *const options_of_cards[] = {"material", "bolt", "engaged"};
    for (size_t i = 0; i < sizeof options_of_cards / sizeof options_of_cards[0]; i++) {
        if (cli_has(run, options_of_cards[i]) && !cli_has(run, "card")) {
            cli_complain(options_of_cards[i], "says something in a card only; it goes with --card");
            return false;
        }
    }
    return true;
}

static cli_exit run_mates(cli_run *run)
{
    if (!card_is_asked(run))
        return CLI_COULD_NOT;
    cli_shop shop;
    ow_status status = cli_open_shop(run, true, &shop);
    if (status != OW_OK)
        return cli_fail(run, status);
    cli_exit exit = find_mates(run, &shop);
    cli_close_shop(&shop);
    return exit;
}

const cli_command cli_mates = {
    .name = "mates",
    .arguments = "END [END]",
    .summary = "what screws onto an end and seals, and what only looks right",
    .detail =
        "END is as oilway(5) has it: \"1/8-27 NPT male\", \"-4 flare37 female swivel\", \"M10x1 female\n"
        "washer\"; pitch or seat may be left out. It may be that of a thing in the catalogue too: "
        "MACHINE:PORT, a\n"
        "switch's id, PART.END. With two, the verdict on that pair: exit 0 if it seals, else 1.",
    .options = options,
    .option_count = sizeof options / sizeof options[0],
    .least = 1,
    .most = 2,
    .uses = CLI_USES_SHOP | CLI_USES_PRINT,
    .no = "nothing seals, or that pair does not",
    .formats = "text json",
    .run = run_mates,
};
