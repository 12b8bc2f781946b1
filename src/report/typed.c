/* SPDX-License-Identifier: MIT */
/* Words read while they are typed, for a page. */
#include "oilway/report_choice.h"
#include "report/parts_json.h"

static void add_fault(ow_json *json, cJSON *parent, const ow_typed *typed)
{
    if (typed->meaning != OW_MEANS_NOTHING) {
        ow_json_null(json, parent, "fault");
        return;
    }
    cJSON *fault = ow_json_object(json, parent, "fault");
    ow_json_number(json, fault, "column", (double)typed->column);
    ow_json_number(json, fault, "width", (double)typed->width);
    ow_json_words(json, fault, "message", typed->message);
    ow_json_words(json, fault, "expected", typed->expected);
    ow_json_words(json, fault, "mend", typed->mend);
}

static const char *kind_of(const ow_typed *typed)
{
    return typed->machine != NULL   ? ow_kind_word(typed->machine->kind)
           : typed->fixture != NULL ? ow_kind_word(typed->fixture->kind)
                                    : NULL;
}

static void add_end(ow_json *json, cJSON *parent, const ow_typed *typed)
{
    if (!typed->has_end) {
        ow_json_null(json, parent, "end");
        ow_json_null(json, parent, "whole");
        return;
    }
    ow_json_end(json, parent, "end", &typed->end);
    ow_json_bool(json, parent, "whole", ow_end_is_whole(&typed->end));
}

ow_status ow_report_typed_json(ow_text *text, const char *words, const ow_typed *typed)
{
    ow_json json = ow_json_new(false);
    cJSON *root = json.root;
    const ow_port *port = typed->port;
    ow_json_words(&json, root, "words", words);
    ow_json_words(&json, root, "meaning", ow_meaning_word(typed->meaning));
    ow_json_words(&json, root, "says", typed->says);
    add_end(&json, root, typed);
    cJSON *readings = ow_json_list(&json, root, "readings");
    for (size_t index = 0; index < typed->reading_count; index++)
        ow_json_end(&json, readings, NULL, &typed->readings[index]);
    ow_json_words(&json, root, "decide", typed->decide);
    ow_json_words(&json, root, "circuit",
                  port != NULL && port->circuit != OW_CIRCUIT_NONE ? ow_circuit_word(port->circuit) : NULL);
    ow_json_words(&json, root, "kind", kind_of(typed));
    ow_json_words(&json, root, "holds", port != NULL && port->holds[0] != '\0' ? port->holds : NULL);
    add_fault(&json, root, typed);
    cJSON *offers = ow_json_list(&json, root, "offers");
    for (size_t index = 0; index < typed->offer_count; index++) {
        cJSON *offer = ow_json_object(&json, offers, NULL);
        ow_json_words(&json, offer, "words", typed->offers[index].words);
        ow_json_words(&json, offer, "says", typed->offers[index].says);
    }
    return ow_json_done(&json, text);
}
