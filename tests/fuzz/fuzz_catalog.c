/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a page of a catalogue. Two loads, strict and skipping what is bad, must agree: a page without
 * fault gives the same both times, one with faults gives none strictly and a whole catalogue without
 * the faulty rows otherwise. What was loaded is in order, found by id, and bears to be checked.
 */
#include <string.h>

#include "oilway/catalog.h"
#include "support/fuzzing.h"

typedef struct counted {
    size_t errors, warnings;
} counted;

static void count(void *user, const ow_diagnostic *told)
{
    counted *sink = user;
    OW_FUZZ_CHECK(told->message && told->message[0]);
    OW_FUZZ_CHECK(told->status > OW_OK && told->status < OW_STATUS_COUNT);
    OW_FUZZ_CHECK(told->line_text == NULL || told->mark_width >= 1);
    sink->errors += told->severity == OW_ERROR;
    sink->warnings += told->severity == OW_WARNING;
}

static void look_at_part(const ow_catalog *catalog, const ow_part *part)
{
    char name[OW_END_TEXT_SIZE];
    OW_FUZZ_CHECK(ow_catalog_part(catalog, part->id) == part);
    OW_FUZZ_CHECK(part->end_count >= 1 && part->end_count <= OW_PART_ENDS);
    OW_FUZZ_CHECK(part->place.line >= 1 && part->place.column >= 1);
    for (size_t end = 0; end < part->end_count; end++) {
        OW_FUZZ_CHECK(ow_end_is_whole(&part->ends[end]));
        OW_FUZZ_CHECK(strlen(ow_end_name(&part->ends[end], name)) > 0);
        OW_FUZZ_CHECK(ow_part_end_index(part, part->end_names[end]) == end);
        OW_FUZZ_CHECK(part->leg_bore_m[end] == OW_NOT_SAID || part->leg_bore_m[end] > 0);
    }
}

static void look_at(const ow_context *context, const ow_catalog *catalog)
{
    size_t errors = 0, warnings = 0;
    for (size_t i = 0; i < ow_catalog_part_count(catalog); i++) {
        const ow_part *part = ow_catalog_part_at(catalog, i);
        OW_FUZZ_CHECK(ow_kind_is_part(part->kind));
        OW_FUZZ_CHECK(i == 0 || strcmp(ow_catalog_part_at(catalog, i - 1)->id, part->id) < 0);
        look_at_part(catalog, part);
    }
    for (size_t i = 0; i < ow_catalog_machine_count(catalog); i++) {
        const ow_machine *machine = ow_catalog_machine_at(catalog, i);
        OW_FUZZ_CHECK(machine->port_count > 0 && ow_catalog_machine(catalog, machine->id) == machine);
        for (size_t port = 0; port < machine->port_count; port++)
            OW_FUZZ_CHECK(ow_end_is_whole(&machine->ports[port].end));
    }
    OW_FUZZ_CHECK(ow_catalog_check(context, catalog, &errors, &warnings) == OW_OK);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static const char *const name = "page.yaml";
    static const ow_catalog_options skip = {.skip_bad = true};
    if (size > 64 * 1024)
        return 0;
    char *text = malloc(size + 1);
    OW_FUZZ_CHECK(text);
    if (size > 0)
        memcpy(text, data, size);
    text[size] = '\0';
    counted strict_sink = {0, 0}, skip_sink = {0, 0}, check_sink = {0, 0};
    ow_context context = {.report = count, .report_user = &strict_sink};
    ow_catalog *strict = NULL, *skipped = NULL;
    const char *const texts[] = {text};
    ow_status status = ow_catalog_load_texts(&context, &name, texts, 1, NULL, &strict);
    context.report_user = &skip_sink;
    ow_status skip_status = ow_catalog_load_texts(&context, &name, texts, 1, &skip, &skipped);
    context.report_user = &check_sink;
    OW_FUZZ_CHECK(status == OW_OK || status == OW_INPUT || status == OW_LIMIT);
    OW_FUZZ_CHECK((status == OW_OK) == (strict_sink.errors == 0) && (status == OW_OK) == (strict != NULL));
    OW_FUZZ_CHECK(skip_status == (status == OW_LIMIT ? OW_LIMIT : OW_OK));
    if (status == OW_OK)
        OW_FUZZ_CHECK(ow_catalog_part_count(strict) == ow_catalog_part_count(skipped) &&
                      skip_sink.warnings == strict_sink.warnings);
    if (status == OW_INPUT)
        OW_FUZZ_CHECK(skip_sink.errors == 0 && skip_sink.warnings > 0);
    if (skipped)
        look_at(&context, skipped);
    ow_catalog_free(strict);
    ow_catalog_free(skipped);
    free(text);
    return 0;
}
