/* SPDX-License-Identifier: MIT */
/* What lies in the drawer, and what it costs here: laid over the parts once all pages are read. */
#include <math.h>
#include <string.h>

#include "base/words.h"
#include "catalog/internal.h"

#define COLUMNS_MAX 3

typedef struct ow_stock_page {
    ow_loading *loading;
    ow_reader *reader;
    const ow_field *columns[COLUMNS_MAX];
    size_t column_count;
} ow_stock_page;

static ow_status fault(ow_stock_page *page, ow_span span, const char *expected, const char *mend,
                       const char *message)
{
    return ow_source_report(page->reader->context, OW_ERROR, OW_INPUT, page->reader->source, span, expected,
                            mend, "%s", message);
}

static ow_status read_columns(ow_stock_page *page, const ow_yaml *map)
{
    static const char *const known[] = {"id", "quantity", "price"};
    const ow_yaml *list = ow_yaml_member(map, "columns");
    bool has_id = false;
    if (!list || list->kind != OW_YAML_LIST || list->count > COLUMNS_MAX)
        return fault(page, list ? list->span : (ow_span){map->span.start, 1},
                     "columns: [id, quantity, price]", NULL, "the stock has no list of columns");
    for (const ow_yaml *item = list->first; item; item = item->next) {
        const ow_yaml *node = ow_yaml_real(item);
        const ow_field *field = ow_field_find(ow_stock_fields(), node->words);
        for (size_t i = 0; i < page->column_count; i++)
            field = page->columns[i] == field ? NULL : field;
        if (!field)
            return ow_misspelt(
                page->reader->context, page->reader->source, node->span, "id, quantity, price, each once",
                ow_words_nearest(node->words, node->length, known, 3), "that is no column of the stock");
        has_id = has_id || strcmp(field->key, "id") == 0;
        page->columns[page->column_count++] = field;
    }
    return has_id ? OW_OK
                  : fault(page, list->span, "columns: [id, quantity, price]", NULL,
                          "the column \"id\" is missing");
}

static ow_status add_row(ow_stock_page *page, const ow_stock_draft *draft, ow_span span)
{
    ow_loading *loading = page->loading;
    ow_stock_row row = {draft->id,       draft->quantity,      draft->price,
                        loading->folder, page->reader->source, span};
    size_t known = ow_map_get(&loading->stock_ids, draft->id);
    if (known != OW_MAP_NONE && loading->stock[known].folder == loading->folder)
        return fault(page, span, "each id once", NULL, "the stock names this part twice");
    ow_status status = ow_grow(loading->outer, (void **)&loading->stock, &loading->stock_capacity,
                               loading->stock_count + 1, sizeof *loading->stock);
    if (status == OW_OK)
        status = ow_map_put(&loading->stock_ids, row.id, loading->stock_count);
    if (status == OW_OK)
        loading->stock[loading->stock_count++] = row;
    return status;
}

static ow_status read_row(ow_stock_page *page, const ow_yaml *row)
{
    ow_stock_draft draft = {.id = "", .quantity = OW_NOT_SAID};
    ow_status worst = OW_OK;
    ow_span id_span = row->span;
    size_t column = 0;
    if (row->kind != OW_YAML_LIST || row->count != page->column_count)
        return fault(page, row->span, "a list with a cell for each column",
                     row->kind == OW_YAML_LIST && row->count > page->column_count ? OW_CELLS_TOO_MANY
                                                                                  : OW_CELLS_TOO_FEW,
                     "the row does not fit the columns");
    for (const ow_yaml *cell = row->first; cell && worst != OW_MEMORY; cell = cell->next) {
        const ow_field *field = page->columns[column++]; /* there are as many as cells */
        if (!field)
            return OW_FAULT;
        const ow_yaml *value = ow_yaml_real(cell);
        if (strcmp(field->key, "id") == 0)
            id_span = value->span;
        ow_status status = ow_field_read(page->reader, field, value, &draft);
        worst = status == OW_OK ? worst : status;
    }
    if (worst == OW_OK && draft.id[0] == '\0')
        worst = fault(page, id_span, "the id of a part", NULL, "\"id\" is not said");
    return worst == OW_OK ? add_row(page, &draft, id_span) : worst;
}

static ow_status read_head(ow_stock_page *page, const ow_yaml *map)
{
    static const char *const known[] = {"kind", "page", "title", "note", "columns", "rows"};
    ow_status status = ow_yaml_known_keys(page->reader->context, page->reader->source, map, known,
                                          sizeof known / sizeof *known);
    ow_status columns = status == OW_MEMORY ? status : read_columns(page, map);
    return columns == OW_OK ? status : columns;
}

ow_status ow_stock_page_read(ow_loading *loading, const ow_yaml *map)
{
    ow_stock_page page = {.loading = loading, .reader = &loading->reader};
    ow_status worst = read_head(&page, map);
    const ow_yaml *rows = ow_yaml_member(map, "rows");
    if (worst == OW_OK && (!rows || (rows->kind != OW_YAML_LIST && !ow_yaml_is_null(rows))))
        worst = fault(&page, rows ? rows->span : (ow_span){map->span.start, 1}, "\"rows\", a list of lists",
                      NULL, "the stock has no list of rows");
    if (worst != OW_OK || !rows)
        return worst;
    for (const ow_yaml *item = rows->first; item && worst != OW_MEMORY && !ow_reader_enough(page.reader);
         item = item->next) {
        ow_status status = read_row(&page, ow_yaml_real(item));
        worst = status == OW_OK ? worst : status;
    }
    return worst;
}

static ow_status apply_row(ow_loading *loading, const ow_stock_row *row)
{
    ow_catalog *catalog = loading->catalog;
    size_t found = ow_map_get(&catalog->ids, row->id);
    ow_part *part = found == OW_MAP_NONE ? NULL : catalog->entries[found].part;
    if (!part && ow_map_get(&loading->left_ids, row->id) != OW_MAP_NONE)
        return OW_OK;
    if (!part)
        return ow_misspelt(&loading->context, row->source, row->span, "the id of a part",
                           ow_catalog_nearest_id(catalog, row->id),
                           "the stock names \"%s\", which is no part of the catalogue", row->id);
    if (row->quantity >= 0 && part->kind != OW_HOSE && row->quantity != floor(row->quantity))
        return ow_source_report(&loading->context, OW_ERROR, OW_INPUT, row->source, row->span,
                                "a whole number of pieces", NULL, "only hose is kept by the metre: \"%s\"",
                                row->id);
    if (row->quantity >= 0) {
        part->has_stock = true;
        part->stock_quantity = row->quantity;
    }
    if (row->price.said) {
        part->has_price = true;
        part->price_cents = row->price.cents;
    }
    return OW_OK;
}

ow_status ow_stock_apply(ow_loading *loading)
{
    ow_status worst = OW_OK;
    loading->faults = 0;
    for (size_t i = 0; i < loading->stock_count && worst != OW_MEMORY && !ow_reader_enough(&loading->reader);
         i++) {
        ow_status status = apply_row(loading, &loading->stock[i]);
        worst = status == OW_OK ? worst : status;
    }
    if (worst != OW_MEMORY && ow_reader_enough(&loading->reader))
        ow_report(&loading->context, OW_ERROR, OW_INPUT, NULL, NULL, NULL,
                  "more than %d faults in the stock: the rest of it is not counted", OW_CATALOG_FAULTS_MAX);
    return worst;
}
