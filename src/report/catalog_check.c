/* SPDX-License-Identifier: MIT */
/* What a look over the whole catalogue came to. */
#include "oilway/report.h"
#include "report/json.h"

bool ow_catalog_checked_ok(const ow_catalog_checked *checked)
{
    return checked->catalog != NULL && checked->errors == 0 &&
           ow_catalog_left_out_count(checked->catalog) == 0;
}

static void write_counted(ow_text *text, size_t count, const char *one)
{
    ow_text_format(text, "%zu %s%s", count, one, count == 1 ? "" : "s");
}

void ow_report_catalog_check_text(ow_text *text, const ow_catalog_checked *checked)
{
    const ow_catalog *catalog = checked->catalog;
    if (catalog == NULL) {
        ow_text_add(text, "could not be read");
    } else {
        write_counted(text, ow_catalog_page_count(catalog), "page");
        ow_text_add(text, ", ");
        write_counted(text, ow_catalog_part_count(catalog), "part");
        ow_text_format(text, ", %zu switches and senders, ", ow_catalog_fixture_count(catalog));
        write_counted(text, ow_catalog_machine_count(catalog), "machine");
    }
    ow_text_add(text, ": ");
    write_counted(text, checked->errors, "error");
    ow_text_add(text, ", ");
    write_counted(text, checked->warnings, "warning");
    ow_text_char(text, '\n');
}

static void write_number(ow_json *json, cJSON *parent, const char *name, size_t number, bool known)
{
    if (known)
        ow_json_number(json, parent, name, (double)number);
    else
        ow_json_null(json, parent, name);
}

static void write_finding(ow_json *json, cJSON *item, const ow_diagnostic *told)
{
    ow_json_words(json, item, "severity", ow_severity_name(told->severity));
    ow_json_words(json, item, "file", told->file);
    write_number(json, item, "line", told->line, told->line > 0);
    write_number(json, item, "column", told->column, told->column > 0);
    ow_json_words(json, item, "message", told->message);
    ow_json_words(json, item, "expected", told->expected);
    ow_json_words(json, item, "mend", told->mend);
}

ow_status ow_report_catalog_check_json(ow_text *text, const ow_catalog_checked *checked)
{
    const ow_catalog *catalog = checked->catalog;
    bool read = catalog != NULL;
    ow_json json = ow_json_new(false);
    ow_json_bool(&json, json.root, "ok", ow_catalog_checked_ok(checked));
    write_number(&json, json.root, "errors", checked->errors, true);
    write_number(&json, json.root, "warnings", checked->warnings, true);
    write_number(&json, json.root, "pages", read ? ow_catalog_page_count(catalog) : 0, read);
    write_number(&json, json.root, "parts", read ? ow_catalog_part_count(catalog) : 0, read);
    write_number(&json, json.root, "fixtures", read ? ow_catalog_fixture_count(catalog) : 0, read);
    write_number(&json, json.root, "machines", read ? ow_catalog_machine_count(catalog) : 0, read);
    cJSON *left_out = ow_json_list(&json, json.root, "left_out");
    for (size_t index = 0; read && index < ow_catalog_left_out_count(catalog); index++)
        ow_json_words(&json, left_out, NULL, ow_catalog_left_out_at(catalog, index));
    cJSON *findings = ow_json_list(&json, json.root, "findings");
    for (size_t index = 0; index < checked->told->count; index++)
        write_finding(&json, ow_json_object(&json, findings, NULL), &checked->told->items[index]);
    ow_status status = ow_json_done(&json, text);
    return status == OW_OK ? ow_told_status(checked->told) : status;
}
