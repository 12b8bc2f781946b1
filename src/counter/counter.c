/* SPDX-License-Identifier: MIT */
/*
 * Opens, serves, ends. The thread that calls this serves nobody: it waits for a signal, and every second
 * looks at the catalogue and at the clock. There is no signal handler, hence nothing that one may not do.
 */
#include "counter/counter.h"

#include <errno.h>
#include <signal.h>
#include <time.h>
#include <unistd.h>

#include "counter/listen.h"
#include "counter/server.h"

#define LOOPBACK "127.0.0.1"

typedef struct serving {
    const ow_context *context;
    const counter_options *options;
    counter_say say;
    void *user;
    counter_keeper keeper;
    counter_server *server;
} serving;

static const char *address_of(const counter_options *options)
{
    return options->address != NULL ? options->address : LOOPBACK;
}

static void tell_change(const serving *now, counter_change change)
{
    if (change == COUNTER_NEW_SHOP)
        now->say(now->user, false, "The catalogue was changed; the page shows the new one.");
    else if (change == COUNTER_BAD_SHOP)
        now->say(now->user, true, "The changed catalogue has faults; the page goes on with the one before.");
}

/* Until one of the signals comes. */
static void wait_for_signal(serving *now, const sigset_t *signals)
{
    const struct timespec second = {1, 0};
    for (;;) {
        if (sigtimedwait(signals, NULL, &second) > 0)
            return;
        if (errno != EAGAIN && errno != EINTR)
            return;
        tell_change(now, counter_keeper_look(&now->keeper));
        counter_server_tick(now->server);
    }
}

static void tell_address(const serving *now, unsigned port, bool loopback)
{
    ow_text text = ow_text_new(now->context);
    ow_text_add(&text, "The counter is open at ");
    counter_write_url(&text, address_of(now->options), port);
    ow_text_add(&text,
                loopback ? " (Ctrl-C closes it)" : " to whoever can reach this machine (Ctrl-C closes it)");
    now->say(now->user, false, ow_text_words(&text));
    ow_text_done(&text);
}

static ow_status open_server(serving *now)
{
    counter_gate gate = {true, now->options->port, now->options->hosts, now->options->host_count};
    ow_text why = ow_text_new(now->context);
    int listener = counter_listen(address_of(now->options), &gate.port, &gate.loopback, &why);
    if (listener < 0)
        now->say(now->user, true, ow_text_words(&why));
    ow_text_done(&why);
    if (listener < 0)
        return OW_IO;
    now->server = counter_server_start(listener, &gate, &now->keeper);
    if (now->server == NULL)
        return OW_MEMORY;
    tell_address(now, gate.port, gate.loopback);
    return OW_OK;
}

ow_status counter_serve(const ow_context *context, const counter_options *options, counter_say say,
                        void *user)
{
    serving now = {.context = context, .options = options, .say = say, .user = user};
    sigset_t ends, blocked, before;
    sigemptyset(&ends);
    sigaddset(&ends, SIGTERM);
    sigaddset(&ends, SIGINT);
    sigaddset(&ends, SIGHUP);
    blocked = ends;
    sigaddset(&blocked, SIGPIPE);
    ow_status status = counter_keeper_open(&now.keeper, context, &options->catalog);
    if (status != OW_OK)
        return status;
    /* Before the server's threads begin, which inherit it: only this thread is told. */
    pthread_sigmask(SIG_BLOCK, &blocked, &before);
    status = open_server(&now);
    if (status == OW_OK) {
        wait_for_signal(&now, &ends);
        counter_server_stop(now.server);
    }
    counter_keeper_close(&now.keeper);
    pthread_sigmask(SIG_SETMASK, &before, NULL);
    return status;
}
