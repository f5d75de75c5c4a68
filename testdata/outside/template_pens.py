"""Holds the lines of a template's SVG against those of its print. pikepdf reads the pages: a line of the SVG is
found there by its shape, wherever it is. Prints a JSON object for each class of lines and pair of pens: width in mm and
gray (0 is black) in the SVG and in the print, and how many lines have them.

    template_pens.py PDF SVG...
"""
import json
import re
import sys
import xml.etree.ElementTree as ET

import pikepdf

MM = 25.4 / 72


def shape(points):
    """Gives the corners from the first one on, to 0.02 mm."""
    return tuple((round(50 * (x - points[0][0])), round(50 * (y - points[0][1]))) for x, y in points)


def printed(pdf):
    """Gives the pens of all undashed lines of a document by their shapes."""
    pens = {}
    for page in pdf.pages:
        width, shade, dash, chains, stack = 1.0, 0.0, [], [], []
        for operands, operator in pikepdf.parse_content_stream(page):
            op = str(operator)
            v = [float(o) for o in operands] if op in ("w", "G", "m", "l", "c", "re") else []
            if op == "q":
                stack.append((width, shade, dash))
            elif op == "Q":
                width, shade, dash = stack.pop()
            elif op == "cm":
                raise ValueError("a page is scaled")
            elif op == "w":
                width = v[0] * MM
            elif op == "G":
                shade = v[0]
            elif op == "d":
                dash = list(operands[0])
            elif op == "m":
                chains.append([(v[0] * MM, v[1] * MM)])
            elif op in ("l", "c"):
                chains[-1].append((v[-2] * MM, v[-1] * MM))
            elif op == "re":
                x, y, wide, high = [n * MM for n in v]
                chains.append([(x, y), (x + wide, y), (x + wide, y + high), (x, y + high)])
            elif op in ("S", "s", "B", "B*", "b", "b*"):
                if not dash:
                    for c in chains:
                        pens.setdefault(shape(c), set()).add((round(width, 3), round(shade, 3)))
                chains = []
            elif op in ("f", "f*", "n"):
                chains = []
    return pens


def drawn(path):
    """Gives each line of an SVG: its group, pen and corners, y up."""
    for group in ET.parse(path).getroot():
        if not group.tag.endswith("}g"):
            continue
        for e in group:
            if not e.tag.endswith("}path"):
                continue
            points = []
            for op, numbers in re.findall(r"([MLC])([^MLCZ]*)", e.get("d")):
                v = [float(n) for n in re.findall(r"-?[\d.]+", numbers)]
                points.append((v[-2], -v[-1]))
            gray = int(e.get("stroke")[1:3], 16) / 255
            yield group.get("id"), (float(e.get("stroke-width")), round(gray, 3)), points


def main(document, svgs):
    with pikepdf.open(document) as pdf:
        pens = printed(pdf)
    count = {}
    for path in svgs:
        for group, pen, points in drawn(path):
            if len(points) < 3:
                continue  # strokes of letters are like other short lines
            for other in pens.get(shape(points), {None}):
                key = (group, pen, other)
                count[key] = count.get(key, 0) + 1
    for (group, pen, other), n in sorted(count.items(), key=str):
        wide, gray = other or (0, 0)
        print(json.dumps({"Group": group, "SVG": pen, "PDF": [wide, gray], "Found": other is not None, "Lines": n}))


main(sys.argv[1], sys.argv[2:])
