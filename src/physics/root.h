/* SPDX-License-Identifier: MIT */
/* Roots by bracketing only: never a step that leaves the bracket. */
#ifndef OW_PHYSICS_ROOT_H
#define OW_PHYSICS_ROOT_H

#include <stdbool.h>

typedef double ow_root_function(const void *data, double x);

/*
 * Finds x in [low, high] where the function changes sign, as near as doubles go. False, *root
 * untouched, if the two ends have the same sign. Where it jumps over zero the place of the jump is the
 * root.
 */
bool ow_root_find(ow_root_function *function, const void *data, double low, double high, double *root);

#endif
