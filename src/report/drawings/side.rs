//! The stern from the side, before and after: bottom and transom with their angle, bracket, engine with
//! its plate against the bottom and its window, heights of what is named.

use super::kit::{Board, Drawing, Layout, Pen, Point, at, ink};
use super::stern::{Hanging, Stern, hanging, mm};
use super::transom::rows;
use super::waters::waters;
use crate::case::{Case, float};
use crate::job::{Role, SplashWell};
use crate::quantity::{Measure, Units, inches};
use crate::rig::Outfit;

/// How far forward of the transom the hull is drawn, in millimetres.
const FORWARD_MM: f64 = 620.0;
/// How far aft of the mounting face the water is drawn, in millimetres.
const AFT_MM: f64 = 760.0;
/// Outlines of an engine that are only indicated, in millimetres aft of its mounting face.
const COWL_FRONT_MM: f64 = 50.0;
const LEG_FRONT_MM: f64 = 110.0;
const LEG_BACK_MM: f64 = 290.0;
const PLATE_BACK_MM: f64 = 520.0;
const PROPELLER_MM: f64 = 430.0;
/// Depth of a cowling for its height, where nobody says: only indicated.
const COWL_DEPTH: f64 = 0.8;
/// Width of the column of callouts, in units of the paper.
const COLUMN: f64 = 190.0;
/// Height of a powerhead that the class does not give, in millimetres.
const HEAD_HIGH_MM: f64 = 700.0;

/// With the engines that come off.
pub(super) fn before(case: &Case, units: Units) -> Option<Drawing> {
    drawing(
        case,
        &case.rig.before,
        "side-before",
        "The stern from the side, before",
        units,
    )
}

/// With the engines that go on.
pub(super) fn after(case: &Case, units: Units) -> Option<Drawing> {
    let title = match case.rig.sitting {
        crate::job::Sitting::AsFitted => "The stern from the side, as fitted",
        _ => "The stern from the side, after",
    };
    drawing(case, &case.rig.after, "side-after", title, units)
}

fn drawing(
    case: &Case,
    outfit: &Outfit,
    name: &'static str,
    title: &str,
    units: Units,
) -> Option<Drawing> {
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
    // The main engine is lettered; others stand behind it.
    drawn.sort_by_key(|hanging| hanging.engine.role != Role::Main);
    for (i, hanging) in drawn.iter().enumerate().rev() {
        engine(&mut board, &stern, hanging, i == 0);
        if !hanging.group.is_lifted() || i == 0 {
            plate(&mut board, &stern, hanging, units, i == 0);
        }
    }
    named(&mut board, case, &stern, units);
    waterlines(&mut board, case, name == "side-before", &drawn);
    // Both drawings make room for both outfits, so that they can be laid beside each other.
    let mut both = Board::default();
    for outfit in [&case.rig.before, &case.rig.after] {
        for hanging in hanging(case, &stern, outfit) {
            engine(&mut both, &stern, &hanging, false);
        }
    }
    board.reserve(&both.corners(), COLUMN);
    let mut notes = vec!["Heights are taken along the transom, from the bottom at the centreline, as a tape takes them.".to_owned()];
    if drawn.iter().any(|hanging| hanging.rise.abs() > 1.0) {
        notes.push("The broken line is the bottom at the engine's own centreline, against which its plate counts.".to_owned());
    }
    if !stern.angle_given {
        notes.push("The transom's angle was not measured: it is drawn upright.".to_owned());
    }
    notes.extend(rows(&engines));
    let description = describe(&stern, &drawn, units);
    board.finish(
        Layout {
            name,
            title: title.to_owned(),
            description,
            notes,
        },
        units,
    )
}

fn length(value: f64, units: Units) -> String {
    Measure::tape(inches(value / 25.4)).show(units)
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
    board.area(
        vec![foot, at(FORWARD_MM, 0.0), at(FORWARD_MM, top.y + 60.0), top],
        Pen::area(ink::HULL),
    );
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

fn engine(board: &mut Board, stern: &Stern, hanging: &Hanging, first: bool) {
    let place = |up: f64, aft: f64| stern.side(up, hanging.setback + aft);
    if hanging.group.bracket.is_some() {
        let low = hanging.top - 400.0;
        board.area(
            vec![
                stern.side(stern.height.min(hanging.top), 0.0),
                place(hanging.top, 0.0),
                place(low, 0.0),
                stern.side((low - 40.0).max(30.0), 0.0),
            ],
            Pen::HIDDEN.filled(ink::BRACKET),
        );
    }
    board.line(
        vec![place(hanging.top, 0.0), place(hanging.top - 400.0, 0.0)],
        Pen::EDGE,
    );
    let rest = hanging.rest;
    let head = hanging.engine.spec.powerhead.as_ref();
    let high = head
        .and_then(|head| head.height.as_ref())
        .map_or(HEAD_HIGH_MM, |height| mm(height.value));
    let depth = high * COWL_DEPTH;
    if let Some(plate) = hanging.plate {
        let hub = hanging
            .engine
            .spec
            .plate_to_propeller_shaft
            .as_ref()
            .map_or(plate - 200.0, |down| plate - mm(down.value));
        board.area(
            vec![
                place(rest, LEG_FRONT_MM),
                place(rest, LEG_BACK_MM),
                place(plate, LEG_BACK_MM + 40.0),
                place(hub + 45.0, PROPELLER_MM - 20.0),
                place(hub - 45.0, PROPELLER_MM - 20.0),
                place(hub - 150.0, LEG_BACK_MM),
                place(hub - 150.0, LEG_BACK_MM - 50.0),
                place(hub - 30.0, LEG_FRONT_MM - 30.0),
                place(plate, LEG_FRONT_MM),
            ],
            Pen::INDICATED.filled(ink::ENGINE),
        );
        if let Some(propeller) = &hanging.engine.spec.propeller_diameter {
            let half = mm(propeller.to.value) / 2.0;
            board.line(
                vec![
                    place(hub + half, PROPELLER_MM),
                    place(hub - half, PROPELLER_MM),
                ],
                Pen::of(ink::SOFT, 2.4),
            );
        }
        board.line(
            vec![
                place(plate, LEG_FRONT_MM - 40.0),
                place(plate, PLATE_BACK_MM),
            ],
            Pen::of(ink::NEW, 2.4),
        );
    }
    board.area(
        vec![
            place(rest + 20.0, 0.0),
            place(rest + 20.0, 130.0),
            place(rest - 300.0, 130.0),
            place(rest - 300.0, 0.0),
        ],
        Pen::INDICATED.filled(ink::ENGINE),
    );
    board.area(
        vec![
            place(rest + 60.0, COWL_FRONT_MM),
            place(rest + high * 0.82, COWL_FRONT_MM),
            place(rest + high, COWL_FRONT_MM + depth * 0.25),
            place(rest + high, COWL_FRONT_MM + depth * 0.7),
            place(rest + high * 0.75, COWL_FRONT_MM + depth),
            place(rest + 60.0, COWL_FRONT_MM + depth),
            place(rest - 20.0, LEG_BACK_MM),
            place(rest - 20.0, LEG_FRONT_MM),
        ],
        if first { Pen::NEW } else { Pen::HIDDEN }.filled(ink::ENGINE),
    );
    if !first {
        return;
    }
    board.words(
        place(rest + high * 0.55, COWL_FRONT_MM + depth * 0.5),
        (0.0, 1.0),
        ink::NEW,
        hanging.engine.label.replace(' ', "\n"),
    );
}

/// The plate against the bottom and its window.
fn plate(board: &mut Board, stern: &Stern, hanging: &Hanging, units: Units, lettered: bool) {
    let aft = hanging.setback + PLATE_BACK_MM;
    let bottom = |aft: f64| stern.side(hanging.rise, aft);
    let pen = if hanging.rise.abs() > 1.0 {
        Pen::HIDDEN
    } else {
        Pen::CENTRE
    };
    board.line(vec![bottom(aft + 60.0), at(FORWARD_MM, bottom(0.0).y)], pen);
    if let Some((low, high)) = hanging.window {
        let from = hanging.setback + LEG_BACK_MM + 40.0;
        let corner = |up: f64, aft: f64| stern.side(hanging.rise + up, aft);
        board.area(
            vec![
                corner(low, from),
                corner(low, aft + 40.0),
                corner(high, aft + 40.0),
                corner(high, from),
            ],
            Pen::of(ink::NEW, 0.8).filled(ink::WINDOW),
        );
        if lettered {
            let words = format!("window {} to {}", length(low, units), length(high, units));
            board.callout(corner((low + high) / 2.0, from), words);
        }
    }
    let Some(plate) = hanging.plate else { return };
    let place = stern.side(plate, aft);
    board.line(
        vec![
            stern.side(plate, hanging.setback + LEG_FRONT_MM - 40.0),
            place,
        ],
        Pen::of(ink::NEW, 2.4),
    );
    if lettered {
        board.dimension_here(
            "plate-above-bottom",
            bottom(aft),
            place,
            -26.0,
            length(plate - hanging.rise, units),
        );
        if hanging.group.bracket.is_some() && hanging.setback > 1.0 {
            let up = (stern.height * 0.5).min(hanging.top - 330.0);
            let (sin, cos) = stern.angle.sin_cos();
            let from = stern.side(up, 0.0);
            let to = from.by(-hanging.setback * cos, -hanging.setback * sin);
            board.dimension_here(
                "setback",
                to,
                from,
                0.0,
                format!("setback {}", length(hanging.setback, units)),
            );
        }
        let row = hanging.row.split(',').next().unwrap_or_default();
        let words = format!("plate, {row}");
        board.callout(stern.side(plate, hanging.setback + LEG_FRONT_MM), words);
    }
}

fn named(board: &mut Board, case: &Case, stern: &Stern, units: Units) {
    let transom = &case.rig.transom;
    let top = stern.side(stern.height, 0.0);
    board.dimension_here(
        "transom-height",
        stern.side(0.0, 0.0),
        top,
        -90.0,
        length(stern.height, units),
    );
    board.callout(
        at(60.0, top.y + 6.0),
        format!("transom's top {}", length(stern.height, units)),
    );
    if let Some(SplashWell::Floor(floor)) = transom.splash_well.reading() {
        let up = stern.height - mm(floor.value);
        let at_transom = stern.side(up, 0.0);
        let inside = at(at_transom.x + 40.0, at_transom.y);
        board.line(vec![inside, at(FORWARD_MM * 0.6, at_transom.y)], Pen::EDGE);
        board.callout(
            at(FORWARD_MM * 0.5, at_transom.y),
            format!("well's floor {}", length(up, units)),
        );
    }
    if let Some(upper) = transom.upper_holes.reading() {
        let up = stern.height - mm(upper.value);
        board.callout(
            stern.side(up, 0.0),
            format!("upper bolts {}", length(up, units)),
        );
    }
    if stern.angle_given {
        board.callout(
            at(
                -stern.height * 0.82 * (stern.angle / 2.0).sin(),
                stern.height * 0.82,
            ),
            format!(
                "transom angle {}",
                Measure::of(
                    case.rig
                        .transom
                        .angle
                        .reading()
                        .map_or(Default::default(), |a| a.value)
                )
                .show(units)
            ),
        );
    }
    board.callout(
        at(FORWARD_MM * 0.8, 0.0),
        "bottom at the centreline".to_owned(),
    );
}

/// The water as she lies in it, with these engines.
fn waterlines(board: &mut Board, case: &Case, before: bool, engines: &[&Hanging]) {
    let Ok(float) = case.float() else { return };
    let setback = engines
        .iter()
        .map(|hanging| hanging.setback)
        .fold(0.0, f64::max);
    for lying in waters(float) {
        if (lying.side == float::Side::Before) != before {
            continue;
        }
        let height = |x: f64| {
            let normal = lying.plane.normal();
            at(
                x,
                (lying.plane.offset().value - normal.x * x / 1e3) / normal.z * 1e3,
            )
        };
        let fore = height(FORWARD_MM);
        board.line(vec![height(-setback - AFT_MM), fore], lying.pen);
        // Before or after stands in the drawing's title.
        let name = lying
            .name
            .trim_end_matches(", before")
            .trim_end_matches(", after");
        board.callout(fore.by(-20.0, 0.0), name.to_owned());
    }
}
