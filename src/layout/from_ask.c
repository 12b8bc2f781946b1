/* SPDX-License-Identifier: MIT */
/* An ask in the integers of the search, and a tree of the search as a layout. */
#include <math.h>
#include <string.h>

#include "base/source.h"
#include "layout/from_search.h"
#include "layout/storage.h"

#define METRE_UM 1000000

static ow_hoses hoses_of(ow_choice flexible)
{
    switch (flexible) {
    case OW_YES:
        return OW_HOSES_ONE;
    case OW_SOME:
        return OW_HOSES_SOME;
    case OW_NO:
        return OW_HOSES_NONE;
    case OW_ANY:
        break;
    }
    return OW_HOSES_FREE;
}

static ow_restricting restricting_of(ow_restrictor_ask asked)
{
    switch (asked) {
    case OW_RESTRICTOR_REQUIRED:
        return OW_RESTRICTING_NEEDED;
    case OW_RESTRICTOR_FORBIDDEN:
        return OW_RESTRICTING_BARRED;
    case OW_RESTRICTOR_BY_UNIT:
    case OW_RESTRICTOR_ANY:
        break;
    }
    return OW_RESTRICTING_FREE;
}

/* What is asked of the restrictors before a port. In a feed a second one starves the bearing, though nothing
 * else be asked; one that is built in counts. */
static ow_restricting restricting_at(const ow_ask *ask, const ow_given *given)
{
    ow_restrictor_ask asked = ask->limits.restrictor;
    if (asked == OW_RESTRICTOR_BY_UNIT)
        asked = ow_given_wants(given, OW_BEARING_UNKNOWN);
    if (asked != OW_RESTRICTOR_ANY || ask->circuit != OW_FEED)
        return restricting_of(asked);
    bool built_in = given->machine != NULL && given->machine->restrictor == OW_BUILT_IN_YES;
    return built_in ? OW_RESTRICTING_BARRED : OW_RESTRICTING_SINGLE;
}

/* The same of all ports that are served. */
static ow_restricting restricting_of_all(const ow_ask *ask)
{
    bool begun = false;
    ow_restricting all = OW_RESTRICTING_FREE;
    for (size_t i = 1; i < ask->given_count; i++) {
        if (ask->givens[i].role != OW_ROLE_TO)
            continue;
        ow_restricting here = restricting_at(ask, &ask->givens[i]);
        if (begun && here != all)
            return OW_RESTRICTING_BY_PORT;
        all = here;
        begun = true;
    }
    return all;
}

ow_search_limits ow_search_limits_of(const ow_ask *ask)
{
    const ow_limits *limits = &ask->limits;
    ow_search_limits made = OW_SEARCH_LIMITS_INIT;
    if (!limits->bore_warns)
        made.least_bore_um = ow_um_of(limits->least_bore_m);
    made.hoses = hoses_of(limits->flexible);
    made.closing = limits->closing;
    made.restricting = restricting_of_all(ask);
    made.orifice_low_um = ow_um_of(limits->orifice_low_m);
    made.orifice_high_um = ow_um_of(limits->orifice_high_m);
    made.rating_pa = limits->rating_pa >= 0 ? llround(limits->rating_pa) : OW_NET_NOT_SAID;
    made.has_temperature = limits->has_temperature;
    made.temperature_mc = limits->has_temperature ? llround(limits->temperature_c * 1e3) : 0;
    made.fluid = (unsigned)limits->fluid;
    if (ow_limits_pressed(ask->circuit, limits))
        made.fluid |= OW_PRESSED(made.fluid);
    made.no_tee = limits->no_tee;
    made.no_clamp = limits->no_clamp;
    made.tolerate = limits->tolerate;
    made.remote_switch = limits->remote_switch;
    return made;
}

const ow_end *ow_search_kind_end(const ow_search *search, size_t kind)
{
    size_t own = search->net->kind_count;
    return kind < own ? &search->net->kinds[kind] : search->extra[kind - own];
}

void ow_search_write_given(const ow_search *search, size_t given, ow_text *text)
{
    const ow_given *at = &search->ask->givens[given];
    char name[OW_END_TEXT_SIZE];
    if (at->machine != NULL || at->fixture != NULL)
        ow_text_add(text, at->name);
    else if (given == 0)
        ow_text_add(text, "the source");
    else
        ow_text_add(text, at->role == OW_ROLE_KEEP ? "the kept port" : "the port asked for");
    ow_text_format(text, " (%s)", ow_end_name(&at->end, name));
}

/* ---- given ports ---------------------------------------------------------------------------- */

/* Kind of a given end: the net's, or one of this ask alone, known already or new. */
static uint32_t kind_of(ow_search *search, const ow_end *end)
{
    char name[OW_END_TEXT_SIZE];
    size_t known = ow_map_get(&search->net->by_text, ow_end_name(end, name));
    if (known != OW_MAP_NONE)
        return (uint32_t)known;
    size_t own = search->net->kind_count, extra = 0;
    while (extra < search->input.extra_count && !ow_end_same(search->extra[extra], end))
        extra++;
    if (extra == search->input.extra_count) {
        search->extra[extra] = end;
        search->input.extra_count++;
    }
    return (uint32_t)(own + extra);
}

static ow_status mate_extras(ow_search *search)
{
    size_t own = search->net->kind_count, count = search->input.extra_count;
    ow_net_kind *kinds = ow_arena_get_array(&search->arena, count, sizeof *kinds);
    ow_net_mate *mates = ow_arena_get_array(&search->arena, count * (own + count), sizeof *mates);
    if (kinds == NULL || mates == NULL)
        return OW_MEMORY;
    size_t mate_count = 0;
    for (size_t extra = 0; extra < count; extra++) {
        kinds[extra].turns = ow_end_turns(search->extra[extra]);
        kinds[extra].clamped = ow_end_clamps(search->extra[extra]);
        for (size_t other = 0; other <= own + extra; other++) {
            ow_net_mate mate = {(uint16_t)(own + extra), (uint16_t)other, false, false};
            if (ow_net_pair(search->extra[extra], ow_search_kind_end(search, other), &mate.tolerated,
                            &mate.turns))
                mates[mate_count++] = mate;
        }
    }
    search->input.extra_kinds = kinds;
    search->input.extra_mates = mates;
    search->input.extra_mate_count = mate_count;
    return OW_OK;
}

static ow_status check_givens(const ow_search *search)
{
    const ow_ask *ask = search->ask;
    ow_status status = OW_OK;
    if (ask->given_count < 2 || ask->given_count > OW_PORTS_MAX + 1)
        return ow_report(search->context, OW_ERROR, OW_RANGE, NULL, "a source and one to six ports", NULL,
                         "%zu given ports", ask->given_count);
    for (size_t i = 0; i < ask->given_count; i++) {
        char name[OW_END_TEXT_SIZE];
        if (!ow_end_is_whole(&ask->givens[i].end))
            status = ow_report(search->context, OW_ERROR, OW_INPUT, NULL, "an end with its pitch and seat",
                               NULL, "the end of %s, \"%s\", leaves something open", ask->givens[i].name,
                               ow_end_name(&ask->givens[i].end, name));
    }
    return status;
}

static ow_status build_ports(ow_search *search)
{
    const ow_ask *ask = search->ask;
    search->extra = ow_arena_get_array(&search->arena, ask->given_count, sizeof *search->extra);
    ow_search_port *ports = ow_arena_get_array(&search->arena, ask->given_count, sizeof *ports);
    if (search->extra == NULL || ports == NULL)
        return OW_MEMORY;
    search->input.source = kind_of(search, &ask->givens[0].end);
    for (size_t i = 1; i < ask->given_count; i++) {
        const ow_given *given = &ask->givens[i];
        ports[i - 1] = (ow_search_port){.kind = kind_of(search, &given->end),
                                        .served = given->role != OW_ROLE_KEEP,
                                        .machine = given->machine != NULL};
        if (given->role == OW_ROLE_TO)
            ports[i - 1].restricting = restricting_at(ask, given);
    }
    search->input.port_count = ask->given_count - 1;
    search->input.ports = ports;
    return mate_extras(search);
}

/* Where the id would stand among the catalogue's parts, which are in order of id. */
bool ow_search_part_index(const ow_search *search, const char *id, size_t *index)
{
    const ow_catalog *catalog = search->net->catalog;
    size_t low = 0, high = ow_catalog_part_count(catalog);
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        int order = strcmp(ow_catalog_part_at(catalog, middle)->id, id);
        if (order == 0) {
            *index = middle;
            return true;
        }
        if (order < 0)
            low = middle + 1;
        else
            high = middle;
    }
    return false;
}

/* An id that the catalogue has not cannot be used anyway. */
static ow_status build_without(ow_search *search)
{
    const ow_ask *ask = search->ask;
    size_t *without = ow_arena_get_array(&search->arena, ask->without_count, sizeof *without);
    if (without == NULL)
        return OW_MEMORY;
    for (size_t i = 0; i < ask->without_count; i++)
        if (ow_search_part_index(search, ask->without[i], &without[search->input.without_count]))
            search->input.without_count++;
    search->input.without = without;
    return OW_OK;
}

/* All but the search itself. */
static ow_status prepare(const ow_context *context, const ow_net *net, const ow_ask *ask, ow_search **search)
{
    ow_search *made = ow_new_array(context, 1, sizeof *made);
    if (made == NULL)
        return OW_MEMORY;
    *made = (ow_search){.context = context,
                        .net = net,
                        .ask = ask,
                        .arena = ow_arena_new(context),
                        .words = ow_text_new(context)};
    made->input.limits = ow_search_limits_of(ask);
    made->input.hose_length_um = ask->hose_length_m >= 0 ? ow_um_of(ask->hose_length_m) : METRE_UM;
    ow_status status = check_givens(made);
    if (status == OW_OK)
        status = build_ports(made);
    if (status == OW_OK)
        status = build_without(made);
    if (status != OW_OK) {
        ow_search_free(made);
        return status;
    }
    *search = made;
    return OW_OK;
}

ow_status ow_search_new(const ow_context *context, const ow_net *net, const ow_ask *ask, ow_search **search)
{
    ow_search *made;
    ow_status status = prepare(context, net, ask, &made);
    if (status != OW_OK)
        return status;
    status = ow_resolve_new(context, net->index, &made->input, &made->resolve);
    if (status != OW_OK) {
        ow_search_free(made);
        return status;
    }
    *search = made;
    return OW_OK;
}

ow_status ow_search_new_hopeful(const ow_context *context, const ow_net *net, const ow_ask *ask,
                                ow_search **search)
{
    ow_search *made;
    bool hopeless = false;
    ow_status status = prepare(context, net, ask, &made);
    if (status != OW_OK)
        return status;
    if (ask->given_count > 2) /* one port alone is as quick */
        status = ow_resolve_hopeless(context, net->index, &made->input, &hopeless);
    if (status == OW_OK)
        status = hopeless ? OW_NONE : ow_resolve_new(context, net->index, &made->input, &made->resolve);
    if (status != OW_OK) {
        ow_search_free(made);
        return status;
    }
    *search = made;
    return OW_OK;
}

void ow_search_free(ow_search *search)
{
    if (search == NULL)
        return;
    const ow_context *context = search->context;
    ow_release(context, search->best.nodes);
    ow_resolve_free(search->resolve);
    ow_text_done(&search->words);
    ow_arena_done(&search->arena);
    ow_release(context, search);
}

/* ---- layouts -------------------------------------------------------------------------------- */

static void write_node(const ow_search *search, const ow_tree_node *from, ow_layout_node *node)
{
    *node = (ow_layout_node){.parent = from->parent, .length_m = OW_NOT_SAID};
    for (size_t end = 0; end < OW_PART_ENDS; end++)
        node->exits[end] = from->exits[end];
    if (from->part == OW_TREE_NONE) {
        node->given = from->port == OW_TREE_NONE ? 0 : from->port + 1;
    } else {
        node->part = ow_catalog_part_at(search->net->catalog, from->part);
        node->enter = from->enter;
        if (node->part->kind == OW_HOSE)
            node->length_m = search->ask->hose_length_m;
    }
    node->parent_end = from->parent == OW_TREE_NONE ? 0 : from->parent_end;
}

static ow_status write_layout(const ow_search *search, const ow_tree *tree, ow_layout *layout)
{
    ow_layout made;
    ow_status status = ow_layout_begin(search->context, &made);
    if (status != OW_OK)
        return status;
    made.nodes = ow_arena_get_array(ow_layout_arena(&made), tree->node_count, sizeof *made.nodes);
    if (made.nodes == NULL) {
        ow_layout_free(&made);
        return OW_MEMORY;
    }
    const ow_ask *ask = search->ask;
    made.title = ask->title != NULL ? ask->title : "";
    made.circuit = ask->circuit;
    made.asked = ask->limits;
    made.has_asked = true;
    made.given_count = ask->given_count;
    made.givens = ask->givens;
    made.node_count = tree->node_count;
    for (size_t i = 0; i < tree->node_count; i++)
        write_node(search, &tree->nodes[i], &made.nodes[i]);
    ow_layout_number(&made);
    *layout = made;
    return OW_OK;
}

ow_status ow_search_best(ow_search *search)
{
    if (!search->begun) {
        ow_status status = ow_resolve_next(search->resolve, &search->best);
        if (status != OW_OK && status != OW_NONE)
            return status;
        search->begun = true;
    }
    return search->best.nodes == NULL ? OW_NONE : OW_OK;
}

int ow_search_compare(const ow_search *left, const ow_search *right)
{
    return ow_key_compare(&left->best.key, &right->best.key);
}

ow_status ow_search_next(ow_search *search, ow_layout *layout)
{
    ow_status status = ow_search_best(search);
    if (status != OW_OK)
        return status;
    if (!search->best_told) {
        status = write_layout(search, &search->best, layout);
        search->best_told = status == OW_OK;
        return status;
    }
    ow_tree tree;
    status = ow_resolve_next(search->resolve, &tree);
    if (status != OW_OK)
        return status;
    status = write_layout(search, &tree, layout);
    ow_release(search->context, tree.nodes);
    return status;
}

ow_status ow_search_keep_words(ow_search *search, const char **kept)
{
    const char *copy = ow_arena_keep(&search->arena, &search->words);
    if (copy == NULL)
        return OW_MEMORY;
    *kept = copy;
    return OW_OK;
}

#define DIGITS_OF(number) #number
#define DIGITS(number) DIGITS_OF(number)

const char *ow_search_cut(const ow_search *search)
{
    size_t parts;
    bool capped;
    if (ow_resolve_best_parts(search->resolve, &parts, &capped) == OW_NONE)
        return capped ? "there is none of " DIGITS(OW_SEARCH_PARTS_MAX) " parts or fewer" : "there is none";
    switch (ow_resolve_end(search->resolve)) {
    case OW_LIST_GOES_ON:
        return "as many as were asked for; there may be more";
    case OW_LIST_PARTS_ABOVE:
        return "any other has over " DIGITS(OW_LIST_USUAL_ABOVE) " parts more than the best";
    case OW_LIST_LOOKED:
        return DIGITS(
            OW_LIST_USUAL_LOOKED) " ways to put parts together were looked at, the fewest parts first, "
                                  "and that is where the list was cut";
    case OW_LIST_ALL:
        break;
    }
    return "there is no other that is really different";
}
