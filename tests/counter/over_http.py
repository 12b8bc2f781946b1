#!/usr/bin/env python3
"""The counter over HTTP: says the same as the command, lets nobody else in, survives what a network brings.

    over_http.py OILWAY      path of the built command

Nothing but Python's own sockets and http.client, so that malformed requests can be written byte by byte.
"""
import base64
import concurrent.futures
import hashlib
import http.client
import json
import os
import re
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time
import traceback
import urllib.parse

SOURCE = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
OILWAY = os.path.abspath(sys.argv[1])
SLOW = 8 if os.environ.get("OW_SLOW_TOOL") else 1


class Counter:
    """One running `oilway counter` on a free port."""

    def __init__(self, *options):
        self.errors = tempfile.TemporaryFile(mode="w+")
        self.process = subprocess.Popen([OILWAY, "counter", "--port", "0", *options], stdout=subprocess.PIPE,
                                        stderr=self.errors, text=True, cwd=SOURCE)
        line = self.process.stdout.readline()
        found = re.search(r"http://(\[?[0-9a-f.:]+\]?):(\d+)/", line)
        assert found, f"no address in {line!r}: {self.said()}"
        self.address, self.port = found.group(1).strip("[]"), int(found.group(2))
        if self.address == "0.0.0.0":
            self.address = "127.0.0.1"

    def said(self):
        self.errors.seek(0)
        return self.errors.read()

    def ask(self, path, method="GET", body=None, headers=None, host=None):
        connection = http.client.HTTPConnection(self.address, self.port, timeout=30 * SLOW)
        try:
            connection.putrequest(method, path, skip_host=True, skip_accept_encoding=True)
            connection.putheader("Host", host if host is not None else f"{self.address}:{self.port}")
            for name, value in (headers or {}).items():
                connection.putheader(name, value)
            if body is not None:
                connection.putheader("Content-Length", str(len(body)))
            connection.endheaders(body)
            response = connection.getresponse()
            return response.status, response.headers, response.read()
        finally:
            connection.close()

    def get(self, path, **parameters):
        query = urllib.parse.urlencode([(name.replace("_", "-"), value) for name, values in parameters.items()
                                        for value in (values if isinstance(values, list) else [values])])
        return self.ask(path + ("?" + query if query else ""))

    def open(self):
        return socket.create_connection((self.address, self.port), timeout=60 * SLOW)

    def stop(self, how=signal.SIGTERM):
        """Ends it; whatever a sanitizer has to say ends up in the exit."""
        if self.process.poll() is None:
            self.process.send_signal(how)
        status = self.process.wait(timeout=30 * SLOW)
        self.process.stdout.close()
        said = self.said()
        self.errors.close()
        assert status == 0, f"exit {status}: {said}"
        assert "Sanitizer" not in said and "runtime error" not in said, said
        return said


def command(*words, stdin=None):
    done = subprocess.run([OILWAY, *words], input=stdin, capture_output=True, cwd=SOURCE, check=False)
    assert done.returncode in (0, 1), done.stderr
    return done.stdout


STACK = {"from": "brockle-4:gallery", "to": "curlew-8b:oil-in", "keep": "sw-2"}
WORDS = [word for name, value in STACK.items() for word in ("--" + name, value)]


def says_what_the_command_says(counter):
    layout = command("stack", *WORDS, "--format", "yaml")
    with open(os.path.join(SOURCE, "examples/tractor-pull.yaml"), "rb") as file:
        job = file.read()
    line = (b"line: a\noil: 15W-40\nrise: 0.25 m\nstates: [{name: hot rev, oil: 100 C, gallery: 4.5 bar}]\n"
            b"pieces:\n  - chamber\n  - pipe: {bore: 4.4 mm, length: 650 mm}\n  - chamber\n"
            b"load: {name: turbo, flow: 2 L/min, at: 3 bar, viscosity: 8 mPa.s, density: 830 kg/m3, "
            b"laminar-share: 1}\n")
    loop = (b"loop: a\ncoolant: water\nheat: 300 W\ncold: 90 C\nports: {apart: 70 mm, angle: 15 deg}\nrise: 0.2 m\n"
            b"cold-leg: [pipe: {bore: 10 mm, length: 1.0 m}]\nhot-leg: [pipe: {bore: 10 mm, length: 0.6 m}]\n"
            b"jacket: {k: 6, bore: 10 mm}\ncap: 1.0 bar\n")
    gets = [
        ("stack", STACK, ["stack", *WORDS]),
        ("stack", {**STACK, "best": "3", "bore": "3.5 mm", "tolerate": "yes", "without": ["he-4-s", "he-4-90"]},
         ["stack", *WORDS, "--best", "3", "--bore", "3.5 mm", "--tolerate", "--without", "he-4-s", "--without",
          "he-4-90"]),
        ("stack", {"from": "M10 female", "to": "-4 flare37 male"}, ["stack", "--from", "M10 female", "--to",
                                                                   "-4 flare37 male"]),
        ("caliper", {"diameter": "9.7 mm", "male": "yes"}, ["caliper", "9.7 mm", "--male"]),
        ("caliper", {"diameter": "90 mm"}, ["caliper", "90 mm"]),
        ("thread", {"name": "G1/8", "tap": "yes"}, ["thread", "G1/8", "--tap"]),
        ("mates", {"end": "1/8-27 NPT male"}, ["mates", "1/8-27 NPT male"]),
        ("mates", {"end": ["R1/8 male", "1/8-27 NPT female"], "card": "yes"},
         ["mates", "R1/8 male", "1/8-27 NPT female", "--card"]),
        ("mates", {"end": ["brockle-4:gallery", "tf-2-4.a"]}, ["mates", "brockle-4:gallery", "tf-2-4.a"]),
        ("mates", {"end": ["banjo 10 stud", "banjo 10 eye"], "card": "yes", "bolt": "M10x1", "material": "steel"},
         ["mates", "banjo 10 stud", "banjo 10 eye", "--card", "--bolt", "M10x1", "--material", "steel"]),
        ("oil", {"oil": "15W-40", "at": "100 C"}, ["oil", "15W-40", "--at", "100 C"]),
        ("drain", {"bore": "15.9 mm", "slope": "20 deg", "flow": "2 L/min", "oil": "15W-40", "at": "100 C"},
         ["drain", "--bore", "15.9 mm", "--slope", "20 deg", "--flow", "2 L/min", "--oil", "15W-40", "--at",
          "100 C"]),
        ("catalog", {}, ["catalog", "list"]),
        ("catalog", {"id": "curlew-8b"}, ["catalog", "show", "curlew-8b"]),
    ]
    for name, parameters, words in gets:
        status, _, body = counter.get("/api/" + name, **parameters)
        assert status == 200, (name, status, body[:300])
        assert body == command(*words, "--json"), name
    listed = json.loads(counter.get("/api/catalog")[2])
    given = json.loads(counter.get("/api/catalog", only="given")[2])
    assert given == {name: listed[name] for name in ("machines", "fixtures")} and given["machines"]
    posts = [("check", layout), ("bill", layout), ("bill", job), ("plan", job), ("feed", line), ("siphon", loop)]
    status, _, body = counter.ask("/api/swap?place=he-4-s%232", "POST", layout)
    assert status == 200 and body == command("swap", "-", "he-4-s#2", "--json", stdin=layout), (status, body[:300])
    flow = json.loads(counter.ask("/api/flow?oil=15W-40", "POST", layout)[2])
    assert [state["name"] for state in flow["feed"]["states"]] == ["cold", "hot idle", "hot rev"], flow
    assert flow["feed"]["stack"]["layout"] == layout.decode()
    assert counter.ask("/api/flow?oil=mud", "POST", layout)[0] == 400
    drain = command("stack", "--from", "dunlin-63:oil-out", "--to", "brockle-6:side-plate", "--format", "yaml")
    assert counter.ask("/api/flow", "POST", drain)[0] == 404
    assert counter.ask("/api/draw?of=pressure", "POST", layout)[1]["Content-Type"].startswith("image/svg+xml")
    assert counter.ask("/api/draw?of=drain", "POST", layout)[0] == 400
    for name, text in (("check", layout), ("plan", job)):
        status, headers, body = counter.ask("/api/draw", "POST", text)
        assert status == 200 and headers["Content-Type"].startswith("image/svg+xml"), (status, body[:300])
        assert body == command(name, "-", "--format", "svg", stdin=text), name
    for of in ("pressure", "drain", "coolant", "siphon"):
        status, _, body = counter.ask("/api/draw?of=" + of, "POST", job)
        assert status == 200 and body.startswith(b"<svg"), (of, status, body[:300])
    assert counter.ask("/api/draw?of=drain&number=9", "POST", job)[0] == 404
    for name, text in posts:
        status, _, body = counter.ask("/api/" + name, "POST", text)
        assert status == 200, (name, status, body[:300])
        assert body == command(name, "-", "--json", stdin=text), name


def faults_come_back_with_their_places(counter):
    status, _, body = counter.get("/api/stack", **{"from": "brockle-4:galery", "to": "curlew-8b:oil-in"})
    answer = json.loads(body)
    assert status == 400
    fault, = answer["faults"]
    assert (fault["in"], fault["column"], fault["width"]) == ("from", 11, 6), fault
    assert "gallery" in fault["mend"]
    status, _, body = counter.ask("/api/check", "POST", b"layout: x\nfrom: brockle-4:gallery\nparts:\n  - tf-2-99\n")
    fault = json.loads(body)["faults"][0]
    assert status == 400 and (fault["in"], fault["line"]) == ("layout", 4), fault
    for query in ("from=%FF&to=x", "from=a%00b&to=x", "from=a%0Ab&to=x", "fro=x&to=x", "from=x&from=y&to=z",
                  "from=x&to=y&best=0", "from=x&to=y&best=21", "from=x&to=y&tolerate=perhaps", "to=x", ""):
        status, _, body = counter.ask("/api/stack?" + query)
        assert status == 400 and json.loads(body)["faults"], (query, status, body[:300])
    status, _, body = counter.get("/api/catalog", id="curlew-8c")
    assert status == 404 and json.loads(body)["faults"][0]["expected"] == "curlew-8b", body


def every_answer_forbids_what_a_browser_need_not_do(counter):
    for path in ("/", "/api/shop", "/nothing", "/api/stack"):
        _, headers, _ = counter.ask(path)
        policy = headers["Content-Security-Policy"]
        assert "default-src 'none'" in policy and "frame-ancestors 'none'" in policy, (path, policy)
        assert "unsafe" not in policy, policy
        assert headers["X-Content-Type-Options"] == "nosniff"
        assert headers["Referrer-Policy"] == "no-referrer"
        assert headers["Cross-Origin-Resource-Policy"] == "same-origin"
        assert "Access-Control-Allow-Origin" not in headers


def a_sheet_is_allowed_its_own_style_and_nothing_else(counter):
    layout = command("stack", *WORDS, "--format", "yaml").decode()
    with open(os.path.join(SOURCE, "examples/tractor-pull.yaml"), encoding="utf-8") as file:
        job = file.read()
    for parameters in (STACK, {"layout": layout}, {"job": job}):
        status, headers, body = counter.get("/sheet", **parameters)
        assert status == 200 and headers["Content-Type"].startswith("text/html"), (status, body[:300])
        style, = re.findall(rb"<style>(.*?)</style>", body, re.S)
        digest = base64.b64encode(hashlib.sha256(style).digest()).decode()
        assert headers["Content-Security-Policy"] == ("default-src 'none'; style-src 'sha256-" + digest +
                                                      "'; frame-ancestors 'none'; sandbox")
        assert b" style=" not in body and b"<script" not in body
        if len(parameters) == 1:
            whole, bare = body, counter.ask("/sheet?bare=yes", "POST", *[text.encode() for text in parameters.values()])
            assert bare[2] == re.sub(rb"<style>.*?</style>", b"", whole, flags=re.S), bare[2][:300]
            assert counter.ask("/sheet.css")[2] == style
            assert counter.ask("/sheet", "POST", *[text.encode() for text in parameters.values()])[2] == body
    assert counter.get("/sheet", layout="layout: [")[0] == 400
    assert counter.ask("/sheet", "POST", b"layout: [")[0] == 400
    status, headers, _ = counter.ask("/sheet", "PUT", b"")
    assert status == 405 and headers["Allow"] == "GET, HEAD, POST"
    assert counter.get("/sheet", layout=layout + "\0")[0] == 400


def only_its_own_host_is_served(counter):
    port = counter.port
    for host in (f"127.0.0.1:{port}", f"localhost:{port}", f"LOCALHOST:{port}", f"[::1]:{port}"):
        assert counter.ask("/api/shop", host=host)[0] == 200, host
    for host in (f"rebound.example:{port}", "localhost", f"localhost:{port + 1}", f"localhost.example:{port}", "",
                 f"127.0.0.1.example:{port}", f"127.0.0.2:{port}", f"192.0.2.1:{port}", f"localhost:{port}x",
                 f"[::1:{port}", f"127.0.0.1:{port}:{port}", f"user@localhost:{port}"):
        for path in ("/", "/api/shop"):
            assert counter.ask(path, host=host)[0] in (400, 403), host


def pages_of_other_sites_are_refused(counter):
    own = f"http://127.0.0.1:{counter.port}"
    assert counter.ask("/api/bill", "POST", b"", {"Origin": own})[0] == 400
    for origin in ("http://evil.example", "null", f"https://127.0.0.1:{counter.port}", "http://127.0.0.1",
                   f"http://localhost:{counter.port}", own + ".example"):
        assert counter.ask("/api/bill", "POST", b"", {"Origin": origin})[0] == 403, origin
        assert counter.ask("/", headers={"Origin": origin})[0] == 403, origin
    for site in ("cross-site", "same-site"):
        assert counter.ask("/api/shop", headers={"Sec-Fetch-Site": site, "Sec-Fetch-Mode": "no-cors"})[0] == 403
        assert counter.ask("/api/shop", headers={"Sec-Fetch-Site": site, "Sec-Fetch-Mode": "navigate"})[0] == 403
        # A link in a mail may lead to the page: it can do nothing there but look.
        assert counter.ask("/?from=x", headers={"Sec-Fetch-Site": site, "Sec-Fetch-Mode": "navigate"})[0] == 200
    assert counter.ask("/api/shop", headers={"Sec-Fetch-Site": "same-origin"})[0] == 200
    assert counter.ask("/api/shop", "OPTIONS", headers={"Origin": "http://evil.example"})[0] == 403


def no_path_reaches_a_file(counter):
    for path in ("/../../../../etc/passwd", "/..%2f..%2fetc%2fpasswd", "/%2e%2e/Makefile", "//etc/passwd",
                 "/page.css/../../Makefile", "/index.html", "/catalog/engines.yaml", "/%00", "/page.css%00.html",
                 "/api/../page.css", "/C:\\\\boot.ini", "/" + "a" * 5000, "*", "/./"):
        status, _, body = counter.ask(path)
        assert status in (400, 404), (path, status)
        assert b"root:" not in body and b"BUILD" not in body
    for method in ("PUT", "DELETE", "PATCH", "TRACE", "POST"):
        assert counter.ask("/", method, b"")[0] in (405, 501), method
    status, headers, _ = counter.ask("/api/check")
    assert status == 405 and headers["Allow"] == "POST"
    # Names that a job or a layout holds are not opened either.
    job = b"job: x\nengine: brockle-4\nturbo: dunlin-63\nfeed: {}\nprefer: {stock: /etc/passwd}\n"
    status, _, body = counter.ask("/api/plan", "POST", job)
    assert status == 200 and b"root:" not in body, body[:300]


def what_is_too_large_is_refused(counter):
    assert counter.ask("/api/check", "POST", b"x" * (1024 * 1024 + 1))[0] == 413
    with counter.open() as line:  # announced: refused before it is sent
        line.sendall(f"POST /api/check HTTP/1.1\r\nHost: 127.0.0.1:{counter.port}\r\n"
                     "Content-Length: 99999999999\r\n\r\n".encode())
        assert b" 413 " in line.recv(4096)
    with counter.open() as line:  # not announced
        line.sendall(f"POST /api/check HTTP/1.1\r\nHost: 127.0.0.1:{counter.port}\r\n"
                     "Transfer-Encoding: chunked\r\n\r\n".encode())
        piece = b"10000\r\n" + b"#" * 0x10000 + b"\r\n"
        try:
            for _ in range(40):
                line.sendall(piece)
            line.sendall(b"0\r\n\r\n")
        except OSError:
            pass
        assert b" 413 " in line.recv(4096)
    status = counter.ask("/api/stack?from=" + "a" * 200000 + "&to=b")[0]
    assert status in (413, 414, 431), status
    assert counter.get("/api/stack", to="x", **{"from": "a" * 60000})[0] == 400
    assert counter.get("/api/shop")[0] == 200


def rubbish_is_no_matter(counter):
    for rubbish in (b"\0" * 100, b"GET\r\n\r\n", b"\xff\xfe / HTTP/9.9\r\n\r\n", b"GET / HTTP/1.1\r\n\r\n",
                    b"GET / HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n", b"POST /api/check HTTP/1.1\r\n"
                    b"Host: 127.0.0.1:%d\r\nContent-Length: -5\r\n\r\n" % counter.port,
                    b"A" * 300000):
        with counter.open() as line:
            try:
                line.sendall(rubbish)
                line.shutdown(socket.SHUT_WR)
                said = line.recv(4096)
            except OSError:
                continue
            assert b" 200 " not in said, (rubbish[:40], said[:80])
    assert counter.get("/api/shop")[0] == 200


def who_dawdles_is_hung_up_on(counter):
    silent, dripping, half = counter.open(), counter.open(), counter.open()
    begun = time.monotonic()
    half.sendall(f"POST /api/check HTTP/1.1\r\nHost: 127.0.0.1:{counter.port}\r\nContent-Length: 1000\r\n\r\n"
                 .encode())
    drip = iter(b"GET / HTTP/1.1\r\nX-Drip: " + b"a" * 1000)
    open_lines = {"silent": silent, "dripping": dripping, "half": half}
    ended = {}
    while open_lines and time.monotonic() - begun < 45:
        for name, line in list(open_lines.items()):
            try:
                if name == "dripping":
                    line.sendall(bytes([next(drip)]))
                if name == "half" and "dripping" in open_lines:
                    line.sendall(b"#")
                line.settimeout(0.2)
                gone = line.recv(4096) == b""
            except socket.timeout:
                gone = False
            except OSError:
                gone = True
            if gone:
                ended[name] = time.monotonic() - begun
                del open_lines[name]
        assert counter.get("/api/shop")[0] == 200
        time.sleep(0.5)
    for line in (silent, dripping, half):
        line.close()
    assert not open_lines, f"still open: {list(open_lines)}"
    assert ended["silent"] < 20 and 15 < ended["dripping"] < 35, ended


def fifty_at_once_are_answered_alike(counter):
    asks = [("/api/stack", {**STACK, "best": str(1 + number % 5)}) for number in range(50)]
    alone = [counter.get(path, **parameters)[2] for path, parameters in asks[:5]]
    with concurrent.futures.ThreadPoolExecutor(50) as pool:
        for number, answer in enumerate(pool.map(lambda ask: counter.get(ask[0], **ask[1]), asks)):
            assert answer[0] == 200 and answer[2] == alone[number % 5], (number, answer[0])


def wait_for(condition, seconds=20 * SLOW):
    end = time.monotonic() + seconds
    while not condition():
        assert time.monotonic() < end, "waited in vain"
        time.sleep(0.1)


def a_changed_catalogue_is_taken_over_and_a_bad_one_is_not():
    page = ("page: extra\nkind: adapter\ntitle: Extra\nmaterial: steel\nrating: 200 bar\nfluids: [oil]\n"
            "columns: [id, a, b, bore, length, price]\nrows:\n"
            "  - [{}, 1/8-27 NPT male, -4 flare37 male, 4.4 mm, 28 mm, 0.10]\n")
    with tempfile.TemporaryDirectory() as folder:
        shutil.copytree(os.path.join(SOURCE, "catalog"), folder, dirs_exist_ok=True)
        counter = Counter("--catalog", folder)
        extra = os.path.join(folder, "zz-extra.yaml")

        def state():
            return json.loads(counter.get("/api/shop")[2])

        def write(text):
            with open(extra + ".part", "w", encoding="utf-8") as file:
                file.write(text)
            os.replace(extra + ".part", extra)

        first = state()
        assert first["generation"] == 1 and not first["stale"]
        dropped, stop = [], []

        def hammer():
            while not stop:
                try:
                    status, _, body = counter.get("/api/stack", **STACK)
                    if status != 200 or json.loads(body)["status"] != "found":
                        dropped.append(status)
                except OSError as error:
                    dropped.append(error)

        with concurrent.futures.ThreadPoolExecutor(4) as pool:
            running = [pool.submit(hammer) for _ in range(3)]
            write(page.format("extra-1"))
            wait_for(lambda: state()["generation"] == 2)
            assert state()["parts"] == first["parts"] + 1
            assert counter.get("/api/catalog", id="extra-1")[0] == 200
            write(page.format("extra-1") + "  - [extra-2, 1/8-27 NPT mael, -4 flare37 male, 4.4 mm, 28 mm, 1]\n")
            wait_for(lambda: state()["stale"])
            bad = state()
            assert bad["generation"] == 2 and bad["parts"] == first["parts"] + 1
            assert any("zz-extra.yaml" in fault["in"] and fault["line"] == 10 for fault in bad["faults"]), bad
            assert counter.get("/api/catalog", id="extra-1")[0] == 200
            write(page.format("extra-3"))
            wait_for(lambda: state()["generation"] == 3)
            assert not state()["stale"] and state()["faults"] == []
            assert counter.get("/api/catalog", id="extra-1")[0] == 404
            os.remove(extra)
            wait_for(lambda: state()["generation"] == 4)
            stop.append(True)
            for each in running:
                each.result()
        assert not dropped, dropped[:3]
        said = counter.stop()
        assert "zz-extra.yaml:10" in said and "goes on with the one before" in said, said


def signals_end_it_cleanly_even_at_work():
    for how in (signal.SIGTERM, signal.SIGINT, signal.SIGHUP):
        counter = Counter()
        with concurrent.futures.ThreadPoolExecutor(8) as pool:
            def ask():
                try:
                    return counter.get("/api/stack", **STACK, best="5")[0]
                except (OSError, http.client.HTTPException):
                    return 0
            running = [pool.submit(ask) for _ in range(8)]
            idle = counter.open()
            time.sleep(0.05)
            begun = time.monotonic()
            counter.stop(how)
            assert time.monotonic() - begun < 5 * SLOW
            assert all(each.result() in (0, 200) for each in running)
            idle.close()


def others_get_in_only_where_asked():
    counter = Counter("--listen", "0.0.0.0", "--host", "till.example")
    port = counter.port
    for host in (f"127.0.0.1:{port}", f"192.0.2.1:{port}", f"till.example:{port}", f"[2001:db8::1]:{port}"):
        assert counter.ask("/api/shop", host=host)[0] == 200, host
    for host in (f"evil.example:{port}", f"till.example.evil:{port}", f"1.2.3.4.evil:{port}"):
        assert counter.ask("/api/shop", host=host)[0] == 403, host
    counter.stop()


def what_cannot_be_served_is_said():
    counter = Counter()
    for options, words in ((["--port", str(counter.port)], "is taken"), (["--port", "99999"], "0 to 65535"),
                           (["--listen", "localhost", "--port", "0"], "no address in numbers"),
                           (["--host", "x"], "--listen"), (["--catalog", "/nowhere", "--port", "0"], "/nowhere"),
                           (["--catalog", "examples/faulty-catalogue", "--port", "0"], "error")):
        done = subprocess.run([OILWAY, "counter", *options], capture_output=True, text=True, cwd=SOURCE,
                              timeout=30 * SLOW, check=False)
        assert done.returncode == 2 and words in done.stderr, (options, done)
    counter.stop()


def every_route_and_each_of_its_parameters_is_documented():
    with open(os.path.join(SOURCE, "src/counter/routes.c"), encoding="utf-8") as file:
        source = re.sub(r'"\s+"', "", file.read())
    ask = re.search(r'#define ASK\s+\\?\s*"([^"]*)"', re.sub(r'"\s*\\\s*"', "", source)).group(1)
    with open(os.path.join(SOURCE, "docs/api.md"), encoding="utf-8") as file:
        rows = [line for line in file if line.startswith("|")]
    routes = re.findall(r'\{"(GET|POST)", "([^"]+)", (ASK)?\s*"?([^",]*)"?, counter_', source)
    assert len(routes) > 15, routes
    for method, path, asks, takes in routes:
        mine = [row for row in rows if f"`{method} {path}`" in row]
        assert mine, f"{method} {path} is not in docs/api.md"
        row = mine[0] + (rows[rows.index(mine[0]) + 1] if path == "/api/draw" else "")
        words = takes.split() + (ask.split() if asks and path == "/api/stack" else [])
        for word in words:
            assert re.search(r"\b" + re.escape(word.strip("*")) + r"\b", row), f"{method} {path}: {word}"


def main():
    shared = [says_what_the_command_says, faults_come_back_with_their_places,
              every_answer_forbids_what_a_browser_need_not_do,
              a_sheet_is_allowed_its_own_style_and_nothing_else, only_its_own_host_is_served,
              pages_of_other_sites_are_refused, no_path_reaches_a_file, what_is_too_large_is_refused,
              rubbish_is_no_matter, who_dawdles_is_hung_up_on, fifty_at_once_are_answered_alike]
    alone = [a_changed_catalogue_is_taken_over_and_a_bad_one_is_not, signals_end_it_cleanly_even_at_work,
             others_get_in_only_where_asked, what_cannot_be_served_is_said,
             every_route_and_each_of_its_parameters_is_documented]
    failed = 0
    counter = Counter()
    for test in shared + alone:
        try:
            test(counter) if test in shared else test()
        except Exception:  # pylint: disable=broad-except
            failed += 1
            print(f"FAILED: {test.__name__.replace('_', ' ')}")
            traceback.print_exc()
    try:
        counter.stop()
    except Exception:  # pylint: disable=broad-except
        failed += 1
        traceback.print_exc()
    print(f"over HTTP: {len(shared) + len(alone) - failed} passed, {failed} failed")
    return failed != 0


if __name__ == "__main__":
    sys.exit(main())
