/* SPDX-License-Identifier: MIT */
/* Documents of one kind given where another is wanted. */
#include "yaml/yaml.h"

/* Headed by its key; a layout without a name has parts. */
typedef struct document_row {
    const char *head, *or_head;
    const char *what;
    const char *mend; /* who reads it */
} document_row;

static const document_row rows[] = {
    [OW_DOCUMENT_LAYOUT] = {"layout", "parts", "a layout", "oilway check and oilway bill read it"},
    [OW_DOCUMENT_JOB] = {"job", "turbo", "a job", "oilway plan and oilway bill read it"},
    [OW_DOCUMENT_LINE] = {"line", "pieces", "a line of pieces", "oilway feed reads it"},
    [OW_DOCUMENT_LOOP] = {"loop", "cold-leg", "a coolant loop", "oilway siphon reads it"},
    {"page", "kind", "a page of a catalogue",
     "put it into a folder and lay that over the catalogue with --catalog; stock is laid on with --stock"},
};

static const ow_yaml *head_of(const ow_yaml *map, const document_row *row)
{
    const ow_yaml *head = ow_yaml_member(map, row->head);
    return head != NULL ? head : ow_yaml_member(map, row->or_head);
}

ow_status ow_yaml_is_document(const ow_context *context, const ow_source *source, const ow_yaml *map,
                              ow_yaml_document wanted)
{
    map = ow_yaml_real(map);
    if (map == NULL || map->kind != OW_YAML_MAP || head_of(map, &rows[wanted]) != NULL)
        return OW_OK;
    for (size_t index = 0; index < sizeof rows / sizeof rows[0]; index++) {
        const ow_yaml *head = head_of(map, &rows[index]);
        if (head != NULL)
            return ow_source_report(context, OW_ERROR, OW_INPUT, source, head->key_span, rows[wanted].what,
                                    rows[index].mend, "this is %s", rows[index].what);
    }
    return OW_OK;
}
