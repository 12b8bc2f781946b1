/* SPDX-License-Identifier: MIT */
#include "search/deals.h"

#include "search/filter.h"

typedef struct dealing {
    const ow_table *table;
    unsigned traits, history;
    unsigned freest; /* history behind the part with all permissions handed on: what an exit has at best */
    unsigned supply; /* 0: that of the shape, worked out only if wanted */
    size_t most;
    ow_deal deal;
    ow_deal_take *take;
    void *user;
} dealing;

/* Parts beyond an exit that serves a share. */
static size_t beyond(const ow_table *table, const ow_deal *deal, size_t exit, unsigned row)
{
    return table->open[ow_table_at(table, deal->shares[exit], row) + deal->exits[exit]];
}

/* Fills rows and parts for one choice of the exits that are handed the permissions; tells it if there are no
 * more than wanted. */
static ow_status tell(dealing *now, size_t fix, size_t machine)
{
    const ow_table *table = now->table;
    ow_deal *deal = &now->deal;
    deal->parts = 1;
    for (size_t i = 0; i < deal->exit_count; i++) {
        unsigned after = ow_rules_pass(now->traits, now->history, i == fix, i == machine);
        deal->rows[i] = ow_table_packing(table, deal->shares[i])->packed[after];
        deal->parts += beyond(table, deal, i, deal->rows[i]);
    }
    return deal->parts <= now->most ? now->take(now->user, deal) : OW_OK;
}

/* Of the exits whose shares ask about a permission that the history has, each is tried. */
static unsigned askers(const dealing *now, unsigned bit)
{
    unsigned asking = 0;
    for (size_t i = 0; i < now->deal.exit_count; i++)
        if ((now->table->asked[now->deal.shares[i]] & bit) != 0)
            asking |= 1u << i;
    return (now->history & bit) == 0 || asking == 0 ? 1u : asking;
}

static ow_status choose_permissions(dealing *now)
{
    unsigned fixing = askers(now, OW_MAY_FIX);
    unsigned machining = (now->traits & OW_TRAIT_HOSE) != 0 ? 1u : askers(now, OW_MAY_MACHINE);
    ow_status status = OW_OK;
    for (size_t fix = 0; fix < OW_NET_ENDS - 1; fix++)
        for (size_t machine = 0; status == OW_OK && machine < OW_NET_ENDS - 1; machine++)
            if ((fixing >> fix & 1u) != 0 && (machining >> machine & 1u) != 0)
                status = tell(now, fix, machine);
    return status;
}

static ow_status check_shares(dealing *now)
{
    const ow_table *table = now->table;
    ow_deal *deal = &now->deal;
    uint16_t kinds[OW_NET_ENDS] = {deal->entry};
    size_t count = 1;
    for (size_t i = 0; i < deal->exit_count; i++) {
        ow_ports share = deal->shares[i];
        if (share != 0 && !ow_rules_may_pass(&table->rules, now->traits, now->history, share))
            return OW_OK;
        if (i > 0 && deal->exits[i] == deal->exits[i - 1] && share > deal->shares[i - 1])
            return OW_OK; /* the same with equal ends exchanged */
        if ((share & table->rules.served) != 0)
            kinds[count++] = deal->exits[i];
    }
    unsigned supply = now->supply != 0 ? now->supply : ow_filter_supply(table, deal->shape);
    deal->need = count == 1 ? 0 : ow_net_places(&table->net->shapes[deal->shape], kinds, count);
    return ow_supply_meets(supply, deal->need) ? choose_permissions(now) : OW_OK;
}

/* Every share for the exit, the last taking what is left. `parts`: the part, and at least so many beyond the
 * exits before. */
static ow_status deal_out(dealing *now, size_t exit, ow_ports left, size_t parts)
{
    ow_deal *deal = &now->deal;
    if (exit == deal->exit_count)
        return left == 0 ? check_shares(now) : OW_OK; /* a plug serves nothing */
    ow_status status = OW_OK;
    for (ow_ports share = left;; share = (share - 1) & left) {
        deal->shares[exit] = share;
        size_t sum =
            parts + beyond(now->table, deal, exit, ow_table_packing(now->table, share)->packed[now->freest]);
        if (sum <= now->most)
            status = deal_out(now, exit + 1, left & ~share, sum);
        if (status != OW_OK || share == 0 || exit + 1 == deal->exit_count)
            return status;
    }
}

static ow_status deal_shape(dealing *now, uint32_t shape, ow_ports set)
{
    const ow_net_shape *of = &now->table->net->shapes[shape];
    bool entered = false;
    now->traits = ow_shape_traits(of);
    now->freest = ow_rules_pass(now->traits, now->history, true, true);
    now->deal.shape = shape;
    now->deal.exit_count = 0;
    for (size_t end = 0; end < of->end_count; end++) {
        if (of->kinds[end] == now->deal.entry && !entered)
            entered = true;
        else
            now->deal.exits[now->deal.exit_count++] = of->kinds[end];
    }
    return deal_out(now, 0, set, 1);
}

ow_status ow_deals(const ow_table *table, uint32_t shape, uint16_t entry, ow_ports set, unsigned packed,
                   unsigned supply, ow_deal_take *take, void *user)
{
    dealing now = {.table = table,
                   .history = ow_table_packing(table, set)->unpacked[packed],
                   .supply = supply,
                   .most = OW_TABLE_NONE - 1,
                   .deal = {.entry = entry},
                   .take = take,
                   .user = user};
    return deal_shape(&now, shape, set);
}

typedef struct passing_on {
    ow_deal_take_any *take;
    void *user;
    bool spent;
} passing_on;

static ow_status pass_on(void *user, const ow_deal *deal)
{
    passing_on *to = user;
    return to->take(to->user, deal, to->spent);
}

/* The deals of a shape that spend the one use of the forced part. */
static ow_status deal_forced(dealing *now, ow_ports set)
{
    const ow_table *table = now->table;
    const ow_net_index *net = table->net;
    if (!ow_filter_passes(table, table->forced))
        return OW_OK;
    const ow_net_shape *shape = &net->shapes[net->shape_of[table->forced]];
    now->supply = 1u << ow_filter_wide_places(table, shape, &net->parts[table->forced]);
    return deal_shape(now, net->shape_of[table->forced], set & ~table->event_bit);
}

static bool has_end(const ow_net_shape *shape, uint16_t kind)
{
    for (size_t end = 0; end < shape->end_count; end++)
        if (shape->kinds[end] == kind)
            return true;
    return false;
}

ow_status ow_deals_of(const ow_table *table, uint16_t entry, ow_ports set, unsigned packed, size_t most,
                      ow_deal_take_any *take, void *user)
{
    const ow_net_index *net = table->net;
    passing_on to = {take, user, false};
    dealing now = {.table = table,
                   .history = ow_table_packing(table, set)->unpacked[packed],
                   .most = most,
                   .deal = {.entry = entry},
                   .take = pass_on,
                   .user = &to};
    ow_status status = OW_OK;
    for (size_t i = net->entry_offset[entry]; status == OW_OK && i < net->entry_offset[entry + 1u]; i++)
        status = deal_shape(&now, net->entry_shapes[i], set);
    to.spent = true;
    if (status == OW_OK && table->event == OW_EVENT_FORCED && (set & table->event_bit) != 0 &&
        has_end(&net->shapes[net->shape_of[table->forced]], entry))
        status = deal_forced(&now, set);
    return status;
}
