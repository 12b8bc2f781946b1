/* SPDX-License-Identifier: MIT */
/* A catalogue from folders on the disk: what lies over what, and what is not there. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "oilway/catalog.h"
#include "support/diagnostics.h"
#include "support/testing.h"

typedef struct folders {
    char root[64];
    char shop[96], own[96], stock[96];
} folders;

static void write_file(const char *folder, const char *name, const char *text)
{
    char path[192];
    (void)snprintf(path, sizeof path, "%s/%s", folder, name);
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    assert_true(fputs(text, file) >= 0);
    assert_int_equal(fclose(file), 0);
}

static void make_folders(folders *made)
{
    (void)strcpy(made->root, "/tmp/oilway-catalog-XXXXXX");
    assert_non_null(mkdtemp(made->root));
    (void)snprintf(made->shop, sizeof made->shop, "%s/shop", made->root);
    (void)snprintf(made->own, sizeof made->own, "%s/own", made->root);
    (void)snprintf(made->stock, sizeof made->stock, "%s/drawer.yaml", made->root);
    char command[256];
    (void)snprintf(command, sizeof command, "mkdir %s %s", made->shop, made->own);
    assert_int_equal(system(command), 0);
    write_file(
        made->shop, "plugs.yaml",
        "kind: plug\ncolumns: [id, a, price]\nrows: [[p, -4 o-ring male, 1], [q, -6 o-ring male, 2]]\n");
    write_file(made->shop, "stock.yaml",
               "kind: stock\ncolumns: [id, quantity, price]\nrows: [[p, 3, 1.10], [q, 4, ~]]\n");
    write_file(made->own, "plugs.yaml",
               "kind: plug\ncolumns: [id, a, price]\nrows: [[p, -8 o-ring male, 5]]\n");
    write_file(made->own, "notes.txt", "not a page\n");
    write_file(made->root, "drawer.yaml", "kind: stock\ncolumns: [id, quantity]\nrows: [[q, 9]]\n");
}

static void remove_folders(const folders *made)
{
    char command[128];
    (void)snprintf(command, sizeof command, "rm -r %s", made->root);
    assert_int_equal(system(command), 0);
}

static void a_later_folder_replaces_and_says_so(void **state)
{
    (void)state;
    folders made;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_catalog *catalog = NULL;
    make_folders(&made);
    const char *const both[] = {made.shop, made.own};
    const ow_catalog_options options = {
        .folders = both, .folder_count = 2, .stock_file = made.stock, .notes = true};
    assert_int_equal(ow_catalog_load(&context, &options, &catalog), OW_OK);
    assert_int_equal(sink.count, 1);
    assert_int_equal(sink.items[0].severity, OW_NOTE);
    assert_non_null(strstr(sink.items[0].message, "\"p\" replaces the one at"));
    assert_non_null(strstr(sink.items[0].message, "shop/plugs.yaml:3:9"));
    char words[OW_END_TEXT_SIZE];
    const ow_part *part = ow_catalog_part(catalog, "p");
    assert_string_equal(ow_end_name(&part->ends[0], words), "-8 o-ring male");
    assert_int_equal(ow_catalog_part_count(catalog), 2);
    assert_int_equal(part->price_cents,
                     110); /* the shop's stock lies over the parts, whatever folder they are of */
    assert_true(ow_catalog_part(catalog, "q")->stock_quantity == 9);
    assert_int_equal(ow_catalog_part(catalog, "q")->price_cents, 200);
    ow_catalog_free(catalog);
    ow_test_diagnostics_clear(&sink);
    remove_folders(&made);
}

static void a_missing_folder_or_stock_file_is_told(void **state)
{
    (void)state;
    folders made;
    ow_test_diagnostics sink = OW_TEST_DIAGNOSTICS_INIT;
    ow_context context = ow_test_context(&sink);
    ow_catalog *catalog = NULL;
    make_folders(&made);
    const char *const missing[] = {"/nowhere/at/all", made.shop};
    ow_catalog_options options = {.folders = missing, .folder_count = 2, .skip_bad = true};
    assert_int_equal(ow_catalog_load(&context, &options, &catalog), OW_IO);
    assert_int_equal(ow_test_count(&sink, OW_ERROR), 1);
    ow_test_diagnostics_clear(&sink);
    options = (ow_catalog_options){.folders = missing + 1, .folder_count = 1, .stock_file = made.own};
    assert_int_equal(ow_catalog_load(&context, &options, &catalog), OW_IO); /* a directory */
    assert_int_equal(ow_test_count(&sink, OW_ERROR), 1);
    assert_null(catalog);
    ow_test_diagnostics_clear(&sink);
    remove_folders(&made);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_later_folder_replaces_and_says_so),
        cmocka_unit_test(a_missing_folder_or_stock_file_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
