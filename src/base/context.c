/* SPDX-License-Identifier: MIT */
#include "oilway/context.h"

#include <stdlib.h>

static const char *const severity_names[] = {"note", "warning", "error"};

const char *ow_severity_name(ow_severity severity)
{
    if ((int)severity < 0 || severity > OW_ERROR)
        return "error";
    return severity_names[severity];
}

void *ow_resize(const ow_context *context, void *block, size_t size)
{
    if (context != NULL && context->resize != NULL)
        return context->resize(context->resize_user, block, size);
    /* realloc(block, 0) means different things on different machines. */
    if (size == 0) {
        free(block);
        return NULL;
    }
    return realloc(block, size);
}

void ow_release(const ow_context *context, void *block)
{
    if (block != NULL)
        ow_resize(context, block, 0);
}
