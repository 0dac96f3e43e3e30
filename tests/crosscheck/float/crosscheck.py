"""Cuts and equilibria of the hulls in hulls.json by trimesh, numpy and scipy, written to results.json.

    python hulls.py && python crosscheck.py          # writes results.json
    python crosscheck.py --check                     # compares with the kept one, fails on a difference

The way is another one than the program's: trimesh slices the mesh and caps it by triangulating the
section, volume and centroid come from the capped mesh, moments of the waterplane from the cap's triangles,
and a general root finder of scipy looks for the balance of weight and buoyancy.
"""

import argparse
import importlib.metadata
import json
import platform
import sys
from pathlib import Path

import numpy as np
import scipy.optimize
import trimesh

HERE = Path(__file__).parent


def normal_of(trim, heel):
    return np.array([np.sin(trim), np.cos(trim) * np.sin(heel), np.cos(trim) * np.cos(heel)])


def under_water(mesh, offset, normal):
    """The capped part of the mesh under the plane normal . x = offset."""
    return trimesh.intersections.slice_mesh_plane(
        mesh, plane_normal=-normal, plane_origin=normal * offset, cap=True
    )


def face_moments(part, offset, normal):
    """Area, centroid and second moments (forward, athwart, product) of the cap about its centroid."""
    corners = part.triangles
    flat = np.all(np.abs(corners @ normal - offset) < 1e-9, axis=1)
    corners = corners[flat]
    forward = np.array([1.0, 0, 0]) - normal * normal[0]
    forward /= np.linalg.norm(forward)
    port = np.cross(normal, forward)
    areas = 0.5 * np.linalg.norm(
        np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]), axis=1
    )
    area = areas.sum()
    centroid = (areas[:, None] * corners.mean(axis=1)).sum(axis=0) / area
    uv = np.stack([(corners - centroid) @ forward, (corners - centroid) @ port], axis=-1)
    total = uv.sum(axis=1)
    # Integral of x_i x_j over a triangle: A/12 (sum over corners of x_i x_j + sum_i sum_j).
    second = np.einsum("t,tki,tkj->ij", areas / 12, uv, uv)
    second += np.einsum("t,ti,tj->ij", areas / 12, total, total)
    return area, centroid, second, flat


def properties(mesh, offset, normal):
    part = under_water(mesh, offset, normal)
    area, centroid, second, flat = face_moments(part, offset, normal)
    return {
        "volume": float(part.volume),
        "centre": part.center_mass.tolist(),
        "area": float(area),
        "area_centre": centroid.tolist(),
        "second_longitudinal": float(second[0, 0]),
        "second_transverse": float(second[1, 1]),
        "product": float(second[0, 1]),
        "wetted": float(part.area_faces[~flat].sum()),
    }


def balance(mesh, water, mass, centre, scale):
    """Want of balance at (offset, trim, heel): force and two levers."""

    def want(unknowns):
        offset, trim, heel = unknowns
        normal = normal_of(trim, heel)
        part = under_water(mesh, offset * scale, normal)
        if len(part.faces) == 0:
            return [-1.0, 0.0, 0.0]
        forward = np.array([1.0, 0, 0]) - normal * normal[0]
        forward /= np.linalg.norm(forward)
        lever = centre - part.center_mass
        port = np.cross(normal, forward)
        return [water * part.volume / mass - 1, lever @ forward / scale, lever @ port / scale]

    return want


def equilibrium(mesh, water, mass, centre):
    scale = mesh.scale / 2
    centre = np.asarray(centre)
    low, high = mesh.bounds
    depth = scipy.optimize.brentq(
        lambda z: water * under_water(mesh, z, np.array([0, 0, 1.0])).volume - mass,
        low[2] + 1e-6,
        high[2] - 1e-6,
    )
    found = scipy.optimize.root(
        balance(mesh, water, mass, centre, scale), [depth / scale, 0.0, 0.0], tol=1e-13
    )
    offset, trim, heel = found.x
    offset *= scale
    normal = normal_of(trim, heel)
    at = properties(mesh, offset, normal)
    rise = normal @ (centre - np.asarray(at["centre"]))
    return {
        "residual": float(np.abs(found.fun).max()),
        "offset": float(offset),
        "normal": normal.tolist(),
        "centre": at["centre"],
        "gm_transverse": at["second_transverse"] / at["volume"] - rise,
        "gm_longitudinal": at["second_longitudinal"] / at["volume"] - rise,
    }


def compute():
    text = json.loads((HERE / "hulls.json").read_text())
    water = text["water_kg_m3"]
    hulls = []
    for hull in text["hulls"]:
        mesh = trimesh.Trimesh(hull["vertices"], hull["faces"], process=False)
        cuts = [
            properties(mesh, offset, normal_of(*np.radians([trim, heel])))
            for offset, trim, heel in hull["cuts"]
        ]
        rests = [equilibrium(mesh, water, mass, centre) for mass, *centre in hull["loads"]]
        hulls.append({"name": hull["name"], "cuts": cuts, "equilibria": rests})
    names = ["numpy", "scipy", "trimesh", "shapely", "mapbox_earcut"]
    versions = {name: importlib.metadata.version(name) for name in names}
    versions["python"] = platform.python_version()
    return {"versions": versions, "hulls": hulls}


def largest_difference(one, other):
    if isinstance(one, dict):
        return max(largest_difference(one[k], other[k]) for k in one if k != "residual")
    if isinstance(one, list):
        return max(largest_difference(a, b) for a, b in zip(one, other, strict=True))
    if isinstance(one, str):
        return 0.0 if one == other else float("inf")
    return abs(one - other) / max(1.0, abs(one))


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--check", action="store_true", help="compare with the kept results")
    results = compute()
    path = HERE / "results.json"
    if parser.parse_args().check:
        kept = json.loads(path.read_text())
        difference = largest_difference(kept["hulls"], results["hulls"])
        print(f"largest difference from the kept results: {difference:.2e}")
        sys.exit(difference > 1e-8)
    path.write_text(json.dumps(results, indent=1) + "\n")
    worst = max(e["residual"] for hull in results["hulls"] for e in hull["equilibria"])
    print(f"largest residual of the root finder: {worst:.2e}")


if __name__ == "__main__":
    main()
