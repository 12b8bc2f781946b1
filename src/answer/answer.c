/* SPDX-License-Identifier: MIT */
/* Runs the searches of an ask set, keeps the best source port of each reading, and has every layout checked.
 */
#include "oilway/answer.h"

#include <string.h>

#include "answer/lifted.h"
#include "base/memory.h"
#include "base/source.h"
#include "layout/from_search.h"
#include "oilway/check.h"

typedef struct answer_work {
    const ow_context *context;
    const ow_catalog *catalog;
    const ow_net *net;
    const ow_answer_options *options;
    ow_arena arena;
} answer_work;

/* Tries one source port; takes *search over if it is the best so far. */
static ow_status try_source(answer_work *work, const ow_ask_item *item, ow_search **best, ow_layout *layout,
                            const ow_ask_item **best_item)
{
    ow_search *search = NULL;
    ow_status status = ow_search_new(work->context, work->net, &item->ask, &search);
    if (status != OW_OK)
        return status;
    ow_layout found;
    status = ow_search_next(search, &found);
    if (status == OW_NONE && *best == NULL) {
        *best = search;
        *best_item = item;
        return OW_OK;
    }
    if (status != OW_OK) {
        ow_search_free(search);
        return status == OW_NONE ? OW_OK : status;
    }
    bool first = layout->node_count == 0;
    if (!first && ow_search_compare(search, *best) >= 0) {
        ow_layout_free(&found);
        ow_search_free(search);
        return OW_OK;
    }
    if (!first)
        ow_layout_free(layout);
    ow_search_free(*best);
    *best = search;
    *layout = found;
    *best_item = item;
    return OW_OK;
}

static ow_status keep_stack(answer_work *work, ow_answer *answer, size_t capacity, ow_layout *layout)
{
    if (answer->stacks == NULL) {
        answer->stacks = ow_arena_get_array(&work->arena, capacity, sizeof *answer->stacks);
        if (answer->stacks == NULL) {
            ow_layout_free(layout);
            return OW_MEMORY;
        }
    }
    ow_answer_stack *stack = &answer->stacks[answer->stack_count++];
    stack->layout = *layout;
    stack->findings = ow_findings_new(work->context);
    answer->found = true;
    /* What the ask itself brought up stands with the answer. */
    ow_findings all = ow_findings_new(work->context);
    ow_status status = ow_check_layout(work->context, work->catalog, &stack->layout, &all, NULL);
    if (status == OW_OK)
        status = ow_findings_join(&stack->findings, &all, &answer->findings);
    ow_findings_done(&all);
    return status;
}

static ow_status copy_words(answer_work *work, const char **words)
{
    if (*words == NULL)
        return OW_OK;
    *words = ow_arena_copy(&work->arena, *words, strlen(*words));
    return *words == NULL ? OW_MEMORY : OW_OK;
}

static ow_status explain(answer_work *work, ow_search *search, ow_answer *answer)
{
    if (work->options->explain == NULL)
        return OW_OK;
    ow_status status = ow_search_explain(search, work->options->explain, &answer->explanation);
    if (status == OW_OK)
        status = copy_words(work, &answer->explanation.words);
    if (status == OW_OK)
        status = copy_words(work, &answer->explanation.limit);
    answer->explained = status == OW_OK;
    return status;
}

static ow_status say_why_none(answer_work *work, ow_search *search, ow_answer *answer)
{
    ow_status status = ow_search_reach(search, &answer->reach);
    if (status == OW_OK)
        status = copy_words(work, &answer->reach.words);
    if (status == OW_OK)
        status =
            ow_search_missing(search, work->options->most_missing, &answer->missing, &answer->missing_count);
    if (status != OW_OK && status != OW_NONE)
        return status;
    answer->lifted = ow_arena_get_array(&work->arena, OW_LIFTED_MAX, sizeof *answer->lifted);
    if (answer->lifted == NULL)
        return OW_MEMORY;
    return ow_find_lifted(work->context, work->net, answer->ask, &work->arena, answer->lifted,
                          &answer->lifted_count);
}

static ow_status fill_answer(answer_work *work, ow_search *search, ow_layout *layout, ow_answer *answer)
{
    ow_status status = OW_OK;
    if (layout->node_count == 0) {
        status = say_why_none(work, search, answer);
    } else {
        status = keep_stack(work, answer, work->options->best, layout);
        while (status == OW_OK && answer->stack_count < work->options->best) {
            ow_layout next;
            status = ow_search_next(search, &next);
            if (status == OW_OK)
                status = keep_stack(work, answer, work->options->best, &next);
        }
        if (status == OW_NONE)
            status = OW_OK;
        answer->cut = ow_search_cut(search);
        answer->is_short = answer->stack_count < work->options->best;
    }
    if (status == OW_OK)
        status = copy_words(work, &answer->cut);
    return status == OW_OK ? explain(work, search, answer) : status;
}

static bool same_reading(const ow_ask_item *a, const ow_ask_item *b)
{
    if (a->reading == NULL || b->reading == NULL)
        return a->reading == b->reading;
    return strcmp(a->reading, b->reading) == 0;
}

/* Answers the items [first, past), which are one reading from several source ports. */
static ow_status answer_reading(answer_work *work, const ow_ask_set *set, size_t first, size_t past,
                                ow_answer *answer)
{
    ow_search *search = NULL;
    ow_layout layout = {0};
    const ow_ask_item *item = &set->items[first];
    ow_status status = OW_OK;
    for (size_t index = first; index < past && status == OW_OK; index++)
        status = try_source(work, &set->items[index], &search, &layout, &item);
    answer->reading = item->reading;
    answer->ask = &item->ask;
    answer->findings = ow_findings_new(work->context);
    if (status == OW_OK)
        status = ow_findings_join(&answer->findings, &item->findings, NULL);
    if (status == OW_OK)
        status = fill_answer(work, search, &layout, answer);
    else if (layout.node_count > 0)
        ow_layout_free(&layout);
    ow_search_free(search);
    return status;
}

static ow_status answer_all(answer_work *work, const ow_ask_set *set, ow_answers *answers)
{
    for (size_t first = 0, past = 0; first < set->count; first = past) {
        for (past = first + 1; past < set->count && same_reading(&set->items[first], &set->items[past]);)
            past++;
        ow_answer *answer = &answers->items[answers->count++];
        ow_status status = answer_reading(work, set, first, past, answer);
        if (status != OW_OK)
            return status;
        answers->found = answers->found || answer->found;
    }
    return OW_OK;
}

static ow_status report_unknown(const ow_context *context, const ow_catalog *catalog, const char *id)
{
    const char *nearest = ow_catalog_nearest_id(catalog, id);
    const ow_source source = {"--explain", id, strlen(id)};
    ow_text mend = ow_text_new(context);
    if (nearest != NULL)
        ow_text_format(&mend, "did you mean %s?", nearest);
    ow_status status = ow_text_status(&mend);
    if (status == OW_OK)
        status = ow_source_report(context, OW_ERROR, OW_INPUT, &source, (ow_span){0, source.length},
                                  "the id of a part in the catalogue",
                                  nearest != NULL ? ow_text_words(&mend) : NULL,
                                  "no part of that id is in the catalogue");
    ow_text_done(&mend);
    return status;
}

ow_status ow_answers_find(const ow_context *context, const ow_catalog *catalog, const ow_net *net,
                          const ow_ask_set *set, const ow_answer_options *options, ow_answers *answers)
{
    if (options->explain != NULL && ow_catalog_part(catalog, options->explain) == NULL) {
        return report_unknown(context, catalog, options->explain);
    }
    answer_work *work = ow_new_array(context, 1, sizeof *work);
    if (work == NULL)
        return OW_MEMORY;
    *work = (answer_work){context, catalog, net, options, ow_arena_new(context)};
    ow_answers made = {context, 0, NULL, set->decide, false, work};
    made.items = ow_arena_get_array(&work->arena, set->count, sizeof *made.items);
    ow_status status = made.items == NULL ? OW_MEMORY : answer_all(work, set, &made);
    if (status != OW_OK)
        ow_answers_done(&made);
    else
        *answers = made;
    return status;
}

void ow_answers_done(ow_answers *answers)
{
    answer_work *work = answers->storage;
    if (work == NULL)
        return;
    for (size_t index = 0; index < answers->count; index++) {
        ow_answer *answer = &answers->items[index];
        for (size_t stack = 0; stack < answer->stack_count; stack++) {
            ow_layout_free(&answer->stacks[stack].layout);
            ow_findings_done(&answer->stacks[stack].findings);
        }
        if (answer->missing != NULL)
            ow_missing_free(answers->context, answer->missing, answer->missing_count);
        if (answer->findings.context != NULL)
            ow_findings_done(&answer->findings);
    }
    ow_arena_done(&work->arena);
    ow_release(answers->context, work);
    *answers = (ow_answers){answers->context, 0, NULL, NULL, false, NULL};
}
