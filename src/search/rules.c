/* SPDX-License-Identifier: MIT */
#include "search/rules.h"

ow_rules ow_rules_of(const ow_search_input *ask)
{
    ow_rules rules = {.hoses = ask->limits.hoses,
                      .closing = ask->limits.closing,
                      .remote_switch = ask->limits.remote_switch};
    for (size_t i = 0; i < ask->port_count; i++) {
        ow_ports port = 1u << i;
        if (!ask->ports[i].served) {
            rules.kept |= port;
            continue;
        }
        if (rules.served == 0)
            rules.first = port;
        rules.served |= port;
        ow_restricting restricting = ask->limits.restricting;
        if (restricting == OW_RESTRICTING_BY_PORT)
            restricting = ask->ports[i].restricting;
        if (restricting == OW_RESTRICTING_NEEDED)
            rules.needing |= port;
        if (restricting == OW_RESTRICTING_NEEDED || restricting == OW_RESTRICTING_SINGLE)
            rules.single |= port;
        if (restricting == OW_RESTRICTING_BARRED)
            rules.barring |= port;
        if (ask->ports[i].machine)
            rules.machines |= port;
    }
    bool several = (rules.machines & (rules.machines - 1)) != 0;
    rules.apart = several && ow_rules_want_hose(&rules);
    return rules;
}

unsigned ow_rules_asked(const ow_rules *rules, ow_ports set)
{
    unsigned asked = 0;
    bool serves = (set & rules->served) != 0;
    /* The first port's set must know of hoses even where they are free: the stick-out ends there. */
    if ((serves && ow_rules_want_hose(rules)) || ((set & rules->first) != 0 && rules->hoses == OW_HOSES_FREE))
        asked |= OW_PASSED_HOSE;
    if ((set & rules->single) != 0)
        asked |= OW_PASSED_RESTRICTOR;
    if (serves && rules->closing)
        asked |= OW_MAY_FIX;
    if ((set & rules->machines) != 0 && rules->apart)
        asked |= OW_MAY_MACHINE;
    return asked;
}

unsigned ow_rules_wanted(const ow_rules *rules, size_t port)
{
    unsigned wanted = ow_rules_asked(rules, 1u << port);
    if ((rules->needing >> port & 1u) == 0)
        wanted &= ~OW_PASSED_RESTRICTOR;
    return ow_rules_want_hose(rules) ? wanted : wanted & ~OW_PASSED_HOSE;
}

unsigned ow_rules_join(unsigned history, bool turns)
{
    return turns ? history | OW_MAY_FIX : history;
}

bool ow_rules_may_pass(const ow_rules *rules, unsigned traits, unsigned history, ow_ports share)
{
    bool serves = (share & rules->served) != 0, keeps = (share & rules->kept) != 0;
    if ((traits & OW_TRAIT_HOSE) != 0) {
        if (keeps && !rules->remote_switch)
            return false;
        if (serves && rules->hoses == OW_HOSES_NONE)
            return false;
        if (serves && rules->hoses == OW_HOSES_ONE && (history & OW_PASSED_HOSE) != 0)
            return false;
    }
    if ((traits & OW_TRAIT_RESTRICTOR) != 0) {
        bool second = (share & rules->single) != 0 && (history & OW_PASSED_RESTRICTOR) != 0;
        return !keeps && !second && (share & rules->barring) == 0;
    }
    return true;
}

unsigned ow_rules_pass(unsigned traits, unsigned history, bool fix, bool machine)
{
    if (!fix)
        history &= ~OW_MAY_FIX;
    if (!machine)
        history &= ~OW_MAY_MACHINE;
    if ((traits & OW_TRAIT_HOSE) != 0) /* beyond a hose begins a piece of its own, at each of its ends */
        history |= OW_PASSED_HOSE | OW_MAY_MACHINE;
    if ((traits & OW_TRAIT_RESTRICTOR) != 0)
        history |= OW_PASSED_RESTRICTOR;
    return history;
}

bool ow_rules_sticks_out(const ow_rules *rules, unsigned traits, unsigned history, ow_ports set)
{
    return (set & rules->first) != 0 && (traits & OW_TRAIT_HOSE) == 0 && (history & OW_PASSED_HOSE) == 0;
}
