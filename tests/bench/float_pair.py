"""Times an equilibrium by trimesh and scipy and by the program on the same mesh, and prints the ratio.

    python tests/bench/float_pair.py        # from the top of the repository; needs the requirements of
                                            # tests/crosscheck/float/requirements.txt

Both start upright and level and are asked for the same balance; the answers must agree to 1e-6. Either side
has its mesh ready; the program's sorting of the triangles, once a hull, is shown apart, and the second ratio
is for a single equilibrium with the sorting in it.
"""

import json
import os
import subprocess
import sys
import time
from pathlib import Path

# One core for both.
for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"
TOP = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(TOP / "tests/crosscheck/float"))

import numpy as np  # noqa: E402
import trimesh  # noqa: E402
from crosscheck import equilibrium  # noqa: E402


def fine_boat(across, along):
    """An invented round-bilged boat of about 4 across x along triangles."""
    vertices, faces = [], []
    xs = np.linspace(0.0, 6.0, along + 1)
    ring = 2 * across
    for x in xs:
        full = 1.15 * (1 - 0.97 * max(0.0, (x - 2.0) / 4.0) ** 2.2)
        keel = 0.7 * max(0.0, (x - 3.0) / 3.0) ** 2.5
        sheer = 1.0 + 0.25 * (x / 6.0) ** 2
        angles = np.linspace(-np.pi / 2, np.pi / 2, ring + 1)
        y = full * np.sin(angles)
        z = sheer - (sheer - keel) * np.cos(angles) ** 0.7
        z[0] = z[-1] = sheer
        vertices += [(x, float(-b), float(c)) for b, c in zip(y, z)]
    n = ring + 1
    for k in range(along):
        for i in range(n):
            j = (i + 1) % n
            a, b, c, d = k * n + i, k * n + j, (k + 1) * n + j, (k + 1) * n + i
            faces += [[a, c, b], [a, d, c]]
    last = along * n
    for i in range(1, n - 1):
        faces += [[0, i, i + 1], [last, last + i + 1, last + i]]
    mesh = trimesh.Trimesh(np.round(vertices, 5), faces, process=False)
    if mesh.volume < 0:
        mesh.invert()
    assert mesh.is_watertight and mesh.is_winding_consistent
    return mesh


def main():
    build = ["cargo", "build", "--release", "--quiet", "--example", "float_timing"]
    subprocess.run(build, cwd=TOP, check=True)
    target = Path(os.environ.get("CARGO_TARGET_DIR", TOP / "target"))
    program = target / "release/examples/float_timing"
    water, mass, centre = 1025.0, 1150.0, [2.2, 0.03, 0.5]
    print("triangles  program   sorting   trimesh+scipy  ratio  with sorting  largest difference")
    for across, along in [(18, 17), (25, 49), (50, 99)]:
        mesh = fine_boat(across, along)
        given = {
            "vertices": mesh.vertices.tolist(),
            "faces": mesh.faces.tolist(),
            "mass": mass,
            "centre": centre,
            "water": water,
        }
        run = subprocess.run(
            [program], input=json.dumps(given), capture_output=True, text=True, check=True
        )
        ours = json.loads(run.stdout)
        times = []
        for _ in range(3):
            start = time.perf_counter()
            theirs = equilibrium(mesh, water, mass, centre)
            times.append(time.perf_counter() - start)
        seconds = sorted(times)[1]
        difference = max(
            np.abs(np.subtract(ours["normal"], theirs["normal"])).max(),
            abs(ours["offset"] - theirs["offset"]) / (mesh.scale / 2),
        )
        own = ours["nanoseconds"] * 1e-9
        sorting = ours["sorting_nanoseconds"] * 1e-9
        print(
            f"{len(mesh.faces):9d}  {own * 1e6:6.1f} us  {sorting * 1e6:5.0f} us  {seconds * 1e3:10.1f} ms"
            f"  {seconds / own:5.0f}  {seconds / (own + sorting):12.0f}  {difference:.1e}"
        )
        if difference > 1e-6:
            sys.exit("the answers differ")


if __name__ == "__main__":
    main()
