"""Prints a document as a gray printer of 200 dots an inch does (poppler), and follows the straight lines that its
pages say they draw, as pikepdf reads them: how light each gets anywhere along it. Prints a JSON object for each pen:
its width in mm, its gray (0 is black), how many lines were followed, and the lightest of 255 with where it is.

    pdf_lines.py FILE [PRINTED]

PRINTED is printed in place of the document, which shows that lines are missed where they are not.
"""
import json
import math
import subprocess
import sys
import tempfile

import pikepdf
from PIL import Image

DOTS = 200
LEAST = 5 / 25.4 * 72  # points: shorter lines are between others
END = 0.8 / 25.4 * 72  # what is left out at either end, where other lines meet it
STEP = 0.5 / 25.4 * 72
FULL = 0.9  # of a line: arrows and letters of other drawings lie over the rest


def strokes(page):
    """Gives the straight undashed lines of a page, their ends, width and gray, each with the areas laid over it."""
    width, shade, dash, chain, lines, areas = 1.0, 0.0, [], [], [], []
    for operands, operator in pikepdf.parse_content_stream(page):
        op = str(operator)
        v = [float(o) for o in operands] if op in ("w", "G", "m", "l", "re", "c") else []
        if op == "w":
            width = v[0]
        elif op == "G":
            shade = v[0]
        elif op == "d":
            dash = list(operands[0])
        elif op == "m":
            start = tuple(v)
            chain.append([start])
        elif op == "l":
            chain[-1].append(tuple(v))
        elif op == "c":
            chain.append([tuple(v[4:])])  # what is bent is not followed
        elif op == "h":
            chain[-1].append(start)
        elif op == "re":
            x, y, wide, high = v
            chain.append([(x, y), (x + wide, y), (x + wide, y + high), (x, y + high), (x, y)])
        elif op in ("S", "B*", "f*"):
            if op != "S":
                areas += [(len(lines), box(c)) for c in chain]
            if op != "f*" and not dash:
                lines += [(a, b, width, shade) for c in chain for a, b in zip(c, c[1:])]
            chain = []
    for i, s in enumerate(lines):
        if math.dist(s[0], s[1]) >= LEAST:
            yield s, [b for n, b in areas if n > i and meet(b, box(s[:2]))]


def box(points):
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return min(xs), min(ys), max(xs), max(ys)


def meet(a, b):
    return a[0] <= b[2] and b[0] <= a[2] and a[1] <= b[3] and b[1] <= a[3]


def followed(image, high, line, over):
    """Gives the lightest of the darkest dots across a line, but for what lies under areas; 0 where all of it does."""
    (x0, y0), (x1, y1), _, _ = line
    long = math.dist((x0, y0), (x1, y1))
    ux, uy = (x1 - x0) / long, (y1 - y0) / long
    found, at = [], END
    while at < long - END:
        px, py = x0 + ux * at, y0 + uy * at
        at += STEP
        if any(meet(b, (px - 1, py - 1, px + 1, py + 1)) for b in over):
            continue
        darkest = 255
        for off in (-1, -0.5, 0, 0.5, 1):  # dots across
            x, y = px / 72 * DOTS - uy * off, (high - py) / 72 * DOTS - ux * off
            if 0 <= int(x) < image.width and 0 <= int(y) < image.height:
                darkest = min(darkest, image.getpixel((int(x), int(y))))
        found.append(darkest)
    found.sort()
    return found[int(FULL * (len(found) - 1))] if found else 0


def main(path, shown):
    pens = {}
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run(["pdftoppm", "-gray", "-r", str(DOTS), shown, folder + "/page"], check=True)
        with pikepdf.open(path) as pdf:
            with pikepdf.open(shown) as other:
                last = len(other.pages)
            for number, page in enumerate(pdf.pages, 1):
                if number > last:
                    break
                image = Image.open("%s/page-%0*d.pgm" % (folder, len(str(last)), number))
                for line, over in strokes(page.obj):
                    light = followed(image, float(page.MediaBox[3]), line, over)
                    key = (round(line[2] / 72 * 25.4, 2), round(line[3], 2))
                    pen = pens.setdefault(key, {"Width": key[0], "Gray": key[1], "Lines": 0, "Lightest": 0, "Where": ""})
                    pen["Lines"] += 1
                    if light > pen["Lightest"]:
                        pen["Lightest"], pen["Where"] = light, "page %d, %s to %s" % (number, line[0], line[1])
    for key in sorted(pens):
        print(json.dumps(pens[key]))


main(sys.argv[1], sys.argv[-1])
