#!/usr/bin/env python3
"""Holds every #include to the table of layers in DEVELOPERS.md.

A module includes only what stands above it (or beside it, in its own row); a public header belongs to the row that
names it; src/cli and src/counter include public headers and each other, nothing else of the library.
"""
import glob
import os
import re
import sys

COMMAND = ("cli", "counter")


def read_layers(path):
    """The rows of the table: rank by module, rank by public header ("report*" names all that begin so)."""
    modules, headers, rank = {}, {}, 0
    with open(path, encoding="utf-8") as lines:
        for line in lines:
            cells = [cell.strip() for cell in line.strip().strip("|").split("|")]
            names = re.findall(r"`([\w*]+)`", cells[0])
            if rank == 0 and names != ["base"]:
                continue
            if not names or len(cells) != 3:
                break
            modules.update(dict.fromkeys(names, rank + 1))
            headers.update(dict.fromkeys(re.findall(r"[\w*]+", cells[2]), rank + 1))
            rank += 1
    return modules, headers


def rank_of(headers, name):
    return next((rank for known, rank in headers.items() if re.fullmatch(known.replace("*", r"\w*"), name)), None)


def includes(path):
    with open(path, encoding="utf-8") as source:
        for number, line in enumerate(source, 1):
            match = re.match(r'\s*#\s*include "([^"]+)"', line)
            if match:
                yield number, match.group(1)


def check_file(path, module, own, modules, headers):
    for number, name in includes(path):
        folder, _, file = name.partition("/")
        if folder == "oilway":
            above = rank_of(headers, file.removesuffix(".h"))
            if above is not None and own is not None and above > own:
                yield f"{path}:{number}: \"{name}\" stands below it"
        elif module in COMMAND and folder not in COMMAND:
            yield f"{path}:{number}: \"{name}\" is no public header"
        elif folder in modules and modules[folder] > own:
            yield f"{path}:{number}: \"{name}\" stands below it"


def main():
    modules, headers = read_layers("DEVELOPERS.md")
    faults, files = [], 0
    for path in sorted(glob.glob("include/oilway/*.h")):
        name = os.path.basename(path).removesuffix(".h")
        if name == "oilway":
            continue
        files += 1
        if rank_of(headers, name) is None:
            faults.append(f"{path}: in no row of DEVELOPERS.md")
        faults += check_file(path, "", rank_of(headers, name), modules, headers)
    for path in sorted(glob.glob("src/*/*.[ch]")):
        module = path.split("/")[1]
        files += 1
        if module not in modules:
            faults.append(f"{path}: its folder is in no row of DEVELOPERS.md")
        else:
            faults += check_file(path, module, modules[module], modules, headers)
    print("\n".join(faults) if faults else f"layers: {files} files in {len(modules)} modules")
    return 1 if faults or not modules else 0


if __name__ == "__main__":
    sys.exit(main())
