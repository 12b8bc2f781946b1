/* SPDX-License-Identifier: MIT */
#include "counter/faults.h"

#include <stdlib.h>
#include <string.h>

#define FAULTS_MAX 200

static void add_words(cJSON *item, const char *name, const char *words)
{
    if (words != NULL)
        cJSON_AddStringToObject(item, name, words);
    else
        cJSON_AddNullToObject(item, name);
}

/* What the command calls so is a parameter here: "--from" is "from". */
static const char *plain_name(const char *file)
{
    if (file != NULL && strcmp(file, "END") == 0)
        return "end";
    return file != NULL && strncmp(file, "--", 2) == 0 ? file + 2 : file;
}

static void add_line(cJSON *item, const ow_diagnostic *diagnostic)
{
    char *line = diagnostic->line_text != NULL ? malloc(diagnostic->line_length + 1) : NULL;
    if (line != NULL) {
        memcpy(line, diagnostic->line_text, diagnostic->line_length);
        line[diagnostic->line_length] = '\0';
    }
    add_words(item, "text", line);
    free(line);
}

void counter_faults_add(void *user, const ow_diagnostic *diagnostic)
{
    counter_faults *faults = user;
    if (faults->also != NULL && faults->also->report != NULL)
        faults->also->report(faults->also->report_user, diagnostic);
    faults->errors += diagnostic->severity == OW_ERROR;
    if (faults->list == NULL)
        faults->list = cJSON_CreateArray();
    cJSON *item = cJSON_GetArraySize(faults->list) < FAULTS_MAX ? cJSON_CreateObject() : NULL;
    if (item == NULL)
        return;
    cJSON_AddStringToObject(item, "severity", ow_severity_name(diagnostic->severity));
    add_words(item, "in", plain_name(diagnostic->file));
    cJSON_AddNumberToObject(item, "line", (double)diagnostic->line);
    cJSON_AddNumberToObject(item, "column", (double)diagnostic->column);
    cJSON_AddNumberToObject(item, "width", (double)diagnostic->mark_width);
    add_line(item, diagnostic);
    add_words(item, "message", diagnostic->message);
    add_words(item, "expected", diagnostic->expected);
    add_words(item, "mend", diagnostic->mend);
    if (!cJSON_AddItemToArray(faults->list, item))
        cJSON_Delete(item);
}

void counter_faults_done(counter_faults *faults)
{
    cJSON_Delete(faults->list);
    faults->list = NULL;
}

char *counter_faults_print(const counter_faults *faults)
{
    cJSON *none = faults->list == NULL ? cJSON_CreateArray() : NULL;
    char *words = cJSON_PrintUnformatted(none != NULL ? none : faults->list);
    cJSON_Delete(none);
    return words;
}
