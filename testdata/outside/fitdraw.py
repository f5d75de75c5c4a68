#!/usr/bin/python3
"""Draw measures of a box with scipy's spreads and generator.

Reads one JSON object from standard input: {"sources": [{"Name", "Minus", "Plus",
"Shape"}], "draws", "width", "depth", "left", "right", "height", "room"}: what is off,
in mm, shape 0 uniform and 1 normal, cut off at 3 standard deviations; the size of the
box, how thick its sides are, the cutter's height and the glue room.

Prints for each measure {"name", "mean", "sigma", "fourth", "parts", "at", "beyond"}:
the fourth central moment; the quantiles of parts; and, for the ends between which all
but 0.27 % are, the quantiles that are four standard errors of the part below and above.

Where the object has "limits" of width, depth and diagonal, prints first {"name": "right",
"mean"}: the part of boxes that keep all three. With a "window", two distances from the
width that the box is set for, and the "aim" in it, prints then {"name": "aim", "parts"}:
the part of boxes whose width comes within the window when it is set by aim beside, and
the greatest part that any place gives.
"""
import json
import sys

import numpy
from scipy import stats

PARTS = [0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99]
BEYOND = 0.00135


def draw(source, n, generator):
    middle = (source["Plus"] - source["Minus"]) / 2
    half = (source["Plus"] + source["Minus"]) / 2
    if half == 0:
        return numpy.full(n, middle)
    if source["Shape"] == 0:
        spread = stats.uniform(middle - half, 2 * half)
    else:
        spread = stats.truncnorm(-3, 3, loc=middle, scale=half / 3)
    return spread.rvs(size=n, random_state=generator)


def main():
    job = json.load(sys.stdin)
    n = job["draws"]
    generator = numpy.random.Generator(numpy.random.Philox(20240229))
    off = {s["Name"]: draw(s, n, generator) for s in job["sources"]}

    def into(side):
        """How far the front's tongue reaches into a side: to the dado's floor, or
        until its shoulder meets the side."""
        floor = job["height"] + job["room"] + off["cutter height of the dados"] + off[f"depth of the {side} dado"]
        shoulder = job["height"] + off["cutter height"] + off[f"length of the {side} rabbet"]
        return numpy.minimum(floor, shoulder)

    # The front is as long as the tongues, of the cutter's height, need.
    front = job["width"] - job["left"] - job["right"] + 2 * job["height"] + off["length of box front and back"]
    sides = job["left"] + off["thickness of the left side"] + job["right"] + off["thickness of the right side"]
    width = front + sides - into("left") - into("right")
    depth = job["depth"] + off["length of the sides"]
    measures = {
        "outside-width": width,
        "diagonal": numpy.hypot(width, depth),
        "product": (4 + off["cutter height"]) * (3 + off["thickness of the left side"]),
    }
    if "limits" in job:
        keep = numpy.ones(n, dtype=bool)
        # A front or back that is thicker than wall and tongue, each where the fence puts
        # it, stands proud of the ends of the sides.
        proud = 0
        for end in ("box front", "back"):
            recess = 2 * off["fence distance"] + off[f"place of the {end}'s dado"] + off[f"cut of the {end}'s tongue"] - off[f"thickness of the {end}"]
            proud = proud + numpy.maximum(0, -recess)
        for name, v in (("outside-width", width), ("outside-depth", depth + proud), ("diagonal", measures["diagonal"])):
            low, high = job["limits"][name]
            keep &= (v >= low) & (v <= high)
        print(json.dumps({"name": "right", "mean": keep.mean()}))
    if "window" in job:
        low, high = job["window"]
        by = numpy.sort(width - job["width"])
        kept = numpy.searchsorted(by, high - job["aim"], side="right") - numpy.searchsorted(by, low - job["aim"])
        # A best place has one of the draws at its lower end.
        best = (numpy.searchsorted(by, by + high - low, side="right") - numpy.arange(n)).max()
        print(json.dumps({"name": "aim", "parts": [kept / n, best / n]}))
    for name, v in () if "limits" in job else measures.items():
        ends = []
        for part in (BEYOND, 1 - BEYOND):
            # Of both draws, n here and as many there.
            by = 4 * numpy.sqrt(2 * BEYOND * (1 - BEYOND) / n)
            ends.append(list(numpy.quantile(v, [max(0, part - by), min(1, part + by)])))
        print(json.dumps({
            "name": name, "mean": v.mean(), "sigma": v.std(), "fourth": ((v - v.mean()) ** 4).mean(),
            "parts": PARTS, "at": list(numpy.quantile(v, PARTS)), "beyond": ends,
        }))


if __name__ == "__main__":
    main()
