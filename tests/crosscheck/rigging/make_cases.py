"""Random pipes, linkages, backbones and trailers, written to cases.json. Run once; the file is kept."""

import json
import pathlib

import numpy as np

HERE = pathlib.Path(__file__).parent


def main():
    rng = np.random.default_rng(15)
    pipes = [{"reynolds": float(10 ** rng.uniform(2, 6.5)), "roughness": float(rng.choice([0, 1e-6, 1e-4, 1e-3, 1e-2, 5e-2]))} for _ in range(60)]
    linkages = []
    for _ in range(40):
        spread, arm, splay = rng.uniform(0.5, 1.1), rng.uniform(0.12, 0.28), rng.uniform(-0.15, 0.15)
        bar = spread - 2 * arm * np.sin(splay) + rng.uniform(-0.015, 0.015)
        linkages.append({"spread": spread, "arm": arm, "splay": splay, "bar": bar, "port": list(rng.uniform(-0.6, 0.6, 4))})
    backbones = []
    for _ in range(20):
        length = rng.uniform(3, 40)
        count = int(rng.integers(1, 9))
        loads = [{"at": float(rng.uniform(0, length)), "current": float(rng.uniform(0.05, 1)), "drop": float(rng.uniform(0, 6))} for _ in range(count)]
        backbones.append({"power_at": float(rng.uniform(0, length)), "per_metre": 0.053, "drop_per_metre": 0.06, "loads": loads})
    trailers = []
    for _ in range(20):
        count = int(rng.integers(2, 7))
        weights = [{"kg": float(rng.uniform(20, 2500)), "forward": float(rng.uniform(-1, 6))} for _ in range(count)]
        trailers.append({"weights": weights, "axle": float(rng.uniform(0.5, 3)), "coupling": float(rng.uniform(3, 8))})
    text = json.dumps({"pipes": pipes, "linkages": linkages, "backbones": backbones, "trailers": trailers}, indent=1)
    (HERE / "cases.json").write_text(text + "\n")


if __name__ == "__main__":
    main()
