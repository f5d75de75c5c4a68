#!/usr/bin/python3
"""What bits take away of whole sheets, from their drawings alone.

    dxf_mill.py DIR

DIR is a folder that the product wrote. Of its report.json the sheets are read: their
sizes, the legend of their drawings, and where parts lie. All else comes from the DXF
files as ezdxf reads them, cut with shapely. Prints one JSON object a line for each sheet:

    {"name", "thickness", "length", "width", "cuts": [{"outside", "depth", "profile",
     "shape": [[ring, ...], ...]}], "parts": [{"name", "x", "y", "length", "width"}]}

in millimeters, seen with the inside faces up: what is cut from the outside is turned over
end for end. Needs Debian's python3-ezdxf and python3-shapely.
"""
import json
import os
import sys

import ezdxf
from shapely.affinity import scale as mirrored
from shapely.geometry import Polygon

import dxf_cuts
import dxf_legend


def main(folder):
    with open(os.path.join(folder, "report.json"), encoding="utf-8") as f:
        report = json.load(f)
    unit = 25.4 if report["units"] == "in" else 1.0
    thick = {s["name"]: s["thickness"] * unit for s in report["stocks"]}
    for stock in report["sheets"]:
        for sheet in stock["sheets"]:
            if not sheet.get("layers"):
                continue
            size = stock["sizes"][sheet["size"]]
            length = size["length"] * unit
            out = {"name": "%s %d" % (stock["stock"], sheet["number"]), "thickness": thick[stock["stock"]], "length": length, "width": size["width"] * unit,
                   "cuts": [], "parts": [{"name": p["part"], "x": p["x"] * unit, "y": p["y"] * unit, "length": p["length"] * unit, "width": p["width"] * unit} for p in sheet["placements"]]}
            drawings, drawn = {}, 25.4 if report["dxf"]["units"] == "in" else 1.0
            for layer in sheet["layers"]:
                if layer["file"] not in drawings:
                    drawings[layer["file"]] = ezdxf.readfile(os.path.join(folder, layer["file"])).modelspace()
                rows = [l for l in sheet["layers"] if l["file"] == layer["file"]]
                own = [e for e in drawings[layer["file"]] if dxf_legend.row_of(e, rows, report, stock["stock"], drawn) is layer]
                out["cuts"] += cuts(own, layer, unit, drawn, out["thickness"], length)
            print(json.dumps(out))


def cuts(entities, layer, unit, drawn, thickness, length):
    """What the lines of one row of the legend take away. A line within another is an island, which the
    bit goes round."""
    r = layer["diameter"] * unit / 2
    outside = layer["face"] == "outside"
    depth = thickness + 1 if layer["stated"] == "through" else layer["depth"] * unit
    lines = [dxf_cuts.line(e, drawn) for e in entities]
    inner = islands(lines) if layer["operation"] not in ("profile", "register", "drill") else {}
    for i, (points, closed) in enumerate(lines):
        if any(i in within for within in inner.values()):
            continue
        if layer["operation"] == "profile":
            panel = Polygon(dxf_cuts.flatten(points, True, dxf_cuts.SOLIDS[0]))
            shape = panel.buffer(2 * r, resolution=dxf_cuts.SOLIDS[1]).difference(dxf_cuts.around(panel, r))
        elif layer["operation"] == "register":
            shape = Polygon(dxf_cuts.flatten(points, True, dxf_cuts.SOLIDS[0]))
        else:
            shape, _ = dxf_cuts.swept(points, closed, r, *dxf_cuts.SOLIDS)
            for island in inner.get(i, []):
                left = Polygon(dxf_cuts.flatten(lines[island][0], True, dxf_cuts.SOLIDS[0]))
                shape = shape.difference(dxf_cuts.around(left, r))
        if outside:
            shape = mirrored(shape, -1, 1, origin=(length / 2, 0))
        yield {"outside": outside, "depth": depth, "profile": layer["operation"] == "profile", "shape": dxf_cuts.rings(shape)}


def islands(lines):
    """The lines that lie within others, by the smallest of these."""
    areas = {i: Polygon(dxf_cuts.flatten(points, True, dxf_cuts.SOLIDS[0])) for i, (points, closed) in enumerate(lines) if closed}
    found = {}
    for i, area in areas.items():
        outer = [k for k in areas if k != i and areas[k].contains(area)]
        if outer:
            found.setdefault(min(outer, key=lambda k: areas[k].area), []).append(i)
    return found


if __name__ == "__main__":
    main(sys.argv[1])
