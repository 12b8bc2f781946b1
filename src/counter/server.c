/* SPDX-License-Identifier: MIT */
#include "counter/server.h"

#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "counter/lines.h"
#include "counter/request.h"
#include "counter/response.h"

#define SILENCE_SECONDS 10u  /* without a byte */
#define REQUEST_SECONDS 20.0 /* from the first byte to the answer */
#define CONNECTIONS_MAX 200u
#define HEADERS_BYTES_MAX ((size_t)128 * 1024) /* a link may carry a whole layout */
#define THREADS_MAX 8L

struct counter_server {
    struct MHD_Daemon *daemon;
    counter_gate gate;
    counter_keeper *keeper;
    counter_lines lines;
};

static double milliseconds_since(const struct timespec *begun)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return 1e3 * (double)(now.tv_sec - begun->tv_sec) + 1e-6 * (double)(now.tv_nsec - begun->tv_nsec);
}

static const counter_asset *find_asset(const char *url)
{
    for (size_t index = 0; index < counter_asset_count; index++) {
        if (strcmp(counter_assets[index].path, url) == 0)
            return &counter_assets[index];
    }
    return NULL;
}

static enum MHD_Result answer_route(counter_server *server, struct MHD_Connection *connection,
                                    const counter_route *route, const counter_request *request)
{
    struct timespec begun;
    counter_call call;
    clock_gettime(CLOCK_MONOTONIC, &begun);
    counter_shop *shop = counter_shop_hold(server->keeper);
    counter_call_begin(&call, server->keeper, shop);
    call.body = request->body != NULL ? request->body : "";
    call.body_length = request->length;
    unsigned status = 400;
    if (counter_request_parameters(connection, &call))
        status = counter_call_answer(&call, route);
    else
        counter_call_refuse(&call, ow_status_text(OW_INPUT));
    enum MHD_Result result = counter_respond(connection, status, &call, milliseconds_since(&begun));
    counter_call_done(&call);
    counter_shop_release(server->keeper, shop);
    return result;
}

static enum MHD_Result answer(counter_server *server, struct MHD_Connection *connection, const char *url,
                              const char *method, const counter_request *request)
{
    bool known;
    const char *plain = strcmp(method, MHD_HTTP_METHOD_HEAD) == 0 ? MHD_HTTP_METHOD_GET : method;
    const counter_asset *asset = find_asset(url);
    if (request->too_large)
        return counter_respond_refusal(connection, 413, "the body is larger than is taken: 1 MiB", NULL);
    if (asset != NULL)
        return strcmp(plain, MHD_HTTP_METHOD_GET) == 0
                   ? counter_respond_asset(connection, asset)
                   : counter_respond_refusal(connection, 405, "this is only read", "GET, HEAD");
    const counter_route *route = counter_route_find(plain, url, &known);
    if (route != NULL)
        return answer_route(server, connection, route, request);
    if (!known)
        return counter_respond_refusal(connection, 404, "there is nothing of that name", NULL);
    bool gets = counter_route_find(MHD_HTTP_METHOD_GET, url, &known) != NULL;
    bool posts = counter_route_find(MHD_HTTP_METHOD_POST, url, &known) != NULL;
    return counter_respond_refusal(connection, 405, "not by this method",
                                   !posts ? "GET, HEAD"
                                   : gets ? "GET, HEAD, POST"
                                          : "POST");
}

/* libmicrohttpd calls this once when the headers are there, then with each piece of the body, then at the
 * end.
 */
static enum MHD_Result handle(void *user, struct MHD_Connection *connection, const char *url,
                              const char *method, const char *version, const char *bytes, size_t *length,
                              void **request_place)
{
    (void)version;
    counter_server *server = user;
    counter_request *request = *request_place;
    if (request == NULL) {
        counter_caller caller = counter_request_caller(connection, method, url);
        const char *refused = counter_gate_refuses(&server->gate, &caller);
        if (refused != NULL)
            return counter_respond_refusal(connection, 403, refused, NULL);
        if (counter_request_announces_too_much(connection))
            return counter_respond_refusal(connection, 413, "the body is larger than is taken: 1 MiB", NULL);
        *request_place = counter_request_new();
        return *request_place != NULL ? MHD_YES : MHD_NO;
    }
    if (*length > 0) {
        bool taken = counter_request_take(request, bytes, *length);
        *length = 0;
        return taken ? MHD_YES : MHD_NO;
    }
    return answer(server, connection, url, method, request);
}

/* A NUL in a name would hide what stands behind it: it becomes a character that no name of ours has. */
static size_t unescape(void *user, struct MHD_Connection *connection, char *words)
{
    (void)user;
    (void)connection;
    for (char *at = strstr(words, "%00"); at != NULL; at = strstr(at + 1, "%00"))
        *at = '\1';
    return MHD_http_unescape(words);
}

static void request_ended(void *user, struct MHD_Connection *connection, void **request_place,
                          enum MHD_RequestTerminationCode reason)
{
    (void)reason;
    counter_server *server = user;
    const union MHD_ConnectionInfo *line =
        MHD_get_connection_info(connection, MHD_CONNECTION_INFO_SOCKET_CONTEXT);
    counter_request_free(*request_place);
    *request_place = NULL;
    if (line != NULL)
        counter_line_answered(&server->lines, line->socket_context);
}

static void connection_changed(void *user, struct MHD_Connection *connection, void **line,
                               enum MHD_ConnectionNotificationCode change)
{
    counter_server *server = user;
    if (change == MHD_CONNECTION_NOTIFY_CLOSED) {
        counter_line_close(&server->lines, *line);
        *line = NULL;
        return;
    }
    const union MHD_ConnectionInfo *socket =
        MHD_get_connection_info(connection, MHD_CONNECTION_INFO_CONNECTION_FD);
    *line = socket != NULL ? counter_line_open(&server->lines, socket->connect_fd) : NULL;
}

/* At least two, so that one long answer does not hold up everybody. */
static unsigned thread_count(void)
{
    long processors = sysconf(_SC_NPROCESSORS_ONLN);
    return (unsigned)(processors < 2 ? 2 : processors > THREADS_MAX ? THREADS_MAX : processors);
}

counter_server *counter_server_start(int socket, const counter_gate *gate, counter_keeper *keeper)
{
    counter_server *server = calloc(1, sizeof *server);
    if (server == NULL || pthread_mutex_init(&server->lines.lock, NULL) != 0) {
        free(server);
        close(socket);
        return NULL;
    }
    server->gate = *gate;
    server->keeper = keeper;
    server->daemon = MHD_start_daemon(
        MHD_USE_AUTO_INTERNAL_THREAD, 0, NULL, NULL, handle, server, MHD_OPTION_LISTEN_SOCKET, socket,
        MHD_OPTION_THREAD_POOL_SIZE, thread_count(), MHD_OPTION_CONNECTION_LIMIT, CONNECTIONS_MAX,
        MHD_OPTION_CONNECTION_TIMEOUT, SILENCE_SECONDS, MHD_OPTION_CONNECTION_MEMORY_LIMIT, HEADERS_BYTES_MAX,
        MHD_OPTION_STRICT_FOR_CLIENT, 1, MHD_OPTION_UNESCAPE_CALLBACK, unescape, NULL,
        MHD_OPTION_NOTIFY_COMPLETED, request_ended, server, MHD_OPTION_NOTIFY_CONNECTION, connection_changed,
        server, MHD_OPTION_END);
    if (server->daemon != NULL)
        return server;
    pthread_mutex_destroy(&server->lines.lock);
    free(server);
    close(socket);
    return NULL;
}

void counter_server_tick(counter_server *server)
{
    counter_lines_hang_up(&server->lines, REQUEST_SECONDS);
}

void counter_server_stop(counter_server *server)
{
    MHD_stop_daemon(server->daemon);
    pthread_mutex_destroy(&server->lines.lock);
    free(server);
}
