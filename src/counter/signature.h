/* SPDX-License-Identifier: MIT */
#ifndef OW_COUNTER_SIGNATURE_H
#define OW_COUNTER_SIGNATURE_H

#include <stdint.h>

#include "oilway/catalog.h"

/* One number over the names, sizes, identities and times of change of all pages that the options name.
 * Differs when any of them does, but for chances of one in 2^64. */
uint64_t counter_signature(const ow_catalog_options *options);

#endif
