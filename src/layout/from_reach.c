/* SPDX-License-Identifier: MIT */
/* How far a search got from either side, and where the two come nearest to each other. */
#include <string.h>

#include "layout/from_search.h"

#define FAR 1000u

/* How unlike two ends are, as a fitter would see it: thread first, then seat, then gender. FAR: nothing
 * alike. */
static unsigned unlikeness(const ow_end *a, const ow_end *b)
{
    ow_thread thread_a, thread_b;
    bool screwed_a = ow_end_thread(a, &thread_a), screwed_b = ow_end_thread(b, &thread_b);
    if (screwed_a != screwed_b || (!screwed_a && a->form != b->form))
        return FAR;
    unsigned sum = 0;
    if (screwed_a) {
        double apart = ow_thread_major_m(&thread_a) - ow_thread_major_m(&thread_b);
        if (apart > 1.5e-3 || apart < -1.5e-3)
            return FAR;
        if (!ow_thread_same(&thread_a, &thread_b))
            sum += thread_a.family == thread_b.family && thread_a.size == thread_b.size ? 4 : 8;
    } else if (a->size_unit != b->size_unit || a->size != b->size || strcmp(a->name, b->name) != 0) {
        sum += 8;
    }
    sum += a->form != b->form || a->seat != b->seat ? 2 : 0;
    return sum + (a->gender != b->gender ? 1 : 0);
}

typedef struct nearest {
    unsigned apart;
    size_t from, to; /* kinds of open end: reached, and wanted */
} nearest;

static nearest find_nearest(const ow_search *search, const bool *reached, const bool *wanted, size_t count)
{
    nearest best = {FAR, 0, 0};
    for (size_t from = 0; from < count; from++)
        for (size_t to = 0; reached[from] && to < count; to++) {
            if (!wanted[to])
                continue;
            unsigned apart = unlikeness(ow_search_kind_end(search, from), ow_search_kind_end(search, to));
            if (apart < best.apart)
                best = (nearest){apart, from, to};
        }
    return best;
}

static size_t count_of(const bool *flags, size_t count)
{
    size_t sum = 0;
    for (size_t i = 0; i < count; i++)
        sum += flags[i];
    return sum;
}

static void write_port(ow_search *search, const bool *reached, const bool *wanted, size_t count, size_t port,
                       size_t wanted_count)
{
    ow_text *words = &search->words;
    if (wanted_count == 0) {
        ow_text_add(words, " Nothing leads within the limits to ");
        ow_search_write_given(search, port + 1, words);
        ow_text_char(words, '.');
        return;
    }
    ow_text_format(words, " From %zu one can get to ", wanted_count);
    ow_search_write_given(search, port + 1, words);
    bool met = false;
    for (size_t kind = 0; kind < count; kind++)
        met = met || (reached[kind] && wanted[kind]);
    if (met) {
        ow_text_add(words,
                    ", of which some are reached: what fails is the limits on the whole path, or another "
                    "port.");
        return;
    }
    nearest at = find_nearest(search, reached, wanted, count);
    if (at.apart >= FAR) {
        ow_text_add(words, ", none of them like any that is reached.");
        return;
    }
    char from[OW_END_TEXT_SIZE], to[OW_END_TEXT_SIZE];
    ow_text_format(words, "; nearest to each other are the %s that is reached and the %s that is wanted.",
                   ow_end_name(ow_search_kind_end(search, at.from), from),
                   ow_end_name(ow_search_kind_end(search, at.to), to));
}

static ow_status reach_all(ow_search *search, bool *reached, bool *wanted, size_t count, ow_reach *made)
{
    ow_status status = ow_resolve_reach_source(search->resolve, reached);
    if (status != OW_OK)
        return status;
    made->from_source = count_of(reached, count);
    ow_text_add(&search->words,
                made->from_source > 1 ? "From " : "No part of the catalogue goes, within the limits, onto ");
    ow_search_write_given(search, 0, &search->words);
    if (made->from_source > 1)
        ow_text_format(&search->words, " %zu of %zu kinds of end can be reached.", made->from_source, count);
    else /* itself */
        ow_text_char(&search->words, '.');
    for (size_t port = 0; port < search->input.port_count; port++) {
        status = ow_resolve_reach_port(search->resolve, port, wanted);
        if (status != OW_OK)
            return status;
        made->to_port[port] = count_of(wanted, count);
        write_port(search, reached, wanted, count, port, made->to_port[port]);
    }
    return ow_search_keep_words(search, &made->words);
}

ow_status ow_search_reach(ow_search *search, ow_reach *reach)
{
    const ow_context *context = search->context;
    size_t count = search->net->kind_count + search->input.extra_count;
    bool *reached = ow_new_array(context, count, sizeof *reached);
    bool *wanted = ow_new_array(context, count, sizeof *wanted);
    ow_reach made = {.from_source = 0};
    ow_text_done(&search->words);
    ow_status status = reached == NULL || wanted == NULL ? OW_MEMORY : OW_OK;
    if (status == OW_OK)
        status = reach_all(search, reached, wanted, count, &made);
    if (status == OW_OK)
        *reach = made;
    ow_release(context, wanted);
    ow_release(context, reached);
    return status;
}
