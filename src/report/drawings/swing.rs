//! The engines at the pose where they come nearest to anything: from the side and from above, with the
//! least distance drawn.

use super::kit::{Board, Drawing, Layout, Pen, Point, Shape, Side, at, ink};
use super::stern::{Stern, mm};
use crate::case::Case;
use crate::case::swing::{Answer, NamedPolygon, Swept, View, body_words, outlines, pose_words};
use crate::quantity::{Measure, Units};

/// Outlines that reach farther than this from the transom, in millimetres, stand for what nobody measured
/// and are left out.
const FARTHEST_MM: f64 = 4_000.0;

/// From the side.
pub(super) fn side(case: &Case, units: Units) -> Option<Drawing> {
    drawing(case, View::Side, units)
}

/// From above.
pub(super) fn plan(case: &Case, units: Units) -> Option<Drawing> {
    drawing(case, View::Top, units)
}

/// The sweep that comes nearest to its margin, or goes farthest beyond it: of the engines themselves, and
/// of their gear only where that is what stops them.
fn worst<'a>(case: &'a Case) -> Option<&'a Swept> {
    let swing = case.swing();
    let room = |swept: &Swept| (swept.clearance.upper - swept.margin).value;
    let nearest = |answers: &[&'a Answer<Vec<Swept>>]| {
        answers
            .iter()
            .filter_map(|answer| answer.as_ref().ok())
            .flatten()
            .min_by(|a, b| room(a).total_cmp(&room(b)))
    };
    let engine = nearest(&[&swing.full_tilt, &swing.lock, &swing.neighbours]);
    let gear = nearest(&[&swing.cylinder, &swing.tie_bar]);
    match (engine, gear) {
        (Some(engine), Some(gear)) if room(gear) < 0.0 && room(engine) >= 0.0 => Some(gear),
        (Some(engine), _) => Some(engine),
        (None, gear) => gear,
    }
}

fn drawing(case: &Case, view: View, units: Units) -> Option<Drawing> {
    let swept = worst(case)?;
    let stern = Stern::of(case.rig)?;
    let clearance = &swept.clearance;
    let mut board = Board::default();
    let polygons: Vec<NamedPolygon> = outlines(swept, &clearance.pose, view)
        .into_iter()
        .filter(|polygon| {
            polygon
                .corners
                .iter()
                .flatten()
                .all(|corner| (corner * 1e3).abs() < FARTHEST_MM)
        })
        .collect();
    for polygon in polygons.iter().filter(|polygon| !polygon.moves) {
        let pen = Pen::INDICATED.filled(ink::HULL);
        board.area(points(polygon), pen);
    }
    for polygon in polygons.iter().filter(|polygon| polygon.moves) {
        board.area(points(polygon), Pen::NEW.filled(ink::ENGINE));
    }
    let flat = |point: &nalgebra::Point3<f64>| match view {
        View::Side => at(point.x * 1e3, point.z * 1e3),
        View::Top => at(point.x * 1e3, point.y * 1e3),
    };
    let (body, other) = (flat(&clearance.on_body), flat(&clearance.on_other));
    let alert = Pen::of(ink::ALERT, 2.4);
    board.line(vec![body, other], alert);
    for end in [body, other] {
        board.draw(Shape::Hole {
            centre: end,
            diameter: 1.0,
            pen: alert,
            crossed: false,
        });
    }
    let least = Measure::tape(clearance.upper).show(units);
    let words = if swept.touches() {
        "they touch here".to_owned()
    } else {
        format!("nearest here: {least}")
    };
    board.callout(body.towards(other, 0.5), words);
    if let Some(polygon) = polygons
        .iter()
        .find(|polygon| polygon.name == clearance.other.name)
    {
        board.callout(middle(polygon), body_words(&clearance.other.name));
    }
    match view {
        View::Side => {
            board.line(
                vec![stern.side(0.0, 0.0), stern.side(stern.height, 0.0)],
                Pen::EDGE,
            );
            board.line(vec![stern.side(0.0, 0.0), at(500.0, 0.0)], Pen::EDGE);
            let height = Measure::tape(crate::quantity::inches(stern.height / 25.4)).show(units);
            board.dimension_here(
                "transom-height",
                stern.side(0.0, 0.0),
                stern.side(stern.height, 0.0),
                -70.0,
                height,
            );
        }
        View::Top => across(&mut board, case, units),
    }
    setback(&mut board, case, swept, view, &stern, units);
    let (name, title) = match view {
        View::Side => ("swing-side", "Where it comes nearest, from the side"),
        View::Top => ("swing-plan", "Where it comes nearest, from above"),
    };
    let pose = pose_words(&clearance.pose, swept).show(units);
    board.finish(
        Layout {
            name,
            title: title.to_owned(),
            description: format!("The {} at its worst pose: {pose}; least distance {least}.", swept.label),
            notes: vec![
                format!("The {}: {pose}. Least distance {least}, {} wanted.", swept.label, Measure::tape(swept.margin).show(units)),
                "Engines and surroundings are drawn as the bodies that were searched; the distance is the true one in space, its line the view of it.".to_owned(),
            ],
        },
        units,
    )
}

fn points(polygon: &NamedPolygon) -> Vec<Point> {
    polygon
        .corners
        .iter()
        .map(|[x, y]| at(x * 1e3, y * 1e3))
        .collect()
}

fn middle(polygon: &NamedPolygon) -> Point {
    let count = polygon.corners.len().max(1) as f64;
    let sum = polygon
        .corners
        .iter()
        .fold((0.0, 0.0), |sum, [x, y]| (sum.0 + x, sum.1 + y));
    at(sum.0 / count * 1e3, sum.1 / count * 1e3)
}

/// Breadths, where the view is from above; port is up.
fn across(board: &mut Board, case: &Case, units: Units) {
    let tape = |length| Measure::tape(length).show(units);
    if let Some(cutout) = case.rig.transom.cutout_width.reading() {
        let half = mm(cutout.value) / 2.0;
        board.dimension(
            "cutout-width",
            Side::Left,
            at(0.0, half),
            at(0.0, -half),
            tape(cutout.value),
        );
    }
    let mut places: Vec<_> = case
        .rig
        .after
        .engines()
        .map(|(_, engine)| engine.y)
        .collect();
    places.sort_by(|a, b| b.value.total_cmp(&a.value));
    for pair in places.windows(2) {
        board.dimension(
            "centre-distance",
            Side::Left,
            at(0.0, mm(pair[0])),
            at(0.0, mm(pair[1])),
            tape(pair[0] - pair[1]),
        );
    }
    if places.len() < 2
        && let Some(width) = case.rig.boat.transom_width.reading()
    {
        let half = mm(width.value) / 2.0;
        board.dimension(
            "transom-width",
            Side::Left,
            at(0.0, half),
            at(0.0, -half),
            tape(width.value),
        );
    }
}

fn setback(board: &mut Board, case: &Case, swept: &Swept, view: View, stern: &Stern, units: Units) {
    let Some(setback) = case
        .swing()
        .engines
        .as_ref()
        .ok()
        .and_then(|engines| engines.iter().find(|engine| engine.label == swept.label))
        .map(|engine| engine.setback)
        .filter(|setback| setback.value > 1e-3)
    else {
        return;
    };
    if view == View::Side {
        let (sin, cos) = stern.angle.sin_cos();
        let from = stern.side(stern.height * 0.45, 0.0);
        let to = from.by(-mm(setback) * cos, -mm(setback) * sin);
        board.dimension_here(
            "setback",
            to,
            from,
            0.0,
            format!("setback {}", Measure::tape(setback).show(units)),
        );
    }
}
