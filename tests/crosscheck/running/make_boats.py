"""Thirty invented boats and twelve propellers, with seed; written to boats.json.

    python make_boats.py
"""

import json
import pathlib
import random

HERE = pathlib.Path(__file__).parent


def boat(rng, number):
    beam = rng.uniform(1.1, 4.5)
    weight = 9.80665 * rng.uniform(70, 160) * beam**3 * rng.uniform(1.0, 1.8)
    return {
        "name": f"boat {number}",
        "beam_m": round(beam, 3),
        "deadrise_deg": round(rng.uniform(0, 24), 1),
        "weight_n": round(weight, 1),
        "centre_forward_m": round(beam * rng.uniform(0.9, 1.6), 3),
        "centre_above_m": round(beam * rng.uniform(0.2, 0.4), 3),
        "thrust_deg": round(rng.uniform(-10, 6), 1),
        "below_m": round(rng.uniform(-0.1, 0.9), 3),
        "speed_m_s": round((9.80665 * beam) ** 0.5 * rng.uniform(1.0, 3.8), 3),
        "density": rng.choice([999.1, 1026.0]),
        "drag_n": round(weight * rng.uniform(0, 0.02), 1),
        "lift_n": round(weight * rng.choice([0.0, rng.uniform(0, 0.05)]), 1),
        "bow_down_nm": round(weight * beam * rng.uniform(-0.01, 0.03), 1),
    }


def propeller(rng, number):
    diameter = rng.uniform(0.2, 0.45)
    speed = rng.uniform(3, 25)
    return {
        "name": f"propeller {number}",
        "blades": rng.choice([3, 4, 5]),
        "area_ratio": round(rng.uniform(0.4, 0.8), 2),
        "pitch_ratio": round(rng.uniform(0.6, 1.4), 2),
        "diameter_m": round(diameter, 3),
        "speed_m_s": round(speed, 2),
        "thrust_n": round(rng.uniform(0.02, 0.4) * 1026 * (speed * diameter) ** 2, 1),
        "reynolds": rng.choice([2e6, 4e6, 8e6, 3e7]),
        "advance": round(rng.uniform(0.1, 0.9), 2),
    }


def main():
    rng = random.Random(14)
    asked = {
        "boats": [boat(rng, i + 1) for i in range(60)],
        "propellers": [propeller(rng, i + 1) for i in range(12)],
    }
    (HERE / "boats.json").write_text(json.dumps(asked, indent=1) + "\n")


if __name__ == "__main__":
    main()
