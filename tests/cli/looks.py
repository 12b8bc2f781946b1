#!/usr/bin/env python3
"""How text looks on terminals of several widths, without colour, and where only ASCII may be written.

    tests/cli/looks.py BINARY
"""
import os
import subprocess
import sys
import tempfile
import unicodedata

from terminal import Judge, Terminal

ASK = ["stack", "--from", "brockle-4:gallery", "--to"]
COMMANDS = [
    ["--help"], ["stack", "--help"], ["mates", "--help"], ["oil", "--help"], ["manual"],
    ASK + ["curlew-8b:oil-in", "--keep", "sw-2", "--best", "2", "--cards"],
    ASK + ["M13x1.25 female washer"],
    ASK + ["curlew-8b:oil-in", "--explain", "tee-2"],
    ["stack", "--from", "M10 female washer", "--to", "-4 flare37 male"],
    ["check", "examples/drawn-wrong.yaml", "--cards"], ["check", "examples/plover-on-brockle.yaml"],
    ["bill", "examples/tractor-pull.yaml"], ["bill", "{layout}"], ["swap", "examples/plover-on-brockle.yaml", "he-4-s"],
    ["plan", "examples/twin-feed.yaml"], ["plan", "examples/must-fail.yaml"], ["plan", "examples/through-the-heater.yaml"],
    ["rules", "taper-aimed"], ["catalog", "list", "--catalog", "{shop}"], ["catalog", "show", "curlew-8b"], ["catalog", "check"],
    ["caliper", "9.7 mm", "--tpi", "28", "--male"], ["mates", "M10x1 male washer", "--card"], ["thread", "M10"],
    ["thread", "--tap", "1/8-27 NPT"], ["oil", "15W-40", "--at", "100 C"], ["feed", "examples/quick/twin.yaml"],
    ["siphon", "examples/quick/siphon.yaml"],
    ["drain", "--bore", "15.9 mm", "--slope", "20 deg", "--flow", "2 L/min", "--oil", "15W-40", "--at", "100 C"],
    ["plan", "a/file/that/is/nowhere.yaml"], ["catalog", "check", "--catalog", "examples/faulty-catalogue"],
]
# Parts whose names hold wide signs, accents of their own and letters beyond ASCII.
PAGE = """page: wide
kind: adapter
title: 継手 Verschraubung für Öl, e\u0301troit
columns: [id, a, b, bore, length, price]
rows:
- [継手-1, 1/8-27 NPT male, -4 flare37 male, 4.4 mm, 28 mm, 3.10]
- [für-2, 1/8-27 NPT male, -4 flare37 male, 4.4 mm, 30 mm, 3.10]
- [plain-3, 1/8-27 NPT male, -6 flare37 male, 4.4 mm, 30 mm, 3.10]
"""
LAYOUT = """layout: 油
from: "1/8-27 NPT female"
parts: [継手-1, "-4 flare37 female swivel"]
---
layout: second
from: "1/8-27 NPT female"
parts: [plain-3, "-6 flare37 female swivel"]
"""


def columns(line):
    """By the Unicode data of Python, not by ours."""
    return sum(0 if unicodedata.combining(sign) else 2 if unicodedata.east_asian_width(sign) in "WF" else 1 for sign in line)


def main():
    binary, judge = os.path.abspath(sys.argv[1]), Judge()
    plain = dict(os.environ, LC_ALL="C.UTF-8", TERM="xterm", NO_COLOR="1")
    with tempfile.TemporaryDirectory(prefix="oilway-looks-") as folder:
        shop, layout = f"{folder}/shop", f"{folder}/layout.yaml"
        os.mkdir(shop)
        for name, text in ((f"{shop}/wide.yaml", PAGE), (layout, LAYOUT)):
            with open(name, "w", encoding="utf-8") as out:
                out.write(text)

        for command in COMMANDS:
            words = [word.replace("{layout}", layout).replace("{shop}", shop) for word in command]
            words += ["--catalog", shop] if "{layout}" in command else []
            named = " ".join(command)
            said = [word for word in words if word.startswith("/")]
            for width in (40, 60, 80, 200):
                seen, _ = Terminal([binary] + words, plain, width).read_all(60)
                if command == ["manual"] or "faulty" in named: # roff, and lines of a file as they stand there
                    continue
                wide = [line for line in seen.replace("\r", "").split("\n")
                        if columns(line) > width and len(line.split()) > 1 and not any(path in line for path in said)]
                judge.say(not wide, f"{named}: no line is wider than {width}", wide)
                judge.say("\x1b" not in seen, f"{named}: NO_COLOR is obeyed", seen)
            cases = [(dict(os.environ, LC_ALL=name), []) for name in ("C", "POSIX", "en_US.ISO-8859-1")]
            if "--help" not in words and "manual" not in words:
                cases.append((plain, ["--ascii"]))
            for environment, more in cases:
                result = subprocess.run([binary] + words + more, env=environment, capture_output=True, check=False, timeout=60)
                beyond = [line for line in (result.stdout + result.stderr).split(b"\n") if not line.isascii()]
                judge.say(not beyond, f"{named}: ASCII only in {environment['LC_ALL']} {more}", beyond)

        seen, _ = Terminal([binary, "bill", layout, "--catalog", shop], plain, 100).read_all(60)
        lines = [line for line in seen.replace("\r", "").split("\n") if "3.10" in line and "total" not in line]
        prices = {columns(line[:line.index("3.10")]) for line in lines}
        judge.say(len(lines) == 2 and len(prices) == 1, "wide ids leave the columns of a bill in line", lines)

        coloured = {key: value for key, value in plain.items() if key != "NO_COLOR"}
        for terminal, wanted in (("xterm", True), ("dumb", False)):
            seen, _ = Terminal([binary, "check", "examples/drawn-wrong.yaml"], dict(coloured, TERM=terminal)).read_all(60)
            judge.say(("\x1b[" in seen) == wanted, f"colour on TERM={terminal}: {wanted}", seen)
        piped = subprocess.run([binary, "check", "examples/drawn-wrong.yaml"], env=coloured, capture_output=True, check=False)
        judge.say(b"\x1b" not in piped.stdout + piped.stderr, "no colour in a pipe", piped.stdout)
    print(f"{judge.passed} passed, {judge.failed} failed")
    sys.exit(1 if judge.failed else 0)


if __name__ == "__main__":
    main()
