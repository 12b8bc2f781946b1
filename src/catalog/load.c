/* SPDX-License-Identifier: MIT */
/* Loading: folders, files and pages in order, then what can only be said of the whole. */
#include <string.h>

#include "base/file.h"
#include "base/progress.h"
#include "base/sort.h"
#include "catalog/internal.h"

/* Every fault of a page passes here: it is counted, and under skip_bad it is no longer one. */
static void count_report(void *user, const ow_diagnostic *diagnostic)
{
    ow_loading *loading = user;
    ow_diagnostic told = *diagnostic;
    if (told.severity == OW_ERROR && told.status != OW_IO && loading->options->skip_bad)
        told.severity = OW_WARNING;
    loading->errors += told.severity == OW_ERROR;
    loading->faults += told.severity != OW_NOTE;
    if (loading->outer->report)
        loading->outer->report(loading->outer->report_user, &told);
}

ow_place ow_load_place(ow_loading *loading, size_t offset)
{
    const ow_source *source = loading->reader.source;
    ow_place place = {.file = source->name};
    if (loading->lone_returns || offset < loading->cursor_start || offset > source->length) {
        ow_source_position(source, offset, &place.line, &place.column);
        return place;
    }
    const char *text = source->text, *end;
    while ((end = memchr(text + loading->cursor_start, '\n', offset - loading->cursor_start)) != NULL) {
        loading->cursor_line++;
        loading->cursor_start = (size_t)(end - text) + 1;
    }
    ow_source line = {source->name, source->text + loading->cursor_start,
                      source->length - loading->cursor_start};
    size_t first;
    ow_source_position(&line, offset - loading->cursor_start, &first, &place.column);
    place.line = loading->cursor_line;
    return place;
}

ow_status ow_load_leave_out(ow_loading *loading, const char *prefix, const char *name)
{
    ow_catalog *catalog = loading->catalog;
    ow_text text = ow_text_new(loading->outer);
    ow_text_format(&text, "%s%s", prefix, name);
    ow_status status = ow_text_status(&text);
    if (status == OW_OK)
        status = ow_grow(loading->outer, (void **)&catalog->left_out, &catalog->left_out_capacity,
                         catalog->left_out_count + 1, sizeof *catalog->left_out);
    char *words = status == OW_OK ? ow_arena_copy(&catalog->arena, ow_text_words(&text), text.length) : NULL;
    ow_text_done(&text);
    if (!words || ow_map_put(&loading->left_ids, words, catalog->left_out_count) != OW_OK)
        return OW_MEMORY;
    catalog->left_out[catalog->left_out_count++] = words;
    return OW_OK;
}

/* The id is known already: in this folder that is a fault, from an earlier one it is replaced. */
static ow_status meet_again(ow_loading *loading, ow_entry *entry, const ow_draft *draft, ow_span span)
{
    ow_catalog *catalog = loading->catalog;
    ow_place before = entry->part ? entry->part->place : entry->machine->place;
    if (entry->folder == loading->folder)
        return ow_source_report(&loading->context, OW_ERROR, OW_INPUT, loading->reader.source, span,
                                "each id once in a folder", NULL,
                                "\"%s\" is written twice: first at %s:%zu:%zu", draft->part.id, before.file,
                                before.line, before.column);
    ow_status status = ow_grow(loading->outer, (void **)&catalog->replaced, &catalog->replaced_capacity,
                               catalog->replaced_count + 1, sizeof *catalog->replaced);
    if (status != OW_OK)
        return status;
    catalog->replaced[catalog->replaced_count++] =
        (ow_replaced){draft->part.id, before, loading->reader.source, span};
    if (loading->options->notes)
        ow_source_report(&loading->context, OW_NOTE, OW_INPUT, loading->reader.source, span, NULL, NULL,
                         "\"%s\" replaces the one at %s:%zu:%zu", draft->part.id, before.file, before.line,
                         before.column);
    return OW_OK;
}

static ow_status make_entry(ow_loading *loading, ow_draft *draft, ow_span span, ow_entry *entry)
{
    ow_arena *arena = &loading->catalog->arena;
    *entry = (ow_entry){.folder = loading->folder, .source = loading->reader.source, .span = span};
    draft->part.place = ow_load_place(loading, span.start);
    if (ow_kind_is_machine(draft->part.kind)) {
        if (!(entry->machine = ow_arena_get(arena, sizeof *entry->machine)))
            return OW_MEMORY;
        entry->ports = draft->ports;
        ow_draft_machine(draft, entry->machine);
    } else {
        if (!(entry->part = ow_arena_get(arena, sizeof *entry->part)))
            return OW_MEMORY;
        ow_draft_part(draft, entry->part);
    }
    return OW_OK;
}

ow_status ow_load_record(ow_loading *loading, ow_draft *draft, ow_span span)
{
    ow_catalog *catalog = loading->catalog;
    ow_entry entry;
    size_t known = ow_map_get(&catalog->ids, draft->part.id);
    ow_status status = OW_OK;
    if (known != OW_MAP_NONE)
        status = meet_again(loading, &catalog->entries[known], draft, span);
    else if (catalog->entry_count == OW_CATALOG_RECORDS_MAX)
        return ow_source_report(&loading->context, OW_ERROR, OW_LIMIT, loading->reader.source, span,
                                "at most 1000000 records", NULL, "the catalogue has too many records");
    if (status == OW_OK)
        status = make_entry(loading, draft, span, &entry);
    if (status != OW_OK)
        return status;
    if (known != OW_MAP_NONE) {
        catalog->entries[known] = entry;
        return OW_OK;
    }
    status = ow_grow(loading->outer, (void **)&catalog->entries, &catalog->entry_capacity,
                     catalog->entry_count + 1, sizeof *catalog->entries);
    if (status == OW_OK)
        status = ow_map_put(&catalog->ids, draft->part.id, catalog->entry_count);
    if (status == OW_OK)
        catalog->entries[catalog->entry_count++] = entry;
    return status;
}

/* The catalogue keeps the bytes, a block of their own, from here on: also when this fails. */
static ow_status keep_text(ow_loading *loading, const char *name, char *bytes, size_t length,
                           const ow_source **source)
{
    ow_catalog *catalog = loading->catalog;
    ow_kept_text *text = ow_arena_get(&catalog->arena, sizeof *text);
    char *copy = ow_arena_copy(&catalog->arena, name, strlen(name));
    ow_status status = ow_grow(loading->outer, (void **)&catalog->texts, &catalog->text_capacity,
                               catalog->text_count + 1, sizeof *catalog->texts);
    if (!text || !copy || status != OW_OK) {
        ow_release(loading->outer, bytes);
        return OW_MEMORY;
    }
    *text = (ow_kept_text){{copy, bytes, length}, bytes};
    catalog->texts[catalog->text_count++] = text;
    *source = &text->source;
    return OW_OK;
}

/* A fault of the input is told and counted; the load goes on. */
static ow_status go_on(ow_status status)
{
    return status == OW_INPUT ? OW_OK : status;
}

/* Nothing is read after these: other faults do not hide each other. */
static bool ends_all(ow_status status)
{
    return status == OW_MEMORY || status == OW_STOPPED;
}

static bool has_lone_returns(const ow_source *source)
{
    const char *text = source->text, *end = text + source->length;
    for (const char *at = text; (at = memchr(at, '\r', (size_t)(end - at))) != NULL; at++)
        if (at + 1 == end || at[1] != '\n')
            return true;
    return false;
}

/* The rest of a text with too many faults is left out, and that is said. */
static ow_status leave_rest(ow_loading *loading)
{
    ow_report(&loading->context, OW_ERROR, OW_INPUT, loading->reader.source->name, NULL, NULL,
              "more than %d faults: the rest of this text was not read", OW_CATALOG_FAULTS_MAX);
    return ow_load_leave_out(loading, "the rest of ", loading->reader.source->name);
}

/* Reads the pages of one text, a block that the catalogue takes over. */
static ow_status load_text(ow_loading *loading, const char *name, char *text, size_t length)
{
    ow_yaml_text yaml;
    const ow_source *source;
    ow_status status = keep_text(loading, name, text, length, &source);
    if (status != OW_OK)
        return status;
    loading->reader.source = source;
    loading->cursor_start = 0;
    loading->cursor_line = 1;
    loading->faults = 0;
    loading->lone_returns = has_lone_returns(source);
    status = ow_yaml_read(&loading->context, source->name, source->text, source->length, &yaml);
    if (status == OW_INPUT) {
        status = ow_load_leave_out(loading, "page ", source->name);
        return status == OW_OK ? OW_INPUT : status;
    }
    if (status != OW_OK)
        return status;
    for (size_t i = 0;
         i < yaml.document_count && go_on(status) == OW_OK && !ow_reader_enough(&loading->reader); i++) {
        ow_status page = ow_page_read(loading, ow_yaml_real(yaml.documents[i]));
        status = page == OW_OK ? status : page;
    }
    if (go_on(status) == OW_OK && ow_reader_enough(&loading->reader))
        status = leave_rest(loading);
    ow_yaml_done(&yaml);
    return status;
}

static ow_status load_file(ow_loading *loading, const char *path)
{
    char *bytes;
    size_t length;
    ow_status status = ow_file_read(&loading->context, path, &bytes, &length);
    if (status != OW_OK)
        return status;
    return load_text(loading, path, bytes, length);
}

/* Files that cannot be read do not hide the faults of others; memory ends all. */
static ow_status load_folder(ow_loading *loading, const char *folder)
{
    char **names;
    size_t count, length = strlen(folder);
    ow_status worst = ow_folder_pages(&loading->context, folder, &names, &count);
    if (worst != OW_OK)
        return worst;
    if (count == 0) /* as good as the wrong folder: an answer over nothing would only mislead */
        worst = ow_report(&loading->context, OW_ERROR, OW_INPUT, folder, "files whose names end in .yaml",
                          "look whether the folder is the right one, or whether its pages end in .yml",
                          "the folder holds no page");
    for (size_t i = 0; i < count && !ends_all(worst); i++) {
        ow_status told = ow_progress_tell(loading->outer, "reading the catalogue", "pages", i, count);
        if (told != OW_OK) {
            worst = told;
            break;
        }
        ow_text path = ow_text_new(loading->outer);
        ow_text_format(&path, "%s%s%s", folder, length && folder[length - 1] == '/' ? "" : "/", names[i]);
        ow_status status = ow_text_status(&path);
        if (status == OW_OK)
            status = load_file(loading, ow_text_words(&path));
        worst = go_on(status) == OW_OK ? worst : status;
        ow_text_done(&path);
    }
    ow_release(loading->outer, names);
    return worst;
}

/* Each port's `holds` must be a switch or a sender. What is not is told, and under skip_bad forgotten. */
static ow_status check_held(ow_loading *loading)
{
    ow_status worst = OW_OK;
    for (size_t i = 0;
         i < loading->reader.held_count && worst != OW_MEMORY && !ow_reader_enough(&loading->reader); i++) {
        const ow_held *held = &loading->reader.held[i];
        const ow_part *part = ow_catalog_part(loading->catalog, held->id);
        if ((part && !ow_kind_is_part(part->kind)) || ow_map_get(&loading->left_ids, held->id) != OW_MAP_NONE)
            continue;
        ow_status status =
            ow_misspelt(&loading->context, held->source, held->span, "the id of a switch or a sender",
                        part ? NULL : ow_catalog_nearest_id(loading->catalog, held->id),
                        "port \"%.63s\" holds \"%.63s\", which is no switch and no sender of the catalogue",
                        held->port, held->id);
        worst = status == OW_OK ? worst : status;
    }
    return worst;
}

static void forget_held(ow_catalog *catalog)
{
    for (size_t i = 0; i < catalog->entry_count; i++) {
        ow_machine *machine = catalog->entries[i].machine;
        for (size_t port = 0; machine && port < machine->port_count; port++) {
            const ow_part *part = ow_catalog_part(catalog, machine->ports[port].holds);
            if (!part || ow_kind_is_part(part->kind))
                catalog->entries[i].ports[port].holds = "";
        }
    }
}

static int by_id(const void *items, uint32_t left, uint32_t right)
{
    const ow_entry *entries = items, *a = &entries[left], *b = &entries[right];
    return strcmp(a->part ? a->part->id : a->machine->id, b->part ? b->part->id : b->machine->id);
}

static ow_status sort_out(ow_catalog *catalog)
{
    const ow_context *context = catalog->context;
    catalog->parts = ow_new_array(context, catalog->entry_count + 1, sizeof *catalog->parts);
    catalog->fixtures = ow_new_array(context, catalog->entry_count + 1, sizeof *catalog->fixtures);
    catalog->machines = ow_new_array(context, catalog->entry_count + 1, sizeof *catalog->machines);
    uint32_t *order = ow_new_array(context, catalog->entry_count + 1, sizeof *order);
    ow_status status = OW_MEMORY;
    for (size_t i = 0; order && i < catalog->entry_count; i++)
        order[i] = (uint32_t)i;
    if (catalog->parts && catalog->fixtures && catalog->machines && order)
        status = ow_sort(context, order, catalog->entry_count, by_id, catalog->entries);
    for (size_t i = 0; status == OW_OK && i < catalog->entry_count; i++) {
        const ow_entry *entry = &catalog->entries[order[i]];
        if (entry->machine)
            catalog->machines[catalog->machine_count++] = entry->machine;
        else if (ow_kind_is_part(entry->part->kind))
            catalog->parts[catalog->part_count++] = entry->part;
        else
            catalog->fixtures[catalog->fixture_count++] = entry->part;
    }
    ow_release(context, order);
    return status;
}

static ow_status begin(ow_loading *loading, const ow_context *context, const ow_catalog_options *options)
{
    *loading = (ow_loading){.context = *context, .outer = context, .options = options};
    loading->context.report = count_report;
    loading->context.report_user = loading;
    ow_catalog *catalog = ow_new_array(context, 1, sizeof *catalog);
    if (!catalog)
        return OW_MEMORY;
    catalog->context = context;
    catalog->arena = ow_arena_new(context);
    catalog->ids = ow_map_new(context);
    loading->catalog = catalog;
    loading->reader = ow_reader_new(&loading->context, &catalog->arena, &loading->faults);
    loading->stock_ids = ow_map_new(context);
    loading->left_ids = ow_map_new(context);
    return OW_OK;
}

/* What is left to do once all pages are read; hands the catalogue over, or frees it. */
static ow_status finish(ow_loading *loading, ow_status status, ow_catalog **catalog)
{
    if (!ends_all(status)) {
        loading->folder++;
        loading->faults = 0;
        ow_status stock =
            loading->options->stock_file ? go_on(load_file(loading, loading->options->stock_file)) : OW_OK;
        ow_status applied = ends_all(stock) ? stock : go_on(ow_stock_apply(loading));
        ow_status held = ends_all(applied) ? applied : go_on(check_held(loading));
        status = held != OW_OK ? held : status != OW_OK ? status : stock;
    }
    if (status == OW_OK && loading->errors > 0)
        status = OW_INPUT;
    if (status == OW_OK && loading->options->skip_bad)
        forget_held(loading->catalog);
    if (status == OW_OK)
        status = sort_out(loading->catalog);
    ow_map_done(&loading->left_ids);
    ow_map_done(&loading->stock_ids);
    ow_release(loading->outer, loading->stock);
    ow_reader_done(&loading->reader);
    if (status == OW_OK)
        *catalog = loading->catalog;
    else
        ow_catalog_free(loading->catalog);
    return status;
}

ow_status ow_catalog_load(const ow_context *context, const ow_catalog_options *options, ow_catalog **catalog)
{
    ow_loading loading;
    ow_status worst = begin(&loading, context, options);
    if (worst != OW_OK)
        return worst;
    for (size_t i = 0; i < options->folder_count && !ends_all(worst); i++) {
        loading.folder = i;
        ow_status status = load_folder(&loading, options->folders[i]);
        worst = status == OW_OK ? worst : status;
    }
    return finish(&loading, worst, catalog);
}

ow_status ow_catalog_load_texts(const ow_context *context, const char *const *names, const char *const *texts,
                                size_t count, const ow_catalog_options *options, ow_catalog **catalog)
{
    static const ow_catalog_options plain = {0};
    ow_loading loading;
    ow_status worst = begin(&loading, context, options ? options : &plain);
    if (worst != OW_OK)
        return worst;
    for (size_t i = 0; i < count && !ends_all(worst); i++) {
        size_t length = strlen(texts[i]);
        char *copy = ow_new_array(context, length + 1, 1);
        ow_status status =
            copy ? go_on(load_text(&loading, names[i], memcpy(copy, texts[i], length), length)) : OW_MEMORY;
        worst = status == OW_OK ? worst : status;
    }
    return finish(&loading, worst, catalog);
}
