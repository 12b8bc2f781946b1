/* SPDX-License-Identifier: MIT */
#include "counter/listen.h"

#include <arpa/inet.h>
#include <errno.h>
#include <string.h>
#include <sys/socket.h>
#include <unistd.h>

#define WAITING_MAX 128

typedef union listen_address {
    struct sockaddr any;
    struct sockaddr_in v4;
    struct sockaddr_in6 v6;
} listen_address;

static socklen_t read_address(const char *words, unsigned port, listen_address *address, bool *loopback)
{
    memset(address, 0, sizeof *address);
    if (inet_pton(AF_INET, words, &address->v4.sin_addr) == 1) {
        address->v4.sin_family = AF_INET;
        address->v4.sin_port = htons((uint16_t)port);
        *loopback = ntohl(address->v4.sin_addr.s_addr) >> 24 == 127;
        return sizeof address->v4;
    }
    if (inet_pton(AF_INET6, words, &address->v6.sin6_addr) == 1) {
        address->v6.sin6_family = AF_INET6;
        address->v6.sin6_port = htons((uint16_t)port);
        *loopback = IN6_IS_ADDR_LOOPBACK(&address->v6.sin6_addr);
        return sizeof address->v6;
    }
    return 0;
}

static void say_why(ow_text *why, int error, const char *address, unsigned port)
{
    if (error == EADDRINUSE)
        ow_text_format(why, "port %u is taken: choose another with --port, or --port 0 for any that is free",
                       port);
    else if (error == EACCES)
        ow_text_format(why, "port %u may not be used by an ordinary user: choose one above 1023", port);
    else if (error == EADDRNOTAVAIL)
        ow_text_format(why, "this machine has no address %s", address);
    else
        ow_text_format(why, "port %u cannot be listened on (error %d)", port, error);
}

int counter_listen(const char *address, unsigned *port, bool *loopback, ow_text *why)
{
    listen_address place;
    socklen_t size = read_address(address, *port, &place, loopback);
    if (size == 0) {
        ow_text_format(why, "%s is no address in numbers, such as 192.168.1.5 or ::", address);
        return -1;
    }
    int again = 1;
    int listener = socket(place.any.sa_family, SOCK_STREAM, 0);
    if (listener >= 0 && setsockopt(listener, SOL_SOCKET, SO_REUSEADDR, &again, sizeof again) == 0 &&
        bind(listener, &place.any, size) == 0 && listen(listener, WAITING_MAX) == 0 &&
        getsockname(listener, &place.any, &size) == 0) {
        *port = ntohs(place.any.sa_family == AF_INET ? place.v4.sin_port : place.v6.sin6_port);
        return listener;
    }
    say_why(why, errno, address, *port);
    if (listener >= 0)
        close(listener);
    return -1;
}

void counter_write_url(ow_text *text, const char *address, unsigned port)
{
    bool v6 = strchr(address, ':') != NULL;
    ow_text_format(text, "http://%s%s%s:%u/", v6 ? "[" : "", address, v6 ? "]" : "", port);
}
