"""Least distance of every case by dense sampling with python-fcl, polished by general optimisers.

Writes results.json; with `--compare` it runs again and compares with what is kept instead. Nothing here bounds anything: it only finds small distances, each attained.
"""

import json
import platform
import sys
from importlib.metadata import version
from itertools import product
from multiprocessing import Pool
from pathlib import Path

import numpy as np
from scipy.optimize import direct, minimize

from common import Scene

HERE = Path(__file__).parent
GRID = {2: 31, 3: 13}
STARTS = 14


def solve(case):
    scene = Scene(case)
    n = GRID[len(scene.ranges)]
    lines = [np.linspace(low, high, n if high > low else 1) for low, high in scene.ranges]
    sampled = sorted((scene.signed(pose), pose) for pose in product(*lines))
    best = sampled[0][0]
    low, high = scene.ranges.T
    inside = lambda x: np.clip(x, low, high)
    starts = []
    for value, pose in sampled:
        apart = all(max(abs(np.subtract(pose, s) / np.maximum(high - low, 1e-9))) > 0.12 for s in starts)
        if apart:
            starts.append(pose)
        if len(starts) == STARTS:
            break
    polished, at = best, sampled[0][1]
    for start in starts:
        span = np.maximum((high - low) / n, 1e-6)
        simplex = np.vstack([start, np.asarray(start) + np.diag(np.where(np.asarray(start) + span > high, -span, span))])
        found = minimize(lambda x: scene.signed(inside(x)), start, method="Nelder-Mead",
                         options={"initial_simplex": simplex, "xatol": 1e-6, "fatol": 1e-8, "maxfev": 800})
        if found.fun < polished:
            polished, at = float(found.fun), inside(found.x).tolist()
    moving = high > low
    if moving.any():
        fill = lambda x: np.where(moving, np.interp(np.arange(len(low)), np.flatnonzero(moving), x), low)
        found = direct(lambda x: scene.signed(inside(fill(x))), list(zip(low[moving], high[moving])), maxfun=3000, locally_biased=True)
        if found.fun < polished:
            polished, at = float(found.fun), inside(fill(found.x)).tolist()
    found = minimize(lambda x: scene.signed(inside(x)), at, method="Nelder-Mead",
                     options={"initial_simplex": np.vstack([at, np.asarray(at) + np.diag((high - low) / 40 + 1e-6)]),
                              "xatol": 1e-7, "fatol": 1e-9, "maxfev": 800})
    if found.fun < polished:
        polished, at = float(found.fun), inside(found.x).tolist()
    return {"name": case["name"], "sampling_error": sampling_error(scene, n), "sampled": float(best), "polished": float(polished), "pose": [float(x) for x in at],
            "samples": len(sampled)}


def sampling_error(scene, n):
    """No pose lies nearer than this below the least sample: half a step times the farthest reach, summed."""
    engine = scene.case["engine"]
    points = np.vstack([body.vertices for _, body in scene.own])
    tube, pivot = (np.array(engine[a]["point"]) for a in ("tilt_axis", "steering_axis"))
    from_pivot = np.linalg.norm(points - pivot, axis=1).max()
    from_tube = max(np.linalg.norm(points - tube, axis=1).max(), from_pivot + np.linalg.norm(pivot - tube))
    half = np.diff(scene.ranges, axis=1)[:, 0] / (n - 1) / 2
    reach = np.array([from_tube, from_pivot, from_tube][: len(half)])
    if scene.other:
        reach[1] *= 2
        if scene.tilts == "together":
            reach[0] *= 2
    return float(half @ reach)


def main():
    cases = json.loads((HERE / "cases.json").read_text())
    with Pool(2) as pool:
        results = pool.map(solve, cases, chunksize=1)
    if "--compare" in sys.argv:
        kept = json.loads((HERE / "results.json").read_text())["results"]
        apart = max(abs(new["polished"] - old["polished"]) for new, old in zip(results, kept, strict=True))
        print(f"largest difference from the kept results: {apart:.2e} m")
        sys.exit(apart > 1e-5)
    kept = {
        "versions": {"python": platform.python_version(),
                     **{name: version(name) for name in ("numpy", "scipy", "python-fcl")}},
        "method": f"grid of {GRID[2]} by {GRID[2]} poses, {GRID[3]} a side with a neighbour; Nelder-Mead from {STARTS} of the best; DIRECT over the whole range; Nelder-Mead once more",
        "results": results,
    }
    text = json.dumps(kept, indent=None, separators=(",", ":")).replace('{"name"', '\n{"name"')
    (HERE / "results.json").write_text(text + "\n")


if __name__ == "__main__":
    main()
