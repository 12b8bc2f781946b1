/* SPDX-License-Identifier: MIT */
#ifndef OW_COUNTER_LISTEN_H
#define OW_COUNTER_LISTEN_H

#include <stdbool.h>

#include "oilway/text.h"

/* Listens on a numeric address (IPv4 or IPv6); *port is the one that was found where 0 was asked for. The
 * socket, or -1 with the reason in `why`. *loopback: only this machine can reach it. */
int counter_listen(const char *address, unsigned *port, bool *loopback, ow_text *why);
/* Appends "http://127.0.0.1:8080/". */
void counter_write_url(ow_text *text, const char *address, unsigned port);

#endif
