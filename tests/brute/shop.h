/* SPDX-License-Identifier: MIT */
/*
 * Random catalogues written as pages, and read: the brute force works on the figures from which the pages
 * were written, the program on the pages. For the tests of one file each; so all is inline.
 */
#ifndef BRUTE_SHOP_H
#define BRUTE_SHOP_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "brute/random.h"
#include "oilway/joint.h"
#include "oilway/stack.h"

/* Ends that go together, and some that are only tolerated or go with more than one. */
static const char *const ENDS[][2] = {
    {"hose -4 ptfe tail",
     "hose -4 ptfe"}, /* the first pair: hoses by the metre are made of it, or of a like */
    {"1/8-27 NPT male", "1/8-27 NPT female"},
    {"-4 flare37 male", "-4 flare37 female swivel"},
    {"M10x1 male washer", "M10x1 female washer"},
    {"M10x1 male taper", "M12x1.5 female washer"},
    {"M12x1.5 male banjo", "M12x1.5 male washer"},
    {"banjo 10 stud", "banjo 10 eye"},
    {"G1/8 male cone60", "G1/8 female cone60 swivel"},
    {"R1/8 male", "Rp1/8 female"},
    {"barb 10", "hose 10 fluoro-silicone"},
    {"1/8-27 NPTF male", "1/8-27 NPSM female swivel"},
    {"3/8-24 UNF male washer", "3/8-24 UNF female washer"},
};
/* What may stand for the first pair. */
static const char *const HOSES[][2] = {
    {"hose -4 ptfe tail", "hose -4 ptfe"},
    {"hose -4 nitrile tail", "hose -4 nitrile"},
    {"hose -4 j30-r7 tail", "hose -4 j30-r7"},
    {"barb 10", "hose 10 fluoro-silicone"},
    {"barb 10", "hose 10 silicone"},
    {"bead 10", "hose 10 epdm"},
    {"bead 10", "hose 10 fkm"},
    {"hose -4 straw tail", "hose -4 straw"},
};
enum { HOSE_PAIRS = sizeof HOSES / sizeof HOSES[0] };
enum { PAIRS = sizeof ENDS / sizeof ENDS[0], TEXT = 16384, HOSE_TAIL = 0, HOSE_CUT = 1 };

typedef struct shop {
    brute_case c;
    ow_end ends[BRUTE_KINDS];
    char words[BRUTE_KINDS][64];
    char *texts[BRUTE_PARTS];
    const char *names[BRUTE_PARTS];
    ow_catalog *catalog;
    ow_net *net;
} shop;

/* Gives the kinds real ends; what mates and what turns is then what the joint rules say. */
static inline void give_ends(shop *s, brute_dice *dice)
{
    brute_net *net = &s->c.net;
    int pair = 0, first = brute_roll(dice, HOSE_PAIRS);
    net->kind_count &= ~1;
    for (int kind = 0; kind < net->kind_count; kind++) {
        if (kind % 2 == 0 && kind > 0)
            pair += 1 + brute_roll(dice, 2);
        const char *words = pair == 0 ? HOSES[first][kind % 2] : ENDS[pair % PAIRS][kind % 2];
        snprintf(s->words[kind], sizeof s->words[kind], "%s", words);
        assert_int_equal(ow_end_read(words, &s->ends[kind], NULL), OW_OK);
        net->kind_clamped[kind] = strncmp(words, "barb", 4) == 0 || strncmp(words, "bead", 4) == 0 ||
                                  strncmp(words, "hose 10", 7) == 0; /* by mm: clamps hold it */
    }
    for (int a = 0; a < net->kind_count; a++)
        for (int b = 0; b < net->kind_count; b++) {
            const ow_joint_rule *rule = ow_joint_find(&s->ends[a], &s->ends[b]);
            net->mates[a][b] = rule == NULL                    ? BRUTE_NEVER
                               : rule->verdict == OW_TOLERATED ? BRUTE_TOLERATED
                                                               : BRUTE_SEALS;
            net->turns[a][b] = ow_joint_turns(&s->ends[a], &s->ends[b]);
        }
}

/* The material that an end of that word is cut from; -1: no cut end. */
static inline int material_of(const char *words)
{
    if (strncmp(words, "hose", 4) != 0 || strstr(words, "tail") != NULL)
        return -1;
    for (int material = 1; material < BRUTE_MATERIALS; material++)
        if (strcmp(strrchr(words, ' ') + 1, brute_material_at(material)->word) == 0)
            return material;
    return 0;
}

/* A hose is made of what its cut end says; a line without one, of what its page says. */
static inline void make_material(const shop *s, brute_part *part)
{
    for (int end = part->end_count - 1; end >= 0; end--) {
        int material = material_of(s->words[part->kind[end]]);
        if (material >= 0)
            part->material = material;
    }
}

/* Makes the random parts such as a page can describe: one bore for a run, one for branches. */
static inline void make_describable(shop *s)
{
    brute_net *net = &s->c.net;
    for (int i = 0; i < net->part_count; i++) {
        brute_part *part = &net->parts[i];
        for (int end = 0; end < part->end_count; end++) {
            part->kind[end] %= net->kind_count;
            part->leg_bore_um[end] = part->leg_bore_um[end < 2 ? 0 : 2];
        }
        if (part->end_count != 2)
            part->is_hose = part->is_restrictor = part->by_metre = false;
        if (part->by_metre)
            part->kind[0] = part->kind[1] = HOSE_CUT;
        if (part->by_metre)
            part->length_um = BRUTE_NOT_SAID;
        if (!part->is_restrictor)
            part->orifice_um = BRUTE_NOT_SAID;
        if (part->is_hose)
            make_material(s, part);
    }
}

static inline size_t put_figure(char *to, int figure, const char *unit)
{
    return (size_t)(figure == BRUTE_NOT_SAID ? sprintf(to, ", ~") : sprintf(to, ", %d %s", figure, unit));
}

/* One page with one row. */
static inline void write_page(shop *s, int index)
{
    static const char *const kinds[] = {"plug", "adapter", "tee", "cross"};
    static const char *const ends[] = {"a", "a, b", "run-a, run-b, branch",
                                       "run-a, run-b, branch-a, branch-b"};
    const brute_part *part = &s->c.net.parts[index];
    const char *kind = part->by_metre        ? "hose"
                       : part->is_hose       ? "line"
                       : part->is_restrictor ? "restrictor"
                                             : kinds[part->end_count - 1];
    static const char *const fluids[] = {"~", "oil", "coolant", "[oil, coolant]"};
    char *at = s->texts[index] = malloc(TEXT);
    assert_non_null(at);
    at += sprintf(at,
                  "page: page-%02d\nkind: %s\nmaterial: %s%s\ncolumns: [id, %s, rating, temperature, fluids, "
                  "price%s%s%s]\n",
                  index, kind, brute_material_at(part->material)->word,
                  part->material > 0 ? ", braided" : "steel", ends[part->end_count - 1],
                  part->by_metre ? "" : ", length",
                  part->end_count > 2    ? ", run-bore, branch-bore"
                  : part->end_count == 2 ? ", bore"
                                         : "",
                  part->is_restrictor ? ", orifice" : "");
    at += sprintf(at, "rows:\n  - [part-%02d", index);
    for (int end = 0; end < part->end_count; end++)
        at += sprintf(at, ", %s", s->words[part->kind[end]]);
    at += put_figure(at, part->rating_kpa, "kPa");
    at += part->has_temperature ? sprintf(at, ", %d..%d C", part->low_c, part->high_c) : sprintf(at, ", ~");
    at += sprintf(at, ", %s", fluids[part->fluids]);
    at += part->has_price ? sprintf(at, ", %d.%02d", part->price_cents / 100, part->price_cents % 100)
                          : sprintf(at, ", ~");
    if (!part->by_metre)
        at += put_figure(at, part->length_um, "um");
    if (part->end_count > 1)
        at += put_figure(at, part->leg_bore_um[0], "um");
    if (part->end_count > 2)
        at += put_figure(at, part->leg_bore_um[2], "um");
    if (part->is_restrictor)
        at += put_figure(at, part->orifice_um, "um");
    sprintf(at, "]\n");
    s->names[index] = "random.yaml";
}

static inline void report(void *user, const ow_diagnostic *told)
{
    (void)user;
    printf("%s: %.*s\n", told->message, (int)told->line_length, told->line_text ? told->line_text : "");
}

static const ow_context CONTEXT = {.report = report};

/* Reads the pages and lets go of their texts. */
static inline void load_pages(shop *s, int count)
{
    ow_catalog_options options = {NULL, 0, NULL, false, false};
    assert_int_equal(ow_catalog_load_texts(&CONTEXT, s->names, (const char *const *)s->texts, (size_t)count,
                                           &options, &s->catalog),
                     OW_OK);
    for (int i = 0; i < count; i++)
        free(s->texts[i]);
}

static inline void open_shop(shop *s)
{
    for (int i = 0; i < s->c.net.part_count; i++)
        write_page(s, i);
    load_pages(s, s->c.net.part_count);
}

/* Only in a drain the fluid does not press; without a circuit the rating asked for tells. */
static inline ow_circuit circuit_of(const brute_ask *ask)
{
    if (!ask->pressed)
        return OW_DRAIN;
    return ask->rating_kpa != BRUTE_NOT_SAID ? OW_CIRCUIT_NONE : OW_FEED;
}

/* The ask in the words of the public interface: served ports first. */
static inline void convert_ask(const shop *s, ow_given givens[], const char *without[], ow_ask *out)
{
    static const ow_machine machine = {.id = "machine"};
    static const ow_choice flexible[] = {OW_ANY, OW_YES, OW_NO, OW_SOME};
    const brute_ask *ask = &s->c.ask;
    memset(givens, 0, (BRUTE_PORTS + 1) * sizeof *givens);
    givens[0] = (ow_given){.name = "from", .role = OW_ROLE_SOURCE, .end = s->ends[ask->source]};
    for (int i = 0; i < ask->port_count; i++)
        givens[i + 1] = (ow_given){.name = "port",
                                   .role = ask->ports[i].is_to ? OW_ROLE_TO : OW_ROLE_KEEP,
                                   .end = s->ends[ask->ports[i].kind],
                                   .machine = ask->ports[i].is_machine ? &machine : NULL};
    ow_limits limits = OW_LIMITS_INIT;
    if (ask->least_bore_um != BRUTE_NOT_SAID)
        limits.least_bore_m = ask->least_bore_um * 1e-6;
    limits.flexible = flexible[ask->flexible];
    limits.closing = ask->closing;
    limits.restrictor = ask->restrictor == BRUTE_REQUIRED    ? OW_RESTRICTOR_REQUIRED
                        : ask->restrictor == BRUTE_FORBIDDEN ? OW_RESTRICTOR_FORBIDDEN
                                                             : OW_RESTRICTOR_ANY;
    if (ask->orifice_low_um != BRUTE_NOT_SAID)
        limits.orifice_low_m = ask->orifice_low_um * 1e-6;
    if (ask->orifice_high_um != BRUTE_NOT_SAID)
        limits.orifice_high_m = ask->orifice_high_um * 1e-6;
    if (ask->rating_kpa != BRUTE_NOT_SAID)
        limits.rating_pa = ask->rating_kpa * 1e3;
    limits.has_temperature = ask->has_temperature;
    limits.temperature_c = ask->temperature_c;
    limits.fluid = (ow_fluid)ask->fluid;
    limits.tolerate = ask->tolerate;
    limits.remote_switch = ask->remote_switch;
    limits.no_tee = ask->no_tee;
    limits.no_clamp = ask->no_clamp;
    *out = (ow_ask){.given_count = (size_t)ask->port_count + 1,
                    .givens = givens,
                    .circuit = circuit_of(ask),
                    .limits = limits,
                    .hose_length_m = ask->hose_length_mm * 1e-3,
                    .without = without};
    for (int i = 0; i < s->c.net.part_count; i++)
        if (ask->without[i])
            without[out->without_count++] = ow_catalog_part_at(s->catalog, (size_t)i)->id;
}

static inline void sort_ports(brute_ask *ask)
{
    ask->ports[0].is_to = true;
    for (int i = 1; i < ask->port_count; i++)
        for (int k = i; k > 0 && ask->ports[k].is_to && !ask->ports[k - 1].is_to; k--) {
            brute_port port = ask->ports[k];
            ask->ports[k] = ask->ports[k - 1];
            ask->ports[k - 1] = port;
        }
    for (int i = 0; i < ask->port_count; i++)
        ask->ports[i].is_machine = ask->ports[i].is_to && ask->ports[i].is_machine;
}

/* A shop and an ask, with `limit` among its limits; BRUTE_LIMIT_COUNT: none in particular. */
static inline bool draw_shop(shop *s, uint64_t seed, brute_limit limit)
{
    brute_dice dice = brute_dice_new(seed);
    memset(s, 0, sizeof *s);
    brute_random_net(&dice, &s->c.net);
    give_ends(s, &dice);
    make_describable(s);
    brute_random_ask(&dice, &s->c.net, 1 + (int)(seed % 4), &s->c.ask);
    sort_ports(&s->c.ask);
    for (int count = brute_roll(&dice, 4); count > 0; count--)
        brute_limit_set(&dice, &s->c.net, &s->c.ask, (brute_limit)brute_roll(&dice, BRUTE_LIMIT_KEPT));
    if (limit != BRUTE_LIMIT_COUNT)
        brute_limit_set(&dice, &s->c.net, &s->c.ask, limit);
    if (s->c.ask.restrictor == BRUTE_FREE || s->c.ask.restrictor == BRUTE_MOST_ONE)
        s->c.ask.restrictor = circuit_of(&s->c.ask) == OW_FEED ? BRUTE_MOST_ONE : BRUTE_FREE;
    brute_best(&s->c.net, &s->c.ask, &s->c.result);
    return s->c.result.answer != BRUTE_TOO_LARGE;
}

#endif
