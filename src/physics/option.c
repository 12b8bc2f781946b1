/* SPDX-License-Identifier: MIT */
#include "physics/option.h"

#include <string.h>

#include "base/words.h"

static bool read_bare(const char *words, double *value)
{
    size_t used, length = strlen(words);
    return ow_number_read(words, length, value, &used) && used == length;
}

ow_status ow_option_read(const ow_context *context, const ow_option_field *field, const char *words,
                         double *value)
{
    double found = 0.0;
    if (words == NULL)
        return ow_report(context, OW_ERROR, OW_INPUT, NULL, field->range, NULL, "%s is not given",
                         field->name);
    if (field->may_be_bare && read_bare(words, &found))
        found *= field->bare;
    else if (ow_quantity_read(words, field->dimension, &found) != OW_OK)
        return ow_report(context, OW_ERROR, OW_INPUT, NULL, ow_dimension_expected(field->dimension), NULL,
                         "%s: \"%.60s\" cannot be read", field->name, words);
    if (!(found >= field->low && found <= field->high))
        return ow_report(context, OW_ERROR, OW_INPUT, NULL, field->range, NULL,
                         "%s: \"%.60s\" is out of range", field->name, words);
    *value = found;
    return OW_OK;
}
