#!/usr/bin/python3
"""Time ezdxf's r12writer on the polylines of the benchmark in export/dxf.

Writes 100,000 closed polylines of 4 vertices, numbers of at most 6 decimals, to
a file in a temporary folder, three times, and prints as JSON

    {"polylines", "vertices", "runs": [seconds, ...], "seconds": best, "bytes"}

The vertices are made beforehand and are not in the time. They are those of
BenchmarkWrite: keep the two formulas together.

Needs Debian's python3-ezdxf (tried with 0.18.1).
"""
import json
import os
import tempfile
import time

from ezdxf.addons.r12writer import r12writer

POLYLINES = 100_000
RUNS = 3


def rectangles():
    """The rectangles of the benchmark: see benchRectangle in bench_test.go."""
    for i in range(POLYLINES):
        x = round(i % 1000 * 12.345678, 6)
        y = round(i // 1000 * 23.456789, 6)
        w, h = x + 6.35, y + 139.999999
        yield [(x, y), (round(w, 6), y), (round(w, 6), round(h, 6)), (x, round(h, 6))]


def run(path, polylines):
    start = time.perf_counter()
    with r12writer(path) as dxf:
        for points in polylines:
            dxf.add_polyline_2d(points, closed=True, layer="DADO_INSIDE_5-99MM")
    return time.perf_counter() - start


def main():
    polylines = list(rectangles())
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, "peer.dxf")
        runs = [run(path, polylines) for _ in range(RUNS)]
        print(
            json.dumps(
                {
                    "polylines": POLYLINES,
                    "vertices": 4 * POLYLINES,
                    "runs": [round(s, 4) for s in runs],
                    "seconds": round(min(runs), 4),
                    "bytes": os.path.getsize(path),
                }
            )
        )


if __name__ == "__main__":
    main()
