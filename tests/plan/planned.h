/* SPDX-License-Identifier: MIT */
/* A job planned over the small shop, for the tests of the plan. */
#ifndef OW_TESTS_PLAN_PLANNED_H
#define OW_TESTS_PLAN_PLANNED_H

#include <string.h>

#include "oilway/plan.h"
#include "plan/small_shop.h"
#include "support/diagnostics.h"
#include "support/testing.h"

typedef struct planned {
    ow_test_diagnostics sink;
    ow_context context;
    ow_catalog *catalog;
    ow_net *net;
    ow_job *job;
    ow_plan plan;
} planned;

/* The small shop with a page more. Fails the test where the job cannot be read or planned. */
static inline void planned_make_with(planned *self, const char *page, const char *text)
{
    const char *names[SMALL_SHOP_PAGES + 1], *texts[SMALL_SHOP_PAGES + 1];
    memcpy(names, small_shop_names, sizeof small_shop_names);
    memcpy(texts, small_shop, sizeof small_shop);
    names[SMALL_SHOP_PAGES] = "more.yaml";
    texts[SMALL_SHOP_PAGES] = page;
    const ow_catalog_options options = {NULL, 0, NULL, false, false};
    self->sink = (ow_test_diagnostics)OW_TEST_DIAGNOSTICS_INIT;
    self->context = ow_test_context(&self->sink);
    assert_int_equal(
        ow_catalog_load_texts(&self->context, names, texts, SMALL_SHOP_PAGES + 1, &options, &self->catalog),
        OW_OK);
    assert_int_equal(ow_net_build(&self->context, self->catalog, &self->net), OW_OK);
    ow_status status = ow_job_read(&self->context, self->catalog, "job.yaml", text, strlen(text), &self->job);
    for (size_t index = 0; index < self->sink.count; index++)
        print_error("%s\n", self->sink.items[index].told);
    assert_int_equal(status, OW_OK);
    assert_int_equal(ow_plan_make(&self->context, self->catalog, self->net, self->job, &self->plan), OW_OK);
}

static inline void planned_make(planned *self, const char *text)
{
    planned_make_with(self, "# nothing more\n", text);
}

static inline void planned_done(planned *self)
{
    ow_plan_done(&self->plan);
    ow_job_free(self->job);
    ow_net_free(self->net);
    ow_catalog_free(self->catalog);
    ow_test_diagnostics_clear(&self->sink);
}

static inline bool planned_has(const ow_findings *findings, const char *rule)
{
    for (size_t index = 0; index < findings->count; index++) {
        if (strcmp(findings->items[index].rule->id, rule) == 0)
            return true;
    }
    return false;
}

/* The first finding of a rule; without one the test fails. */
static inline const ow_finding *planned_finding(const ow_findings *findings, const char *rule)
{
    static const ow_finding none = {NULL, OW_NOTE, "", "", ""};
    for (size_t index = 0; index < findings->count; index++) {
        if (strcmp(findings->items[index].rule->id, rule) == 0)
            return &findings->items[index];
    }
    fail_msg("%s is not raised", rule);
    return &none;
}

/* The value of an assumption, or NULL. */
static inline const char *planned_assumed(const ow_plan *plan, const char *what)
{
    for (size_t index = 0; index < plan->assumptions.count; index++) {
        if (strcmp(plan->assumptions.items[index].what, what) == 0)
            return plan->assumptions.items[index].value;
    }
    return NULL;
}

#define PLANNED_STATES                                                                                   \
    "states: [{name: cold, oil: 0 C, gallery: 5.5 bar}, {name: hot idle, oil: 100 C, gallery: 1.2 bar}," \
    " {name: hot rev, oil: 100 C, gallery: 4.5 bar}]\n"

#endif
