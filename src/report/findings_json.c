/* SPDX-License-Identifier: MIT */
#include "report/parts_json.h"

void ow_json_findings(ow_json *json, cJSON *parent, const char *name, const ow_findings *findings)
{
    cJSON *list = ow_json_list(json, parent, name);
    ow_json_more_findings(json, list, findings);
}

void ow_json_more_findings(ow_json *json, cJSON *list, const ow_findings *findings)
{
    for (size_t index = 0; index < findings->count; index++) {
        const ow_finding *finding = &findings->items[index];
        cJSON *item = ow_json_object(json, list, NULL);
        ow_json_words(json, item, "rule", finding->rule->id);
        ow_json_words(json, item, "severity", ow_severity_name(finding->severity));
        ow_json_words(json, item, "where", finding->where);
        ow_json_words(json, item, "message", finding->message);
        ow_json_words(json, item, "mend", finding->mend);
        ow_json_words(json, item, "source", finding->rule->source);
    }
}
