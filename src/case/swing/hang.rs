//! Each engine of the new outfit as a chain, where it hangs.

use std::collections::BTreeSet;

use nalgebra::{Point3, Vector3};
use uom::si::f64::Length;

use crate::case::stern::{Stern, step_up};
use crate::case::{holes_up, row_of};
use crate::job::{EngineSpec, Role};
use crate::physics::swing::{AngleRange, FittedEngine, Lift, Mounting, MountingSheet, SwingError, fit_engine};
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::reading::Absent;
use crate::rig::{Engine, Group, Missing, Rig, SwingSheet};

/// Where the tilt tube is taken to be where the mounting sheet does not say: forward of the mounting
/// face and above the bracket's rest. Common practice, no source: over the middle of a transom.
pub(in crate::case) const TUBE_FORWARD_IN: f64 = 2.0;
pub(in crate::case) const TUBE_ABOVE_IN: f64 = 2.5;

/// An engine where it hangs.
#[derive(Clone, Debug)]
pub struct Hanging {
    /// Which one it is, in words.
    pub label: String,
    /// What it is for.
    pub role: Role,
    /// Its chain and its ranges on this transom.
    pub fitted: FittedEngine,
    /// Tilt from trimmed in to trimmed out: where it runs.
    pub running: AngleRange,
    /// Middle of its bracket's rest, boat axes, metres.
    pub rest: Point3<f64>,
    /// Setback of its mounting face, square to the transom.
    pub setback: Length,
    /// Height of the top of what it hangs on, boat axes, metres.
    pub bracket_top: f64,
    /// Whether it hangs on the transom itself.
    pub on_transom: bool,
    /// What lifts it, where it hangs on a lifting bracket whose travel is known.
    pub lift: Option<Lift>,
    /// The row of holes that was taken for granted, where none was told.
    pub row_assumed: Option<usize>,
    /// Whether the place of its tilt tube was.
    pub tube_assumed: bool,
}

/// Every engine of the new outfit.
///
/// # Errors
/// Readings that are missing, or a mounting sheet whose numbers contradict each other.
pub(super) fn engines(rig: &Rig, stern: &Stern) -> Result<Vec<Hanging>, Absent> {
    let mut missing = Vec::new();
    let mut hanging = Vec::new();
    for (group, engine) in rig.after.engines() {
        match one(rig, stern, group, engine) {
            Ok(one) => hanging.push(one),
            Err(Absent::Waits(lacking)) => Missing::gather(&mut missing, lacking),
            Err(other) => return Err(other),
        }
    }
    if missing.is_empty() { Ok(hanging) } else { Err(Absent::Waits(missing)) }
}

/// What the engines lack besides the readings of the boat.
pub(super) fn lacking(rig: &Rig) -> Vec<Missing> {
    if rig.after.is_empty() {
        return vec![rig.after.missing()];
    }
    let mut missing = Vec::new();
    for (group, engine) in rig.after.engines() {
        let lacking = readings(group, engine).err();
        Missing::gather(&mut missing, lacking.into_iter().flatten());
    }
    missing
}

type Readings<'e> = (&'e SwingSheet, Length, Length, Length);

fn readings<'e>(group: &Group, engine: &'e Engine) -> Result<Readings<'e>, Vec<Missing>> {
    let (setback, drop) = (group.setback(), group.drop());
    match (engine.sheet.ask(), engine.rest_to_plate.ask(), setback.ask(), drop.ask()) {
        (Ok(sheet), Ok(shaft), Ok(setback), Ok(drop)) => Ok((sheet, shaft.value, setback.value, drop.value)),
        (sheet, shaft, setback, drop) => {
            Err([sheet.err(), shaft.err(), setback.err(), drop.err()].into_iter().flatten().collect())
        }
    }
}

fn one(rig: &Rig, stern: &Stern, group: &Group, engine: &Engine) -> Result<Hanging, Absent> {
    let (sheet, shaft, setback, drop) = readings(group, engine)?;
    let label = engine.label.as_str();
    let (row, told) = row_of(rig, group, engine);
    // Beside the cutout it looks over the high corner.
    let drop = drop - step_up(rig, group, engine);
    let mut rest = stern.rest(setback, drop, u8::try_from(row).unwrap_or(u8::MAX));
    rest.y = engine.y.value;
    let cannot = |error| Absent::CannotBe(say!("The {} cannot be put together: {}.", label, format!("{error}")));
    let mounting = Mounting { rest, transom_angle: stern.angle };
    let mut fitted = fit_engine(&mounting_sheet(label, sheet, shaft).map_err(cannot)?, &mounting).map_err(cannot)?;
    let lean = stern.angle - sheet.transom_angle;
    if let Some(stop) = engine.tilt_stop {
        let (low, high) = (fitted.tilt.low(), fitted.tilt.high().min(stop));
        fitted.tilt = AngleRange::new("the tilt range up to its stop", low, high).map_err(cannot)?;
    }
    let running =
        AngleRange::new("the trim range", sheet.trim[0] - lean, (sheet.trim[1] - lean).min(fitted.tilt.high()))
            .map_err(cannot)?;
    let lift = lift(stern, group).map_err(cannot)?;
    Ok(Hanging {
        lift,
        label: label.to_owned(),
        role: engine.role,
        fitted,
        running,
        rest,
        setback,
        bracket_top: stern.rest(setback, drop, 0).z,
        on_transom: group.bracket.is_none(),
        row_assumed: Some(row).filter(|_| !told && !group.is_lifted()),
        tube_assumed: sheet.tilt_tube.is_none(),
    })
}

/// The lift of a group's bracket: along the transom and square to it. None where it is never raised.
fn lift(stern: &Stern, group: &Group) -> Result<Option<Lift>, SwingError> {
    let (Some(height), Some(bracket)) = (group.lift().filter(|height| height.value > 0.0), &group.bracket) else {
        return Ok(None);
    };
    let (sin, cos) = stern.angle.value.sin_cos();
    let straight = Lift::straight(Vector3::new(-sin, 0.0, cos), Vector3::new(-cos, 0.0, -sin), height)?;
    match &bracket.spec.arms {
        Some(arms) => straight.on_arms(arms.length.value, arms.hang.value).map(Some),
        None => Ok(Some(straight)),
    }
}

/// What was taken for granted of the engines, in a sentence for all of them.
pub(super) fn assumed(hanging: &[Hanging]) -> Vec<Text> {
    let names = |taken: &dyn Fn(&Hanging) -> bool| {
        let labels: Vec<String> =
            hanging.iter().filter(|engine| taken(engine)).map(|engine| format!("the {}", engine.label)).collect();
        (!labels.is_empty()).then(|| labels.join(" and "))
    };
    let mut assumed = Vec::new();
    let rows: BTreeSet<usize> = hanging.iter().filter_map(|engine| engine.row_assumed).collect();
    for row in rows {
        let Some(names) = names(&|engine| engine.row_assumed == Some(row)) else { continue };
        assumed.push(match row {
            0 => say!("Swing: {} hung in the lowest holes, nearest to the well: `holes_up` is not given.", names),
            _ => say!(
                "Swing: {} hung {}, which brings the plate nearest to its window: `holes_up` is not given.",
                names,
                holes_up(row)
            ),
        });
    }
    if let Some(names) = names(&|engine| engine.lift.is_some_and(|lift| lift.arms().is_none())) {
        assumed.push(say!(
            "Swing: the lifting bracket of {} goes straight up along the transom: its arms are not given.",
            names
        ));
    }
    if let Some(names) = names(&|engine| engine.tube_assumed) {
        assumed.push(say!(
            "Swing: the tilt tube of {} lies {} forward of the mounting face and {} above the rest, as on most; the cowl is fitted to the sheet's reach at full tilt.",
            names,
            Measure::tape(inches(TUBE_FORWARD_IN)),
            Measure::tape(inches(TUBE_ABOVE_IN))
        ));
    }
    assumed
}

/// Why an engine of these numbers cannot be put together, and the first of its shafts with which it cannot; nothing where they
/// are not all there.
pub fn misfit(name: &str, spec: &EngineSpec) -> Option<(usize, SwingError)> {
    let sheet = SwingSheet::of(spec)?;
    let mounting = Mounting { rest: Point3::origin(), transom_angle: sheet.transom_angle };
    let fits = |shaft: Length| fit_engine(&mounting_sheet(name, &sheet, shaft)?, &mounting).map(drop);
    spec.shafts.iter().enumerate().find_map(|(i, shaft)| Some((i, fits(shaft.rest_to_plate.value).err()?)))
}

/// The rig's numbers as the fit wants them. Where the tube is given or taken, the fit solves for the cowl,
/// and what stands here for its reach when down is only a start.
pub(super) fn mounting_sheet(label: &str, sheet: &SwingSheet, shaft: Length) -> Result<MountingSheet, SwingError> {
    let tube = sheet.tilt_tube.unwrap_or([inches(TUBE_FORWARD_IN), inches(TUBE_ABOVE_IN)]);
    Ok(MountingSheet {
        name: label.to_owned(),
        shaft_length: shaft,
        plate_to_propeller_shaft: sheet.plate_to_propeller_shaft,
        propeller_diameter: sheet.propeller_diameter,
        powerhead_width: sheet.width,
        powerhead_height: sheet.height,
        powerhead_forward: Length::from_si(0.0),
        powerhead_aft: sheet.height,
        protrusion_at_full_tilt: sheet.forward_at_full_tilt,
        height_at_full_tilt: sheet.height_at_full_tilt,
        tilt: AngleRange::new("the tilt range", sheet.trim[0], sheet.full_tilt)?,
        transom_angle: sheet.transom_angle,
        steering_each_way: sheet.steering,
        tilt_tube: Some(tube),
    })
}
