"""Measures, by numpy and shapely, what is free about the drawers of openings, and what handles meet.

Reads names of files boxes.html, one a line. Of each clearance that the page tells it prints as JSON
{"file", "name", "said", "found"}, found in the solids of the page; and so {"file", "meets", "said",
"found"} of every handle that would meet a neighbor's front.
"""
import base64
import json
import re
import sys

import numpy as np
from shapely.geometry import box as rectangle


def solids(d):
    """The vertices of all meshes."""
    raw = base64.b64decode(d["bytes"])
    for m in d["meshes"]:
        yield np.frombuffer(raw, "<f4", 3 * m["vertices"], m["at"]).reshape(-1, 3).astype(float)


def bounds(d, meshes, box, at, is_front, room):
    """The bounds of the pieces of a box: of its front, or of all others. A front is a drawer front, or a box front
    that is wider than the opening has room, as its lips are before that."""
    all_ = []
    for p in d["boxes"][box]["pieces"]:
        part = d["parts"][p["part"]]
        x, y = np.array(p["x"]), np.array(p["y"])
        v = meshes[part["mesh"]] @ np.array([x, y, np.cross(x, y)]) + np.array(p["origin"]) + np.array(at)
        covers = part["role"] == "drawer-front" or part["role"] == "box-front" and np.ptp(v[:, 0]) > room
        if covers == is_front:
            all_.append(v)
    if not all_:
        return None
    v = np.concatenate(all_)
    return v.min(0), v.max(0)


def measured(d, group, boxes, fronts):
    """The clearances of a group by name; only those about fronts, where there are any, have rows that solids show."""
    c = group["carcass"]
    low, high = c["low"], c["high"]
    names = [d["boxes"][b]["name"] for b in group["boxes"]]
    for i, (name, (l, h), front) in enumerate(zip(names, boxes, fronts)):
        yield f"left of {name}", l[0] - low[0]
        yield f"right of {name}", high[0] - h[0]
        yield f"behind {name}", high[1] - h[1]
        if front:
            yield f"above {name}, in its row", min(high[2], front[1][2]) - h[2]
            yield f"below {name}, in its row", l[2] - max(low[2], front[0][2])
        if i + 1 < len(names):
            yield f"between the boxes of {name} and {names[i + 1]}", l[2] - boxes[i + 1][1][2]
            if front:
                yield f"between the drawer fronts of {name} and {names[i + 1]}", front[0][2] - fronts[i + 1][1][2]
    for o in c["outlines"]:
        for side, gap in (("left", lambda k: boxes[k][0][0] - o["high"][0]), ("right", lambda k: o["low"][0] - boxes[k][1][0])):
            if o["name"].startswith(side + " slide of ") and "," not in o["name"]:
                yield f"between {o['name']} and its box", gap(o["box"])


def handles(d, group, fronts):
    """How far handles reach over fronts of other drawers, seen from before: what is pulled out meets them."""
    names = [d["boxes"][b]["name"] for b in group["boxes"]]
    for o in group["carcass"]["outlines"]:
        if not o["name"].startswith(("knob of ", "handle of ")):
            continue
        seen = rectangle(o["low"][0], o["low"][2], o["high"][0], o["high"][2])
        for k, f in enumerate(fronts):
            both = k != o["box"] and f and seen.intersection(rectangle(f[0][0], f[0][2], f[1][0], f[1][2]))
            if both and both.area > 1e-4:
                x0, z0, x1, z1 = both.bounds
                yield {o["name"], f"drawer front of {names[k]}"}, min(x1 - x0, z1 - z0)


for line in sys.stdin:
    file = line.strip()
    with open(file, encoding="utf-8") as page:
        d = json.loads(re.search(r'id="scene">(.*?)</script>', page.read(), re.S).group(1))
    meshes = list(solids(d))
    for g in d["groups"]:
        if "carcass" not in g:
            continue
        room = g["carcass"]["high"][0] - g["carcass"]["low"][0]
        boxes, fronts = ([bounds(d, meshes, b, at, is_front, room) for b, at in zip(g["boxes"], g["at"])] for is_front in (False, True))
        said = {c["name"]: c["gap"] for c in g["carcass"]["clearances"]}
        for name, found in measured(d, g, boxes, fronts):
            print(json.dumps({"file": file, "name": name, "said": said.get(name), "found": found}))
        met = [(set(c["name"].split(" and ")), c["by"]) for c in g["carcass"]["collisions"] if c.get("pulled") and ("knob" in c["name"] or "handle" in c["name"])]
        found = list(handles(d, g, fronts))
        for pair, by in found:
            print(json.dumps({"file": file, "meets": " and ".join(sorted(pair)), "said": next((b for p, b in met if p == pair), None), "found": by}))
        for pair, by in met:
            if pair not in [p for p, _ in found]:
                print(json.dumps({"file": file, "meets": " and ".join(sorted(pair)), "said": by, "found": None}))
