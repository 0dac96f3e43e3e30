//! A surface sorted into nested boxes, each with the integrals of all that is in it.
//!
//! The integral of a triangle that is wholly under water does not depend on the water plane, so that
//! of a whole box can be added at once. Only triangles near the plane are looked at one by one.

use nalgebra::{Point3, Vector3};

/// Triangles in a box that is not divided further; from 3 to 8 the cost differs by less than a
/// twentieth.
const LEAF_TRIANGLES: usize = 8;
/// Rounding margin of the box test as a part of the reach of the body, so that a box is never judged
/// otherwise than its triangles would be.
const BOX_MARGIN: f64 = 1e-12;

/// Integrals over a piece of surface seen from the reference point: the cones from the point to the
/// surface, and the surface itself.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Cones {
    /// Signed volume, m³.
    pub volume: f64,
    /// First moments of the volume, m⁴.
    pub moment: [f64; 3],
    /// Area, m².
    pub area: f64,
}

impl Cones {
    #[inline]
    pub(super) fn add(&mut self, other: &Self, factor: f64) {
        self.volume += factor * other.volume;
        for (sum, term) in self.moment.iter_mut().zip(other.moment) {
            *sum += factor * term;
        }
        self.area += factor * other.area;
    }
}

/// Moments of the cut face in its own plane, from its rim (Green's theorem): powers of u (forward) and
/// v (to port), m² to m⁴.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Rim {
    pub area: f64,
    pub u: f64,
    pub v: f64,
    pub uu: f64,
    pub uv: f64,
    pub vv: f64,
}

impl Rim {
    /// Adds the straight piece of rim from p to q, each (u, v).
    #[inline]
    fn add(&mut self, p: [f64; 2], q: [f64; 2], sign: f64) {
        let cross = sign * 0.5 * (p[0] * q[1] - q[0] * p[1]);
        self.area += cross;
        self.u += cross * (p[0] + q[0]) / 3.0;
        self.v += cross * (p[1] + q[1]) / 3.0;
        self.uu += cross * (p[0] * p[0] + p[0] * q[0] + q[0] * q[0]) / 6.0;
        self.vv += cross * (p[1] * p[1] + p[1] * q[1] + q[1] * q[1]) / 6.0;
        self.uv += cross * (2.0 * (p[0] * p[1] + q[0] * q[1]) + p[0] * q[1] + q[0] * p[1]) / 12.0;
    }
}

/// Plane, relative to the reference point, with its axes.
#[derive(Clone, Copy, Debug)]
pub(super) struct Blade {
    pub normal: Vector3<f64>,
    pub offset: f64,
    pub forward: Vector3<f64>,
    pub port: Vector3<f64>,
}

#[derive(Clone, Copy, Debug)]
struct Triangle {
    corners: [Vector3<f64>; 3],
    /// Volume of the cone from the reference point, m³.
    volume: f64,
    area: f64,
}

impl Triangle {
    fn new(corners: [Vector3<f64>; 3]) -> Self {
        let [a, b, c] = corners;
        Self { corners, volume: a.dot(&b.cross(&c)) / 6.0, area: 0.5 * (b - a).cross(&(c - a)).norm() }
    }

    #[inline]
    fn cones(&self) -> Cones {
        let [a, b, c] = self.corners;
        let moment = (a + b + c) * (0.25 * self.volume);
        Cones { volume: self.volume, moment: moment.into(), area: self.area }
    }

    /// Adds what lies under the plane.
    ///
    /// A corner exactly on the plane counts as above it, in every triangle that has it, so the pieces of
    /// rim always close.
    #[inline]
    fn cut(&self, blade: &Blade, factor: f64, cones: &mut Cones, rim: &mut Rim) {
        let d = self.corners.map(|corner| blade.normal.dot(&corner) - blade.offset);
        let wet = d.map(|d| d < 0.0);
        // The corner that is alone on its side of the plane.
        let (alone, under) = match wet {
            [false, false, false] => return,
            [true, true, true] => {
                cones.add(&self.cones(), factor);
                return;
            }
            [true, false, false] => (0, true),
            [false, true, false] => (1, true),
            [false, false, true] => (2, true),
            [false, true, true] => (0, false),
            [true, false, true] => (1, false),
            [true, true, false] => (2, false),
        };
        let (next, last) = ((alone + 1) % 3, (alone + 2) % 3);
        let (a, b, c) = (self.corners[alone], self.corners[next], self.corners[last]);
        let to_next = d[alone] / (d[alone] - d[next]);
        let to_last = d[alone] / (d[alone] - d[last]);
        let (p, q) = (a + (b - a) * to_next, a + (c - a) * to_last);
        // The small triangle at the lone corner has this part of the area, and so of the cone.
        let part = to_next * to_last;
        let volume = part * self.volume;
        let tip = Cones { volume, moment: ((a + p + q) * (0.25 * volume)).into(), area: part * self.area };
        let sign = if under {
            factor
        } else {
            cones.add(&self.cones(), factor);
            -factor
        };
        cones.add(&tip, sign);
        let flat = |x: Vector3<f64>| [blade.forward.dot(&x), blade.port.dot(&x)];
        rim.add(flat(q), flat(p), sign);
    }
}

#[derive(Clone, Copy, Debug, Default)]
struct Node {
    low: Vector3<f64>,
    high: Vector3<f64>,
    cones: Cones,
    /// Index of the next node that is not inside this one.
    skip: u32,
    first: u32,
    /// Triangles of a leaf; 0 for a node with children, which follow it.
    count: u32,
}

/// A triangle while the boxes are made: three times its middle, and where it was given.
#[derive(Clone, Copy, Debug)]
struct Tag {
    middle: Vector3<f64>,
    index: u32,
}

fn bounds(points: impl Iterator<Item = Vector3<f64>>) -> (Vector3<f64>, Vector3<f64>) {
    let infinite = Vector3::repeat(f64::INFINITY);
    points.fold((infinite, -infinite), |(low, high), p| (low.inf(&p), high.sup(&p)))
}

/// The sorted surface. Corners are relative to a reference point near the body, metres.
#[derive(Clone, Debug)]
pub(super) struct Tree {
    nodes: Vec<Node>,
    triangles: Vec<Triangle>,
    margin: f64,
}

impl Tree {
    pub(super) fn new(triangles: impl Iterator<Item = [Point3<f64>; 3]>, reference: &Point3<f64>) -> Self {
        let given: Vec<[Vector3<f64>; 3]> = triangles.map(|corners| corners.map(|corner| corner - reference)).collect();
        let mut order: Vec<Tag> =
            given.iter().zip(0..).map(|([a, b, c], index)| Tag { middle: a + b + c, index }).collect();
        let reach = given.iter().flatten().map(|corner| corner.norm_squared()).fold(0.0, f64::max).sqrt();
        let mut tree = Self {
            nodes: Vec::with_capacity(given.len()),
            triangles: Vec::with_capacity(given.len()),
            margin: BOX_MARGIN * reach,
        };
        tree.build(&given, &mut order);
        tree
    }

    /// Adds the box round the tagged triangles, and all boxes in it; gives back its index.
    fn build(&mut self, given: &[[Vector3<f64>; 3]], order: &mut [Tag]) -> usize {
        let index = self.nodes.len();
        let first = self.triangles.len() as u32;
        if order.len() <= LEAF_TRIANGLES {
            let triangles = order.iter().map(|tag| Triangle::new(given[tag.index as usize]));
            self.triangles.extend(triangles);
            let triangles = &self.triangles[first as usize..];
            let (low, high) = bounds(triangles.iter().flat_map(|t| t.corners));
            let mut cones = Cones::default();
            for triangle in triangles {
                cones.add(&triangle.cones(), 1.0);
            }
            self.nodes.push(Node { low, high, cones, skip: index as u32 + 1, first, count: order.len() as u32 });
            return index;
        }
        let (low, high) = bounds(order.iter().map(|tag| tag.middle));
        let axis = (high - low).imax();
        let half = order.len() / 2;
        order.select_nth_unstable_by(half, |one, other| one.middle[axis].total_cmp(&other.middle[axis]));
        let (aft, forward) = order.split_at_mut(half);
        self.nodes.push(Node::default());
        let one = self.build(given, aft);
        let other = self.build(given, forward);
        let (one, other) = (self.nodes[one], self.nodes[other]);
        let mut cones = one.cones;
        cones.add(&other.cones, 1.0);
        self.nodes[index] = Node {
            low: one.low.inf(&other.low),
            high: one.high.sup(&other.high),
            cones,
            skip: self.nodes.len() as u32,
            first,
            count: 0,
        };
        index
    }

    /// Adds what lies under the plane, times a factor (−1 for a body that is taken away).
    pub(super) fn cut(&self, blade: &Blade, factor: f64, cones: &mut Cones, rim: &mut Rim) {
        let slope = blade.normal.abs();
        let mut index = 0;
        while let Some(node) = self.nodes.get(index) {
            let height = 0.5 * blade.normal.dot(&(node.low + node.high)) - blade.offset;
            let reach = 0.5 * slope.dot(&(node.high - node.low)) + self.margin;
            if height > reach {
                index = node.skip as usize;
            } else if height < -reach {
                cones.add(&node.cones, factor);
                index = node.skip as usize;
            } else {
                let first = node.first as usize;
                for triangle in &self.triangles[first..first + node.count as usize] {
                    triangle.cut(blade, factor, cones, rim);
                }
                index += 1;
            }
        }
    }
}
