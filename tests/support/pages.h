/* SPDX-License-Identifier: MIT */
/* What every drawing and every sheet must keep to. */
#ifndef OW_TESTS_PAGES_H
#define OW_TESTS_PAGES_H

/* Well-formed; no script, style sheet, reference or address; a role, a title and a description; only numbers
 * that are numbers. */
void ow_test_assert_svg(const char *svg);
/* Well-formed; language, title, character set; no script, nothing fetched; headings that begin at one h1 and
 * skip no level; tables with a caption and headings with a scope; each id once. */
void ow_test_assert_html(const char *html);
/* The words stand in the page, as they are or escaped. */
void ow_test_assert_names(const char *page, const char *words);

#endif
