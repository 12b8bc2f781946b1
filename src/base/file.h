/* SPDX-License-Identifier: MIT */
/* Whole files in, whole files out: public, so that the command has the same care. */
#ifndef OW_BASE_FILE_H
#define OW_BASE_FILE_H

#include "oilway/file.h"

#endif
