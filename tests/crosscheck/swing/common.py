"""The scene in numpy and python-fcl: the same kinematics, written a second time."""

import fcl
import numpy as np
from scipy.spatial import ConvexHull


def axis_turn(direction, angle):
    u = np.asarray(direction, float)
    u = u / np.linalg.norm(u)
    k = np.array([[0, -u[2], u[1]], [u[2], 0, -u[0]], [-u[1], u[0], 0]])
    return np.eye(3) + np.sin(angle) * k + (1 - np.cos(angle)) * (k @ k)


def carried(engine, shift, part, tilt, steer):
    """Turn and displacement of a part about the (shifted) axes."""
    tube = np.array(engine["tilt_axis"]["point"]) + shift
    pivot = np.array(engine["steering_axis"]["point"]) + shift
    lift = axis_turn(engine["tilt_axis"]["direction"], tilt)
    turn = axis_turn(engine["steering_axis"]["direction"], steer) if part == "head" else np.eye(3)
    whole = lift @ turn
    return whole, tube + lift @ (pivot - turn @ pivot - tube)


class Body:
    def __init__(self, points):
        self.points = np.asarray(points, float)
        hull = ConvexHull(self.points)
        self.vertices = self.points[hull.vertices]
        index = {old: new for new, old in enumerate(hull.vertices)}
        faces, normals = [], []
        for simplex, equation in zip(hull.simplices, hull.equations):
            a, b, c = (self.points[i] for i in simplex)
            order = simplex if np.dot(np.cross(b - a, c - a), equation[:3]) > 0 else simplex[::-1]
            faces.extend([3, *(index[i] for i in order)])
            normals.append(equation[:3])
        self.faces = np.array(faces)
        self.object = fcl.CollisionObject(fcl.Convex(self.vertices, len(hull.simplices), self.faces))
        self.normals = unique_lines(np.array(normals))
        edges = np.array([self.points[s[i]] - self.points[s[(i + 1) % 3]] for s in hull.simplices for i in range(3)])
        self.edges = unique_lines(edges)

    def put(self, turn, move):
        self.object.setTransform(fcl.Transform(turn, move))


def unique_lines(vectors):
    vectors = vectors / np.linalg.norm(vectors, axis=1)[:, None]
    kept = []
    for v in vectors:
        if all(abs(abs(v @ k) - 1) > 1e-9 for k in kept):
            kept.append(v)
    return np.array(kept)


class Scene:
    def __init__(self, case):
        engine = case["engine"]
        self.case = case
        self.own = [(b["part"], Body(b["points"])) for b in engine["bodies"]]
        self.obstacles = [Body(o["points"]) for o in case["obstacles"]]
        self.other, self.shift, self.tilts = [], np.zeros(3), None
        ranges = [case["tilt"], case["steer"]]
        if case["neighbour"]:
            self.shift = np.array(case["neighbour"]["shift"])
            self.other = [(b["part"], Body(np.array(b["points"]) + self.shift)) for b in engine["bodies"]]
            self.tilts = case["neighbour"]["tilt"]
            if self.tilts != "together":
                ranges.append(self.tilts)
        self.ranges = np.array(ranges)

    def place(self, pose):
        engine = self.case["engine"]
        self.placed = []
        for part, body in self.own:
            self.placed.append(carried(engine, np.zeros(3), part, pose[0], pose[1]))
            body.put(*self.placed[-1])
        second = pose[2] if len(pose) > 2 else pose[0]
        self.placed_other = []
        for part, body in self.other:
            self.placed_other.append(carried(engine, self.shift, part, second, pose[1]))
            body.put(*self.placed_other[-1])

    def signed(self, pose, depth=True):
        """Least distance over all pairs by python-fcl; under contact minus the greatest overlap."""
        self.place(pose)
        still = (np.eye(3), np.zeros(3))
        against = [(o, still) for o in self.obstacles]
        against += [(b, at) for (_, b), at in zip(self.other, self.placed_other)]
        least = np.inf
        for (_, body), at in zip(self.own, self.placed):
            for other, where in against:
                result = fcl.DistanceResult()
                d = fcl.distance(body.object, other.object, fcl.DistanceRequest(), result)
                if d <= 0:
                    d = -overlap(body, at, other, where) if depth else 0.0
                least = min(least, d)
        return least


def overlap(a, at_a, b, at_b):
    """Least distance that parts two overlapping polyhedra: over all face normals and edge pairs, exactly."""
    pa = a.vertices @ at_a[0].T + at_a[1]
    pb = b.vertices @ at_b[0].T + at_b[1]
    crossed = np.cross((a.edges @ at_a[0].T)[:, None, :], (b.edges @ at_b[0].T)[None, :, :]).reshape(-1, 3)
    sizes = np.linalg.norm(crossed, axis=1)
    crossed = crossed[sizes > 1e-7] / sizes[sizes > 1e-7, None]
    lines = np.vstack([a.normals @ at_a[0].T, b.normals @ at_b[0].T, crossed])
    ha, hb = pa @ lines.T, pb @ lines.T
    return np.minimum(ha.max(0) - hb.min(0), hb.max(0) - ha.min(0)).min()
