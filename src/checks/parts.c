/* SPDX-License-Identifier: MIT */
/* What every part must stand, dead ends and plugs too: they see the pressure. */
#include "checks/checks_internal.h"
#include "oilway/hose_material.h"

static void check_rating(ow_checking *checking, size_t node, const ow_part *part)
{
    double wanted_bar = checking->limits.rating_pa / 1e5;
    char where[OW_WHERE_SIZE];
    if (checking->limits.rating_pa < 0.0 ||
        (part->rating_pa >= 0.0 && part->rating_pa >= checking->limits.rating_pa - OW_CHECKING_SLACK_PA))
        return;
    ow_checking_node(checking, node, where);
    /* What fails on an assumed pressure only is a warning. */
    if (checking->rating_assumed && part->rating_pa < 0.0)
        ow_checking_warn(checking, "rating", where,
                         "%s does not say its rating; %.3g bar is assumed of the source", part->id,
                         wanted_bar);
    else if (checking->rating_assumed)
        ow_checking_warn(checking, "rating", where,
                         "%s is rated for %.3g bar; %.3g bar is assumed of the source", part->id,
                         part->rating_pa / 1e5, wanted_bar);
    else if (part->rating_pa < 0.0)
        ow_checking_find(checking, "rating", where, "%s does not say its rating; %.3g bar is wanted",
                         part->id, wanted_bar);
    else
        ow_checking_find(checking, "rating", where, "%s is rated for %.3g bar; %.3g bar is wanted", part->id,
                         part->rating_pa / 1e5, wanted_bar);
}

static void check_temperature(ow_checking *checking, size_t node, const ow_part *part)
{
    const ow_limits *limits = &checking->limits;
    char where[OW_WHERE_SIZE];
    if (!limits->has_temperature)
        return;
    ow_checking_node(checking, node, where);
    if (!part->has_temperature)
        ow_checking_find(checking, "temperature", where, "%s does not say its temperature; %.4g C is wanted",
                         part->id, limits->temperature_c);
    else if (limits->temperature_c < part->temperature_low_c - OW_CHECKING_SLACK_K ||
             limits->temperature_c > part->temperature_high_c + OW_CHECKING_SLACK_K)
        ow_checking_find(checking, "temperature", where, "%s is made for %.4g to %.4g C; %.4g C is wanted",
                         part->id, part->temperature_low_c, part->temperature_high_c, limits->temperature_c);
}

/* Of a hose whose stuff does not stand the fluid, why says more than that a word is missing. */
static void check_fluid(ow_checking *checking, size_t node, const ow_part *part)
{
    const ow_fluid fluid = checking->limits.fluid;
    const ow_hose_material *material = ow_part_hose_material(part);
    char where[OW_WHERE_SIZE];
    if (fluid == OW_FLUID_NONE || (part->fluids & (unsigned)fluid) != 0)
        return;
    ow_checking_node(checking, node, where);
    const char *word = fluid == OW_FLUID_OIL ? "oil" : "coolant";
    if (material != NULL && (fluid == OW_FLUID_OIL ? material->oil : material->coolant) == OW_STANDS_NOT)
        ow_checking_find_mend(
            checking, "fluid", where,
            "Use a hose made for it: PTFE or fluoro-lined for oil, EPDM or silicone for coolant.",
            "%s is not listed for %s: %s does not stand it (%s)", part->id, word, material->title,
            material->source);
    else
        ow_checking_find(checking, "fluid", where, "%s is not listed for %s", part->id, word);
}

/* What no part failed. */
static void pass_parts(ow_checking *checking)
{
    const ow_limits *limits = &checking->limits;
    if (limits->rating_pa >= 0.0 && !ow_checking_has(checking, "rating", NULL))
        ow_checking_pass(checking, "rating", "", "every part is rated for %.3g bar or more%s",
                         limits->rating_pa / 1e5, checking->rating_assumed ? ", which is assumed" : "");
    if (limits->has_temperature && !ow_checking_has(checking, "temperature", NULL))
        ow_checking_pass(checking, "temperature", "", "every part is made for %.4g C", limits->temperature_c);
    if (limits->fluid != OW_FLUID_NONE && !ow_checking_has(checking, "fluid", NULL))
        ow_checking_pass(checking, "fluid", "", "every part is listed for %s",
                         limits->fluid == OW_FLUID_OIL ? "oil" : "coolant");
    if (limits->no_tee && !ow_checking_has(checking, "tee-in-drain", NULL))
        ow_checking_pass(checking, "tee-in-drain", "", "nothing branches");
}

void ow_check_parts(ow_checking *checking)
{
    const ow_layout *layout = checking->layout;
    for (size_t node = 0; node < layout->node_count; node++) {
        const ow_part *part = layout->nodes[node].part;
        char where[OW_WHERE_SIZE];
        if (part == NULL)
            continue;
        check_rating(checking, node, part);
        check_temperature(checking, node, part);
        check_fluid(checking, node, part);
        if (checking->limits.no_tee && part->end_count > 2)
            ow_checking_find(checking, "tee-in-drain", ow_checking_node(checking, node, where),
                             "%s branches a drain", part->id);
    }
    pass_parts(checking);
}
