/* SPDX-License-Identifier: MIT */
#include "oilway/mark.h"

const char *ow_mark_words(ow_mark mark)
{
    static const char *const words[] = {"published", "published, from memory", "derived", "common practice",
                                        "assumption"};
    return mark <= OW_MARK_ASSUMED ? words[mark] : "";
}
