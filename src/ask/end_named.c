/* SPDX-License-Identifier: MIT */
/* An end as somebody names it: in the grammar, or as that of a thing in the catalogue. */
#include <string.h>

#include "base/source.h"
#include "oilway/mates_ask.h"

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
static bool find_port(const ow_catalog *catalog, const char *words, ow_end *end)
{
    char id[ID_MAX];
    const char *colon = strchr(words, ':');
    if (!copy_id(words, colon, id))
        return false;
    const ow_machine *machine = ow_catalog_machine(catalog, id);
    const ow_port *port = machine != NULL ? ow_machine_port(machine, colon + 1) : NULL;
    if (port != NULL)
        *end = port->end;
    return port != NULL;
}

/* tf-2-4.b, as joints are named; ids hold points too, so the last one counts. */
static bool find_end_of_part(const ow_catalog *catalog, const char *words, ow_end *end)
{
    char id[ID_MAX];
    const char *point = strrchr(words, '.');
    if (!copy_id(words, point, id))
        return false;
    const ow_part *part = ow_catalog_part(catalog, id);
    for (size_t index = 0; part != NULL && index < part->end_count; index++) {
        if (strcmp(part->end_names[index], point + 1) != 0)
            continue;
        *end = part->ends[index];
        return true;
    }
    return false;
}

static ow_status fault(const ow_context *context, const char *name, const char *words, const char *expected,
                       const char *mend, const char *message)
{
    ow_source source = {name, words, strlen(words)};
    return ow_source_report(context, OW_ERROR, OW_INPUT, &source, (ow_span){0, source.length}, expected, mend,
                            "%s", message);
}

/* A thing with several ends: which may be meant. */
static ow_status complain_of_several(const ow_context *context, const char *name, const ow_part *part)
{
    char words[OW_END_TEXT_SIZE];
    ow_text mend = ow_text_new(context);
    ow_text_add(&mend, "say");
    for (size_t index = 0; index < part->end_count; index++)
        ow_text_format(&mend, "%s %s.%s (%s)", index > 0 ? " or" : "", part->id, part->end_names[index],
                       ow_end_name(&part->ends[index], words));
    ow_status status = ow_text_status(&mend);
    if (status == OW_OK)
        status =
            fault(context, name, part->id, "one end of it", ow_text_words(&mend), "this has several ends");
    ow_text_done(&mend);
    return status;
}

static ow_status suggest(const ow_context *context, const char *name, const char *words, const char *nearest)
{
    ow_text mend = ow_text_new(context);
    ow_text_format(&mend, "did you mean %s?", nearest);
    ow_status status = ow_text_status(&mend);
    if (status == OW_OK)
        status = fault(context, name, words, "an end, machine:port, a switch's id, or part.end",
                       ow_text_words(&mend), "this is neither an end nor in the catalogue");
    ow_text_done(&mend);
    return status;
}

ow_status ow_end_named_read(const ow_context *context, const ow_catalog *catalog, const char *name,
                            const char *words, ow_end *end)
{
    if (find_port(catalog, words, end) || find_end_of_part(catalog, words, end))
        return OW_OK;
    const ow_part *part = ow_catalog_part(catalog, words);
    if (part != NULL && part->end_count > 1)
        return complain_of_several(context, name, part);
    if (part != NULL) {
        *end = part->ends[0];
        return OW_OK;
    }
    const char *nearest = strchr(words, ' ') == NULL ? ow_catalog_nearest_id(catalog, words) : NULL;
    if (nearest != NULL && ow_end_read(words, end, NULL) != OW_OK)
        return suggest(context, name, words, nearest);
    return ow_end_read_told(context, name, words, end);
}
