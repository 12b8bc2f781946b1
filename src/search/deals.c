/* SPDX-License-Identifier: MIT */
#include "search/deals.h"

#include "search/filter.h"

typedef struct dealing {
    const ow_table *table;
    unsigned traits, history, supply;
    ow_deal deal;
    ow_deal_take *take;
    void *user;
} dealing;

/* Fills rows and parts for one choice of the exits that are handed the permissions; tells it if finite. */
static ow_status tell(dealing *now, size_t fix, size_t machine)
{
    const ow_table *table = now->table;
    ow_deal *deal = &now->deal;
    deal->parts = 1;
    for (size_t i = 0; i < deal->exit_count; i++) {
        ow_ports share = deal->shares[i];
        unsigned after = ow_rules_pass(now->traits, now->history, i == fix, i == machine);
        deal->rows[i] = ow_table_packing(table, share)->packed[after];
        size_t beyond = table->open[ow_table_at(table, share, deal->rows[i]) + deal->exits[i]];
        if (beyond == OW_TABLE_NONE)
            return OW_OK;
        deal->parts += beyond;
    }
    return now->take(now->user, deal);
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
    deal->need = count == 1 ? 0 : ow_net_places(&table->net->shapes[deal->shape], kinds, count);
    return ow_supply_meets(now->supply, deal->need) ? choose_permissions(now) : OW_OK;
}

static ow_status deal_out(dealing *now, size_t exit, ow_ports left)
{
    ow_deal *deal = &now->deal;
    if (exit + 1 >= deal->exit_count) {
        if (exit < deal->exit_count)
            deal->shares[exit] = left;
        else if (left != 0)
            return OW_OK; /* a plug serves nothing */
        return check_shares(now);
    }
    ow_status status = OW_OK;
    ow_ports share = left;
    for (;;) {
        deal->shares[exit] = share;
        status = deal_out(now, exit + 1, left & ~share);
        if (status != OW_OK || share == 0)
            return status;
        share = (share - 1) & left;
    }
}

ow_status ow_deals(const ow_table *table, uint32_t shape, uint16_t entry, ow_ports set, unsigned packed,
                   unsigned supply, ow_deal_take *take, void *user)
{
    const ow_net_shape *of = &table->net->shapes[shape];
    dealing now = {.table = table,
                   .traits = ow_shape_traits(of),
                   .history = ow_table_packing(table, set)->unpacked[packed],
                   .supply = supply,
                   .deal = {.shape = shape, .entry = entry},
                   .take = take,
                   .user = user};
    if (supply == 0)
        return OW_OK;
    bool entered = false;
    for (size_t end = 0; end < of->end_count; end++) {
        if (of->kinds[end] == entry && !entered)
            entered = true;
        else
            now.deal.exits[now.deal.exit_count++] = of->kinds[end];
    }
    return deal_out(&now, 0, set);
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

ow_status ow_deals_of(const ow_table *table, uint16_t entry, ow_ports set, unsigned packed,
                      ow_deal_take_any *take, void *user)
{
    const ow_net_index *net = table->net;
    passing_on to = {take, user, false};
    ow_status status = OW_OK;
    for (size_t i = net->entry_offset[entry]; status == OW_OK && i < net->entry_offset[entry + 1u]; i++) {
        uint32_t shape = net->entry_shapes[i];
        status = ow_deals(table, shape, entry, set, packed, ow_filter_supply(table, shape), pass_on, &to);
        if (status != OW_OK || table->event != OW_EVENT_FORCED || (set & table->event_bit) == 0 ||
            net->shape_of[table->forced] != shape || !ow_filter_passes(table, table->forced))
            continue;
        to.spent = true;
        unsigned wide = ow_filter_wide_places(table, &net->shapes[shape], &net->parts[table->forced]);
        status = ow_deals(table, shape, entry, set & ~table->event_bit, packed, 1u << wide, pass_on, &to);
        to.spent = false;
    }
    return status;
}
