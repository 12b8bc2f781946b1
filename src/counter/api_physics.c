/* SPDX-License-Identifier: MIT */
#include "counter/api.h"

static ow_oil_words oil_words(const counter_call *call)
{
    return (ow_oil_words){counter_value(call, "oil"), counter_value(call, "kv40"),
                          counter_value(call, "kv100"), counter_value(call, "rho15"),
                          counter_value(call, "at")};
}

ow_status counter_api_oil(counter_call *call)
{
    ow_oil_words words = oil_words(call);
    ow_oil_request request;
    ow_oil_answer answer;
    ow_status status = ow_oil_request_read(&call->context, &words, &request);
    if (status != OW_OK)
        return status;
    status = ow_oil_reckon(&call->context, &request, &answer);
    if (status == OW_OK) {
        status = ow_report_oil_json(&call->text, &request, &answer);
        ow_oil_answer_done(&answer);
    }
    ow_oil_request_done(&request);
    return status;
}

ow_status counter_api_drain(counter_call *call)
{
    ow_drain_words words = {counter_value(call, "bore"), counter_value(call, "slope"),
                            counter_value(call, "flow"), counter_value(call, "aeration"), oil_words(call)};
    ow_drain_request request;
    ow_drain_answer answer;
    ow_status status = ow_drain_request_read(&call->context, &words, &request);
    if (status != OW_OK)
        return status;
    status = ow_drain_reckon(&call->context, &request, &answer);
    if (status == OW_OK) {
        status = ow_report_drain_json(&call->text, &request, &answer);
        ow_drain_answer_done(&answer);
    }
    ow_drain_request_done(&request);
    return status;
}

ow_status counter_api_feed(counter_call *call)
{
    ow_line line;
    ow_line_answer answer;
    ow_status status = ow_line_read(&call->context, "line", call->body, call->body_length, &line);
    if (status != OW_OK)
        return status;
    status = ow_line_reckon(&call->context, &line, &answer);
    if (status == OW_OK) {
        status = ow_report_line_json(&call->text, &line, &answer);
        ow_line_answer_done(&answer);
    }
    ow_line_free(&line);
    return status;
}

ow_status counter_api_siphon(counter_call *call)
{
    ow_loop_text loop;
    ow_loop_answer answer;
    ow_status status = ow_loop_read(&call->context, "loop", call->body, call->body_length, &loop);
    if (status != OW_OK)
        return status;
    status = ow_loop_reckon(&call->context, &loop, &answer);
    if (status == OW_OK) {
        status = ow_report_loop_json(&call->text, &loop, &answer);
        ow_loop_answer_done(&answer);
    }
    ow_loop_free(&loop);
    return status;
}
