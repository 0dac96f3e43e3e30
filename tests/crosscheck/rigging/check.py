"""Friction factors, linkages, backbones and trailers of cases.json by general methods, written to results.json.

    python check.py

Colebrook's formula by a bracketing root finder; the four-bar linkage by a general root finder on the length of the bar;
the backbone as a network of resistors, its matrix of conductances solved for the voltages; the coupling by the two
equations of balance.
"""

import importlib.metadata
import json
import math
import pathlib
import platform

import numpy as np
from scipy.optimize import brentq

HERE = pathlib.Path(__file__).parent
LAMINAR, TURBULENT = 2300.0, 4000.0


def colebrook(reynolds, roughness):
    def miss(f):
        return 1 / math.sqrt(f) + 2 * math.log10(roughness / 3.7 + 2.51 / (reynolds * math.sqrt(f)))

    return brentq(miss, 1e-4, 1.0, xtol=1e-15, rtol=1e-14)


def friction(reynolds, roughness):
    if reynolds <= LAMINAR:
        return 64 / reynolds
    if reynolds >= TURBULENT:
        return colebrook(reynolds, roughness)
    low, high = 64 / LAMINAR, colebrook(TURBULENT, roughness)
    return low + (reynolds - LAMINAR) / (TURBULENT - LAMINAR) * (high - low)


def follows(linkage, port):
    spread, arm, splay, bar = (linkage[key] for key in ("spread", "arm", "splay", "bar"))
    pin = np.array([spread / 2 + arm * math.sin(port - splay), arm * math.cos(port - splay)])

    def miss(starboard):
        other = np.array([-spread / 2 + arm * math.sin(starboard + splay), arm * math.cos(starboard + splay)])
        return float(np.hypot(*(pin - other)) - bar)

    return brentq(miss, port - 0.6, port + 0.6, xtol=1e-14, rtol=1e-14)


def losses(backbone):
    """Nodal analysis: the current's return doubles every resistance."""
    loads = backbone["loads"]
    places = sorted({backbone["power_at"], *(load["at"] for load in loads)})
    index = {place: i for i, place in enumerate(places)}
    n = len(places)
    conductance, flow = np.zeros((n, n)), np.zeros(n)
    for a, b in zip(places, places[1:]):
        g = 1 / (2 * backbone["per_metre"] * (b - a))
        i, j = index[a], index[b]
        conductance[i, i] += g
        conductance[j, j] += g
        conductance[i, j] -= g
        conductance[j, i] -= g
    for load in loads:
        flow[index[load["at"]]] -= load["current"]
    feed = index[backbone["power_at"]]
    conductance[feed, :] = 0
    conductance[feed, feed] = 1
    flow[feed] = 0
    voltage = np.linalg.solve(conductance, flow)
    return [
        float(-voltage[index[load["at"]]] + 2 * backbone["drop_per_metre"] * load["drop"] * load["current"]) for load in loads
    ]


def coupling(trailer):
    weights = [weight["kg"] for weight in trailer["weights"]]
    places = [weight["forward"] for weight in trailer["weights"]]
    hitch = trailer["axle"] + trailer["coupling"]
    balance = np.array([[1.0, 1.0], [trailer["axle"], hitch]])
    _, at_coupling = np.linalg.solve(balance, [sum(weights), float(np.dot(weights, places))])
    return float(at_coupling)


def main():
    cases = json.loads((HERE / "cases.json").read_text())
    results = {
        "versions": {
            "numpy": importlib.metadata.version("numpy"),
            "scipy": importlib.metadata.version("scipy"),
            "python": platform.python_version(),
        },
        "friction": [friction(pipe["reynolds"], pipe["roughness"]) for pipe in cases["pipes"]],
        "starboard": [[follows(linkage, port) for port in linkage["port"]] for linkage in cases["linkages"]],
        "lost": [losses(backbone) for backbone in cases["backbones"]],
        "coupling": [coupling(trailer) for trailer in cases["trailers"]],
    }
    (HERE / "results.json").write_text(json.dumps(results, indent=1) + "\n")


if __name__ == "__main__":
    main()
