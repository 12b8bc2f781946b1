/* SPDX-License-Identifier: MIT */
/* A port from its words: machine:port, an engine alone, a switch's id, or an END. */
#include <string.h>

#include "ask/ask_internal.h"
#include "base/words.h"

void ow_asking_fault(ow_asking *asking, const char *option, const char *words, ow_span span,
                     const char *expected, const char *mend, const char *message)
{
    ow_source source = {option, words, strlen(words)};
    asking->wrong = true;
    if (asking->out_of_memory) /* words are lacking, and that is what the ask fails by */
        return;
    ow_source_report(asking->context, OW_ERROR, OW_INPUT, &source, span, expected, mend, "%s", message);
}

const char *ow_asking_keep(ow_asking *asking, ow_text *text)
{
    const char *kept = ow_arena_keep(&asking->arena, text);
    asking->out_of_memory = asking->out_of_memory || kept == NULL;
    return kept;
}

const char *ow_asking_did_you_mean(ow_asking *asking, const char *nearest)
{
    if (nearest == NULL)
        return NULL;
    ow_text text = ow_text_new(asking->context);
    ow_text_format(&text, "did you mean %s?", nearest);
    return ow_asking_keep(asking, &text);
}

/* The machine's ports in words, for "expected". */
static const char *ports_in_words(ow_asking *asking, const ow_machine *machine)
{
    ow_text text = ow_text_new(asking->context);
    ow_text_format(&text, "one of the ports of %s: ", machine->id);
    for (size_t index = 0; index < machine->port_count; index++)
        ow_text_format(&text, "%s%s", index > 0 ? ", " : "", machine->ports[index].name);
    return ow_asking_keep(asking, &text);
}

/* A machine of the asker's own, else one of the catalogue. */
static const ow_machine *find_machine(const ow_asking *asking, const char *id)
{
    for (size_t index = 0; index < asking->words->machine_count; index++) {
        if (strcmp(asking->words->machines[index]->id, id) == 0)
            return asking->words->machines[index];
    }
    return ow_catalog_machine(asking->catalog, id);
}

static ow_status find_machine_port(ow_asking *asking, const char *words, size_t colon, ow_asked_port *port)
{
    char *id = ow_arena_copy(&asking->arena, words, colon);
    if (id == NULL)
        return OW_MEMORY;
    const ow_machine *machine = find_machine(asking, id);
    if (machine == NULL) {
        ow_asking_fault(asking, port->option, words, (ow_span){0, colon},
                        "the id of an engine, turbo or heater",
                        ow_asking_did_you_mean(asking, ow_catalog_nearest_id(asking->catalog, id)),
                        "no machine of that id is in the catalogue");
        return OW_OK;
    }
    const char *name = words + colon + 1;
    const ow_port *found = ow_machine_port(machine, name);
    if (found == NULL) {
        const char *nearest = NULL;
        size_t least = 0;
        for (size_t index = 0; index < machine->port_count; index++) {
            const char *known = machine->ports[index].name;
            size_t distance = 0;
            if (ow_words_near(name, strlen(name), known, strlen(known), &distance) &&
                (nearest == NULL || distance < least)) {
                nearest = known;
                least = distance;
            }
        }
        ow_asking_fault(asking, port->option, words, (ow_span){colon + 1, strlen(name)},
                        ports_in_words(asking, machine), ow_asking_did_you_mean(asking, nearest),
                        "the machine has no port of that name");
        return OW_OK;
    }
    port->given.machine = machine;
    port->given.port = found;
    port->given.end = found->end;
    port->given.name = words;
    return OW_OK;
}

/* Words that look like an id: no blank, not a number or sign first. */
static bool looks_like_id(const char *words)
{
    return words[0] != '\0' && strchr(words, ' ') == NULL && strchr(words, '/') == NULL &&
           (words[0] < '0' || words[0] > '9') && words[0] != '-';
}

static void find_end(ow_asking *asking, const char *words, ow_asked_port *port)
{
    static const char *const bare_names[] = {"from", "to", "keep"};
    ow_end_fault fault;
    if (ow_end_read(words, &port->given.end, &fault) == OW_OK) {
        port->given.name = bare_names[port->given.role];
        return;
    }
    const char *nearest = looks_like_id(words) ? ow_catalog_nearest_id(asking->catalog, words) : NULL;
    const char *mend = nearest != NULL         ? ow_asking_did_you_mean(asking, nearest)
                       : fault.mend[0] != '\0' ? fault.mend
                                               : NULL;
    if (looks_like_id(words))
        ow_asking_fault(asking, port->option, words, (ow_span){0, strlen(words)},
                        "engine:port, turbo:port, a switch's id, or an end such as 1/8-27 NPT female", mend,
                        "this is neither an id of the catalogue nor an end");
    else
        ow_asking_fault(asking, port->option, words, (ow_span){fault.start, fault.length}, fault.expected,
                        mend, fault.message);
}

ow_status ow_asked_port_find(ow_asking *asking, const char *option, const char *words, ow_role role,
                             ow_asked_port *port)
{
    memset(port, 0, sizeof *port);
    port->option = option;
    port->words = words;
    port->given.role = role;
    const char *colon = strchr(words, ':');
    if (colon != NULL)
        return find_machine_port(asking, words, (size_t)(colon - words), port);
    const ow_machine *machine = find_machine(asking, words);
    if (machine != NULL) {
        port->given.machine = machine;
        port->given.name = words;
        return OW_OK;
    }
    const ow_part *part = ow_catalog_part(asking->catalog, words);
    if (part != NULL && !ow_kind_is_part(part->kind)) {
        port->given.fixture = part;
        port->given.end = part->ends[0];
        port->given.name = part->id;
        return OW_OK;
    }
    if (part != NULL) {
        ow_asking_fault(asking, option, words, (ow_span){0, strlen(words)},
                        "a given port: engine:port, turbo:port, a switch's or sender's id, or an end",
                        "write the end itself in quotes", "this is a part to buy, not a given port");
        return OW_OK;
    }
    find_end(asking, words, port);
    return OW_OK;
}
