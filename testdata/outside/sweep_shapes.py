#!/usr/bin/python3
"""Tell with shapely what a round cutter covers, for comparison.

    sweep_shapes.py < SHAPES

Reads one JSON object a line:

    {"what": "pocket", "outside" or "line", "radius": mm,
     "points": [[x, y, bulge], ...]}

and prints one for each: {"area": mm2, "parts": how many polygons,
"islands": how many holes in them, of those above 1e-4 mm2}.

GEOS leaves out corners of a line that point inward by less than a hundredth of
the radius before it moves the line outward, arcs of many chords among them, so
that what it covers reaches beyond the loop by up to a thousandth of a
millimeter all along a side. What is certain is put right: a pocket lies in its
loop, and a panel is not cut. What is near a loop is put together side by side.

Needs Debian's python3-shapely (tried with 1.8.5 on GEOS 3.11.1).
"""
import json
import math
import sys

from shapely.geometry import Polygon
from shapely.ops import unary_union

CHORD = 5e-6
QUARTER = 2000
SPECK = 1e-4


def arc(x, y, bulge, x2, y2):
    """Center, radius, first direction and sweep of an arc."""
    k = (1 - bulge * bulge) / (4 * bulge)
    cx, cy = (x + x2) / 2 - k * (y2 - y), (y + y2) / 2 + k * (x2 - x)
    return cx, cy, math.hypot(x - cx, y - cy), math.atan2(y - cy, x - cx), 4 * math.atan(bulge)


def chords(cx, cy, r, start, sweep):
    """Points along an arc, all but the ends so far out that the area is right."""
    n = math.ceil(abs(sweep) / (2 * math.acos(1 - CHORD / r))) if r > CHORD else 1
    step = sweep / n
    out = [(cx + r * math.cos(start), cy + r * math.sin(start))]
    far = r * math.sqrt(step / math.sin(step)) if n > 1 else r
    out += [(cx + far * math.cos(start + step * j), cy + far * math.sin(start + step * j)) for j in range(1, n)]
    return out + [(cx + r * math.cos(start + sweep), cy + r * math.sin(start + sweep))]


def flatten(points):
    """The points of a loop with its arcs as chords."""
    out = []
    for i, (x, y, bulge) in enumerate(points):
        out.append((x, y))
        if bulge != 0:
            x2, y2, _ = points[(i + 1) % len(points)]
            out += chords(*arc(x, y, bulge, x2, y2))[1:-1]
    return out


def polygons(shape):
    if shape.is_empty:
        return []
    parts = shape.geoms if hasattr(shape, "geoms") else [shape]
    return [p for p in parts if p.area > SPECK]


def disc(x, y, r):
    return Polygon(chords(x, y, r, 0, 2 * math.pi)[:-1])


def band(x, y, bulge, x2, y2, r):
    """Everything within r of a side, but for what is beyond its ends."""
    if bulge == 0:
        dx, dy = x2 - x, y2 - y
        length = math.hypot(dx, dy) or 1
        dx, dy = dx / length * r, dy / length * r
        return Polygon([(x + dy, y - dx), (x2 + dy, y2 - dx), (x2 - dy, y2 + dx), (x - dy, y + dx)])
    cx, cy, radius, start, sweep = arc(x, y, bulge, x2, y2)
    outer = chords(cx, cy, radius + r, start, sweep)
    inner = chords(cx, cy, radius - r, start, sweep) if radius > r else [(cx, cy)]
    return Polygon(outer + inner[::-1]).buffer(0)


def sides(points, closed):
    n = len(points)
    for i in range(n if closed else n - 1):
        (x, y, bulge), (x2, y2, _) = points[i], points[(i + 1) % n]
        yield x, y, bulge, x2, y2


def covered(shape):
    r, points = shape["radius"], shape["points"]
    line = shape["what"] == "line"
    near = unary_union([band(*s, r) for s in sides(points, not line)] + [disc(x, y, r) for x, y, _ in points])
    if line:
        return near
    loop = Polygon(flatten(points))
    if shape["what"] == "pocket":
        # What is covered lies in the loop.
        return loop.difference(near).buffer(r, resolution=QUARTER).intersection(loop)
    # A disc led around the outside reaches no place that is enclosed.
    filled = Polygon(max(polygons(loop.union(near)), key=lambda p: p.area).exterior)
    left = filled.buffer(-r, resolution=QUARTER).union(loop)
    return max(polygons(left), key=lambda p: p.bounds[2] - p.bounds[0] + p.bounds[3] - p.bounds[1])


def main():
    for line in sys.stdin:
        shape = covered(json.loads(line))
        parts = polygons(shape)
        islands = sum(1 for p in parts for h in p.interiors if Polygon(h).area > SPECK)
        print(json.dumps({"area": shape.area, "parts": len(parts), "islands": islands}))


if __name__ == "__main__":
    main()
