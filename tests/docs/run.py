#!/usr/bin/env python3
"""Holds the documentation to the program: every command shown with its output is run again.

A block (indented by four, or between ```) that holds lines beginning with "$ oilway" or "$ build/oilway" is taken as a
session: the lines behind a command, up to the next command or the block's end, are what it prints. A line that is only "…"
stands for any number of lines; a command with nothing behind it is run for its exit status only (0 or 1). Blank lines at
either end do not count. With --update the output is written anew where no "…" stands in it.

    tests/docs/run.py BINARY [--update] FILE...
"""
import concurrent.futures
import os
import re
import subprocess
import sys

COMMAND = re.compile(r"^\$ (?:build/)?oilway\b")


def blocks(lines):
    """(first line, past the last, indentation) of each block of code."""
    index = 0
    while index < len(lines):
        if lines[index].startswith("```"):
            past = index + 1
            while past < len(lines) and not lines[past].startswith("```"):
                past += 1
            yield index + 1, past, ""
            index = past + 1
        elif lines[index].startswith("    ") and (index == 0 or not lines[index - 1].strip()):
            past = index
            while past < len(lines) and (lines[past].startswith("    ") or not lines[past].strip()):
                past += 1
            while not lines[past - 1].strip():
                past -= 1
            yield index, past, "    "
            index = past
        else:
            index += 1


def sessions(lines):
    """(line of the command, command, first line of output, past it, indentation)."""
    for first, past, indent in blocks(lines):
        commands = [at for at in range(first, past) if COMMAND.match(lines[at][len(indent):])]
        for number, at in enumerate(commands):
            end = commands[number + 1] if number + 1 < len(commands) else past
            command, out = lines[at][len(indent) + 2:], at + 1
            while command.endswith("\\") and out < end:
                command = command[:-1] + lines[out].strip()
                out += 1
            yield at, command, out, end, indent


def matches(expected, printed):
    """Whether printed lines are the expected ones, "…" standing for any number."""
    if "…" not in expected:
        return expected == printed
    at, pattern = 0, expected
    cut = pattern.index("…")
    if printed[:cut] != pattern[:cut]:
        return False
    at, pattern = cut, pattern[cut + 1:]
    while pattern:
        cut = pattern.index("…") if "…" in pattern else len(pattern)
        piece = pattern[:cut]
        last = cut == len(pattern)
        places = range(len(printed) - len(piece), at - 1, -1) if last else range(at, len(printed) - len(piece) + 1)
        found = next((place for place in places if printed[place:place + len(piece)] == piece), None)
        if found is None or (last and piece and found + len(piece) != len(printed)):
            return False
        at, pattern = found + len(piece), pattern[cut + 1:]
    return True


def trim(lines):
    while lines and not lines[0].strip():
        lines = lines[1:]
    while lines and not lines[-1].strip():
        lines = lines[:-1]
    return [line.rstrip() for line in lines]


def run(command, environment):
    return subprocess.run(["bash", "-c", command.replace("build/oilway", "oilway")], capture_output=True, timeout=120, check=False,
                          env=environment, encoding="utf-8", errors="replace", stdin=subprocess.DEVNULL)


def main():
    binary = os.path.abspath(sys.argv[1])
    update = "--update" in sys.argv
    environment = dict(os.environ, PATH=os.path.dirname(binary) + ":" + os.environ["PATH"], LC_ALL="C.UTF-8", NO_COLOR="1")
    environment.pop("OILWAY_CATALOG", None)
    passed = failed = 0
    for name in [word for word in sys.argv[2:] if word != "--update"]:
        with open(name, encoding="utf-8") as source:
            lines = source.read().split("\n")
        changes, found = [], list(sessions(lines))
        with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as workers:
            results = list(workers.map(lambda session: run(session[1], environment), found))
        for (at, command, out, end, indent), result in zip(found, results):
            printed = trim((result.stdout + result.stderr).split("\n"))
            expected = trim([line[len(indent):] for line in lines[out:end]])
            if (not expected and result.returncode in (0, 1)) or matches(expected, printed):
                passed += 1
            elif update and "…" not in expected:
                changes.append((out, end, [indent + line if line else "" for line in printed], end < len(lines)))
                passed += 1
            else:
                failed += 1
                print(f"{name}:{at + 1}: $ {command}\n  is told to print\n    " + "\n    ".join(expected) +
                      "\n  and prints\n    " + "\n    ".join(printed[:60]))
        for out, end, printed, _ in reversed(changes):
            blank_before = [""] if out < end and not lines[out].strip() else []
            blank_after = [""] if end > out and not lines[end - 1].strip() else []
            lines[out:end] = blank_before + printed + blank_after
        if changes:
            with open(name, "w", encoding="utf-8") as sink:
                sink.write("\n".join(lines))
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
