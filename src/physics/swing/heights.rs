//! How far a body moves over a box of poses, and how low it comes along a direction.

use nalgebra::Vector3;

use super::cell::{Cell, LIFT, NEIGHBOUR_TILT, STEER, TILT};
use super::chain::Part;
use super::kernel::{FlatBody, Frames};

/// Signs of the corners of a box across own tilt and steering.
pub(super) const CORNERS: [(f64, f64); 4] = [(-1.0, -1.0), (-1.0, 1.0), (1.0, -1.0), (1.0, 1.0)];

/// Least height of a body along a direction at each corner of a box, to first order, less the remainder.
#[derive(Clone, Copy)]
pub(super) struct Heights {
    pub least: [f64; 4],
    /// Which way the neighbour's tilt lowers the lowest vertex of each corner.
    pub neighbour_sign: [f64; 4],
    /// Which way the lift lowers the body.
    pub lift_sign: f64,
}

fn chord(reach: f64, turn: f64) -> f64 {
    2.0 * reach * (0.5 * turn.min(std::f64::consts::PI)).sin()
}

/// Farthest, in metres, that any point of a body moves from where it is in the middle of a box.
pub(super) fn motion(body: &FlatBody, cell: &Cell) -> f64 {
    let turned: f64 = [TILT, NEIGHBOUR_TILT, STEER].into_iter().map(|v| chord(body.reach[v], cell.half[v])).sum();
    turned + body.reach[LIFT] * cell.half[LIFT]
}

/// Heights along `up` of a body placed at the middle of a box, at the box's corners.
pub(super) fn heights(
    body: &FlatBody,
    points: &[Vector3<f64>],
    cell: &Cell,
    frames: &[Frames; 2],
    up: &Vector3<f64>,
) -> Heights {
    let mut found = Heights { least: [f64::INFINITY; 4], neighbour_sign: [0.0; 4], lift_sign: 0.0 };
    if !body.moves {
        let least = points.iter().map(|p| p.dot(up)).fold(f64::INFINITY, f64::min);
        found.least = [least; 4];
        return found;
    }
    let hs = cell.half[STEER];
    // A lift moves all of a body alike.
    let lifted = body.vertices.iter().find(|vertex| body.reach[LIFT] > 0.0 && vertex.lifted);
    let lowered = match lifted {
        Some(vertex) => {
            let frame = &frames[vertex.mover];
            let (slope, half) = (up.dot(&frame.pace), cell.half[LIFT]);
            found.lift_sign = if slope == 0.0 { 0.0 } else { -slope.signum() };
            slope.abs() * half + 0.5 * frame.bend * half * half
        }
        None => 0.0,
    };
    for (vertex, p) in body.vertices.iter().zip(points) {
        let frame = &frames[vertex.mover];
        let mut slope = [0.0; 3];
        let mut remainder = 0.0;
        let ht = cell.half[frame.tilt_variable];
        let across_tilt = up.cross(&frame.tilt_direction);
        if vertex.part != Part::Bracket {
            let arm = p - frame.tilt_point;
            slope[frame.tilt_variable] = across_tilt.dot(&arm);
            let in_plane = up - frame.tilt_direction * up.dot(&frame.tilt_direction);
            let wander = vertex.tilt_reach * ht + vertex.steer_reach * hs;
            let bend = vertex.tilt_reach.min(in_plane.dot(&arm).max(0.0) + wander);
            remainder += 0.5 * bend * ht * ht;
        }
        if vertex.part == Part::Head {
            let arm = p - frame.steer_point;
            let sideways = frame.steer_direction.cross(&arm);
            slope[STEER] = up.dot(&sideways);
            let in_plane = up - frame.steer_direction * up.dot(&frame.steer_direction);
            let wander = vertex.steer_reach * (ht + hs);
            let bend = vertex.steer_reach.min(in_plane.dot(&arm).max(0.0) + wander);
            let twist = vertex.steer_reach.min(across_tilt.dot(&sideways).abs() + wander);
            remainder += 0.5 * bend * hs * hs + twist * ht * hs;
        }
        let base = p.dot(up) - lowered - remainder - slope[NEIGHBOUR_TILT].abs() * cell.half[NEIGHBOUR_TILT];
        let by_tilt = slope[TILT] * cell.half[TILT];
        let by_steer = slope[STEER] * hs;
        for (i, (tilt, steer)) in CORNERS.into_iter().enumerate() {
            let height = base + tilt * by_tilt + steer * by_steer;
            if height < found.least[i] {
                found.least[i] = height;
                found.neighbour_sign[i] = match slope[NEIGHBOUR_TILT] {
                    0.0 => 0.0,
                    s => -s.signum(),
                };
            }
        }
    }
    found
}
