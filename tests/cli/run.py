#!/usr/bin/env python3
"""Runs the end-to-end cases: the real binary, as a user would type it.

A case file (tests/cli/*.case) holds cases like

    -- the switch keeps its place on a tee
    run: oilway stack --from brockle-4:gallery --to plover-41:oil-in --keep sw-2
    exit: 0
    out: tee-2
    out!: NO
    err: warning
    json: stacks.0.part_count == 6

`run` goes through bash in the source folder, with the binary's folder first on the path and {tmp} a folder of the
case's own; several `run` lines run one after another and the last one is judged. Lines that follow `file: NAME` and
begin with a bar are written to {tmp}/NAME. `out`, `err`: words that must stand in standard output or error (`out!`,
`err!`: must not). `json`: a path into standard output (dots, numbers for lists, # for a list's length) compared
with ==, !=, <, <=, >, >= or ~ (holds the words).
"""
import concurrent.futures
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile


def read_cases(path):
    cases, case, into = [], None, None
    with open(path, encoding="utf-8") as lines:
        for number, line in enumerate(lines, 1):
            line = line.rstrip("\n")
            if into is not None and line.startswith("|"):
                case["files"][into] += line[1:].removeprefix(" ") + "\n"
                continue
            into = None
            if not line.strip() or line.startswith("#"):
                continue
            if line.startswith("-- "):
                case = {"name": line[3:], "place": f"{path}:{number}", "run": [], "files": {}, "wants": []}
                cases.append(case)
                continue
            key, colon, value = line.partition(": ")
            if case is None or not colon:
                sys.exit(f"{path}:{number}: cannot be read as a line of a case: {line}")
            if key == "run":
                case["run"].append(value)
            elif key == "file":
                into = value.strip()
                case["files"][into] = ""
            elif key in ("exit", "out", "out!", "err", "err!", "json"):
                case["wants"].append((key, value))
            else:
                sys.exit(f"{path}:{number}: no such key: {key}")
    return cases


def at(value, path):
    for step in path.split("."):
        if step == "#":
            value = len(value)
        elif isinstance(value, list):
            value = value[int(step)]
        else:
            value = value[step]
    return value


COMPARE = {
    "==": lambda a, b: a == b, "!=": lambda a, b: a != b, "<": lambda a, b: a < b, "<=": lambda a, b: a <= b,
    ">": lambda a, b: a > b, ">=": lambda a, b: a >= b, "~": lambda a, b: b in (a if isinstance(a, str) else json.dumps(a)),
}


def judge(case, result):
    """What is wrong with a result, a line each."""
    wrong, seen_exit = [], False
    document = None
    for key, value in case["wants"]:
        if key == "exit":
            seen_exit = True
            if result.returncode != int(value):
                wrong.append(f"exit {result.returncode}, not {value}")
        elif key.startswith("out") or key.startswith("err"):
            text = result.stdout if key.startswith("out") else result.stderr
            if (value in text) == key.endswith("!"):
                wrong.append(f"{key}: {value}")
        else:
            try:
                document = json.loads(result.stdout) if document is None else document
                path, sign, expected = re.fullmatch(r"(\S+) (==|!=|<=|>=|<|>|~) (.*)", value).groups()
                found = at(document, path)
                if not COMPARE[sign](found, json.loads(expected)):
                    wrong.append(f"json: {value}: it is {json.dumps(found)[:300]}")
            except (ValueError, KeyError, IndexError, TypeError, AttributeError) as fault:
                wrong.append(f"json: {value}: {type(fault).__name__} {fault}")
    if not seen_exit or not case["wants"]:
        wrong.append("the case asserts no exit status")
    if result.returncode < 0 or result.returncode > 125:
        wrong.append(f"killed: {result.returncode}")
    return wrong


def run_case(case, environment, source):
    folder = tempfile.mkdtemp(prefix="oilway-case-")
    try:
        for name, text in case["files"].items():
            path = os.path.join(folder, name)
            os.makedirs(os.path.dirname(path), exist_ok=True)
            with open(path, "w", encoding="utf-8") as out:
                out.write(text)
        result = None
        for line in case["run"]:
            result = subprocess.run(["bash", "-c", line.replace("{tmp}", folder)], cwd=source, env=environment,
                                    stdin=subprocess.DEVNULL, capture_output=True, timeout=120, check=False,
                                    encoding="utf-8", errors="replace")
        return result, judge(case, result) if result else ["nothing to run"]
    finally:
        shutil.rmtree(folder)


def main():
    binary, names = sys.argv[1], sys.argv[2:]
    source = os.getcwd()
    environment = dict(os.environ, PATH=os.path.dirname(os.path.abspath(binary)) + ":" + os.environ["PATH"],
                       LC_ALL="C.UTF-8")
    for name in ("OILWAY_CATALOG", "NO_COLOR"):
        environment.pop(name, None)
    cases = [case for path in names for case in read_cases(path)]
    passed = failed = 0
    # A case has a folder of its own, so that they can run side by side; they are told of in their own order.
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as workers:
        for case, (result, wrong) in zip(cases, workers.map(lambda case: run_case(case, environment, source), cases)):
            if wrong:
                failed += 1
                print(f"{case['place']}: {case['name']}\n  " + "\n  ".join(wrong))
                print("  $ " + "\n  $ ".join(case["run"]))
                print("  stdout: " + (result.stdout[:1500] if result else "").replace("\n", "\n    "))
                print("  stderr: " + (result.stderr[:1500] if result else "").replace("\n", "\n    "))
            else:
                passed += 1
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed or not passed else 0)


if __name__ == "__main__":
    main()
