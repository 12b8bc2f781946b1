#!/usr/bin/env python3
"""Holds the YAML in the documentation to the program: every ```yaml block is read as what it is.

A block with `job` is planned, one with `from` and `parts` is checked (both may find something wrong, but must be read),
one with `line` or `loop` is reckoned, and one with `kind` or `page` is checked as a page laid over the catalogue that ships.
In a page that is indented by four, `line:` and `loop:` open a block too; in a man page what stands between .EX and .EE is one.

    tests/docs/pages.py BINARY FILE...
"""
import os
import re
import subprocess
import sys
import tempfile


def blocks(lines):
    """(line number, text) of each block."""
    index = 0
    while index < len(lines):
        start, taken = index, []
        if lines[index].startswith("```yaml"):
            index += 1
            while index < len(lines) and not lines[index].startswith("```"):
                taken.append(lines[index])
                index += 1
        elif lines[index] == ".EX":
            index += 1
            while index < len(lines) and lines[index] != ".EE":
                taken.append(lines[index].replace("\\-", "-"))
                index += 1
        elif re.match(r"    (line|loop): \S", lines[index]):
            while index < len(lines) and (lines[index].startswith("    ") or not lines[index].strip()):
                taken.append(lines[index][4:])
                index += 1
        index += 1
        if taken:
            yield start + 1, "\n".join(taken).rstrip() + "\n"


def commands_for(text, folder):
    """The command that reads a block, and the exit statuses that are no fault."""
    keys = set(re.findall(r"^([a-z-]+):", text, re.MULTILINE))
    path = os.path.join(folder, "block.yaml")
    with open(path, "w", encoding="utf-8") as sink:
        sink.write(text)
    if "job" in keys:
        with open(os.path.join(folder, "stock.yaml"), "w", encoding="utf-8") as sink:
            sink.write("kind: stock\ncolumns: [id, quantity, price]\nrows:\n  - [tf-2-4, 1, ~]\n")
        return ["plan", path], (0, 1)
    if {"from", "parts"} <= keys:
        return ["check", path], (0, 1)
    if "line" in keys:
        return ["feed", path], (0, 1)
    if "loop" in keys:
        return ["siphon", path], (0, 1)
    if keys & {"kind", "page"}:
        return ["catalog", "check", "--catalog", "catalog", "--catalog", folder], (0,)
    return None, ()


def main():
    binary = os.path.abspath(sys.argv[1])
    passed = failed = 0
    for name in sys.argv[2:]:
        with open(name, encoding="utf-8") as source:
            lines = source.read().split("\n")
        for number, text in blocks(lines):
            with tempfile.TemporaryDirectory() as folder:
                command, good = commands_for(text, folder)
                if command is None:
                    failed += 1
                    print(f"{name}:{number}: nothing that the program reads")
                    continue
                result = subprocess.run([binary, *command], capture_output=True, timeout=120, check=False,
                                        encoding="utf-8", errors="replace", stdin=subprocess.DEVNULL)
            if result.returncode in good:
                passed += 1
            else:
                failed += 1
                print(f"{name}:{number}: oilway {command[0]} leaves with {result.returncode}:\n{result.stderr}")
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed or not passed else 0)


if __name__ == "__main__":
    main()
