/* SPDX-License-Identifier: MIT */
#include "counter/api.h"

#define BEST_MAX 20
#define WITHOUT_MAX 64

static void fill_ports(counter_call *call, ow_ask_words *words)
{
    words->to_count = counter_values(call, "to", words->to, OW_TO_MAX);
    words->keep_count = counter_values(call, "keep", words->keep, OW_PORTS_MAX - 1);
    if (words->from == NULL)
        counter_fault(call, "from", "", "the source is missing", "an end, engine:port, or an engine");
    if (words->to_count == 0)
        counter_fault(call, "to", "", "the port to reach is missing", "an end or turbo:port");
    if (words->to_count > OW_TO_MAX)
        counter_fault(call, "to", "", "too many ports to reach", "three at most");
    if (words->keep_count > OW_PORTS_MAX - 1)
        counter_fault(call, "keep", "", "too many kept ports", "five at most");
}

static void fill_words(counter_call *call, ow_ask_words *words, const char **without)
{
    *words = (ow_ask_words){
        .from = counter_value(call, "from"),
        .circuit = counter_value(call, "circuit"),
        .bearing = counter_value(call, "bearing"),
        .bore = counter_value(call, "bore"),
        .flexible = counter_value(call, "flexible"),
        .closing = counter_value(call, "closing"),
        .restrictor = counter_value(call, "restrictor"),
        .orifice = counter_value(call, "orifice"),
        .rating = counter_value(call, "rating"),
        .temperature = counter_value(call, "temperature"),
        .fluid = counter_value(call, "fluid"),
        .hose = counter_value(call, "hose"),
        .tolerate = counter_flag(call, "tolerate"),
        .remote_switch = counter_flag(call, "remote-switch"),
        .without = without,
    };
    fill_ports(call, words);
    words->without_count = counter_values(call, "without", without, WITHOUT_MAX);
    if (words->without_count > WITHOUT_MAX)
        counter_fault(call, "without", "", "too many parts to leave out", "64 at most");
}

/* Answers an ask and hands the answers over. */
static ow_status with_answers(counter_call *call,
                              ow_status (*use)(counter_call *call, const ow_answers *answers))
{
    const char *without[WITHOUT_MAX];
    ow_ask_words words;
    ow_ask_set set;
    ow_answers answers;
    ow_answer_options wanted = OW_ANSWER_OPTIONS_INIT;
    fill_words(call, &words, without);
    counter_count(call, "best", BEST_MAX, &wanted.best);
    wanted.explain = counter_value(call, "explain");
    if (call->faults.errors > 0)
        return OW_INPUT;
    ow_status status = ow_ask_read(&call->context, call->shop->catalog, call->shop->net, &words, &set);
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

static ow_status write_sheet(counter_call *call, const ow_answers *answers)
{
    return ow_sheet_answer_html(&call->text, answers);
}

ow_status counter_sheet_of_stack(counter_call *call)
{
    return with_answers(call, write_sheet);
}
