/* SPDX-License-Identifier: MIT */
/* Readers of single values that report in words; shared by the files of this folder only. */
#ifndef OW_CATALOG_VALUES_H
#define OW_CATALOG_VALUES_H

#include "catalog/reader.h"

ow_status ow_value_scalar(ow_reader *reader, const char *key, const ow_yaml *node);
ow_status ow_value_quantity(ow_reader *reader, const ow_field *field, const ow_yaml *node, double *value);
ow_status ow_value_number(ow_reader *reader, const ow_field *field, const ow_yaml *node, double *value);
ow_status ow_value_range(ow_reader *reader, const ow_field *field, const ow_yaml *node, ow_said_range *range);
ow_status ow_value_vector(ow_reader *reader, const ow_field *field, const ow_yaml *node,
                          ow_said_vector *vector);
ow_status ow_value_price(ow_reader *reader, const ow_field *field, const ow_yaml *node, ow_said_price *price);
ow_status ow_value_yes(ow_reader *reader, const ow_field *field, const ow_yaml *node, bool *value);
ow_status ow_value_choice(ow_reader *reader, const ow_field *field, const ow_yaml *node, int *value);

#endif
