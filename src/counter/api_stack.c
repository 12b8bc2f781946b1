/* SPDX-License-Identifier: MIT */
#include "counter/api.h"

#define BEST_MAX 20

static void too_many(counter_call *call, const char *name, size_t most)
{
    ow_context quiet = OW_CONTEXT_INIT;
    ow_text expected = ow_text_new(&quiet);
    ow_text_format(&expected, "%zu at most", most);
    counter_fault(call, name, "", "too many are given", ow_text_words(&expected));
    ow_text_done(&expected);
}

static void fill_words(counter_call *call, ow_ask_typed *typed)
{
    for (size_t index = 0; index < call->parameter_count; index++) {
        const char *name = call->parameters[index].name, *value = call->parameters[index].value;
        size_t most = 0;
        if (counter_is_blank(value))
            continue;
        ow_status status = ow_ask_typed_put(typed, name, value, &most);
        if (status == OW_INPUT)
            counter_fault(call, name, value, "not a word known here", "yes or no");
        else if (status == OW_RANGE)
            too_many(call, name, most);
    }
    if (typed->words.from == NULL)
        counter_fault(call, "from", "", "the source is missing", "an end, engine:port, or an engine");
    if (typed->words.to_count == 0)
        counter_fault(call, "to", "", "the port to reach is missing", "an end or turbo:port");
}

/* Answers an ask and hands the answers over. */
static ow_status with_answers(counter_call *call,
                              ow_status (*use)(counter_call *call, const ow_answers *answers))
{
    ow_ask_typed typed = {0};
    ow_ask_set set;
    ow_answers answers;
    ow_answer_options wanted = OW_ANSWER_OPTIONS_INIT;
    fill_words(call, &typed);
    counter_count(call, "best", BEST_MAX, &wanted.best);
    wanted.explain = counter_value(call, "explain");
    if (call->faults.errors > 0)
        return OW_INPUT;
    ow_status status = ow_ask_read(&call->context, call->shop->catalog, call->shop->net, &typed.words, &set);
    if (status != OW_OK)
        return status;
    status = ow_answers_find(&call->context, call->shop->catalog, call->shop->net, &set, &wanted, &answers);
    if (status == OW_OK) {
        status = use(call, &answers);
        ow_answers_done(&answers);
    }
    ow_ask_set_done(&set);
    return status;
}

static ow_status write_answers(counter_call *call, const ow_answers *answers)
{
    return ow_report_answers_json(&call->text, answers);
}

ow_status counter_api_stack(counter_call *call)
{
    return with_answers(call, write_answers);
}

/* The made part of the first answer that lacks one; OW_NONE where nothing need be made, or that alone would
 * not do. */
static ow_status write_sketch(counter_call *call, const ow_answers *answers)
{
    for (size_t index = 0; index < answers->count && !answers->found; index++) {
        const ow_answer *answer = &answers->items[index];
        if (answer->missing_count == 0)
            continue;
        call->type = COUNTER_SVG;
        return ow_draw_sketch_svg(&call->text, &answer->missing[0], answer->ask->limits.least_bore_m);
    }
    return OW_NONE;
}

ow_status counter_api_sketch(counter_call *call)
{
    return with_answers(call, write_sketch);
}

/* Of the layout that is looked at, where the link names it: show and reading count from 1, as on the page. */
static ow_status write_sheet(counter_call *call, const ow_answers *answers)
{
    size_t show = 0, reading = 0;
    counter_count(call, "show", BEST_MAX, &show);
    counter_count(call, "reading", OW_READINGS_MAX, &reading);
    if (call->faults.errors > 0)
        return OW_INPUT;
    if ((show == 0 && reading == 0) || !answers->found)
        return ow_sheet_answer_html(&call->text, answers);
    ow_status status =
        ow_sheet_stack_html(&call->text, answers, reading > 0 ? reading - 1 : 0, show > 0 ? show - 1 : 0);
    if (status != OW_RANGE)
        return status;
    counter_fault(call, show > 0 ? "show" : "reading", "", "there is no such layout", "one of those found");
    return OW_INPUT;
}

ow_status counter_sheet_of_stack(counter_call *call)
{
    return with_answers(call, write_sheet);
}
