#!/usr/bin/python3
"""Mill the parts of builds from their drawings alone, as regions of equal depth.

    dxf_solids.py DIR...

Reads what dxf_cuts.py reads, in the same way. Prints one JSON object a line for each part:

    {"part", "volume", "trimmed", "round", "outline", "holes", "pockets": [{"outside", "depth", "rings"}],
     "thickness"}

in millimeters. "volume" is that of the part as it comes out of its sheet, with tabs and onion
skin as far as the bit that cut it out is wide, "trimmed" without them: areas of regions
by their depths, worked out by shapely. The rest is the same part for panels.mjs.

Needs Debian's python3-ezdxf and python3-shapely.
"""
import json
import math
import os
import re
import sys

import ezdxf
from shapely.geometry import Polygon
from shapely.ops import unary_union

import dxf_cuts
import dxf_legend

# Chords within 0.0001 mm of their arcs, and 96 in a quarter turn of a bit: an area of a
# corner is 0.0015 mm2 off with a bit of 12.7 mm.
CHORD, QUARTER = 1e-4, 96
# Chords are shorter than this, in mm, up to a radius of 100 mm, and sides longer.
SHORT = 0.3
# The same for the outlines that booleans take: an eighth of their time, and a third of what chords
# may be off.
COARSE = (1e-3, 24)


def by_depth(cuts, thickness):
    """Cuts of one face as (depth, region) that do not overlap, the deepest first; None for
    what is right through."""
    gone, out = Polygon(), []
    for depth in sorted({min(d, thickness) for d, _ in cuts}, reverse=True):
        at = unary_union([s for d, s in cuts if min(d, thickness) == depth])
        out.append((depth, at.difference(gone)))
        gone = unary_union([gone, at])
    return out, gone


def volume(panel, cuts, thickness):
    """What cuts (outside, depth, region) leave of a panel."""
    faces = []
    for outside in (False, True):
        parts, gone = by_depth([(d, s) for o, d, s in cuts if o == outside], thickness)
        faces.append([(d, s.intersection(panel)) for d, s in parts] + [(0.0, panel.difference(gone))])
    total = 0.0
    for a, one in faces[0]:
        for b, other in faces[1]:
            if a + b < thickness:
                total += one.intersection(other).area * (thickness - a - b)
    return total


def lines_of(directory, name, rows, report, stock):
    """The lines of a drawing that are cut, in panel coordinates: (row, points, closed)."""
    doc = ezdxf.readfile(os.path.join(directory, name))
    entities = list(doc.modelspace())
    (square,) = [e for e in entities if e.dxf.layer == "SCALE"]
    corners, _ = dxf_cuts.line(square, 1)
    scale = dxf_cuts.SQUARES[round(max(x for x, _, _ in corners) - min(x for x, _, _ in corners), 6)]
    found = [(dxf_legend.row_of(e, rows, report, stock, scale), *dxf_cuts.line(e, scale)) for e in entities
             if e.dxf.layer != "SCALE" and e.dxftype() in ("CIRCLE", "LWPOLYLINE", "POLYLINE")]
    found = [f for f in found if f[0] is not None]
    profile = [Polygon(dxf_cuts.flatten(p, c, CHORD)) for r, p, c in found if r["operation"] == "profile"]
    if not profile:
        profile = [Polygon(dxf_cuts.flatten(*dxf_cuts.line(e, scale), CHORD)) for e in entities if e.dxf.layer == "OUTLINE"]
    panel = max(profile, key=lambda p: p.area)
    length = panel.bounds[2]
    if rows[0]["face"] != "outside":
        return panel, found
    turned = [(r, [(length - x, y, -b) for x, y, b in p], c) for r, p, c in found]
    return Polygon([(length - x, y) for x, y in panel.exterior.coords]), turned


def depth_of(row, thickness, unit):
    """How deep a layer's cuts are, as its name tells an operator; else as the legend does."""
    told = re.search(r"_(?:LINE_)?(FLOOR_)?([0-9]+(?:-[0-9]+)?)(MM|IN)", row["layer"])
    if told is None or row["operation"] == "register":
        return row["depth"] * unit
    depth = float(told[2].replace("-", ".")) * (25.4 if told[3] == "IN" else 1.0)
    return thickness - depth if told[1] else depth


def arcs(shape):
    """The length of what is round of an outline: of its sides that are chords."""
    sides = [math.dist(a, b) for p in dxf_cuts.rings(shape) for ring in p for a, b in zip(ring, ring[1:] + ring[:1])]
    return sum(s for s in sides if s < SHORT)


def regions(found, thickness, unit, panel, chord, quarter):
    """What is left of a panel with its tabs and skin, what without, and the cuts (outside, depth, region)."""
    cuts, rests, left = [], [], panel
    for face, row, points, closed in found:
        r = row["diameter"] * unit / 2
        depth = thickness + 1 if row["stated"] == "through" else depth_of(row, thickness, unit)
        if row["operation"] == "profile":
            drawn = Polygon(dxf_cuts.flatten(points, closed, chord))
            left = drawn
            if r > 0 and abs(drawn.convex_hull.area - drawn.area) > dxf_cuts.SPECK:
                left = drawn.buffer(r, resolution=quarter).buffer(-r, resolution=quarter)
            if row["stated"] != "through":
                rests.append((face == "outside", depth, drawn.buffer(2 * r, resolution=quarter)))
            continue
        if row["operation"] == "register":
            r = 0.0
        reached, _ = dxf_cuts.swept(points, closed, r, chord, quarter)
        cuts.append((face == "outside", depth, reached))
    whole = left
    if rests:
        whole = rests[0][2]
        cuts += [(o, d, s.difference(left)) for o, d, s in rests]
    return whole, left, cuts


def milled(directory, part, legend, report):
    unit = 25.4 if report["units"] == "in" else 1.0
    thickness = part["thickness"] * unit
    found, panel = [], None
    for face in ("inside", "outside"):
        name = part["files"].get(face)
        if name:
            drawn, lines = lines_of(directory, name, legend[name], report, part["stock"])
            panel = panel or drawn
            found += [(face, *one) for one in lines]
    whole, left, cuts = regions(found, thickness, unit, panel, CHORD, QUARTER)
    walls = arcs(whole) * thickness + sum(arcs(s) * min(d, thickness) for _, d, s in cuts)
    coarse, _, pockets = regions(found, thickness, unit, panel, *COARSE)
    (board,) = dxf_cuts.rings(coarse)
    return {"part": part["name"], "thickness": thickness, "volume": volume(whole, cuts, thickness),
            "trimmed": volume(left, cuts, thickness), "round": walls, "outline": board[0], "holes": [r[::-1] for r in board[1:]],
            "pockets": [{"outside": o, "depth": d, "rings": rings} for o, d, s in pockets for rings in dxf_cuts.rings(s)]}


def main(args):
    if not args or args[0].startswith("-"):
        print(__doc__, file=sys.stderr)
        return 2
    for directory in args:
        with open(os.path.join(directory, "report.json"), encoding="utf-8") as f:
            report = json.load(f)
        legend = {}
        for row in report["layers"]:
            legend.setdefault(row["file"], []).append(row)
        for part in report["parts"]:
            print(json.dumps(milled(directory, part, legend, report)))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
