#!/usr/bin/python3
"""Hold the drawings of sheets against those of their parts.

    dxf_sheets.py [--shift MM] DIR...

DIR is a folder that the product wrote. Of its report.json the places of parts on
sheets are read, and the files of both. What a sheet's drawings have on a layer that
is cut must be what the parts' own drawings have there, each moved to its place (the
outside face turned over end for end, with the sheet), no more and no less; outlines of
pockets and slots do not overlap on a layer, one within another is an island; outlines
keep a kerf from each other and lie within SHEET, and the registration holes of a sheet
lie on each other when it is turned over, a kerf or more from all outlines. --shift moves
every part along x: a planted fault. Prints one JSON object a line for each sheet:

    {"dir", "sheet", "parts", "faces", "layers", "worst", "nearest", "holes", "faults": [...]}

"worst" is the largest area, in square millimetres, by which a layer differs, "nearest"
how near two outlines are.

Needs Debian's python3-ezdxf and python3-shapely (tried with 0.18.1 and 1.8.5).
"""
import json
import os
import re
import sys

import ezdxf
from ezdxf.path import make_path
from shapely import affinity
from shapely.geometry import Point, Polygon
from shapely.ops import unary_union
from shapely.strtree import STRtree

NOT_CUT = ("LABEL", "BLANK", "SCALE", "SHEET", "TABS")


def shapes(path, scale):
    """The closed shapes of a drawing by layer, in millimetres."""
    found = {}
    for e in ezdxf.readfile(path).modelspace():
        if e.dxf.layer in NOT_CUT and e.dxf.layer != "SHEET":
            continue
        if e.dxftype() == "CIRCLE":
            c = e.dxf.center
            shape = Point(c.x * scale, c.y * scale).buffer(e.dxf.radius * scale, 64)
        else:
            if not e.is_closed:
                continue
            points = [(v.x * scale, v.y * scale) for v in make_path(e).flattening(0.001 / scale)]
            shape = Polygon(points).buffer(0)
        found.setdefault(e.dxf.layer, []).append(shape)
    return found


# What is united where cuts of neighbours overlap.
UNITED = ("DADO", "GROOVE", "RABBET", "CUTOUT", "SLOT")


def covered(list_):
    """The areas that the closed outlines of a layer cover, islands left out, and which
    of them overlap: none may but an island, which lies within another outline."""
    faults, out = [], []
    tree = STRtree(list_)
    for s in list_:
        depth = 0
        for other in tree.query(s):
            if other is s:
                continue
            if other.contains(s) and not s.equals(other):
                depth += 1
            elif not s.contains(other) and s.intersection(other).area > 1e-3:
                faults.append("outlines at %s and %s overlap by %.3f mm2" % (s.bounds, other.bounds, s.intersection(other).area))
            elif s.equals(other):
                faults.append("an outline at %s is there twice" % (s.bounds,))
        if depth % 2 == 0:
            for other in tree.query(s):
                if other is not s and s.contains(other):
                    s = s.difference(other)
            out.append(s)
    return out, faults


def key(layer):
    """A layer without the face of what cuts parts out, which follows the sheet, and
    without the bit, which sheets name where their parts are cut with different ones."""
    layer = re.sub(r"^(.*(?:\dMM|\dIN|THROUGH))_[A-Z0-9-]+$", r"\1", layer)
    if layer.startswith(("PROFILE", "CUTOUT", "SLOT")):
        return layer.replace("_OUTSIDE", "").replace("_INSIDE", "")
    return layer


def turned(shape, length):
    return affinity.translate(affinity.scale(shape, -1, 1, origin=(0, 0)), length, 0)


def check(folder, report, stock, sheet, shift):
    scale = 25.4 if report["units"] == "in" else 1
    dxf_scale = 25.4 if report["dxf"]["units"] == "in" else 1
    size = stock["sizes"][sheet["size"]]
    length = size["length"] * scale
    kerf = stock["kerf"] * scale
    parts = {p["name"]: p for p in report["parts"]}
    want, got, faults, outlines = {}, {}, [], []
    for placed in sheet["placed"]:
        part = parts[placed["part"]]
        for face in ("inside", "outside"):
            if not part["files"].get(face):
                continue
            for layer, list_ in shapes(os.path.join(folder, part["files"][face]), dxf_scale).items():
                if layer.startswith("REGISTER"):
                    continue
                for s in list_:
                    if face == "outside":
                        s = turned(s, part["length"] * scale)
                    if placed["turned"]:
                        s = affinity.translate(affinity.rotate(s, 90, origin=(0, 0)), part["width"] * scale, 0)
                    s = affinity.translate(s, placed["x"] * scale + shift, placed["y"] * scale)
                    want.setdefault(key(layer), []).append(s)
                    if layer.startswith("PROFILE"):
                        outlines.append(s)
    holes, faces = [], 0
    for f in sheet["files"]:
        if not f.endswith(".dxf"):
            continue
        faces += 1
        for layer, list_ in shapes(os.path.join(folder, f), dxf_scale).items():
            if layer.startswith(UNITED):
                list_, united = covered(list_)
                faults += ["%s of %s: %s" % (layer, f, u) for u in united]
            for s in list_:
                if f.endswith(".outside.dxf"):
                    s = turned(s, length)
                if layer.startswith("REGISTER"):
                    holes.append(s)
                elif layer == "SHEET":
                    if abs(s.bounds[2] - length) > 0.01 or abs(s.bounds[3] - size["width"] * scale) > 0.01 or abs(s.bounds[0]) + abs(s.bounds[1]) > 0.01:
                        faults.append("SHEET is %s" % (s.bounds,))
                else:
                    got.setdefault(key(layer), []).append(s)
    worst = 0
    for layer in sorted(set(want) | set(got)):
        a, b = want.get(layer, []), got.get(layer, [])
        differ = unary_union(a).symmetric_difference(unary_union(b)).area
        worst = max(worst, differ)
        if layer.startswith(UNITED):
            count = 0 if b else 1
        else:
            count = len(b) - len(a)
        if count or differ > 0.5:
            faults.append("%s: %d shapes of %d, %.3f mm2 differ" % (layer, len(b), len(a), differ))
    whole = Polygon([(0, 0), (length, 0), (length, size["width"] * scale), (0, size["width"] * scale)])
    nearest = 1e9
    tree = STRtree(outlines)
    for s in outlines:
        if not whole.buffer(0.001).contains(s):
            faults.append("an outline leaves the sheet: %s" % (s.bounds,))
        for other in tree.query(s.buffer(kerf + 1)):
            if other is not s:
                nearest = min(nearest, s.distance(other))
    if nearest < kerf - 0.001:
        faults.append("outlines are %.3f mm apart, the kerf is %.3f" % (nearest, kerf))
    for h in holes:
        if not any(turned(h, length).symmetric_difference(o).area < 0.01 for o in holes):
            faults.append("a registration hole meets none when the sheet is turned over")
        if not whole.contains(h) or min(s.distance(h) for s in outlines) < kerf - 0.001:
            faults.append("a registration hole is on a part or on the edge")
    if stock["turned"] and faces == 2 and len(holes) != 2 and any(l["bit"] for l in report["layers"]):
        faults.append("%d registration holes" % len(holes))
    return {"dir": folder, "sheet": "%s %d" % (stock["stock"], sheet["number"]), "parts": len(sheet["placed"]), "faces": faces,
            "layers": len(got), "worst": round(worst, 4), "nearest": round(min(nearest, 1e6), 4), "holes": len(holes), "faults": faults}


def main():
    args, shift = sys.argv[1:], 0.0
    if args and args[0] == "--shift":
        shift, args = float(args[1]), args[2:]
    for folder in args:
        with open(os.path.join(folder, "report.json")) as f:
            report = json.load(f)
        for stock in report["sheets"]:
            for sheet in stock["sheets"]:
                print(json.dumps(check(folder, report, stock, sheet, shift)))


main()
