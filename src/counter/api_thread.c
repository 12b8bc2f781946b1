/* SPDX-License-Identifier: MIT */
#include "counter/api.h"

ow_status counter_api_caliper(counter_call *call)
{
    ow_caliper_ask ask = OW_CALIPER_ASK_INIT;
    ow_caliper_answer answer;
    ow_caliper_words words = {
        .diameter = counter_value(call, "diameter"),
        .tpi = counter_value(call, "tpi"),
        .pitch = counter_value(call, "pitch"),
        .accuracy = counter_value(call, "accuracy"),
        .taper = counter_value(call, "taper"),
        .male = counter_flag(call, "male"),
        .female = counter_flag(call, "female"),
    };
    ow_status status = ow_caliper_ask_read(&call->context, &words, &ask);
    if (status != OW_OK || call->faults.errors > 0)
        return OW_INPUT;
    status = ow_caliper_name(&call->context, &ask, &answer);
    if (status == OW_NONE)
        return ow_report_caliper_json(&call->text, NULL);
    if (status != OW_OK)
        return status;
    status = ow_report_caliper_json(&call->text, &answer);
    ow_caliper_done(&call->context, &answer);
    return status;
}

ow_status counter_api_thread(counter_call *call)
{
    ow_thread thread;
    ow_thread_class only = OW_CLASS_USUAL;
    size_t used = 0;
    const char *name = counter_value(call, "name"), *class_words = counter_value(call, "class");
    bool tap = counter_flag(call, "tap");
    if (name == NULL || ow_thread_read(name, &thread, &used) != OW_OK || name[used] != '\0')
        counter_fault(call, "name", name != NULL ? name : "", "this is no thread of the tables",
                      "a thread such as M12x1.5, 7/16-20 UNF, 1/8-27 NPT or G1/8");
    if (class_words != NULL && !ow_thread_class_read(class_words, &only))
        counter_fault(call, "class", class_words, "this is no tolerance class", "such as 6g, 6H, 2A, 2B, A");
    if (call->faults.errors > 0)
        return OW_INPUT;
    return ow_report_thread_json(&call->text, &thread, only, tap);
}

ow_status counter_api_mates(counter_call *call)
{
    ow_mates_words words = {.material = counter_value(call, "material"),
                            .bolt = counter_value(call, "bolt"),
                            .engaged = counter_value(call, "engaged")};
    ow_mates_ask ask;
    ow_mates_list list;
    bool card = counter_flag(call, "card");
    words.end_count = counter_values(call, "end", words.ends, 2);
    if (words.end_count < 1 || words.end_count > 2)
        counter_fault(call, "end", "", "one end or two are wanted", "an end such as 1/8-27 NPT male");
    if (call->faults.errors > 0)
        return OW_INPUT;
    ow_status status = ow_mates_ask_read(&call->context, call->shop->catalog, &words, &ask);
    if (status == OW_OK)
        status = ow_mates_find(&call->context, call->shop->net, &ask, &list);
    if (status != OW_OK)
        return status;
    status = ow_report_mates_json(&call->text, &list, card ? &ask.card : NULL);
    ow_mates_list_done(&list);
    return status;
}
