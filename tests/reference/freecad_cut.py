# SPDX-License-Identifier: MIT
# Runs inside freecadcmd: cuts threads into a block and measures them. Twice the largest radius of a vertex is the
# hole's major diameter; away from the mouth those vertices come in pairs, one pair a turn.
import FreeCAD
import Part
import PartDesign  # noqa: F401  registers the features
import Sketcher  # noqa: F401

CUTS = (("UNF", "3/8", "2B"), ("UNF", "9/16", "2B"), ("UNF", "3/4", "2B"),
        ("ISOMetricFineProfile", "M10x1.0", "6G"), ("ISOMetricFineProfile", "M12x1.5", "6G"))

document = FreeCAD.newDocument("t")
body = document.addObject("PartDesign::Body", "B")
box = body.newObject("PartDesign::AdditiveBox", "Box")
box.Length, box.Width, box.Height = 60, 60, 20
sketch = body.newObject("Sketcher::SketchObject", "K")
sketch.Placement = FreeCAD.Placement(FreeCAD.Vector(0, 0, 20), FreeCAD.Rotation())
sketch.addGeometry(Part.Circle(FreeCAD.Vector(30, 30, 0), FreeCAD.Vector(0, 0, 1), 4), False)
hole = body.newObject("PartDesign::Hole", "H")
hole.Profile = sketch
document.recompute()
hole.DepthType = "ThroughAll"
for kind, size, fit in CUTS:
    hole.ThreadType = kind
    hole.ThreadSize = size
    hole.ThreadClass = fit
    hole.Threaded = True
    hole.ModelThread = True
    document.recompute()
    points = [(((v.X - 30) ** 2 + (v.Y - 30) ** 2) ** 0.5, v.Z) for v in hole.Shape.Vertexes]
    radius = max(r for r, _ in points if r < 25)
    heights = sorted(z for r, z in points if abs(r - radius) < 1e-3)
    middle = len(heights) // 2
    print("CUT\t%s\t%s\t%s\t%.4f\t%.4f" % (kind, size, fit, 2 * radius, heights[middle + 2] - heights[middle]))
