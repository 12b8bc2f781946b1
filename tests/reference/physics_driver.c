/* SPDX-License-Identifier: MIT */
/*
 * Lets a script ask the library for single figures: one question a line on standard input, one answer a line
 * on standard output, numbers with 17 digits. A question that is refused answers "refused".
 *   tree RHO MU ROUGHNESS SOURCE BRANCH    flow, end pressure and loss of each branch, in walking order
 *     BRANCH = RISE N (KIND BORE LENGTH COUNT)*N  then  load Q P MU RHO SHARE | split K BRANCH*K | dead
 *   drain RHO MU BORE SLOPE FLOW           depth over bore, velocity, Re, half-full capacity
 *   full RHO MU FLOW N (BORE LENGTH)*N     friction of a drain that runs full
 *   star DEPTH                             Q* by the integral and by the polynomial
 *   water T                                density, viscosity
 *   boils CAP                              temperature, water
 *   oil KV40 KV100 RHO15 T                 viscosity, density
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/coolant.h"
#include "oilway/drain.h"
#include "oilway/oil.h"

#define WORDS_MAX 4096
#define POOL 256

typedef struct question {
    char *words[WORDS_MAX];
    size_t count, at;
    ow_piece pieces[POOL];
    size_t piece_count;
    ow_branch branches[POOL];
    size_t branch_count;
} question;

static const char *word(question *q)
{
    if (q->at >= q->count) {
        fprintf(stderr, "physics_driver: a question ends too soon\n");
        exit(2);
    }
    return q->words[q->at++];
}

static double number(question *q)
{
    return strtod(word(q), NULL);
}

static ow_piece read_piece(question *q)
{
    ow_piece piece = {.kind = OW_PIECE_KIND_COUNT};
    const char *kind = word(q);
    for (int i = 0; i < OW_PIECE_KIND_COUNT; i++)
        if (strcmp(kind, ow_piece_word((ow_piece_kind)i)) == 0)
            piece.kind = (ow_piece_kind)i;
    piece.bore_m = number(q);
    piece.length_m = number(q);
    piece.count = (int)number(q);
    return piece;
}

static void read_branch(question *q, ow_branch *branch)
{
    *branch = (ow_branch){0};
    branch->rise_m = number(q);
    branch->piece_count = (size_t)number(q);
    branch->pieces = &q->pieces[q->piece_count];
    for (size_t i = 0; i < branch->piece_count && q->piece_count < POOL; i++)
        q->pieces[q->piece_count++] = read_piece(q);
    const char *end = word(q);
    if (strcmp(end, "load") == 0) {
        branch->has_load = true;
        branch->load = (ow_load){.name = "load"};
        branch->load.flow_m3s = number(q);
        branch->load.pressure_pa = number(q);
        branch->load.viscosity_pas = number(q);
        branch->load.density_kgm3 = number(q);
        branch->load.laminar_share = number(q);
    } else if (strcmp(end, "split") == 0) {
        branch->branch_count = (size_t)number(q);
        ow_branch *arms = &q->branches[q->branch_count];
        q->branch_count += branch->branch_count;
        branch->branches = arms;
        for (size_t i = 0; i < branch->branch_count; i++)
            read_branch(q, &arms[i]);
    }
}

static ow_liquid read_liquid(question *q)
{
    ow_liquid liquid = {0};
    liquid.density_kgm3 = number(q);
    liquid.dynamic_viscosity_pas = number(q);
    return liquid;
}

static bool answer_tree(question *q)
{
    ow_liquid liquid = read_liquid(q);
    double roughness = number(q), source = number(q);
    ow_branch_flow flows[POOL];
    ow_branch trunk;
    read_branch(q, &trunk);
    if (ow_branch_solve(&trunk, &liquid, roughness, source, flows) != OW_OK)
        return false;
    for (size_t i = 0; i < ow_branch_total(&trunk); i++)
        printf("%.17g %.17g %.17g ", flows[i].flow_m3s, flows[i].end_pa, flows[i].loss_pa);
    return true;
}

static bool answer_drain(question *q)
{
    ow_drain_ask ask = {.liquid = read_liquid(q)};
    ow_drain_flow flow;
    ask.bore_m = number(q);
    ask.slope_rad = number(q);
    ask.flow_m3s = number(q);
    if (ow_drain_run(&ask, &flow) != OW_OK)
        return false;
    printf("%.17g %.17g %.17g %.17g", flow.fill, flow.velocity_ms, flow.reynolds, flow.half_full_m3s);
    return true;
}

static bool answer_full(question *q)
{
    ow_liquid liquid = read_liquid(q);
    ow_drain_segment route[16];
    double flow = number(q);
    size_t count = (size_t)number(q);
    for (size_t i = 0; i < count && i < 16; i++) {
        double bore = number(q);
        route[i] = (ow_drain_segment){bore, number(q), 0.5};
    }
    printf("%.17g", ow_drain_full_loss_pa(route, count, flow, &liquid));
    return count <= 16;
}

static bool answer_oil(question *q)
{
    double kv40 = number(q), kv100 = number(q), density = number(q), at = number(q), viscosity;
    ow_oil oil;
    if (ow_oil_set("", kv40, kv100, density, &oil) != OW_OK ||
        ow_oil_viscosity_mm2s(&oil, at, &viscosity) != OW_OK)
        return false;
    printf("%.17g %.17g", viscosity, ow_oil_density_kgm3(&oil, at));
    return true;
}

static bool answer_single(question *q, const char *what)
{
    double x = number(q), boiling;
    if (strcmp(what, "star") == 0) {
        printf("%.17g %.17g", ow_part_full_star(x), ow_part_full_star_compact(x));
    } else if (strcmp(what, "water") == 0) {
        ow_liquid water = ow_coolant_liquid(OW_WATER, x);
        printf("%.17g %.17g", water.density_kgm3, water.dynamic_viscosity_pas);
    } else if (strcmp(what, "boils") == 0 && ow_coolant_boiling_c(OW_WATER, x, &boiling) == OW_OK) {
        printf("%.17g", boiling);
    } else {
        return false;
    }
    return true;
}

int main(void)
{
    static char line[64 * 1024];
    static question q;
    while (fgets(line, sizeof line, stdin) != NULL) {
        memset(&q, 0, sizeof q);
        char *rest = line, *next;
        while (q.count < WORDS_MAX && (next = strtok_r(rest, " \n", &rest)) != NULL)
            q.words[q.count++] = next;
        const char *what = word(&q);
        bool known = strcmp(what, "tree") == 0    ? answer_tree(&q)
                     : strcmp(what, "drain") == 0 ? answer_drain(&q)
                     : strcmp(what, "full") == 0  ? answer_full(&q)
                     : strcmp(what, "oil") == 0   ? answer_oil(&q)
                                                  : answer_single(&q, what);
        puts(known ? "" : "refused");
    }
    return 0;
}
