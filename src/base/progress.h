/* SPDX-License-Identifier: MIT */
/* Telling who waits how far a call has come. Callers tell after some thousand steps, not after each. */
#ifndef OW_BASE_PROGRESS_H
#define OW_BASE_PROGRESS_H

#include "oilway/context.h"

/* OW_OK to go on, OW_STOPPED to end. `counted` may be NULL, `all` 0. */
static inline ow_status ow_progress_tell(const ow_context *context, const char *doing, const char *counted,
                                         size_t done, size_t all)
{
    const ow_progress now = {doing, counted, done, all};
    if (context == NULL || context->progress == NULL || context->progress(context->progress_user, &now))
        return OW_OK;
    return OW_STOPPED;
}

#endif
