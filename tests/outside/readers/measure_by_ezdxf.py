"""Reads cut files with ezdxf (Debian python3-ezdxf) and measures them from its entities.

Standard input: a JSON list of {"path", "cut"} with the names of the layers that are cut; standard output: a JSON list of
what ezdxf says. Polylines are measured by ezdxf's own virtual entities, so that its reading of bulges counts.
"""
import json
import math
import sys

import ezdxf
from ezdxf import units


def edges_of(entity):
    """(start, end, length, twice the area swept about 0,0, points of the true extents) counter-clockwise for arcs."""
    kind = entity.dxftype()
    if kind == "LWPOLYLINE":
        return [edge for part in entity.virtual_entities() for edge in edges_of(part)]
    if kind == "LINE":
        a, b = entity.dxf.start, entity.dxf.end
        return [((a.x, a.y), (b.x, b.y), (b - a).magnitude, a.x * b.y - b.x * a.y, [(a.x, a.y), (b.x, b.y)])]
    if kind == "ARC":
        arc = entity.construction_tool()
        a, b, c, r = arc.start_point, arc.end_point, arc.center, arc.radius
        sweep = math.radians((arc.end_angle - arc.start_angle) % 360)
        swept = r * r * sweep + c.x * (b.y - a.y) - c.y * (b.x - a.x)
        points = [(a.x, a.y), (b.x, b.y)]
        for quarter in range(4):
            if (90 * quarter - arc.start_angle) % 360 <= math.degrees(sweep):
                turn = math.radians(90 * quarter)
                points.append((c.x + r * math.cos(turn), c.y + r * math.sin(turn)))
        return [((a.x, a.y), (b.x, b.y), r * sweep, swept, points)]
    return []


def places():
    """Names places: one within 1e-5 of an earlier one has its name, wherever rounding would part them."""
    known = {}

    def key(p):
        column, row = round(p[0] * 1e5), round(p[1] * 1e5)
        for dx in (0, -1, 1):
            for dy in (0, -1, 1):
                near = known.get((column + dx, row + dy))
                if near is not None and math.hypot(near[0] - p[0], near[1] - p[1]) < 1e-5:
                    return (column + dx, row + dy)
        known[(column, row)] = p
        return (column, row)

    return key


def chain(edges):
    """Closed chains of edges as [(edge, forward)], and the number of chains left open."""
    key = places()
    at = {}
    for index, edge in enumerate(edges):
        for end in (0, 1):
            at.setdefault(key(edge[end]), []).append(index)
    unused, closed, left = set(range(len(edges))), [], 0
    while unused:
        index = min(unused)
        unused.remove(index)
        start, here, links = key(edges[index][0]), key(edges[index][1]), [(edges[index], True)]
        while here != start:
            following = [i for i in at[here] if i in unused]
            if not following:
                break
            unused.remove(following[0])
            edge = edges[following[0]]
            forward = key(edge[0]) == here
            here = key(edge[1] if forward else edge[0])
            links.append((edge, forward))
        if here == start:
            closed.append(links)
        else:
            left += 1
    return closed, left


def measure(path, cut):
    doc = ezdxf.readfile(path)
    audit = doc.audit()
    model = list(doc.modelspace())
    loose, contours, circles, points, unflagged = [], [], [], [], 0
    for entity in model:
        on_cut = entity.dxf.layer in cut
        if entity.dxftype() == "CIRCLE":
            c, r = entity.dxf.center, entity.dxf.radius
            points += [(c.x - r, c.y - r), (c.x + r, c.y + r)]
            if on_cut:
                circles.append([c.x, c.y, 2 * r])
            continue
        edges = edges_of(entity)
        points += [point for edge in edges for point in edge[4]]
        if not on_cut:
            continue
        if entity.dxftype() == "LWPOLYLINE":
            if not entity.closed:
                unflagged += 1
            closed, left = chain(edges)
            contours += closed
            unflagged += left + abs(len(closed) - 1)
        else:
            loose += edges
    closed, left = chain(loose)
    contours += closed
    areas = [abs(sum(e[3] if forward else -e[3] for e, forward in links)) / 2 for links in contours]
    areas += [math.pi * d * d / 4 for _, _, d in circles]
    lengths = [sum(e[2] for e, _ in links) for links in contours] + [math.pi * d for _, _, d in circles]
    header = doc.header
    return {
        "path": path,
        "version": doc.dxfversion,
        "faults": [f"audit error {e.code}: {e.message}" for e in audit.errors]
        + [f"audit fix {e.code}: {e.message}" for e in audit.fixes]
        + [f"layer {e.dxf.layer} is not in the table" for e in model if not doc.layers.has_entry(e.dxf.layer)],
        "unit": {units.IN: "in", units.MM: "mm"}.get(header.get("$INSUNITS", 0)),
        "measurement": header.get("$MEASUREMENT", None),
        "headerExtent": [*header["$EXTMIN"][:2], *header["$EXTMAX"][:2]],
        "extent": [f(p[axis] for p in points) for f in (min, max) for axis in (0, 1)],
        "types": sorted({e.dxftype() for e in model}),
        "circles": circles,
        "open": left + unflagged,
        "pierces": len(areas),
        "cutLength": sum(lengths),
        "netArea": 2 * max(areas, default=0) - sum(areas),
    }


results = []
for file in json.load(sys.stdin):
    try:
        results.append(measure(file["path"], set(file["cut"])))
    except Exception as error:  # a file that ezdxf does not open is a result too
        results.append({"path": file["path"], "faults": [f"{type(error).__name__}: {error}"]})
json.dump(results, sys.stdout)
