#!/usr/bin/python3
"""Compare loops that were moved in or out with shapely's buffer.

    offset_shapes.py < SHAPES

Reads one JSON object a line:

    {"what": "in", "out", "cut" or "hole", "by": mm, "loop": [[x, y, bulge], ...],
     "moved": [loop, ...]}

and prints one for each: {"area": mm2 of shapely's, "own": mm2 of the moved loops,
"round": mm of shapely's outline, "apart": their Hausdorff distance in mm, "holds": whether one was given at all}.

"in" and "out": the moved loops against the buffer of the loop. "cut": a beam as wide
as twice "by" is led along the moved outline; what falls out of a sheet against the
loop. "hole": the same along the paths of an opening; what is gone, with what falls
out, against the opening. A beam leaves corners that it cannot get into: the loop is
closed, or opened, by a disc first.

GEOS leaves out corners of a line that point inward by less than a hundredth of the
radius before it moves the line, so that arcs come out up to 20 nm off: circles, whose
areas are known, show it.

Needs Debian's python3-shapely (tried with 1.8.5 on GEOS 3.11.1).
"""
import json
import sys

from shapely.geometry import LinearRing, Polygon
from shapely.ops import unary_union

from sweep_shapes import flatten

QUARTER = 150


def ring(points):
    return Polygon(flatten(points))


def region(loops):
    """What loops enclose, those that run clockwise taken out."""
    out, holes = [], []
    for loop in loops:
        line = LinearRing(flatten(loop))
        (out if line.is_ccw else holes).append(Polygon(line))
    whole = unary_union(out)
    return whole.difference(unary_union(holes)) if holes else whole


def buffer(shape, by):
    return shape.buffer(by, resolution=QUARTER)


def apart(a, b):
    if a.is_empty or b.is_empty:
        return 0 if a.is_empty and b.is_empty else 1e9
    return max(a.boundary.hausdorff_distance(b.boundary), 0)


for line in sys.stdin:
    job = json.loads(line)
    loop, by, what = ring(job["loop"]), job["by"], job["what"]
    if what in ("in", "out"):
        theirs = buffer(loop, by if what == "out" else -by)
        own = region(job["moved"])
    else:
        beams = unary_union([buffer(LinearRing(flatten(m)), by) for m in job["moved"]])
        if what == "cut":
            sheet = loop.envelope.buffer(50)
            pieces = sheet.difference(beams)
            inner = [p for p in pieces.geoms if not p.intersects(sheet.exterior)]
            own = unary_union(inner)
            theirs = buffer(buffer(loop, by), -by)
        else:
            own = unary_union([Polygon(p.exterior) for p in (beams.geoms if beams.geom_type == "MultiPolygon" else [beams])])
            theirs = buffer(buffer(loop, -by), by)
    print(json.dumps({"area": theirs.area, "own": own.area, "round": theirs.length, "apart": apart(own, theirs), "holds": not own.is_empty}))
