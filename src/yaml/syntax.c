/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "yaml/reader.h"
#include "yaml/syntax_table.h"

/* Where it is: libyaml gives bytes for what its reader finds, else a mark in characters. */
static ow_span place_of(ow_yaml_reader *reader, bool at_context)
{
    const yaml_parser_t *parser = &reader->parser;
    if (parser->error == YAML_READER_ERROR)
        return (ow_span){reader->start + parser->problem_offset, 1};
    const yaml_mark_t *mark =
        at_context && parser->context != NULL ? &parser->context_mark : &parser->problem_mark;
    ow_span span = ow_yaml_span(reader, mark, mark);
    span.length = 1;
    return span;
}

/* A fault seen at the end of the text is shown at its last line that says something. */
static ow_span seen(const ow_source *source, ow_span span)
{
    if (span.start < source->length && source->text[span.start] != '\n')
        return span;
    size_t at = span.start < source->length ? span.start : source->length;
    while (at > 0 && strchr(" \t\r\n", source->text[at - 1]) != NULL)
        at--;
    span.start = at;
    return span;
}

ow_status ow_yaml_syntax_fault(ow_yaml_reader *reader)
{
    const yaml_parser_t *parser = &reader->parser;
    const ow_source *source = &reader->yaml->source;
    const ow_context *context = reader->context;
    if (parser->error == YAML_MEMORY_ERROR)
        return OW_MEMORY;
    const char *problem = parser->problem == NULL ? "unknown fault" : parser->problem;
    for (size_t i = 0; i < ow_yaml_problem_count; i++) {
        const ow_yaml_problem *row = &ow_yaml_problems[i];
        if (strcmp(row->problem, problem) != 0)
            continue;
        ow_span began = place_of(reader, true), at = place_of(reader, row->where == OW_YAML_AT_CONTEXT);
        ow_source_report(context, OW_ERROR, OW_INPUT, source, seen(source, at), row->expected, row->mend,
                         "%s", row->message);
        if (row->where == OW_YAML_AT_BOTH && began.start != at.start)
            ow_source_report(context, OW_NOTE, OW_INPUT, source, began, NULL, NULL, "it begins here");
        return OW_INPUT;
    }
    return ow_source_report(context, OW_ERROR, OW_INPUT, source, seen(source, place_of(reader, false)), NULL,
                            NULL, "this is no YAML: %s", problem);
}
