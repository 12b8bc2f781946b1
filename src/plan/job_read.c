/* SPDX-License-Identifier: MIT */
/* A job's file: the machines first, since the blocks name their ports. */
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "base/format.h"
#include "base/words.h"
#include "catalog/record.h"
#include "plan/job_fields.h"
#include "plan/job_reading.h"

typedef struct job_storage {
    const ow_context *context;
    ow_arena arena;
    ow_job job;
} job_storage;

#define JOB_BYTES_MAX ((size_t)1024 * 1024)
#define KEYS_MAX 24

void ow_job_note(ow_job_reading *reading, ow_status status)
{
    if (status != OW_OK && (reading->status == OW_OK || reading->status == OW_INPUT))
        reading->status = status;
}

static void fault(ow_job_reading *reading, const ow_yaml *node, const char *expected, const char *mend,
                  const char *format, va_list arguments) __attribute__((format(printf, 5, 0)));

static void fault(ow_job_reading *reading, const ow_yaml *node, const char *expected, const char *mend,
                  const char *format, va_list arguments)
{
    char message[256];
    (void)ow_format(message, sizeof message, format, arguments);
    ow_job_note(reading, ow_source_report(reading->context, OW_ERROR, OW_INPUT, reading->source, node->span,
                                          expected, mend, "%s", message));
}

void ow_job_fault(ow_job_reading *reading, const ow_yaml *node, const char *expected, const char *mend,
                  const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    fault(reading, node, expected, mend, format, arguments);
    va_end(arguments);
}

void ow_job_fault_among(ow_job_reading *reading, const ow_yaml *node, ow_text *expected, const char *format,
                        ...)
{
    va_list arguments;
    va_start(arguments, format);
    if (ow_text_status(expected) == OW_OK)
        fault(reading, node, ow_text_words(expected), NULL, format, arguments);
    else
        ow_job_note(reading, OW_MEMORY);
    va_end(arguments);
    ow_text_done(expected);
}

const char *ow_job_words(ow_job_reading *reading, const ow_yaml *node, const char *expected)
{
    if (node->kind != OW_YAML_SCALAR || node->length == 0) {
        ow_job_fault(reading, node, expected, NULL, "words are wanted here");
        return NULL;
    }
    const char *words = ow_arena_copy(reading->arena, node->words, node->length);
    if (words == NULL)
        ow_job_note(reading, OW_MEMORY);
    return words;
}

void ow_job_block(ow_job_reading *reading, const char *block, const ow_yaml *map, const char *const *others)
{
    const char *known[KEYS_MAX];
    size_t count = 0;
    if (map->kind != OW_YAML_MAP) {
        ow_job_fault(reading, map, "a map, such as {hose: 650 mm}", NULL, "\"%s\" is no map", block);
        return;
    }
    for (; others != NULL && others[count] != NULL && count < KEYS_MAX; count++)
        known[count] = others[count];
    for (size_t index = 0; index < ow_job_field_count; index++) {
        const ow_job_field *field = &ow_job_fields[index];
        if (strcmp(field->block, block) != 0 || count == KEYS_MAX)
            continue;
        known[count++] = field->key;
        const ow_yaml *member = ow_yaml_member(map, field->key);
        ow_said *said = (ow_said *)(void *)((char *)reading->job + field->offset);
        if (member == NULL || ow_yaml_is_null(member))
            continue;
        ow_status status = ow_yaml_quantity(reading->context, reading->source, member, field->dimension,
                                            field->low, field->high, &said->value);
        said->said = status == OW_OK;
        ow_job_note(reading, status);
    }
    ow_job_note(reading, ow_yaml_known_keys(reading->context, reading->source, map, known, count));
}

/* A machine by id, or written in place as in the catalogue. */
static const ow_machine *read_machine(ow_job_reading *reading, const ow_yaml *node, ow_kind kind)
{
    const ow_machine *machine = NULL;
    node = ow_yaml_real(node);
    if (node->kind == OW_YAML_MAP) {
        ow_job_note(reading,
                    ow_machine_read(reading->context, reading->source, node, kind, reading->arena, &machine));
        return machine;
    }
    const char *id = ow_job_words(reading, node, "an id of the catalogue, or a record");
    if (id == NULL)
        return NULL;
    machine = ow_catalog_machine(reading->catalog, id);
    if (machine != NULL && machine->kind == kind)
        return machine;
    const char *nearest = ow_catalog_nearest_id(reading->catalog, id);
    char mend[128];
    snprintf(mend, sizeof mend, "did you mean %s?", nearest != NULL ? nearest : "");
    if (machine != NULL)
        ow_job_fault(reading, node, NULL, NULL, "\"%s\" is no %s", id, ow_kind_word(kind));
    else
        ow_job_fault(reading, node, "an id of the catalogue, or a record", nearest != NULL ? mend : NULL,
                     "no %s \"%s\" is in the catalogue", ow_kind_word(kind), id);
    return NULL;
}

static size_t count_ports(const ow_machine *machine, ow_circuit circuit)
{
    size_t count = 0;
    for (size_t index = 0; index < machine->port_count; index++)
        count += machine->ports[index].circuit == circuit;
    return count;
}

/* What no plan can do without: a take-off at the engine, an inlet at each turbo. */
static void need_port(ow_job_reading *reading, const ow_yaml *node, const ow_machine *machine,
                      ow_circuit circuit, const char *what)
{
    if (machine != NULL && count_ports(machine, circuit) == 0)
        ow_job_fault(reading, node, "a port of that circuit in its record", NULL,
                     "%s has no %s (a port of the %s)", machine->id, what, ow_circuit_word(circuit));
}

/* A second turbo of one record is a machine of its own: "snipe-22#2". */
static const ow_machine *tell_apart(ow_job_reading *reading, const ow_machine *turbo)
{
    const ow_job *job = reading->job;
    char id[128];
    size_t same = 1;
    for (size_t index = 0; index < job->turbo_count; index++) {
        const char *other = job->turbos[index]->id;
        size_t length = strcspn(other, "#");
        same += strlen(turbo->id) == length && strncmp(other, turbo->id, length) == 0;
    }
    if (same == 1)
        return turbo;
    ow_machine *copy = ow_arena_get_array(reading->arena, 1, sizeof *copy);
    int length = snprintf(id, sizeof id, "%.100s#%zu", turbo->id, same);
    const char *own = length > 0 ? ow_arena_copy(reading->arena, id, (size_t)length) : NULL;
    ow_port *ports = ow_arena_get_array(reading->arena, turbo->port_count, sizeof *ports);
    if (copy == NULL || own == NULL || ports == NULL) {
        ow_job_note(reading, OW_MEMORY);
        return turbo;
    }
    *copy = *turbo;
    copy->id = own;
    memcpy(ports, turbo->ports, turbo->port_count * sizeof *ports);
    copy->ports = ports; /* ports are told apart by where they lie */
    return copy;
}

static void add_turbo(ow_job_reading *reading, const ow_yaml *node)
{
    ow_job *job = reading->job;
    const ow_machine *turbo = read_machine(reading, node, OW_TURBO);
    if (turbo == NULL)
        return;
    need_port(reading, ow_yaml_real(node), turbo, OW_FEED, "oil inlet");
    job->turbos[job->turbo_count] = tell_apart(reading, turbo);
    job->turbo_count++;
}

static void read_turbos(ow_job_reading *reading, const ow_yaml *node)
{
    if (node->kind != OW_YAML_LIST) {
        add_turbo(reading, node);
        return;
    }
    for (const ow_yaml *item = node->first; item != NULL; item = item->next) {
        if (reading->job->turbo_count == OW_JOB_TURBOS) {
            ow_job_fault(reading, ow_yaml_real(item), "up to three turbos", NULL, "too many turbos");
            return;
        }
        add_turbo(reading, item);
    }
}

/* A switch or sender of the catalogue, or a whole end. */
static void add_keep(ow_job_reading *reading, const ow_yaml *node)
{
    ow_job *job = reading->job;
    ow_end end;
    ow_end_fault fault;
    const char *words = ow_job_words(reading, node, "a switch's id or an END");
    if (words == NULL)
        return;
    const ow_part *part = ow_catalog_part(reading->catalog, words);
    if (part != NULL && ow_kind_is_part(part->kind)) {
        ow_job_fault(reading, node, "a switch's or sender's id, or an END", NULL,
                     "\"%s\" is a part to buy, not something to keep", words);
    } else if (part == NULL && ow_end_read(words, &end, &fault) != OW_OK) {
        const char *nearest = ow_catalog_nearest_id(reading->catalog, words);
        char mend[160];
        snprintf(mend, sizeof mend, "did you mean %s?", nearest != NULL ? nearest : "");
        ow_job_fault(reading, node, "a switch's or sender's id, or an END such as 1/8-27 NPT male",
                     nearest != NULL ? mend : NULL, "no switch, sender or end \"%s\" is known", words);
    } else if (part == NULL && !ow_end_is_whole(&end)) {
        ow_job_fault(reading, node, "an END whose pitch and seat are said", NULL,
                     "the pitch or the seat of \"%s\" is not said", words);
    } else {
        job->keep[job->keep_count++] = words;
    }
}

static void read_keep(ow_job_reading *reading, const ow_yaml *node)
{
    if (node->kind == OW_YAML_SCALAR) {
        add_keep(reading, node);
        return;
    }
    if (node->kind != OW_YAML_LIST) {
        ow_job_fault(reading, node, "a list of switches' ids or ENDs", NULL, "this keeps nothing");
        return;
    }
    for (const ow_yaml *item = node->first; item != NULL; item = item->next) {
        if (reading->job->keep_count == OW_JOB_KEEPS) {
            ow_job_fault(reading, ow_yaml_real(item), "up to five kept ports", NULL, "too many kept ports");
            return;
        }
        add_keep(reading, ow_yaml_real(item));
    }
}

/* The search serves three inlets, and six ports with what is kept. */
static void check_counts(ow_job_reading *reading, const ow_yaml *turbo)
{
    const ow_job *job = reading->job;
    size_t inlets = 0;
    for (size_t index = 0; index < job->turbo_count; index++)
        inlets += job->feed.to != NULL ? 1 : count_ports(job->turbos[index], OW_FEED);
    if (inlets > OW_TO_MAX || inlets + job->keep_count > OW_PORTS_MAX)
        ow_job_fault(reading, turbo, "up to three inlets, and six ports with what is kept", NULL,
                     "one feed cannot serve %zu inlets and %zu kept ports", inlets, job->keep_count);
}

static void read_prefer(ow_job_reading *reading, const ow_yaml *map)
{
    static const char *const known[] = {"stock"};
    if (map->kind != OW_YAML_MAP) {
        ow_job_fault(reading, map, "a map such as {stock: stock.yaml}", NULL, "\"prefer\" is no map");
        return;
    }
    ow_job_note(reading, ow_yaml_known_keys(reading->context, reading->source, map, known, 1));
    const ow_yaml *stock = ow_yaml_member(map, "stock");
    if (stock != NULL)
        reading->job->stock = ow_job_words(reading, stock, "the path of a stock page");
}

static void read_blocks(ow_job_reading *reading, const ow_yaml *map)
{
    static const struct {
        const char *key;
        void (*read)(ow_job_reading *reading, const ow_yaml *node);
    } blocks[] = {
        {"keep", read_keep},        {"oil", ow_job_read_oil},     {"states", ow_job_read_states},
        {"feed", ow_job_read_feed}, {"drain", ow_job_read_drain}, {"coolant", ow_job_read_coolant},
        {"prefer", read_prefer},
    };
    for (size_t index = 0; index < sizeof blocks / sizeof blocks[0]; index++) {
        const ow_yaml *node = ow_yaml_member(map, blocks[index].key);
        if (node != NULL && !ow_yaml_is_null(node))
            blocks[index].read(reading, node);
    }
    const ow_yaml *limits = ow_yaml_member(map, "limits");
    if (limits != NULL)
        ow_job_block(reading, "limits", limits, NULL);
}

static void read_document(ow_job_reading *reading, const ow_yaml *map)
{
    size_t count = 0;
    if (map->kind != OW_YAML_MAP) {
        ow_job_fault(reading, map, "a map that begins with job:", NULL, "this is no job");
        return;
    }
    while (ow_job_keys[count] != NULL)
        count++;
    ow_job_note(reading, ow_yaml_known_keys(reading->context, reading->source, map, ow_job_keys, count));
    const ow_yaml *title = ow_yaml_need_such(reading->context, reading->source, map, "job",
                                             "job: tractor pull, plover-41 on a brockle-4");
    const ow_yaml *engine =
        ow_yaml_need_such(reading->context, reading->source, map, "engine", "engine: brockle-4");
    const ow_yaml *turbo =
        ow_yaml_need_such(reading->context, reading->source, map, "turbo", "turbo: plover-41");
    if (title == NULL || engine == NULL || turbo == NULL)
        ow_job_note(reading, OW_INPUT);
    if (title != NULL)
        reading->job->title = ow_job_words(reading, title, "what the job is called");
    if (engine != NULL)
        reading->job->engine = read_machine(reading, engine, OW_ENGINE);
    need_port(reading, engine, reading->job->engine, OW_FEED, "oil take-off");
    if (turbo != NULL)
        read_turbos(reading, turbo);
    if (turbo != NULL && reading->job->turbo_count == 0 && reading->status == OW_OK)
        ow_job_fault(reading, turbo, "a turbo's id, or a list of up to three", NULL, "no turbo is named");
    read_blocks(reading, map);
    if (turbo != NULL)
        check_counts(reading, turbo);
}

static void refuse_documents(ow_job_reading *reading, const ow_yaml_text *yaml)
{
    if (yaml->document_count == 0)
        ow_job_note(reading, ow_report(reading->context, OW_ERROR, OW_INPUT, reading->source->name,
                                       "a map that begins with job:", NULL, "there is nothing in it"));
    else
        ow_job_fault(reading, ow_yaml_real(yaml->documents[1]), "one job in a text",
                     "write each job into a file of its own; --- begins a new document",
                     "a job is one document; this text has %zu", yaml->document_count);
}

ow_status ow_job_read(const ow_context *context, const ow_catalog *catalog, const char *file,
                      const char *text, size_t length, ow_job **job)
{
    ow_yaml_text yaml;
    if (length > JOB_BYTES_MAX)
        return ow_report(context, OW_ERROR, OW_LIMIT, file, "a job of at most 1 MiB", NULL,
                         "the job is too large");
    ow_status status = ow_yaml_read(context, file, text, length, &yaml);
    if (status != OW_OK)
        return status;
    job_storage *storage = ow_new_array(context, 1, sizeof *storage);
    if (storage == NULL) {
        ow_yaml_done(&yaml);
        return OW_MEMORY;
    }
    *storage = (job_storage){.context = context, .arena = ow_arena_new(context)};
    storage->job.storage = storage;
    ow_job_reading reading = {context, catalog, &yaml.source, &storage->arena, &storage->job, OW_OK};
    if (yaml.document_count > 0)
        ow_job_note(&reading, ow_yaml_is_document(context, &yaml.source, yaml.documents[0], OW_DOCUMENT_JOB));
    if (reading.status == OW_OK && yaml.document_count == 1)
        read_document(&reading, yaml.documents[0]);
    else if (reading.status == OW_OK)
        refuse_documents(&reading, &yaml);
    ow_yaml_done(&yaml);
    if (reading.status != OW_OK) {
        ow_job_free(&storage->job);
        return reading.status;
    }
    *job = &storage->job;
    return OW_OK;
}

void ow_job_free(ow_job *job)
{
    if (job == NULL)
        return;
    job_storage *storage = job->storage;
    ow_arena_done(&storage->arena);
    ow_release(storage->context, storage);
}

bool ow_job_is(const char *text, size_t length)
{
    for (size_t at = 0; at + 4 <= length; at++) {
        if ((at == 0 || text[at - 1] == '\n') && strncmp(text + at, "job:", 4) == 0)
            return true;
    }
    return false;
}
