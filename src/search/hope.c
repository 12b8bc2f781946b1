/* SPDX-License-Identifier: MIT */
/*
 * What can be known of an ask of several ports without the sets of them: in any layout the path to each port
 * is a layout for that port alone, but for what hangs on the other ends of its parts. Let these stay open,
 * and leave out what is asked between ports: a port that has no path even then rules the whole ask out.
 */
#include "search/resolve.h"
#include "search/table.h"

static ow_status look_at_port(const ow_context *context, const ow_net_index *net, const ow_search_input *ask,
                              size_t port, bool *hopeless)
{
    ow_search_input alone = *ask;
    alone.port_count = 1;
    alone.ports = &ask->ports[port];
    alone.spare_open = true;
    ow_table *table;
    ow_status status = ow_table_new(context, net, &alone, OW_EVENT_NONE, 0, false, &table);
    if (status != OW_OK)
        return status;
    /* An open end is reckoned as a part, where a port may hang on it that costs none: over the bound the
     * number of parts says nothing. */
    *hopeless = table->best == OW_TABLE_NONE && !table->capped;
    ow_table_free(table);
    return OW_OK;
}

ow_status ow_resolve_hopeless(const ow_context *context, const ow_net_index *net, const ow_search_input *ask,
                              bool *hopeless)
{
    bool none = false;
    for (size_t port = 0; port < ask->port_count && !none; port++) {
        ow_status status = look_at_port(context, net, ask, port, &none);
        if (status != OW_OK)
            return status;
    }
    *hopeless = none;
    return OW_OK;
}
