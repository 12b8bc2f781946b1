#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Holds the command's threads against general-purpose references: FreeCAD's thread tables and cut threads, and the
pipe diameters of python3-fluids (Debian packages). Usage: threads.py PATH-OF-OILWAY"""
import json
import os
import subprocess
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
OILWAY = sys.argv[1]
COARSE = {1: .25, 1.1: .25, 1.2: .25, 1.4: .3, 1.6: .35, 1.8: .35, 2: .4, 2.2: .45, 2.5: .45, 3: .5, 3.5: .6, 4: .7,
          4.5: .75, 5: .8, 6: 1, 7: 1, 8: 1.25, 9: 1.25, 10: 1.5, 11: 1.5, 12: 1.75, 14: 2, 16: 2, 18: 2.5, 20: 2.5,
          22: 2.5, 24: 3, 27: 3, 30: 3.5, 33: 3.5, 36: 4, 39: 4, 42: 4.5, 45: 4.5, 48: 5, 52: 5, 56: 5.5, 60: 5.5,
          64: 6, 68: 6}  # ISO 261
faults = []


def oilway(name):
    """A thread as the command has it, or None if it is in no table."""
    run = subprocess.run([OILWAY, "thread", name, "--tap", "--json"], capture_output=True, text=True)
    return json.loads(run.stdout) if run.returncode == 0 else None


def near(what, found, expected, tolerance):
    if abs(found - expected) > tolerance:
        faults.append("%s: %.4f, reference %.4f" % (what, found, expected))


def freecad(script, mark):
    run = subprocess.run(["freecadcmd", os.path.join(HERE, script)], stdin=subprocess.DEVNULL, capture_output=True,
                         text=True)
    return [line.split("\t")[1:] for line in run.stdout.splitlines() if line.startswith(mark + "\t")]


def tables():
    counts = {}
    for kind, size, drill in freecad("freecad_tables.py", "ROW"):
        if kind == "ISOMetricProfile":
            name = "%sx%g" % (size, COARSE[float(size[1:])])
        else:
            name = size if kind == "ISOMetricFineProfile" else "%s %s" % (size, kind)
        thread = oilway(name)
        if thread is None:
            continue
        # Drill tables round in their own ways (M4.5: 3.7 for 3.75): a tenth for metric, two for inch sizes, and within the
        # limits of the bore.
        near("drill of " + name, thread["tap"]["drill_mm"], float(drill), 0.101 if size.startswith("M") else 0.21)
        if not thread["tap"]["bore_least_mm"] - 0.051 < float(drill) < thread["tap"]["bore_most_mm"] + 0.051:
            faults.append("the reference's drill of %s, %s mm, lies outside the limits of the bore" % (name, drill))
        if kind == "ISOMetricFineProfile":
            near("D - P of " + name, thread["major_mm"] - thread["pitch_mm"], float(drill), 1e-6)
        counts[kind] = counts.get(kind, 0) + 1
    return counts


def cuts():
    count = 0
    for kind, size, fit, major, pitch in freecad("freecad_cut.py", "CUT"):
        thread = oilway("%s UNF" % size if kind == "UNF" else size)
        if fit == "6G":  # FreeCAD adds the deviation G of ISO 965-1, which is that of g
            male = [side for side in thread["sides"] if side["class"] == "6g"][0]
            deviation = male["major"]["basic_mm"] - male["major"]["most_mm"]
            near("deviation of " + size, deviation, float(major) - thread["major_mm"], 0.0006)
        else:
            near("major of " + size, thread["major_mm"], float(major), 0.0011)
            near("pitch of " + size, thread["pitch_mm"], float(pitch), 0.0006)
        count += 1
    return count


def pipes():
    from fluids.piping import nearest_pipe
    count = 0
    for size, name in ((.125, "1/8"), (.25, "1/4"), (.375, "3/8"), (.5, "1/2"), (.75, "3/4"), (1, "1"),
                       (1.25, "1 1/4"), (1.5, "1 1/2"), (2, "2")):
        male = [side for side in oilway(name + " NPT")["sides"] if side["gender"] == "male"][0]
        # ASME B1.20.1: E0 = D - (0.05 D + 1.1) P, solved for the pipe's outside diameter D.
        pitch = oilway(name + " NPT")["pitch_mm"] / 25.4
        outside = (male["small_end_pitch_diameter_mm"] / 25.4 + 1.1 * pitch) / (1 - 0.05 * pitch) * 25.4
        near("pipe of %s NPT" % name, outside, nearest_pipe(NPS=size, schedule="40")[2] * 1000, 0.06)
        count += 1
    return count


counted = tables()
cut, pipe = cuts(), pipes()
least = {"ISOMetricProfile": 38, "ISOMetricFineProfile": 171, "UNC": 13, "UNF": 13, "UNEF": 16}
for kind, number in least.items():
    if counted.get(kind, 0) < number:
        faults.append("only %d of at least %d rows of %s were compared" % (counted.get(kind, 0), number, kind))
if cut < 5:
    faults.append("only %d of 5 cut threads were measured" % cut)
print("reference: %s; %d cut threads; %d pipes; %d faults"
      % (", ".join("%d %s" % (counted.get(kind, 0), kind) for kind in least), cut, pipe, len(faults)))
for fault in faults:
    print(fault)
sys.exit(1 if faults else 0)
