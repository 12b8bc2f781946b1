/* SPDX-License-Identifier: MIT */
#include "counter/response.h"

#include <stdio.h>
#include <string.h>

/* What every answer says. The page's own script and style come as files: nothing inline, nothing from
 * elsewhere, no string made into markup. */
static const char *const headers[][2] = {
    {"X-Content-Type-Options", "nosniff"},
    {"X-Frame-Options", "DENY"},
    {"Referrer-Policy", "no-referrer"},
    {"Cross-Origin-Opener-Policy", "same-origin"},
    {"Cross-Origin-Resource-Policy", "same-origin"},
    {"Permissions-Policy", "camera=(), geolocation=(), microphone=(), usb=()"},
};
static const char page_policy[] =
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; "
    "form-action 'self'; base-uri 'none'; frame-ancestors 'none'; require-trusted-types-for 'script'; "
    "trusted-types 'none'";
static const char data_policy[] = "default-src 'none'; frame-ancestors 'none'; sandbox";

static bool add(struct MHD_Response *response, const char *name, const char *value)
{
    return MHD_add_response_header(response, name, value) == MHD_YES;
}

/* Queues a response with the usual headers, and gives it up. */
static enum MHD_Result queue(struct MHD_Connection *connection, unsigned status,
                             struct MHD_Response *response, const char *type, const char *policy,
                             const char *cache)
{
    if (response == NULL)
        return MHD_NO;
    bool whole = add(response, MHD_HTTP_HEADER_CONTENT_TYPE, type) &&
                 add(response, "Content-Security-Policy", policy) &&
                 add(response, MHD_HTTP_HEADER_CACHE_CONTROL, cache);
    for (size_t index = 0; index < sizeof headers / sizeof headers[0]; index++)
        whole = whole && add(response, headers[index][0], headers[index][1]);
    enum MHD_Result result = whole ? MHD_queue_response(connection, status, response) : MHD_NO;
    MHD_destroy_response(response);
    return result;
}

/* libmicrohttpd takes bytes that it only reads as void *. */
static struct MHD_Response *of_bytes(const void *bytes, size_t length, enum MHD_ResponseMemoryMode mode)
{
    union {
        const void *in;
        void *out;
    } lent = {bytes};
    return MHD_create_response_from_buffer(length, lent.out, mode);
}

enum MHD_Result counter_respond(struct MHD_Connection *connection, unsigned status, counter_call *call,
                                double milliseconds)
{
    char timing[64];
    if (ow_text_status(&call->text) != OW_OK || call->text.length == 0)
        return counter_respond_refusal(connection, 503, ow_status_text(OW_MEMORY), NULL);
    struct MHD_Response *response = of_bytes(call->text.data, call->text.length, MHD_RESPMEM_MUST_COPY);
    if (response != NULL && milliseconds >= 0) {
        snprintf(timing, sizeof timing, "answer;dur=%.2f", milliseconds);
        if (!add(response, "Server-Timing", timing)) {
            MHD_destroy_response(response);
            return MHD_NO;
        }
    }
    return queue(connection, status, response, call->type,
                 call->policy[0] != '\0' ? call->policy : data_policy, "no-store");
}

enum MHD_Result counter_respond_refusal(struct MHD_Connection *connection, unsigned status, const char *words,
                                        const char *allow)
{
    char body[512];
    int length = snprintf(body, sizeof body, "{\"error\": \"%s\", \"faults\": []}\n", words);
    if (length < 0 || (size_t)length >= sizeof body)
        return MHD_NO;
    struct MHD_Response *response = of_bytes(body, (size_t)length, MHD_RESPMEM_MUST_COPY);
    if (response != NULL && allow != NULL && !add(response, MHD_HTTP_HEADER_ALLOW, allow)) {
        MHD_destroy_response(response);
        return MHD_NO;
    }
    return queue(connection, status, response, "application/json; charset=utf-8", data_policy, "no-store");
}

enum MHD_Result counter_respond_asset(struct MHD_Connection *connection, const counter_asset *asset)
{
    const char *known =
        MHD_lookup_connection_value(connection, MHD_HEADER_KIND, MHD_HTTP_HEADER_IF_NONE_MATCH);
    bool same = known != NULL && strstr(known, asset->tag) != NULL;
    struct MHD_Response *response = of_bytes(asset->bytes, same ? 0 : asset->length, MHD_RESPMEM_PERSISTENT);
    if (response != NULL && !add(response, MHD_HTTP_HEADER_ETAG, asset->tag)) {
        MHD_destroy_response(response);
        return MHD_NO;
    }
    return queue(connection, same ? MHD_HTTP_NOT_MODIFIED : MHD_HTTP_OK, response, asset->type, page_policy,
                 "no-cache");
}
