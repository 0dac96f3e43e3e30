"""Solves transom panels with scikit-fem and keeps the results in panels.json.

An independent way to the same numbers: Reissner-Mindlin plates by the plain displacement method with fourth-degree
triangles for deflection and rotations (at that degree nothing locks at these thicknesses), on meshes built here.
Each panel is solved on two meshes; their difference is kept as the result's own doubt.

    python3 -m venv /tmp/venv-strength && /tmp/venv-strength/bin/pip install -r requirements.txt
    /tmp/venv-strength/bin/python panels.py
"""

import json
import pathlib
import sys

import numpy as np
import scipy
import scipy.sparse.linalg
import skfem
from skfem import Basis, BilinearForm, ElementTriP4, ElementVector, FacetBasis, MeshTri, asm
from skfem.helpers import grad


def isotropic(e, nu, t):
    d = e * t**3 / (12 * (1 - nu**2))
    s = 5 / 6 * e / (2 * (1 + nu)) * t
    return dict(d11=d, d12=nu * d, d22=d, d66=(1 - nu) / 2 * d, s1=s, s2=s)


PLY = dict(d11=52e3, d12=2.5e3, d22=24e3, d66=5e3, s1=9e6, s2=6e6)
SANDWICH = dict(d11=37e3, d12=11e3, d22=37e3, d66=13e3, s1=1.2e6, s2=1.2e6)


def lines(breaks, size, fine, near):
    """Mesh lines through `breaks`, graded: spacing `fine` at the ends named in `near`, growing to `size`."""
    out = [breaks[0]]
    for a, b in zip(breaks[:-1], breaks[1:]):
        left = any(abs(a - n) < 1e-9 for n in near)
        right = any(abs(b - n) < 1e-9 for n in near)
        pts = [0.0]
        length = b - a
        marks = np.array([0.0])
        step = fine if left else size
        forward = [0.0]
        while forward[-1] + step < length:
            forward.append(forward[-1] + step)
            step = min(size, step * 1.7)
        step = fine if right else size
        backward = [0.0]
        while backward[-1] + step < length:
            backward.append(backward[-1] + step)
            step = min(size, step * 1.7)
        if left and right:
            marks = sorted({f for f in forward if f <= length / 2} | {length - f for f in backward if f < length / 2})
        elif right:
            marks = sorted(length - f for f in backward)
        else:
            marks = forward
        pts = [m for m in marks if 0.2 * fine < m < length - 0.2 * fine]
        # A last gap much smaller than its neighbour only costs time.
        out += [a + m for m in pts] + [b]
    return np.array(out)


def build(case, refine):
    """Triangles of the panel: rows follow the V below the cutout's level, level rows above it."""
    b, h, chine, c, zc = (case[k] for k in ("half_width", "height", "chine", "cutout_half", "cutout_z"))
    size, fine = 0.12 / refine, 0.003 / refine
    ys = lines(sorted({-b, -c, 0.0, c, b} | {k["y"] for k in case["knees"]}), size, fine, [-b, -c, c, b] + [k["y"] for k in case["knees"]])
    low = lines([0.0, zc], size, fine, [zc] + ([0.0] if True else []))
    high = lines([zc, h], size, fine, [zc, h])
    zs = np.concatenate([low, high[1:]])
    m = MeshTri.init_tensor(ys, zs)
    centre = m.p[:, m.t].mean(axis=1)
    m = m.remove_elements(np.nonzero((np.abs(centre[0]) < c) & (centre[1] > zc))[0])
    y, z = m.p.copy()
    bottom = chine * np.abs(y) / b
    z = np.where(z < zc, bottom + (zc - bottom) * z / zc, z)
    return MeshTri(np.array([y, z]), m.t)


def plate(s, bw, br):
    """Stiffness of a plate without supports: deflection, rotation and deflection, rotation."""

    @BilinearForm
    def bending(u, v, _):
        a, b = grad(u), grad(v)
        k = [a[0, 0], a[1, 1], a[0, 1] + a[1, 0]]
        q = [b[0, 0], b[1, 1], b[0, 1] + b[1, 0]]
        return (s["d11"] * k[0] + s["d12"] * k[1]) * q[0] + (s["d12"] * k[0] + s["d22"] * k[1]) * q[1] + s["d66"] * k[2] * q[2]

    @BilinearForm
    def shear_rr(u, v, _):
        return s["s1"] * u[0] * v[0] + s["s2"] * u[1] * v[1]

    @BilinearForm
    def shear_wr(u, v, _):
        return s["s1"] * grad(u)[0] * v[0] + s["s2"] * grad(u)[1] * v[1]

    @BilinearForm
    def shear_ww(u, v, _):
        return s["s1"] * grad(u)[0] * grad(v)[0] + s["s2"] * grad(u)[1] * grad(v)[1]

    return asm(shear_ww, bw), asm(shear_wr, bw, br), asm(bending, br) + asm(shear_rr, br)


def solve(case, refine):
    mesh = build(case, refine)
    bw = Basis(mesh, ElementTriP4(), intorder=8)
    br = Basis(mesh, ElementVector(ElementTriP4()), intorder=8)
    kww, krw, krr = plate(case["stiffness"], bw, br)
    nw = bw.N
    held_w, held_r = set(), set()

    def hold(facets, kind):
        dw = bw.get_dofs(facets).all()
        held_w.update(dw)
        if kind == "clamped":
            held_r.update(nw + br.get_dofs(facets).all())
        else:
            a, b = mesh.p[:, mesh.facets[:, facets[0]]].T
            axis = "u^1" if abs(a[1] - b[1]) < 1e-12 else "u^2"
            held_r.update(nw + br.get_dofs(facets).all([axis]))

    outline, kinds = case["outline"], case["edges"]
    boundary = mesh.boundary_facets()
    mid = mesh.p[:, mesh.facets[:, boundary]].mean(axis=1)
    for i, kind in enumerate(kinds):
        if kind == "free":
            continue
        a, b = np.array(outline[i]), np.array(outline[(i + 1) % len(outline)])
        along = (b - a) / np.linalg.norm(b - a)
        off = np.abs(along[0] * (mid[1] - a[1]) - along[1] * (mid[0] - a[0]))
        t = along[0] * (mid[0] - a[0]) + along[1] * (mid[1] - a[1])
        hold(boundary[(off < 1e-9) & (t > 0) & (t < np.linalg.norm(b - a))], kind)
    mid = mesh.p[:, mesh.facets].mean(axis=1)
    for knee in case["knees"]:
        on = np.nonzero((np.abs(mid[0] - knee["y"]) < 1e-9) & (mid[1] < knee["top"] + 1e-9))[0]
        if knee["kind"] == "supported":
            hold(on, "simple")
        else:
            fb = FacetBasis(mesh, ElementTriP4(), facets=on, intorder=8)
            kww = kww + asm(BilinearForm(lambda u, v, w: knee["stiffness"] * u * v), fb)

    f = np.zeros(nw + br.N)
    for load in case["loads"]:
        if "pressure" in load:
            f[:nw] += asm(skfem.LinearForm(lambda v, w: load["pressure"] * v), bw)
        else:
            x, wt = np.polynomial.legendre.leggauss(40)
            y = load["centre"][0] + 0.5 * load["width"] * x
            z = load["centre"][1] + 0.5 * load["height"] * x
            yy, zz = np.meshgrid(y, z)
            weight = 0.25 * np.outer(wt, wt).ravel()
            p = bw.probes(np.array([yy.ravel(), zz.ravel()]))
            f[:nw] += load["force"] * (p.T @ weight)
    k = scipy.sparse.bmat([[kww, krw.T], [krw, krr]]).tocsc()
    free = np.setdiff1d(np.arange(nw + br.N), np.array(sorted(held_w | held_r)))
    u = np.zeros(nw + br.N)
    u[free] = scipy.sparse.linalg.spsolve(k[free][:, free], f[free])
    probes = bw.probes(np.array(case["probes"]).T) @ u[:nw]
    return probes, len(free)


def case(name, stiffness, edges, loads, knees=(), half_width=1.1, height=0.75, chine=0.4, cutout_half=0.35, cutout_z=0.55):
    b, h, c, zc = half_width, height, cutout_half, cutout_z
    outline = [[0, 0], [b, chine], [b, h], [c, h], [c, zc], [-c, zc], [-c, h], [-b, h], [-b, chine]]
    kinds = dict(bottom=0, side=1, top=2, flank=3, sill=4)
    e = [edges.get(k, "free") for k in ("bottom", "side", "top", "flank", "sill", "flank", "top", "side", "bottom")]
    e = edges.get("list", e)
    mid = 0.5 * (cutout_half + half_width)
    return dict(name=name, stiffness=stiffness, outline=outline, edges=e, loads=list(loads), knees=list(knees),
                probes=[[0.0, zc], [0.3 * c, 0.7 * zc], [mid, h], [-mid, 0.5 * (h + chine)]],
                half_width=b, height=h, chine=chine, cutout_half=c, cutout_z=zc)


def patch(y, z, w, h, force):
    return dict(centre=[y, z], width=w, height=h, force=force)


ENGINE = [patch(0, 0.48, 0.33, 0.06, -16000), patch(0, 0.2, 0.28, 0.08, 22000)]
TWIN = [patch(y, z, 0.25, h, f) for y in (-0.36, 0.36) for z, h, f in ((0.45, 0.06, -9000), (0.24, 0.06, 13000))]
P = [dict(pressure=10e3)]
KNEES = [dict(y=y, top=0.55, kind="supported") for y in (-0.5, 0.5)]
SOFT = [dict(y=y, top=0.55, kind="elastic", stiffness=4e6) for y in (-0.5, 0.5)]
WELD = dict(bottom="clamped", side="clamped")
HUNG = dict(bottom="clamped", side="simple")
CASES = [
    case("plywood-like 38 mm, pressure", isotropic(9e9, 0.3, 0.038), WELD, P),
    case("plywood-like 38 mm, one engine", isotropic(9e9, 0.3, 0.038), WELD, ENGINE),
    case("plywood-like 38 mm, twin engines, knees", isotropic(9e9, 0.3, 0.038), WELD, TWIN, KNEES),
    case("orthotropic, one engine", PLY, HUNG, ENGINE),
    case("orthotropic, pressure, springs", PLY, HUNG, P, SOFT),
    case("orthotropic, twin engines, springs", PLY, HUNG, TWIN, SOFT),
    case("sandwich, one engine", SANDWICH, WELD, ENGINE),
    case("sandwich, pressure, knees", SANDWICH, HUNG, P, KNEES),
    case("aluminium 8 mm, pressure", isotropic(70e9, 0.33, 0.008), WELD, P),
    case("aluminium 8 mm, one engine, knees", isotropic(70e9, 0.33, 0.008), WELD, ENGINE, KNEES),
    case("bottom only, deep cutout", isotropic(9e9, 0.3, 0.038), dict(bottom="clamped"), P, cutout_z=0.45),
    case("one side free", PLY, dict(list=["clamped", "clamped", "free", "free", "free", "free", "free", "free", "clamped"]), ENGINE),
    case("sill held", isotropic(9e9, 0.3, 0.038), dict(bottom="clamped", sill="simple"), P),
    case("narrow, shallow V", SANDWICH, WELD, ENGINE, half_width=0.8, chine=0.15, cutout_half=0.3),
]


def main():
    kept = []
    for c in CASES:
        coarse, _ = solve(c, 1.0)
        fine, unknowns = solve(c, 1.6)
        scale = np.abs(fine).max()
        doubt = float(np.abs(fine - coarse).max() / scale)
        print(f"{c['name']:45} {unknowns:7} {fine} doubt {doubt:.1e}", flush=True)
        kept.append({**{k: c[k] for k in ("name", "stiffness", "outline", "edges", "loads", "knees", "probes", "chine", "half_width")},
                     "deflection": [float(v) for v in fine], "doubt": doubt})
    versions = dict(python=sys.version.split()[0], numpy=np.__version__, scipy=scipy.__version__, scikit_fem=skfem.__version__)
    out = pathlib.Path(__file__).with_name("panels.json")
    out.write_text(json.dumps(dict(versions=versions, cases=kept), indent=1) + "\n")


if __name__ == "__main__":
    main()
