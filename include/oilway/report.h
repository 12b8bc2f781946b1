/* SPDX-License-Identifier: MIT */
/* Printing: what was found, as text for a person or as JSON, YAML, CSV or DOT for a program. Nothing is
 * reckoned here. Each appends to `text`; check ow_text_status once at the end. */
#ifndef OILWAY_REPORT_H
#define OILWAY_REPORT_H

#include "oilway/answer.h"
#include "oilway/bill.h"
#include "oilway/told.h"

/* How a text for a person may look. */
typedef struct ow_style {
    bool colour;  /* terminal escape codes */
    bool ascii;   /* no characters beyond ASCII */
    size_t width; /* columns, 40 or more */
    bool cards;   /* behind each drawn layout the cards of its joints */
} ow_style;
#define OW_STYLE_INIT            \
    {                            \
        false, false, 100, false \
    }

void ow_report_answers_text(ow_text *text, const ow_answers *answers, const ow_style *style);
ow_status ow_report_answers_json(ow_text *text, const ow_answers *answers);
void ow_report_answers_yaml(ow_text *text, const ow_answers *answers); /* layouts, as check reads them */
void ow_report_answers_csv(ow_text *text, const ow_answers *answers);
void ow_report_answers_dot(ow_text *text, const ow_answers *answers);

/* A layout drawn in text, joint by joint, with what seals each. */
void ow_report_layout_text(ow_text *text, const ow_layout *layout, const ow_style *style);
void ow_report_findings_text(ow_text *text, const ow_findings *findings, const ow_style *style);

/* Rules of the table, all of them (rule NULL) or one; in JSON always a list. docs/rules.md is the second. */
void ow_report_rules_text(ow_text *text, const ow_rule *rule, const ow_style *style);
void ow_report_rules_markdown(ow_text *text);
ow_status ow_report_rules_json(ow_text *text, const ow_rule *rule);

/* `findings` and `passed` as ow_check_layout fills them; in JSON one of each for every layout. */
void ow_report_check_text(ow_text *text, const ow_layout *layout, const ow_findings *findings,
                          const ow_findings *passed, const ow_style *style);
ow_status ow_report_check_json(ow_text *text, const ow_layout *layouts, const ow_findings *findings,
                               const ow_findings *passed, size_t count);

void ow_report_bill_text(ow_text *text, const ow_bill *bill, const ow_style *style);
ow_status ow_report_bill_json(ow_text *text, const ow_bill *bill);
void ow_report_bill_csv(ow_text *text, const ow_bill *bill);

/* A catalogue that was read and looked over, and all that was told of it on the way. */
typedef struct ow_catalog_checked {
    const ow_catalog *catalog; /* NULL: it could not be read, and was not looked at further */
    size_t errors, warnings;   /* also those that were counted only */
    const ow_told *told;
} ow_catalog_checked;
/* Whether it was read whole and no error was found. */
bool ow_catalog_checked_ok(const ow_catalog_checked *checked);
/* One line of counts; what was told is told elsewhere. */
void ow_report_catalog_check_text(ow_text *text, const ow_catalog_checked *checked);
ow_status ow_report_catalog_check_json(ow_text *text, const ow_catalog_checked *checked);
void ow_report_catalog_list_text(ow_text *text, const ow_catalog *catalog, const ow_style *style);
ow_status ow_report_catalog_list_json(ow_text *text, const ow_catalog *catalog);
/* The same without its parts, which are many. */
ow_status ow_report_catalog_given_json(ow_text *text, const ow_catalog *catalog);
/* One part, fixture or machine; false if the id is unknown. */
bool ow_report_catalog_show_text(ow_text *text, const ow_catalog *catalog, const char *id,
                                 const ow_style *style);
ow_status ow_report_catalog_show_json(ow_text *text, const ow_catalog *catalog, const char *id);

/* The usual cautions of a circuit, one to a line, each begun with `bullet`. */
void ow_report_cautions(ow_text *text, ow_circuit circuit, const char *bullet);

#endif
