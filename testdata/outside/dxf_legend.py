"""Which line of a report's legend an entity of a drawing belongs to, by ezdxf's reading.

Imported by the scripts beside it. Where the job asks for elevations a layer may be listed
several times, with a depth each; then the height at which an entity lies tells which it
is. One that lies at none of them, does not lie level, or does not reach up to the face is
an error. Heights are worked out here from depths and boards, not taken from the report.
"""

NEAR = 0.011  # mm: names of layers round depths to 0.01 mm, of which the least is another half


def heights(e):
    """The least and the greatest height of an entity, and its thickness."""
    if e.dxftype() == "LWPOLYLINE":
        return e.dxf.elevation, e.dxf.elevation, e.dxf.thickness
    if e.dxftype() == "POLYLINE":
        z = [v.dxf.location.z for v in e.vertices] + [e.dxf.elevation.z]
        return min(z), max(z), e.dxf.thickness
    if e.dxftype() == "CIRCLE":
        return e.dxf.center.z, e.dxf.center.z, e.dxf.thickness
    return 0.0, 0.0, 0.0


def floor_and_face(row, report, stock):
    """Where the cut of a row of the legend ends and begins, in millimeters; None for the
    floor of a registration hole, which is anywhere below the board."""
    unit = 25.4 if report["units"] == "in" else 1.0
    (board,) = [s for s in report["stocks"] if s["name"] == stock]
    router = report["router"]
    through = router.get("into_spoilboard", 0.0) * unit
    below = router["depth_from"] == "spoilboard" and row["diameter"] > 0
    face = board["thickness"] * unit if below else 0.0
    if row["operation"] == "register":
        return None, face
    if row["stated"] == "through":
        return (-through if below else -board["max"] * unit - through), face
    return face - row["depth"] * unit, face


def row_of(e, rows, report, stock, scale):
    """The row of an entity; None where it is on no layer that is cut. scale makes the
    drawing's unit millimeters."""
    found = [r for r in rows if r["layer"] == e.dxf.layer]
    low, high, up = (v * scale for v in heights(e))
    if not found or not report["dxf"].get("elevation"):
        if low or high or up:
            raise ValueError("something on %s is at z = %g to %g, %g thick" % (e.dxf.layer, low, high, up))
        return found[0] if found else None
    if high - low > 1e-6:
        raise ValueError("something on %s is not level" % e.dxf.layer)
    for r in found:
        floor, face = floor_and_face(r, report, stock)
        board = face if face > 0 else max(s["max"] for s in report["stocks"] if s["name"] == stock) * (25.4 if report["units"] == "in" else 1.0)
        deep = low < face - board + NEAR if floor is None else abs(low - floor) < NEAR
        if deep and abs(low + up - face) < NEAR:
            return r
    raise ValueError("something on %s lies at z = %g, %g thick; cuts there end at %s" % (e.dxf.layer, low, up, [floor_and_face(r, report, stock) for r in found]))
