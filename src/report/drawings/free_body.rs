//! Loads on the mounting: what the engines bring to the transom in the case that governs, and what hangs
//! where.

use super::kit::{Board, Drawing, Layout, Pen, Point, Shape, at, ink};
use super::stern::Stern;
use crate::case::Case;
use crate::case::strength::{Footing, Way};
use crate::quantity::{Dimensioned, Measure, Moment, Units, capitalised, inches};
use uom::si::f64::{Force, Length};

/// Length of the longest arrow, in millimetres of the boat.
const ARROW_MM: f64 = 420.0;
/// Radius of the arc that stands for a moment.
const ARC_MM: f64 = 130.0;
/// How far forward of the transom the hull is drawn.
const FORWARD_MM: f64 = 420.0;

/// The free body, where strength was worked out.
pub(super) fn drawing(case: &Case, units: Units) -> Option<Drawing> {
    let strength = case.strength().ok()?;
    let stern = Stern::of(case.rig)?;
    let (index, _) = strength.after.bent.worst(Way::Bending);
    let name = strength.after.cases.get(index)?.name();
    let footing = strength.after.footings.iter().max_by(|a, b| {
        let size = |footing: &Footing| footing.loads.get(index).map_or(0.0, |load| load.moment[1].abs());
        size(a).total_cmp(&size(b))
    })?;
    let load = footing.loads.get(index)?;
    let mut board = Board::default();
    let (foot, top) = (stern.side(0.0, 0.0), stern.side(stern.height, 0.0));
    board.area(vec![foot, at(FORWARD_MM, 0.0), at(FORWARD_MM, top.y), top], Pen::area(ink::HULL));
    board.line(vec![at(FORWARD_MM, 0.0), foot, top], Pen::EDGE);
    let face = &footing.face;
    board.line(vec![stern.side(face.bottom * 1e3, 14.0), stern.side(face.top * 1e3, 14.0)], Pen::of(ink::NEW, 3.0));
    for bolt in &footing.bolts {
        board.draw(Shape::Hole {
            centre: stern.side(bolt.z * 1e3, 14.0),
            diameter: 12.0,
            pen: Pen::NEW,
            crossed: false,
        });
    }
    let middle = stern.side(footing.middle[1] * 1e3, 14.0);
    let (sin, cos) = stern.angle.sin_cos();
    let longest = load.force[0].abs().max(load.force[2].abs()).max(1e-9);
    let force = |newtons: f64| Measure::of(Force::from_si(newtons.abs())).show(units);
    let scale = ARROW_MM / longest;
    // Square to the face, and along it.
    let square = (load.force[0] * scale * cos, load.force[0] * scale * sin);
    let along = (-load.force[2] * scale * sin, load.force[2] * scale * cos);
    let pen = Pen::of(ink::ALERT, 2.4);
    if load.force[0].abs() > longest * 0.02 {
        let word = if load.force[0] > 0.0 { "pushes on it" } else { "pulls off it" };
        let tail = middle.by(-square.0, -square.1);
        arrow(&mut board, tail, middle, pen);
        board.callout(tail.towards(middle, 0.4), format!("{word} {}", force(load.force[0])));
    }
    if load.force[2].abs() > longest * 0.02 {
        let word = if load.force[2] > 0.0 { "lifts along it" } else { "presses down along it" };
        let head = middle.by(along.0, along.1);
        arrow(&mut board, middle, head, pen);
        board.callout(middle.towards(head, 0.7), format!("{word} {}", force(load.force[2])));
    }
    // Positive presses the upper edge on the transom: it turns the face's top forward.
    let turns_forward = load.moment[1] >= 0.0;
    let arc: Vec<Point> = (0..=24)
        .map(|i| {
            let share = f64::from(i) / 24.0;
            let from = if turns_forward { 215.0 } else { -35.0 };
            let turn: f64 =
                (from + if turns_forward { -250.0 * share } else { 250.0 * share }) * std::f64::consts::PI / 180.0;
            middle.by(ARC_MM * turn.cos(), ARC_MM * turn.sin())
        })
        .collect();
    if let [.., before, last] = arc.as_slice() {
        let (before, last) = (*before, *last);
        let direction = ((last.x - before.x) / before.distance(last), (last.y - before.y) / before.distance(last));
        let moment = Measure::of(Moment::from_si(load.moment[1].abs())).show(units);
        let word = if turns_forward { "turns its top forward" } else { "turns its top aft" };
        board.callout(arc[8], format!("{word}: {moment}"));
        board.line(arc, pen);
        head(&mut board, last, direction, pen);
    }
    let mut farthest: f64 = 0.0;
    for hung in &footing.hung {
        let weight = Measure::of(hung.mass).show(units);
        let place = stern.side(stern.height + 120.0, 0.0).by(-hung.aft * 1e3, 0.0);
        let down = ARROW_MM * 0.5;
        arrow(&mut board, place, place.by(0.0, -down), Pen::of(ink::INK, 1.8));
        board.callout(place, format!("{}, {weight}", hung.name));
        farthest = farthest.max(hung.aft);
    }
    let length = |millimetres: f64| Measure::tape(inches(millimetres / 25.4)).show(units);
    board.dimension_here("transom-height", foot, top, -60.0, length(stern.height));
    if farthest > 0.0 {
        let up = stern.height + 40.0;
        let from = stern.side(up, 0.0);
        let to = from.by(-farthest * 1e3, 0.0);
        let words = format!("{} aft", Measure::tape(Length::from_si(farthest)).show(units));
        board.dimension_here("weight-aft", to, from, 0.0, words);
    }
    board.finish(
        Layout {
            name: "free-body",
            title: "Loads on the mounting".to_owned(),
            description: format!("The forces and the moment that the {} brings to the transom, {name}.", footing.name),
            notes: vec![format!("Load case that asks most of the panel: {name}. {}: forces and moment about the middle of its bolts. Red arrows are to one scale of force; black ones only show where each weight hangs.", capitalised(&footing.name))],
        },
        units,
    )
}

fn arrow(board: &mut Board, tail: Point, tip: Point, pen: Pen) {
    let long = tail.distance(tip).max(1e-9);
    board.line(vec![tail, tip], pen);
    head(board, tip, ((tip.x - tail.x) / long, (tip.y - tail.y) / long), pen);
}

fn head(board: &mut Board, tip: Point, direction: (f64, f64), pen: Pen) {
    let (long, half) = (46.0, 17.0);
    let back = tip.by(-direction.0 * long, -direction.1 * long);
    board.area(
        vec![tip, back.by(-direction.1 * half, direction.0 * half), back.by(direction.1 * half, -direction.0 * half)],
        Pen::area(pen.stroke),
    );
}
