/* SPDX-License-Identifier: MIT */
#include "counter/api.h"

#include <string.h>

ow_status counter_api_shop(counter_call *call)
{
    return counter_keeper_state(call->keeper, call->shop, &call->text);
}

ow_status counter_api_catalog(counter_call *call)
{
    const char *id = counter_value(call, "id");
    const char *only = counter_value(call, "only");
    const ow_catalog *catalog = call->shop->catalog;
    if (only != NULL && strcmp(only, "given") != 0) {
        counter_fault(call, "only", only, "not a word known here", "given: machines, switches and senders");
        return OW_INPUT;
    }
    if (id == NULL && only != NULL)
        return ow_report_catalog_given_json(&call->text, catalog);
    if (id == NULL)
        return ow_report_catalog_list_json(&call->text, catalog);
    if (ow_catalog_part(catalog, id) == NULL && ow_catalog_machine(catalog, id) == NULL) {
        const char *nearest = ow_catalog_nearest_id(catalog, id);
        counter_fault(call, "id", id, "this is not in the catalogue", nearest);
        return OW_NONE;
    }
    return ow_report_catalog_show_json(&call->text, catalog, id);
}

ow_status counter_api_read(counter_call *call)
{
    static const char *const wants[] = {"from", "to", "keep", "end"}; /* as ow_wanted */
    const char *words = counter_value(call, "words"), *want = counter_value(call, "for");
    size_t wanted = 0;
    ow_typed typed;
    while (wanted < 4 && (want == NULL || strcmp(wants[wanted], want) != 0))
        wanted++;
    if (wanted == 4) {
        counter_fault(call, "for", want != NULL ? want : "", "not a word known here",
                      "from, to, keep or end");
        return OW_INPUT;
    }
    words = words != NULL ? words : "";
    ow_status status =
        ow_typed_read(&call->context, call->shop->catalog, call->shop->net, words, (ow_wanted)wanted, &typed);
    if (status != OW_OK)
        return status;
    status = ow_report_typed_json(&call->text, words, &typed);
    ow_typed_done(&typed);
    return status;
}
