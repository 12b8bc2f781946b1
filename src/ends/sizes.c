/* SPDX-License-Identifier: MIT */
/* Look-ups in the tables of sizes_table.c. */
#include "ends/sizes.h"

#include <string.h>

const ow_seat_size *ow_seat_size_find(ow_seat seat, ow_size_unit unit, int32_t size)
{
    const ow_seat_size *row;
    for (size_t i = 0; (row = ow_seat_size_at(i)); i++)
        if (row->seat == seat && row->unit == unit && row->size == size)
            return row;
    return NULL;
}

/* Whether a thread as asked, perhaps without its pitch, is the one of a table. */
static bool is_thread(const ow_thread *asked, const ow_thread *row)
{
    return asked->family == row->family && asked->size == row->size &&
           (asked->pitch == 0 || asked->pitch == row->pitch);
}

const ow_seat_size *ow_seat_size_on(ow_seat seat, const ow_thread *thread)
{
    const ow_seat_size *row;
    for (size_t i = 0; (row = ow_seat_size_at(i)); i++)
        if (row->seat == seat && is_thread(thread, &row->thread))
            return row;
    return NULL;
}

const ow_cone_series *ow_cone_series_find(const char *name)
{
    const ow_cone_series *row;
    for (size_t i = 0; (row = ow_cone_series_at(i)); i++)
        if (strcmp(row->name, name) == 0)
            return row;
    return NULL;
}

bool ow_is_o_ring_port(const ow_thread *thread)
{
    const ow_thread *port;
    for (size_t i = 0; (port = ow_o_ring_port_at(i)); i++)
        if (is_thread(thread, port))
            return true;
    return false;
}
