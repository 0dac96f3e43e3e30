//! Side and top outlines of a sweep at its worst pose: data for a drawing to scale.

use nalgebra::Point3;

use super::swept::Swept;
use crate::physics::swing::{EngineChain, NeighbourTilt, Obstacle, Pose, Side};
use uom::si::f64::Angle;

/// From which side it is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// From starboard: forward to the right, up.
    Side,
    /// From above: forward to the right, port up.
    Top,
}

/// A convex outline in a view.
#[derive(Clone, Debug, PartialEq)]
pub struct NamedPolygon {
    /// What it is.
    pub name: String,
    /// Whether it moves with an engine.
    pub moves: bool,
    /// Corners in turn, anticlockwise, metres in the view's two axes.
    pub corners: Vec<[f64; 2]>,
}

impl View {
    fn flat(self, point: &Point3<f64>) -> [f64; 2] {
        match self {
            View::Side => [point.x, point.z],
            View::Top => [point.x, point.y],
        }
    }
}

/// Every body of the sweep's scene at this pose, seen so. Bodies that are rounded are drawn as the hull of
/// discs about their points; a plane has no outline.
pub fn outlines(swept: &Swept, pose: &Pose, view: View) -> Vec<NamedPolygon> {
    let scene = &swept.scene;
    let mut polygons = Vec::new();
    for obstacle in &scene.obstacles {
        if let Obstacle::Body(body) = obstacle {
            let points = body.points().iter().copied();
            polygons.push(polygon(body.name(), false, points, body.radius().value, view));
        }
    }
    let other_tilt = pose.neighbour_tilt.unwrap_or(pose.tilt);
    let neighbour = scene.neighbour.as_ref().map(|neighbour| {
        let tilt = match neighbour.tilt {
            NeighbourTilt::Together => pose.tilt,
            NeighbourTilt::Independent(_) => other_tilt,
        };
        (&neighbour.chain, tilt)
    });
    for (chain, tilt) in std::iter::once((&scene.engine, pose.tilt)).chain(neighbour) {
        polygons.extend(chain_outlines(chain, tilt, pose, view));
    }
    for rod in &scene.rods {
        let ends = rod.ends.iter().filter_map(|end| {
            let (chain, tilt) = match end.side {
                Side::Own => (&scene.engine, pose.tilt),
                Side::Neighbour => neighbour?,
            };
            Some(chain.raised(chain.carried(end.part, end.at, tilt, pose.steer), pose.lift))
        });
        polygons.push(polygon(&rod.name, true, ends, rod.radius.value, view));
    }
    polygons
}

fn chain_outlines(chain: &EngineChain, tilt: Angle, pose: &Pose, view: View) -> Vec<NamedPolygon> {
    chain
        .bodies()
        .iter()
        .map(|(part, body)| {
            let carried = |point: &Point3<f64>| chain.carried(*part, *point, tilt, pose.steer);
            let points = body.points().iter().map(|point| chain.raised(carried(point), pose.lift));
            polygon(body.name(), true, points, body.radius().value, view)
        })
        .collect()
}

/// Corners of the polygon drawn for a round end.
const ROUND_CORNERS: usize = 16;

fn polygon(
    name: &str,
    moves: bool,
    points: impl Iterator<Item = Point3<f64>>,
    radius: f64,
    view: View,
) -> NamedPolygon {
    let mut flat = Vec::new();
    for point in points {
        let [u, v] = view.flat(&point);
        if radius > 0.0 {
            for i in 0..ROUND_CORNERS {
                let turn = std::f64::consts::TAU * i as f64 / ROUND_CORNERS as f64;
                flat.push([u + radius * turn.cos(), v + radius * turn.sin()]);
            }
        } else {
            flat.push([u, v]);
        }
    }
    NamedPolygon { name: name.to_owned(), moves, corners: hull(flat) }
}

/// Convex hull, anticlockwise (Andrew's monotone chain).
fn hull(mut points: Vec<[f64; 2]>) -> Vec<[f64; 2]> {
    points.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    points.dedup();
    if points.len() < 3 {
        return points;
    }
    let turns_right = |chain: &[[f64; 2]], next: &[f64; 2]| {
        let n = chain.len();
        n >= 2 && {
            let (o, a) = (chain[n - 2], chain[n - 1]);
            (a[0] - o[0]) * (next[1] - o[1]) - (a[1] - o[1]) * (next[0] - o[0]) <= 0.0
        }
    };
    let half = |points: &mut dyn Iterator<Item = &[f64; 2]>| {
        let mut chain: Vec<[f64; 2]> = Vec::new();
        for point in points {
            while turns_right(&chain, point) {
                chain.pop();
            }
            chain.push(*point);
        }
        chain.pop();
        chain
    };
    let mut lower = half(&mut points.iter());
    lower.extend(half(&mut points.iter().rev()));
    lower
}
