/* SPDX-License-Identifier: MIT */
/* What a job says at the head of its sheet, and its order of work. */
#include "drawing/html.h"

static void write_turbos(ow_text *words, const ow_job *job)
{
    for (size_t index = 0; index < job->turbo_count; index++)
        ow_text_format(words, "%s%s", index > 0 ? ", " : "", job->turbos[index]->id);
}

static void write_kept(ow_text *words, const ow_job *job)
{
    for (size_t index = 0; index < job->keep_count; index++)
        ow_text_format(words, "%s%s", index > 0 ? ", " : "", job->keep[index]);
}

void ow_html_job_facts(ow_text *text, const ow_plan *plan)
{
    const ow_job *job = plan->job;
    ow_text words = ow_text_new(text->context);
    ow_html_fact(text, "engine", job->engine->id);
    write_turbos(&words, job);
    ow_html_fact(text, job->turbo_count > 1 ? "turbos" : "turbo", ow_text_words(&words));
    words.length = 0;
    write_kept(&words, job);
    ow_html_fact(text, "kept", words.length > 0 ? ow_text_words(&words) : "");
    ow_html_fact(text, "oil", job->oil_grade);
    ow_text_done_into(&words, text);
}

void ow_html_order_of_work(ow_text *text, const ow_plan *plan)
{
    if (plan->note_count == 0)
        return;
    ow_text_add(text, "<section class=\"order\">\n");
    ow_html_element(text, "h2", "Order of work");
    ow_text_add(text, "<ol class=\"columns\">\n");
    for (size_t index = 0; index < plan->note_count; index++)
        ow_html_element(text, "li", plan->notes[index]);
    ow_text_add(text, "</ol>\n</section>\n");
}
