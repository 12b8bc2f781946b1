/* SPDX-License-Identifier: MIT */
/* Keys given twice. YAML says they are a fault; libyaml leaves the finding to its caller. */
#include <string.h>

#include "yaml/reader.h"

/* Up to here comparing all pairs is quicker than a table. */
#define PAIRS_MAX 12

static ow_status report_pair(ow_yaml_reader *reader, const ow_yaml *first, const ow_yaml *again)
{
    const ow_source *source = &reader->yaml->source;
    size_t line, column;
    ow_source_position(source, first->key_span.start, &line, &column);
    ow_source_report(reader->context, OW_ERROR, OW_INPUT, source, again->key_span, NULL,
                     "keep one of the two", "the key \"%.60s\" is given twice; first in line %zu", again->key,
                     line);
    ow_source_report(reader->context, OW_NOTE, OW_INPUT, source, first->key_span, NULL, NULL,
                     "\"%.60s\" is given here first", first->key);
    return ow_yaml_counted(reader);
}

static ow_status compare_pairs(ow_yaml_reader *reader, const ow_yaml *map)
{
    for (const ow_yaml *again = map->first; again != NULL; again = again->next) {
        for (const ow_yaml *first = map->first; first != again; first = first->next) {
            if (strcmp(first->key, again->key) != 0)
                continue;
            ow_status status = report_pair(reader, first, again);
            if (status != OW_OK)
                return status;
            break;
        }
    }
    return OW_OK;
}

ow_status ow_yaml_duplicates(ow_yaml_reader *reader, const ow_yaml *map)
{
    if (map->count <= PAIRS_MAX)
        return compare_pairs(reader, map);
    ow_status status = OW_OK;
    ow_map seen = ow_map_new(reader->context);
    const ow_yaml **members = ow_new_array(reader->context, map->count, sizeof *members);
    if (members == NULL)
        return OW_MEMORY;
    size_t count = 0;
    for (const ow_yaml *member = map->first; member != NULL && status == OW_OK; member = member->next) {
        size_t before = ow_map_get(&seen, member->key);
        if (before == OW_MAP_NONE)
            status = ow_map_put(&seen, member->key, count);
        else
            status = report_pair(reader, members[before], member);
        members[count++] = member;
    }
    ow_release(reader->context, (void *)members);
    ow_map_done(&seen);
    return status;
}
