/* SPDX-License-Identifier: MIT */
/* Whether a text is well-formed XML 1.0 of the simple kind: elements, attributes, words; no DTD. */
#ifndef OW_TESTS_XML_H
#define OW_TESTS_XML_H

#include <stdbool.h>
#include <stddef.h>

/* NULL if it is well formed, else what is wrong; *at is the byte where. A prolog and a doctype are passed
 * over. */
const char *ow_test_xml_fault(const char *text, size_t length, size_t *at);
/* Asserts it, printing the place otherwise. */
void ow_test_assert_xml(const char *text);

#endif
