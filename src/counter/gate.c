/* SPDX-License-Identifier: MIT */
#include "counter/gate.h"

#include <arpa/inet.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

#define NAME_SIZE 256

/* Splits "name:port", "[v6]:port" or a bare name, whose port is 80. False for anything else. */
static bool split_host(const char *host, char *name, unsigned *port)
{
    const char *end = host[0] == '[' ? strchr(host, ']') : strchr(host, ':');
    size_t length = host[0] == '[' && end != NULL ? (size_t)(end + 1 - host)
                    : end != NULL                 ? (size_t)(end - host)
                                                  : strlen(host);
    if (length == 0 || length >= NAME_SIZE || (host[0] == '[' && end == NULL))
        return false;
    memcpy(name, host, length);
    name[length] = '\0';
    *port = 80;
    const char *rest = host + length;
    if (*rest == '\0')
        return true;
    if (*rest++ != ':' || *rest == '\0')
        return false;
    for (*port = 0; *rest >= '0' && *rest <= '9' && *port <= 65535; rest++)
        *port = *port * 10 + (unsigned)(*rest - '0');
    return *rest == '\0';
}

static bool is_numeric(const char *name)
{
    unsigned char bytes[16];
    char bare[NAME_SIZE];
    size_t length = strlen(name);
    if (name[0] != '[')
        return inet_pton(AF_INET, name, bytes) == 1;
    snprintf(bare, sizeof bare, "%.*s", (int)(length - 2), name + 1);
    return inet_pton(AF_INET6, bare, bytes) == 1;
}

static bool is_ours(const counter_gate *gate, const char *host)
{
    char name[NAME_SIZE];
    unsigned port;
    if (host == NULL || !split_host(host, name, &port) || port != gate->port)
        return false;
    if (strcasecmp(name, "localhost") == 0 || strcmp(name, "127.0.0.1") == 0 || strcmp(name, "[::1]") == 0)
        return true;
    for (size_t index = 0; index < gate->host_count; index++) {
        if (strcasecmp(name, gate->hosts[index]) == 0)
            return true;
    }
    return !gate->loopback && is_numeric(name);
}

const char *counter_gate_refuses(const counter_gate *gate, const counter_caller *caller)
{
    static const char scheme[] = "http://";
    if (!is_ours(gate, caller->host))
        return "this page is not served under that Host";
    if (caller->origin != NULL && (strncmp(caller->origin, scheme, sizeof scheme - 1) != 0 ||
                                   strcasecmp(caller->origin + sizeof scheme - 1, caller->host) != 0))
        return "a page of another Origin may not ask here";
    if (caller->fetch_site == NULL || strcmp(caller->fetch_site, "same-origin") == 0 ||
        strcmp(caller->fetch_site, "none") == 0)
        return NULL;
    if (caller->whole_page && caller->fetch_mode != NULL && strcmp(caller->fetch_mode, "navigate") == 0)
        return NULL;
    return "a page of another site may not ask here";
}
