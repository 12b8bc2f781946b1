/* SPDX-License-Identifier: MIT */
/* Small things that every circuit of a plan needs: words, assumptions, asks, their answers. */
#include "plan/planning.h"

#include <math.h>
#include <stdarg.h>
#include <string.h>

#include "base/format.h"

const char *ow_planning_words(ow_planning *planning, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    int length = ow_format(NULL, 0, format, arguments);
    va_end(arguments);
    char *words = length < 0 ? NULL : ow_arena_get(&planning->arena, (size_t)length + 1);
    if (words == NULL)
        return NULL;
    va_start(arguments, format);
    (void)ow_format(words, (size_t)length + 1, format, arguments);
    va_end(arguments);
    return words;
}

void ow_planning_assume(ow_planning *planning, ow_mark mark, const char *what, const char *source,
                        const char *value_format, ...)
{
    char value[160];
    va_list arguments;
    va_start(arguments, value_format);
    (void)ow_format(value, sizeof value, value_format, arguments);
    va_end(arguments);
    if (what == NULL)
        planning->plan->assumptions.failed = true;
    else
        ow_assumptions_add(&planning->plan->assumptions, mark, what, source, "%s", value);
}

double ow_planning_value(ow_planning *planning, const ow_said *said, double assumed, const char *what,
                         double scale, const char *unit, ow_mark mark, const char *source)
{
    if (said->said)
        return said->value;
    ow_planning_assume(planning, mark, what, source, "%.4g %s", assumed * scale, unit);
    return assumed;
}

ow_ask_words ow_planning_ask(const ow_planning *planning, const char *from, const char *to)
{
    ow_ask_words words = {.from = from, .to = {to}, .to_count = 1};
    words.machines = planning->machines;
    words.machine_count = planning->machine_count;
    return words;
}

ow_status ow_planning_answer(ow_planning *planning, const ow_ask_words *words, ow_ask_set *set,
                             ow_answers *answers, const ow_layout **layout)
{
    ow_answer_options options = OW_ANSWER_OPTIONS_INIT;
    *layout = NULL;
    ow_status status = ow_ask_read(planning->context, planning->catalog, planning->net, words, set);
    if (status != OW_OK)
        return status;
    status = ow_answers_find(planning->context, planning->catalog, planning->net, set, &options, answers);
    if (status != OW_OK) {
        ow_ask_set_done(set);
        return status;
    }
    if (answers->count > 0 && answers->items[0].stack_count > 0)
        *layout = &answers->items[0].stacks[0].layout;
    return OW_OK;
}

static size_t hose_count(const ow_layout *layout)
{
    size_t count = 0;
    for (size_t node = 1; node < layout->node_count; node++)
        count += layout->nodes[node].part != NULL && ow_part_is_hose(layout->nodes[node].part);
    return count;
}

/* Lets go of an answer that another takes the place of. */
static void let_go(ow_ask_set *set, ow_answers *answers)
{
    ow_answers_done(answers);
    ow_ask_set_done(set);
    memset(answers, 0, sizeof *answers);
    memset(set, 0, sizeof *set);
}

/* By as many hoses as it takes; they share the length, which is known once they are counted. *layout NULL:
 * there is none. */
static ow_status answer_several(ow_planning *planning, const ow_ask_words *words, double length_m,
                                ow_ask_set *set, ow_answers *answers, const ow_layout **layout)
{
    ow_ask_words several = *words;
    several.flexible = "some";
    ow_status status = ow_planning_answer(planning, &several, set, answers, layout);
    if (status != OW_OK || *layout == NULL || hose_count(*layout) < 2)
        return status;
    several.hose = ow_planning_words(planning, "%.9g m", length_m / (double)hose_count(*layout));
    let_go(set, answers);
    return several.hose == NULL ? OW_MEMORY : ow_planning_answer(planning, &several, set, answers, layout);
}

ow_status ow_planning_answer_hose(ow_planning *planning, const ow_ask_words *words,
                                  const ow_planning_hose *hose, bool several, ow_ask_set *set,
                                  ow_answers *answers, const ow_layout **layout)
{
    ow_ask_words any = *words; /* hoses that do not stand the heat, too */
    any.without_count -= hose->too_cool;
    ow_status status = ow_planning_answer(planning, words, set, answers, layout);
    for (int way = 1; way < 4 && status == OW_OK && *layout == NULL; way++) {
        const ow_ask_words *now = way < 2 ? words : &any;
        ow_ask_set next_set;
        ow_answers next;
        bool many = way % 2 == 1;
        if ((many && !several) || (way >= 2 && hose->too_cool == 0))
            continue;
        status = many ? answer_several(planning, now, hose->length_m, &next_set, &next, layout)
                      : ow_planning_answer(planning, now, &next_set, &next, layout);
        if (status == OW_OK && *layout == NULL) { /* what is missing is told of the first ask */
            let_go(&next_set, &next);
            continue;
        }
        let_go(set, answers);
        if (status == OW_OK) {
            *set = next_set;
            *answers = next;
        }
    }
    return status;
}

/* What a plan tells in another place: a drain's bores segment by segment, assumed pressures among the
 * assumptions. */
static bool told_elsewhere(ow_planning *planning, const ow_finding *finding, const ow_ask *ask)
{
    if (strcmp(finding->rule->id, "pressure-assumed") == 0) {
        ow_planning_assume(
            planning, OW_MARK_ASSUMED,
            ow_planning_words(planning, "pressure that parts behind %s must bear", finding->where),
            "assumption of this program", "%.3g bar", ask->limits.rating_pa / 1e5);
        return true;
    }
    return ask->circuit == OW_DRAIN && strcmp(finding->rule->id, "bore") == 0 && finding->severity < OW_ERROR;
}

static ow_status copy_findings(ow_planning *planning, const ow_findings *from, const ow_ask *ask,
                               ow_findings *to)
{
    ow_status status = OW_OK;
    for (size_t index = 0; index < from->count && status == OW_OK; index++) {
        const ow_finding *finding = &from->items[index];
        if (!told_elsewhere(planning, finding, ask))
            status = ow_findings_add(to, finding->rule->id, finding->severity, finding->where, finding->mend,
                                     "%s", finding->message);
    }
    return status;
}

/* Where no single hose fits both ends. */
static ow_status say_several(const ow_layout *layout, const char *circuit, ow_findings *findings)
{
    size_t count = hose_count(layout);
    if (layout->asked.flexible != OW_SOME || count < 2)
        return OW_OK;
    return ow_findings_add(
        findings, "two-hoses", OW_NOTE, circuit,
        "Have the joint between them where it can be seen, or get a hose that fits both ends.",
        "no single hose of the catalogue fits both ends: %zu are joined", count);
}

static ow_status say_none(const ow_answer *answer, const char *circuit, ow_findings *findings)
{
    const ow_ask *ask = answer->ask;
    char from[OW_END_TEXT_SIZE];
    char to[OW_END_TEXT_SIZE];
    if (answer->missing_count == 0)
        return ow_findings_add(findings, "no-stack", OW_ERROR, circuit, NULL,
                               "nothing in the catalogue leads from %s to %s, and no single made part would",
                               ask->givens[0].name, ask->givens[1].name);
    const ow_missing *missing = &answer->missing[0];
    return ow_findings_add(
        findings, "no-stack", OW_ERROR, circuit, NULL,
        "nothing in the catalogue leads from %s to %s; one made part, %s to %s, would complete it",
        ask->givens[0].name, ask->givens[1].name, ow_end_name(&missing->from, from),
        missing->is_plug ? "nothing" : ow_end_name(&missing->to, to));
}

ow_status ow_planning_judge_answer(ow_planning *planning, const ow_answers *answers, const char *circuit,
                                   ow_findings *findings)
{
    const ow_answer *answer = &answers->items[0];
    ow_status status = copy_findings(planning, &answer->findings, answer->ask, findings);
    if (status == OW_OK && answer->stack_count > 0)
        status = copy_findings(planning, &answer->stacks[0].findings, answer->ask, findings);
    if (status == OW_OK && answer->stack_count > 0)
        status = say_several(&answer->stacks[0].layout, circuit, findings);
    else if (status == OW_OK)
        status = say_none(answer, circuit, findings);
    return status;
}

/* Whether a part may be the hose of an ask: of the class wanted, and a made-up one of a length that reaches.
 */
static bool may_be_hose(const ow_part *part, const ow_planning_hose *hose)
{
    bool is_class = hose->class_name == NULL ||
                    (part->ends[0].form == OW_FORM_HOSE && strcmp(part->ends[0].name, hose->class_name) == 0);
    if (part->kind == OW_HOSE)
        return is_class;
    return is_class &&
           (part->length_m < 0.0 || (part->length_m >= hose->least_m && part->length_m <= hose->most_m));
}

const ow_feed_state *ow_planning_hottest(const ow_planning *planning)
{
    const ow_feed_state *hot = &planning->states[0];
    for (size_t index = 1; index < planning->state_count; index++)
        hot = planning->states[index].oil_c > hot->oil_c ? &planning->states[index] : hot;
    return hot;
}

/* Whether a hose does not stand the hottest oil, and nobody asked for its class. */
static bool is_too_cool(const ow_planning *planning, const ow_part *part, const ow_planning_hose *hose)
{
    const ow_hose_material *material = ow_part_hose_material(part);
    return hose->hot && hose->class_name == NULL && material != NULL &&
           ow_planning_hottest(planning)->oil_c > material->short_high_c;
}

ow_status ow_planning_choose_hose(ow_planning *planning, ow_planning_hose *hose, ow_ask_words *words)
{
    size_t parts = ow_catalog_part_count(planning->catalog);
    const char **ids = ow_arena_get_array(&planning->arena, parts + 1, sizeof *ids);
    size_t found = 0;
    words->hose = ow_planning_words(planning, "%.9g m", hose->length_m);
    if (ids == NULL || words->hose == NULL)
        return OW_MEMORY;
    for (size_t pass = 0; pass < 2; pass++) /* the cool ones last */
        for (size_t index = 0; index < parts; index++) {
            const ow_part *part = ow_catalog_part_at(planning->catalog, index);
            if (!ow_part_is_hose(part))
                continue;
            bool fits = may_be_hose(part, hose);
            if (pass == 0 ? !fits : fits && is_too_cool(planning, part, hose))
                ids[found++] = part->id;
            hose->too_cool += pass == 1 && fits && is_too_cool(planning, part, hose);
        }
    words->without = ids;
    words->without_count = found;
    return OW_OK;
}

bool ow_planning_apart(const ow_port *a, const ow_port *b, double *straight_m)
{
    if (!a->has_position || !b->has_position)
        return false;
    double across_m = hypot(a->position_m[0] - b->position_m[0], a->position_m[1] - b->position_m[1]);
    *straight_m = hypot(across_m, a->position_m[2] - b->position_m[2]);
    return true;
}

#define WAY_ROUND 1.3 /* of the straight way: an assumption, listed */
#define CUT_STEP_M 0.05
#define SHORTEST_M 0.25 /* that anybody cuts a hose on a guess */
#define LINE_MOST 1.5   /* a made-up line may be this much longer than the hose that was asked for */

ow_planning_hose ow_planning_hose_between(ow_planning *planning, const ow_said *said, double straight_m,
                                          double assumed_m, const char *what)
{
    ow_planning_hose hose = {NULL, said->value, said->value, said->value * LINE_MOST, false, 0};
    if (said->said)
        return hose;
    hose.most_m = HUGE_VAL;
    if (straight_m > 0.0) {
        hose.least_m = straight_m;
        hose.length_m = fmax(ceil(straight_m * WAY_ROUND / CUT_STEP_M - 1e-9) * CUT_STEP_M, SHORTEST_M);
        ow_planning_assume(
            planning, OW_MARK_ASSUMED, what,
            "the straight way between the ports' positions and 30 % more; measure it with a string",
            "%.0f mm", hose.length_m * 1e3);
        return hose;
    }
    hose.least_m = 0.0;
    hose.length_m = assumed_m;
    ow_planning_assume(planning, OW_MARK_ASSUMED, what,
                       "assumption of this program; measure it with a string", "%.0f mm", assumed_m * 1e3);
    return hose;
}
