"""The planing balance of the boats in boats.json by scipy, and the propellers' coefficients and turns; written to results.json.

    python check.py

The balance is solved in four unknowns at once (trim, wetted length, thrust, pressure) from the forces along the water, plumb,
about the centre of gravity, and the lift's own equation: another form of the equations than the program's, which eliminates
them one by one. Equations: Savitsky 1964. Friction: Schoenherr's line by bisection, 0.0004 for roughness.
"""

import csv
import json
import pathlib
import platform

import numpy as np
import scipy
from scipy.optimize import brentq, fsolve

HERE = pathlib.Path(__file__).parent
G = 9.80665
VISCOSITY = {999.1: 1.139e-6, 1026.0: 1.188e-6}


def schoenherr(reynolds):
    return brentq(lambda c: 0.242 / np.sqrt(c) - np.log10(reynolds * c), 1e-4, 0.1, xtol=1e-16, rtol=1e-14)


def lift_at(flat, deadrise):
    return flat - 0.0065 * deadrise * flat**0.6


def forces(boat, tau, lam):
    b, beta, v = boat["beam_m"], boat["deadrise_deg"], boat["speed_m_s"]
    cv = v / np.sqrt(G * b)
    head = 0.5 * boat["density"] * v**2
    flat = tau**1.1 * (0.0120 * np.sqrt(lam) + 0.0055 * lam**2.5 / cv**2)
    carried = head * b**2 * lift_at(flat, beta)
    dynamic = lift_at(0.0120 * tau**1.1 * np.sqrt(lam), beta)
    slowed = np.sqrt(max(1 - dynamic / (lam * np.cos(np.radians(tau))), 0.0))
    reynolds = slowed * v * lam * b / VISCOSITY[boat["density"]]
    friction = head * slowed**2 * lam * b**2 / np.cos(np.radians(beta)) * (schoenherr(reynolds) + 0.0004)
    pressed = 0.75 - 1 / (5.21 * cv**2 / lam**2 + 2.39)
    return carried, friction, pressed * lam * b


def balance(boat):
    weight, b = boat["weight_n"], boat["beam_m"]
    eps = np.radians(boat["thrust_deg"])

    def miss(unknown):
        tau, lam, thrust, pressure = abs(unknown[0]), abs(unknown[1]), unknown[2] * weight, unknown[3] * weight
        t = np.radians(tau)
        carried, friction, centre = forces(boat, tau, lam)
        along = thrust * np.cos(t + eps) - friction * np.cos(t) - pressure * np.sin(t) - boat["drag_n"]
        plumb = pressure * np.cos(t) + thrust * np.sin(t + eps) - friction * np.sin(t) + boat["lift_n"] - weight
        about = (
            pressure * (boat["centre_forward_m"] - centre)
            + friction * (boat["centre_above_m"] - 0.25 * b * np.tan(np.radians(boat["deadrise_deg"])))
            - thrust * boat["below_m"]
            + boat["bow_down_nm"]
        )
        return [along / weight, plumb / weight, about / weight / b, (carried + boat["lift_n"]) / weight - 1]

    for start in ((4, 1.8), (3, 2.5), (6, 1.5), (2, 3), (8, 1.5), (10, 2)):
        found, _, ok, _ = fsolve(miss, [*start, 0.15, 1.0], xtol=1e-13, full_output=True)
        if ok == 1 and max(abs(np.array(miss(found)))) < 1e-11:
            tau, lam = abs(found[0]), abs(found[1])
            if 2 <= tau <= 15 and lam <= 4:
                carried, friction, _ = forces(boat, tau, lam)
                drag = (boat["weight_n"] - boat["lift_n"]) * np.tan(np.radians(tau)) + friction / np.cos(np.radians(tau))
                return {
                    "trim_deg": tau,
                    "wetted": lam,
                    "thrust_n": found[2] * boat["weight_n"],
                    "pressure_n": found[3] * boat["weight_n"],
                    "drag_n": drag,
                }
            return None
    return None


def table():
    lines = [line for line in (HERE / "b_series.csv").read_text().splitlines() if not line.startswith("#")]
    rows = list(csv.DictReader(lines))
    return {of: np.array([[float(row[c]) for c in "Cstuv"] for row in rows if row["of"] == of]) for of in ("KT", "KQ")}


def coefficient(terms, advance, shape):
    return float(terms[:, 0] @ np.power([advance, *shape], terms[:, 1:]).prod(axis=1))


def propeller(series, one):
    shape = one["pitch_ratio"], one["area_ratio"], float(one["blades"])
    thrust, torque = (coefficient(series[of], one["advance"], shape) for of in ("KT", "KQ"))
    d, v = one["diameter_m"], one["speed_m_s"]

    def surplus(turns):
        return coefficient(series["KT"], v / (turns * d), shape) * 1026.0 * turns**2 * d**4 - one["thrust_n"]

    low = v / (d * 1.3 * (one["pitch_ratio"] + 0.15))
    turns = brentq(surplus, low, 400, xtol=1e-13, rtol=1e-14)
    asked = coefficient(series["KQ"], v / (turns * d), shape) * 1026.0 * turns**2 * d**5
    return {
        "name": one["name"],
        "thrust": thrust,
        "torque": torque,
        "efficiency": one["advance"] * thrust / (2 * np.pi * torque),
        "turns": turns,
        "torque_nm": asked,
    }


def main():
    asked = json.loads((HERE / "boats.json").read_text())
    series = table()
    boats = [{"name": boat["name"], "found": balance(boat)} for boat in asked["boats"]]
    propellers = [propeller(series, one) for one in asked["propellers"]]
    print(sum(boat["found"] is not None for boat in boats), "boats of", len(boats), "plane within the method")
    versions = {"numpy": np.__version__, "scipy": scipy.__version__, "python": platform.python_version()}
    text = json.dumps({"versions": versions, "boats": boats, "propellers": propellers}, indent=1)
    (HERE / "results.json").write_text(text + "\n")


if __name__ == "__main__":
    main()
