/* SPDX-License-Identifier: MIT */
/* What a call came to: one list, so that codes and texts cannot drift apart. */
#ifndef OILWAY_STATUS_H
#define OILWAY_STATUS_H

#define OW_STATUS_LIST(X)                                               \
    X(OW_OK, "done")                                                    \
    X(OW_NONE, "there is none: a proven answer, not a fault")           \
    X(OW_INPUT, "the input is wrong; diagnostics were reported")        \
    X(OW_RANGE, "a number lies outside the range the call can work in") \
    X(OW_LIMIT, "the input is larger or deeper than the stated limits") \
    X(OW_IO, "a file could not be read or written")                     \
    X(OW_MEMORY, "an allocation failed")                                \
    X(OW_STOPPED, "stopped, because the context's progress said so")    \
    X(OW_FAULT, "a fault of this library's own; please report it")

#define OW_STATUS_NAME(name, text) name,
typedef enum ow_status { OW_STATUS_LIST(OW_STATUS_NAME) OW_STATUS_COUNT } ow_status;
#undef OW_STATUS_NAME

/* A constant sentence for a status; never NULL, whatever the number. */
const char *ow_status_text(ow_status status);

#endif
