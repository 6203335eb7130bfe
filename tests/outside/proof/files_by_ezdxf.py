"""Writes DXF files with ezdxf into the folder that is named: clean ones, and ones with a fault each. Invented plate, inches.

A name starts with the code that is to be found, or with `clean`.
"""
import math
import sys
from pathlib import Path

import ezdxf
from ezdxf.math import BSpline, ConstructionArc

FOLDER = Path(sys.argv[1])
HOLES = [(-6, 5), (6, 5), (6, -5), (-5, -5)]
CORNERS = [(-12, -9), (12, -9), (13, -8), (13, 8), (12, 9), (-12, 9), (-13, 8), (-13, -8)]
RADIUS = 1.3125 / 2


def new(version="R2000", unit=1, measurement=0):
    doc = ezdxf.new(version)
    doc.header["$INSUNITS"] = unit
    doc.header["$MEASUREMENT"] = measurement
    for name in ("OUTLINE", "HOLES", "OPENINGS", "MARKS"):
        doc.layers.add(name)
    return doc


def outline(msp, corners=CORNERS, scale=1):
    points = [(x * scale, y * scale) for x, y in corners]
    if msp.doc.dxfversion == "AC1009":
        msp.add_polyline2d(points, close=True, dxfattribs={"layer": "OUTLINE"})
    else:
        msp.add_lwpolyline(points, close=True, dxfattribs={"layer": "OUTLINE"})


def holes(msp, centers=HOLES, radius=RADIUS, scale=1):
    for x, y in centers:
        msp.add_circle((x * scale, y * scale), radius * scale, dxfattribs={"layer": "HOLES"})
    msp.add_circle((0, 0), 3 * scale, dxfattribs={"layer": "OPENINGS"})


def save(doc, name):
    doc.saveas(FOLDER / f"{name}.dxf")


def plate(name, change=lambda doc, msp: None, **kinds):
    doc = new(**kinds)
    msp = doc.modelspace()
    outline(msp)
    holes(msp)
    change(doc, msp)
    save(doc, name)


def bare(name, draw, **kinds):
    doc = new(**kinds)
    draw(doc, doc.modelspace())
    save(doc, name)


# ezdxf leaves $INSUNITS out of an R12 file.
plate("no-unit R12", version="R12")
for version in ("R2000", "R2004", "R2007", "R2010", "R2013", "R2018"):
    plate(f"clean {version}", version=version)


def blocks(doc, msp):
    block = doc.blocks.new("HOLE", base_point=(1, 1))
    block.add_circle((1, 1), RADIUS)
    outline(msp)
    for x, y in HOLES:
        msp.add_blockref("HOLE", (x, y), dxfattribs={"layer": "HOLES", "rotation": 30})
    msp.add_circle((0, 0), 3, dxfattribs={"layer": "OPENINGS"})


bare("clean blocks", blocks)


def nested(doc, msp):
    hole = doc.blocks.new("HOLE")
    hole.add_circle((0, 0), RADIUS / 2)
    right = doc.blocks.new("RIGHT")
    right.add_blockref("HOLE", (3, 2.5))
    right.add_blockref("HOLE", (3, -2.5))
    outline(msp)
    msp.add_blockref("RIGHT", (0, 0), dxfattribs={"layer": "HOLES", "xscale": 2, "yscale": 2})
    msp.add_blockref("HOLE", (-6, 5), dxfattribs={"layer": "HOLES", "xscale": -2, "yscale": 2})
    msp.add_blockref("HOLE", (-5, -5), dxfattribs={"layer": "HOLES", "xscale": 2, "yscale": 2})
    msp.add_circle((0, 0), 3, dxfattribs={"layer": "OPENINGS"})


bare("clean nested blocks", nested)


def splines(doc, msp):
    outline(msp)
    for x, y in HOLES:
        arc = ConstructionArc((x, y), RADIUS, 0, 360)
        msp.add_spline().apply_construction_tool(BSpline.from_arc(arc))
        msp[-1].dxf.layer = "HOLES"
    msp.add_ellipse((0, 0), (0, 3), 1, dxfattribs={"layer": "OPENINGS"})


bare("clean splines", splines)


def below(doc, msp):
    outline(msp)
    for x, y in HOLES:
        msp.add_circle((-x, y), RADIUS, dxfattribs={"layer": "HOLES", "extrusion": (0, 0, -1)})
    msp.add_circle((0, 0), 3, dxfattribs={"layer": "OPENINGS"})


bare("clean from below", below)


def bulges(doc, msp):
    outline(msp)
    for x, y in HOLES:
        points = [(x - RADIUS, y, 1), (x + RADIUS, y, 1)]
        msp.add_lwpolyline(points, format="xyb", close=True, dxfattribs={"layer": "HOLES"})
    for start in (0, 90, 180, 270):
        msp.add_arc((0, 0), 3, start, start + 90, dxfattribs={"layer": "OPENINGS"})


bare("clean bulges and arcs", bulges)

plate("stray-text 1", lambda doc, msp: msp.add_text("TOP", dxfattribs={"layer": "MARKS"}))
plate("stray-text 2", lambda doc, msp: msp.add_mtext("TOP", dxfattribs={"layer": "MARKS"}))
plate("stray-dimension", lambda doc, msp: msp.add_linear_dim((0, 12), (-13, 9), (13, 9)).render())


def hatch(doc, msp):
    msp.add_hatch().paths.add_polyline_path(CORNERS)


plate("stray-hatch", hatch)
plate("stray-point", lambda doc, msp: msp.add_point((1, 1)))
plate("free-curve", lambda doc, msp: msp.add_ellipse((9, 0), (1, 0), 0.6, dxfattribs={"layer": "OPENINGS"}))
plate("duplicate 1", lambda doc, msp: msp.add_circle((6, 5), RADIUS, dxfattribs={"layer": "HOLES"}))
plate("overlap", lambda doc, msp: msp.add_line((-5, -9), (5, -9), dxfattribs={"layer": "OUTLINE"}))
plate("crossing", lambda doc, msp: msp.add_circle((6.5, 5), RADIUS, dxfattribs={"layer": "HOLES"}))
plate("island", lambda doc, msp: msp.add_circle((0, 0), 1, dxfattribs={"layer": "OPENINGS"}))
plate("outside-outline", lambda doc, msp: msp.add_circle((40, 0), 1, dxfattribs={"layer": "HOLES"}))
plate("second-outline", lambda doc, msp: outline(msp, [(x + 40, y) for x, y in CORNERS]))
plate("open-contour", lambda doc, msp: msp.add_arc((9, 0), 1, 0, 350, dxfattribs={"layer": "HOLES"}))
plate("layer-unknown", lambda doc, msp: msp.add_circle((9, 0), 0.5, dxfattribs={"layer": "ELSEWHERE"}))
plate("layer-hidden 1", lambda doc, msp: doc.layers.get("HOLES").off())
plate("layer-hidden 2", lambda doc, msp: doc.layers.get("HOLES").freeze())
plate("unit-contradiction", unit=1, measurement=1)
plate("no-unit", unit=0)
plate("paper-space", lambda doc, msp: doc.layout("Layout1").add_circle((0, 0), 1))
plate("elevation", lambda doc, msp: msp.add_circle((9, 0, 4), 0.5, dxfattribs={"layer": "HOLES"}))
plate("thickness", lambda doc, msp: msp.add_circle((9, 0), 0.5, dxfattribs={"layer": "HOLES", "thickness": 2}))
plate("block-content", lambda doc, msp: doc.blocks.new("LOST").add_circle((0, 0), 1))
plate("extrusion", lambda doc, msp: msp.add_circle((9, 0), 1, dxfattribs={"extrusion": (1, 0, 0)}))
plate("unread-entity", lambda doc, msp: msp.add_3dface([(0, 0), (1, 0), (1, 1), (0, 1)]))
plate("width", lambda doc, msp: msp.add_lwpolyline([(8, 0), (9, 0), (9, 1)], close=True, dxfattribs={"const_width": 0.1, "layer": "OPENINGS"}))


def cycle(doc, msp):
    doc.blocks.new("A").add_blockref("B", (0, 0))
    doc.blocks.new("B").add_blockref("A", (0, 0))
    msp.add_blockref("A", (0, 0))


plate("block-cycle", cycle)
plate("block-missing", lambda doc, msp: msp.add_blockref("NOWHERE", (0, 0)))


def uneven(doc, msp):
    doc.blocks.new("HOLE").add_circle((0, 0), 0.5)
    msp.add_blockref("HOLE", (9, 0), dxfattribs={"xscale": 2})


plate("uneven-scale", uneven)


def polygons(doc, msp):
    outline(msp)
    for x, y in HOLES:
        points = [(x + RADIUS * math.cos(a * math.pi / 8), y + RADIUS * math.sin(a * math.pi / 8)) for a in range(16)]
        msp.add_lwpolyline(points, close=True, dxfattribs={"layer": "HOLES"})
    msp.add_circle((0, 0), 3, dxfattribs={"layer": "OPENINGS"})


bare("coarse-polygon", polygons)


def moved(name, centers, radius=RADIUS, scale=1, corners=CORNERS):
    def draw(doc, msp):
        outline(msp, corners, scale)
        holes(msp, centers, radius, scale)

    bare(name, draw)


moved("hole-position", [(-6, 5), (6.125, 5), (6, -5), (-5, -5)])
moved("hole-diameter", HOLES, radius=1.25 / 2)
moved("hole-missing", HOLES[:3])
moved("hole-extra", [*HOLES, (10, 0)])
moved("mirrored", [(-x, y) for x, y in HOLES])
moved("wrong-unit 1", HOLES, scale=25.4)
moved("wrong-unit 2", HOLES, scale=1 / 25.4)
moved("wrong-unit 3", HOLES, scale=12)
moved("wrong-unit 4", HOLES, scale=1 / 12)
moved("scaled", HOLES, scale=0.96)
moved("pattern-turned", [(-y, x) for x, y in HOLES])
moved("pattern-shifted", [(x + 0.5, y) for x, y in HOLES])
moved("other-mark", [(-6.25, 5), (6.25, 5), (6.25, -5), (-6.25, -5)])
moved("outline-differs", HOLES, corners=[(-13, -9), (13, -9), (13, 9), (-13, 9)])

plate("binary")
ezdxf.readfile(FOLDER / "binary.dxf").saveas(FOLDER / "binary.dxf", fmt="bin")
