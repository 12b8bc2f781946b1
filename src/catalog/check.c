/* SPDX-License-Identifier: MIT */
#include <stdarg.h>
#include <string.h>

#include "base/format.h"
#include "base/progress.h"
#include "catalog/audit.h"

#define MESSAGE_SIZE 512
#define IDS_SHOWN 8

void ow_audit_tell(ow_audit *audit, ow_severity severity, const ow_entry *entry, const char *expected,
                   const char *mend, const char *message_format, ...)
{
    char message[MESSAGE_SIZE];
    va_list arguments;
    audit->errors += severity == OW_ERROR;
    audit->warnings += severity == OW_WARNING;
    if (audit->told++ >= OW_AUDIT_TOLD_MAX)
        return;
    va_start(arguments, message_format);
    (void)ow_format(message, sizeof message, message_format, arguments);
    va_end(arguments);
    if (ow_source_report(audit->context, severity, OW_INPUT, entry->source, entry->span, expected, mend, "%s",
                         message) == OW_MEMORY)
        audit->status = OW_MEMORY;
}

ow_gather ow_gather_new(ow_audit *audit, ow_severity severity, const char *fault, const char *mend)
{
    ow_gather gather = {.audit = audit, .severity = severity, .fault = fault, .mend = mend};
    gather.ids = ow_text_new(audit->context);
    return gather;
}

static void tell_gathered(ow_gather *gather)
{
    if (gather->count > 0 && !gather->ids.failed)
        ow_audit_tell(gather->audit, gather->severity, gather->first, NULL, gather->mend,
                      "page \"%.60s\": %s (%zu %s: %s)", gather->page, gather->fault, gather->count,
                      gather->count == 1 ? "part" : "parts", ow_text_words(&gather->ids));
    if (gather->ids.failed)
        gather->audit->status = OW_MEMORY;
    ow_text_done(&gather->ids);
    gather->ids = ow_text_new(gather->audit->context);
    gather->count = 0;
}

void ow_gather_add(ow_gather *gather, const ow_entry *entry)
{
    ow_gather_add_end(gather, entry, NULL);
}

void ow_gather_add_end(ow_gather *gather, const ow_entry *entry, const char *end)
{
    if (gather->count > 0 && strcmp(gather->page, entry->part->page) != 0)
        tell_gathered(gather);
    if (gather->count == 0)
        gather->first = entry;
    gather->page = entry->part->page;
    if (gather->count < IDS_SHOWN)
        ow_text_format(&gather->ids, "%s%s%s%s", gather->count ? ", " : "", entry->part->id, end ? "." : "",
                       end ? end : "");
    else if (gather->count == IDS_SHOWN)
        ow_text_add(&gather->ids, " and others");
    gather->count++;
}

void ow_gather_end(ow_gather *gather)
{
    tell_gathered(gather);
    ow_text_done(&gather->ids);
}

static void tell_replaced(ow_audit *audit)
{
    for (size_t i = 0; i < audit->catalog->replaced_count; i++) {
        const ow_replaced *replaced = &audit->catalog->replaced[i];
        const ow_entry entry = {.source = replaced->source, .span = replaced->span};
        ow_audit_tell(audit, OW_NOTE, &entry, NULL, NULL, "\"%s\" replaces the one at %s:%zu:%zu",
                      replaced->id, replaced->before.file, replaced->before.line, replaced->before.column);
    }
}

ow_status ow_catalog_check(const ow_context *context, const ow_catalog *catalog, size_t *errors,
                           size_t *warnings)
{
    static void (*const looks[])(ow_audit *) = {tell_replaced,    ow_audit_forms, ow_audit_sizes,
                                                ow_audit_silence, ow_audit_hoses, ow_audit_alike,
                                                ow_audit_use};
    ow_audit audit = {.context = context, .catalog = catalog};
    size_t count = sizeof looks / sizeof *looks;
    for (size_t i = 0; i < count && audit.status == OW_OK; i++) {
        audit.status = ow_progress_tell(context, "checking the catalogue", "looks", i, count);
        if (audit.status == OW_OK)
            looks[i](&audit);
    }
    if (audit.told > OW_AUDIT_TOLD_MAX)
        ow_report(context, OW_NOTE, OW_INPUT, NULL, NULL, NULL, "%zu more are counted, but not shown",
                  audit.told - OW_AUDIT_TOLD_MAX);
    if (audit.status == OW_OK) {
        *errors = audit.errors;
        *warnings = audit.warnings;
    }
    return audit.status;
}
