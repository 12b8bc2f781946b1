/* SPDX-License-Identifier: MIT */
/* What libyaml's problems mean to a person who writes pages. */
#ifndef OW_YAML_SYNTAX_TABLE_H
#define OW_YAML_SYNTAX_TABLE_H

#include <stddef.h>

typedef enum ow_yaml_where {
    OW_YAML_AT_PROBLEM,
    OW_YAML_AT_CONTEXT, /* the fault is better seen where the thing began */
    OW_YAML_AT_BOTH     /* and a note where it began */
} ow_yaml_where;

typedef struct ow_yaml_problem {
    const char *problem; /* as libyaml 0.2 words it */
    const char *message;
    const char *expected; /* may be NULL */
    const char *mend;     /* may be NULL */
    ow_yaml_where where;
} ow_yaml_problem;

extern const ow_yaml_problem ow_yaml_problems[];
extern const size_t ow_yaml_problem_count;

#endif
