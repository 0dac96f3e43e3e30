"""Solves plates on edge springs and beds with scikit-fem and keeps the results in resting.json.

As panels.py does, but with meshes that follow every bed, patch and window, so that nothing is integrated over a part of a
triangle. A window's moments are their means, weighed by a tent that falls to nothing a stated width away.

    /tmp/venv-strength/bin/python resting.py
"""

import json
import pathlib
import sys

import numpy as np
import scipy
import scipy.sparse.linalg
import skfem
from skfem import Basis, BilinearForm, ElementTriP4, ElementVector, FacetBasis, LinearForm, MeshTri, asm

from panels import PLY, SANDWICH, isotropic, lines, patch, plate

HALF, HEIGHT, WIDTH = 0.6, 0.7, 0.05


def box(part):
    """Low and high corner of a patch or a bed."""
    c, half = np.array(part["centre"]), 0.5 * np.array([part["width"], part["height"]])
    return c - half, c + half


def solve(case, refine):
    breaks = [{-HALF, 0.0, HALF}, {0.0, HEIGHT}]
    for part in case["loads"] + case["beds"]:
        for corner in box(part):
            [b.add(round(float(v), 9)) for b, v in zip(breaks, corner)]
    for at in case["windows"]:
        for b, v, most in zip(breaks, at, [HALF, HEIGHT]):
            b.update(round(v + k * WIDTH, 9) for k in (-1, 0, 1) if v + k * WIDTH < most + 1e-9)
    size = 0.08 / refine
    mesh = MeshTri.init_tensor(*(lines(sorted(b), size, size, []) for b in breaks))
    centre = mesh.p[:, mesh.t].mean(axis=1)
    within = lambda part: np.nonzero(np.all([(centre[k] > box(part)[0][k]) & (centre[k] < box(part)[1][k]) for k in (0, 1)], axis=0))[0]
    bw = Basis(mesh, ElementTriP4(), intorder=8)
    br = Basis(mesh, ElementVector(ElementTriP4()), intorder=8)
    s = case["stiffness"]
    kww, krw, krr = plate(s, bw, br)
    for bed in case["beds"]:
        # Stiffness is that of a metre of its height.
        on = Basis(mesh, ElementTriP4(), elements=within(bed), intorder=8)
        kww = kww + asm(BilinearForm(lambda u, v, w: bed["stiffness"] / bed["width"] * u * v), on)
    boundary = mesh.boundary_facets()
    mid = mesh.p[:, mesh.facets[:, boundary]].mean(axis=1)
    sides = [mid[0] > HALF - 1e-9, mid[1] > HEIGHT - 1e-9, mid[0] < -HALF + 1e-9, mid[1] < 1e-9]
    for on, (deflection, turning) in zip(sides, case["springs"]):
        if deflection == 0:
            continue
        fw = FacetBasis(mesh, ElementTriP4(), facets=boundary[on], intorder=8)
        fr = FacetBasis(mesh, ElementVector(ElementTriP4()), facets=boundary[on], intorder=8)
        across = lambda u, w: u[0] * w.n[0] + u[1] * w.n[1]
        kww = kww + asm(BilinearForm(lambda u, v, w: deflection * u * v), fw)
        krr = krr + asm(BilinearForm(lambda u, v, w: turning * across(u, w) * across(v, w)), fr)
    f = np.zeros(bw.N + br.N)
    for load in case["loads"]:
        on = Basis(mesh, ElementTriP4(), elements=within(load), intorder=8)
        f[: bw.N] += asm(LinearForm(lambda v, w: load["force"] / (load["width"] * load["height"]) * v), on)
    u = scipy.sparse.linalg.spsolve(scipy.sparse.bmat([[kww, krw.T], [krw, krr]]).tocsc(), f)
    probes = bw.probes(np.array(case["probes"]).T) @ u[: bw.N]
    a = br.interpolate(u[bw.N :]).grad
    k = [a[0, 0], a[1, 1], a[0, 1] + a[1, 0]]
    moments = [s["d11"] * k[0] + s["d12"] * k[1], s["d12"] * k[0] + s["d22"] * k[1], s["d66"] * k[2]]
    x = br.global_coordinates().value
    means = []
    for at in case["windows"]:
        tent = br.dx * np.prod([np.maximum(0, 1 - np.abs(x[i] - at[i]) / WIDTH) for i in (0, 1)], axis=0)
        means.append([float((m * tent).sum() / tent.sum()) for m in moments])
    return probes, np.array(means), len(f)


def bed(y, low, high, width, stiffness):
    return dict(centre=[y, 0.5 * (low + high)], width=width, height=high - low, stiffness=stiffness)


PROBES = [[0.0, HEIGHT], [0.17, 0.41], [-0.45, 0.6], [0.31, 0.08]]
# In the order port, top, starboard, bottom: N/m and N·m a radian, of a metre.
ROUND = [[5e7, 2e4], [0, 0], [5e7, 2e4], [8e7, 3e4]]
BOTTOM = [[0, 0], [0, 0], [0, 0], [3e7, 4e4]]
KNEES = [bed(y, 0.1, 0.6, 0.05, 3e7) for y in (-0.325, 0.325)]
ENGINE = [patch(0.05, 0.6, 0.28, 0.06, -9000), patch(0.05, 0.32, 0.25, 0.05, 12000)]
WASHER = [patch(0.2, 0.45, 0.03, 0.03, 4000)]
CASES = [
    dict(name="solid 40 mm on springs, one patch", stiffness=isotropic(9e9, 0.3, 0.04), springs=ROUND, beds=[],
         loads=[patch(0.13, 0.37, 0.2, 0.12, 5000)], windows=[[0.15, 0.35], [0.0, 0.5], [-0.3, 0.3], [0.1, HEIGHT]]),
    dict(name="plywood on springs and two beds, one engine", stiffness=PLY, springs=ROUND, beds=KNEES,
         loads=ENGINE, windows=[[0.05, 0.6], [0.05, 0.3], [0.3, 0.6], [-0.3, 0.4]]),
    dict(name="sandwich on its bottom and two beds, a washer", stiffness=SANDWICH, springs=BOTTOM, beds=KNEES,
         loads=WASHER, windows=[[0.2, 0.45], [0.35, 0.45], [0.0, 0.1]]),
    dict(name="aluminium 8 mm on springs and a bed under its load", stiffness=isotropic(70e9, 0.33, 0.008), springs=ROUND,
         beds=[bed(0.0, 0.05, 0.4, 0.08, 6e7)], loads=[patch(0.0, 0.42, 0.2, 0.1, 3000)], windows=[[0.0, 0.4], [0.15, 0.4], [0.0, 0.6]]),
]


def main():
    kept = []
    for c in CASES:
        c = {**c, "probes": PROBES}
        rough, rough_means, _ = solve(c, 1.0)
        fine, means, unknowns = solve(c, 1.6)
        doubt = [float(np.abs(a - b).max() / np.abs(a).max()) for a, b in ((fine, rough), (means, rough_means))]
        print(f"{c['name']:55} {unknowns:7} doubt {doubt[0]:.1e} {doubt[1]:.1e}", flush=True)
        kept.append({**c, "deflection": [float(v) for v in fine], "moments": means.tolist(), "doubt": doubt})
    versions = dict(python=sys.version.split()[0], numpy=np.__version__, scipy=scipy.__version__, scikit_fem=skfem.__version__)
    out = pathlib.Path(__file__).with_name("resting.json")
    out.write_text(json.dumps(dict(versions=versions, half=HALF, height=HEIGHT, width=WIDTH, cases=kept), indent=1) + "\n")


if __name__ == "__main__":
    main()
