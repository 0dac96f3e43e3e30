"""Times the skiff's transom in Rust and a plate of the same mesh in scikit-fem, in one run, and prints the ratio.

The Python side solves a Reissner-Mindlin plate with quadratic triangles, as many unknowns as the Rust side has on that
mesh, and scipy's sparse solver: only once, on the finest mesh, assembly included. The Rust side's time covers all
of its meshes, loads, error estimates, reactions and stresses.

    cargo bench --bench strength --no-run && /tmp/venv-strength/bin/python speed.py
"""

import json
import pathlib
import subprocess
import tempfile
import time

import numpy as np
import scipy.sparse.linalg
import scipy.sparse
from skfem import Basis, BilinearForm, ElementTriP2, ElementVector, LinearForm, MeshTri, asm
from skfem.helpers import grad

root = pathlib.Path(__file__).resolve().parents[3]
with tempfile.TemporaryDirectory() as folder:
    out = pathlib.Path(folder) / "mesh.json"
    subprocess.run(["cargo", "bench", "--quiet", "--bench", "strength", "--", "--mesh", str(out)], cwd=root, check=True)
    ours = json.loads(out.read_text())


def mesh_of(part):
    return MeshTri(np.array(part["nodes"]).T, np.array(part["triangles"]).T)


mesh = mesh_of(ours)
D, NU, S = 30e3, 0.3, 9e6


@BilinearForm
def bending(u, v, _):
    a, b = grad(u), grad(v)
    twist = (a[0, 1] + a[1, 0]) * (b[0, 1] + b[1, 0])
    return D * (a[0, 0] * b[0, 0] + a[1, 1] * b[1, 1] + NU * (a[0, 0] * b[1, 1] + a[1, 1] * b[0, 0]) + 0.5 * (1 - NU) * twist) + S * (
        u[0] * v[0] + u[1] * v[1])


@BilinearForm
def mixed(u, v, _):
    return S * (grad(u)[0] * v[0] + grad(u)[1] * v[1])


@BilinearForm
def shear(u, v, _):
    return S * (grad(u)[0] * grad(v)[0] + grad(u)[1] * grad(v)[1])


@LinearForm
def load(v, _):
    return 1e4 * v


def equations(mesh):
    """Stiffness of the free unknowns, the load on them, and their number."""
    w = Basis(mesh, ElementTriP2(), intorder=4)
    r = Basis(mesh, ElementVector(ElementTriP2()), intorder=4)
    rw = asm(mixed, w, r)
    k = scipy.sparse.bmat([[asm(shear, w), rw.T], [rw, asm(bending, r)]]).tocsc()
    f = np.concatenate([asm(load, w), np.zeros(r.N)])
    held = np.concatenate([w.get_dofs().all(), w.N + r.get_dofs().all()])
    free = np.setdiff1d(np.arange(k.shape[0]), held)
    return k[free][:, free], f[free], len(free)


def solve():
    k, f, unknowns = equations(mesh)
    return scipy.sparse.linalg.spsolve(k, f), unknowns


def fifty(part):
    """Seconds to factor, and to solve for all."""
    start = time.perf_counter()
    k, f, unknowns = equations(mesh_of(part))
    factor = scipy.sparse.linalg.splu(k)
    factored = time.perf_counter()
    for engine in range(part["engines"]):
        factor.solve(np.outer(f, 1 + engine + np.arange(part["cases"])))
    return factored - start, time.perf_counter() - factored, unknowns


best = min((lambda t: (solve(), time.perf_counter() - t)[1])(time.perf_counter()) for _ in range(7))
print(f"levels (unknowns, deflection): {ours['levels']}, stated error {ours['error']:.4f}")
print(f"mesh: {mesh.p.shape[1]} nodes, {mesh.t.shape[1]} triangles; scikit-fem unknowns {solve()[1]}")
print(f"sternknee to 0.5 %, all meshes: {1e3 * ours['seconds']:.1f} ms (best of 30)")
print(f"scikit-fem and scipy, finest mesh once: {1e3 * best:.1f} ms (best of 7)")
print(f"ratio: {best / ours['seconds']:.1f}")

part = ours["engines"]
first, then, unknowns = min((fifty(part) for _ in range(5)), key=lambda run: run[0] + run[1])
print(f"{part['engines']} engines of {part['cases']} cases on one transom: {len(part['triangles'])} triangles, unknowns {part['unknowns']} and {unknowns}")
print(f"sternknee: {part['seconds']:.3f} s (best of 10)")
print(f"scikit-fem and scipy: {first:.3f} s to factor and {then:.3f} s to solve (best of 5)")
print(f"ratio: {(first + then) / part['seconds']:.1f}")
