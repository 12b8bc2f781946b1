/* SPDX-License-Identifier: MIT */
/*
 * The best layout, forward from the source, best partial layout first. A partial layout is an ordered
 * list of open ends; the last is dealt with next, so that parts appear in walking order and ids can be
 * compared from the left. Of two partial layouts with the same open ends and pasts the lesser key wins:
 * what can follow is the same for both. Parts still needed at least are added to the first component
 * (A*); that number never falls by more than a part adds, so the first complete layout taken is the best.
 * It ends: brute_exists has shown that there is one, and below any number of parts there are finitely many.
 */
#include <stdlib.h>
#include <string.h>

#include "brute/state.h"

#define LABELS_MOST 30000

/* A way to reach a state. */
typedef struct label {
    brute_key key;
    long state;
    long from; /* label it was made from */
    int guess; /* parts so far and still needed */
    brute_step step;
} label;

typedef struct walk {
    const brute_ground *ground;
    brute_set set;
    bool *settled; /* by state */
    long settled_capacity;
    label *labels;
    long label_count, label_capacity;
    long *heap;
    long heap_count;
    long current;
} walk;

static bool before(const walk *w, long a, long b)
{
    const label *left = &w->labels[a], *right = &w->labels[b];
    if (left->guess != right->guess)
        return left->guess < right->guess;
    brute_key x = left->key, y = right->key;
    x.parts = y.parts = 0; /* parts are in the guess */
    return brute_key_compare(&x, &y) < 0;
}

static void heap_push(walk *w, long item)
{
    long at = w->heap_count++;
    for (; at > 0 && before(w, item, w->heap[(at - 1) / 2]); at = (at - 1) / 2)
        w->heap[at] = w->heap[(at - 1) / 2];
    w->heap[at] = item;
}

static long heap_pop(walk *w)
{
    long least = w->heap[0], moved = w->heap[--w->heap_count], at = 0;
    for (;;) {
        long child = 2 * at + 1;
        if (child >= w->heap_count)
            break;
        if (child + 1 < w->heap_count && before(w, w->heap[child + 1], w->heap[child]))
            child++;
        if (!before(w, w->heap[child], moved))
            break;
        w->heap[at] = w->heap[child];
        at = child;
    }
    w->heap[at] = moved;
    return least;
}

static void make_room(walk *w)
{
    if (w->label_count == w->label_capacity) {
        w->label_capacity = w->label_capacity == 0 ? 256 : w->label_capacity * 2;
        w->labels = realloc(w->labels, (size_t)w->label_capacity * sizeof *w->labels);
        w->heap = realloc(w->heap, (size_t)w->label_capacity * sizeof *w->heap);
    }
    if (w->set.count >= w->settled_capacity) {
        long was = w->settled_capacity;
        w->settled_capacity = w->set.count * 2 + 256;
        w->settled = realloc(w->settled, (size_t)w->settled_capacity * sizeof *w->settled);
        for (long i = was; w->settled != NULL && i < w->settled_capacity; i++)
            w->settled[i] = false;
    }
    if (w->labels == NULL || w->heap == NULL || w->settled == NULL)
        abort();
}

static void add_to_key(const brute_ground *ground, const brute_step *step, brute_key *key)
{
    const brute_part *part = &ground->net->parts[step->part];
    key->parts++;
    key->unpriced += part->has_price ? 0 : 1;
    key->cents += brute_part_cents(ground->ask, part);
    if (step->stick_out && part->length_um != BRUTE_NOT_SAID)
        key->stick_out_um += part->length_um;
    key->ids[key->id_count++] = (uint8_t)step->part;
}

static void taken(void *user, const brute_state *state, const brute_step *step)
{
    walk *w = user;
    label next;
    bool fresh;
    memset(&next, 0, sizeof next);
    if (w->current >= 0)
        next.key = w->labels[w->current].key;
    if (next.key.id_count == BRUTE_TREE_PARTS)
        return;
    if (step->part >= 0)
        add_to_key(w->ground, step, &next.key);
    next.guess = next.key.parts + brute_still_needed(w->ground, state);
    if (next.guess >= BRUTE_FAR)
        return;
    next.state = brute_set_add(&w->set, state, &fresh);
    make_room(w);
    if (w->settled[next.state])
        return;
    next.from = w->current;
    next.step = *step;
    w->labels[w->label_count] = next;
    heap_push(w, w->label_count++);
}

/* Walks the steps again and hangs each node where it belongs. */
static void write_tree(const walk *w, long last, brute_tree *tree)
{
    brute_step steps[BRUTE_TREE_NODES] = {{0, 0, 0, false}};
    int count = 0, open_node[BRUTE_TREE_NODES * BRUTE_ENDS], open_end[BRUTE_TREE_NODES * BRUTE_ENDS],
        open = 1;
    for (long at = last; w->labels[at].from >= 0; at = w->labels[at].from)
        count++;
    int place = count;
    for (long at = last; w->labels[at].from >= 0; at = w->labels[at].from)
        steps[--place] = w->labels[at].step;
    open_node[0] = -1;
    open_end[0] = 0;
    tree->count = count;
    for (int i = 0; i < count; i++) {
        open--;
        brute_node node = {steps[i].part, steps[i].port, open_node[open], open_end[open], steps[i].entry};
        tree->nodes[i] = node;
        int ends = node.part < 0 ? 0 : w->ground->net->parts[node.part].end_count;
        for (int end = ends - 1; end >= 0; end--)
            if (end != node.entry) {
                open_node[open] = i;
                open_end[open++] = end;
            }
    }
}

static brute_answer search_best(walk *w, brute_result *result)
{
    brute_step none = {-1, -1, 0, false};
    brute_state start = brute_state_start(w->ground);
    taken(w, &start, &none);
    while (w->heap_count > 0 && w->label_count < LABELS_MOST) {
        long least = heap_pop(w);
        brute_state state = w->set.states[w->labels[least].state];
        if (w->settled[w->labels[least].state])
            continue;
        w->settled[w->labels[least].state] = true;
        if (state.count == 0 && !state.forced) {
            result->key = w->labels[least].key;
            write_tree(w, least, &result->tree);
            return BRUTE_FOUND;
        }
        w->current = least;
        if (state.count > 0 && !brute_steps(w->ground, &state, taken, w))
            return BRUTE_TOO_LARGE;
    }
    return BRUTE_TOO_LARGE;
}

void brute_best(const brute_net *net, const brute_ask *ask, brute_result *result)
{
    brute_ground ground;
    walk w;
    memset(&w, 0, sizeof w);
    memset(result, 0, sizeof *result);
    result->answer = brute_exists(net, ask, &result->states);
    if (result->answer != BRUTE_FOUND)
        return;
    brute_ground_lay(&ground, net, ask);
    w.ground = &ground;
    w.current = -1;
    result->answer = search_best(&w, result);
    result->states += w.set.count;
    brute_set_free(&w.set);
    free(w.settled);
    free(w.labels);
    free(w.heap);
}
