#!/usr/bin/python3
"""Hold the drawings of sheets against those of their parts.

    dxf_sheets.py [--first] [--shift MM] [--forget] [--clamp] [--less MM] DIR...

DIR is a folder that the product wrote. Of its report.json the places of parts on
sheets are read, and the files of both. What a sheet's drawings have on a layer that
is cut must be what the parts' own drawings have there, each moved to its place (the
outside face turned over end for end, with the sheet), no more and no less; outlines of
pockets and slots do not overlap on a layer, one within another is an island; outlines
keep a kerf from each other and lie within SHEET, and the registration holes of a sheet
lie on each other when it is turned over, clear of what is cut about all outlines, and
leave wood before the end of the shortest sheet. The slots between tabs alone are the
sheet's own: no two of them have anything in common, none enters an outline; what they and
the outlines that go right through leave of the shortest sheet hangs together, part by
part, as a graph of bridges in which each part has as many as its size asks for and a way
to the frame; and but for these bridges each part is cut free. Nothing leaves the shortest
sheet, or enters an area to keep out of, as the sheet lies at first or turned over.
Planted faults: --shift moves every part along x, --forget leaves the slots of the sheets out
but draws those of the parts, as they were planned before they were laid out, --clamp puts an
area to keep out of in the middle of each sheet, --less makes sheets shorter. --first looks
at the first sheet of each stock alone. Prints one JSON object a line for each sheet:

    {"dir", "sheet", "parts", "faces", "layers", "worst", "nearest", "holes", "slots", "bridges", "shared", "faults": [...]}

"worst" is the largest area, in square millimeters, by which a layer differs, "nearest"
how near two outlines are, "bridges" how many there are, and "shared" those between parts.

Needs Debian's python3-ezdxf and python3-shapely (tried with 0.18.1 and 1.8.5).
"""
import functools
import json
import math
import os
import re
import sys

import ezdxf
from ezdxf.path import make_path
from shapely import affinity
from shapely.geometry import LineString, Point, Polygon, box
from shapely.ops import linemerge, unary_union
from shapely.strtree import STRtree

import dxf_legend

NOT_CUT = ("LABEL", "BLANK", "SCALE", "SHEET", "TABS", "OUTLINE")


@functools.lru_cache(maxsize=None)
def shapes(path, scale):
    """The closed shapes of a drawing by layer, in millimeters; the height at which they
    lie comes after the layer's name where it is not 0. A part's drawing is read once for
    all its pieces: nobody changes what it gives."""
    found = {}
    for e in ezdxf.readfile(path).modelspace():
        if e.dxf.layer in NOT_CUT and e.dxf.layer not in ("SHEET", "TABS"):
            continue
        if e.dxftype() == "CIRCLE":
            c = e.dxf.center
            shape = Point(c.x * scale, c.y * scale).buffer(e.dxf.radius * scale, 64)
        else:
            points = [(v.x * scale, v.y * scale) for v in make_path(e).flattening(0.001 / scale)]
            if e.dxf.layer.startswith("ENGRAVE"):
                shape = LineString(points).buffer(0.5)
            elif e.is_closed:
                shape = Polygon(points).buffer(0)
            else:
                continue
        low, high, _ = dxf_legend.heights(e)
        if low != high:
            raise ValueError("something on %s of %s is not level" % (e.dxf.layer, path))
        found.setdefault(e.dxf.layer + ("@%.2f" % (low * scale) if low else ""), []).append(shape)
    return found


# What is united where cuts of neighbors overlap.
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
    layer, at, height = layer.partition("@")
    layer = re.sub(r"^(.*(?:\dMM|\dIN|THROUGH))_[A-Z0-9-]+$", r"\1", layer) + at + height
    if layer.startswith(("PROFILE", "CUTOUT", "SLOT")):
        return layer.replace("_OUTSIDE", "").replace("_INSIDE", "")
    return layer


def turned(shape, length):
    return affinity.translate(affinity.scale(shape, -1, 1, origin=(0, 0)), length, 0)


def told_bit(sheet):
    """The diameter of the bit that cuts the parts of a sheet out."""
    return max(l["diameter"] for l in sheet["layers"] if l["operation"] == "profile")


def bridges(sheet, stock, report, placed, outlines, slots, whole, scale, faults):
    """What hangs at what: a graph of parts, and pieces of waste between bridges."""
    tabs = report["router"].get("tabs")
    width, spacing = tabs["width"] * scale, tabs["spacing"] * scale
    band = told_bit(sheet) * scale + 0.05
    taken = unary_union(slots)
    wood = whole.difference(taken)
    # A neck of wood holds where a disc of 2.8 mm fits through: 3 mm, less what slots are widened by.
    firm = wood.buffer(-1.4)
    pieces = list(getattr(firm, "geoms", [firm]))
    rim = Point(whole.bounds[0] + 1.45, whole.bounds[1] + 1.45)
    frame = [i for i, p in enumerate(pieces) if p.distance(rim) < 0.1]
    count, shared = 0, 0
    for i, (part, outline) in enumerate(zip(placed, outlines)):
        if not any(pieces[f].intersects(outline.buffer(-2)) for f in frame):
            faults.append("nothing ties %s at %s to the frame" % (part["part"], outline.bounds))
        if part["held"]["by"] != "tabs":
            continue
        # Along the middle of the band in which the bit goes round it.
        ring = box(*outline.bounds).buffer(band / 2, join_style=2).exterior
        left = ring.difference(taken.buffer(1e-6))
        left = linemerge(left) if left.geom_type == "MultiLineString" else left
        list_ = [l for l in getattr(left, "geoms", [left]) if l.length > 0.01]
        if len(list_) > 1 and list_[0].distance(list_[-1]) < 1e-6:  # the ring's own beginning
            list_ = [linemerge([list_[0], list_[-1]])] + list_[1:-1]
        for l in list_:
            if l.length < width - 0.01:
                faults.append("%s hangs at a bridge of %.3f mm" % (part["part"], l.length))
            if l.length > width + 0.01:
                faults.append("%.3f mm of the outline of %s are not cut" % (l.length, part["part"]))
            # It goes straight on to a neighbor within two bands, or to waste.
            reach = l.buffer(2 * band, cap_style=2).difference(box(*outline.bounds))
            if any(o.distance(l) < 1.5 * band + 3 and o.intersects(reach) for j, o in enumerate(outlines) if j != i):
                shared += 1
        need = max(2, math.floor((part["length"] + part["width"]) * scale / spacing + 0.5))
        if len(list_) < need or len(list_) != part["held"]["tabs"] or part["held"]["tabs_needed"] != need:
            faults.append("%s has %d bridges; the report says %d, its size asks for %d" % (part["part"], len(list_), part["held"]["tabs"], need))
        count += len(list_)
    return count, shared


def check(folder, report, stock, sheet, plant):
    shift = plant["shift"]
    scale = 25.4 if report["units"] == "in" else 1
    dxf_scale = 25.4 if report["dxf"]["units"] == "in" else 1
    size = stock["sizes"][sheet["size"]]
    length = size["length"] * scale
    kerf = stock["kerf"] * scale
    parts = {p["name"]: p for p in report["parts"]}
    short = [v * scale for v in stock["undersize"]]
    whole = box(0, 0, length - short[0] - plant["less"], size["width"] * scale - short[1])
    told = {l["layer"]: l for l in sheet["layers"]}
    want, got, faults, outlines, own = {}, {}, [], [], []
    for placed in sheet["placements"]:
        part = parts[placed["part"]]
        for face in ("inside", "outside"):
            if not part["files"].get(face):
                continue
            for layer, list_ in shapes(os.path.join(folder, part["files"][face]), dxf_scale).items():
                if layer.startswith("REGISTER") or layer in ("SHEET", "TABS"):
                    continue
                for s in list_:
                    if face == "outside":
                        s = turned(s, part["length"] * scale)
                    if placed["rotated"]:
                        s = affinity.translate(affinity.rotate(s, 90, origin=(0, 0)), part["width"] * scale, 0)
                    s = affinity.translate(s, placed["x"] * scale + shift, placed["y"] * scale)
                    if layer.startswith("SLOT"):  # as the part by itself has it
                        own.append(s)
                        continue
                    want.setdefault(key(layer), []).append(s)
                    if layer.startswith("PROFILE"):
                        outlines.append(s)
    holes, faces, slots, cuts, marks = [], 0, [], [], []
    inner = unary_union([o.buffer(-0.01) for o in outlines])
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
                    cuts.append(s)
                elif layer == "SHEET":
                    if abs(s.bounds[2] - length) > 0.01 or abs(s.bounds[3] - size["width"] * scale) > 0.01 or abs(s.bounds[0]) + abs(s.bounds[1]) > 0.01:
                        faults.append("SHEET is %s" % (s.bounds,))
                elif layer == "TABS":
                    if f.endswith(("inside.dxf", sheet["files"][0])):
                        marks.append(s)
                elif layer.startswith("SLOT"):
                    slots.append(s)
                    cuts.append(s)
                else:
                    got.setdefault(key(layer), []).append(s)
                    bit = told[layer.partition("@")[0]]["diameter"] * scale
                    cuts.append(s.buffer(bit, join_style=2) if layer.startswith("PROFILE") else s)
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
    held = 0, 0
    if plant["forget"]:
        slots = own
    elif marks:  # the outline goes right through, but for the tabs that a program makes there
        slots = [box(*o.bounds).buffer(told_bit(sheet) * scale + 0.05, join_style=2).difference(o).difference(unary_union(marks)) for o in outlines]
        slots = [unary_union(slots).difference(unary_union(outlines))]
    if slots:
        for i, s in enumerate(slots):
            if s.intersection(inner).area > 0:
                faults.append("a slot enters a part at %s" % (s.bounds,))
            for other in slots[:i]:
                if s.intersects(other) and s.intersection(other).area > 0.001:
                    faults.append("two slots overlap at %s" % (s.intersection(other).bounds,))
        held = bridges(sheet, stock, report, sheet["placements"], outlines, slots, whole, scale, faults)
    if stock["routed"]:
        areas = [box(k["x"] * scale, k["y"] * scale, (k["x"] + k["length"]) * scale, (k["y"] + k["width"]) * scale) for k in stock.get("keep_out", [])]
        if plant["clamp"]:
            areas.append(affinity.translate(box(-20, -20, 20, 20), length / 3, size["width"] * scale / 3))
        if stock["flipped"]:
            areas += [turned(a, length) for a in areas]
        taken = unary_union(areas)
        for s in cuts:
            if not whole.contains(s):
                faults.append("a cut leaves the shortest sheet at %s" % (s.bounds,))
            if s.intersects(taken) and s.intersection(taken).area > 0.001:
                faults.append("a cut is in an area to keep out of at %s" % (s.bounds,))
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
    room = max([l["diameter"] * scale for l in sheet.get("layers", []) if l["operation"] == "profile"] + [0]) + 2.99
    for h in holes:
        if not any(turned(h, length).symmetric_difference(o).area < 0.01 for o in holes):
            faults.append("a registration hole meets none when the sheet is turned over")
        if not whole.buffer(-2.99).contains(h) or min(s.distance(h) for s in outlines) < room:
            faults.append("a registration hole is on a part or on the edge")
    on = stock.get("flip_on", {}).get("on")
    if stock["flipped"] and faces == 2 and len(holes) != {"pins": 2, "three-pins": 3}.get(on, 0):
        faults.append("%d registration holes" % len(holes))
    return {"dir": folder, "sheet": "%s %d" % (stock["stock"], sheet["number"]), "parts": len(sheet["placements"]), "faces": faces,
            "layers": len(got), "worst": round(worst, 4), "nearest": round(min(nearest, 1e6), 4), "holes": len(holes), "slots": len(slots),
            "bridges": held[0], "shared": held[1], "faults": faults}


def main():
    args, plant = sys.argv[1:], {"first": False, "shift": 0.0, "forget": False, "clamp": False, "less": 0.0}
    while args and args[0].startswith("--"):
        name, args = args[0][2:], args[1:]
        if name in ("shift", "less"):
            plant[name], args = float(args[0]), args[1:]
        else:
            plant[name] = True
    for folder in args:
        with open(os.path.join(folder, "report.json")) as f:
            report = json.load(f)
        for stock in report["sheets"]:
            drawn = [s for s in stock["sheets"] if s.get("layers")]  # those that saws take apart have no drawings
            for sheet in drawn[:1] if plant["first"] else drawn:
                print(json.dumps(check(folder, report, stock, sheet, plant)))


main()
