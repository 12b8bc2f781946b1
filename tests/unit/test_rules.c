/* SPDX-License-Identifier: MIT */
/*
 * Every rule is raised by one change of something that passes, alone, and is gone after the mend that it
 * prints. A rule that nothing raises has no place in the table.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "oilway/check.h"
#include "oilway/file.h"
#include "oilway/line.h"
#include "oilway/plan.h"
#include "oilway/quick.h"
#include "rules/jobs.h"
#include "rules/layouts.h"
#include "rules/quick.h"
#include "support/diagnostics.h"
#include "support/testing.h"

/* ---- what is judged ------------------------------------------------------------------------------------ */

static char *shop_pages; /* tests/rules/shop.yaml */

static int read_shop(void **state)
{
    static const ow_context context = OW_CONTEXT_INIT;
    const char *source = getenv("OW_SOURCE_DIR");
    char path[4096];
    size_t length = 0;
    (void)state;
    (void)snprintf(path, sizeof path, "%s/tests/rules/shop.yaml", source ? source : ".");
    return ow_file_read(&context, path, &shop_pages, &length) == OW_OK ? 0 : -1;
}

static int free_shop(void **state)
{
    static const ow_context context = OW_CONTEXT_INIT;
    (void)state;
    ow_release(&context, shop_pages);
    return 0;
}

typedef struct subject {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_net *net;
    const char *text;
    ow_findings findings; /* all of them */
} subject;

static ow_status copy_all(const ow_findings *from, ow_findings *to)
{
    ow_status status = OW_OK;
    for (size_t index = 0; index < from->count && status == OW_OK; index++)
        status = ow_findings_add(to, from->items[index].rule->id, from->items[index].severity,
                                 from->items[index].where, from->items[index].mend, "%s",
                                 from->items[index].message);
    return status;
}

static ow_status judge_layout(subject *self)
{
    ow_layout *layouts = NULL;
    size_t count = 0;
    ow_status status = ow_layouts_read(&self->context, self->catalog, "case.yaml", self->text,
                                       strlen(self->text), &layouts, &count);
    for (size_t index = 0; index < count && status == OW_OK; index++)
        status = ow_check_layout(&self->context, self->catalog, &layouts[index], &self->findings, NULL);
    ow_layouts_free(&self->context, layouts, count);
    return status;
}

static ow_status judge_job(subject *self)
{
    ow_job *job = NULL;
    ow_plan plan;
    ow_status status =
        ow_job_read(&self->context, self->catalog, "case.yaml", self->text, strlen(self->text), &job);
    if (status != OW_OK)
        return status;
    status = ow_plan_make(&self->context, self->catalog, self->net, job, &plan);
    if (status == OW_OK) {
        status = copy_all(&plan.findings, &self->findings);
        ow_plan_done(&plan);
    }
    ow_job_free(job);
    return status;
}

static ow_status judge_line(subject *self)
{
    ow_line line;
    ow_line_answer answer;
    ow_status status = ow_line_read(&self->context, "case.yaml", self->text, strlen(self->text), &line);
    if (status != OW_OK)
        return status;
    status = ow_line_reckon(&self->context, &line, &answer);
    if (status == OW_OK) {
        status = copy_all(&answer.findings, &self->findings);
        ow_line_answer_done(&answer);
    }
    ow_line_free(&line);
    return status;
}

static ow_status judge_loop(subject *self)
{
    ow_loop_text loop;
    ow_loop_answer answer;
    ow_status status = ow_loop_read(&self->context, "case.yaml", self->text, strlen(self->text), &loop);
    if (status != OW_OK)
        return status;
    status = ow_loop_reckon(&self->context, &loop, &answer);
    if (status == OW_OK) {
        status = copy_all(&answer.findings, &self->findings);
        ow_loop_answer_done(&answer);
    }
    ow_loop_free(&loop);
    return status;
}

/* The word behind "key=" in a text of such pairs, one a line; copied into room. NULL if it is not there. */
static const char *word_of(const char *text, const char *key, char *room)
{
    size_t length = strlen(key);
    for (const char *line = text; *line != '\0'; line += strcspn(line, "\n") + (strchr(line, '\n') != NULL)) {
        if (strncmp(line, key, length) != 0 || line[length] != '=')
            continue;
        size_t size = strcspn(line + length + 1, "\n");
        memcpy(room, line + length + 1, size);
        room[size] = '\0';
        return room;
    }
    return NULL;
}

static ow_status judge_quick(subject *self, bool is_drain)
{
    char rooms[9][64];
    const ow_oil_words oil = {word_of(self->text, "grade", rooms[0]), word_of(self->text, "kv40", rooms[1]),
                              word_of(self->text, "kv100", rooms[2]), word_of(self->text, "rho15", rooms[3]),
                              word_of(self->text, "at", rooms[4])};
    const ow_drain_words words = {
        word_of(self->text, "bore", rooms[5]), word_of(self->text, "slope", rooms[6]),
        word_of(self->text, "flow", rooms[7]), word_of(self->text, "aeration", rooms[8]), oil};
    ow_drain_request flowing;
    ow_oil_request request;
    ow_drain_answer flow;
    ow_oil_answer answer;
    ow_status status = is_drain ? ow_drain_request_read(&self->context, &words, &flowing)
                                : ow_oil_request_read(&self->context, &oil, &request);
    if (status != OW_OK)
        return status;
    status = is_drain ? ow_drain_reckon(&self->context, &flowing, &flow)
                      : ow_oil_reckon(&self->context, &request, &answer);
    if (status == OW_OK)
        status = copy_all(is_drain ? &flow.findings : &answer.findings, &self->findings);
    if (status == OW_OK && is_drain)
        ow_drain_answer_done(&flow);
    else if (status == OW_OK)
        ow_oil_answer_done(&answer);
    if (is_drain)
        ow_drain_request_done(&flowing);
    else
        ow_oil_request_done(&request);
    return status;
}

static ow_status judge(subject *self, rule_subject kind)
{
    switch (kind) {
    case SUBJECT_LAYOUT:
        return judge_layout(self);
    case SUBJECT_JOB:
        return judge_job(self);
    case SUBJECT_LINE:
        return judge_line(self);
    case SUBJECT_LOOP:
        return judge_loop(self);
    case SUBJECT_DRAIN:
        return judge_quick(self, true);
    case SUBJECT_OIL:
        return judge_quick(self, false);
    }
    return OW_FAULT;
}

/* Loads the pages where they are wanted and judges the text; fails the test where it cannot be read. */
static void open_subject(subject *self, rule_subject kind, const char *pages, const char *text)
{
    const ow_catalog_options options = {NULL, 0, NULL, false, false};
    const char *const names[] = {"shop.yaml"};
    self->sink = (ow_test_diagnostics)OW_TEST_DIAGNOSTICS_INIT;
    self->context = ow_test_context(&self->sink);
    self->catalog = NULL;
    self->net = NULL;
    self->text = text;
    self->findings = ow_findings_new(&self->context);
    ow_status status = OW_OK;
    if (kind == SUBJECT_LAYOUT || kind == SUBJECT_JOB)
        status = ow_catalog_load_texts(&self->context, names, &pages, 1, &options, &self->catalog);
    if (status == OW_OK && kind == SUBJECT_JOB)
        status = ow_net_build(&self->context, self->catalog, &self->net);
    if (status == OW_OK)
        status = judge(self, kind);
    for (size_t index = 0; index < self->sink.count; index++)
        print_error("%s\n", self->sink.items[index].told);
    if (status != OW_OK)
        print_error("in:\n%s\n", text);
    assert_int_equal(status, OW_OK);
}

static void close_subject(subject *self)
{
    ow_findings_done(&self->findings);
    ow_net_free(self->net);
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
}

/* ---- one case ------------------------------------------------------------------------------------------ */

/* The text with one part replaced, on the heap. The part must stand there just once. */
static char *edit(const char *text, const char *find, const char *put)
{
    const char *at = strstr(text, find);
    if (at == NULL || strstr(at + 1, find) != NULL)
        fail_msg("\"%s\" stands %s in:\n%.400s", find, at == NULL ? "not" : "more than once", text);
    size_t before = (size_t)(at - text);
    char *edited = malloc(strlen(text) + strlen(put) + 1);
    assert_non_null(edited);
    memcpy(edited, text, before);
    strcpy(edited + before, put);
    strcat(edited, at + strlen(find));
    return edited;
}

typedef struct texts {
    char *pages, *text;
} texts;

static texts changed(const char *pages, const char *text, const rule_edit *change)
{
    texts made = {NULL, NULL};
    made.pages = change->catalogue ? edit(pages, change->find, change->put) : strdup(pages);
    made.text = change->catalogue ? strdup(text) : edit(text, change->find, change->put);
    return made;
}

static size_t count_of(const ow_findings *findings, const char *rule)
{
    size_t count = 0;
    for (size_t index = 0; index < findings->count; index++)
        count += strcmp(findings->items[index].rule->id, rule) == 0;
    return count;
}

/* Prints and counts what `now` has more of than `before`, the rule left out. */
static size_t more_than(const ow_findings *now, const ow_findings *before, const char *rule)
{
    size_t more = 0;
    for (size_t index = 0; index < now->count; index++) {
        const ow_finding *finding = &now->items[index];
        const char *id = finding->rule->id;
        if ((rule != NULL && strcmp(id, rule) == 0) || count_of(now, id) <= count_of(before, id))
            continue;
        print_error("  also %s: %s: %s\n", id, finding->where, finding->message);
        more++;
    }
    return more;
}

/* The worst finding of a rule that holds the words; NULL if there is none. */
static const ow_finding *worst_of(const ow_findings *findings, const char *rule, const char *words)
{
    const ow_finding *worst = NULL;
    for (size_t index = 0; index < findings->count; index++) {
        const ow_finding *finding = &findings->items[index];
        if (strcmp(finding->rule->id, rule) == 0 && strstr(finding->message, words) != NULL &&
            (worst == NULL || finding->severity > worst->severity))
            worst = finding;
    }
    return worst;
}

static bool raises(const rule_case *wanted, const subject *before, const subject *after)
{
    const ow_finding *found = worst_of(&after->findings, wanted->rule, wanted->message);
    if (found == NULL ||
        count_of(&after->findings, wanted->rule) <= count_of(&before->findings, wanted->rule)) {
        print_error("%s is not raised with \"%s\"\n", wanted->rule, wanted->message);
        for (size_t index = 0; index < after->findings.count; index++)
            print_error("  found %s: %s\n", after->findings.items[index].rule->id,
                        after->findings.items[index].message);
        return false;
    }
    bool right = more_than(&after->findings, &before->findings, wanted->rule) == 0;
    if (!right)
        print_error("%s does not come alone\n", wanted->rule);
    if (found->severity != wanted->severity) {
        print_error("%s is a %s\n", wanted->rule, ow_severity_name(found->severity));
        right = false;
    }
    if (strstr(found->mend, wanted->mend) == NULL) {
        print_error("%s says to mend it: %s\n", wanted->rule, found->mend);
        right = false;
    }
    return right;
}

static bool passes(const rule_case *wanted, const subject *self, const char *when)
{
    bool right = true;
    for (size_t index = 0; index < self->findings.count; index++) {
        const ow_finding *finding = &self->findings.items[index];
        if (finding->severity == OW_NOTE && strcmp(finding->rule->id, wanted->rule) != 0)
            continue;
        print_error("%s: %s raises %s: %s: %s\n", wanted->rule, when, finding->rule->id, finding->where,
                    finding->message);
        right = false;
    }
    return right;
}

static bool run_case(const rule_case *wanted)
{
    subject before, after, mended;
    texts spoilt = changed(shop_pages, wanted->text, &wanted->change);
    texts whole = changed(spoilt.pages, spoilt.text, &wanted->mended);
    open_subject(&before, wanted->subject, shop_pages, wanted->text);
    open_subject(&after, wanted->subject, spoilt.pages, spoilt.text);
    open_subject(&mended, wanted->subject, whole.pages, whole.text);
    bool right = passes(wanted, &before, "before the change");
    right = raises(wanted, &before, &after) && right;
    right = passes(wanted, &mended, "after the mend") && right;
    if (more_than(&mended.findings, &before.findings, NULL) > 0) {
        print_error("%s: the mend raises something\n", wanted->rule);
        right = false;
    }
    close_subject(&mended);
    close_subject(&after);
    close_subject(&before);
    free(whole.pages);
    free(whole.text);
    free(spoilt.pages);
    free(spoilt.text);
    return right;
}

static void run_cases(const rule_case *cases, size_t count)
{
    size_t wrong = 0;
    for (size_t index = 0; index < count; index++)
        wrong += !run_case(&cases[index]);
    if (wrong > 0)
        fail_msg("%zu of %zu cases", wrong, count);
}

static void a_layout_spoilt_in_one_thing_raises_one_rule_and_its_mend_helps(void **state)
{
    (void)state;
    run_cases(layout_cases, sizeof layout_cases / sizeof layout_cases[0]);
}

static void a_quick_reckoning_spoilt_in_one_thing_raises_one_rule_and_its_mend_helps(void **state)
{
    (void)state;
    run_cases(quick_cases, sizeof quick_cases / sizeof quick_cases[0]);
}

static void a_job_spoilt_in_one_thing_raises_one_rule_and_its_mend_helps(void **state)
{
    (void)state;
    run_cases(job_cases, sizeof job_cases / sizeof job_cases[0]);
}

static bool is_raised(const char *rule, const rule_case *cases, size_t count)
{
    for (size_t index = 0; index < count; index++) {
        if (strcmp(cases[index].rule, rule) == 0)
            return true;
    }
    return false;
}

static void every_rule_of_the_table_is_raised_by_some_case(void **state)
{
    size_t idle = 0;
    (void)state;
    assert_true(ow_rule_count() >= 40);
    for (size_t index = 0; index < ow_rule_count(); index++) {
        const char *rule = ow_rule_at(index)->id;
        if (is_raised(rule, layout_cases, sizeof layout_cases / sizeof layout_cases[0]) ||
            is_raised(rule, quick_cases, sizeof quick_cases / sizeof quick_cases[0]) ||
            is_raised(rule, job_cases, sizeof job_cases / sizeof job_cases[0]))
            continue;
        print_error("no case raises %s\n", rule);
        idle++;
    }
    assert_int_equal(idle, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_layout_spoilt_in_one_thing_raises_one_rule_and_its_mend_helps),
        cmocka_unit_test(a_quick_reckoning_spoilt_in_one_thing_raises_one_rule_and_its_mend_helps),
        cmocka_unit_test(a_job_spoilt_in_one_thing_raises_one_rule_and_its_mend_helps),
        cmocka_unit_test(every_rule_of_the_table_is_raised_by_some_case),
    };
    return cmocka_run_group_tests(tests, read_shop, free_shop);
}
