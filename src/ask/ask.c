/* SPDX-License-Identifier: MIT */
/* Words to asks: ports, circuit, the source's alternatives, readings, defaults, limits. */
#include "oilway/ask.h"

#include <string.h>

#include "ask/ask_internal.h"
#include "ask/unit.h"
#include "base/words.h"

#define PORTS (OW_PORTS_MAX + 1)

/* What is being put together. */
typedef struct ask_draft {
    ow_asking *asking;
    const ow_ask_words *words;
    ow_asked_port ports[PORTS];
    size_t port_count;
    ow_circuit circuit;
    ow_bearing bearing;
    const ow_end *readings[PORTS];
    size_t reading_count[PORTS];
} ask_draft;

typedef struct ask_storage {
    ow_asking asking;
} ask_storage;

static ow_status find_ports(ask_draft *draft)
{
    const ow_ask_words *words = draft->words;
    ow_status status = ow_asked_port_find(draft->asking, "--from", words->from, OW_ROLE_SOURCE,
                                          &draft->ports[draft->port_count++]);
    for (size_t index = 0; index < words->to_count && status == OW_OK; index++)
        status = ow_asked_port_find(draft->asking, "--to", words->to[index], OW_ROLE_TO,
                                    &draft->ports[draft->port_count++]);
    for (size_t index = 0; index < words->keep_count && status == OW_OK; index++)
        status = ow_asked_port_find(draft->asking, "--keep", words->keep[index], OW_ROLE_KEEP,
                                    &draft->ports[draft->port_count++]);
    return status;
}

/* The words of all options, so that their faults are told together with those of the ports. */
static void read_options(ask_draft *draft)
{
    static const char *const circuits[] = {"feed", "drain", "coolant"};
    static const char *const bearings[] = {"journal", "ball"};
    const ow_ask_words *words = draft->words;
    ow_limits limits = OW_LIMITS_INIT;
    double length_m = 0.0;
    size_t circuit = ow_asking_choice(draft->asking, "--circuit", words->circuit, circuits, 3, 3);
    size_t bearing = ow_asking_choice(draft->asking, "--bearing", words->bearing, bearings, 2, 2);
    if (circuit < 3)
        draft->circuit = (ow_circuit)(circuit + OW_FEED);
    if (bearing < 2)
        draft->bearing = (ow_bearing)(bearing + OW_BEARING_JOURNAL);
    ow_limits_read(draft->asking, words, &limits);
    ow_hose_length_read(draft->asking, words->hose, &length_m);
}

/* Where it is not said, the circuit is that of the first port named, a machine alone being asked for its oil.
 */
static void find_circuit(ask_draft *draft)
{
    if (draft->circuit != OW_CIRCUIT_NONE)
        return;
    for (size_t index = 0; index < draft->port_count; index++) {
        const ow_given *given = &draft->ports[index].given;
        if (given->port != NULL && draft->circuit == OW_CIRCUIT_NONE)
            draft->circuit = given->port->circuit;
    }
    for (size_t index = 0; index < draft->port_count; index++) {
        if (draft->ports[index].given.machine != NULL && draft->circuit == OW_CIRCUIT_NONE)
            draft->circuit = OW_FEED;
    }
}

/* A port of one circuit is not joined to a port of another. */
static void check_circuits(ask_draft *draft)
{
    for (size_t index = 0; index < draft->port_count; index++) {
        const ow_given *given = &draft->ports[index].given;
        if (given->port == NULL || given->port->circuit == OW_CIRCUIT_NONE ||
            given->port->circuit == draft->circuit)
            continue;
        ow_text message = ow_text_new(draft->asking->context);
        ow_text_format(&message, "this port belongs to the %s, the ask is for the %s",
                       ow_circuit_word(given->port->circuit), ow_circuit_word(draft->circuit));
        ow_asking_fault(draft->asking, draft->ports[index].option, given->name,
                        (ow_span){0, strlen(given->name)}, "ports of one circuit", NULL,
                        ow_asking_keep(draft->asking, &message));
    }
}

/* A machine has one port of a name, and one thing can be screwed into it. */
static void check_twice(ask_draft *draft)
{
    for (size_t index = 1; index < draft->port_count; index++) {
        const ow_asked_port *asked = &draft->ports[index];
        for (size_t before = 0; before < index; before++) {
            const ow_given *other = &draft->ports[before].given;
            if (asked->given.port == NULL || asked->given.port != other->port ||
                asked->given.machine != other->machine)
                continue;
            ow_asking_fault(draft->asking, asked->option, asked->words, (ow_span){0, strlen(asked->words)},
                            "each port of a machine once", NULL, "this port is named twice");
            break;
        }
    }
}

/* Parts not to be used must be there: a misspelt id would leave the part in. */
static void check_without(ask_draft *draft)
{
    for (size_t index = 0; index < draft->words->without_count; index++) {
        const char *id = draft->words->without[index];
        const ow_part *part = ow_catalog_part(draft->asking->catalog, id);
        if (part != NULL && ow_kind_is_part(part->kind))
            continue;
        const char *nearest = part == NULL ? ow_catalog_nearest_id(draft->asking->catalog, id) : NULL;
        ow_asking_fault(draft->asking, "--without", id, (ow_span){0, strlen(id)},
                        "the id of a part in the catalogue", ow_asking_did_you_mean(draft->asking, nearest),
                        part == NULL ? "no part of that id is in the catalogue"
                                     : "this is a given port, not a part to buy");
    }
}

static size_t ports_of_circuit(const ow_machine *machine, ow_circuit circuit)
{
    size_t count = 0;
    for (size_t index = 0; index < machine->port_count; index++)
        count += machine->ports[index].circuit == circuit;
    return count;
}

static ow_status full_name(ow_asking *asking, const ow_machine *machine, const ow_port *port,
                           const char **name)
{
    ow_text text = ow_text_new(asking->context);
    ow_text_format(&text, "%s:%s", machine->id, port->name);
    const char *copy = ow_arena_keep(&asking->arena, &text);
    if (copy == NULL)
        return OW_MEMORY;
    *name = copy;
    return OW_OK;
}

/* A machine alone: as a port to reach it must have just one of the circuit; as a source, one or more. */
static ow_status settle_machine(ask_draft *draft, ow_asked_port *asked)
{
    ow_given *given = &asked->given;
    if (given->machine == NULL || given->port != NULL)
        return OW_OK;
    size_t count = ports_of_circuit(given->machine, draft->circuit);
    if (count == 0 || (count > 1 && given->role != OW_ROLE_SOURCE)) {
        ow_text expected = ow_text_new(draft->asking->context);
        ow_text_add(&expected, "one port, named:");
        for (size_t index = 0; index < given->machine->port_count; index++) {
            if (count == 0 || given->machine->ports[index].circuit == draft->circuit)
                ow_text_format(&expected, " %s:%s", given->machine->id, given->machine->ports[index].name);
        }
        ow_asking_fault(draft->asking, asked->option, given->name, (ow_span){0, strlen(given->name)},
                        ow_asking_keep(draft->asking, &expected), NULL,
                        count == 0 ? "this machine has no port of the circuit asked for"
                                   : "this machine has several ports of the circuit asked for");
        return OW_OK;
    }
    if (count > 1)
        return OW_OK;
    for (size_t index = 0; index < given->machine->port_count; index++) {
        if (given->machine->ports[index].circuit == draft->circuit)
            given->port = &given->machine->ports[index];
    }
    given->end = given->port->end;
    return full_name(draft->asking, given->machine, given->port, &given->name);
}

static ow_status find_readings(ask_draft *draft)
{
    ow_status status = OW_OK;
    size_t product = 1;
    for (size_t index = 0; index < draft->port_count && status == OW_OK; index++) {
        ow_asked_port *asked = &draft->ports[index];
        if (asked->given.machine != NULL && asked->given.port == NULL) {
            draft->reading_count[index] = ports_of_circuit(asked->given.machine, draft->circuit);
            continue;
        }
        status = ow_readings_find(draft->asking, &asked->given.end, &draft->readings[index],
                                  &draft->reading_count[index]);
        if (status == OW_OK && draft->reading_count[index] == 0)
            ow_asking_fault(draft->asking, asked->option, asked->words, (ow_span){0, strlen(asked->words)},
                            "an end whose pitch and seat are said", NULL,
                            "no pitch or seat in use in this catalogue fits this end");
        product *= draft->reading_count[index];
        if (status == OW_OK && product > OW_READINGS_MAX) {
            ow_asking_fault(draft->asking, asked->option, asked->words, (ow_span){0, strlen(asked->words)},
                            "the pitch and seat of most ends", NULL,
                            "too much is left open: more than 64 readings");
            status = OW_LIMIT;
        }
    }
    return status;
}

/* The machine's n-th port of the circuit. */
static const ow_port *nth_port(const ow_machine *machine, ow_circuit circuit, size_t nth)
{
    for (size_t index = 0; index < machine->port_count; index++) {
        if (machine->ports[index].circuit == circuit && nth-- == 0)
            return &machine->ports[index];
    }
    return NULL;
}

/* Makes an engine alone its n-th port of the circuit. */
static ow_status settle_source(ask_draft *draft, size_t nth, ow_given *given)
{
    const ow_port *port = nth_port(given->machine, draft->circuit, nth);
    if (port == NULL)
        return OW_FAULT;
    given->port = port;
    given->end = port->end;
    return full_name(draft->asking, given->machine, port, &given->name);
}

/* Names must differ: the second of a name becomes "name#2". */
static ow_status number_names(ow_asking *asking, ow_given *givens, size_t count)
{
    for (size_t index = count; index-- > 0;) {
        size_t same = 1;
        for (size_t before = 0; before < index; before++)
            same += strcmp(givens[before].name, givens[index].name) == 0;
        if (same == 1)
            continue;
        ow_text text = ow_text_new(asking->context);
        ow_text_format(&text, "%s#%zu", givens[index].name, same);
        const char *copy = ow_arena_keep(&asking->arena, &text);
        if (copy == NULL)
            return OW_MEMORY;
        givens[index].name = copy;
    }
    return OW_OK;
}

/* Settles the givens of one combination and the words of its reading. */
static ow_status settle_item(ask_draft *draft, const size_t *choice, ow_ask_item *item)
{
    ow_asking *asking = draft->asking;
    ow_given *givens = ow_arena_get_array(&asking->arena, draft->port_count, sizeof *givens);
    if (givens == NULL)
        return OW_MEMORY;
    ow_text reading = ow_text_new(asking->context);
    bool open = false; /* something was not said, and is read */
    ow_status status = OW_OK;
    for (size_t index = 0; index < draft->port_count && status == OW_OK; index++) {
        givens[index] = draft->ports[index].given;
        char words[OW_END_TEXT_SIZE];
        if (draft->readings[index] == NULL) {
            status = settle_source(draft, choice[index], &givens[index]);
            continue;
        }
        bool whole = ow_end_is_whole(&givens[index].end);
        open = open || !whole;
        if (!whole)
            ow_text_format(&reading, "%s%s", reading.length > 0 ? " and " : "",
                           ow_end_name(&draft->readings[index][choice[index]], words));
        givens[index].end = draft->readings[index][choice[index]];
    }
    if (status == OW_OK)
        status = number_names(asking, givens, draft->port_count);
    if (status == OW_OK && open) {
        item->reading = ow_arena_keep(&asking->arena, &reading);
        status = item->reading == NULL ? OW_MEMORY : OW_OK;
    }
    ow_text_done(&reading);
    item->ask.givens = givens;
    item->ask.given_count = draft->port_count;
    return status;
}

/* What the layout will be called: "feed from brockle-4:gallery to plover-41:oil-in". */
static ow_status settle_title(ask_draft *draft, ow_ask_item *item)
{
    ow_text text = ow_text_new(draft->asking->context);
    if (draft->circuit != OW_CIRCUIT_NONE)
        ow_text_format(&text, "%s ", ow_circuit_word(draft->circuit));
    for (size_t index = 0; index < item->ask.given_count; index++) {
        const ow_given *given = &item->ask.givens[index];
        char words[OW_END_TEXT_SIZE];
        bool named = given->machine != NULL || given->fixture != NULL;
        ow_text_add(&text, index == 0 ? "from " : given->role == OW_ROLE_KEEP ? ", keeping " : " to ");
        ow_text_add(&text, named ? given->name : ow_end_name(&given->end, words));
    }
    item->ask.title = ow_arena_keep(&draft->asking->arena, &text);
    return item->ask.title == NULL ? OW_MEMORY : OW_OK;
}

static ow_status settle_limits(ask_draft *draft, ow_ask_item *item)
{
    const ow_ask_words *words = draft->words;
    ow_ask *ask = &item->ask;
    ow_limits limits = OW_LIMITS_INIT;
    ask->circuit = draft->circuit;
    ask->without = words->without;
    ask->without_count = words->without_count;
    ask->hose_length_m = OW_NOT_SAID;
    ow_hose_length_read(draft->asking, words->hose, &ask->hose_length_m);
    ow_status status =
        ow_unit_lay_defaults(ask, draft->bearing, words->rating != NULL, &limits, &item->findings);
    if (status == OW_OK)
        ow_limits_read(draft->asking, words, &limits);
    ask->limits = limits;
    return status;
}

static ow_status settle_items(ask_draft *draft, ow_ask_set *set)
{
    size_t count = 1;
    for (size_t index = 0; index < draft->port_count; index++)
        count *= draft->reading_count[index];
    set->items = ow_arena_get_array(&draft->asking->arena, count, sizeof *set->items);
    if (set->items == NULL)
        return OW_MEMORY;
    size_t choice[PORTS] = {0};
    for (size_t item = 0; item < count; item++) {
        /* The source's alternatives run fastest, so that items of one reading stand together. */
        size_t rest = item;
        for (size_t index = 0; index < draft->port_count; index++) {
            choice[index] = rest % draft->reading_count[index];
            rest /= draft->reading_count[index];
        }
        set->items[item].findings = ow_findings_new(draft->asking->context);
        set->count = item + 1;
        ow_status status = settle_item(draft, choice, &set->items[item]);
        if (status == OW_OK)
            status = settle_limits(draft, &set->items[item]);
        if (status == OW_OK)
            status = settle_title(draft, &set->items[item]);
        if (status != OW_OK || draft->asking->wrong)
            return status;
    }
    return OW_OK;
}

static ow_status settle_decide(ask_draft *draft, ow_ask_set *set)
{
    for (size_t index = 0; index < draft->port_count; index++) {
        if (draft->readings[index] == NULL || draft->reading_count[index] < 2)
            continue;
        set->decide = ow_readings_decide(draft->asking, draft->readings[index], draft->reading_count[index]);
        return set->decide == NULL ? OW_MEMORY : OW_OK;
    }
    return OW_OK;
}

static ow_status check_words(const ow_context *context, const ow_ask_words *words)
{
    if (words->from == NULL || words->to_count + words->keep_count == 0)
        return ow_report(context, OW_ERROR, OW_INPUT, NULL, "--from P and at least one --to P (or --keep P)",
                         NULL, "what is to be joined is not said");
    if (words->to_count > OW_TO_MAX || words->to_count + words->keep_count > OW_PORTS_MAX)
        return ow_report(context, OW_ERROR, OW_INPUT, NULL, "up to three --to, six ports in all", NULL,
                         "too many ports");
    return OW_OK;
}

static ow_status read_draft(ask_draft *draft, ow_ask_set *set)
{
    ow_status status = find_ports(draft);
    check_without(draft);
    read_options(draft);
    if (status != OW_OK || draft->asking->wrong)
        return status;
    find_circuit(draft);
    check_circuits(draft);
    for (size_t index = 0; index < draft->port_count && status == OW_OK && !draft->asking->wrong; index++)
        status = settle_machine(draft, &draft->ports[index]);
    if (status == OW_OK && !draft->asking->wrong)
        check_twice(draft);
    if (status == OW_OK && !draft->asking->wrong)
        status = find_readings(draft);
    if (status == OW_OK && !draft->asking->wrong)
        status = settle_items(draft, set);
    if (status == OW_OK && !draft->asking->wrong)
        status = settle_decide(draft, set);
    return status;
}

ow_status ow_ask_read(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                      const ow_ask_words *words, ow_ask_set *set)
{
    ow_status status = check_words(context, words);
    if (status != OW_OK)
        return status;
    ask_storage *storage = ow_new_array(context, 1, sizeof *storage);
    if (storage == NULL)
        return OW_MEMORY;
    storage->asking = (ow_asking){context, catalog, words, net, ow_arena_new(context), false, false};
    ow_ask_set made = {context, 0, NULL, NULL, storage};
    ask_draft draft = {.asking = &storage->asking, .words = words};
    status = read_draft(&draft, &made);
    if (status == OW_OK && storage->asking.wrong)
        status = storage->asking.out_of_memory ? OW_MEMORY : OW_INPUT;
    if (status != OW_OK)
        ow_ask_set_done(&made);
    else
        *set = made;
    return status;
}

void ow_ask_set_done(ow_ask_set *set)
{
    ask_storage *storage = set->storage;
    if (storage == NULL)
        return;
    for (size_t index = 0; index < set->count; index++)
        ow_findings_done(&set->items[index].findings);
    ow_arena_done(&storage->asking.arena);
    ow_release(set->context, storage);
    *set = (ow_ask_set){set->context, 0, NULL, NULL, NULL};
}
