/* SPDX-License-Identifier: MIT */
#include "support/pages.h"

#include <ctype.h>
#include <string.h>

#include "drawing/escape.h"
#include "support/testing.h"
#include "support/xml.h"

static size_t count_of(const char *page, const char *words)
{
    size_t count = 0;
    for (const char *at = strstr(page, words); at != NULL; at = strstr(at + 1, words))
        count++;
    return count;
}

void ow_test_assert_names(const char *page, const char *words)
{
    const ow_context plain = OW_CONTEXT_INIT;
    ow_text escaped = ow_text_new(&plain);
    ow_escape(&escaped, words);
    bool named = strstr(page, words) != NULL || strstr(page, ow_text_words(&escaped)) != NULL;
    ow_text_done(&escaped);
    if (!named)
        fail_msg("the page does not name %s", words);
}

static void assert_absent(const char *page, const char *words)
{
    const char *at = strstr(page, words);
    if (at != NULL)
        fail_msg("%s in the page: %.60s", words, at);
}

/* No number that is none: nan or inf as a word of its own, or in an attribute. */
static void assert_numbers(const char *page)
{
    static const char *const WRONG[] = {"nan", "inf"};
    for (size_t index = 0; index < 2; index++)
        for (const char *at = strstr(page, WRONG[index]); at != NULL; at = strstr(at + 1, WRONG[index]))
            if (at > page && !isalpha((unsigned char)at[-1]) && !isalpha((unsigned char)at[3]))
                fail_msg("a number that is none: %.40s", at);
}

/* Nothing is fetched, nothing runs. The one address is the name space of SVG. */
static void assert_alone(const char *page)
{
    static const char *const FORBIDDEN[] = {
        "<script", "javascript:", "href",    "src=",   "url(",           "@import",
        "<link",   "<iframe",     "<object", "<image", "<foreignObject", " on"};
    for (size_t index = 0; index + 1 < sizeof FORBIDDEN / sizeof FORBIDDEN[0]; index++)
        assert_absent(page, FORBIDDEN[index]);
    for (const char *at = strstr(page, "http"); at != NULL; at = strstr(at + 1, "http"))
        assert_memory_equal(at, "http://www.w3.org/2000/svg\"", 27);
}

void ow_test_assert_svg(const char *svg)
{
    ow_test_assert_xml(svg);
    assert_numbers(svg);
    assert_alone(svg);
    assert_absent(svg, "<style");
    assert_memory_equal(svg, "<svg xmlns=", 11);
    ow_test_assert_names(svg, "role=\"img\"");
    ow_test_assert_names(svg, "viewBox=\"0 0 190 ");
    ow_test_assert_names(svg, "<title id=");
    ow_test_assert_names(svg, "<desc id=");
    assert_absent(svg, "></title>");
}

/* Headings: one h1, first; never more than one level deeper than the one before. */
static void assert_headings(const char *html)
{
    char level = '0';
    for (const char *at = strstr(html, "<h"); at != NULL; at = strstr(at + 1, "<h")) {
        if (!isdigit((unsigned char)at[2]))
            continue;
        assert_true(at[2] <= level + 1);
        level = at[2];
    }
    assert_int_equal(count_of(html, "<h1>"), 1);
}

static void assert_ids_once(const char *html)
{
    for (const char *at = strstr(html, " id=\""); at != NULL; at = strstr(at + 1, " id=\"")) {
        char id[64] = "";
        size_t length = strcspn(at + 5, "\"") + 6;
        assert_true(length < sizeof id);
        memcpy(id, at, length);
        assert_int_equal(count_of(html, id), 1);
    }
}

void ow_test_assert_html(const char *html)
{
    ow_test_assert_xml(html);
    assert_numbers(html);
    assert_alone(html);
    assert_memory_equal(html, "<!DOCTYPE html>\n<html lang=\"en\">", 32);
    ow_test_assert_names(html, "<meta charset=\"utf-8\"/>");
    assert_int_equal(count_of(html, "<table>"), count_of(html, "<caption>"));
    assert_int_equal(count_of(html, "<table>"), count_of(html, "<thead>"));
    assert_int_equal(count_of(html, "<th>"), 0); /* each says what it heads */
    assert_int_equal(count_of(html, "type=\"checkbox\""), count_of(html, "type=\"checkbox\" aria-label=\""));
    ow_test_assert_names(html, "@page");
    assert_headings(html);
    assert_ids_once(html);
}
