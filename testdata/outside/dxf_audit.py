#!/usr/bin/python3
"""Open DXF files with ezdxf, audit them, and tell what it found in them.

    dxf_audit.py FILE...

Prints one JSON object a line for each file:

    {"file", "version", "insunits", "measurement", "errors", "fixes", "log",
     "extmin", "extmax", "layers": [{"name", "color"}],
     "entities": [{"layer", "type", "closed", "heights", "points": [[x, y, bulge], ...]}
                  or {"layer", "type": "CIRCLE", "closed", "heights", "center", "radius"}]}

"heights" are the least and the greatest z of an entity, and its thickness.

"errors" and "fixes" are counts of the audit, and "log" holds what ezdxf said
while it read, audited and, where something had to be added, mended the file. A
header variable that the file does not have is null. Exit status 1 when any file
had an error, a fix or a line in its log; 2 when called without files.

Needs Debian's python3-ezdxf (tried with 0.18.1).
"""
import json
import logging
import sys

import ezdxf

import dxf_legend

# Whatever ezdxf reads it holds as a newer version inside, which has a root
# dictionary and these in it. An R12 file cannot have them, so that they are made
# for each says nothing about the file.
MADE_FOR_EVERY_R12 = {"Creating ROOT dictionary."} | {
    "creating %s dictionary" % name
    for name in (
        "ACAD_COLOR",
        "ACAD_GROUP",
        "ACAD_LAYOUT",
        "ACAD_MATERIAL",
        "ACAD_MLEADERSTYLE",
        "ACAD_MLINESTYLE",
        "ACAD_PLOTSETTINGS",
        "ACAD_PLOTSTYLENAME",
        "ACAD_SCALELIST",
        "ACAD_TABLESTYLE",
        "ACAD_VISUALSTYLE",
    )
}


class Lines(logging.Handler):
    """Keeps what is logged, of every level."""

    def __init__(self):
        super().__init__(logging.DEBUG)
        self.lines = []

    def emit(self, record):
        self.lines.append(record.getMessage())


def layers(doc):
    """The layers of the file. ezdxf adds one called Defpoints to every drawing;
    it is left out unless something is drawn on it."""
    used = {e.dxf.layer for e in doc.modelspace()}
    return [
        {"name": layer.dxf.name, "color": layer.dxf.color}
        for layer in doc.layers
        if layer.dxf.name != "Defpoints" or "Defpoints" in used
    ]


def entity(e):
    kind = e.dxftype()
    out = {"layer": e.dxf.layer, "type": kind, "heights": dxf_legend.heights(e)}
    if kind == "LWPOLYLINE":
        out["closed"] = bool(e.closed)
        out["points"] = [list(p) for p in e.get_points("xyb")]
    elif kind == "POLYLINE":
        out["closed"] = bool(e.is_closed)
        out["points"] = [
            [v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0.0)] for v in e.vertices
        ]
    elif kind == "CIRCLE":
        out["closed"] = True
        out["center"] = list(e.dxf.center)
        out["radius"] = e.dxf.radius
    return out


def vector(value):
    return None if value is None else list(value)


def look(path, lines):
    """Everything that is known of one file."""
    lines.lines = []
    out = {"file": path, "errors": 0, "fixes": 0}
    try:
        doc = ezdxf.readfile(path)
        header = doc.header
        version = doc.loaded_dxfversion
        out["version"] = version
        out["insunits"] = header.get("$INSUNITS", None)
        out["measurement"] = header.get("$MEASUREMENT", None)
        out["extmin"] = vector(header.get("$EXTMIN", None))
        out["extmax"] = vector(header.get("$EXTMAX", None))
        out["layers"] = layers(doc)
        out["entities"] = [entity(e) for e in doc.modelspace()]
        audit = doc.audit()
        out["errors"], out["fixes"] = len(audit.errors), len(audit.fixes)
        lines.lines += [e.message for e in audit.errors + audit.fixes]
        if version == "AC1009":
            lines.lines = [s for s in lines.lines if s not in MADE_FOR_EVERY_R12]
    except Exception as err:  # a broken file ends ezdxf in many ways
        out["errors"] += 1
        lines.lines.append("cannot be read: %s: %s" % (type(err).__name__, err))
    out["log"] = lines.lines
    return out


def main(paths):
    if not paths:
        print(__doc__, file=sys.stderr)
        return 2
    lines = Lines()
    logger = logging.getLogger("ezdxf")
    logger.setLevel(logging.DEBUG)
    logger.propagate = False
    logger.addHandler(lines)
    bad = False
    for path in paths:
        found = look(path, lines)
        bad = bad or bool(found["errors"] or found["fixes"] or found["log"])
        print(json.dumps(found))
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
