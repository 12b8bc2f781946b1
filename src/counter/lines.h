/* SPDX-License-Identifier: MIT */
/*
 * The open connections and how long each has been waited for. libmicrohttpd hangs up on one that is silent;
 * one that sends a byte now and then is hung up on here.
 */
#ifndef OW_COUNTER_LINES_H
#define OW_COUNTER_LINES_H

#include <pthread.h>
#include <stddef.h>

typedef struct counter_line {
    int socket;
    double since; /* s, monotonic: when it was opened, or its last request answered */
    struct counter_line *next, *before;
} counter_line;

typedef struct counter_lines {
    pthread_mutex_t lock;
    counter_line *first;
} counter_lines;

/* NULL when out of memory. */
counter_line *counter_line_open(counter_lines *lines, int socket);
void counter_line_close(counter_lines *lines, counter_line *line); /* before its socket is closed */
void counter_line_answered(counter_lines *lines, counter_line *line);
/* Hangs up on all that have waited longer than `most` seconds. */
void counter_lines_hang_up(counter_lines *lines, double most);

#endif
