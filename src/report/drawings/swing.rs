//! The engines at the pose where they come nearest to anything: from the side and from above, with the
//! least distance drawn.

use super::kit::{Board, Drawing, Layout, Pen, Point, Shape, Side, at, ink};
use super::stern::{Stern, breadth, length, mm};
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
        answers.iter().filter_map(|answer| answer.as_ref().ok()).flatten().min_by(|a, b| room(a).total_cmp(&room(b)))
    };
    let engine = nearest(&[&swing.full_tilt, &swing.raised, &swing.lock, &swing.neighbours]);
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
    // The engine's own bodies come first of all that moves.
    let bodies = swept.scene.engine.bodies().len();
    let polygons: Vec<NamedPolygon> = outlines(swept, &clearance.pose, view)
        .into_iter()
        .filter(|polygon| polygon.corners.iter().flatten().all(|corner| (corner * 1e3).abs() < FARTHEST_MM))
        .collect();
    for polygon in polygons.iter().filter(|polygon| !polygon.moves) {
        let pen = Pen::INDICATED.filled(ink::HULL);
        board.area(points(polygon), pen);
    }
    if view == View::Top {
        transom_edge(&mut board, &stern);
    }
    let moving = polygons.iter().filter(|polygon| polygon.moves);
    let (own, other): (Vec<_>, Vec<_>) = moving.enumerate().partition(|(i, _)| *i < bodies);
    // A neighbour is darker than the engine whose sweep it is.
    for (parts, fill) in [(&other, ink::BRACKET), (&own, ink::ENGINE)] {
        for (_, polygon) in parts {
            board.area(points(polygon), Pen::NEW.filled(fill));
        }
    }
    let largest = |parts: &[(usize, &NamedPolygon)]| {
        let by_area = parts.iter().max_by(|a, b| area(a.1).total_cmp(&area(b.1)));
        by_area.map(|(_, polygon)| middle(polygon))
    };
    let (here, there) = (largest(&own), largest(&other));
    for (place, apart, label) in [(here, there, Some(&swept.label)), (there, here, swept.other.as_ref())] {
        if let (Some(place), Some(label)) = (place, label) {
            // Names of two engines that hide each other stand apart.
            let place = apart.map_or(place, |other| place.towards(other, -0.15));
            board.words(place, (0.0, 1.0), ink::NEW, label.replace(' ', "\n"));
        }
    }
    let flat = |point: &nalgebra::Point3<f64>| match view {
        View::Side => at(point.x * 1e3, point.z * 1e3),
        View::Top => at(point.x * 1e3, point.y * 1e3),
    };
    let (body, other) = (flat(&clearance.on_body), flat(&clearance.on_other));
    let alert = Pen::of(ink::ALERT, 2.4);
    board.line(vec![body, other], alert);
    for end in [body, other] {
        board.draw(Shape::Hole { centre: end, diameter: 1.0, pen: alert, crossed: false });
    }
    let least = Measure::tape(clearance.upper).show(units);
    let words = if swept.touches() { "they touch here".to_owned() } else { format!("nearest here: {least}") };
    board.callout(body.towards(other, 0.5), words);
    if let Some(polygon) = polygons.iter().find(|polygon| polygon.name == clearance.other.name) {
        board.callout(middle(polygon), body_words(&clearance.other.name));
    }
    let mut breadths = Vec::new();
    match view {
        View::Side => {
            board.line(vec![stern.side(0.0, 0.0), stern.side(stern.height, 0.0)], Pen::EDGE);
            board.line(vec![stern.side(0.0, 0.0), at(500.0, 0.0)], Pen::EDGE);
            let height = length(stern.height, units);
            board.dimension_here("transom-height", stern.side(0.0, 0.0), stern.side(stern.height, 0.0), -70.0, height);
        }
        View::Top => {
            breadths = across(&mut board, case, units);
        }
    }
    setback(&mut board, case, swept, view, &stern, units);
    let (name, title) = match view {
        View::Side => ("swing-side", "Where it comes nearest, from the side"),
        View::Top => ("swing-plan", "Where it comes nearest, from above"),
    };
    let pose = pose_words(&clearance.pose, swept).show(units);
    let wanted = Measure::tape(swept.margin).show(units);
    let distance = match clearance.contact_depth() {
        Some(depth) => format!("They meet, {} deep; {wanted} of room wanted.", Measure::tape(depth).show(units)),
        None => format!("Least distance {least}, {wanted} wanted."),
    };
    let mut notes = vec![
        format!("Of the {}: {pose}. {distance}", swept.label),
        "Engines and surroundings are drawn as the bodies that were searched; the distance is the true one in space, its line the view of it.".to_owned(),
    ];
    if view == View::Top && !breadths.is_empty() {
        notes.push(format!(
            "Bow to the right, port up; the thick line is the transom's top. Beside it: {}.",
            breadths.join(", ")
        ));
    }
    board.finish(
        Layout {
            name,
            title: title.to_owned(),
            description: format!("The {} at its worst pose: {pose}. {distance}", swept.label),
            notes,
        },
        units,
    )
}

fn points(polygon: &NamedPolygon) -> Vec<Point> {
    polygon.corners.iter().map(|[x, y]| at(x * 1e3, y * 1e3)).collect()
}

/// Area of a polygon, in square metres.
fn area(polygon: &NamedPolygon) -> f64 {
    let corners = &polygon.corners;
    let next = corners.iter().cycle().skip(1);
    let doubled: f64 = corners.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum();
    doubled.abs() / 2.0
}

fn middle(polygon: &NamedPolygon) -> Point {
    let count = polygon.corners.len().max(1) as f64;
    let sum = polygon.corners.iter().fold((0.0, 0.0), |sum, [x, y]| (sum.0 + x, sum.1 + y));
    at(sum.0 / count * 1e3, sum.1 / count * 1e3)
}

/// How far beyond its cutout the transom's edge is drawn, in millimetres.
const BESIDE_CUTOUT_MM: f64 = 120.0;

/// The transom's top from above: its cutout, or its breadth where it has none.
fn transom_edge(board: &mut Board, stern: &Stern) {
    let top = stern.side(stern.height, 0.0).x;
    let Some(edge) = stern.cutout.or(stern.half) else {
        return;
    };
    if stern.cutout.is_some() {
        let far = stern.half.unwrap_or(f64::INFINITY).min(edge + BESIDE_CUTOUT_MM);
        board.line(vec![at(top, -far), at(top, far)], Pen::INDICATED);
    }
    board.line(vec![at(top, -edge), at(top, edge)], Pen::of(ink::INK, 2.4));
}

/// Breadths, where the view is from above; port is up. Returns what they are.
fn across(board: &mut Board, case: &Case, units: Units) -> Vec<String> {
    let mut said = Vec::new();
    let tape = |length| Measure::tape(length).show(units);
    if let Some(cutout) = case.rig.job.transom.cutout_width().reading() {
        breadth(board, "cutout-width", Side::Left, cutout.value, 0.0, tape(cutout.value));
        said.push(format!("{} of cutout", tape(cutout.value)));
    }
    let mut places: Vec<_> = case.rig.after.engines().map(|(_, engine)| engine.y).collect();
    places.sort_by(|a, b| b.value.total_cmp(&a.value));
    for pair in places.windows(2) {
        board.dimension(
            "centre-distance",
            Side::Left,
            at(0.0, mm(pair[0])),
            at(0.0, mm(pair[1])),
            tape(pair[0] - pair[1]),
        );
        said.push(format!("{} between centres", tape(pair[0] - pair[1])));
    }
    if places.len() < 2
        && let Some(width) = case.rig.job.boat.transom_width().reading()
    {
        breadth(board, "transom-width", Side::Left, width.value, 0.0, tape(width.value));
        said.push(format!("{} over the transom", tape(width.value)));
    }
    said
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
        board.dimension_here("setback", to, from, 0.0, format!("setback {}", Measure::tape(setback).show(units)));
    }
}
