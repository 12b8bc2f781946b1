/* SPDX-License-Identifier: MIT */
#include <math.h>

#include "oilway/hydraulics.h"
#include "physics/root.h"

/* a mu and b rho of the load's p = a mu Q + b rho Q^2. */
static void load_terms(const ow_load *load, const ow_liquid *liquid, double *linear, double *square)
{
    *linear = load->laminar_share * load->pressure_pa / (load->viscosity_pas * load->flow_m3s) *
              liquid->dynamic_viscosity_pas;
    *square = (1.0 - load->laminar_share) * load->pressure_pa /
              (load->density_kgm3 * load->flow_m3s * load->flow_m3s) * liquid->density_kgm3;
}

double ow_load_pressure_pa(const ow_load *load, const ow_liquid *liquid, double flow_m3s)
{
    double linear, square;
    load_terms(load, liquid, &linear, &square);
    return flow_m3s * (linear + square * flow_m3s);
}

double ow_load_flow_m3s(const ow_load *load, const ow_liquid *liquid, double pressure_pa)
{
    if (pressure_pa <= 0.0)
        return 0.0;
    double linear, square;
    load_terms(load, liquid, &linear, &square);
    /* the quadratic's root in the form that does not cancel when either term vanishes */
    return 2.0 * pressure_pa / (linear + sqrt(linear * linear + 4.0 * square * pressure_pa));
}

size_t ow_branch_total(const ow_branch *trunk)
{
    size_t total = 1;
    for (size_t i = 0; i < trunk->branch_count; i++)
        total += ow_branch_total(&trunk->branches[i]);
    return total;
}

bool ow_branch_has_load(const ow_branch *trunk)
{
    bool found = trunk->has_load;
    for (size_t i = 0; i < trunk->branch_count; i++)
        found = found || ow_branch_has_load(&trunk->branches[i]);
    return found;
}

static bool load_in_range(const ow_load *load)
{
    return load->flow_m3s >= 1e-9 && load->flow_m3s <= OW_FLOW_HIGH_M3S && load->pressure_pa >= 1.0 &&
           load->pressure_pa <= OW_SOURCE_HIGH_PA && load->viscosity_pas >= 1e-5 &&
           load->viscosity_pas <= 1e4 && load->density_kgm3 >= 100.0 && load->density_kgm3 <= 5000.0 &&
           load->laminar_share >= 0.0 && load->laminar_share <= 1.0;
}

static ow_status check_at_depth(const ow_branch *branch, size_t depth)
{
    size_t wrong;
    if (branch->piece_count > OW_PIECES_MAX || branch->branch_count > OW_BRANCHES_MAX ||
        (branch->branch_count > 0 && (branch->has_load || depth == OW_BRANCH_DEPTH_MAX)))
        return OW_RANGE;
    if (!(fabs(branch->rise_m) <= OW_RISE_HIGH_M) || (branch->has_load && !load_in_range(&branch->load)))
        return OW_RANGE;
    if (ow_pieces_check(branch->pieces, branch->piece_count, &wrong) != OW_OK)
        return OW_RANGE;
    for (size_t i = 0; i < branch->branch_count; i++)
        if (check_at_depth(&branch->branches[i], depth + 1) != OW_OK)
            return OW_RANGE;
    return OW_OK;
}

static size_t piece_total(const ow_branch *branch)
{
    size_t total = branch->piece_count;
    for (size_t i = 0; i < branch->branch_count; i++)
        total += piece_total(&branch->branches[i]);
    return total;
}

ow_status ow_branch_check(const ow_branch *trunk)
{
    ow_status status = check_at_depth(trunk, 0);
    if (status == OW_OK &&
        (ow_branch_total(trunk) > OW_BRANCHES_IN_ALL || piece_total(trunk) > OW_PIECES_MAX))
        status = OW_RANGE;
    return status;
}

static bool liquid_in_range(const ow_liquid *liquid, double roughness_m)
{
    return liquid->density_kgm3 >= 100.0 && liquid->density_kgm3 <= 5000.0 &&
           liquid->dynamic_viscosity_pas >= 1e-5 && liquid->dynamic_viscosity_pas <= 1e4 &&
           roughness_m >= 0.0 && roughness_m <= OW_ROUGHNESS_HIGH_M;
}

typedef struct branch_problem {
    const ow_branch *branch;
    const ow_piece *before;
    const ow_liquid *liquid;
    double roughness_m;
    double available_pa; /* at its start, the rise taken off */
} branch_problem;

static const ow_piece *last_piece(const ow_branch *branch, const ow_piece *before)
{
    return branch->piece_count > 0 ? &branch->pieces[branch->piece_count - 1] : before;
}

static double branch_loss_pa(const branch_problem *problem, double flow_m3s)
{
    return ow_pieces_loss_pa(problem->before, problem->branch->pieces, problem->branch->piece_count,
                             problem->liquid, problem->roughness_m, flow_m3s);
}

static double rise_pa(const ow_branch *branch, const ow_liquid *liquid)
{
    return liquid->density_kgm3 * OW_GRAVITY_MS2 * branch->rise_m;
}

static double branch_flow(const branch_problem *parent, const ow_branch *branch, const ow_piece *before,
                          double start_pa);

/* What all branches of the split take at its pressure. */
static double split_flow(const branch_problem *problem, double node_pa)
{
    double flow = 0.0;
    for (size_t i = 0; i < problem->branch->branch_count; i++)
        flow += branch_flow(problem, &problem->branch->branches[i],
                            last_piece(problem->branch, problem->before), node_pa);
    return flow;
}

/* What goes on beyond the pieces at that pressure, less what comes: falls with the flow that comes. */
static double surplus(const void *data, double flow_m3s)
{
    const branch_problem *problem = data;
    double end_pa = problem->available_pa - branch_loss_pa(problem, flow_m3s);
    if (problem->branch->has_load)
        return end_pa - ow_load_pressure_pa(&problem->branch->load, problem->liquid, flow_m3s);
    return split_flow(problem, end_pa) - flow_m3s;
}

static double branch_flow(const branch_problem *parent, const ow_branch *branch, const ow_piece *before,
                          double start_pa)
{
    branch_problem problem = {branch, before, parent->liquid, parent->roughness_m, 0.0};
    problem.available_pa = start_pa - rise_pa(branch, parent->liquid);
    double most = branch->has_load ? ow_load_flow_m3s(&branch->load, problem.liquid, problem.available_pa)
                                   : split_flow(&problem, problem.available_pa);
    double flow = 0.0;
    if (!(most > 0.0))
        return 0.0; /* dead, or too high for its start's pressure */
    if (!ow_root_find(surplus, &problem, 0.0, most, &flow))
        return most; /* no loss to speak of: the upper end is the answer to rounding */
    return flow;
}

typedef struct node_problem {
    const branch_problem *branch;
    double flow_m3s;
} node_problem;

static double node_surplus(const void *data, double node_pa)
{
    const node_problem *node = data;
    return split_flow(node->branch, node_pa) - node->flow_m3s;
}

/*
 * The pressure at a branch's end. At a split it is found from the flow that goes on: behind a tight trunk it
 * is a small difference of large pressures, and would not carry the flow to all its digits. It may be below
 * 0, where a branch falls and pulls.
 */
static double end_pressure_pa(const branch_problem *problem, double loss_pa, double flow_m3s)
{
    const ow_branch *branch = problem->branch;
    double end_pa = problem->available_pa - loss_pa;
    if (branch->has_load)
        return ow_load_pressure_pa(&branch->load, problem->liquid, flow_m3s);
    if (branch->branch_count == 0)
        return fmax(end_pa, 0.0);
    node_problem node = {problem, flow_m3s};
    double most_fall_pa =
        OW_BRANCH_DEPTH_MAX * OW_RISE_HIGH_M * OW_GRAVITY_MS2 * problem->liquid->density_kgm3;
    if (flow_m3s > 0.0)
        ow_root_find(node_surplus, &node, -most_fall_pa, fmax(problem->available_pa, 0.0), &end_pa);
    return end_pa;
}

/* Writes the solved flows, trunk first; returns how many. */
static size_t write_flows(const branch_problem *parent, const ow_branch *branch, const ow_piece *before,
                          double start_pa, size_t parent_index, size_t index, ow_branch_flow *flows)
{
    ow_branch_flow *flow = &flows[index];
    *flow =
        (ow_branch_flow){.branch = branch, .before = before, .parent = parent_index, .start_pa = start_pa};
    flow->flow_m3s = branch_flow(parent, branch, before, start_pa);
    branch_problem problem = {branch, before, parent->liquid, parent->roughness_m, 0.0};
    flow->loss_pa = branch_loss_pa(&problem, flow->flow_m3s);
    flow->rise_pa = rise_pa(branch, parent->liquid);
    problem.available_pa = start_pa - flow->rise_pa;
    flow->end_pa = end_pressure_pa(&problem, flow->loss_pa, flow->flow_m3s);
    size_t written = 1;
    for (size_t i = 0; i < branch->branch_count; i++)
        written += write_flows(parent, &branch->branches[i], last_piece(branch, before), flow->end_pa, index,
                               index + written, flows);
    return written;
}

ow_status ow_branch_solve(const ow_branch *trunk, const ow_liquid *liquid, double roughness_m,
                          double source_pa, ow_branch_flow *flows)
{
    if (ow_branch_check(trunk) != OW_OK || !liquid_in_range(liquid, roughness_m) ||
        !(source_pa >= 0.0 && source_pa <= OW_SOURCE_HIGH_PA))
        return OW_RANGE;
    branch_problem base = {trunk, NULL, liquid, roughness_m, 0.0};
    write_flows(&base, trunk, NULL, source_pa, 0, 0, flows);
    return OW_OK;
}

static double free_surplus(const void *data, double flow_m3s)
{
    const branch_problem *problem = data;
    return problem->available_pa - branch_loss_pa(problem, flow_m3s);
}

ow_status ow_pieces_free_flow_m3s(const ow_piece *pieces, size_t count, const ow_liquid *liquid,
                                  double roughness_m, double drop_pa, double *flow_m3s)
{
    ow_branch line = {.piece_count = count, .pieces = pieces};
    if (ow_branch_check(&line) != OW_OK || !liquid_in_range(liquid, roughness_m) ||
        !(drop_pa >= 0.0 && drop_pa <= 2.0 * OW_SOURCE_HIGH_PA))
        return OW_RANGE;
    branch_problem problem = {&line, NULL, liquid, roughness_m, drop_pa};
    double high = 1e-12;
    while (free_surplus(&problem, high) > 0.0 && high < 1e3)
        high *= 10.0;
    double flow = 0.0;
    if (!ow_root_find(free_surplus, &problem, 0.0, high, &flow))
        return OW_RANGE; /* nothing along the line resists */
    *flow_m3s = flow;
    return OW_OK;
}
