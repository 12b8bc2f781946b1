/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "brute/random.h"

/* Steele, Lea, Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014 (SplitMix64). */
brute_dice brute_dice_new(uint64_t seed)
{
    brute_dice dice = {seed};
    return dice;
}

static uint64_t draw(brute_dice *dice)
{
    uint64_t z = dice->state += 0x9e3779b97f4a7c15u;
    z = (z ^ z >> 30) * 0xbf58476d1ce4e5b9u;
    z = (z ^ z >> 27) * 0x94d049bb133111ebu;
    return z ^ z >> 31;
}

int brute_roll(brute_dice *dice, int sides)
{
    return (int)(draw(dice) % (uint64_t)sides);
}

bool brute_chance(brute_dice *dice, int percent)
{
    return brute_roll(dice, 100) < percent;
}

const char *brute_limit_words(brute_limit limit)
{
#define LIMIT_WORDS(name, words) words,
    static const char *const words[] = {BRUTE_LIMIT_LIST(LIMIT_WORDS)};
#undef LIMIT_WORDS
    return words[limit];
}

const char *brute_limit_name(brute_limit limit)
{
#define LIMIT_NAME(name, words) #name,
    static const char *const names[] = {BRUTE_LIMIT_LIST(LIMIT_NAME)};
#undef LIMIT_NAME
    return names[limit];
}

/* Pairs that mate, some kinds that mate themselves, some stray matings, some only tolerated. */
static void random_kinds(brute_dice *dice, brute_net *net)
{
    net->kind_count = 4 + brute_roll(dice, 7);
    for (int i = 0; i + 1 < net->kind_count; i += 2)
        net->mates[i][i + 1] = BRUTE_SEALS;
    for (int i = 0; i < net->kind_count; i++) {
        if (brute_chance(dice, 12))
            net->mates[i][i] = BRUTE_SEALS;
        int other = brute_roll(dice, net->kind_count);
        if (brute_chance(dice, 25))
            net->mates[i][other] = brute_chance(dice, 40) ? BRUTE_TOLERATED : BRUTE_SEALS;
    }
    for (int i = 0; i < net->kind_count; i++)
        for (int k = 0; k < i; k++) {
            brute_mating mating = net->mates[i][k] != BRUTE_NEVER ? net->mates[i][k] : net->mates[k][i];
            net->mates[i][k] = net->mates[k][i] = mating;
        }
    bool *turns = net->kind_turns;
    for (int i = 0; i < net->kind_count; i++) {
        turns[i] = brute_chance(dice, 25);
        net->kind_clamped[i] = brute_chance(dice, 15);
    }
    for (int i = 0; i < net->kind_count; i++)
        for (int k = 0; k <= i; k++)
            net->turns[i][k] = net->turns[k][i] = turns[i] || turns[k] || brute_chance(dice, 5);
}

static void random_figures(brute_dice *dice, brute_part *part)
{
    static const int bores[] = {3000, 4000, 6000, 8000};
    int bore = bores[brute_roll(dice, 4)];
    for (int end = 0; end < part->end_count; end++) {
        part->leg_bore_um[end] = brute_chance(dice, 20) ? bores[brute_roll(dice, 4)] : bore;
        if (brute_chance(dice, 3))
            part->leg_bore_um[end] = BRUTE_NOT_SAID;
    }
    part->length_um = brute_chance(dice, 10) ? BRUTE_NOT_SAID : 10000 * (1 + brute_roll(dice, 4));
    part->rating_kpa = brute_chance(dice, 8) ? BRUTE_NOT_SAID : 200 << brute_roll(dice, 3);
    part->has_temperature = !brute_chance(dice, 8);
    part->low_c = part->has_temperature ? -40 + 20 * brute_roll(dice, 2) : 0;
    part->high_c = part->has_temperature ? 100 + 40 * brute_roll(dice, 3) : 0;
    part->fluids = brute_chance(dice, 70) ? 3 : (unsigned)brute_roll(dice, 4);
    part->has_price = !brute_chance(dice, 12);
    part->price_cents = part->has_price ? 100 * (1 + brute_roll(dice, 4)) : 0;
    part->orifice_um = BRUTE_NOT_SAID;
}

static brute_part *random_part(brute_dice *dice, brute_net *net, int ends)
{
    brute_part *part = &net->parts[net->part_count++];
    memset(part, 0, sizeof *part);
    part->end_count = ends;
    for (int end = 0; end < ends; end++)
        part->kind[end] =
            end > 0 && brute_chance(dice, 30) ? part->kind[0] : brute_roll(dice, net->kind_count);
    random_figures(dice, part);
    return part;
}

static void random_hose(brute_dice *dice, brute_net *net)
{
    brute_part *hose = random_part(dice, net, 2);
    if (brute_chance(dice, 6))
        hose = random_part(dice, net, 3); /* a made-up branching line */
    hose->is_hose = true;
    hose->by_metre = brute_chance(dice, 70);
    if (brute_chance(dice, 40))
        hose->kind[1] = hose->kind[0];
    if (hose->by_metre)
        hose->length_um = BRUTE_NOT_SAID;
    hose->material = brute_roll(dice, BRUTE_MATERIALS);
}

static void random_restrictor(brute_dice *dice, brute_net *net)
{
    brute_part *restrictor = random_part(dice, net, 2);
    restrictor->is_restrictor = true;
    if (!brute_chance(dice, 10))
        restrictor->orifice_um = 800 + 200 * brute_roll(dice, 4);
}

/* The same part from another shelf: other figures, perhaps the ends the other way round. */
static void random_double(brute_dice *dice, brute_net *net)
{
    brute_part *copy = &net->parts[net->part_count];
    *copy = net->parts[brute_roll(dice, net->part_count)];
    net->part_count++;
    if (brute_chance(dice, 50))
        copy->length_um = copy->by_metre ? BRUTE_NOT_SAID : 10000 * (1 + brute_roll(dice, 4));
    if (brute_chance(dice, 30)) {
        copy->has_price = !brute_chance(dice, 20);
        copy->price_cents = copy->has_price ? 100 * (1 + brute_roll(dice, 4)) : 0;
    }
    if (brute_chance(dice, 30))
        for (int end = 0; end < copy->end_count; end++)
            copy->leg_bore_um[end] = 4000;
    if (brute_chance(dice, 20))
        copy->rating_kpa = 800;
    if (copy->end_count == 2 && !copy->by_metre && brute_chance(dice, 40)) {
        copy->is_hose = brute_chance(dice, 40);
        copy->is_restrictor = !copy->is_hose;
        copy->orifice_um = copy->is_restrictor ? 800 + 200 * brute_roll(dice, 4) : BRUTE_NOT_SAID;
        copy->material = copy->is_hose ? brute_roll(dice, BRUTE_MATERIALS) : 0;
    }
    if (brute_chance(dice, 40)) {
        int last = copy->end_count - 1, kind = copy->kind[0], bore = copy->leg_bore_um[0];
        copy->kind[0] = copy->kind[last];
        copy->leg_bore_um[0] = copy->leg_bore_um[last];
        copy->kind[last] = kind;
        copy->leg_bore_um[last] = bore;
    }
}

/* Order of id must say nothing about what a part is. */
static void shuffle(brute_dice *dice, brute_net *net)
{
    for (int i = net->part_count - 1; i > 0; i--) {
        int other = brute_roll(dice, i + 1);
        brute_part part = net->parts[i];
        net->parts[i] = net->parts[other];
        net->parts[other] = part;
    }
}

void brute_random_net(brute_dice *dice, brute_net *net)
{
    memset(net, 0, sizeof *net);
    random_kinds(dice, net);
    int plugs = 30 + brute_roll(dice, 60);
    for (int kind = 0; kind < net->kind_count; kind++)
        if (brute_chance(dice, plugs))
            random_part(dice, net, 1)->kind[0] = kind;
    for (int count = 2 + brute_roll(dice, 6); count > 0; count--)
        random_part(dice, net, 2);
    for (int count = 1 + brute_roll(dice, 4); count > 0; count--)
        random_part(dice, net, 3);
    for (int count = brute_roll(dice, 2); count > 0; count--)
        random_part(dice, net, 4);
    for (int count = 1 + brute_roll(dice, 3); count > 0; count--)
        random_hose(dice, net);
    for (int count = brute_roll(dice, 3); count > 0; count--)
        random_restrictor(dice, net);
    for (int count = brute_roll(dice, 5); count > 0; count--)
        random_double(dice, net);
    shuffle(dice, net);
}

void brute_random_ask(brute_dice *dice, const brute_net *net, int ports, brute_ask *ask)
{
    *ask = brute_ask_plain(brute_roll(dice, net->kind_count));
    int to = brute_chance(dice, 4) ? 0 : 1 + brute_roll(dice, ports < 3 ? ports : 3);
    ask->port_count = ports;
    for (int i = 0; i < ports; i++) {
        ask->ports[i].kind =
            i > 0 && brute_chance(dice, 25) ? ask->ports[i - 1].kind : brute_roll(dice, net->kind_count);
        ask->ports[i].is_to = i < to;
        ask->ports[i].is_machine = i < to && brute_chance(dice, 70);
    }
    for (int i = ports - 1; i > 0 && brute_chance(dice, 30); i--) { /* kept ports may come first, too */
        brute_port port = ask->ports[i];
        int other = brute_roll(dice, i + 1);
        ask->ports[i] = ask->ports[other];
        ask->ports[other] = port;
    }
    static const int lengths_mm[] = {333, 500, 1000, 1250};
    ask->hose_length_mm = lengths_mm[brute_roll(dice, 4)];
}

/* Some lie on a part's own limit. */
static const int temperatures_c[] = {120, 120, 140, -30, -40, -20};

/* Asks that what hoses are made of has a say in. */
static void set_material(brute_dice *dice, brute_ask *ask, brute_limit limit)
{
    static const brute_limit figures[] = {BRUTE_LIMIT_FLUID, BRUTE_LIMIT_FLUID, BRUTE_LIMIT_TEMPERATURE,
                                          BRUTE_LIMIT_RATING};
    if (brute_chance(dice, 70) && ask->flexible == BRUTE_FLEX_ANY)
        ask->flexible = BRUTE_FLEX_YES;
    ask->pressed = ask->pressed || limit == BRUTE_LIMIT_PRESSED || brute_chance(dice, 30);
    if (limit == BRUTE_LIMIT_PRESSED)
        ask->fluid = 1;
    else
        brute_limit_set(dice, NULL, ask, figures[brute_roll(dice, 4)]);
}

/* Limits that carry figures. */
static void set_figures(brute_dice *dice, const brute_net *net, brute_ask *ask, brute_limit limit)
{
    if (limit == BRUTE_LIMIT_BORE)
        ask->least_bore_um = brute_chance(dice, 70) ? 4000 : 6000;
    if (limit == BRUTE_LIMIT_RATING)
        ask->rating_kpa = brute_chance(dice, 60) ? 400 : 300;
    if (limit == BRUTE_LIMIT_TEMPERATURE) {
        ask->has_temperature = true;
        ask->temperature_c = temperatures_c[brute_roll(dice, 6)];
    }
    if (limit == BRUTE_LIMIT_FLUID)
        ask->fluid = 1u + (unsigned)brute_roll(dice, 2);
    if (limit == BRUTE_LIMIT_ORIFICE) {
        bool above_only;
        ask->orifice_low_um = brute_chance(dice, 20) ? BRUTE_NOT_SAID : 1000;
        above_only = ask->orifice_low_um != BRUTE_NOT_SAID && brute_chance(dice, 50);
        ask->orifice_high_um = above_only ? BRUTE_NOT_SAID : 1200;
    }
    for (int i = 0; limit == BRUTE_LIMIT_BY_PORT && i < ask->port_count; i++)
        ask->ports[i].restrictor = (brute_restrictor)brute_roll(dice, 4);
    for (int i = 0; limit == BRUTE_LIMIT_WITHOUT && i < net->part_count; i++)
        ask->without[i] = brute_chance(dice, 20);
}

/* Limits that are there or not. */
static void set_switches(brute_ask *ask, brute_limit limit)
{
    if (limit == BRUTE_LIMIT_FLEX_YES || limit == BRUTE_LIMIT_MACHINES)
        ask->flexible = BRUTE_FLEX_YES;
    if (limit == BRUTE_LIMIT_FLEX_NO)
        ask->flexible = BRUTE_FLEX_NO;
    if (limit == BRUTE_LIMIT_FLEX_SOME)
        ask->flexible = BRUTE_FLEX_SOME;
    if (limit == BRUTE_LIMIT_REQUIRED)
        ask->restrictor = BRUTE_REQUIRED;
    if (limit == BRUTE_LIMIT_FORBIDDEN)
        ask->restrictor = BRUTE_FORBIDDEN;
    if (limit == BRUTE_LIMIT_MOST_ONE)
        ask->restrictor = BRUTE_MOST_ONE;
    if (limit == BRUTE_LIMIT_BY_PORT)
        ask->restrictor = BRUTE_BY_PORT;
    ask->closing = ask->closing || limit == BRUTE_LIMIT_CLOSING;
    ask->no_tee = ask->no_tee || limit == BRUTE_LIMIT_NO_TEE;
    ask->no_clamp = ask->no_clamp || limit == BRUTE_LIMIT_NO_CLAMP;
    ask->pages_believed = ask->pages_believed && limit != BRUTE_LIMIT_MATERIAL;
    ask->tolerate = ask->tolerate || limit == BRUTE_LIMIT_TOLERATE;
    ask->remote_switch = ask->remote_switch || limit == BRUTE_LIMIT_REMOTE;
    ask->kept_free = ask->kept_free && limit != BRUTE_LIMIT_KEPT;
    for (int i = 0; limit == BRUTE_LIMIT_MACHINES && i < ask->port_count; i++)
        ask->ports[i].is_machine = ask->ports[i].is_to = true;
}

void brute_limit_set(brute_dice *dice, const brute_net *net, brute_ask *ask, brute_limit limit)
{
    set_figures(dice, net, ask, limit);
    set_switches(ask, limit);
    if (limit == BRUTE_LIMIT_PRESSED || limit == BRUTE_LIMIT_MATERIAL)
        set_material(dice, ask, limit);
}

void brute_limit_drop(brute_ask *ask, brute_limit limit)
{
    const brute_ask plain = brute_ask_plain(ask->source);
    if (limit == BRUTE_LIMIT_BORE)
        ask->least_bore_um = plain.least_bore_um;
    if (limit == BRUTE_LIMIT_RATING)
        ask->rating_kpa = plain.rating_kpa;
    if (limit == BRUTE_LIMIT_FLUID)
        ask->fluid = plain.fluid;
    if (limit == BRUTE_LIMIT_ORIFICE)
        ask->orifice_low_um = ask->orifice_high_um = BRUTE_NOT_SAID;
    if (limit == BRUTE_LIMIT_WITHOUT)
        memcpy(ask->without, plain.without, sizeof ask->without);
    if (limit == BRUTE_LIMIT_FLEX_YES || limit == BRUTE_LIMIT_FLEX_NO || limit == BRUTE_LIMIT_FLEX_SOME)
        ask->flexible = plain.flexible;
    if (limit == BRUTE_LIMIT_REQUIRED || limit == BRUTE_LIMIT_FORBIDDEN || limit == BRUTE_LIMIT_MOST_ONE ||
        limit == BRUTE_LIMIT_BY_PORT)
        ask->restrictor = plain.restrictor;
    ask->has_temperature = ask->has_temperature && limit != BRUTE_LIMIT_TEMPERATURE;
    ask->closing = ask->closing && limit != BRUTE_LIMIT_CLOSING;
    ask->no_tee = ask->no_tee && limit != BRUTE_LIMIT_NO_TEE;
    ask->no_clamp = ask->no_clamp && limit != BRUTE_LIMIT_NO_CLAMP;
    ask->pressed = ask->pressed && limit != BRUTE_LIMIT_PRESSED;
    ask->pages_believed = ask->pages_believed || limit == BRUTE_LIMIT_MATERIAL;
    ask->tolerate = ask->tolerate && limit != BRUTE_LIMIT_TOLERATE;
    ask->remote_switch = ask->remote_switch && limit != BRUTE_LIMIT_REMOTE;
    ask->kept_free = ask->kept_free || limit == BRUTE_LIMIT_KEPT;
    for (int i = 0; limit == BRUTE_LIMIT_MACHINES && i < ask->port_count; i++)
        ask->ports[i].is_machine = false;
}

bool brute_limit_changes(const brute_case *c, brute_limit limit)
{
    brute_ask looser = c->ask;
    brute_result other;
    brute_limit_drop(&looser, limit);
    brute_best(&c->net, &looser, &other);
    if (other.answer == BRUTE_TOO_LARGE)
        return false;
    return other.answer != c->result.answer ||
           (other.answer == BRUTE_FOUND && brute_key_compare(&other.key, &c->result.key) != 0);
}

void brute_random_case(uint64_t seed, int ports, brute_limit limit, brute_case *c)
{
    brute_dice dice = brute_dice_new(seed);
    brute_random_net(&dice, &c->net);
    brute_random_ask(&dice, &c->net, ports, &c->ask);
    for (int count = brute_roll(&dice, 3); count > 0; count--)
        brute_limit_set(&dice, &c->net, &c->ask, (brute_limit)brute_roll(&dice, BRUTE_LIMIT_MACHINES));
    if (limit != BRUTE_LIMIT_COUNT)
        brute_limit_set(&dice, &c->net, &c->ask, limit);
    brute_best(&c->net, &c->ask, &c->result);
    c->changes =
        limit != BRUTE_LIMIT_COUNT && c->result.answer != BRUTE_TOO_LARGE && brute_limit_changes(c, limit);
}
