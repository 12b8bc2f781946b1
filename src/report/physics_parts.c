/* SPDX-License-Identifier: MIT */
#include "report/physics_parts.h"

#include <math.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include "base/format.h"
#include "base/words.h"

#define LABEL_WIDTH 30

static double significant(double value, int digits)
{
    if (value == 0.0 || !isfinite(value))
        return value;
    int places = digits - 1 - (int)floor(log10(fabs(value)));
    if (places > 300 || places < -300)
        return value;
    double scale = pow(10.0, abs(places));
    return places >= 0 ? round(value * scale) / scale : round(value / scale) * scale;
}

void ow_json_figure(ow_json *json, cJSON *parent, const char *name, double value)
{
    ow_json_number(json, parent, name, significant(value, 7));
}

void ow_json_known_figure(ow_json *json, cJSON *parent, const char *name, bool known, double value)
{
    if (known)
        ow_json_figure(json, parent, name, value);
    else
        ow_json_null(json, parent, name);
}

void ow_json_assumptions(ow_json *json, cJSON *parent, const char *name, const ow_assumptions *assumptions)
{
    cJSON *list = ow_json_list(json, parent, name);
    for (size_t i = 0; i < assumptions->count; i++) {
        const ow_assumption *assumption = &assumptions->items[i];
        cJSON *item = ow_json_object(json, list, NULL);
        ow_json_words(json, item, "what", assumption->what);
        ow_json_words(json, item, "value", assumption->value);
        ow_json_words(json, item, "source", assumption->source);
        ow_json_words(json, item, "mark", ow_mark_words(assumption->mark));
    }
}

void ow_json_remarks(ow_json *json, cJSON *parent, const char *name, const ow_findings *findings)
{
    cJSON *list = ow_json_list(json, parent, name);
    for (size_t i = 0; i < findings->count; i++) {
        ow_text words = ow_text_new(findings->context);
        ow_text_format(&words, "%s. %s", findings->items[i].message, findings->items[i].mend);
        ow_json_text(json, list, NULL, &words);
    }
}

/* Formats; what is too long is cut between two characters. */
__attribute__((format(printf, 3, 0))) static void format_whole(char *words, size_t size, const char *format,
                                                               va_list arguments)
{
    if (ow_format(words, size, format, arguments) < 0)
        words[0] = '\0';
    words[ow_utf8_valid(words, strlen(words))] = '\0';
}

void ow_physics_title(ow_text *text, ow_paint paint, const ow_style *style, const char *format, ...)
{
    char words[512];
    va_list arguments;
    va_start(arguments, format);
    format_whole(words, sizeof words, format, arguments);
    va_end(arguments);
    ow_look_paint(text, paint, style, words);
    ow_text_char(text, '\n');
}

void ow_physics_row(ow_text *text, const char *label, const char *value_format, ...)
{
    char value[256];
    va_list arguments;
    va_start(arguments, value_format);
    format_whole(value, sizeof value, value_format, arguments);
    va_end(arguments);
    size_t used = strlen(label);
    ow_text_format(text, "  %s", label);
    ow_text_repeat(text, ' ', used < LABEL_WIDTH ? LABEL_WIDTH - used : 1);
    ow_text_format(text, "%s\n", value);
}

void ow_physics_figure(ow_text *text, double value)
{
    double rounded = significant(value, 4);
    int decimals = rounded == 0.0 ? 0 : 3 - (int)floor(log10(fabs(rounded)));
    ow_text_format(text, "%.*f", decimals < 0 ? 0 : decimals > 12 ? 12 : decimals, rounded);
}

void ow_report_assumptions_text(ow_text *text, const ow_assumptions *assumptions, const ow_style *style)
{
    if (assumptions->count == 0)
        return;
    ow_physics_title(text, OW_PAINT_STRONG, style, "assumed");
    for (size_t i = 0; i < assumptions->count; i++) {
        const ow_assumption *assumption = &assumptions->items[i];
        ow_text words = ow_text_new(text->context);
        ow_text_format(&words, "%s: %s (%s; %s)", assumption->what, assumption->value,
                       ow_mark_words(assumption->mark), assumption->source);
        ow_text_add(text, "  ");
        ow_look_fold(text, style, 2, 4, ow_text_words(&words));
        ow_text_char(text, '\n');
        ow_text_done_into(&words, text);
    }
}

void ow_physics_end(ow_text *text, const ow_assumptions *assumptions, const ow_findings *findings,
                    const ow_style *style)
{
    ow_report_assumptions_text(text, assumptions, style);
    ow_report_findings_text(text, findings, style);
}
