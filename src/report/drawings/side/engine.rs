//! An engine from the side: its bracket, cowling, leg and propeller as far as they are known, its plate
//! against the bottom and its window.

use crate::quantity::Units;
use crate::report::drawings::kit::{Board, Pen, at, ink};
use crate::report::drawings::stern::{Hanging, Stern, length, mm};

use super::FORWARD_MM;

/// Outlines of an engine that are only indicated, in millimetres aft of its mounting face.
const COWL_FRONT_MM: f64 = 50.0;
const LEG_FRONT_MM: f64 = 110.0;
const LEG_BACK_MM: f64 = 290.0;
const PLATE_BACK_MM: f64 = 520.0;
const PROPELLER_MM: f64 = 430.0;
/// Depth of a cowling for its height, where nobody says: only indicated.
const COWL_DEPTH: f64 = 0.8;

/// Its outline; the first one drawn is the main engine, which is named.
pub(super) fn outline(board: &mut Board, stern: &Stern, hanging: &Hanging, first: bool) {
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
    board.line(vec![place(hanging.top, 0.0), place(hanging.top - 400.0, 0.0)], Pen::EDGE);
    let rest = hanging.rest;
    let high = hanging.head_high();
    let depth = high * COWL_DEPTH;
    if let Some(plate) = hanging.plate {
        let hub = hanging.hub(plate);
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
            board.line(vec![place(hub + half, PROPELLER_MM), place(hub - half, PROPELLER_MM)], Pen::of(ink::SOFT, 2.4));
        }
        board.line(vec![place(plate, LEG_FRONT_MM - 40.0), place(plate, PLATE_BACK_MM)], Pen::of(ink::NEW, 2.4));
    }
    board.area(
        vec![place(rest + 20.0, 0.0), place(rest + 20.0, 130.0), place(rest - 300.0, 130.0), place(rest - 300.0, 0.0)],
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

/// What is said of one beside the main engine: its name, and how high its plate stands, unless its bracket lifts it.
pub(super) fn beside(board: &mut Board, stern: &Stern, hanging: &Hanging, units: Units) {
    let label = &hanging.engine.label;
    let (up, aft, words) = match hanging.plate {
        Some(plate) if hanging.group.is_lifted() => (plate, PLATE_BACK_MM, label.clone()),
        Some(plate) => {
            let high = length(plate - hanging.rise, units);
            (plate, PLATE_BACK_MM, format!("plate of the {label} {high}"))
        }
        None => (hanging.rest + hanging.head_high(), COWL_FRONT_MM, label.clone()),
    };
    board.callout(stern.side(up, hanging.setback + aft), words);
}

/// The plate against the bottom and its window.
pub(super) fn plate(board: &mut Board, stern: &Stern, hanging: &Hanging, units: Units, lettered: bool) {
    let aft = hanging.setback + PLATE_BACK_MM;
    let bottom = |aft: f64| stern.side(hanging.rise, aft);
    let pen = if hanging.rise.abs() > 1.0 { Pen::HIDDEN } else { Pen::CENTRE };
    board.line(vec![bottom(aft + 60.0), at(FORWARD_MM, bottom(0.0).y)], pen);
    if let Some((low, high)) = hanging.window {
        let from = hanging.setback + LEG_BACK_MM + 40.0;
        let corner = |up: f64, aft: f64| stern.side(hanging.rise + up, aft);
        board.area(
            vec![corner(low, from), corner(low, aft + 40.0), corner(high, aft + 40.0), corner(high, from)],
            Pen::of(ink::NEW, 0.8).filled(ink::WINDOW),
        );
        if lettered {
            let words = format!("window {} to {}", length(low, units), length(high, units));
            board.callout(corner((low + high) / 2.0, from), words);
        }
    }
    let Some(plate) = hanging.plate else { return };
    let place = stern.side(plate, aft);
    board.line(vec![stern.side(plate, hanging.setback + LEG_FRONT_MM - 40.0), place], Pen::of(ink::NEW, 2.4));
    if lettered {
        board.dimension_here("plate-above-bottom", bottom(aft), place, -26.0, length(plate - hanging.rise, units));
        if hanging.group.bracket.is_some() && hanging.setback > 1.0 {
            let up = (stern.height * 0.5).min(hanging.top - 330.0);
            let (sin, cos) = stern.angle.sin_cos();
            let from = stern.side(up, 0.0);
            let to = from.by(-hanging.setback * cos, -hanging.setback * sin);
            board.dimension_here("setback", to, from, 0.0, format!("setback {}", length(hanging.setback, units)));
        }
        let row = hanging.row.split(',').next().unwrap_or_default();
        let words = format!("plate, {row}");
        board.callout(stern.side(plate, hanging.setback + LEG_FRONT_MM), words);
    }
}
