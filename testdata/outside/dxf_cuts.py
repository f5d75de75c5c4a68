#!/usr/bin/python3
"""Cut the panels of builds virtually, from their drawings alone.

    dxf_cuts.py [--radius MM] [--solids] DIR...

DIR is a folder that the product wrote. Of its report.json only the legend is
read: which file has which layers, for which face, cut with which bit. All else
comes from the DXF files as ezdxf reads them; the unit from the square on SCALE,
which is 100 mm or 4 in. --radius adds to the radius of every bit: a planted
fault. --solids makes round things of fewer chords, and tells shapes too. Prints
one JSON object a line for each drawing:

    {"dir", "file", "face", "length", "width", "bent", "outline", "cuts": [{"layer", "bit",
     "corners", "arcs", "drawn", "reached", "swept", "beyond", "bounds",
     "shape": [[ring, ...], ...]}]}

in millimeters and panel coordinates, whichever the face: the outside face is the
panel turned over end for end. "corners" counts those of the line and "arcs" its
sides that are no straight ones; "drawn" and "reached" are areas within the panel,
"swept" is all that a disc of the bit's diameter reaches of the line, "beyond"
how far that lies past the panel's edges, "bounds" the box about it, and "shape"
a list of polygons, each an outer ring and its holes. "bent" tells whether the outline has arcs, "outline" is the ring that is
left of the panel when the profile's bit was led round it, for solids. The outline itself and REGISTER are
no cuts. A saw's lines are cut as they are drawn.

Needs Debian's python3-ezdxf and python3-shapely (tried with 0.18.1 and 1.8.5 on
GEOS 3.11.1).
"""
import functools
import json
import math
import os
import sys

import ezdxf
from ezdxf.math import bulge_to_arc
from shapely.affinity import translate
from shapely.geometry import LineString, Point, Polygon
from shapely.geometry.polygon import orient
from shapely.ops import unary_union

import dxf_legend

# How round things become straight ones: how near, in millimeters, chords keep to the
# arcs of a drawing, and how many there are in a quarter turn of a bit. An inscribed
# quarter circle of n chords is r2/2 (a - sin a) n = 0.32 r2 / n2 too small, a being
# pi/2 / n. Of a bit of 12.7 mm, whose round is in all four corners, that makes
# 0.0008 mm2 of an area; and for solids 0.006 mm2 of a corner, which 10 mm deep is
# 0.06 mm3.
AREAS = (1e-5, 256)
SOLIDS = (2e-3, 24)
# Areas below this, in square millimeters, are rounding.
SPECK = 1e-6
# A bit that is plunged makes a hole of its own width; a drawing rounds its size.
PLUNGED = 1e-3
SQUARES = {100.0: 1.0, 4.0: 25.4}


def flatten(points, closed, chord):
    """The corners of a line with its arcs as chords."""
    out = []
    for i, (x, y, bulge) in enumerate(points):
        out.append((x, y))
        if bulge == 0 or i + 1 == len(points) and not closed:
            continue
        x2, y2, _ = points[(i + 1) % len(points)]
        center, start, end, r = bulge_to_arc((x, y), (x2, y2), bulge)
        sweep = (end - start) % math.tau
        n = max(1, math.ceil(sweep / (2 * math.acos(1 - chord / r)))) if r > chord else 1
        arc = [start + sweep * j / n for j in range(1, n)]
        if bulge < 0:
            arc.reverse()
        out += [(center.x + r * math.cos(a), center.y + r * math.sin(a)) for a in arc]
    return out


def line(e, scale):
    """An entity as corners with bulges, and whether it is closed."""
    if e.dxftype() == "CIRCLE":
        x, y, r = e.dxf.center.x * scale, e.dxf.center.y * scale, e.dxf.radius * scale
        return [(x + r, y, 1.0), (x - r, y, 1.0)], True
    if e.dxftype() == "LWPOLYLINE":
        return [(x * scale, y * scale, b) for x, y, b in e.get_points("xyb")], bool(e.closed)
    if e.dxftype() == "POLYLINE":
        corners = [(v.dxf.location, v.dxf.get("bulge", 0.0)) for v in e.vertices]
        return [(p.x * scale, p.y * scale, b) for p, b in corners], bool(e.is_closed)
    raise ValueError("a %s is no line to cut" % e.dxftype())


def near(flat, corners, r, quarter):
    """Everything within r of a closed line. Side by side, as the buffer of a
    whole line straightens shallow hollows of up to a hundredth of r; the ends of
    chords turn by so little that only the line's own corners need a fine round."""
    sides = [s for s in zip(flat, flat[1:] + flat[:1]) if s[0] != s[1]]
    strips = [LineString(s).buffer(r, resolution=4) for s in sides]
    return unary_union(strips + [Point(x, y).buffer(r, resolution=quarter) for x, y, _ in corners])


@functools.lru_cache(maxsize=None)
def swept_at_origin(points, closed, plunged, r, chord, quarter):
    """What a disc reaches that stays within a closed line, or follows an open
    one; and what the line encloses, or again what the disc reaches."""
    flat = flatten(points, closed, chord)
    if plunged:
        drawn = Polygon(flat)
        return drawn, drawn
    if not closed:
        reached = LineString(flat).buffer(r, resolution=quarter)
        return reached, reached
    drawn = Polygon(flat)
    if not drawn.is_valid:
        raise ValueError("a line that crosses itself")
    if r == 0:
        return drawn, drawn
    centers = drawn.difference(near(flat, points, r, quarter))
    return centers.buffer(r, resolution=quarter).intersection(drawn), drawn


def swept(points, closed, r, chord, quarter):
    """swept_at_origin of a line anywhere: many holes and slots of a drawer are alike."""
    circle = closed and len(points) == 2 and abs(points[0][2]) == abs(points[1][2]) == 1.0
    plunged = circle and 0 <= r - math.dist(points[0][:2], points[1][:2]) / 2 < PLUNGED
    x0, y0, _ = points[0]
    moved = tuple((round(x - x0, 9), round(y - y0, 9), b) for x, y, b in points)
    return [translate(s, x0, y0) for s in swept_at_origin(moved, closed, plunged, r, chord, quarter)]


def around(panel, r):
    """What is left of a panel when a disc was led round it."""
    if r == 0 or abs(panel.convex_hull.area - panel.area) < SPECK:
        return panel
    return panel.buffer(r, resolution=SOLIDS[1]).buffer(-r, resolution=SOLIDS[1])


def polygons(shape):
    parts = shape.geoms if hasattr(shape, "geoms") else [shape]
    return [orient(p) for p in parts if isinstance(p, Polygon) and p.area > SPECK]


def rings(shape):
    out = []
    for p in polygons(shape):
        out.append([[[round(x, 7), round(y, 7)] for x, y in r.coords[:-1]] for r in [p.exterior, *p.interiors]])
    return out


def cut(points, closed, r, panel, solids):
    """One line as cut with its bit."""
    reached, drawn = swept(points, closed, r, *(SOLIDS if solids else AREAS))
    _, _, length, width = panel.bounds
    bounds = reached.bounds or (0, 0, 0, 0)
    low_x, low_y, high_x, high_y = bounds
    return {
        "corners": len(points),
        "arcs": sum(1 for p in points if p[2] != 0),
        "drawn": drawn.intersection(panel).area,
        "reached": reached.intersection(panel).area,
        "swept": reached.area,
        "beyond": max(0, -low_x, -low_y, high_x - length, high_y - width),
        "bounds": bounds,
        "shape": rings(reached) if solids else [],
    }


def drawing(directory, name, legend, report, more, solids):
    doc = ezdxf.readfile(os.path.join(directory, name))
    entities = list(doc.modelspace())
    on = lambda layer: [e for e in entities if e.dxf.layer == layer]
    (square,) = on("SCALE")
    corners, _ = line(square, 1)
    side = max(x for x, _, _ in corners) - min(x for x, _, _ in corners)
    scale = SQUARES[round(side, 6)]
    profile = [r["layer"] for r in legend if r["operation"] == "profile"]
    outlines = on(profile[0]) if profile else on("OUTLINE")
    panel = max((Polygon(flatten(*line(e, scale), AREAS[0])) for e in outlines), key=lambda p: p.area)
    low_x, low_y, length, width = panel.bounds
    if abs(low_x) > 1e-6 or abs(low_y) > 1e-6:
        raise ValueError("%s: the panel is not at 0, 0" % name)
    bent = any(b != 0 for e in outlines for _, _, b in line(e, scale)[0])
    face = legend[0]["face"]
    unit = 25.4 if report["units"] == "in" else 1.0
    (stock,) = [p["stock"] for p in report["parts"] if name in p["files"].values()]
    if face == "outside":  # a mirror image
        panel = orient(Polygon([(length - x, y) for x, y in panel.exterior.coords]))
    left = []
    if profile and solids:
        left = rings(around(panel, max(r["diameter"] for r in legend if r["operation"] == "profile") * unit / 2))[0][0]
    cuts = []
    for e in entities:
        row = dxf_legend.row_of(e, legend, report, stock, scale)
        if row is None or row["operation"] in ("profile", "register"):
            continue
        points, closed = line(e, scale)
        if face == "outside":  # a mirror image runs the other way round
            points = [(length - x, y, -b) for x, y, b in points]
        bit = row["diameter"] * unit
        r = bit / 2 + (more if bit > 0 else 0)
        cuts.append({"layer": e.dxf.layer, "bit": bit, **cut(points, closed, r, panel, solids)})
    return {"dir": directory, "file": name, "face": face, "length": length, "width": width, "bent": bent, "outline": left, "cuts": cuts}


def main(args):
    more, solids = 0.0, False
    while args and args[0].startswith("--"):
        if args[0] == "--radius":
            more, args = float(args[1]), args[2:]
        elif args[0] == "--solids":
            solids, args = True, args[1:]
        else:
            break
    if not args or args[0].startswith("--"):
        print(__doc__, file=sys.stderr)
        return 2
    for directory in args:
        with open(os.path.join(directory, "report.json"), encoding="utf-8") as f:
            report = json.load(f)
        legend = {}
        for row in report["layers"]:
            legend.setdefault(row["file"], []).append(row)
        for name, rows in legend.items():
            print(json.dumps(drawing(directory, name, rows, report, more, solids)))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
