/* SPDX-License-Identifier: MIT */
#include "counter/lines.h"

#include <stdlib.h>
#include <sys/socket.h>
#include <time.h>

static double now(void)
{
    struct timespec time;
    clock_gettime(CLOCK_MONOTONIC, &time);
    return (double)time.tv_sec + 1e-9 * (double)time.tv_nsec;
}

counter_line *counter_line_open(counter_lines *lines, int socket)
{
    counter_line *line = calloc(1, sizeof *line);
    if (line == NULL)
        return NULL;
    line->socket = socket;
    line->since = now();
    pthread_mutex_lock(&lines->lock);
    line->next = lines->first;
    if (line->next != NULL)
        line->next->before = line;
    lines->first = line;
    pthread_mutex_unlock(&lines->lock);
    return line;
}

void counter_line_close(counter_lines *lines, counter_line *line)
{
    if (line == NULL)
        return;
    pthread_mutex_lock(&lines->lock);
    if (line->before != NULL)
        line->before->next = line->next;
    else
        lines->first = line->next;
    if (line->next != NULL)
        line->next->before = line->before;
    pthread_mutex_unlock(&lines->lock);
    free(line);
}

void counter_line_answered(counter_lines *lines, counter_line *line)
{
    if (line == NULL)
        return;
    pthread_mutex_lock(&lines->lock);
    line->since = now();
    pthread_mutex_unlock(&lines->lock);
}

void counter_lines_hang_up(counter_lines *lines, double most)
{
    double limit = now() - most;
    pthread_mutex_lock(&lines->lock);
    /* The socket is still open: its line is closed first. The server sees its end and clears it away. */
    for (counter_line *line = lines->first; line != NULL; line = line->next) {
        if (line->since < limit)
            shutdown(line->socket, SHUT_RDWR);
    }
    pthread_mutex_unlock(&lines->lock);
}
