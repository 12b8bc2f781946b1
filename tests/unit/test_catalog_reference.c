/* SPDX-License-Identifier: MIT */
/*
 * The reference tables of docs/catalogue.md are the reader's own tables, printed. When a field was
 * changed on purpose, the failing test shows the lines to put there.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "catalog/fields.h"
#include "catalog/internal.h"
#include "layout/asked.h"
#include "support/diagnostics.h"
#include "support/testing.h"

static const ow_context context = OW_CONTEXT_INIT;

static char *read_page(const char *name)
{
    const char *source = getenv("OW_SOURCE_DIR");
    char path[4096];
    static const size_t most = 256 * 1024;
    (void)snprintf(path, sizeof path, "%s/docs/%s", source ? source : ".", name);
    FILE *file = fopen(path, "rb");
    assert_non_null(file);
    char *text = calloc(1, most + 1);
    assert_non_null(text);
    size_t length = fread(text, 1, most, file);
    assert_true(length > 0 && length < most);
    assert_int_equal(fclose(file), 0);
    return text;
}

static void assert_says(const char *page, ow_text *table)
{
    char *text = read_page(page);
    assert_false(table->failed);
    bool found = strstr(text, ow_text_words(table)) != NULL;
    if (!found)
        (void)printf("docs/%s should say:\n%s", page, ow_text_words(table));
    free(text);
    ow_text_done(table);
    assert_true(found);
}

static uint32_t mask(bool (*belongs)(ow_kind))
{
    uint32_t kinds = 0;
    for (int kind = 0; kind < OW_KIND_COUNT; kind++)
        kinds |= (uint32_t)belongs((ow_kind)kind) << kind;
    return kinds;
}

static void add_kinds(ow_text *text, uint32_t kinds)
{
    const char *gap = "";
    for (int kind = 0; kind < OW_KIND_COUNT; kind++) {
        if (!(kinds >> kind & 1))
            continue;
        ow_text_format(text, "%s%s", gap, ow_kind_word((ow_kind)kind));
        gap = ", ";
    }
}

/* "all", "parts", "parts but plug, cap", "parts but hose; switch, sender", "line" */
static void add_owners(ow_text *text, uint32_t kinds)
{
    uint32_t parts = mask(ow_kind_is_part), all = (UINT32_C(1) << OW_KIND_COUNT) - 1;
    uint32_t without = parts & ~kinds, beside = kinds & ~parts;
    int few = 0;
    for (int kind = 0; kind < OW_KIND_COUNT; kind++)
        few += (int)(without >> kind & 1);
    if (kinds == all) {
        ow_text_add(text, "all");
    } else if (few > 2) {
        add_kinds(text, kinds);
    } else {
        ow_text_add(text, without ? "parts but " : "parts");
        add_kinds(text, without);
        ow_text_add(text, beside ? "; " : "");
        add_kinds(text, beside);
    }
}

static void add_range(ow_text *text, const ow_field *field)
{
    bool bare =
        field->type != OW_FIELD_QUANTITY && field->type != OW_FIELD_RANGE && field->type != OW_FIELD_PLACE;
    if (field->type == OW_FIELD_DIRECTION) {
        ow_text_add(text, "not all 0");
    } else if (field->choices[0]) {
        for (size_t i = 0; i < OW_FIELD_CHOICES && field->choices[i]; i++)
            ow_text_format(text, "%s`%s`", i ? ", " : "", field->choices[i]);
    } else if (field->high > field->low && bare) {
        ow_text_format(text, "%.10g to %.10g", field->low, field->high);
    } else if (field->high > field->low) {
        ow_quantity_write(text, field->dimension, field->low, 3);
        ow_text_add(text, " to ");
        ow_quantity_write(text, field->dimension, field->high, 3);
    }
}

static void add_fields(ow_text *text, ow_field_table table, bool owners)
{
    ow_text_format(text, "| key | holds | range |%s\n| --- | --- | --- |%s\n", owners ? " of |" : "",
                   owners ? " --- |" : "");
    for (size_t i = 0; i < table.count; i++) {
        const ow_field *field = &table.fields[i];
        ow_text_format(text, "| `%s` | %s%s | ", field->key, field->says,
                       field->needed ? "; must be there" : "");
        size_t before = text->length;
        add_range(text, field);
        ow_text_add(text, text->length > before ? " |" : "|");
        if (owners) {
            ow_text_char(text, ' ');
            add_owners(text, field->kinds);
            ow_text_add(text, " |");
        }
        ow_text_char(text, '\n');
    }
}

static void the_reference_lists_every_field_of_a_record(void **state)
{
    (void)state;
    ow_text text = ow_text_new(&context);
    add_fields(&text, ow_record_fields(), true);
    assert_says("catalogue.md", &text);
}

static void the_reference_lists_every_field_of_a_port(void **state)
{
    (void)state;
    ow_text text = ow_text_new(&context);
    add_fields(&text, ow_port_fields(), false);
    assert_says("catalogue.md", &text);
}

static void the_reference_lists_every_column_of_the_stock(void **state)
{
    (void)state;
    ow_text text = ow_text_new(&context);
    add_fields(&text, ow_stock_fields(), false);
    assert_says("catalogue.md", &text);
}

static void add_ends(ow_text *text, const char *const ends[OW_PART_ENDS])
{
    for (size_t end = 0; end < OW_PART_ENDS && ends[end]; end++)
        ow_text_format(text, "%s%s", end ? " " : "`", ends[end]);
    ow_text_char(text, '`');
}

static void the_reference_lists_every_kind_with_its_ends(void **state)
{
    (void)state;
    ow_text text = ow_text_new(&context);
    ow_text_add(&text, "| kind | ends, in order |\n| --- | --- |\n");
    for (int kind = 0; kind < OW_KIND_COUNT; kind++) {
        const ow_kind_row *row = ow_kind_row_of((ow_kind)kind);
        ow_text_format(&text, "| %s | ", row->word);
        if (row->ends[0])
            add_ends(&text, row->ends);
        else
            ow_text_add(&text, "none: `ports`, named");
        if (row->alternate[0]) {
            ow_text_add(&text, ", or ");
            add_ends(&text, row->alternate);
        }
        ow_text_add(&text, " |\n");
    }
    assert_says("catalogue.md", &text);
}

/* The public list of kinds and the reader's table of kinds name the same words. */
static void the_kinds_have_the_ends_of_the_public_list(void **state)
{
    (void)state;
    static const struct {
        ow_kind kind;
        const char *word, *ends;
        bool part;
    } list[] = {
#define ROW(name, word, ends, part) {name, word, ends, part},
        OW_KIND_LIST(ROW)
#undef ROW
    };
    for (size_t i = 0; i < sizeof list / sizeof *list; i++) {
        const ow_kind_row *row = ow_kind_row_of(list[i].kind);
        char ends[128] = "";
        for (size_t end = 0; end < OW_PART_ENDS && row->ends[end]; end++) {
            (void)strcat(ends, end ? " " : "");
            (void)strcat(ends, row->ends[end]);
        }
        assert_string_equal(ow_kind_word(list[i].kind), list[i].word);
        assert_string_equal(ends, list[i].ends);
        assert_int_equal(ow_kind_is_part(list[i].kind), list[i].part);
        assert_int_equal(ow_kind_find(list[i].word), list[i].kind);
    }
}

static void the_limits_stated_are_those_in_force(void **state)
{
    (void)state;
    char words[256];
    char *text = read_page("catalogue.md");
    (void)snprintf(words, sizeof words,
                   "a catalogue at most %zu records, %d columns on a page, %d ports on a machine",
                   OW_CATALOG_RECORDS_MAX, OW_CATALOG_COLUMNS_MAX, OW_MACHINE_PORTS_MAX);
    assert_non_null(strstr(text, words));
    free(text);
}

static void the_layouts_page_lists_every_key_of_asked(void **state)
{
    (void)state;
    ow_text text = ow_text_new(&context);
    ow_text_add(&text, "| key | range |\n| --- | --- |\n");
    for (size_t i = 0; i < ow_asked_key_count(); i++) {
        const ow_asked_key *key = ow_asked_key_at(i);
        ow_text_format(&text, "| `%s` | ", key->key);
        if (key->type == OW_ASKED_YES || key->type == OW_ASKED_UNLESS)
            ow_text_add(&text, "`yes`, `no`");
        for (size_t c = 0; c < OW_ASKED_CHOICES && key->choices[c]; c++)
            ow_text_format(&text, "%s`%s`", c ? ", " : "", key->choices[c]);
        if (key->high > key->low) {
            ow_quantity_write(&text, key->dimension, key->low, 3);
            ow_text_add(&text, " to ");
            ow_quantity_write(&text, key->dimension, key->high, 3);
        }
        ow_text_add(&text, " |\n");
    }
    assert_says("layout.md", &text);
}

/* What is printed of a turbo is what a page may say. */
static void the_words_of_a_turbo_are_those_of_its_fields(void **state)
{
    (void)state;
    const ow_field *bearing = ow_field_find(ow_record_fields(), "bearing");
    const ow_field *built_in = ow_field_find(ow_record_fields(), "restrictor");
    const ow_field *size = ow_field_find(ow_record_fields(), "size");
    for (int i = 0; i < OW_FIELD_CHOICES && bearing->choices[i]; i++)
        assert_string_equal(ow_bearing_word((ow_bearing)(i + 1)), bearing->choices[i]);
    for (int i = 0; i < OW_FIELD_CHOICES && built_in->choices[i]; i++)
        assert_string_equal(ow_built_in_word((ow_built_in)i), built_in->choices[i]);
    for (int i = 0; i < OW_FIELD_CHOICES && size->choices[i]; i++)
        assert_string_equal(ow_turbo_size_word((ow_turbo_size)(i + 1)), size->choices[i]);
    assert_string_equal(ow_bearing_word(OW_BEARING_UNKNOWN), "");
    assert_string_equal(ow_turbo_size_word(OW_SIZE_NOT_SAID), "");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_reference_lists_every_field_of_a_record),
        cmocka_unit_test(the_reference_lists_every_field_of_a_port),
        cmocka_unit_test(the_reference_lists_every_column_of_the_stock),
        cmocka_unit_test(the_reference_lists_every_kind_with_its_ends),
        cmocka_unit_test(the_kinds_have_the_ends_of_the_public_list),
        cmocka_unit_test(the_limits_stated_are_those_in_force),
        cmocka_unit_test(the_layouts_page_lists_every_key_of_asked),
        cmocka_unit_test(the_words_of_a_turbo_are_those_of_its_fields),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
