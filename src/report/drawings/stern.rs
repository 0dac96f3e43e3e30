//! The stern in the two planes in which it is drawn: across, seen from astern, and along, seen from
//! starboard with the bow to the right. Plain geometry of the rig, in millimetres.
//!
//! Heights are those that a tape takes along the transom, as the rules use them. In the side view a
//! bracket's face stands parallel to the transom, aft of it by the setback square to it, its top plumb
//! below a level line through the transom's top by the drop.

use uom::si::f64::Length;

use super::kit::{Board, Point, Side, at};
use crate::case::{Case, Rows, holes_up};
use crate::physics::height::HOLE_ROW_STEP_IN;
use crate::quantity::{Measure, Units, inches};
use crate::rig::{Engine, Group, Outfit, Rig};

/// Millimetres of a length.
pub(super) fn mm(length: Length) -> f64 {
    length.value * 1e3
}

/// A length in millimetres, as a tape says it.
pub(super) fn length(value: f64, units: Units) -> String {
    Measure::tape(inches(value / 25.4)).show(units)
}

/// A breadth that lies even about the centreline, as a dimension of this side: across the drawing where
/// it is seen from astern, up and down where it is seen from above.
pub(super) fn breadth(board: &mut Board, name: &'static str, side: Side, width: Length, level: f64, words: String) {
    let half = mm(width) / 2.0;
    let ends = match side {
        Side::Above | Side::Below => [at(-half, level), at(half, level)],
        Side::Left | Side::Right => [at(level, half), at(level, -half)],
    };
    board.dimension(name, side, ends[0], ends[1], words);
}

/// The transom as it is drawn.
pub(super) struct Stern {
    /// Top to bottom at the centreline, along the transom.
    pub height: f64,
    /// Angle of the transom from vertical, radians; upright where nobody measured it.
    pub angle: f64,
    /// Deadrise, radians; flat where nobody measured it.
    pub deadrise: f64,
    /// Whether angle and deadrise were given.
    pub angle_given: bool,
    pub deadrise_given: bool,
    /// Half the beam between the chines, where it was given.
    pub chine: Option<f64>,
    /// Half the width of the transom, where it was given.
    pub half: Option<f64>,
    /// Half the width of the cutout, where it was given.
    pub cutout: Option<f64>,
}

impl Stern {
    /// The stern, where at least the transom's height is known.
    pub(super) fn of(rig: &Rig) -> Option<Stern> {
        let height = rig.job.transom.height().reading()?;
        let deadrise = rig.job.boat.deadrise().reading();
        let angle = rig.job.transom.angle().reading();
        let half = |reading: Option<&crate::quantity::Reading<Length>>| reading.map(|width| mm(width.value) / 2.0);
        Some(Stern {
            height: mm(height.value),
            angle: angle.map_or(0.0, |angle| angle.value.value),
            deadrise: deadrise.map_or(0.0, |deadrise| deadrise.value.value),
            angle_given: angle.is_some(),
            deadrise_given: deadrise.is_some(),
            chine: half(rig.job.boat.chine_beam().reading()),
            half: half(rig.job.boat.transom_width().reading()),
            cutout: half(rig.job.transom.cutout_width().reading()),
        })
    }

    /// Rise of the bottom at a distance off the centreline, along the transom: as far as the chine.
    pub(super) fn rise(&self, y: f64) -> f64 {
        let reach = self.chine.or(self.half).unwrap_or(f64::INFINITY);
        self.along(y.abs().min(reach) * self.deadrise.tan())
    }

    /// A plumb height as it lies along the transom.
    fn along(&self, plumb: f64) -> f64 {
        plumb / self.angle.cos().max(0.2)
    }

    /// The point of the side view so high along the transom and so far aft of it, square to it.
    pub(super) fn side(&self, up: f64, aft: f64) -> Point {
        let (sin, cos) = self.angle.sin_cos();
        at(-up * sin - aft / cos.max(0.2), up * cos)
    }
}

/// One engine as it is drawn: heights above the bottom at the centreline, along the transom.
pub(super) struct Hanging<'a> {
    pub engine: &'a Engine,
    pub group: &'a Group,
    /// Distance to port of the centreline.
    pub y: f64,
    /// Where the bracket's rest stands.
    pub rest: f64,
    /// Rise of the bottom at its own centreline, as the height rules take it.
    pub rise: f64,
    /// The anti-ventilation plate, where the shaft is known.
    pub plate: Option<f64>,
    /// The window of the plate above the bottom at its own centreline, lower and upper edge.
    pub window: Option<(f64, f64)>,
    /// Face on which it hangs, aft of the transom and square to it.
    pub setback: f64,
    /// Top of that face.
    pub top: f64,
    /// In which row it is drawn, in words, and whether the job says so.
    pub row: String,
    pub row_given: bool,
}

/// Height of a powerhead that the class does not give, in millimetres: only indicated.
const HEAD_HIGH_MM: f64 = 700.0;
/// From the plate down to the propeller's shaft, where nobody says, in millimetres: only indicated.
const PLATE_TO_SHAFT_MM: f64 = 200.0;

impl Hanging<'_> {
    /// Height of its powerhead.
    pub(super) fn head_high(&self) -> f64 {
        let head = self.engine.spec.powerhead.as_ref();
        head.and_then(|head| head.height.as_ref()).map_or(HEAD_HIGH_MM, |height| mm(height.value))
    }

    /// Height of the propeller's shaft below this height of the plate.
    pub(super) fn hub(&self, plate: f64) -> f64 {
        let down = self.engine.spec.plate_to_propeller_shaft.as_ref();
        plate - down.map_or(PLATE_TO_SHAFT_MM, |down| mm(down.value))
    }
}

/// Every engine of an outfit, from port to starboard.
pub(super) fn hanging<'a>(case: &Case, stern: &Stern, outfit: &'a Outfit) -> Vec<Hanging<'a>> {
    let mut all: Vec<Hanging> = outfit.engines().map(|(group, engine)| hang(case.rig, stern, group, engine)).collect();
    all.sort_by(|a, b| b.y.total_cmp(&a.y));
    all
}

fn hang<'a>(rig: &Rig, stern: &Stern, group: &'a Group, engine: &'a Engine) -> Hanging<'a> {
    let reading = |slot: &crate::rig::Slot<crate::quantity::Reading<Length>>| {
        slot.reading().map_or(0.0, |reading| mm(reading.value))
    };
    let rows = Rows::of(rig, group, engine).ok();
    let row = engine.holes_up.reading().map(|row| usize::from(*row));
    let drawn = row.unwrap_or_else(|| rows.as_ref().map_or(0, |rows| rows.best().unwrap_or_else(|| rows.nearest())));
    let y = mm(engine.y);
    let rise =
        rig.job.transom.height_at(engine.y).map_or_else(|| stern.rise(y), |taken| stern.height - mm(taken.value));
    let top = stern.height - stern.along(reading(&group.drop()));
    let rest = top + drawn as f64 * mm(inches(HOLE_ROW_STEP_IN));
    let shaft = engine.rest_to_plate.reading();
    let words = match (row.is_some(), rows.as_ref().map(Rows::best)) {
        (true, _) => holes_up(drawn),
        (false, Some(Some(_))) => format!("{}, nearest the middle of its window", holes_up(drawn)),
        (false, Some(None)) => format!("{}, nearest to its window", holes_up(drawn)),
        (false, None) => "as low as it goes".to_owned(),
    };
    Hanging {
        engine,
        group,
        y,
        rest,
        rise,
        plate: shaft.map(|shaft| rest - mm(shaft.value)),
        window: rows.map(|rows| (mm(rows.window.0), mm(rows.window.1))),
        setback: reading(&group.setback()),
        top,
        row: words,
        row_given: row.is_some(),
    }
}

/// In which row the engines are drawn, where nobody said so: once for all that hang alike.
pub(super) fn rows(engines: &[Hanging]) -> Vec<String> {
    let mut alike: Vec<(&str, Vec<&str>)> = Vec::new();
    for engine in engines.iter().filter(|engine| !engine.row_given) {
        match alike.iter_mut().find(|(row, _)| *row == engine.row) {
            Some((_, labels)) => labels.push(&engine.engine.label),
            None => alike.push((&engine.row, vec![&engine.engine.label])),
        }
    }
    let line = |(row, labels): (&str, Vec<&str>)| match labels.as_slice() {
        [label] => format!("The {label} is drawn {row}."),
        _ => format!("The {} are each drawn {row}.", labels.join(" and the ")),
    };
    alike.into_iter().map(line).collect()
}
