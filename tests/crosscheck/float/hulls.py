"""Invented hulls for the cross-check, written to hulls.json, which both sides read.

Coordinates are rounded to a tenth of a millimetre, so that the text carries them exactly.
Boat axes: x forward from the transom, y to port, z up; metres. Faces are counter-clockwise from outside.
"""

import json
from pathlib import Path

import numpy as np
import trimesh

HERE = Path(__file__).parent


def lofted(stations):
    """Closes stations [(x, [(half-breadth, height), ...])] into a hull with flat ends and deck."""
    rings = []
    for x, points in stations:
        port = [(x, y, z) for y, z in points]
        starboard = [(x, -y, z) for y, z in reversed(points) if y > 0]
        rings.append(port + starboard)
    n = len(rings[0])
    assert all(len(ring) == n for ring in rings)
    vertices = [p for ring in rings for p in ring]
    faces = []
    for k in range(len(rings) - 1):
        for i in range(n):
            j = (i + 1) % n
            a, b, c, d = k * n + i, k * n + j, (k + 1) * n + j, (k + 1) * n + i
            faces += [[a, b, c], [a, c, d]]
    last = (len(rings) - 1) * n
    for i in range(1, n - 1):
        faces += [[0, i + 1, i], [last, last + i, last + i + 1]]
    return vertices, faces


def section(keel, chine, sheer, beam_chine, beam_sheer):
    return [(0.0, keel), (beam_chine, chine), (beam_sheer, sheer)]


def hull_list():
    deep_v = lofted(
        [
            (0.0, section(0.0, 0.42, 1.0, 1.0, 1.15)),
            (2.5, section(0.0, 0.43, 1.02, 1.0, 1.2)),
            (4.2, section(0.05, 0.5, 1.1, 0.82, 1.12)),
            (5.4, section(0.35, 0.7, 1.2, 0.4, 0.75)),
            (6.0, section(0.8, 0.95, 1.3, 0.08, 0.15)),
        ]
    )
    flat = lofted(
        [
            (0.0, [(0.0, 0.0), (0.6, 0.0), (0.75, 0.25), (0.8, 0.55)]),
            (2.0, [(0.0, 0.02), (0.65, 0.02), (0.8, 0.26), (0.85, 0.55)]),
            (3.5, [(0.0, 0.18), (0.4, 0.2), (0.6, 0.35), (0.65, 0.6)]),
            (4.2, [(0.0, 0.4), (0.1, 0.41), (0.2, 0.5), (0.25, 0.65)]),
        ]
    )
    along = np.linspace(0.0, 9.0, 10)
    wigley = lofted(
        [
            (
                float(x),
                [(0.0, 0.0)]
                + [
                    (float((1 - ((x - 4.5) / 4.6) ** 2) * 1.1 * (1 - (1 - z) ** 2)), float(z))
                    for z in (0.25, 0.5, 0.75, 1.0)
                ]
                + [(float((1 - ((x - 4.5) / 4.6) ** 2) * 1.1), 1.8)],
            )
            for x in along
        ]
    )
    sphere = trimesh.creation.icosphere(subdivisions=2, radius=1.2)
    egg = trimesh.creation.icosphere(subdivisions=2, radius=1.0)
    egg.apply_scale([2.5, 1.0, 0.7])
    cylinder = trimesh.creation.cylinder(radius=0.6, height=4.0, sections=18)
    cylinder.apply_transform(trimesh.transformations.rotation_matrix(np.pi / 2, [0, 1, 0]))
    box = trimesh.creation.box(extents=[5.0, 2.2, 1.1])
    left = trimesh.creation.box(extents=[5.0, 0.5, 0.9])
    left.apply_translation([0.0, 1.0, 0.0])
    right = trimesh.creation.box(extents=[5.0, 0.5, 0.9])
    right.apply_translation([0.0, -1.0, 0.0])
    twin = trimesh.util.concatenate([left, right])
    pairs = {"deep-v": deep_v, "flat-bottomed": flat, "fine": wigley}
    for name, mesh in {
        "sphere": sphere,
        "egg": egg,
        "cylinder": cylinder,
        "box": box,
        "twin-hulled": twin,
    }.items():
        pairs[name] = (mesh.vertices.tolist(), mesh.faces.tolist())
    return pairs


def main():
    random = np.random.default_rng(20240601)
    hulls = []
    for name, (vertices, faces) in hull_list().items():
        vertices = np.round(np.asarray(vertices), 4)
        mesh = trimesh.Trimesh(vertices, faces, process=False)
        assert mesh.is_watertight and mesh.is_winding_consistent and mesh.volume > 0, name
        low, high = mesh.bounds
        middle = (low + high) / 2
        cuts = []
        for _ in range(4):
            trim, heel = random.uniform(-12, 12), random.uniform(-60, 60)
            a, b = np.radians([trim, heel])
            normal = np.array([np.sin(a), np.cos(a) * np.sin(b), np.cos(a) * np.cos(b)])
            reach = np.abs(normal) @ (high - low) / 2
            offset = normal @ middle + random.uniform(-0.5, 0.5) * reach
            cuts.append([round(float(v), 4) for v in (offset, trim, heel)])
        loads = []
        for _ in range(3):
            centroid = mesh.center_mass
            mass = 1025 * mesh.volume * random.uniform(0.2, 0.5)
            centre = [
                centroid[0] + random.uniform(-0.04, 0.04) * (high - low)[0],
                centroid[1] + random.uniform(-0.03, 0.03) * (high - low)[1],
                low[2] + random.uniform(0.1, 0.35) * (high - low)[2],
            ]
            loads.append([round(float(v), 4) for v in (mass, *centre)])
        hulls.append(
            {
                "name": name,
                "vertices": [[float(c) for c in v] for v in vertices],
                "faces": [[int(i) for i in f] for f in faces],
                "cuts": cuts,
                "loads": loads,
            }
        )
    text = {
        "about": "cuts: offset m, trim deg, heel deg; loads: mass kg, centre of gravity m",
        "water_kg_m3": 1025.0,
        "hulls": hulls,
    }
    (HERE / "hulls.json").write_text(json.dumps(text, separators=(",", ":")) + "\n")


if __name__ == "__main__":
    main()
