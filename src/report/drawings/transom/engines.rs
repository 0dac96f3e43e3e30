//! What hangs on the transom, from astern: engines, the faces of brackets, holes old and new.

use crate::case::{Case, bolt_places};
use crate::physics::fit;
use crate::quantity::inches;
use crate::report::drawings::kit::{Board, Pen, Shape, at, ink};
use crate::report::drawings::stern::{Hanging, Stern, mm};

/// Outline of an engine below its cowling, in millimetres: only indicated.
const LEG_MM: f64 = 75.0;
/// Half the width of its plate, in millimetres: only indicated.
pub(super) const PLATE_MM: f64 = 150.0;
/// Width of a powerhead whose class gives none, in millimetres: only indicated.
const HEAD_WIDE_MM: f64 = 450.0;

pub(super) fn outline(board: &mut Board, hanging: &Hanging) {
    let x = -hanging.y;
    let head = hanging.engine.spec.powerhead.clone().unwrap_or_default();
    let given = head.width.is_some() && head.height.is_some();
    let wide = head.width.map_or(HEAD_WIDE_MM, |width| mm(width.value)) / 2.0;
    let high = hanging.head_high();
    let pen = if given { Pen::NEW } else { Pen::HIDDEN };
    let top = hanging.rest + high;
    let round = wide * 0.35;
    let cowl = vec![
        at(x - wide, hanging.rest + 40.0),
        at(x - wide, top - round),
        at(x - wide + round, top),
        at(x + wide - round, top),
        at(x + wide, top - round),
        at(x + wide, hanging.rest + 40.0),
        at(x + LEG_MM, hanging.rest - 60.0),
        at(x - LEG_MM, hanging.rest - 60.0),
    ];
    let Some(plate) = hanging.plate else {
        board.area(cowl, pen.filled(ink::ENGINE));
        return;
    };
    let hub = hanging.hub(plate);
    board.area(
        vec![
            at(x - LEG_MM, hanging.rest),
            at(x + LEG_MM, hanging.rest),
            at(x + LEG_MM * 0.8, plate),
            at(x + 30.0, hub),
            at(x - 30.0, hub),
            at(x - LEG_MM * 0.8, plate),
        ],
        Pen::INDICATED,
    );
    board.area(cowl, pen.filled(ink::ENGINE));
    board.line(vec![at(x - PLATE_MM, plate), at(x + PLATE_MM, plate)], Pen::NEW);
    if let Some(propeller) = &hanging.engine.spec.propeller_diameter {
        board.draw(Shape::Circle(at(x, hub), mm(propeller.to.value) / 2.0, Pen::HIDDEN));
    }
    board.line(vec![at(x, hub), at(x, top + 30.0)], Pen::CENTRE);
    board.words(at(x, hanging.rest + high * 0.62), (0.0, 1.0), ink::NEW, hanging.engine.label.replace(' ', "\n"));
}

/// A bracket's face: its top is a reading, its outline is not.
pub(super) fn brackets(board: &mut Board, engines: &[Hanging]) {
    let mut done: Vec<*const crate::rig::Group> = Vec::new();
    for hanging in engines.iter().filter(|engine| engine.group.bracket.is_some()) {
        let group: *const crate::rig::Group = hanging.group;
        if done.contains(&group) {
            continue;
        }
        done.push(group);
        let mates: Vec<f64> =
            engines.iter().filter(|engine| std::ptr::eq(engine.group, hanging.group)).map(|engine| -engine.y).collect();
        let reach = mm(inches(fit::UPPER_PAIR_IN / 2.0)) + 40.0;
        let left = mates.iter().copied().fold(f64::INFINITY, f64::min) - reach;
        let right = mates.iter().copied().fold(f64::NEG_INFINITY, f64::max) + reach;
        let low = hanging.top - 400.0;
        board.area(
            vec![at(left, hanging.top), at(right, hanging.top), at(right, low), at(left, low)],
            Pen::HIDDEN.filled(ink::BRACKET),
        );
        board.line(vec![at(left, hanging.top), at(right, hanging.top)], Pen::EDGE);
    }
}

pub(super) fn holes(board: &mut Board, case: &Case, stern: &Stern, engines: &[Hanging]) {
    for hanging in engines.iter().filter(|engine| !engine.group.is_lifted()) {
        let on_transom = bolt_places(case.rig, hanging.group, &[hanging.engine]);
        let top = if on_transom.is_some() { stern.height } else { hanging.top };
        for hole in on_transom.unwrap_or_else(|| fit::pattern(hanging.engine.y).to_vec()) {
            board.draw(Shape::Hole {
                centre: at(-mm(hole.y), top - mm(hole.below)),
                diameter: mm(inches(fit::BOLT_DIAMETER_IN)),
                pen: Pen::NEW,
                crossed: false,
            });
        }
    }
    for hole in &case.rig.job.transom.holes {
        let diameter = hole.diameter.as_ref().map_or(mm(inches(fit::BOLT_DIAMETER_IN)), |d| mm(d.value));
        board.draw(Shape::Hole {
            centre: at(-mm(hole.at.y()), stern.height - mm(hole.below.value)),
            diameter,
            pen: Pen::OLD,
            crossed: true,
        });
    }
}
