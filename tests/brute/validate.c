/* SPDX-License-Identifier: MIT */
/* A complete tree held against every limit, from scratch, and its key. Nothing here knows how the
 * tree was found. */
#include <stddef.h>
#include <string.h>

#include "brute/brute.h"

brute_ask brute_ask_plain(int source)
{
    brute_ask ask;
    memset(&ask, 0, sizeof ask);
    ask.source = source;
    ask.least_bore_um = ask.orifice_low_um = ask.orifice_high_um = BRUTE_NOT_SAID;
    ask.rating_kpa = BRUTE_NOT_SAID;
    ask.hose_length_mm = 1000;
    ask.forced = -1;
    return ask;
}

int brute_key_compare(const brute_key *a, const brute_key *b)
{
    if (a->parts != b->parts)
        return a->parts < b->parts ? -1 : 1;
    if (a->unpriced != b->unpriced)
        return a->unpriced < b->unpriced ? -1 : 1;
    if (a->cents != b->cents)
        return a->cents < b->cents ? -1 : 1;
    if (a->stick_out_um != b->stick_out_um)
        return a->stick_out_um < b->stick_out_um ? -1 : 1;
    int shared = a->id_count < b->id_count ? a->id_count : b->id_count;
    int order = memcmp(a->ids, b->ids, (size_t)shared);
    if (order != 0)
        return order < 0 ? -1 : 1;
    return a->id_count == b->id_count ? 0 : a->id_count < b->id_count ? -1 : 1;
}

/* 1 oil, 2 coolant. Typed from what is published, not from the program's table: SAE J517 100R14 and 100R5,
 * J30 30R7 (from memory), J20 classes A and D-1; that a fluoro liner is for drains is common practice.
 * Whether a hose stands a fluid well or fairly does not matter here. */
const brute_material *brute_material_at(int material)
{
    static const brute_material materials[BRUTE_MATERIALS] = {
        {"", 3, 3, -1000, 1000, BRUTE_NOT_SAID},      {"ptfe", 3, 3, -54, 204, BRUTE_NOT_SAID},
        {"nitrile", 3, 3, -40, 100, BRUTE_NOT_SAID},  {"j30-r7", 1, 1, -40, 125, 350},
        {"silicone", 2, 2, -55, 175, BRUTE_NOT_SAID}, {"fluoro-silicone", 3, 2, -50, 200, BRUTE_NOT_SAID},
        {"epdm", 2, 2, -40, 125, BRUTE_NOT_SAID},     {"fkm", 3, 3, -20, 200, BRUTE_NOT_SAID},
    };
    return &materials[material];
}

/* What a hose is made of, whatever its page says. */
static bool material_passes(const brute_ask *ask, const brute_material *material)
{
    unsigned stood = ask->pressed ? material->pressed_fluids : material->fluids;
    if ((stood & ask->fluid) != ask->fluid)
        return false;
    if (ask->has_temperature &&
        (ask->temperature_c < material->low_c || ask->temperature_c > material->high_c))
        return false;
    return ask->rating_kpa == BRUTE_NOT_SAID || material->most_kpa == BRUTE_NOT_SAID ||
           ask->rating_kpa <= material->most_kpa;
}

/* Whether a part may be used at all: what is asked of every part, dead ends and plugs too. */
bool brute_part_passes(const brute_net *net, const brute_ask *ask, int index)
{
    const brute_part *part = &net->parts[index];
    if (ask->without[index])
        return false;
    if (ask->rating_kpa != BRUTE_NOT_SAID &&
        (part->rating_kpa == BRUTE_NOT_SAID || part->rating_kpa < ask->rating_kpa))
        return false;
    if (ask->has_temperature &&
        (!part->has_temperature || ask->temperature_c < part->low_c || ask->temperature_c > part->high_c))
        return false;
    if (ask->fluid != 0 && (part->fluids & ask->fluid) != ask->fluid)
        return false;
    if (ask->no_tee && part->end_count > 2)
        return false;
    if (part->is_hose && !ask->pages_believed && !material_passes(ask, brute_material_at(part->material)))
        return false;
    if (part->is_restrictor && ask->orifice_low_um != BRUTE_NOT_SAID &&
        (part->orifice_um == BRUTE_NOT_SAID || part->orifice_um < ask->orifice_low_um))
        return false;
    if (part->is_restrictor && ask->orifice_high_um != BRUTE_NOT_SAID &&
        (part->orifice_um == BRUTE_NOT_SAID || part->orifice_um > ask->orifice_high_um))
        return false;
    return true;
}

/* The kinds on the two sides of the joint at which `node` hangs. */
static void joint_kinds(const brute_net *net, const brute_ask *ask, const brute_tree *tree, int node,
                        int *near, int *far)
{
    const brute_node *child = &tree->nodes[node];
    *near =
        child->parent < 0 ? ask->source : net->parts[tree->nodes[child->parent].part].kind[child->parent_end];
    *far = child->part < 0 ? ask->ports[child->port].kind : net->parts[child->part].kind[child->entry];
}

static bool joint_turns(const brute_net *net, const brute_ask *ask, const brute_tree *tree, int node)
{
    int near, far;
    joint_kinds(net, ask, tree, node, &near, &far);
    return net->turns[near][far];
}

/* Every end mates one thing, every port is mated once, all hangs on the source, in walking order. */
static const char *structure_fault(const brute_net *net, const brute_ask *ask, const brute_tree *tree)
{
    int ends_used[BRUTE_TREE_NODES] = {0}, port_uses[BRUTE_PORTS] = {0};
    if (tree->count < 1 || tree->nodes[0].parent != -1)
        return "nothing is joined to the source";
    for (int i = 0; i < tree->count; i++) {
        const brute_node *node = &tree->nodes[i];
        if (i > 0 && (node->parent < 0 || node->parent >= i || tree->nodes[node->parent].part < 0))
            return "a node hangs on nothing";
        if (node->part >= 0 && node->entry >= brute_part_entries(&net->parts[node->part]))
            return "entered by the wrong end";
        if (node->part >= 0)
            ends_used[i] |= 1 << node->entry;
        else
            port_uses[node->port]++;
        if (i > 0) {
            int bit = 1 << node->parent_end;
            if (node->parent_end >= net->parts[tree->nodes[node->parent].part].end_count ||
                (ends_used[node->parent] & bit) != 0)
                return "an end is used twice, or there is no such end";
            ends_used[node->parent] |= bit;
        }
        int near, far;
        joint_kinds(net, ask, tree, i, &near, &far);
        brute_mating mating = net->mates[near][far];
        bool clamped = net->kind_clamped[near] || net->kind_clamped[far];
        if (mating == BRUTE_NEVER || (mating == BRUTE_TOLERATED && !ask->tolerate) ||
            (clamped && ask->no_clamp))
            return "two ends that do not mate";
    }
    for (int i = 0; i < tree->count; i++)
        if (tree->nodes[i].part >= 0 && ends_used[i] != (1 << net->parts[tree->nodes[i].part].end_count) - 1)
            return "an end is left open";
    for (int i = 0; i < ask->port_count; i++)
        if (port_uses[i] != 1)
            return "a port is not served exactly once";
    return NULL;
}

static const char *parts_fault(const brute_net *net, const brute_ask *ask, const brute_tree *tree)
{
    int forced = 0;
    for (int i = 0; i < tree->count; i++) {
        if (tree->nodes[i].part >= 0 && !brute_part_passes(net, ask, tree->nodes[i].part))
            return "a part that may not be used";
        if (tree->nodes[i].part >= 0 && tree->nodes[i].part == ask->forced)
            forced++;
    }
    if (ask->forced >= 0 && (forced == 0 || (ask->forced_once && forced > 1)))
        return "the part asked for is not used as asked";
    return NULL;
}

/* What stands on the path from the source to a port. */
typedef struct path_facts {
    int hoses, restrictors;
    bool narrow;
} path_facts;

static path_facts facts_of_path(const brute_net *net, const brute_ask *ask, const brute_tree *tree, int leaf)
{
    path_facts facts = {0, 0, false};
    for (int child = leaf; tree->nodes[child].parent >= 0; child = tree->nodes[child].parent) {
        const brute_node *node = &tree->nodes[tree->nodes[child].parent];
        const brute_part *part = &net->parts[node->part];
        int in = part->leg_bore_um[node->entry], out = part->leg_bore_um[tree->nodes[child].parent_end];
        facts.hoses += part->is_hose;
        facts.restrictors += part->is_restrictor;
        if (in == BRUTE_NOT_SAID || out == BRUTE_NOT_SAID || in < ask->least_bore_um ||
            out < ask->least_bore_um)
            facts.narrow = true;
    }
    return facts;
}

bool brute_flexes(const brute_ask *ask)
{
    return ask->flexible == BRUTE_FLEX_YES || ask->flexible == BRUTE_FLEX_SOME;
}

brute_restrictor brute_wanted(const brute_ask *ask, const brute_port *port)
{
    return ask->restrictor == BRUTE_BY_PORT ? port->restrictor : ask->restrictor;
}

static const char *path_fault(const brute_ask *ask, const brute_port *port, path_facts facts)
{
    if (!port->is_to) {
        if (ask->kept_free)
            return NULL;
        if (facts.restrictors > 0)
            return "a kept port behind a restrictor";
        return facts.hoses > 0 && !ask->remote_switch ? "a kept port behind a hose" : NULL;
    }
    if (ask->flexible == BRUTE_FLEX_YES && facts.hoses != 1)
        return "not exactly one hose";
    if (ask->flexible == BRUTE_FLEX_SOME && facts.hoses == 0)
        return "no hose";
    if (ask->flexible == BRUTE_FLEX_NO && facts.hoses != 0)
        return "a hose where none is wanted";
    if (brute_wanted(ask, port) == BRUTE_REQUIRED && facts.restrictors == 0)
        return "no restrictor";
    if (brute_wanted(ask, port) == BRUTE_FORBIDDEN && facts.restrictors > 0)
        return "a restrictor where none is wanted";
    if (brute_wanted(ask, port) != BRUTE_FREE && facts.restrictors > 1)
        return "a second restrictor";
    return ask->least_bore_um != BRUTE_NOT_SAID && facts.narrow ? "too narrow" : NULL;
}

/* Pieces: nodes that hang together when the tree is cut. Item 0 is the source, item i + 1 node i. */
typedef struct pieces {
    int of[BRUTE_TREE_NODES + 1];
} pieces;

static void unite(pieces *p, int count, int a, int b)
{
    int from = p->of[a], to = p->of[b];
    for (int i = 0; i < count; i++)
        if (p->of[i] == from)
            p->of[i] = to;
}

static const char *closing_fault(const brute_net *net, const brute_ask *ask, const brute_tree *tree)
{
    pieces p = {{0}};
    int held[BRUTE_TREE_NODES + 1] = {0};
    for (int i = 0; i <= tree->count; i++)
        p.of[i] = i;
    for (int i = 0; i < tree->count; i++)
        if (!joint_turns(net, ask, tree, i))
            unite(&p, tree->count + 1, i + 1, tree->nodes[i].parent + 1);
    held[p.of[0]]++;
    for (int i = 0; i < tree->count; i++)
        if (tree->nodes[i].part < 0 && ask->ports[tree->nodes[i].port].is_to && ++held[p.of[i + 1]] > 1)
            return "two fixed ports without a joint that can be made last";
    return NULL;
}

/* Two machines may not be tied together rigidly. A hose belongs to neither of its sides. */
static const char *rigid_fault(const brute_net *net, const brute_ask *ask, const brute_tree *tree)
{
    pieces p = {{0}};
    int held[BRUTE_TREE_NODES + 1] = {0};
    for (int i = 0; i <= tree->count; i++)
        p.of[i] = i;
    for (int i = 0; i < tree->count; i++) {
        const brute_node *node = &tree->nodes[i];
        bool cut = node->part >= 0 && net->parts[node->part].is_hose;
        if (node->parent >= 0 && net->parts[tree->nodes[node->parent].part].is_hose)
            cut = true;
        if (!cut)
            unite(&p, tree->count + 1, i + 1, node->parent + 1);
    }
    for (int i = 0; i < tree->count; i++) {
        const brute_node *node = &tree->nodes[i];
        if (node->part < 0 && ask->ports[node->port].is_to && ask->ports[node->port].is_machine &&
            ++held[p.of[i + 1]] > 1)
            return "two machines joined rigidly";
    }
    return NULL;
}

const char *brute_tree_fault(const brute_net *net, const brute_ask *ask, const brute_tree *tree)
{
    const char *fault = structure_fault(net, ask, tree);
    if (fault == NULL)
        fault = parts_fault(net, ask, tree);
    for (int i = 0; fault == NULL && i < tree->count; i++)
        if (tree->nodes[i].part < 0)
            fault = path_fault(ask, &ask->ports[tree->nodes[i].port], facts_of_path(net, ask, tree, i));
    if (fault == NULL && ask->closing)
        fault = closing_fault(net, ask, tree);
    if (fault == NULL && brute_flexes(ask))
        fault = rigid_fault(net, ask, tree);
    return fault;
}

int brute_first_to(const brute_ask *ask)
{
    for (int i = 0; i < ask->port_count; i++)
        if (ask->ports[i].is_to)
            return i;
    return -1;
}

int brute_part_entries(const brute_part *part)
{
    return part->first_only ? 1 : part->end_count;
}

/* Half a cent and more is rounded up. */
long long brute_part_cents(const brute_ask *ask, const brute_part *part)
{
    if (!part->has_price)
        return 0;
    if (!part->by_metre)
        return part->price_cents;
    return ((long long)part->price_cents * ask->hose_length_mm + 500) / 1000;
}

/* Rigid length from the source to the first hose on the path to the first TO; what has no length
 * counts nothing. */
static long long stick_out_um(const brute_net *net, const brute_ask *ask, const brute_tree *tree)
{
    int leaf = -1, first = brute_first_to(ask);
    long long length = 0;
    for (int i = 0; i < tree->count; i++)
        if (tree->nodes[i].part < 0 && first >= 0 && tree->nodes[i].port == first)
            leaf = i;
    for (int i = leaf < 0 ? -1 : tree->nodes[leaf].parent; i >= 0; i = tree->nodes[i].parent) {
        const brute_part *part = &net->parts[tree->nodes[i].part];
        if (part->is_hose)
            length = 0; /* walking back: what is beyond a hose does not stick out */
        else if (part->length_um != BRUTE_NOT_SAID)
            length += part->length_um;
    }
    return length;
}

void brute_tree_key(const brute_net *net, const brute_ask *ask, const brute_tree *tree, brute_key *key)
{
    memset(key, 0, sizeof *key);
    for (int i = 0; i < tree->count; i++) {
        if (tree->nodes[i].part < 0)
            continue;
        const brute_part *part = &net->parts[tree->nodes[i].part];
        key->ids[key->id_count++] = (uint8_t)tree->nodes[i].part;
        key->parts++;
        key->unpriced += !part->has_price;
        key->cents += brute_part_cents(ask, part);
    }
    key->stick_out_um = stick_out_um(net, ask, tree);
}

int brute_tree_path_parts(const brute_tree *tree, int parts[BRUTE_TREE_PARTS])
{
    bool on_path[BRUTE_TREE_NODES] = {false};
    int count = 0;
    for (int i = 0; i < tree->count; i++)
        if (tree->nodes[i].part < 0)
            for (int node = tree->nodes[i].parent; node >= 0; node = tree->nodes[node].parent)
                on_path[node] = true;
    for (int i = 0; i < tree->count; i++) {
        if (!on_path[i])
            continue;
        int place = count++;
        for (; place > 0 && parts[place - 1] > tree->nodes[i].part; place--)
            parts[place] = parts[place - 1];
        parts[place] = tree->nodes[i].part;
    }
    return count;
}
