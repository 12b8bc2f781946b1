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

static void read_card_ask(counter_call *call, ow_thread *bolt, ow_card_ask *ask)
{
    const char *words = counter_value(call, "bolt"), *engaged = counter_value(call, "engaged");
    size_t used = 0;
    ask->material = counter_value(call, "material");
    if (words != NULL) {
        if (ow_thread_read(words, bolt, &used) != OW_OK || words[used] != '\0' || bolt->pitch == 0)
            counter_fault(call, "bolt", words, "this is no thread with its pitch",
                          "a thread such as M10x1 or 3/8-24 UNF");
        else
            ask->bolt = bolt;
    }
    if (engaged != NULL &&
        (ow_quantity_read(engaged, OW_LENGTH, &ask->engaged_m) != OW_OK || ask->engaged_m <= 0.0))
        counter_fault(call, "engaged", engaged, "this is no length", ow_dimension_expected(OW_LENGTH));
}

/* All mates of one end, or the verdict on two, over the shop's kinds. */
static ow_status find_mates(counter_call *call, const ow_end *ends, size_t end_count, ow_mates_list *list)
{
    size_t count = ow_net_kind_count(call->shop->net);
    ow_end *kinds = ow_resize(&call->context, NULL, (count + 1) * sizeof *kinds);
    if (kinds == NULL)
        return OW_MEMORY;
    for (size_t index = 0; index < count; index++)
        kinds[index] = *ow_net_kind_at(call->shop->net, index);
    ow_status status = end_count == 2 ? ow_mates_pair(&call->context, &ends[0], &ends[1], kinds, count, list)
                                      : ow_mates_of(&call->context, &ends[0], kinds, count, list);
    ow_release(&call->context, kinds);
    return status;
}

ow_status counter_api_mates(counter_call *call)
{
    const char *words[2] = {NULL, NULL};
    ow_end ends[2];
    ow_thread bolt;
    ow_card_ask ask = {0};
    ow_mates_list list;
    bool card = counter_flag(call, "card");
    size_t count = counter_values(call, "end", words, 2);
    if (count < 1 || count > 2)
        counter_fault(call, "end", "", "one end or two are wanted", "an end such as 1/8-27 NPT male");
    for (size_t index = 0; index < count && index < 2; index++)
        ow_end_read_told(&call->context, "end", words[index], &ends[index]);
    read_card_ask(call, &bolt, &ask);
    if (call->faults.errors > 0)
        return OW_INPUT;
    ow_status status = find_mates(call, ends, count, &list);
    if (status != OW_OK)
        return status;
    status = ow_report_mates_json(&call->text, &list, card ? &ask : NULL);
    ow_mates_list_done(&list);
    return status;
}
