/* SPDX-License-Identifier: MIT */
/* What can be said of one part or machine by itself. */
#include <math.h>
#include <string.h>

#include "oilway/catalog.h"

bool ow_part_is_hose(const ow_part *part)
{
    return part->kind == OW_HOSE || (part->kind == OW_LINE && !part->rigid_tube);
}

int64_t ow_part_price_cents(const ow_part *part, double length_m)
{
    if (!part->has_price)
        return 0;
    if (part->kind != OW_HOSE || length_m < 0)
        return part->price_cents;
    return (int64_t)floor((double)part->price_cents * length_m + 0.5);
}

double ow_part_bore_m(const ow_part *part, size_t from, size_t to)
{
    if (from >= part->end_count || to >= part->end_count)
        return OW_NOT_SAID;
    double a = part->leg_bore_m[from], b = part->leg_bore_m[to];
    if (a < 0 || b < 0)
        return OW_NOT_SAID;
    return a < b ? a : b;
}

size_t ow_part_end_index(const ow_part *part, const char *name)
{
    for (size_t end = 0; end < part->end_count; end++)
        if (strcmp(part->end_names[end], name) == 0)
            return end;
    return OW_PART_ENDS;
}

const ow_port *ow_machine_port(const ow_machine *machine, const char *name)
{
    for (size_t port = 0; port < machine->port_count; port++)
        if (strcmp(machine->ports[port].name, name) == 0)
            return &machine->ports[port];
    return NULL;
}
