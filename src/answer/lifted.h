/* SPDX-License-Identifier: MIT */
/* Where no layout is found: which one limit, lifted alone, would let one through. */
#ifndef OW_ANSWER_LIFTED_H
#define OW_ANSWER_LIFTED_H

#include "base/memory.h"
#include "oilway/answer.h"

#define OW_LIFTED_MAX 12

/* Answers the ask again with each of its limits lifted in turn; lifted[OW_LIFTED_MAX], the words in the
 * arena. OW_OK, OW_MEMORY, or what the search says. Up to OW_LIFTED_MAX searches. */
ow_status ow_find_lifted(const ow_context *context, const ow_net *net, const ow_ask *ask, ow_arena *arena,
                         ow_lifted *lifted, size_t *count);

#endif
