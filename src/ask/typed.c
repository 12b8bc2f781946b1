/* SPDX-License-Identifier: MIT */
/* Words read while they are typed. */
#include <string.h>

#include "ask/ask_internal.h"
#include "ask/offering.h"

typedef struct typed_storage {
    const ow_context *context;
    ow_arena arena, asking;
} typed_storage;

/* What is being read, and where its fault goes. */
typedef struct typing {
    ow_typed typed;
    ow_arena *arena;
    bool failed; /* out of memory */
} typing;

const char *ow_meaning_word(ow_meaning meaning)
{
    static const char *const words[] = {NULL, "port", "machine", "fixture", "end"};
    return (unsigned)meaning < sizeof words / sizeof words[0] ? words[meaning] : NULL;
}

static const char *keep(typing *now, const char *words)
{
    if (words == NULL)
        return NULL;
    const char *copy = ow_arena_copy(now->arena, words, strlen(words));
    now->failed = now->failed || copy == NULL;
    return copy;
}

/* For ow_context.report: the first fault is the one that is shown. */
static void take_fault(void *user, const ow_diagnostic *told)
{
    typing *now = user;
    if (now->typed.message != NULL)
        return;
    now->typed.column = told->column;
    now->typed.width = told->mark_width;
    now->typed.message = keep(now, told->message);
    now->typed.expected = keep(now, told->expected);
    now->typed.mend = keep(now, told->mend);
}

static ow_status find_port(ow_asking *asking, const char *words, ow_wanted wanted, ow_typed *typed)
{
    static const ow_role roles[] = {OW_ROLE_SOURCE, OW_ROLE_TO, OW_ROLE_KEEP};
    ow_asked_port port;
    ow_status status = ow_asked_port_find(asking, "words", words, roles[wanted], &port);
    if (status != OW_OK || asking->wrong)
        return status;
    typed->machine = port.given.machine;
    typed->port = port.given.port;
    typed->fixture = port.given.fixture;
    typed->has_end = typed->machine == NULL || typed->port != NULL;
    typed->end = port.given.end;
    typed->meaning = typed->port != NULL      ? OW_MEANS_PORT
                     : typed->machine != NULL ? OW_MEANS_MACHINE
                     : typed->fixture != NULL ? OW_MEANS_FIXTURE
                                              : OW_MEANS_END;
    return OW_OK;
}

static ow_status find_meaning(typing *now, ow_asking *asking, const char *words, ow_wanted wanted)
{
    ow_typed *typed = &now->typed;
    if (words[strspn(words, " \t")] == '\0') {
        typed->message = "nothing is written here yet";
        return OW_OK;
    }
    if (wanted != OW_WANTED_END)
        return find_port(asking, words, wanted, typed);
    if (ow_end_read_told(asking->context, "words", words, &typed->end) == OW_OK) {
        typed->meaning = OW_MEANS_END;
        typed->has_end = true;
    }
    return OW_OK;
}

static ow_status find_readings(ow_asking *asking, ow_typed *typed)
{
    if (!typed->has_end)
        return OW_OK;
    ow_status status = ow_readings_find(asking, &typed->end, &typed->readings, &typed->reading_count);
    if (status != OW_OK || typed->reading_count < 2)
        return status;
    typed->decide = ow_readings_decide(asking, typed->readings, typed->reading_count);
    return typed->decide != NULL ? OW_OK : OW_MEMORY;
}

static const char *say(typing *now, const ow_machine *machine, const ow_port *port, const ow_part *fixture,
                       const ow_end *end)
{
    ow_text text = ow_text_new(now->typed.context);
    if (port != NULL)
        ow_say_port(&text, machine, port);
    else if (machine != NULL)
        ow_say_machine(&text, machine);
    else if (fixture != NULL)
        ow_say_fixture(&text, fixture);
    else if (end != NULL)
        ow_say_end(&text, end);
    now->failed = now->failed || text.failed;
    const char *words = keep(now, ow_text_words(&text));
    ow_text_done(&text);
    return words;
}

static void add_offers(typing *now, const ow_catalog *catalog, const ow_net *net, const char *words,
                       ow_wanted wanted)
{
    ow_offering offering;
    ow_offers_gather(catalog, net, words, wanted, &offering);
    for (size_t index = 0; index < offering.count; index++) {
        const ow_candidate_port *one = &offering.items[index];
        now->typed.offers[index] =
            (ow_offer){keep(now, one->words), say(now, one->machine, one->port, one->fixture, &one->end)};
    }
    now->typed.offer_count = offering.count;
}

ow_status ow_typed_read(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                        const char *words, ow_wanted wanted, ow_typed *typed)
{
    typed_storage *storage = ow_new_array(context, 1, sizeof *storage);
    if (storage == NULL)
        return OW_MEMORY;
    *storage = (typed_storage){context, ow_arena_new(context), ow_arena_new(context)};
    typing now = {.typed = {.context = context, .storage = storage}, .arena = &storage->arena};
    ow_context telling = *context;
    telling.report = take_fault;
    telling.report_user = &now;
    const ow_ask_words none = {0};
    ow_asking asking = {&telling, catalog, &none, net, ow_arena_new(context), false, false};
    ow_status status = find_meaning(&now, &asking, words, wanted);
    if (status == OW_OK)
        status = find_readings(&asking, &now.typed);
    if (status == OW_OK) {
        now.typed.says = say(&now, now.typed.machine, now.typed.port, now.typed.fixture,
                             now.typed.has_end ? &now.typed.end : NULL);
        add_offers(&now, catalog, net, words, wanted);
    }
    /* What the asking put aside lives on with the answer. */
    storage->asking = asking.arena;
    if (status == OW_OK && (now.failed || asking.out_of_memory))
        status = OW_MEMORY;
    if (status == OW_OK)
        *typed = now.typed;
    else
        ow_typed_done(&now.typed);
    return status;
}

void ow_typed_done(ow_typed *typed)
{
    typed_storage *storage = typed->storage;
    const ow_context *context = storage->context;
    ow_arena_done(&storage->asking);
    ow_arena_done(&storage->arena);
    ow_release(context, storage);
    typed->storage = NULL;
}
