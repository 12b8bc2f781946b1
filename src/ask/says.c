/* SPDX-License-Identifier: MIT */
/* Ports and ends in one line, for somebody who types or looks. */
#include "ask/ask_internal.h"
#include "ask/offering.h"
#include "oilway/thread_size.h"

static const char *const form_words[OW_FORM_COUNT] = {
    [OW_FORM_BANJO] = "a banjo's shank and eye: a ring on each side",
    [OW_FORM_HOSE] = "the cut end of a hose",
    [OW_FORM_TAIL] = "the end of a fitting that goes into that hose",
    [OW_FORM_BARB] = "a ribbed tail for a clamp",
    [OW_FORM_BEAD] = "a pipe with a bead, for a clamp",
    [OW_FORM_TUBE] = "a plain pipe, for nut and cutting ring",
    [OW_FORM_FLANGE] = "a bolt pattern; the catalogue describes it",
    [OW_FORM_WELD] = "a pipe to be welded",
};

/* What a caliper reads, between the limits of size; a taper at its gauge plane. */
static void say_crests(ow_text *text, const ow_end *end)
{
    ow_thread thread;
    ow_thread_size size;
    bool male = end->gender == OW_MALE;
    if (!ow_end_thread(end, &thread) || ow_thread_size_of(&thread, male, OW_CLASS_USUAL, &size) != OW_OK)
        return;
    ow_size_limits crest = ow_thread_crest_at(&size, size.gauge_m);
    if (text->length > 0 && text->data[text->length - 1] != ' ')
        ow_text_add(text, "; ");
    ow_text_add(text, male ? "measures " : "bore measures ");
    if (crest.has_least && crest.has_most) {
        ow_text_format(text, "%.2f to ", 1e3 * crest.least_m);
        ow_quantity_write(text, OW_LENGTH, crest.most_m, 2);
    } else {
        ow_quantity_write(text, OW_LENGTH, crest.basic_m, 2);
    }
    ow_text_add(text, male ? " over its crests" : " across its crests");
}

void ow_say_end(ow_text *text, const ow_end *end)
{
    const char *form = form_words[end->form];
    if (!ow_end_is_whole(end)) {
        ow_text_add(text, "pitch or seat not said yet");
        return;
    }
    if (form != NULL) {
        ow_text_add(text, form);
        return;
    }
    if (end->form != OW_FORM_THREAD) {
        ow_thread thread;
        if (ow_end_thread(end, &thread)) {
            ow_text_add(text, "thread ");
            ow_thread_write(text, &thread);
            ow_text_add(text, "; ");
        }
    }
    ow_text_add(text, ow_seat_mark(end));
    say_crests(text, end);
}

void ow_say_port(ow_text *text, const ow_machine *machine, const ow_port *port)
{
    char end[OW_END_TEXT_SIZE];
    ow_text_format(text, "%s of %s: %s", port->name, machine->title[0] != '\0' ? machine->title : machine->id,
                   ow_end_name(&port->end, end));
    if (port->circuit != OW_CIRCUIT_NONE)
        ow_text_format(text, ", %s", ow_circuit_word(port->circuit));
    if (port->pressure_pa >= 0) {
        ow_text_add(text, ", ");
        ow_quantity_write(text, OW_PRESSURE, port->pressure_pa, 2);
    }
    if (port->holds[0] != '\0')
        ow_text_format(text, ", holds %s", port->holds);
}

void ow_say_machine(ow_text *text, const ow_machine *machine)
{
    ow_text_format(text, "%s%s%s, one of its ports:", ow_kind_word(machine->kind),
                   machine->title[0] != '\0' ? ", " : "", machine->title);
    for (size_t index = 0; index < machine->port_count; index++)
        ow_text_format(text, "%s %s", index > 0 ? "," : "", machine->ports[index].name);
}

void ow_say_fixture(ow_text *text, const ow_part *fixture)
{
    char end[OW_END_TEXT_SIZE];
    ow_text_format(text, "%s: %s", fixture->title[0] != '\0' ? fixture->title : ow_kind_word(fixture->kind),
                   ow_end_name(&fixture->ends[0], end));
}
