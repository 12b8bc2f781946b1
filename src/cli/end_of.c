/* SPDX-License-Identifier: MIT */
/* An end as somebody names it: in the grammar, or as that of a thing in the catalogue. */
#include <stdio.h>
#include <string.h>

#include "cli/cli.h"

#define ID_MAX 64

/* "id" before a separator, copied; false if there is none or it is too long. */
static bool copy_id(const char *words, const char *separator, char *id)
{
    if (separator == NULL || separator == words || (size_t)(separator - words) >= ID_MAX)
        return false;
    memcpy(id, words, (size_t)(separator - words));
    id[separator - words] = '\0';
    return true;
}

/* brockle-4:gallery */
static bool find_port(const cli_shop *shop, const char *words, ow_end *end)
{
    char id[ID_MAX];
    const char *colon = strchr(words, ':');
    if (!copy_id(words, colon, id))
        return false;
    const ow_machine *machine = ow_catalog_machine(shop->catalog, id);
    const ow_port *port = machine != NULL ? ow_machine_port(machine, colon + 1) : NULL;
    if (port != NULL)
        *end = port->end;
    return port != NULL;
}

/* tf-2-4.b, as joints are named; ids hold points too, so the last one counts. */
static bool find_end_of_part(const cli_shop *shop, const char *words, ow_end *end)
{
    char id[ID_MAX];
    const char *point = strrchr(words, '.');
    if (!copy_id(words, point, id))
        return false;
    const ow_part *part = ow_catalog_part(shop->catalog, id);
    for (size_t index = 0; part != NULL && index < part->end_count; index++) {
        if (strcmp(part->end_names[index], point + 1) != 0)
            continue;
        *end = part->ends[index];
        return true;
    }
    return false;
}

/* A thing with several ends: which may be meant. */
static void complain_of_several(const ow_part *part)
{
    char words[OW_END_TEXT_SIZE];
    fprintf(stderr, "oilway mates: %s has several ends: say", part->id);
    for (size_t index = 0; index < part->end_count; index++)
        fprintf(stderr, "%s %s.%s (%s)", index > 0 ? " or" : "", part->id, part->end_names[index],
                ow_end_name(&part->ends[index], words));
    fputc('\n', stderr);
}

bool cli_find_end(cli_run *run, const cli_shop *shop, const char *words, ow_end *end)
{
    if (find_port(shop, words, end) || find_end_of_part(shop, words, end))
        return true;
    const ow_part *part = ow_catalog_part(shop->catalog, words);
    if (part != NULL && part->end_count == 1) {
        *end = part->ends[0];
        return true;
    }
    if (part != NULL) {
        complain_of_several(part);
        run->errors++;
        return false;
    }
    const char *nearest = strchr(words, ' ') == NULL ? ow_catalog_nearest_id(shop->catalog, words) : NULL;
    if (nearest != NULL && ow_end_read(words, end, NULL) != OW_OK) {
        fprintf(stderr, "oilway mates: \"%s\" is neither an end nor in the catalogue; did you mean %s?\n",
                words, nearest);
        run->errors++;
        return false;
    }
    return ow_end_read_told(&run->context, "END", words, end) == OW_OK;
}
