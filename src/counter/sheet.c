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

/* For a page that brings the style itself, since its policy allows none inside a document. */
static void cut_style(ow_text *text)
{
    static const char begins[] = "<style>", ends[] = "</style>";
    char *begin = strstr(text->data, begins);
    char *end = begin != NULL ? strstr(begin, ends) : NULL;
    if (end == NULL)
        return;
    end += sizeof ends - 1;
    size_t after = text->length - (size_t)(end - text->data);
    memmove(begin, end, after + 1);
    text->length -= (size_t)(end - begin);
}

/* What is done to every sheet that was written. */
static ow_status finish(counter_call *call, ow_status status)
{
    bool bare = counter_flag(call, "bare");
    if (status == OW_OK)
        status = call->faults.errors > 0 ? OW_INPUT : ow_text_status(&call->text);
    if (status != OW_OK)
        return status;
    if (bare)
        cut_style(&call->text);
    set_policy(call);
    return OW_OK;
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
        return finish(call, counter_sheet_of_stack(call));
    body_is(call, layout != NULL ? layout : job);
    return finish(call, layout != NULL ? sheet_of_layouts(call) : counter_with_plan(call, sheet_of_plan));
}

ow_status counter_sheet_posted(counter_call *call)
{
    return finish(call, ow_job_is(call->body, call->body_length) ? counter_with_plan(call, sheet_of_plan)
                                                                 : sheet_of_layouts(call));
}

ow_status counter_sheet_style(counter_call *call)
{
    ow_text_add(&call->text, ow_sheet_style());
    call->type = "text/css; charset=utf-8";
    return OW_OK;
}
