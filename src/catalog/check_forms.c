/* SPDX-License-Identifier: MIT */
/* Ends that a kind cannot have, and switches that do not fit the port that they are said to sit in. */
#include <math.h>
#include <string.h>

#include "catalog/audit.h"
#include "catalog/ranges.h"
#include "oilway/joint.h"

/* The eye's nominal hole is the thread's diameter to the millimetre: 10 for M10, 3/8-24 and G1/8. */
#define NOMINAL_SLACK_MM 0.75

static void look_at_form(ow_audit *audit, const ow_entry *entry, const ow_form_range *range)
{
    const ow_part *part = entry->part;
    size_t index = ow_part_end_index(part, range->end);
    char name[OW_END_TEXT_SIZE];
    if (part->kind != range->kind || index == OW_PART_ENDS)
        return;
    const ow_end *end = &part->ends[index];
    bool fits =
        (range->forms >> end->form & 1) && (range->gender == OW_GENDER_NONE || end->gender == range->gender);
    if (part->kind == OW_BANJO_BOLT && end->form == OW_FORM_THREAD)
        fits = fits && end->seat == OW_SEAT_BANJO;
    if (!fits)
        ow_audit_tell(audit, OW_ERROR, entry, range->words, NULL, "the %s of \"%s\" cannot be \"%s\"",
                      range->end, part->id, ow_end_name(end, name));
}

static void look_at_stud(ow_audit *audit, const ow_entry *entry)
{
    const ow_part *part = entry->part;
    ow_thread thread;
    if (part->kind != OW_BANJO_BOLT || part->end_count < 2 || part->ends[1].form != OW_FORM_BANJO ||
        !ow_end_thread(&part->ends[0], &thread))
        return;
    double major_mm = ow_thread_major_m(&thread) * 1e3, nominal_mm = part->ends[1].size * 1e-3;
    if (part->ends[1].size_unit == OW_SIZE_UM && fabs(major_mm - nominal_mm) > NOMINAL_SLACK_MM)
        ow_audit_tell(audit, OW_WARNING, entry, "the thread's diameter in whole millimetres", NULL,
                      "the stud of \"%s\" is for an eye of %.4g mm, its thread is %.4g mm", part->id,
                      nominal_mm, major_mm);
}

static void look_at_held(ow_audit *audit, const ow_entry *entry)
{
    const ow_machine *machine = entry->machine;
    char port_end[OW_END_TEXT_SIZE], own_end[OW_END_TEXT_SIZE];
    for (size_t i = 0; i < machine->port_count; i++) {
        const ow_port *port = &machine->ports[i];
        const ow_part *held = port->holds[0] ? ow_catalog_part(audit->catalog, port->holds) : NULL;
        if (held && !ow_joint_find(&port->end, &held->ends[0]))
            ow_audit_tell(audit, OW_ERROR, entry, NULL, NULL,
                          "port \"%s:%s\" (%s) cannot hold \"%s\" (%s): the two do not seal", machine->id,
                          port->name, ow_end_name(&port->end, port_end), held->id,
                          ow_end_name(&held->ends[0], own_end));
    }
}

void ow_audit_forms(ow_audit *audit)
{
    for (size_t i = 0; i < audit->catalog->entry_count; i++) {
        const ow_entry *entry = &audit->catalog->entries[i];
        if (entry->machine) {
            look_at_held(audit, entry);
            continue;
        }
        for (size_t form = 0; form < ow_form_range_count(); form++)
            look_at_form(audit, entry, ow_form_range_at(form));
        look_at_stud(audit, entry);
    }
}
