"""Writes the scenes that both sides read: cases.json (random, fixed seed) and twins.json (the benchmark).

All invented. Metres and radians, boat axes (x forward, y to port, z up), reference pose.
"""

import json
from pathlib import Path

import numpy as np

HERE = Path(__file__).parent
SEED = 20261124
CASES = 220


def box(centre, half, turn=None):
    turn = np.eye(3) if turn is None else turn
    signs = np.array([[x, y, z] for x in (-1, 1) for y in (-1, 1) for z in (-1, 1)])
    return np.asarray(centre) + (signs * half) @ turn.T


def between(low, high):
    low, high = np.asarray(low, float), np.asarray(high, float)
    return box((low + high) / 2, (high - low) / 2)


def rotation(rng):
    q = rng.normal(size=4)
    w, x, y, z = q / np.linalg.norm(q)
    return np.array(
        [
            [1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w)],
            [2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w)],
            [2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y)],
        ]
    )


def body(part, name, points):
    return {"part": part, "name": name, "points": np.round(points, 5).tolist()}


def random_engine(rng):
    tube = np.array([rng.uniform(-0.06, 0.05), 0.0, rng.uniform(0.58, 0.70)])
    pivot = np.array([rng.uniform(-0.20, -0.12), 0.0, 0.5])
    cowl_half = rng.uniform([0.20, 0.15, 0.18], [0.38, 0.28, 0.30])
    cowl = np.array([pivot[0] - rng.uniform(0.0, 0.2), 0.0, 0.78 + cowl_half[2]])
    leg = box([pivot[0] - 0.12, 0, 0.35], [0.10, 0.07, 0.48])
    foot = np.array([pivot[0] - 0.12, 0.0, -0.25])
    gearcase = foot + rng.normal(size=(9, 3)) * [0.18, 0.06, 0.12]
    swivel = np.vstack([box(tube, [0.04, 0.10, 0.04]), box([pivot[0], 0, 0.4], [0.05, 0.08, 0.2])])
    return {
        "tilt_axis": {"point": np.round(tube, 5).tolist(), "direction": [rng.uniform(-0.02, 0.02), 1.0, rng.uniform(-0.02, 0.02)]},
        "steering_axis": {"point": np.round(pivot, 5).tolist(), "direction": [rng.uniform(-0.15, 0.15), 0.0, 1.0]},
        "bodies": [
            body("swivel", "swivel", swivel),
            body("head", "cowl", box(cowl, cowl_half)),
            body("head", "leg", leg),
            body("head", "gearcase", gearcase),
        ],
    }


def random_obstacle(rng, i):
    if i % 3 == 2:
        middle = rng.uniform([0.2, -0.9, -0.2], [1.2, 0.9, 1.5])
        points = middle + rng.normal(size=(10, 3)) * rng.uniform(0.05, 0.15)
    else:
        side = rng.uniform([0.35, -1.0, 0.1], [1.5, 1.0, 1.6])
        points = box(side, rng.uniform(0.02, 0.25, 3), rotation(rng))
    return {"name": f"obstacle {i + 1}", "points": np.round(points, 5).tolist()}


def random_case(rng, number):
    case = {
        "name": f"case {number}",
        "tilt": np.radians([rng.uniform(-8, 0), rng.uniform(35, 78)]).tolist(),
        "steer": np.radians([-rng.uniform(15, 40), rng.uniform(15, 40)]).tolist(),
        "engine": random_engine(rng),
        "obstacles": [random_obstacle(rng, i) for i in range(rng.integers(2, 5))],
        "neighbour": None,
    }
    if number % 4 == 0:
        aside = [rng.uniform(-0.03, 0.03), rng.choice([-1, 1]) * rng.uniform(0.62, 1.0), rng.uniform(-0.03, 0.03)]
        kind = number // 4 % 3
        tilt = ["together", np.radians([rng.uniform(-5, 0), rng.uniform(20, 70)]).tolist(), [0.0, 0.0]][kind]
        case["neighbour"] = {"shift": aside, "tilt": tilt}
    return case


def twins():
    """A skiff's twins on a bracket: invented, of usual size."""
    skeg = np.array([[-0.15, y, -0.25] for y in (-0.01, 0.01)] + [[-0.42, y, -0.25] for y in (-0.01, 0.01)]
                    + [[-0.40, y, -0.42] for y in (-0.01, 0.01)] + [[-0.30, y, -0.42] for y in (-0.01, 0.01)])
    turns = np.arange(12) * np.pi / 6 + np.pi / 12
    disc = np.array([[x, 0.2 * np.cos(t), -0.17 + 0.2 * np.sin(t)] for x in (-0.62, -0.50) for t in turns])
    engine = {
        "tilt_axis": {"point": [0.0, 0.0, 0.70], "direction": [0.0, 1.0, 0.0]},
        "steering_axis": {"point": [-0.12, 0.0, 0.4], "direction": [0.0, 0.0, 1.0]},
        "bodies": [
            body("swivel", "swivel", np.vstack([between([-0.04, -0.10, 0.66], [0.04, 0.10, 0.74]), between([-0.17, -0.08, 0.25], [-0.07, 0.08, 0.62])])),
            body("head", "powerhead cowl, forward edge", between([-0.20, -0.26, 0.82], [0.06, 0.26, 1.38])),
            body("head", "powerhead cowl, after part", between([-0.66, -0.26, 0.82], [-0.20, 0.26, 1.38])),
            body("head", "leg", between([-0.40, -0.09, 0.02], [-0.18, 0.09, 0.82])),
            body("head", "propeller", disc),
            body("head", "skeg", skeg),
        ],
    }
    for part in engine["bodies"]:
        part["points"] = (np.array(part["points"]) + [-0.60, -0.44, 0.0]).round(5).tolist()
    for axis in ("tilt_axis", "steering_axis"):
        point = engine[axis]["point"]
        engine[axis]["point"] = [point[0] - 0.60, point[1] - 0.44, point[2]]
    wall = lambda name, low, high: {"name": name, "points": between(low, high).tolist()}
    return {
        "name": "twins",
        "tilt": np.radians([-4.0, 68.0]).tolist(),
        "steer": np.radians([-30.0, 30.0]).tolist(),
        "engine": engine,
        "obstacles": [
            wall("bracket deck", [-0.56, -0.9, 0.30], [0.0, 0.9, 0.36]),
            wall("transom", [0.0, -1.2, 0.0], [0.06, 1.2, 0.62]),
            wall("well forward wall", [0.11, -0.9, 0.4], [0.14, 0.9, 0.82]),
            wall("port side", [-0.30, 1.10, 0.3], [0.6, 1.15, 1.1]),
            wall("starboard side", [-0.30, -1.15, 0.3], [0.6, -1.10, 1.1]),
            wall("hatch", [0.12, -0.4, 0.98], [1.0, 0.4, 1.04]),
            wall("ladder", [-0.50, 0.95, -0.3], [0.0, 1.05, 0.9]),
            wall("swim platform", [-0.80, -1.2, 0.28], [0.0, -0.88, 0.33]),
        ],
        "neighbour": {"shift": [0.0, 0.88, 0.0], "tilt": np.radians([-4.0, 68.0]).tolist()},
    }


def main():
    rng = np.random.default_rng(SEED)
    cases = [random_case(rng, number) for number in range(CASES)]
    (HERE / "cases.json").write_text("[\n" + ",\n".join(json.dumps(c, separators=(",", ":")) for c in cases) + "\n]\n")
    (HERE / "twins.json").write_text(json.dumps(twins(), separators=(",", ":")) + "\n")


if __name__ == "__main__":
    main()
