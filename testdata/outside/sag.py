#!/usr/bin/python3
"""How far bottoms sag, from the theories of plates and tables of its own.

Reads one JSON object a line: {"name", "length", "width" (between the supports, mm),
"thickness", "kg"} and either "material" or "along", "across", "shear", "poisson".
Prints for each {"name", "simple", "clamped"} in mm.

Simply supported: Navier's double series for an orthotropic plate (Timoshenko and
Woinowsky-Krieger, Theory of Plates and Shells, articles 28 and 85), summed by numpy, its
twist stiffness from the modulus of shear. Clamped: the equation of the plate as finite
differences, solved by scipy on two grids, the error of which goes with the square of
the step.

What shear through the thickness adds is the theory of Mindlin and Reissner, each term of the
series solved as three equations by numpy, less that of a thickness which shear does not tilt;
the clamped plate gets as much.
"""
import json
import sys

import numpy
from scipy import sparse
from scipy.sparse import linalg

GRAVITY = 9.80665

# N/mm2 along and across, by thickness; shear and Poisson's ratio. Birch plywood:
# Handbook of Finnish Plywood, table 3-1, mean values, from memory. MDF: EN 622-5, from
# memory. Hardboard: Wood Handbook, table 12-1, low end, from memory. Cherry: Wood
# Handbook, table 5-3, secondary; across, shear and ratio at the low end of its table 5-1,
# from memory. A board alike in all directions has E / (2 (1 + nu)) for its shear.
TABLES = {
    "birch-plywood": ([4, 6.5, 9, 12, 15, 18], [16471, 12737, 11395, 10719, 10316, 10048], [1029, 4763, 6105, 6781, 7184, 7452], 620, 0.1),
    "hardboard": ([3], [3100], [3100], None, 0.3),
    "mdf": ([6, 9, 12, 19], [2700, 2500, 2200, 2100], [2700, 2500, 2200, 2100], None, 0.3),
    "cherry": ([1], [10300], [515], 515, 0.1),
}

# Moduli of shear through the thickness, N/mm2, of strips along and across: from memory, as of
# planar shear; cherry's at the low end of G_LT / E_L and G_RT / E_L in table 5-1.
THROUGH = {"birch-plywood": (120, 120), "hardboard": (100, 100), "mdf": (100, 100), "cherry": (515, 30.9)}


def elastic(job):
    if "material" not in job:
        return job["along"], job["across"], job["shear"], job["poisson"]
    at, along, across, shear, poisson = TABLES[job["material"]]
    along, across = numpy.interp(job["thickness"], at, along), numpy.interp(job["thickness"], at, across)
    return along, across, shear, poisson


def stiffness(job):
    """Dx, Dy and H of the plate's equation."""
    along, across, shear, poisson = elastic(job)
    if not shear:
        shear = numpy.sqrt(along * across) / (2 * (1 + poisson))
    t3 = job["thickness"] ** 3 / 12
    dx, dy = along * t3 / (1 - poisson**2), across * t3 / (1 - poisson**2)
    return dx, dy, poisson * numpy.sqrt(dx * dy) + 2 * shear * t3


def simple(job):
    dx, dy, h = stiffness(job)
    a, b = job["length"], job["width"]
    m, n = numpy.meshgrid(numpy.arange(1, 400, 2), numpy.arange(1, 400, 2), indexing="ij")
    sign = numpy.sin(m * numpy.pi / 2) * numpy.sin(n * numpy.pi / 2)
    x, y = m / a, n / b
    terms = sign / (m * n * (dx * x**4 + 2 * h * x**2 * y**2 + dy * y**4))
    return 16 * job["kg"] * GRAVITY / (a * b) / numpy.pi**6 * terms.sum()


def sheared(job):
    if "material" not in job:
        return 0.0
    dx, dy, h = stiffness(job)
    d1 = elastic(job)[3] * numpy.sqrt(dx * dy)
    dk = (h - d1) / 2
    sx, sy = (5 / 6 * g * job["thickness"] for g in THROUGH[job["material"]])
    sides = job["length"], job["width"]
    m, n = numpy.meshgrid(numpy.arange(1, 160, 2), numpy.arange(1, 160, 2), indexing="ij")
    x, y = m * numpy.pi / sides[0], n * numpy.pi / sides[1]
    q = 16 * job["kg"] * GRAVITY / (sides[0] * sides[1]) / (numpy.pi**2 * m * n)

    def middle(stiffer):
        a = numpy.empty(m.shape + (3, 3))
        tx, ty = sx * stiffer, sy * stiffer
        a[..., 0, 0] = tx * x**2 + ty * y**2
        a[..., 0, 1] = a[..., 1, 0] = tx * x
        a[..., 0, 2] = a[..., 2, 0] = ty * y
        a[..., 1, 1] = dx * x**2 + dk * y**2 + tx
        a[..., 1, 2] = a[..., 2, 1] = (d1 + dk) * x * y
        a[..., 2, 2] = dk * x**2 + dy * y**2 + ty
        right = numpy.zeros(m.shape + (3, 1))
        right[..., 0, 0] = q
        w = numpy.linalg.solve(a, right)[..., 0, 0]
        return (w * numpy.sin(m * numpy.pi / 2) * numpy.sin(n * numpy.pi / 2)).sum()

    return middle(1) - middle(1e5)


def clamped(job, steps):
    dx, dy, h = stiffness(job)
    inner = steps - 1

    def second(length):
        return sparse.diags([1, -2, 1], [-1, 0, 1], (inner, inner)) * (steps / length) ** 2

    def fourth(length):
        # Beyond an edge that cannot turn the plate is its own mirror image.
        d = sparse.diags([1.0, -4.0, 6.0, -4.0, 1.0], [-2, -1, 0, 1, 2], (inner, inner)).tolil()
        d[0, 0] += 1
        d[inner - 1, inner - 1] += 1
        return d.tocsr() * (steps / length) ** 4

    one = sparse.identity(inner)
    a, b = job["length"], job["width"]
    plate = dx * sparse.kron(fourth(a), one) + dy * sparse.kron(one, fourth(b)) + 2 * h * sparse.kron(second(a), second(b))
    load = numpy.full(inner * inner, job["kg"] * GRAVITY / (a * b))
    w = linalg.spsolve(plate.tocsc(), load).reshape(inner, inner)
    return w[inner // 2, inner // 2]


def main():
    for line in sys.stdin:
        job = json.loads(line)
        coarse, fine = clamped(job, 24), clamped(job, 48)
        more = sheared(job)
        print(json.dumps({"name": job["name"], "simple": simple(job) + more, "clamped": fine + (fine - coarse) / 3 + more}))


if __name__ == "__main__":
    main()
