/* SPDX-License-Identifier: MIT */
#include "counter/api.h"

ow_status counter_api_shop(counter_call *call)
{
    return counter_keeper_state(call->keeper, call->shop, &call->text);
}

ow_status counter_api_catalog(counter_call *call)
{
    const char *id = counter_value(call, "id");
    const ow_catalog *catalog = call->shop->catalog;
    if (id == NULL)
        return ow_report_catalog_list_json(&call->text, catalog);
    if (ow_catalog_part(catalog, id) == NULL && ow_catalog_machine(catalog, id) == NULL) {
        const char *nearest = ow_catalog_nearest_id(catalog, id);
        counter_fault(call, "id", id, "this is not in the catalogue", nearest);
        return OW_NONE;
    }
    return ow_report_catalog_show_json(&call->text, catalog, id);
}
