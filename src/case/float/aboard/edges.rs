//! The points of the job: marks, and the edges to look at.

use nalgebra::Point3;
use uom::si::f64::Length;

use super::super::EdgePoint;
use super::super::ledger::{self, value, y_of};
use super::super::shape::Built;
use crate::job::{EdgeKind, Mark as JobMark};
use crate::physics::float::Mark;
use crate::quantity::{Dimensioned, Text};
use crate::rig::Rig;

/// A mark by name; marks without place or height were refused with the job.
pub(in crate::case::float) fn mark((index, mark): (usize, &JobMark)) -> (String, Mark) {
    let name = mark.what.clone().unwrap_or_else(|| format!("mark {}", index + 1));
    let point = Point3::new(
        value(mark.forward.as_ref()).unwrap_or(0.0),
        y_of(mark.across.as_ref()),
        value(mark.up.as_ref()).unwrap_or(0.0),
    );
    let height = mark.above_water.as_ref().map_or(Length::from_si(0.0), |height| height.value);
    (name, Mark { point, height })
}

/// The rim of the motorwell's forward wall, where it was taken for the tilt.
fn rim(rig: &Rig) -> Option<Point3<f64>> {
    let well = &rig.job.well;
    let (length, above) = (value(well.length.as_ref())?, value(well.rim_above.as_ref())?);
    let top = ledger::transom_top(rig).ok()?;
    Some(Point3::new(top.x + length, 0.0, top.z + above))
}

/// The edges of the job, those of the hull's sheer, and the transom's top where no other edge of the
/// motorwell is given.
pub(in crate::case::float) fn edges(rig: &Rig, built: &Built, assumed: &mut Vec<Text>) -> Vec<EdgePoint> {
    let mut edges = Vec::new();
    for (i, edge) in rig.job.edges.iter().enumerate() {
        let point = Point3::new(
            value(edge.forward.as_ref()).unwrap_or(0.0),
            y_of(edge.across.as_ref()),
            value(edge.up.as_ref()).unwrap_or(0.0),
        );
        let sides = if edge.both_sides { 2 } else { 1 };
        for side in 0..sides {
            let y = if side == 0 { point.y } else { -point.y };
            let word = if y > 0.0 { ", port" } else { ", starboard" };
            edges.push(EdgePoint {
                name: format!("{}{}", edge.name, if edge.both_sides { word } else { "" }),
                kind: edge.kind,
                point: Point3::new(point.x, y, point.z),
                entry: Some(format!("edges[{i}]")),
            });
        }
    }
    let has = |edges: &[EdgePoint], kind| edges.iter().any(|edge| edge.kind == kind);
    if !has(&edges, EdgeKind::Well)
        && let Some(rim) = rim(rig)
    {
        assumed.push(Text::from(
            "The rim of the motorwell's forward wall, as it was taken for the tilt, is the edge where water comes in: no edge of kind well is given.",
        ));
        edges.push(EdgePoint { name: "motorwell's rim".to_owned(), kind: EdgeKind::Well, point: rim, entry: None });
    }
    if !has(&edges, EdgeKind::Well)
        && let Ok(point) = ledger::transom_top(rig)
    {
        assumed.push(Text::from(
            "The transom's top is taken as the edge where water comes in: no edge of kind well is given.",
        ));
        edges.push(EdgePoint { name: "transom's top".to_owned(), kind: EdgeKind::Well, point, entry: None });
    }
    if !has(&edges, EdgeKind::Sheer) {
        edges.extend(built.sheer.iter().map(|(name, point)| EdgePoint {
            name: name.clone(),
            kind: EdgeKind::Sheer,
            point: *point,
            entry: None,
        }));
    }
    edges
}
