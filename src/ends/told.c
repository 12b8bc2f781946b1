/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "base/source.h"
#include "oilway/end.h"

ow_status ow_end_read_told(const ow_context *context, const char *name, const char *words, ow_end *end)
{
    ow_end_fault fault;
    ow_source source = {name, words, strlen(words)};
    if (ow_end_read(words, end, &fault) == OW_OK)
        return OW_OK;
    ow_span span = {fault.start, fault.length};
    return ow_source_report(context, OW_ERROR, OW_INPUT, &source, span, fault.expected,
                            fault.mend[0] ? fault.mend : NULL, "%s", fault.message);
}
