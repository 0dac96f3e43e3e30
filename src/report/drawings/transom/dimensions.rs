//! What is dimensioned and named on the transom: breadths, distances between centres, sweeps, heights.

use super::engines::PLATE_MM;
use crate::case::Case;
use crate::quantity::{Measure, Units};
use crate::report::drawings::kit::{Board, Pen, Side, at};
use crate::report::drawings::stern::{Hanging, Stern, breadth, mm};

pub(super) fn dimensions(board: &mut Board, case: &Case, stern: &Stern, engines: &[Hanging], units: Units) {
    let tape = |length| Measure::tape(length).show(units);
    let rig = case.rig;
    if let Some(width) = rig.job.boat.transom_width().reading() {
        let y = stern.height;
        breadth(board, "transom-width", Side::Below, width.value, y, tape(width.value));
    }
    if let Some(chine) = rig.job.boat.chine_beam().reading() {
        let (half, y) = (mm(chine.value) / 2.0, stern.rise(mm(chine.value) / 2.0));
        let words = format!("{} between chines", tape(chine.value));
        board.dimension("chine-beam", Side::Below, at(-half, y), at(half, y), words);
    }
    if let Some(cutout) = rig.job.transom.cutout_width().reading() {
        let words = format!("cutout {}", tape(cutout.value));
        breadth(board, "cutout-width", Side::Below, cutout.value, stern.height, words);
    }
    for pair in engines.windows(2) {
        let low = pair[0].plate.unwrap_or(pair[0].rest);
        board.dimension(
            "centre-distance",
            Side::Below,
            at(-pair[0].y, low),
            at(-pair[1].y, pair[1].plate.unwrap_or(pair[1].rest)),
            format!("{} between centres", tape(pair[0].engine.y - pair[1].engine.y)),
        );
    }
    for hanging in engines {
        let Some(reach) = hanging.engine.clearance_each_way.reading() else {
            continue;
        };
        let high = hanging.head_high();
        let (x, y, k) = (-hanging.y, hanging.rest + high * 0.85, mm(reach.value));
        board.line(vec![at(x - k, y), at(x - k, y - high * 0.5)], Pen::NEW.dashed("3 3"));
        board.line(vec![at(x + k, y), at(x + k, y - high * 0.5)], Pen::NEW.dashed("3 3"));
        board.dimension(
            "sweep",
            Side::Above,
            at(x - k, y),
            at(x + k, y),
            format!("sweeps {}", tape(reach.value * 2.0)),
        );
    }
    let reach = stern.half.or(stern.chine).unwrap_or(0.0);
    if let Some(height) = rig.job.transom.height().reading() {
        board.dimension(
            "transom-height",
            Side::Left,
            at(-stern.cutout.unwrap_or(0.0).min(reach), stern.height),
            at(0.0, 0.0),
            tape(height.value),
        );
    }
    if let Some(deadrise) = rig.job.boat.deadrise().reading() {
        let far = reach * 0.62;
        board.callout(at(far, stern.rise(far)), format!("deadrise {}", Measure::of(deadrise.value).show(units)));
    }
    if let Some(hanging) = engines.last() {
        if let Some(plate) = hanging.plate {
            board.callout(at(-hanging.y + PLATE_MM, plate), "plate".to_owned());
        }
        if hanging.group.bracket.is_some() {
            let alone = engines.iter().all(|other| std::ptr::eq(other.group, hanging.group));
            let whose = if alone { "the".to_owned() } else { format!("the {}'s", hanging.engine.label) };
            board.callout(at(-hanging.y + 120.0, hanging.top), format!("top of {whose} bracket"));
        }
    }
    board.callout(at(stern.cutout.unwrap_or(reach).min(reach), stern.height), "transom's top".to_owned());
}
