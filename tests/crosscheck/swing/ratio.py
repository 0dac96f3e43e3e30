"""How much faster the certified search is than dense sampling at half a degree, both timed in this run.

Runs the benchmark, then samples the twins' scene with python-fcl. Against obstacles every pose is sampled; against the
neighbour, whose own tilt is a third variable, only one in 36 of its tilts, and the time is scaled. One core each.
"""

import json
import re
import subprocess
import sys
import time
from itertools import product
from pathlib import Path

import numpy as np

from common import Scene

HERE = Path(__file__).parent
STEP = np.radians(0.5)
UNITS = {"ns": 1e-9, "µs": 1e-6, "ms": 1e-3, "s": 1.0}
EVERY = 36


def ours():
    run = subprocess.run(["cargo", "bench", "--bench", "swing", "--", "twins_certified"], cwd=HERE.parents[2], capture_output=True, text=True, check=True)
    times = re.findall(r"([\d.]+) (ns|µs|ms|s)\b", run.stdout.split("twins_certified", 1)[1])
    value, unit = times[2]
    return float(value) * UNITS[unit]


def lines(ranges):
    return [np.arange(low, high + 1e-9, STEP) for low, high in ranges]


def sample(case, thin=1):
    scene = Scene(case)
    axes = lines(scene.ranges)
    if len(axes) > 2:
        axes[2] = axes[2][::thin]
    start = time.perf_counter()
    least = min(scene.signed(pose, depth=False) for pose in product(*axes))
    return least, time.perf_counter() - start, int(np.prod([len(a) for a in axes]))


def main():
    seconds = float(sys.argv[1]) if len(sys.argv) > 1 else ours()
    case = json.loads((HERE / "twins.json").read_text())
    least, fixed, poses = sample({**case, "neighbour": None})
    print(f"certified search, median: {1e3 * seconds:.3f} ms")
    print(f"python-fcl, obstacles only: {poses} poses, least {least:.5f} m, {fixed:.2f} s measured: {fixed / seconds:.0f} times as long")
    least, part, poses = sample({**case, "obstacles": []}, EVERY)
    print(f"python-fcl, neighbour, one tilt in {EVERY}: {poses} poses, least {least:.5f} m, {part:.2f} s measured")
    print(f"all measured: {(fixed + part) / seconds:.0f} times as long; the whole range, scaled: {(fixed + EVERY * part) / seconds:.0f} times")


if __name__ == "__main__":
    main()
