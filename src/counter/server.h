/* SPDX-License-Identifier: MIT */
/* HTTP by libmicrohttpd: a pool of threads, each request held to the gate, to limits of size and of time. */
#ifndef OW_COUNTER_SERVER_H
#define OW_COUNTER_SERVER_H

#include "counter/gate.h"
#include "counter/shop.h"

typedef struct counter_server counter_server;

/* Serves on a socket that listens already; the socket then belongs to the server. NULL if that could not be
 * begun: the socket is closed. */
counter_server *counter_server_start(int socket, const counter_gate *gate, counter_keeper *keeper);
/* Hangs up on requests that have taken too long; called about once a second. */
void counter_server_tick(counter_server *server);
/* Answers what is being worked on, then ends. */
void counter_server_stop(counter_server *server);

#endif
