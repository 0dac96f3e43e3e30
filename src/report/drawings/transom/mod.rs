//! The transom from astern: engines, centre distances, bolt holes old and new, deadrise, what a
//! powerhead sweeps at full lock, cutout and bracket.

mod dimensions;
mod engines;

use dimensions::dimensions;
use engines::{brackets, holes, outline};

use super::kit::{Board, Drawing, Layout, Pen, Point, at, ink};
use super::stern::{Hanging, Stern, hanging, length, rows};
use crate::case::Case;
use crate::quantity::Units;

/// Sides of the transom above the cutout are drawn so much higher, in millimetres: nobody measured
/// them, and a broken line says so.
const SIDES_MM: f64 = 130.0;
/// The drawing, where the transom's height is known.
pub(super) fn drawing(case: &Case, units: Units) -> Option<Drawing> {
    let stern = Stern::of(case.rig)?;
    let half = stern.half.or(stern.chine).or(stern.cutout)?;
    let engines = hanging(case, &stern, &case.rig.after);
    let mut board = Board::default();
    hull(&mut board, &stern, half);
    brackets(&mut board, &engines);
    for engine in &engines {
        outline(&mut board, engine);
    }
    holes(&mut board, case, &stern, &engines);
    dimensions(&mut board, case, &stern, &engines, units);
    let mut notes = vec![
        "Port is on the left. Heights are taken along the transom. Full lines are readings; thin and broken lines only indicate what nobody measured.".to_owned(),
    ];
    if !case.rig.job.transom.holes.is_empty() {
        let from = places(&engines);
        notes.push(format!("Crossed circles: holes that are there already. Open circles: holes {from}."));
    }
    notes.extend(rows(&engines));
    let description = describe(&stern, &engines, units);
    board.finish(Layout { name: "transom", title: "The transom from astern".to_owned(), description, notes }, units)
}

/// Where the holes of what goes on are from.
fn places(engines: &[Hanging]) -> &'static str {
    let mut bolted = engines.iter().filter(|engine| !engine.group.is_lifted());
    let told = |engine: &Hanging| !engine.group.bolts.said.at.is_empty();
    if !bolted.clone().any(told) {
        "of the standard pattern for the engines going on"
    } else if bolted.all(told) {
        "for the engines going on, at the places told"
    } else {
        "for the engines going on, at the places told, else of the standard pattern"
    }
}

fn describe(stern: &Stern, engines: &[Hanging], units: Units) -> String {
    let length = |value: f64| length(value, units);
    let mut words = format!("Seen from astern: a transom {} high at the centreline", length(stern.height));
    for engine in engines {
        words.push_str(&format!(
            "; {} {}",
            engine.engine.label,
            if engine.y == 0.0 {
                "on the centreline".to_owned()
            } else {
                format!("{} to {}", length(engine.y.abs()), if engine.y > 0.0 { "port" } else { "starboard" })
            }
        ));
    }
    words + "."
}

/// The outline: bottom to the chines, sides, top with its cutout. Seen from astern, port is left.
fn hull(board: &mut Board, stern: &Stern, half: f64) {
    let chine = stern.chine.unwrap_or(half).min(half);
    let low = stern.rise(chine);
    let top = stern.height;
    let sides = top + SIDES_MM;
    let cutout = stern.cutout.map_or(half, |cutout| cutout.min(half));
    let open = stern.cutout.is_some();
    let upper = if open { sides } else { top };
    let mut outline: Vec<Point> = vec![at(0.0, 0.0), at(chine, low), at(half, (low + upper) / 2.0), at(half, upper)];
    if open {
        outline.extend([at(cutout, sides), at(cutout, top), at(-cutout, top), at(-cutout, sides)]);
    }
    outline.extend([at(-half, upper), at(-half, (low + upper) / 2.0), at(-chine, low)]);
    board.area(outline, Pen::HIDDEN.filled(ink::HULL));
    let bottom = if stern.deadrise_given { Pen::EDGE } else { Pen::HIDDEN };
    board.line(vec![at(-chine, low), at(0.0, 0.0), at(chine, low)], bottom);
    board.line(vec![at(-cutout, top), at(cutout, top)], Pen::EDGE);
    board.line(vec![at(0.0, -60.0), at(0.0, sides + 40.0)], Pen::CENTRE);
}
