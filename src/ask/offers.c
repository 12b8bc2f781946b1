/* SPDX-License-Identifier: MIT */
/* What somebody may be about to type: ports, machines, switches and ends, the nearest first. */
#include <stdio.h>
#include <string.h>

#include "ask/offering.h"
#include "oilway/mates.h"

#define TITLE_SIZE 256

static char lower(char letter)
{
    return letter >= 'A' && letter <= 'Z' ? (char)(letter - 'A' + 'a') : letter;
}

static bool begins(const char *words, const char *start, size_t length)
{
    for (size_t index = 0; index < length; index++) {
        if (lower(words[index]) != lower(start[index]))
            return false;
    }
    return true;
}

/* Whether a word begins here: at the start, or behind what is no letter, digit or fraction. */
static bool is_word_start(const char *words, size_t at)
{
    return at == 0 || strchr(" :-(,", words[at - 1]) != NULL;
}

/* Whether each word of `typed` begins a word of `words`, one behind the other. */
static bool holds_in_order(const char *typed, const char *words)
{
    size_t at = 0, length = strlen(words);
    for (const char *word = typed; *word != '\0';) {
        size_t size = strcspn(word, " \t");
        while (at + size <= length && !(is_word_start(words, at) && begins(words + at, word, size)))
            at++;
        if (at + size > length)
            return false;
        at += size > 0 ? size : 1;
        word += size;
        word += strspn(word, " \t");
    }
    return true;
}

int ow_offer_score(const char *typed, const char *words, const char *title)
{
    char both[TITLE_SIZE];
    typed += strspn(typed, " \t");
    if (strlen(typed) <= strlen(words) && begins(words, typed, strlen(typed)))
        return 0;
    if (holds_in_order(typed, words))
        return 1;
    snprintf(both, sizeof both, "%s %s", words, title);
    return holds_in_order(typed, both) ? 2 : -1;
}

static bool before(const ow_candidate_port *a, const ow_candidate_port *b)
{
    if (a->score != b->score)
        return a->score < b->score;
    if (a->rank != b->rank)
        return a->rank < b->rank;
    return strcmp(a->words, b->words) < 0;
}

/* Puts a candidate in its place among the nearest, unless it is there already. */
static void put(ow_offering *offering, const char *typed, const char *title, ow_candidate_port *candidate)
{
    candidate->score = ow_offer_score(typed, candidate->words, title);
    if (candidate->score < 0 || strcmp(candidate->words, typed) == 0)
        return;
    size_t place = offering->count;
    for (size_t index = 0; index < offering->count; index++) {
        if (strcmp(offering->items[index].words, candidate->words) == 0)
            return;
    }
    while (place > 0 && before(candidate, &offering->items[place - 1]))
        place--;
    if (place == OW_OFFERS_MAX)
        return;
    if (offering->count < OW_OFFERS_MAX)
        offering->count++;
    memmove(&offering->items[place + 1], &offering->items[place],
            (offering->count - place - 1) * sizeof offering->items[0]);
    offering->items[place] = *candidate;
}

/* Lower is likelier: an engine's ports as a source, a turbo's to be reached; the feed before the others. */
static int rank_of_port(const ow_machine *machine, const ow_port *port, ow_wanted wanted)
{
    ow_kind likely = wanted == OW_WANTED_FROM ? OW_ENGINE : OW_TURBO;
    int circuit = port->circuit == OW_FEED ? 0 : port->circuit == OW_DRAIN ? 1 : 2;
    return (machine->kind == likely ? 0 : 4) + circuit;
}

static void put_machines(ow_offering *offering, const ow_catalog *catalog, const char *typed,
                         ow_wanted wanted)
{
    for (size_t index = 0; index < ow_catalog_machine_count(catalog); index++) {
        const ow_machine *machine = ow_catalog_machine_at(catalog, index);
        for (size_t port = 0; port < machine->port_count; port++) {
            ow_candidate_port one = {.machine = machine, .port = &machine->ports[port]};
            one.rank = rank_of_port(machine, one.port, wanted);
            snprintf(one.words, sizeof one.words, "%s:%s", machine->id, one.port->name);
            put(offering, typed, machine->title, &one);
        }
        if (wanted == OW_WANTED_FROM && machine->kind == OW_ENGINE) {
            ow_candidate_port alone = {.machine = machine, .rank = 3};
            snprintf(alone.words, sizeof alone.words, "%s", machine->id);
            put(offering, typed, machine->title, &alone);
        }
    }
}

static void put_fixtures(ow_offering *offering, const ow_catalog *catalog, const char *typed)
{
    for (size_t index = 0; index < ow_catalog_fixture_count(catalog); index++) {
        const ow_part *fixture = ow_catalog_fixture_at(catalog, index);
        ow_candidate_port one = {.fixture = fixture, .rank = fixture->kind == OW_SWITCH ? 0 : 1};
        snprintf(one.words, sizeof one.words, "%s", fixture->id);
        put(offering, typed, fixture->title, &one);
    }
}

static void put_end(ow_offering *offering, const char *typed, const ow_end *end, int rank)
{
    ow_candidate_port one = {.rank = rank, .end = *end};
    ow_end_name(end, one.words);
    put(offering, typed, "", &one);
}

void ow_offers_gather(const ow_catalog *catalog, const ow_net *net, const char *words, ow_wanted wanted,
                      ow_offering *offering)
{
    ow_end known;
    offering->count = 0;
    if (wanted == OW_WANTED_FROM || wanted == OW_WANTED_TO)
        put_machines(offering, catalog, words, wanted);
    if (wanted == OW_WANTED_KEEP)
        put_fixtures(offering, catalog, words);
    for (size_t index = 0; index < ow_net_kind_count(net); index++)
        put_end(offering, words, ow_net_kind_at(net, index), 10);
    for (size_t index = 0; index < ow_known_end_count(); index++) {
        if (ow_known_end_at(index, &known))
            put_end(offering, words, &known, 11);
    }
}
