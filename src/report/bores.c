/* SPDX-License-Identifier: MIT */
#include "report/bores.h"

#include <math.h>

#include "oilway/quantity.h"

#define ALIKE 0.03 /* a hose sized by its own bore needs no second figure */

bool ow_bores_nominal(const ow_part *part, unsigned ends, ow_nominal *nominal)
{
    bool found = false;
    for (size_t end = 0; end < part->end_count; end++) {
        ow_nominal one;
        if ((ends & (1u << end)) == 0 || !ow_end_nominal(&part->ends[end], &one) ||
            (one.of != OW_NOMINAL_TUBE && one.of != OW_NOMINAL_HOSE))
            continue;
        if (!found || one.size_m < nominal->size_m)
            *nominal = one;
        found = true;
    }
    return found;
}

double ow_bores_least_m(const ow_part *part)
{
    double least = OW_NOT_SAID;
    for (size_t end = 0; end < part->end_count; end++) {
        double bore = part->leg_bore_m[end];
        if (bore >= 0.0 && (least < 0.0 || bore < least))
            least = bore;
    }
    return least;
}

void ow_bores_write(ow_text *text, double bore_m, const ow_nominal *nominal)
{
    ow_text_add(text, "bore ");
    ow_quantity_write(text, OW_LENGTH, bore_m, 2);
    if (nominal == NULL || fabs(nominal->size_m - bore_m) <= ALIKE * nominal->size_m)
        return;
    bool by_number = nominal->name[0] == '-' || (nominal->name[0] >= '0' && nominal->name[0] <= '9');
    if (by_number)
        ow_text_format(text, " (%s is ", nominal->name);
    else
        ow_text_add(text, nominal->of == OW_NOMINAL_HOSE ? " (for hose of " : " (for tube of ");
    ow_quantity_write(text, OW_LENGTH, nominal->size_m, 2);
    ow_text_add(text, by_number ? " of tube)" : ")");
}

void ow_bores_json(ow_json *json, cJSON *item, double bore_m, const ow_nominal *nominal)
{
    ow_json_scaled(json, item, "bore_mm", bore_m, 1e3, 4);
    ow_json_scaled(json, item, "nominal_mm", nominal != NULL ? nominal->size_m : -1.0, 1e3, 4);
    ow_json_words(json, item, "nominal", nominal != NULL ? ow_nominal_of_word(nominal->of) : NULL);
}
