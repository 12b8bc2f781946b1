/* SPDX-License-Identifier: MIT */
#include "catalog/record.h"

#include <string.h>

#include "base/words.h"

#define KEYS_MAX 64

void ow_draft_begin(ow_draft *draft, ow_kind kind)
{
    static const ow_draft nothing_said = {
        .part = {.id = "",
                 .page = "",
                 .title = "",
                 .material = "",
                 .leg_bore_m = {OW_NOT_SAID, OW_NOT_SAID, OW_NOT_SAID, OW_NOT_SAID},
                 .length_m = OW_NOT_SAID,
                 .branch_length_m = OW_NOT_SAID,
                 .angle_rad = OW_NOT_SAID,
                 .orifice_m = OW_NOT_SAID,
                 .bend_radius_m = OW_NOT_SAID,
                 .hole_bore_m = OW_NOT_SAID,
                 .rating_pa = OW_NOT_SAID,
                 .mass_kg = OW_NOT_SAID,
                 .hexagon_m = OW_NOT_SAID,
                 .bolt_pattern = "",
                 .standards = "",
                 .note = ""},
        .bore_m = OW_NOT_SAID,
        .run_bore_m = OW_NOT_SAID,
        .branch_bore_m = OW_NOT_SAID,
        .side_bore_m = OW_NOT_SAID,
        .coolant_apart_m = OW_NOT_SAID,
    };
    *draft = nothing_said;
    draft->part.kind = kind;
}

bool ow_key_find(ow_kind kind, const char *word, ow_key *key)
{
    const ow_kind_row *row = ow_kind_row_of(kind);
    size_t plain = ow_kind_end_slot(row->ends, word), alternate = ow_kind_end_slot(row->alternate, word);
    *key = (ow_key){.word = word, .plain = plain < OW_PART_ENDS, .alternate = alternate < OW_PART_ENDS};
    if (key->plain || key->alternate) {
        key->slot = key->plain ? plain : alternate;
        return true;
    }
    key->field = ow_field_find(ow_record_fields(), word);
    return key->field && (key->field->kinds >> kind & 1);
}

static size_t known_words(ow_kind kind, const char *words[KEYS_MAX])
{
    const ow_kind_row *row = ow_kind_row_of(kind);
    ow_field_table table = ow_record_fields();
    size_t count = 0;
    for (size_t end = 0; end < OW_PART_ENDS && row->ends[end]; end++)
        words[count++] = row->ends[end];
    for (size_t end = 0; end < OW_PART_ENDS && row->alternate[end]; end++)
        if (ow_kind_end_slot(row->ends, row->alternate[end]) == OW_PART_ENDS)
            words[count++] = row->alternate[end];
    for (size_t i = 0; i < table.count && count < KEYS_MAX; i++)
        if (table.fields[i].kinds >> kind & 1)
            words[count++] = table.fields[i].key;
    return count;
}

ow_status ow_key_unknown(ow_reader *reader, ow_kind kind, const char *word, ow_span span, const char *also)
{
    const char *words[KEYS_MAX];
    size_t count = known_words(kind, words);
    ow_text expected = ow_text_new(reader->context);
    ow_text_format(&expected, "%s", also);
    for (size_t i = 0; i < count; i++)
        ow_text_format(&expected, "%s%s", expected.length ? ", " : "", words[i]);
    ow_status status = ow_text_status(&expected);
    if (status == OW_OK)
        status = ow_misspelt(reader->context, reader->source, span, ow_text_words(&expected),
                             ow_words_nearest(word, strlen(word), words, count),
                             "\"%.60s\" is no key of kind %s", word, ow_kind_word(kind));
    ow_text_done(&expected);
    return status;
}

void ow_key_say(const ow_key *key, ow_draft *draft)
{
    if (key->field)
        draft->said |= UINT64_C(1) << (key->field - ow_record_fields().fields);
    draft->ends_said |= (key->plain ? 1u : 0u) << key->slot;
    draft->alternate_said |= (key->alternate ? 1u : 0u) << key->slot;
}

ow_status ow_key_read(ow_reader *reader, const ow_key *key, const ow_yaml *node, ow_draft *draft)
{
    if (ow_yaml_is_null(node))
        return OW_OK;
    ow_key_say(key, draft);
    if (key->field)
        return ow_field_read(reader, key->field, node, draft);
    return ow_reader_end(reader, key->word, node, &draft->part.ends[key->slot]);
}

/* The set of ends that the record uses: the alternate one as soon as a word of only that set is used. */
static bool uses_alternate(const ow_draft *draft)
{
    const ow_kind_row *row = ow_kind_row_of(draft->part.kind);
    for (size_t slot = 0; slot < OW_PART_ENDS && row->alternate[slot]; slot++)
        if ((draft->alternate_said >> slot & 1) &&
            ow_kind_end_slot(row->ends, row->alternate[slot]) == OW_PART_ENDS)
            return true;
    return false;
}

static ow_status not_said(ow_reader *reader, ow_span span, const char *key, const char *how)
{
    return ow_source_report(reader->context, OW_ERROR, OW_INPUT, reader->source, span, how, NULL,
                            "\"%s\" is not said", key);
}

static ow_status ends_complete(ow_reader *reader, const ow_draft *draft, ow_span span, const char *how)
{
    const ow_kind_row *row = ow_kind_row_of(draft->part.kind);
    bool alternate = uses_alternate(draft);
    const char *const *ends = alternate ? row->alternate : row->ends;
    unsigned said = alternate ? draft->alternate_said : draft->ends_said;
    ow_status status = OW_OK;
    for (size_t slot = 0; slot < OW_PART_ENDS && ends[slot]; slot++)
        if (!(said >> slot & 1))
            status = not_said(reader, span, ends[slot], how);
    for (size_t slot = 0; alternate && slot < OW_PART_ENDS && row->ends[slot]; slot++)
        if ((draft->ends_said >> slot & 1) &&
            ow_kind_end_slot(row->alternate, row->ends[slot]) == OW_PART_ENDS)
            status = ow_source_report(reader->context, OW_ERROR, OW_INPUT, reader->source, span,
                                      "\"stud\", or \"stud-a\" and \"stud-b\"", NULL,
                                      "\"%s\" stands beside \"%s\"", row->ends[slot], row->alternate[slot]);
    return status;
}

ow_status ow_draft_complete(ow_reader *reader, const ow_draft *draft, ow_span span, const char *how)
{
    const ow_kind_row *row = ow_kind_row_of(draft->part.kind);
    ow_field_table table = ow_record_fields();
    unsigned ends = (1u << ow_kind_end_count(row->ends)) - 1;
    bool plain = draft->ends_said == ends && !uses_alternate(draft);
    ow_status worst = plain ? OW_OK : ends_complete(reader, draft, span, how);
    for (size_t i = 0; i < table.count; i++)
        if ((table.fields[i].needed >> draft->part.kind & 1) && !(draft->said >> i & 1))
            worst = not_said(reader, span, table.fields[i].key, how);
    return worst;
}

void ow_draft_part(const ow_draft *draft, ow_part *part)
{
    const ow_kind_row *row = ow_kind_row_of(draft->part.kind);
    const char *const *ends = uses_alternate(draft) ? row->alternate : row->ends;
    *part = draft->part;
    part->end_count = ow_kind_end_count(ends);
    for (size_t end = 0; end < part->end_count; end++)
        part->end_names[end] = ends[end];
    part->has_temperature = draft->temperature.said;
    part->temperature_low_c = draft->temperature.low;
    part->temperature_high_c = draft->temperature.high;
    part->has_price = draft->price.said;
    part->price_cents = draft->price.cents;
    ow_fill_legs(draft, part);
}

void ow_draft_machine(const ow_draft *draft, ow_machine *machine)
{
    *machine = (ow_machine){
        .id = draft->part.id,
        .kind = draft->part.kind,
        .title = draft->part.title,
        .port_count = draft->port_count,
        .ports = draft->ports,
        .bearing = (ow_bearing)draft->bearing,
        .restrictor = draft->restrictor > 0 ? (ow_built_in)(draft->restrictor - 1) : OW_BUILT_IN_UNKNOWN,
        .size = (ow_turbo_size)draft->size,
        .coolant_apart_m = draft->coolant_apart_m,
        .note = draft->part.note,
        .place = draft->part.place,
    };
}

static ow_status read_machine_keys(ow_reader *reader, const ow_yaml *map, ow_kind kind, ow_draft *draft)
{
    ow_status worst = OW_OK;
    ow_key key;
    for (const ow_yaml *member = map->first; member && worst != OW_MEMORY && !ow_reader_enough(reader);
         member = member->next) {
        ow_status status = OW_OK;
        const ow_yaml *node = ow_yaml_real(member);
        if (strcmp(member->key, "kind") == 0 && node->kind == OW_YAML_SCALAR &&
            ow_kind_find(node->words) == kind)
            continue;
        if (strcmp(member->key, "kind") == 0)
            status = ow_source_report(reader->context, OW_ERROR, OW_INPUT, reader->source, node->span,
                                      ow_kind_word(kind), NULL, "\"kind\" cannot be that here");
        else if (ow_key_find(kind, member->key, &key))
            status = ow_key_read(reader, &key, node, draft);
        else
            status = ow_key_unknown(reader, kind, member->key, member->key_span, "kind");
        worst = status == OW_OK ? worst : status;
    }
    return worst;
}

typedef struct ow_counting {
    const ow_context *outer;
    size_t faults;
} ow_counting;

static void count_report(void *user, const ow_diagnostic *diagnostic)
{
    ow_counting *counting = user;
    counting->faults++;
    if (counting->outer->report)
        counting->outer->report(counting->outer->report_user, diagnostic);
}

ow_status ow_machine_read(const ow_context *context, const ow_source *source, const ow_yaml *map,
                          ow_kind kind, ow_arena *arena, const ow_machine **machine)
{
    ow_counting counting = {context, 0};
    ow_context counted = *context;
    counted.report = count_report;
    counted.report_user = &counting;
    ow_reader reader = ow_reader_new(&counted, arena, &counting.faults);
    ow_draft draft;
    ow_machine *made = NULL;
    reader.source = source;
    ow_draft_begin(&draft, kind);
    ow_status status = read_machine_keys(&reader, map, kind, &draft);
    if (status != OW_MEMORY) {
        ow_status complete = ow_draft_complete(&reader, &draft, map->span, "a key of the record");
        status = complete == OW_OK ? status : complete;
    }
    if (status == OW_OK && !(made = ow_arena_get(arena, sizeof *made)))
        status = OW_MEMORY;
    if (status == OW_OK) {
        draft.part.place = ow_reader_place(&reader, map->span);
        if (draft.part.title[0] == '\0')
            draft.part.title = draft.part.id;
        ow_draft_machine(&draft, made);
        *machine = made;
    }
    ow_reader_done(&reader);
    return status;
}
