/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "brute/convert.h"

static void shuffled(brute_dice *dice, int count, int order[])
{
    for (int i = 0; i < count; i++)
        order[i] = i;
    for (int i = count - 1; i > 0; i--) {
        int other = brute_roll(dice, i + 1), moved = order[i];
        order[i] = order[other];
        order[other] = moved;
    }
}

/* Kinds that no part has may as well be the ask's own. Returns how many are the net's. */
static int number_kinds(const brute_net *net, brute_dice *dice, brute_converted *c)
{
    bool of_part[BRUTE_KINDS] = {false};
    int order[BRUTE_KINDS], next = 0, last = net->kind_count;
    for (int i = 0; i < net->part_count; i++)
        for (int end = 0; end < net->parts[i].end_count; end++)
            of_part[net->parts[i].kind[end]] = true;
    shuffled(dice, net->kind_count, order);
    for (int i = 0; i < net->kind_count; i++) {
        bool extra = !of_part[order[i]] && brute_chance(dice, 50);
        int number = extra ? --last : next++;
        c->kind_of[order[i]] = (uint16_t)number;
        c->kinds[number].turns = net->kind_turns[order[i]];
        c->kinds[number].clamped = net->kind_clamped[order[i]];
    }
    return next;
}

static void convert_mates(const brute_net *net, brute_dice *dice, brute_converted *c)
{
    for (int i = 0; i < net->kind_count; i++)
        for (int k = 0; k <= i; k++) {
            if (net->mates[i][k] == BRUTE_NEVER)
                continue;
            bool swapped = brute_chance(dice, 50);
            ow_net_mate mate = {c->kind_of[swapped ? k : i], c->kind_of[swapped ? i : k],
                                net->mates[i][k] == BRUTE_TOLERATED, net->turns[i][k]};
            if (mate.a >= c->net.kind_count || mate.b >= c->net.kind_count)
                c->extra_mates[c->ask.extra_mate_count++] = mate;
            else
                c->mates[c->net.mate_count++] = mate;
        }
    c->net.mates = c->mates;
    c->ask.extra_mates = c->extra_mates;
}

static int64_t said(int figure, int64_t unit)
{
    return figure == BRUTE_NOT_SAID ? OW_NET_NOT_SAID : figure * unit;
}

/* What a net knows of a hose: no more than its page claims, and no more than its material stands. The two
 * upper bits of the fluids are the lower ones, stood under pressure. */
static void lessen(const brute_material *material, ow_net_part *out)
{
    out->fluids &= material->fluids | (material->fluids & material->pressed_fluids) << 2;
    if (material->most_kpa != BRUTE_NOT_SAID && out->rating_pa > material->most_kpa * (int64_t)1000)
        out->rating_pa = material->most_kpa * (int64_t)1000;
    if (out->low_mc < material->low_c * 1000)
        out->low_mc = material->low_c * 1000;
    if (out->high_mc > material->high_c * 1000)
        out->high_mc = material->high_c * 1000;
}

static ow_net_part convert_part(const brute_converted *c, const brute_part *part, int id)
{
    ow_net_part out;
    memset(&out, 0, sizeof out);
    out.id = 7u + 3u * (uint32_t)id; /* in the same order, not the same numbers */
    out.end_count = (uint16_t)part->end_count;
    for (int end = 0; end < part->end_count; end++) {
        out.kinds[end] = c->kind_of[part->kind[end]];
        out.leg_um[end] = said(part->leg_bore_um[end], 1);
    }
    out.hose = part->is_hose;
    out.restrictor = part->is_restrictor;
    out.by_metre = part->by_metre;
    out.orifice_um = said(part->orifice_um, 1);
    out.rating_pa = said(part->rating_kpa, 1000);
    out.has_temperature = part->has_temperature;
    out.low_mc = part->low_c * 1000;
    out.high_mc = part->high_c * 1000;
    out.fluids = part->fluids | part->fluids << 2;
    out.price_cents = part->has_price ? part->price_cents : OW_NET_NOT_SAID;
    out.length_um = said(part->length_um, 1);
    if (part->is_hose)
        lessen(brute_material_at(part->material), &out);
    return out;
}

static void convert_limits(const brute_ask *ask, ow_search_limits *limits)
{
    static const ow_hoses hoses[] = {OW_HOSES_FREE, OW_HOSES_ONE, OW_HOSES_NONE, OW_HOSES_SOME};
    static const ow_restricting restricting[] = {OW_RESTRICTING_FREE, OW_RESTRICTING_NEEDED,
                                                 OW_RESTRICTING_BARRED, OW_RESTRICTING_SINGLE,
                                                 OW_RESTRICTING_BY_PORT};
    limits->least_bore_um = said(ask->least_bore_um, 1);
    limits->hoses = hoses[ask->flexible];
    limits->closing = ask->closing;
    limits->restricting = restricting[ask->restrictor];
    limits->orifice_low_um = said(ask->orifice_low_um, 1);
    limits->orifice_high_um = said(ask->orifice_high_um, 1);
    limits->rating_pa = said(ask->rating_kpa, 1000);
    limits->has_temperature = ask->has_temperature;
    limits->temperature_mc = ask->temperature_c * 1000;
    limits->fluid = ask->pressed ? ask->fluid | ask->fluid << 2 : ask->fluid;
    limits->no_tee = ask->no_tee;
    limits->no_clamp = ask->no_clamp;
    limits->tolerate = ask->tolerate;
    limits->remote_switch = ask->remote_switch;
}

void brute_convert(const brute_net *net, const brute_ask *ask, brute_dice *dice, brute_converted *c)
{
    int order[BRUTE_PARTS];
    memset(c, 0, sizeof *c);
    c->net.kind_count = (size_t)number_kinds(net, dice, c);
    c->net.kinds = c->kinds;
    c->ask.extra_count = (size_t)net->kind_count - c->net.kind_count;
    c->ask.extra_kinds = c->kinds + c->net.kind_count;
    convert_mates(net, dice, c);
    shuffled(dice, net->part_count, order);
    for (int i = 0; i < net->part_count; i++) {
        c->part_of[order[i]] = (size_t)i;
        c->part_back[i] = order[i];
        c->parts[i] = convert_part(c, &net->parts[order[i]], order[i]);
        if (ask->without[order[i]])
            c->without[c->ask.without_count++] = (size_t)i;
    }
    c->net.part_count = (size_t)net->part_count;
    c->net.parts = c->parts;
    c->ask.source = c->kind_of[ask->source];
    c->ask.port_count = (size_t)ask->port_count;
    for (int i = 0; i < ask->port_count; i++) {
        static const ow_restricting wants[] = {OW_RESTRICTING_FREE, OW_RESTRICTING_NEEDED,
                                               OW_RESTRICTING_BARRED, OW_RESTRICTING_SINGLE};
        const brute_port *from = &ask->ports[i];
        ow_search_port port = {c->kind_of[from->kind], from->is_to, from->is_machine,
                               wants[from->restrictor]};
        c->ports[i] = port;
    }
    c->ask.ports = c->ports;
    convert_limits(ask, &c->ask.limits);
    c->ask.hose_length_um = ask->hose_length_mm * (int64_t)1000;
    c->ask.without = c->without;
}

void brute_tree_back(const brute_converted *c, const ow_tree *tree, brute_tree *back)
{
    memset(back, 0, sizeof *back);
    for (size_t i = 1; i < tree->node_count && i <= BRUTE_TREE_NODES; i++) {
        const ow_tree_node *node = &tree->nodes[i];
        brute_node *out = &back->nodes[back->count++];
        out->part = node->part == OW_TREE_NONE ? -1 : c->part_back[node->part];
        out->port = node->part == OW_TREE_NONE ? (int)node->port : -1;
        out->parent = (int)node->parent - 1; /* the source is node 0 there, -1 here */
        out->parent_end = (int)node->parent_end;
        out->entry = (int)node->enter;
    }
}

bool brute_key_is(const brute_key *key, const ow_key *other)
{
    return key->parts == (int)other->parts && key->unpriced == (int)other->unpriced &&
           key->cents == other->cents && key->stick_out_um == other->stick_out_um;
}
