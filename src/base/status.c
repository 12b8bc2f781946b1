/* SPDX-License-Identifier: MIT */
#include "oilway/status.h"

#define STATUS_TEXT(name, text) text,
static const char *const status_texts[] = {OW_STATUS_LIST(STATUS_TEXT)};
#undef STATUS_TEXT

const char *ow_status_text(ow_status status)
{
    if ((int)status < 0 || status >= OW_STATUS_COUNT)
        return "an unknown status";
    return status_texts[status];
}
