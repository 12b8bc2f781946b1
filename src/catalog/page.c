/* SPDX-License-Identifier: MIT */
/* A page: its head, and its table, its records or the one thing that it is. */
#include <string.h>

#include "base/progress.h"
#include "base/words.h"
#include "catalog/internal.h"

#define ROWS_BETWEEN 1024 /* tellings of progress */
#define PAGE_WORDS "page, kind, columns, rows, records"

typedef struct ow_page {
    ow_loading *loading;
    ow_reader *reader;
    const ow_yaml *map;
    ow_kind kind;
    const char *name;
    ow_draft base; /* what holds for all rows */
    ow_key columns[OW_CATALOG_COLUMNS_MAX];
    size_t column_count;
    size_t id_column;
    bool bad; /* a fault in the head: the page is read for faults only */
} ow_page;

/* After these nothing more is read of a page. */
static bool ends_all(ow_status status)
{
    return status == OW_MEMORY || status == OW_STOPPED;
}

/* Keeps the worse of two; what ends all before all. */
static ow_status worse(ow_status a, ow_status b)
{
    return ends_all(a) || b == OW_OK ? a : b;
}

static ow_status head_fault(ow_page *page, ow_span span, const char *expected, const char *mend,
                            const char *message)
{
    page->bad = true;
    return ow_source_report(page->reader->context, OW_ERROR, OW_INPUT, page->reader->source, span, expected,
                            mend, "%s", message);
}

/* "catalog/tees.yaml" is page "tees" unless it says otherwise. */
static const char *name_from_file(ow_page *page)
{
    const char *file = page->reader->source->name, *slash = strrchr(file, '/');
    const char *base = slash ? slash + 1 : file, *dot = strrchr(base, '.');
    size_t length = dot && dot > base ? (size_t)(dot - base) : strlen(base);
    return ow_arena_copy(page->reader->arena, base, length);
}

static ow_status read_name(ow_page *page)
{
    const ow_yaml *node = ow_yaml_member(page->map, "page");
    if (node && node->kind != OW_YAML_SCALAR)
        return head_fault(page, node->span, "a name for the page", NULL, "\"page\" is not a name");
    if (!node || ow_yaml_is_null(node)) {
        const ow_yaml *id = ow_yaml_member(page->map, "id");
        page->name = id && id->kind == OW_YAML_SCALAR ? ow_reader_words(page->reader, id->words)
                                                      : name_from_file(page);
    } else {
        page->name = ow_reader_words(page->reader, node->words);
    }
    return page->name ? OW_OK : OW_MEMORY;
}

static ow_status unknown_kind(ow_page *page, const ow_yaml *node)
{
    const char *words[OW_KIND_COUNT + 1];
    ow_text expected = ow_text_new(page->reader->context);
    for (int kind = 0; kind <= OW_KIND_COUNT; kind++) {
        words[kind] = kind < OW_KIND_COUNT ? ow_kind_word((ow_kind)kind) : "stock";
        ow_text_format(&expected, "%s%s", kind ? ", " : "", words[kind]);
    }
    ow_status status = ow_text_status(&expected);
    page->bad = true;
    if (status == OW_OK)
        status =
            ow_misspelt(page->reader->context, page->reader->source, node->span, ow_text_words(&expected),
                        ow_words_nearest(node->words, node->length, words, OW_KIND_COUNT + 1),
                        "\"%.60s\" is no kind of part", node->words);
    ow_text_done(&expected);
    return status;
}

static ow_status read_kind(ow_page *page)
{
    const ow_yaml *node = ow_yaml_member(page->map, "kind");
    page->kind = OW_KIND_COUNT;
    if (!node || node->kind != OW_YAML_SCALAR)
        return head_fault(page, node ? node->span : (ow_span){page->map->span.start, 1},
                          "\"kind\", such as \"kind: adapter\"", NULL, "the page does not say its kind");
    page->kind = ow_kind_find(node->words);
    return page->kind == OW_KIND_COUNT ? unknown_kind(page, node) : OW_OK;
}

static bool is_page_key(const char *key)
{
    static const char *const keys[] = {"page", "kind", "columns", "rows", "records"};
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
        if (strcmp(keys[i], key) == 0)
            return true;
    return false;
}

/* Every key of a map that is a record, or the head of a page. */
static ow_status read_keys(ow_page *page, const ow_yaml *map, bool head, ow_draft *draft)
{
    ow_status worst = OW_OK;
    for (const ow_yaml *member = map->first; member && worst != OW_MEMORY && !ow_reader_enough(page->reader);
         member = member->next) {
        ow_key key;
        if (head && is_page_key(member->key))
            continue;
        if (ow_key_find(page->kind, member->key, &key))
            worst = worse(worst, ow_key_read(page->reader, &key, ow_yaml_real(member), draft));
        else
            worst = worse(worst, ow_key_unknown(page->reader, page->kind, member->key, member->key_span,
                                                head ? PAGE_WORDS : ""));
    }
    return worst;
}

/* A record was read: it enters the catalogue, or its name goes to those left out. */
static ow_status settle(ow_page *page, ow_draft *draft, const ow_yaml *id, const ow_yaml *whole,
                        ow_status read)
{
    bool named = id && id->kind == OW_YAML_SCALAR && !ow_yaml_is_null(id);
    if (read == OW_MEMORY)
        return read;
    if (page->bad)
        return OW_INPUT;
    if (draft->part.title[0] == '\0')
        draft->part.title = page->name;
    draft->part.page = page->name;
    if (read == OW_OK)
        read = ow_load_record(page->loading, draft, named ? id->span : whole->span);
    if (read == OW_INPUT) {
        ow_status left = ow_load_leave_out(page->loading, named ? "" : "a record of page ",
                                           named ? id->words : page->name);
        read = left == OW_OK ? read : left;
    }
    return read;
}

static ow_status column_fault(ow_page *page, const ow_yaml *node, const char *what)
{
    page->bad = true;
    return ow_source_report(page->reader->context, OW_ERROR, OW_INPUT, page->reader->source, node->span,
                            "each column once, by the key of a field", NULL, "column \"%s\" %s", node->words,
                            what);
}

static ow_status read_column(ow_page *page, const ow_yaml *node)
{
    ow_key *key = &page->columns[page->column_count];
    if (node->kind != OW_YAML_SCALAR)
        return column_fault(page, node, "is not a word");
    for (size_t i = 0; i < page->column_count; i++)
        if (strcmp(page->columns[i].word, node->words) == 0)
            return column_fault(page, node, "stands there twice");
    if (!ow_key_find(page->kind, node->words, key)) {
        page->bad = true;
        key->word = node->words;
        key->field = NULL;
        key->slot = OW_PART_ENDS;
        page->column_count++;
        return ow_key_unknown(page->reader, page->kind, node->words, node->span, "");
    }
    if (strcmp(node->words, "id") == 0)
        page->id_column = page->column_count;
    page->column_count++;
    return OW_OK;
}

static ow_status read_columns(ow_page *page)
{
    const ow_yaml *list = ow_yaml_member(page->map, "columns");
    ow_status worst = OW_OK;
    page->id_column = OW_CATALOG_COLUMNS_MAX;
    if (!list || list->kind != OW_YAML_LIST || list->count == 0 || list->count > OW_CATALOG_COLUMNS_MAX)
        return head_fault(page, list ? list->span : page->map->span,
                          "\"columns\", a list of 1 to 64 keys, and \"rows\"", NULL,
                          "the page has no list of columns");
    for (const ow_yaml *item = list->first; item && worst != OW_MEMORY && !ow_reader_enough(page->reader);
         item = item->next)
        worst = worse(worst, read_column(page, ow_yaml_real(item)));
    if (worst != OW_OK)
        return worst;
    ow_draft all = page->base;
    for (size_t i = 0; i < page->column_count; i++)
        ow_key_say(&page->columns[i], &all);
    worst = ow_draft_complete(page->reader, &all, list->span,
                              "a column of that name, or a value for the whole page");
    page->bad = page->bad || worst != OW_OK;
    return worst;
}

static ow_status row_fault(ow_page *page, const ow_yaml *row)
{
    ow_text columns = ow_text_new(page->reader->context);
    for (size_t i = 0; i < page->column_count; i++)
        ow_text_format(&columns, "%s%s", i ? ", " : "[", page->columns[i].word);
    ow_text_add(&columns, "]");
    ow_status status = ow_text_status(&columns);
    if (status == OW_OK && row->kind != OW_YAML_LIST)
        status = ow_source_report(page->reader->context, OW_ERROR, OW_INPUT, page->reader->source, row->span,
                                  ow_text_words(&columns), NULL, "the row is not a list");
    else if (status == OW_OK)
        status = ow_source_report(page->reader->context, OW_ERROR, OW_INPUT, page->reader->source, row->span,
                                  ow_text_words(&columns),
                                  row->count > page->column_count ? OW_CELLS_TOO_MANY : OW_CELLS_TOO_FEW,
                                  "the row has %zu cells for %zu columns", row->count, page->column_count);
    ow_text_done(&columns);
    return status;
}

static ow_status read_row(ow_page *page, const ow_yaml *row)
{
    const ow_yaml *id = NULL;
    ow_draft draft = page->base;
    ow_status worst = OW_OK;
    size_t column = 0;
    if (row->kind != OW_YAML_LIST || row->count != page->column_count)
        worst = row_fault(page, row);
    for (const ow_yaml *cell = row->first; cell && column < page->column_count && worst != OW_MEMORY;
         cell = cell->next) {
        const ow_key *key = &page->columns[column];
        const ow_yaml *value = ow_yaml_real(cell);
        if (column++ == page->id_column)
            id = value;
        if (row->kind == OW_YAML_LIST && row->count == page->column_count && key->slot < OW_PART_ENDS)
            worst = worse(worst, ow_key_read(page->reader, key, value, &draft));
    }
    if (worst == OW_OK && !page->bad)
        worst = ow_draft_complete(page->reader, &draft, row->span, "a value in this row");
    return settle(page, &draft, id, row, worst);
}

static ow_status read_record(ow_page *page, const ow_yaml *map)
{
    ow_draft draft = page->base;
    if (map->kind != OW_YAML_MAP)
        return settle(page, &draft, NULL, map,
                      ow_source_report(page->reader->context, OW_ERROR, OW_INPUT, page->reader->source,
                                       map->span, "a map of keys and values, such as {id: tee-2, …}", NULL,
                                       "the record is not a map"));
    ow_status worst = read_keys(page, map, false, &draft);
    if (worst != OW_MEMORY && !page->bad)
        worst = worse(worst, ow_draft_complete(page->reader, &draft, (ow_span){map->span.start, 1},
                                               "a key of this record"));
    return settle(page, &draft, ow_yaml_member(map, "id"), map, worst);
}

/* The items of `rows` or `records`, each by itself: one bad row hides nothing. */
static ow_status read_items(ow_page *page, const char *key, ow_status (*read)(ow_page *, const ow_yaml *))
{
    const ow_yaml *list = ow_yaml_member(page->map, key);
    ow_status worst = OW_OK;
    if (!list || (list->kind != OW_YAML_LIST && !ow_yaml_is_null(list)))
        return head_fault(page, list ? list->span : (ow_span){page->map->span.start, 1},
                          "\"columns\" and \"rows\", or \"records\"", NULL, "the page has no list of rows");
    size_t count = 0;
    for (const ow_yaml *item = list->first; item && !ends_all(worst) && !ow_reader_enough(page->reader);
         item = item->next) {
        worst = worse(worst, read(page, ow_yaml_real(item)));
        if (++count % ROWS_BETWEEN == 0)
            worst = worse(worst, ow_progress_tell(page->reader->context, "reading a page", "rows", count, 0));
    }
    return worst;
}

static ow_status read_alone(ow_page *page)
{
    ow_draft draft = page->base;
    ow_status status =
        ow_draft_complete(page->reader, &draft, (ow_span){page->map->span.start, 1},
                          "\"columns\" and \"rows\", or \"records\", or a page that is one record");
    page->bad = false; /* the head is the record: it is left out by its id */
    return settle(page, &draft, ow_yaml_member(page->map, "id"), page->map, status);
}

static ow_status read_body(ow_page *page)
{
    const ow_yaml *records = ow_yaml_member(page->map, "records"), *id = ow_yaml_member(page->map, "id");
    bool table = ow_yaml_member(page->map, "columns") || ow_yaml_member(page->map, "rows");
    ow_draft_begin(&page->base, page->kind);
    ow_status status = read_keys(page, page->map, true, &page->base);
    if (status == OW_MEMORY)
        return status;
    if (!table && !records) {
        ow_status alone =
            status == OW_OK ? read_alone(page) : settle(page, &page->base, id, page->map, status);
        return worse(status, alone);
    }
    page->bad = page->bad || status != OW_OK;
    if (id)
        status = worse(status, head_fault(page, id->span, "an id for each row or record", NULL,
                                          "\"id\" stands above a table"));
    if (table && records)
        return worse(status, head_fault(page, records->span, "\"columns\" and \"rows\", or \"records\"", NULL,
                                        "\"records\" stands beside a table"));
    if (records)
        return worse(status, read_items(page, "records", read_record));
    status = worse(status, read_columns(page));
    if (status == OW_MEMORY || page->column_count == 0)
        return status;
    return worse(status, read_items(page, "rows", read_row));
}

static ow_status read_map(ow_page *page)
{
    ow_status status = worse(read_name(page), read_kind(page));
    if (page->kind == OW_KIND_COUNT || status == OW_MEMORY)
        return status;
    return worse(status, read_body(page));
}

ow_status ow_page_read(ow_loading *loading, const ow_yaml *document)
{
    ow_page page = {.loading = loading, .reader = &loading->reader, .map = document, .name = ""};
    ow_status status;
    if (ow_yaml_is_null(document))
        return OW_OK;
    if (document->kind == OW_YAML_MAP) {
        const ow_yaml *kind = ow_yaml_member(document, "kind");
        if (kind && kind->kind == OW_YAML_SCALAR && strcmp(kind->words, "stock") == 0)
            return ow_stock_page_read(loading, document);
        loading->catalog->page_count++;
        status = read_map(&page);
    } else {
        status = head_fault(&page, document->span, "a map that begins with \"page:\" and \"kind:\"", NULL,
                            "a page of the catalogue is a map");
    }
    if (status == OW_INPUT && page.bad) {
        ow_status left =
            ow_load_leave_out(loading, "page ", page.name[0] ? page.name : loading->reader.source->name);
        return left == OW_OK ? status : left;
    }
    return status;
}
