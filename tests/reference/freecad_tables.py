# SPDX-License-Identifier: MIT
# Runs inside freecadcmd: prints the tapping drills of its thread tables, one row each.
import FreeCAD

for kind in ("ISOMetricProfile", "ISOMetricFineProfile", "UNC", "UNF", "UNEF"):
    body = FreeCAD.newDocument("t").addObject("PartDesign::Body", "B")
    hole = body.newObject("PartDesign::Hole", "H")
    hole.ThreadType = kind
    hole.Threaded = True
    for size in hole.getEnumerationsOfProperty("ThreadSize"):
        hole.ThreadSize = size
        print("ROW\t%s\t%s\t%.4f" % (kind, size, hole.Diameter.Value))
