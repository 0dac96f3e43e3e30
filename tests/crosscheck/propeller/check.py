"""Thrust and torque coefficients and pull at rest of the engines and propellers in pairs.json, written to results.json.

    python check.py

Coefficients: the polynomials of the Wageningen B-series as numpy's products over the columns of b_series.csv. At rest: the
speed of the engine at which its torque (rated below rated speed, rated power over speed above it, 3 % lost in the gears) is
what the propeller asks, by bisection.
"""

import csv
import json
import pathlib
import platform

import numpy as np

HERE = pathlib.Path(__file__).parent
HORSEPOWER = 550 * 0.3048 * 0.45359237 * 9.80665
INCH = 0.0254
POUND_FORCE = 0.45359237 * 9.80665
SEA_WATER = 1025.0
THROUGH_GEARS = 0.97


def table():
    lines = [line for line in (HERE / "b_series.csv").read_text().splitlines() if not line.startswith("#")]
    rows = list(csv.DictReader(lines))
    return {of: np.array([[float(row[c]) for c in "Cstuv"] for row in rows if row["of"] == of]) for of in ("KT", "KQ")}


def coefficient(terms, advance, pitch_ratio, area_ratio, blades):
    powers = np.power([advance, pitch_ratio, area_ratio, float(blades)], terms[:, 1:])
    return float(terms[:, 0] @ powers.prod(axis=1))


def at_rest(series, pair):
    diameter = pair["diameter_in"] * INCH
    shape = pair["pitch_in"] / pair["diameter_in"], pair["area_ratio"], pair["blades"]
    thrust, torque = (coefficient(series[of], 0.0, *shape) for of in ("KT", "KQ"))
    power, rated = pair["power_hp"] * HORSEPOWER * THROUGH_GEARS, pair["rated_rpm"] / 60

    def surplus(engine):
        turns = engine / pair["gear_ratio"]
        given = power / (2 * np.pi * max(engine, rated)) * pair["gear_ratio"]
        return given - torque * SEA_WATER * turns**2 * diameter**5

    low, high = 0.0, 100 * rated
    while high - low > 1e-14 * rated:
        middle = 0.5 * (low + high)
        if middle in (low, high):
            break
        low, high = (middle, high) if surplus(middle) > 0 else (low, middle)
    turns = low / pair["gear_ratio"]
    return low * 60, thrust * SEA_WATER * turns**2 * diameter**4 / POUND_FORCE


def main():
    series, asked = table(), json.loads((HERE / "pairs.json").read_text())
    results = []
    for pair in asked["pairs"]:
        shape = pair["pitch_in"] / pair["diameter_in"], pair["area_ratio"], pair["blades"]
        rpm, pull = at_rest(series, pair)
        results.append(
            {
                "name": pair["name"],
                "thrust": [coefficient(series["KT"], j, *shape) for j in asked["advances"]],
                "torque": [coefficient(series["KQ"], j, *shape) for j in asked["advances"]],
                "rpm_at_rest": rpm,
                "pull_lbf": pull,
            }
        )
        print(f"{pair['name']}: {rpm:.0f} rpm, {pull:.0f} lbf")
    versions = {"numpy": np.__version__, "python": platform.python_version()}
    (HERE / "results.json").write_text(json.dumps({"versions": versions, "pairs": results}, indent=1) + "\n")


if __name__ == "__main__":
    main()
