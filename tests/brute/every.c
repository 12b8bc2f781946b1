/* SPDX-License-Identifier: MIT */
/* Every complete tree of few parts, one by one. No limit but mating is looked at, nothing is
 * remembered, no two partial trees are taken for the same: only for tiny nets. */
#include <string.h>

#include "brute/brute.h"

typedef struct growing {
    const brute_net *net;
    const brute_ask *ask;
    int most, parts;
    unsigned unserved;
    int open_node[BRUTE_TREE_NODES * BRUTE_ENDS], open_end[BRUTE_TREE_NODES * BRUTE_ENDS], open;
    brute_tree tree;
    brute_visit visit;
    void *user;
    long visited;
    bool stopped;
} growing;

static void grow(growing *g);

static bool joins(const growing *g, int a, int b)
{
    return g->net->mates[a][b] == BRUTE_SEALS || (g->net->mates[a][b] == BRUTE_TOLERATED && g->ask->tolerate);
}

static void add_part(growing *g, brute_node node)
{
    const brute_part *part = &g->net->parts[node.part];
    int open = g->open;
    for (int end = part->end_count - 1; end >= 0; end--)
        if (end != node.entry) {
            g->open_node[g->open] = g->tree.count;
            g->open_end[g->open++] = end;
        }
    g->tree.nodes[g->tree.count++] = node;
    g->parts++;
    grow(g);
    g->parts--;
    g->tree.count--;
    g->open = open;
}

static void add_port(growing *g, brute_node node)
{
    g->unserved &= ~(1u << node.port);
    g->tree.nodes[g->tree.count++] = node;
    grow(g);
    g->tree.count--;
    g->unserved |= 1u << node.port;
}

static void grow(growing *g)
{
    int ports = 0;
    for (int i = 0; i < g->ask->port_count; i++)
        ports += (int)(g->unserved >> i & 1);
    if (g->open == 0 && g->unserved == 0) {
        g->visited++;
        g->stopped = !g->visit(g->user, &g->tree);
    }
    /* Each end that no port closes takes a part at least. */
    if (g->open == 0 || g->parts + (g->open > ports ? g->open - ports : 0) > g->most)
        return;
    g->open--;
    int parent = g->open_node[g->open], parent_end = g->open_end[g->open];
    int kind = parent < 0 ? g->ask->source : g->net->parts[g->tree.nodes[parent].part].kind[parent_end];
    for (int i = 0; i < g->ask->port_count && !g->stopped; i++)
        if ((g->unserved >> i & 1) != 0 && joins(g, kind, g->ask->ports[i].kind))
            add_port(g, (brute_node){-1, i, parent, parent_end, 0});
    for (int i = 0; i < g->net->part_count && g->parts < g->most; i++)
        for (int entry = 0; entry < brute_part_entries(&g->net->parts[i]) && !g->stopped; entry++)
            if (joins(g, kind, g->net->parts[i].kind[entry]))
                add_part(g, (brute_node){i, -1, parent, parent_end, entry});
    g->open_node[g->open] = parent;
    g->open_end[g->open++] = parent_end;
}

long brute_every_tree(const brute_net *net, const brute_ask *ask, int most, brute_visit visit, void *user)
{
    growing g;
    memset(&g, 0, sizeof g);
    g.net = net;
    g.ask = ask;
    g.most = most;
    g.unserved = (1u << ask->port_count) - 1;
    g.open_node[0] = -1;
    g.open = 1;
    g.visit = visit;
    g.user = user;
    grow(&g);
    return g.visited;
}
