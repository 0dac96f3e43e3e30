"""Times the skiff's transom in Rust and a plate of the same mesh in scikit-fem, in one run, and prints the ratio.

The Python side solves the thin plate with Morley's triangle, scikit-fem's usual plate element with about as many
unknowns as DKMT has on a mesh, and scipy's sparse solver: only once, on the finest mesh, assembly included. The Rust
side's time covers all of its meshes, loads, error estimates, reactions and stresses.

    cargo bench --bench strength --no-run && /tmp/venv-strength/bin/python speed.py
"""

import json
import pathlib
import subprocess
import tempfile
import time

import numpy as np
import scipy.sparse.linalg
from skfem import Basis, BilinearForm, ElementTriMorley, LinearForm, MeshTri, asm, condense
from skfem.helpers import dd, ddot, eye, trace

root = pathlib.Path(__file__).resolve().parents[3]
with tempfile.TemporaryDirectory() as folder:
    out = pathlib.Path(folder) / "mesh.json"
    subprocess.run(["cargo", "bench", "--quiet", "--bench", "strength", "--", "--mesh", str(out)], cwd=root, check=True)
    ours = json.loads(out.read_text())

mesh = MeshTri(np.array(ours["nodes"]).T, np.array(ours["triangles"]).T)


@BilinearForm
def plate(u, v, _):
    c = dd(u)
    return ddot(30e3 * (0.7 * c + 0.3 * eye(trace(c), 2)), dd(v))


@LinearForm
def load(v, _):
    return 1e4 * v


def solve():
    basis = Basis(mesh, ElementTriMorley(), intorder=2)
    k, f = asm(plate, basis), asm(load, basis)
    system = condense(k, f, D=basis.get_dofs())
    return scipy.sparse.linalg.spsolve(system[0].tocsc(), system[1]), basis.N


best = min((lambda t: (solve(), time.perf_counter() - t)[1])(time.perf_counter()) for _ in range(7))
print(f"levels (unknowns, deflection): {ours['levels']}, stated error {ours['error']:.4f}")
print(f"mesh: {mesh.p.shape[1]} nodes, {mesh.t.shape[1]} triangles; scikit-fem unknowns {solve()[1]}")
print(f"sternknee to 0.5 %, all meshes: {1e3 * ours['seconds']:.1f} ms (best of 30)")
print(f"scikit-fem and scipy, finest mesh once: {1e3 * best:.1f} ms (best of 7)")
print(f"ratio: {best / ours['seconds']:.1f}")
