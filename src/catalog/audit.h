/* SPDX-License-Identifier: MIT */
/* ow_catalog_check under way: what each of its looks needs. */
#ifndef OW_CATALOG_AUDIT_H
#define OW_CATALOG_AUDIT_H

#include "catalog/internal.h"

#define OW_AUDIT_TOLD_MAX 1000

typedef struct ow_audit {
    const ow_context *context;
    const ow_catalog *catalog;
    size_t errors, warnings;
    size_t told;      /* in words; what goes beyond OW_AUDIT_TOLD_MAX is counted only */
    ow_status status; /* OW_OK, or OW_MEMORY once an allocation failed */
} ow_audit;

/* Tells of a record, marked at its id. */
void ow_audit_tell(ow_audit *audit, ow_severity severity, const ow_entry *entry, const char *expected,
                   const char *mend, const char *message_format, ...) __attribute__((format(printf, 6, 7)));

/*
 * Parts of one page with the same fault, told in one sentence: "page "tees": FAULT (3 parts: a, b, c)".
 * Records come in the order of their pages; ow_gather_end tells the last.
 */
typedef struct ow_gather {
    ow_audit *audit;
    ow_severity severity;
    const char *fault, *mend;
    const ow_entry *first;
    const char *page;
    size_t count;
    ow_text ids;
} ow_gather;

ow_gather ow_gather_new(ow_audit *audit, ow_severity severity, const char *fault, const char *mend);
void ow_gather_add(ow_gather *gather, const ow_entry *entry);
/* The same of one end, told as "id.end". */
void ow_gather_add_end(ow_gather *gather, const ow_entry *entry, const char *end);
void ow_gather_end(ow_gather *gather);

/* The looks, each over all records. */
void ow_audit_forms(ow_audit *audit); /* ends that a kind cannot have, switches that do not fit their port */
void ow_audit_sizes(ow_audit *audit); /* dimensions against the standards' */
void ow_audit_silence(ow_audit *audit); /* values that a limit asks about */
void ow_audit_hoses(ow_audit *audit);   /* claims beyond what a hose is made of */
void ow_audit_alike(ow_audit *audit);   /* parts that differ in id and price only */
void ow_audit_use(ow_audit *audit);     /* ends that nothing mates, parts that fit in no stack */

#endif
