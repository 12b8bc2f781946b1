/* SPDX-License-Identifier: MIT */
/* oilway swap LAYOUT PLACE: what else fits there; with --with, the layout so changed. */
#include <stdio.h>
#include <string.h>

#include "cli/commands.h"

#define SHOWN_MAX 40

static const cli_option options[] = {
    {"with", 'w', "ID", "change the part for this one and write the layout", false, NULL},
};

/* The layout and node that PLACE names: the first that has it. False after complaining. */
static bool find_place(const cli_run *run, const ow_layout *layouts, size_t count, size_t *index,
                       size_t *node)
{
    const char *place = run->arguments[1];
    for (*index = 0; *index < count; ++*index) {
        *node = ow_layout_node_named(&layouts[*index], place);
        if (*node != OW_NODE_NONE && layouts[*index].nodes[*node].part != NULL)
            return true;
    }
    fprintf(stderr,
            "oilway swap: no part is called \"%s\" in %s: expected an id, and for the second of it id#2\n",
            place, run->arguments[0]);
    return false;
}

static const ow_swap *find_swap(const ow_swaps *swaps, const char *id)
{
    for (size_t index = 0; index < swaps->count; index++) {
        if (strcmp(swaps->items[index].part->id, id) == 0)
            return &swaps->items[index];
    }
    fprintf(stderr, "oilway swap: \"%s\" does not fit there; without --with those are listed that do\n", id);
    return NULL;
}

static ow_status write_changed(ow_text *text, const ow_layout *layouts, size_t count, size_t index,
                               const ow_swaps *swaps, const ow_swap *swap)
{
    ow_layout swapped;
    ow_status status = ow_layout_swap(text->context, &layouts[index], swaps->node, swap, &swapped);
    for (size_t each = 0; each < count && status == OW_OK; each++) {
        ow_text_add(text, each > 0 ? "---\n" : "");
        ow_layout_write(text, each == index ? &swapped : &layouts[each]);
    }
    if (status == OW_OK)
        ow_layout_free(&swapped);
    return status;
}

static cli_exit print_swaps(cli_run *run, const ow_layout *layouts, size_t count, size_t index,
                            const ow_swaps *swaps)
{
    const char *with = cli_value(run, "with");
    const ow_swap *swap = with != NULL ? find_swap(swaps, with) : NULL;
    cli_exit exit = swaps->count > 0 ? CLI_YES : CLI_NO;
    if (with != NULL && swap == NULL)
        return CLI_COULD_NOT;
    ow_text text = ow_text_new(&run->context);
    ow_status status = OW_OK;
    if (swap != NULL)
        status = write_changed(&text, layouts, count, index, swaps, swap);
    else if (cli_is_format(run, "json"))
        status = ow_report_swaps_json(&text, layouts, count, index, swaps, SHOWN_MAX);
    else
        ow_report_swaps_text(&text, layouts, index, swaps, SHOWN_MAX, &run->style);
    if (status == OW_OK)
        return cli_print(run, &text, exit);
    ow_text_done(&text);
    return cli_fail(run, status);
}

static cli_exit swap_in(cli_run *run, const cli_shop *shop, const ow_layout *layouts, size_t count)
{
    size_t index, node;
    ow_swaps swaps;
    if (!find_place(run, layouts, count, &index, &node))
        return CLI_COULD_NOT;
    ow_status status = ow_swaps_find(&run->context, shop->catalog, &layouts[index], node, &swaps);
    cli_progress_erase(run);
    if (status != OW_OK)
        return cli_fail(run, status);
    cli_exit exit = print_swaps(run, layouts, count, index, &swaps);
    ow_swaps_done(&swaps);
    return exit;
}

static cli_exit run_swap(cli_run *run)
{
    if (cli_has(run, "with") && !cli_is_format(run, "text")) {
        cli_complain("with", "writes the layout, always as YAML; leave out %s",
                     cli_has(run, "json") ? "--json" : "--format");
        return CLI_COULD_NOT;
    }
    cli_shop shop;
    ow_layout *layouts = NULL;
    size_t count = 0, length = 0;
    char *bytes = NULL;
    ow_status status = cli_open_shop(run, false, &shop);
    if (status != OW_OK)
        return cli_fail(run, status);
    status = ow_file_read(&run->context, run->arguments[0], &bytes, &length);
    if (status == OW_OK)
        status = cli_read_layouts(run, &shop, bytes, length, &layouts, &count);
    cli_exit exit = status == OW_OK ? swap_in(run, &shop, layouts, count) : cli_fail(run, status);
    ow_layouts_free(&run->context, layouts, count);
    ow_release(&run->context, bytes);
    cli_close_shop(&shop);
    return exit;
}

const cli_command cli_swap = {
    .name = "swap",
    .arguments = "LAYOUT PLACE",
    .summary = "what else fits in the place of a part of a layout",
    .detail =
        "PLACE is a part as messages call it: its id, or id#2 for the second of that id. Each part of the\n"
        "catalogue whose ends join what is joined there is listed, with what the check then says. --with\n"
        "writes the layout with the part changed, for `check` and `bill` to read.",
    .options = options,
    .option_count = sizeof options / sizeof options[0],
    .least = 2,
    .most = 2,
    .uses = CLI_USES_SHOP | CLI_USES_STOCK | CLI_USES_PRINT,
    .no = "nothing else fits there",
    .formats = "text json",
    .run = run_swap,
};
