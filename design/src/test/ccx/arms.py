#!/usr/bin/env python3
"""Clasp arms as bricks for CalculiX, the general finite-element program (Debian package calculix-ccx).

Usage: arms.py [FOLDER]    writes FOLDER/NAME.inp, runs ccx on each, prints one line a case:
    name, load direction, displacement of the tip along it [mm] under 1 N

The arms are those of ArmFiniteElementTest: quadratic bricks (C3D20), the section mapped from a square onto half
a disc or a disc, swept along the curve with its taper. Held at the origin's face, loaded evenly over the tip's
face; the displacement is that of the tip's face, averaged. E = 220,000 MPa, Poisson's ratio 0.3.
"""
import math
import os
import subprocess
import sys

import numpy as np

E, NU = 220_000.0, 0.3
ALONG, ACROSS, THICK = 60, 6, 4


def spiral(t):
    """Along a crown: 4.5 mm about its axis, sinking 2.5 mm towards the tip."""
    angle = 1.9 * t
    return np.array([4.5 * math.cos(angle), 4.5 * math.sin(angle), -2.5 * t * t])



CASES = {
    "straight-half-round": (lambda t: np.array([4.0, 12.0 * t, 0.0]), "half", (2.0, 1.0), (1.0, 0.5), True),
    "curved-half-round": (spiral, "half", (2.0, 1.0), (1.0, 0.5), False),
    "curved-wire": (spiral, "round", (1.02, 1.02), (1.02, 1.02), False),
}


def frame(curve, t, flat):
    h = 1e-5
    a, b = max(0.0, t - h), min(1.0, t + h)
    along = curve(b) - curve(a)
    along /= np.linalg.norm(along)
    out = np.array([1.0, 0.0, 0.0]) if flat else curve(t) * np.array([1, 1, 0])
    out /= np.linalg.norm(out)
    away = out - along * out.dot(along)
    away /= np.linalg.norm(away)
    return out, away, np.cross(along, away)


def point(shape, curve, t, u, v, root, tip, way, flat):
    """u from -1 to 1 across, v from 0 to 1 (half) or -1 to 1 (round) away from the tooth."""
    out, away, across = frame(curve, t, flat)
    w = root[0] + (tip[0] - root[0]) * way
    d = root[1] + (tip[1] - root[1]) * way
    x, y = u * math.sqrt(1 - v * v / 2), v * math.sqrt(1 - u * u / 2)
    if shape == "half":
        # The line of centroids lies where Rodwork puts it: 4/(3 pi) thicknesses outward of the curve.
        c = 4 / (3 * math.pi) * d
        return curve(t) + out * c + away * (y * d - c) + across * (x * w / 2)
    return curve(t) + out * (w / 2) + away * (y * w / 2) + across * (x * w / 2)


def lengths(curve, n=4000):
    p = np.array([curve(i / n) for i in range(n + 1)])
    s = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(p, axis=0), axis=1))])
    return s / s[-1], np.linspace(0, 1, n + 1)


def write(name, folder):
    curve, shape, root, tip, flat = CASES[name]
    ways, ts = lengths(curve)
    nv = THICK if shape == "half" else ACROSS
    ids, nodes = {}, []

    def node(i, j, k):  # half steps
        key = (i, j, k)
        if key not in ids:
            way = i / (2 * ALONG)
            t = float(np.interp(way, ways, ts))
            u = -1 + j / ACROSS
            v = k / (2 * nv) if shape == "half" else -1 + k / nv
            ids[key] = len(nodes) + 1
            nodes.append(point(shape, curve, t, u, v, root, tip, way, flat))
        return ids[key]

    elements = []
    for i in range(0, 2 * ALONG, 2):
        for j in range(0, 2 * ACROSS, 2):
            for k in range(0, 2 * nv, 2):
                c = [(0, 0, 0), (0, 2, 0), (0, 2, 2), (0, 0, 2), (2, 0, 0), (2, 2, 0), (2, 2, 2), (2, 0, 2),
                     (0, 1, 0), (0, 2, 1), (0, 1, 2), (0, 0, 1), (2, 1, 0), (2, 2, 1), (2, 1, 2), (2, 0, 1),
                     (1, 0, 0), (1, 2, 0), (1, 2, 2), (1, 0, 2)]
                elements.append([node(i + a, j + b, k + d) for a, b, d in c])
    p = np.array(nodes)
    e = elements[0]
    if np.linalg.det(np.array([p[e[1] - 1] - p[e[0] - 1], p[e[3] - 1] - p[e[0] - 1], p[e[4] - 1] - p[e[0] - 1]])) < 0:
        swap = [4, 5, 6, 7, 0, 1, 2, 3, 12, 13, 14, 15, 8, 9, 10, 11, 16, 17, 18, 19]
        elements = [[e[s] for s in swap] for e in elements]
    root_nodes = [n for (i, j, k), n in ids.items() if i == 0]
    tip_nodes = [n for (i, j, k), n in ids.items() if i == 2 * ALONG and j % 2 == 0 and k % 2 == 0]
    # Even load on the corner nodes of the face in proportion to the area around them, about its centroid.
    area = dict.fromkeys(tip_nodes, 0.0)
    for j in range(0, 2 * ACROSS, 2):
        for k in range(0, 2 * nv, 2):
            q = [ids[(2 * ALONG, j + a, k + b)] for a, b in ((0, 0), (2, 0), (2, 2), (0, 2))]
            a = np.linalg.norm(np.cross(p[q[2] - 1] - p[q[0] - 1], p[q[3] - 1] - p[q[1] - 1])) / 2
            for n in q:
                area[n] += a / 4
    total = sum(area.values())
    with open(os.path.join(folder, name + ".inp"), "w") as f:
        f.write("*NODE, NSET=ALL\n")
        for i, q in enumerate(nodes, 1):
            f.write("%d, %.9f, %.9f, %.9f\n" % (i, *q))
        f.write("*ELEMENT, TYPE=C3D20, ELSET=ARM\n")
        for i, el in enumerate(elements, 1):
            f.write("%d, %s,\n%s\n" % (i, ", ".join(map(str, el[:15])), ", ".join(map(str, el[15:]))))
        f.write("*NSET, NSET=ROOT\n" + ",\n".join(map(str, root_nodes)) + "\n")
        f.write("*NSET, NSET=TIP\n" + ",\n".join(map(str, tip_nodes)) + "\n")
        f.write("*MATERIAL, NAME=ALLOY\n*ELASTIC\n%g, %g\n*SOLID SECTION, ELSET=ARM, MATERIAL=ALLOY\n" % (E, NU))
        f.write("*BOUNDARY\nROOT, 1, 3\n")
        for axis in (1, 2, 3):
            f.write("*STEP\n*STATIC\n*CLOAD, OP=NEW\n")
            for n in tip_nodes:
                f.write("%d, %d, %.12g\n" % (n, axis, area[n] / total))
            f.write("*NODE PRINT, NSET=TIP\nU\n*END STEP\n")
    return {n: area[n] / total for n in tip_nodes}


def run(name, folder):
    share = write(name, folder)
    subprocess.run(["ccx", name], cwd=folder, check=True, stdout=subprocess.DEVNULL)
    blocks, block = [], None
    for line in open(os.path.join(folder, name + ".dat")):
        if "displacements" in line:
            block = {}
            blocks.append(block)
        elif line.strip() and block is not None:
            q = line.split()
            block[int(q[0])] = [float(x) for x in q[1:4]]
    for axis, block in enumerate(blocks):
        print("%s\t%s\t%.6g" % (name, "xyz"[axis], sum(share[n] * u[axis] for n, u in block.items())), flush=True)


if __name__ == "__main__":
    where = sys.argv[1] if len(sys.argv) > 1 else "."
    for case in CASES:
        run(case, where)
