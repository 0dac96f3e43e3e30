//! The stern from the side, before and after: bottom and transom with their angle, bracket, engine with
//! its plate against the bottom and its window, heights of what is named.

mod engine;

use super::kit::{Board, Drawing, Layout, Pen, Point, at, ink};
use super::stern::{Hanging, Stern, hanging, length, mm, rows};
use super::waters::waters;
use crate::case::{Case, float};
use crate::job::{Role, SplashWell};
use crate::quantity::{Measure, Units};
use crate::rig::Outfit;

/// How far forward of the transom the hull is drawn, in millimetres.
const FORWARD_MM: f64 = 620.0;
/// How far aft of the mounting face the water is drawn, in millimetres.
const AFT_MM: f64 = 760.0;
/// Width of the column of callouts, in units of the paper.
const COLUMN: f64 = 200.0;

/// With the engines that come off.
pub(super) fn before(case: &Case, units: Units) -> Option<Drawing> {
    drawing(case, &case.rig.before, "side-before", "The stern from the side, before", units)
}

/// With the engines that go on.
pub(super) fn after(case: &Case, units: Units) -> Option<Drawing> {
    let title = match case.rig.job.sitting {
        crate::job::Sitting::AsFitted => "The stern from the side, as fitted",
        _ => "The stern from the side, after",
    };
    drawing(case, &case.rig.after, "side-after", title, units)
}

fn drawing(case: &Case, outfit: &Outfit, name: &'static str, title: &str, units: Units) -> Option<Drawing> {
    let stern = Stern::of(case.rig)?;
    let engines = hanging(case, &stern, outfit);
    if engines.is_empty() {
        return None;
    }
    let mut board = Board::default();
    hull(&mut board, &stern);
    // Engines that hide each other are drawn once, the outermost first.
    let mut drawn: Vec<&Hanging> = Vec::new();
    for hanging in &engines {
        let hidden = drawn.iter().any(|other| {
            (other.rest - hanging.rest).abs() < 1.0
                && (other.rise - hanging.rise).abs() < 1.0
                && (other.setback - hanging.setback).abs() < 1.0
                && other.engine.class == hanging.engine.class
        });
        if !hidden {
            drawn.push(hanging);
        }
    }
    // The main engine is lettered in the drawing; others stand behind it, and are named beside it.
    drawn.sort_by_key(|hanging| hanging.engine.role != Role::Main);
    for (i, hanging) in drawn.iter().enumerate().rev() {
        engine::outline(&mut board, &stern, hanging, i == 0);
        if !hanging.group.is_lifted() || i == 0 {
            engine::plate(&mut board, &stern, hanging, units, i == 0);
        }
        if i > 0 {
            engine::beside(&mut board, &stern, hanging, units);
        }
    }
    named(&mut board, case, &stern, units);
    waterlines(&mut board, case, name == "side-before", &drawn);
    // Both drawings make room for both outfits, so that they can be laid beside each other.
    let mut both = Board::default();
    for outfit in [&case.rig.before, &case.rig.after] {
        for hanging in hanging(case, &stern, outfit) {
            engine::outline(&mut both, &stern, &hanging, false);
        }
    }
    board.reserve(&both.corners(), COLUMN);
    let mut notes = vec![
        "Heights are taken along the transom, from the bottom at the centreline, as a tape takes them.".to_owned(),
    ];
    if drawn.iter().any(|hanging| hanging.rise.abs() > 1.0) {
        notes.push(
            "The broken line is the bottom at the engine's own centreline, against which its plate counts.".to_owned(),
        );
    }
    if !stern.angle_given {
        notes.push("The transom's angle was not measured: it is drawn upright.".to_owned());
    }
    notes.extend(rows(&engines));
    let description = describe(&stern, &drawn, units);
    board.finish(Layout { name, title: title.to_owned(), description, notes }, units)
}

fn describe(stern: &Stern, engines: &[&Hanging], units: Units) -> String {
    let mut words = format!(
        "Seen from starboard, bow to the right: a transom {} high, {:.1} degrees from upright",
        length(stern.height, units),
        stern.angle.to_degrees()
    );
    for hanging in engines {
        if let Some(plate) = hanging.plate {
            words.push_str(&format!(
                "; the plate of the {} {} above the bottom at its centreline",
                hanging.engine.label,
                length(plate - hanging.rise, units)
            ));
        }
    }
    words + "."
}

fn hull(board: &mut Board, stern: &Stern) {
    let foot = stern.side(0.0, 0.0);
    let top = stern.side(stern.height, 0.0);
    board.area(vec![foot, at(FORWARD_MM, 0.0), at(FORWARD_MM, top.y + 60.0), top], Pen::area(ink::HULL));
    board.line(vec![at(FORWARD_MM, 0.0), foot, top], Pen::EDGE);
    board.line(vec![top, at(FORWARD_MM, top.y + 60.0)], Pen::HIDDEN);
    if stern.angle_given && stern.angle.abs() > 0.01 {
        board.line(vec![foot, at(0.0, stern.height * 0.9)], Pen::CENTRE);
        let high = stern.height * 0.82;
        let arc: Vec<Point> = (0..=12)
            .map(|i| {
                let turn = stern.angle * f64::from(i) / 12.0;
                at(-high * turn.sin(), high * turn.cos())
            })
            .collect();
        board.line(arc, Pen::INDICATED);
    }
}

fn named(board: &mut Board, case: &Case, stern: &Stern, units: Units) {
    let transom = &case.rig.job.transom;
    let top = stern.side(stern.height, 0.0);
    board.dimension_here("transom-height", stern.side(0.0, 0.0), top, -90.0, length(stern.height, units));
    board.callout(at(60.0, top.y + 6.0), format!("transom's top {}", length(stern.height, units)));
    if let Some(SplashWell::Floor(floor)) = &transom.splash_well {
        let up = stern.height - mm(floor.value);
        let at_transom = stern.side(up, 0.0);
        let inside = at(at_transom.x + 40.0, at_transom.y);
        board.line(vec![inside, at(FORWARD_MM * 0.6, at_transom.y)], Pen::EDGE);
        board.callout(at(FORWARD_MM * 0.5, at_transom.y), format!("well's floor {}", length(up, units)));
    }
    if let Some(upper) = &transom.upper_holes {
        let up = stern.height - mm(upper.value);
        board.callout(stern.side(up, 0.0), format!("upper bolts {}", length(up, units)));
    }
    if stern.angle_given {
        board.callout(
            at(-stern.height * 0.82 * (stern.angle / 2.0).sin(), stern.height * 0.82),
            format!(
                "transom angle {}",
                Measure::of(case.rig.job.transom.angle().reading().map_or(Default::default(), |a| a.value)).show(units)
            ),
        );
    }
    board.callout(at(FORWARD_MM * 0.8, 0.0), "bottom at the centreline".to_owned());
}

/// The water as she lies in it, with these engines.
fn waterlines(board: &mut Board, case: &Case, before: bool, engines: &[&Hanging]) {
    let Ok(float) = case.float() else { return };
    let setback = engines.iter().map(|hanging| hanging.setback).fold(0.0, f64::max);
    for lying in waters(float) {
        if (lying.side == float::Side::Before) != before {
            continue;
        }
        let height = |x: f64| {
            let normal = lying.plane.normal();
            at(x, (lying.plane.offset().value - normal.x * x / 1e3) / normal.z * 1e3)
        };
        let fore = height(FORWARD_MM);
        board.line(vec![height(-setback - AFT_MM), fore], lying.pen);
        // Before or after stands in the drawing's title.
        let name = lying.name.trim_end_matches(", before").trim_end_matches(", after");
        board.callout(fore.by(-20.0, 0.0), name.to_owned());
    }
}
