#!/usr/bin/env python3
"""How long each route of the counter takes over HTTP, on the shipped catalogue: times.py OILWAY

Nine times each on one connection, in milliseconds: the middle and the longest from the first byte sent to the last received, and the
processor's own time for one, which a busy machine does not lengthen (Linux tells it; elsewhere it is 0). Figures, not a test.
"""
import glob
import http.client
import statistics
import sys
import time
import urllib.parse

import over_http

GALLERY = "brockle-4:gallery"
INLETS = ["plover-41:oil-in", "dunlin-63:oil-in", "curlew-8b:oil-in"]


def read(path):
    with open(path, encoding="utf-8") as file:
        return file.read()


def requests():
    """Yields path, parameters and body of each."""
    layout = over_http.command("stack", *over_http.WORDS, "--format", "yaml").decode()
    job, feed, siphon = (read(f"{over_http.SOURCE}/examples/{name}.yaml") for name in
                         ("tractor-pull", "quick/restrictor", "quick/siphon"))
    ask = [("from", GALLERY), ("to", INLETS[2]), ("keep", "sw-2")]
    none = [("from", "M13x1.25 female washer"), ("to", INLETS[0]), ("keep", "sw-2"), ("keep", "sender-2")]
    for best in ("1", "3", "20"):
        yield "/api/stack", ask + [("best", best)], None
    yield "/api/stack", [("from", GALLERY), *(("to", inlet) for inlet in INLETS), ("keep", "sw-2"), ("best", "3")], None
    yield "/api/stack", [("from", "brockle-4"), ("to", INLETS[0]), ("to", INLETS[1]), *none[2:], ("best", "8")], None
    yield "/api/stack", [("from", "M10 female"), ("to", "-4 flare37 male"), ("best", "8")], None
    yield "/api/stack", none, None
    yield "/api/sketch", none[:2], None
    yield "/sheet", ask, None
    for path, parameters, body in (
            ("/sheet", [], layout), ("/sheet", [], job), ("/api/check", [], layout), ("/api/flow", [], layout), ("/api/bill", [], layout),
            ("/api/bill", [], job), ("/api/plan", [], job), ("/api/swap", [("place", "he-4-s#2")], layout), ("/api/draw", [("bare", "yes")], layout),
            ("/api/draw", [("of", "pressure")], layout), ("/api/draw", [], job), ("/api/draw", [("of", "pressure")], job),
            ("/api/draw", [("of", "drain")], job), ("/api/draw", [("of", "coolant")], job), ("/api/draw", [("of", "siphon")], job),
            ("/api/feed", [], feed), ("/api/siphon", [], siphon)):
        yield path, parameters, body
    yield "/api/caliper", [("diameter", "9.7 mm")], None
    yield "/api/caliper", [("diameter", "9.7 mm"), ("accuracy", "0.5")], None
    yield "/api/thread", [("name", "G1/8"), ("tap", "yes")], None
    yield "/api/mates", [("end", "1/8-27 NPT male")], None
    yield "/api/mates", [("end", "M10 female")], None
    yield "/api/oil", [("oil", "15W-40"), ("at", "100 C")], None
    yield "/api/drain", [("bore", "15.9 mm"), ("slope", "20 deg"), ("flow", "2 L/min"), ("oil", "15W-40"), ("at", "100 C")], None
    for words in ("", "br", "1/8-27 NPT fem"):
        yield "/api/read", [("words", words), ("for", "from")], None
    for path, parameters in (("/api/shop", []), ("/api/catalog", [("id", "curlew-8b")]), ("/api/catalog", [("only", "given")]),
                             ("/api/catalog", []), ("/", []), ("/sheet.css", [])):
        yield path, parameters, None


def worked(process):
    """Milliseconds that all threads of a process have run."""
    total = 0
    for path in glob.glob(f"/proc/{process.pid}/task/*/schedstat"):
        total += int(read(path).split()[0])
    return total / 1e6


def main():
    counter = over_http.Counter()
    line = http.client.HTTPConnection(counter.address, counter.port)
    print(" middle  longest  processor    bytes  request")
    for path, parameters, body in requests():
        took, before = [], worked(counter.process)
        for _ in range(9):
            begun = time.perf_counter()
            line.request("GET" if body is None else "POST", path + ("?" + urllib.parse.urlencode(parameters) if parameters else ""),
                         None if body is None else body.encode())
            answer = line.getresponse()
            length = len(answer.read())
            took.append(1e3 * (time.perf_counter() - begun))
            assert answer.status == 200, (path, parameters, answer.status)
        each = (worked(counter.process) - before) / len(took)
        words = " ".join(f"{name}={value}" for name, value in parameters)
        kind = "" if body is None else next(" of a " + name for name in ("job", "layout", "line", "loop") if f"{name}:" in body)
        print(f"{statistics.median(took):7.1f} {max(took):8.1f} {each:10.1f} {length:8d}  {path} {words}{kind}")
    line.close()
    counter.stop()


if __name__ == "__main__":
    sys.exit(main())
