//! Finer meshes from coarser ones: the marked triangles divided, the others left.

use std::collections::HashMap;

use super::mesh::{Mesh, Side, Skeleton};
use super::vector::distance;

fn key(a: u32, b: u32) -> (u32, u32) {
    (a.min(b), a.max(b))
}

fn midpoint(mesh: &mut Skeleton, a: u32, b: u32) -> u32 {
    let (p, q) = (mesh.nodes[a as usize], mesh.nodes[b as usize]);
    mesh.nodes.push([0.5 * (p[0] + q[0]), 0.5 * (p[1] + q[1])]);
    (mesh.nodes.len() - 1) as u32
}

/// Cuts every marked triangle into four by bisecting longest sides, and others as far as the mesh must stay whole (M.-C.
/// Rivara's longest-edge path).
pub(super) fn divide(mesh: &Mesh, marked: &[usize]) -> Mesh {
    let mut fine = mesh.skeleton();
    let mut bisection = Bisection::new(&mut fine);
    let mut halves = Vec::with_capacity(2 * marked.len());
    for &t in marked {
        halves.extend(bisection.halve(t));
    }
    for t in halves {
        bisection.halve(t);
    }
    fine.whole()
}

struct Bisection<'a> {
    mesh: &'a mut Skeleton,
    /// The one or two triangles at each side.
    at: HashMap<(u32, u32), [usize; 2]>,
    side_at: HashMap<(u32, u32), usize>,
}

const NONE: usize = usize::MAX;

impl<'a> Bisection<'a> {
    fn new(mesh: &'a mut Skeleton) -> Self {
        let side_at = mesh.sides.iter().enumerate().map(|(i, s)| (key(s.nodes[0], s.nodes[1]), i)).collect();
        let mut bisection = Self { mesh, at: HashMap::new(), side_at };
        for t in 0..bisection.mesh.triangles.len() {
            for e in sides_of(bisection.mesh.triangles[t]) {
                bisection.attach(e, t);
            }
        }
        bisection
    }

    fn attach(&mut self, e: (u32, u32), t: usize) {
        let pair = self.at.entry(e).or_insert([NONE; 2]);
        pair[usize::from(pair[0] != NONE)] = t;
    }

    fn detach(&mut self, e: (u32, u32), t: usize) {
        if let Some(pair) = self.at.get_mut(&e) {
            *pair = if pair[0] == t { [pair[1], NONE] } else { [pair[0], NONE] };
        }
    }

    /// The longest side; equal lengths are told apart by their node numbers, so that every path ends.
    fn longest(&self, t: usize) -> (u32, u32) {
        let length = |e: &(u32, u32)| distance(self.mesh.nodes[e.0 as usize], self.mesh.nodes[e.1 as usize]);
        let mut best = sides_of(self.mesh.triangles[t])[0];
        for e in sides_of(self.mesh.triangles[t]) {
            if length(&e).total_cmp(&length(&best)).then(e.cmp(&best)).is_gt() {
                best = e;
            }
        }
        best
    }

    /// Bisects until `t` itself is cut; returns its halves, or nothing if it had been cut before in this pass.
    fn halve(&mut self, t: usize) -> [usize; 2] {
        let before = self.mesh.triangles[t];
        loop {
            let next = self.mesh.triangles.len();
            self.towards(t);
            if self.mesh.triangles[t] != before {
                // The last cut was t's own (as the first or the second of the pair).
                let own = if self.mesh.triangles[t].iter().any(|n| !before.contains(n)) { next } else { t };
                let last = self.mesh.triangles.len() - 1;
                let shares = |h: usize| self.mesh.triangles[h].iter().filter(|n| before.contains(n)).count() == 2;
                return [t, if shares(own) { own } else { last }];
            }
        }
    }

    /// Follows longest sides from `t` to the first that is the longest of both its triangles, and cuts these two.
    fn towards(&mut self, t: usize) {
        let mut t = t;
        loop {
            let e = self.longest(t);
            let pair = self.at[&e];
            let other = if pair[0] == t { pair[1] } else { pair[0] };
            if other == NONE || self.longest(other) == e {
                self.cut(e, t, other);
                return;
            }
            t = other;
        }
    }

    fn cut(&mut self, e: (u32, u32), t: usize, other: usize) {
        let m = midpoint(self.mesh, e.0, e.1);
        if let Some(index) = self.side_at.remove(&e) {
            let piece = self.mesh.sides[index].piece;
            self.mesh.sides[index] = Side { nodes: [e.0, m, m], piece };
            self.side_at.insert(key(e.0, m), index);
            self.side_at.insert(key(m, e.1), self.mesh.sides.len());
            self.mesh.sides.push(Side { nodes: [m, e.1, m], piece });
        }
        for t in [t, other] {
            if t == NONE {
                continue;
            }
            let old = self.mesh.triangles[t];
            for s in sides_of(old) {
                self.detach(s, t);
            }
            let new = self.mesh.triangles.len();
            self.mesh.triangles[t] = old.map(|n| if n == e.0 { m } else { n });
            self.mesh.triangles.push(old.map(|n| if n == e.1 { m } else { n }));
            self.mesh.parts.push(self.mesh.parts[t]);
            for half in [t, new] {
                for s in sides_of(self.mesh.triangles[half]) {
                    self.attach(s, half);
                }
            }
        }
    }
}

fn sides_of([a, b, c]: [u32; 3]) -> [(u32, u32); 3] {
    [key(a, b), key(b, c), key(c, a)]
}
