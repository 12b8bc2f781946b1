/* SPDX-License-Identifier: MIT */
/* The counter sheet as a page of its own, which a link opens: its whole ask stands in the query, or in
 * the body where it is too long for a link. */
#include <stdio.h>
#include <string.h>

#include "counter/api.h"
#include "counter/digest.h"

static ow_status sheet_of_layouts(counter_call *call)
{
    ow_layout *layouts = NULL;
    size_t count = 0;
    ow_checked checked;
    ow_status status = counter_read_layouts(call, &layouts, &count);
    if (status != OW_OK)
        return status;
    status = ow_check_layouts(&call->context, call->shop->catalog, layouts, count, &checked);
    if (status == OW_OK) {
        status = ow_sheet_check_html(&call->text, layouts, &checked);
        ow_checked_done(&checked);
    }
    ow_layouts_free(&call->context, layouts, count);
    return status;
}

static ow_status sheet_of_plan(counter_call *call, const ow_plan *plan)
{
    return ow_sheet_plan_html(&call->text, plan);
}

/* The sheet brings its own style, which the policy names by its digest; nothing else may be there. */
static void set_policy(counter_call *call)
{
    char digest[COUNTER_DIGEST_SIZE];
    const char *style = ow_sheet_style();
    counter_digest(style, strlen(style), digest);
    snprintf(call->policy, sizeof call->policy,
             "default-src 'none'; style-src 'sha256-%s'; frame-ancestors 'none'; sandbox", digest);
    call->type = "text/html; charset=utf-8";
}

static ow_status with_policy(counter_call *call, ow_status status)
{
    if (status == OW_OK)
        set_policy(call);
    return status;
}

static void body_is(counter_call *call, const char *words)
{
    call->body = words;
    call->body_length = strlen(words);
}

ow_status counter_sheet(counter_call *call)
{
    const char *layout = counter_value(call, "layout"), *job = counter_value(call, "job");
    if (layout == NULL && job == NULL)
        return with_policy(call, counter_sheet_of_stack(call));
    body_is(call, layout != NULL ? layout : job);
    return with_policy(call,
                       layout != NULL ? sheet_of_layouts(call) : counter_with_plan(call, sheet_of_plan));
}

ow_status counter_sheet_posted(counter_call *call)
{
    return with_policy(call, ow_job_is(call->body, call->body_length) ? counter_with_plan(call, sheet_of_plan)
                                                                      : sheet_of_layouts(call));
}
