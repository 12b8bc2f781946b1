/* SPDX-License-Identifier: MIT */
#include "layout/reading.h"

#include <stdarg.h>
#include <string.h>

#include "base/format.h"
#include "base/words.h"

#define MESSAGE_SIZE 256

void ow_reading_note(ow_reading *reading, ow_status status)
{
    reading->faults += status == OW_INPUT;
    if (status != OW_OK && (reading->status == OW_OK || reading->status == OW_INPUT || status == OW_MEMORY))
        reading->status = status;
}

bool ow_reading_enough(const ow_reading *reading)
{
    return reading->status == OW_MEMORY || reading->status == OW_LIMIT ||
           reading->faults >= OW_LAYOUT_FAULTS_MAX;
}

void ow_reading_fault(ow_reading *reading, ow_span span, const char *expected, const char *mend,
                      const char *format, ...)
{
    char message[MESSAGE_SIZE];
    va_list arguments;
    va_start(arguments, format);
    (void)ow_format(message, sizeof message, format, arguments);
    va_end(arguments);
    ow_reading_note(reading, ow_source_report(reading->context, OW_ERROR, OW_INPUT, reading->source, span,
                                              expected, mend, "%s", message));
}

void ow_reading_unknown(ow_reading *reading, ow_span span, const char *expected, const char *nearest,
                        const char *what, const char *word)
{
    ow_text mend = ow_text_new(reading->context);
    if (nearest)
        ow_text_format(&mend, "did you mean \"%s\"?", nearest);
    ow_reading_note(reading, ow_text_status(&mend));
    if (!mend.failed)
        ow_reading_fault(reading, span, expected, nearest ? ow_text_words(&mend) : NULL, "%s: \"%.60s\"",
                         what, word);
    ow_text_done(&mend);
}

const char *ow_reading_copy(ow_reading *reading, const char *words)
{
    const char *copy = ow_arena_copy(ow_layout_arena(reading->layout), words, strlen(words));
    if (!copy)
        ow_reading_note(reading, OW_MEMORY);
    return copy ? copy : "";
}

/* Lists the machine's ports for "expected" and picks the nearest. */
static void unknown_port(ow_reading *reading, ow_span span, const ow_machine *machine, const char *name)
{
    const char *nearest = NULL;
    size_t least = (size_t)-1;
    ow_text expected = ow_text_new(reading->context);
    ow_text_format(&expected, "a port of %s: ", machine->id);
    for (size_t port = 0; port < machine->port_count; port++) {
        const char *known = machine->ports[port].name;
        size_t distance;
        ow_text_format(&expected, "%s%s", port ? ", " : "", known);
        if (ow_words_near(name, strlen(name), known, strlen(known), &distance) && distance < least) {
            least = distance;
            nearest = known;
        }
    }
    ow_reading_note(reading, ow_text_status(&expected));
    if (!expected.failed)
        ow_reading_unknown(reading, span, ow_text_words(&expected), nearest, "the machine has no such port",
                           name);
    ow_text_done(&expected);
}

/* By id; "snipe-22#2" is the second of two machines of one record. */
static const ow_machine *find_machine(ow_reading *reading, const char *id)
{
    const ow_machine *machine = ow_catalog_machine(reading->catalog, id);
    const char *mark = strrchr(id, '#');
    if (machine || !mark || mark[1] == '\0' || mark[strspn(mark + 1, "0123456789") + 1] != '\0')
        return machine;
    const char *record = ow_arena_copy(ow_layout_arena(reading->layout), id, (size_t)(mark - id));
    if (!record)
        ow_reading_note(reading, OW_MEMORY);
    return record ? ow_catalog_machine(reading->catalog, record) : NULL;
}

/* machine:port. False if it is none, and reported. */
static bool find_port(ow_reading *reading, const char *words, ow_span span, ow_named *named)
{
    const char *copy = ow_reading_copy(reading, words);
    const char *colon = strchr(copy, ':');
    char *id = colon ? ow_arena_copy(ow_layout_arena(reading->layout), copy, (size_t)(colon - copy)) : NULL;
    if (!id) {
        ow_reading_note(reading, OW_MEMORY);
        return false;
    }
    const ow_machine *machine = find_machine(reading, id);
    const ow_port *port = machine ? ow_machine_port(machine, colon + 1) : NULL;
    if (!machine)
        ow_reading_unknown(reading, span, "an engine, a turbo or a heater of the catalogue",
                           ow_catalog_nearest_id(reading->catalog, id), "there is no such machine", id);
    else if (!port)
        unknown_port(reading, span, machine, colon + 1);
    if (!port)
        return false;
    named->given = (ow_given){.name = copy, .end = port->end, .machine = machine, .port = port};
    named->words = copy;
    return true;
}

/* An END. What is neither is more likely a misspelt id when it has no blank. */
static bool find_end(ow_reading *reading, const char *words, ow_span span, ow_named *named)
{
    ow_end_fault fault;
    char text[OW_END_TEXT_SIZE];
    ow_status status = ow_end_read(words, &named->given.end, &fault);
    if (status == OW_OK && !ow_end_is_whole(&named->given.end)) {
        ow_reading_fault(reading, span, "an end with its pitch and its seat", NULL,
                         "\"%.80s\" is not said in full", words);
        return false;
    }
    if (status == OW_OK) {
        named->words = ow_reading_copy(reading, ow_end_name(&named->given.end, text));
        named->given.name = "";
        return true;
    }
    if (status != OW_INPUT)
        ow_reading_note(reading, status);
    else if (strchr(words, ' '))
        ow_reading_fault(reading, span, fault.expected, fault.mend[0] ? fault.mend : NULL, "%s",
                         fault.message);
    else
        ow_reading_unknown(reading, span,
                           "the id of a part, a switch or a sender, MACHINE:PORT, or an end in quotes",
                           ow_catalog_nearest_id(reading->catalog, words), "this is in no catalogue", words);
    return false;
}

bool ow_reading_find(ow_reading *reading, const char *words, ow_span span, ow_named *named)
{
    *named = (ow_named){.part = ow_catalog_part(reading->catalog, words)};
    if (named->part && ow_kind_is_part(named->part->kind))
        return true;
    if (named->part) {
        named->given =
            (ow_given){.name = named->part->id, .end = named->part->ends[0], .fixture = named->part};
        named->words = named->part->id;
        named->part = NULL;
        return true;
    }
    if (strchr(words, ':'))
        return find_port(reading, words, span, named);
    const ow_machine *machine = ow_catalog_machine(reading->catalog, words);
    if (machine) {
        unknown_port(reading, span, machine, "");
        return false;
    }
    return find_end(reading, words, span, named);
}
