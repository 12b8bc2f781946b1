/* SPDX-License-Identifier: MIT */
/* What place of a layout a finding's words name. */
#include <string.h>

#include "drawing/scene.h"

/* Whether `words` is the name, or the name and ".end"; *rest is what follows the point. */
static bool names(const char *words, size_t length, const char *name, const char **rest)
{
    size_t size = strlen(name);
    *rest = NULL;
    if (length < size || strncmp(words, name, size) != 0)
        return false;
    if (length == size)
        return true;
    if (words[size] != '.')
        return false;
    *rest = words + size + 1;
    return true;
}

size_t ow_scene_where(const ow_context *context, const ow_layout *layout, const char *where, size_t *end)
{
    size_t found = OW_NODE_NONE;
    *end = OW_PART_ENDS;
    if (where == NULL || where[0] == '\0')
        return found;
    const char *second = strncmp(where, "between ", 8) == 0 ? strstr(where, " and ") : NULL;
    const char *words = second != NULL ? second + 5 : where; /* a joint: its further side */
    size_t length = strlen(words);
    ow_text name = ow_text_new(context);
    for (size_t node = 0; node < layout->node_count && found == OW_NODE_NONE; node++) {
        const char *rest = NULL;
        name.length = 0;
        ow_layout_node_name(&name, layout, node);
        if (name.failed || !names(words, length, ow_text_words(&name), &rest))
            continue;
        found = node;
        const ow_part *part = layout->nodes[node].part;
        if (part != NULL && rest != NULL) {
            size_t index = ow_part_end_index(part, rest);
            *end = index < part->end_count ? index : OW_PART_ENDS;
        }
    }
    ow_text_done(&name);
    return found;
}
