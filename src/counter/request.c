/* SPDX-License-Identifier: MIT */
#include "counter/request.h"

#include <stdlib.h>
#include <string.h>

/* A body larger than is taken is still read to its end up to here, because a sender who is cut off while
 * sending mostly does not see the refusal. */
#define DRAINED_MAX (8 * COUNTER_BODY_MAX)

counter_request *counter_request_new(void)
{
    return calloc(1, sizeof(counter_request));
}

void counter_request_free(counter_request *request)
{
    if (request != NULL)
        free(request->body);
    free(request);
}

bool counter_request_take(counter_request *request, const char *bytes, size_t length)
{
    if (request->too_large || length > COUNTER_BODY_MAX - request->length) {
        request->too_large = true;
        return true;
    }
    size_t needed = request->length + length + 1;
    if (needed > request->capacity) {
        size_t capacity = needed < 4096 ? 4096 : 2 * needed;
        char *body = realloc(request->body, capacity);
        if (body == NULL)
            return false;
        request->body = body;
        request->capacity = capacity;
    }
    memcpy(request->body + request->length, bytes, length);
    request->length += length;
    request->body[request->length] = '\0';
    return true;
}

static const char *header(struct MHD_Connection *connection, const char *name)
{
    return MHD_lookup_connection_value(connection, MHD_HEADER_KIND, name);
}

counter_caller counter_request_caller(struct MHD_Connection *connection, const char *method, const char *url)
{
    return (counter_caller){
        .host = header(connection, MHD_HTTP_HEADER_HOST),
        .origin = header(connection, MHD_HTTP_HEADER_ORIGIN),
        .fetch_site = header(connection, "Sec-Fetch-Site"),
        .fetch_mode = header(connection, "Sec-Fetch-Mode"),
        .whole_page = strcmp(method, "GET") == 0 && (strcmp(url, "/") == 0 || strcmp(url, "/sheet") == 0),
    };
}

bool counter_request_announces_too_much(struct MHD_Connection *connection)
{
    const char *words = header(connection, MHD_HTTP_HEADER_CONTENT_LENGTH);
    return words != NULL && strtoull(words, NULL, 10) > DRAINED_MAX;
}

/* Bytes of the UTF-8 character at the start (RFC 3629), 0 if there is none. */
static size_t character(const unsigned char *at)
{
    static const struct {
        unsigned char mask, lead;
        size_t length;
        unsigned long least;
    } forms[] = {{0x80, 0x00, 1, 0}, {0xE0, 0xC0, 2, 0x80}, {0xF0, 0xE0, 3, 0x800}, {0xF8, 0xF0, 4, 0x10000}};
    for (size_t form = 0; form < sizeof forms / sizeof forms[0]; form++) {
        if ((at[0] & forms[form].mask) != forms[form].lead)
            continue;
        unsigned long code = at[0] & (unsigned char)~forms[form].mask;
        for (size_t index = 1; index < forms[form].length; index++) {
            if ((at[index] & 0xC0) != 0x80)
                return 0;
            code = (code << 6) | (at[index] & 0x3F);
        }
        bool surrogate = code >= 0xD800 && code <= 0xDFFF;
        return code < forms[form].least || code > 0x10FFFF || surrogate ? 0 : forms[form].length;
    }
    return 0;
}

/* Text of one line, or of several: valid UTF-8, nothing that controls a terminal, no NUL inside. */
static bool is_text(const char *bytes, size_t length, bool lines)
{
    size_t at = 0;
    while (at < length) {
        unsigned char byte = (unsigned char)bytes[at];
        size_t step = character((const unsigned char *)bytes + at);
        bool blank = lines && (byte == '\n' || byte == '\r' || byte == '\t');
        if (step == 0 || (byte < 0x20 && !blank) || byte == 0x7F)
            return false;
        at += step;
    }
    return at == length;
}

static enum MHD_Result take_parameter(void *user, enum MHD_ValueKind kind, const char *name,
                                      size_t name_length, const char *value, size_t value_length)
{
    (void)kind;
    counter_call *call = user;
    if (value == NULL) {
        value = "";
        value_length = 0;
    }
    if (call->parameter_count == COUNTER_PARAMETERS_MAX) {
        counter_fault(call, "query", "", "too many parameters", NULL);
        return MHD_NO;
    }
    bool lines = strcmp(name, "layout") == 0 || strcmp(name, "job") == 0;
    if (!is_text(name, name_length, false) || !is_text(value, value_length, lines)) {
        counter_fault(call, "query", "", "a parameter is not text in UTF-8", NULL);
        return MHD_NO;
    }
    call->parameters[call->parameter_count++] = (counter_parameter){name, value};
    return MHD_YES;
}

bool counter_request_parameters(struct MHD_Connection *connection, counter_call *call)
{
    MHD_get_connection_values_n(connection, MHD_GET_ARGUMENT_KIND, take_parameter, call);
    return call->faults.errors == 0;
}
