/* SPDX-License-Identifier: MIT */
#include "support/random_net.h"

#include <string.h>

ow_random ow_random_new(uint64_t seed)
{
    ow_random random = {seed * 2 + 1};
    for (int i = 0; i < 8; i++)
        (void)ow_random_below(&random, 2);
    return random;
}

/* Vigna's xorshift64*, ACM Transactions on Mathematical Software 42 (2016); constants from memory. */
uint32_t ow_random_below(ow_random *random, uint32_t limit)
{
    random->state ^= random->state >> 12;
    random->state ^= random->state << 25;
    random->state ^= random->state >> 27;
    uint32_t high = (uint32_t)((random->state * 2685821657736338717u) >> 33);
    return limit == 0 ? 0 : high % limit;
}

bool ow_random_chance(ow_random *random, uint32_t percent)
{
    return ow_random_below(random, 100) < percent;
}

static void add_mate(ow_random *random, ow_random_case *made, uint32_t a, uint32_t b)
{
    for (size_t i = 0; i < made->net.mate_count; i++)
        if ((made->mates[i].a == a && made->mates[i].b == b) ||
            (made->mates[i].a == b && made->mates[i].b == a))
            return;
    ow_net_mate *mate = &made->mates[made->net.mate_count++];
    *mate = (ow_net_mate){(uint16_t)a, (uint16_t)b, ow_random_chance(random, 15),
                          made->kinds[a].turns || made->kinds[b].turns};
}

static int64_t perhaps(ow_random *random, int64_t amount)
{
    return ow_random_chance(random, 6) ? OW_NET_NOT_SAID : amount;
}

static void make_part(ow_random *random, ow_random_case *made, ow_net_part *part)
{
    uint32_t roll = ow_random_below(random, 100);
    *part = (ow_net_part){.end_count = roll < 8 ? 1 : roll < 70 ? 2 : roll < 92 ? 3 : 4};
    int64_t bore = 2000 + 1000 * ow_random_below(random, 5);
    for (size_t end = 0; end < part->end_count; end++) {
        bool again = end > 0 && ow_random_chance(random, 30);
        part->kinds[end] =
            again ? part->kinds[0] : (uint16_t)ow_random_below(random, (uint32_t)made->net.kind_count);
        part->leg_um[end] =
            ow_random_chance(random, 25) ? perhaps(random, 2000 + 1000 * ow_random_below(random, 5)) : bore;
    }
    part->hose = part->end_count == 2 ? ow_random_chance(random, 20) : ow_random_chance(random, 2);
    part->by_metre = part->hose && ow_random_chance(random, 50);
    part->restrictor = part->end_count == 2 && ow_random_chance(random, 10);
    part->orifice_um = part->restrictor ? perhaps(random, 500 + 250 * ow_random_below(random, 4)) : -1;
    part->rating_pa = perhaps(random, 100000 * (1 + ow_random_below(random, 8)));
    part->has_temperature = ow_random_chance(random, 90);
    part->low_mc = -1000 * (int64_t)ow_random_below(random, 40);
    part->high_mc = 1000 * (int64_t)(80 + ow_random_below(random, 120));
    part->fluids = ow_random_below(random, 4);
    part->price_cents = perhaps(random, ow_random_below(random, 4) * 50);
    part->length_um = perhaps(random, 1000 * ow_random_below(random, 4));
}

static uint32_t free_id(const ow_random_case *made)
{
    uint32_t highest = 0;
    for (size_t i = 0; i < made->net.part_count; i++)
        if (made->parts[i].id >= highest)
            highest = made->parts[i].id + 1;
    return highest;
}

void ow_random_add_part(ow_random *random, ow_random_case *made)
{
    ow_net_part *part = &made->parts[made->net.part_count];
    make_part(random, made, part);
    part->id = free_id(made);
    made->net.part_count++;
}

void ow_random_net(ow_random *random, size_t kinds, size_t parts, ow_random_case *made)
{
    memset(made, 0, sizeof *made);
    made->net =
        (ow_net_input){.kind_count = kinds, .kinds = made->kinds, .mates = made->mates, .parts = made->parts};
    for (size_t i = 0; i < kinds; i++)
        made->kinds[i].turns = ow_random_chance(random, 20);
    for (uint32_t i = 0; i + 1 < kinds; i += 2)
        add_mate(random, made, i, i + 1);
    for (size_t i = 0; i < kinds / 3; i++)
        add_mate(random, made, ow_random_below(random, (uint32_t)kinds),
                 ow_random_below(random, (uint32_t)kinds));
    while (made->net.part_count < parts)
        ow_random_add_part(random, made);
}

static void add_limits(ow_random *random, ow_search_limits *limits)
{
    if (ow_random_chance(random, 40))
        limits->least_bore_um = 2000 + 1000 * ow_random_below(random, 4);
    limits->hoses = (ow_hoses)ow_random_below(random, 3);
    limits->closing = ow_random_chance(random, 40);
    limits->restricting = (ow_restricting)ow_random_below(random, 3);
    if (ow_random_chance(random, 20))
        limits->orifice_low_um = 750;
    if (ow_random_chance(random, 20))
        limits->orifice_high_um = 1000;
    if (ow_random_chance(random, 30))
        limits->rating_pa = 100000 * (1 + ow_random_below(random, 4));
    limits->has_temperature = ow_random_chance(random, 30);
    limits->temperature_mc = 1000 * (int64_t)ow_random_below(random, 120);
    limits->fluid = ow_random_chance(random, 30) ? ow_random_below(random, 3) : 0;
    limits->no_tee = ow_random_chance(random, 5);
    limits->tolerate = ow_random_chance(random, 50);
    limits->remote_switch = ow_random_chance(random, 30);
}

void ow_random_ask(ow_random *random, size_t ports, ow_random_case *made)
{
    uint32_t kinds = (uint32_t)made->net.kind_count;
    made->ask = (ow_search_input){.source = ow_random_below(random, kinds),
                                  .port_count = ports,
                                  .ports = made->ports,
                                  .limits = OW_SEARCH_LIMITS_INIT,
                                  .hose_length_um = 650000};
    for (size_t i = 0; i < ports; i++) {
        bool served = i == 0 || ow_random_chance(random, 40);
        uint32_t kind = ow_random_below(random, kinds);
        bool machine = served && ow_random_chance(random, 60);
        made->ports[i] = (ow_search_port){.kind = kind, .served = served, .machine = machine};
    }
    if (ow_random_chance(random, 65))
        add_limits(random, &made->ask.limits);
}

void ow_random_remove_part(ow_random_case *made, size_t part)
{
    made->net.part_count--;
    memmove(&made->parts[part], &made->parts[part + 1],
            (made->net.part_count - part) * sizeof made->parts[0]);
}

void ow_random_shuffle_parts(ow_random *random, ow_random_case *made)
{
    for (size_t i = made->net.part_count; i > 1; i--) {
        size_t other = ow_random_below(random, (uint32_t)i);
        ow_net_part swap = made->parts[i - 1];
        made->parts[i - 1] = made->parts[other];
        made->parts[other] = swap;
    }
}

void ow_random_shuffle_mates(ow_random *random, ow_random_case *made)
{
    for (size_t i = made->net.mate_count; i > 0; i--) {
        size_t other = ow_random_below(random, (uint32_t)i);
        ow_net_mate swap = made->mates[i - 1];
        made->mates[i - 1] = made->mates[other];
        made->mates[other] = swap;
        if (ow_random_chance(random, 50)) {
            uint16_t a = made->mates[other].a;
            made->mates[other].a = made->mates[other].b;
            made->mates[other].b = a;
        }
    }
}

void ow_random_shuffle_ends(ow_random *random, ow_random_case *made)
{
    for (size_t i = 0; i < made->net.part_count; i++) {
        ow_net_part *part = &made->parts[i];
        for (size_t end = part->end_count; end > 1; end--) {
            size_t other = ow_random_below(random, (uint32_t)end);
            uint16_t kind = part->kinds[end - 1];
            int64_t leg = part->leg_um[end - 1];
            part->kinds[end - 1] = part->kinds[other];
            part->leg_um[end - 1] = part->leg_um[other];
            part->kinds[other] = kind;
            part->leg_um[other] = leg;
        }
    }
}

void ow_random_renumber_kinds(ow_random *random, ow_random_case *made)
{
    uint16_t number[OW_RANDOM_KINDS];
    ow_net_kind kinds[OW_RANDOM_KINDS];
    size_t count = made->net.kind_count;
    for (size_t i = 0; i < count; i++)
        number[i] = (uint16_t)i;
    for (size_t i = count; i > 1; i--) {
        size_t other = ow_random_below(random, (uint32_t)i);
        uint16_t swap = number[i - 1];
        number[i - 1] = number[other];
        number[other] = swap;
    }
    memcpy(kinds, made->kinds, sizeof kinds);
    for (size_t i = 0; i < count; i++)
        made->kinds[number[i]] = kinds[i];
    for (size_t i = 0; i < made->net.mate_count; i++) {
        made->mates[i].a = number[made->mates[i].a];
        made->mates[i].b = number[made->mates[i].b];
    }
    for (size_t i = 0; i < made->net.part_count; i++)
        for (size_t end = 0; end < made->parts[i].end_count; end++)
            made->parts[i].kinds[end] = number[made->parts[i].kinds[end]];
    made->ask.source = number[made->ask.source];
    for (size_t i = 0; i < made->ask.port_count; i++)
        made->ports[i].kind = number[made->ports[i].kind];
}

void ow_random_shuffle_ports(ow_random *random, ow_random_case *made)
{
    for (size_t i = made->ask.port_count; i > 2; i--) {
        size_t other = 1 + ow_random_below(random, (uint32_t)i - 1);
        ow_search_port swap = made->ports[i - 1];
        made->ports[i - 1] = made->ports[other];
        made->ports[other] = swap;
    }
}
