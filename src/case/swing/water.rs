//! Propeller, skeg and gearcase over the water at full tilt, boat at rest.

use nalgebra::{Point3, Vector3};

use super::hang::Hanging;
use super::sweep::each;
use super::swept::refused;
use super::{Answer, Swing};
use crate::case::Case;
use crate::case::float::Crew;
use crate::case::stern::Stern;
use crate::physics::swing::{Plane, PlaneClearance, called, height_above};
use crate::quantity::{Dimensioned, Text, degrees, say};
use crate::reading::Absent;
use crate::rig::Missing;

/// What has to come out of the water. Common practice, no source.
const BLADES: [&str; 2] = [called::PROPELLER, called::SKEG];
/// What may dip into it with its nose. Common practice, no source.
const DIPS: [&str; 1] = [called::GEARCASE];

/// How the boat lies, and how that is known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Condition {
    /// As she floats in this loading.
    Loading(String),
    /// At the waterline that was measured.
    Measured,
}

impl Condition {
    /// What it is called.
    pub fn name(&self) -> &str {
        match self {
            Condition::Loading(name) => name,
            Condition::Measured => "at the measured waterline",
        }
    }
}

/// One engine at full tilt over the water in one condition.
#[derive(Clone, Debug)]
pub struct AboveWater {
    /// Which engine.
    pub label: String,
    /// The condition of the boat.
    pub condition: Condition,
    /// The lowest point of its propeller and skeg over the water.
    pub clearance: PlaneClearance,
    /// The lowest point of its gearcase, whose body holds the real one and reaches no less far.
    pub gearcase: PlaneClearance,
    /// Full tilt from upright.
    pub tilt: uom::si::f64::Angle,
    /// How high its lifting bracket is raised, where it hangs on one whose travel is known.
    pub raised: Option<uom::si::f64::Length>,
}

impl AboveWater {
    /// In which condition, as a sentence ends with it.
    pub fn when(&self) -> String {
        match &self.condition {
            Condition::Loading(name) => format!("in `{name}`"),
            Condition::Measured => self.condition.name().to_owned(),
        }
    }
}

/// The water's surface with nobody aboard, in boat axes: the one place where waterlines come from. As she floats
/// with the new engines, in every loading without persons; where her shape or weight is not known, as measured.
///
/// # Errors
/// The waterline as a missing reading; why she does not float upright at her mooring.
pub fn rest_waterlines(case: &Case) -> Answer<Vec<(Condition, Plane)>> {
    let floating = as_she_floats(case)?;
    if floating.is_empty() { measured(case).map_err(Absent::Waits) } else { Ok(floating) }
}

fn as_she_floats(case: &Case) -> Answer<Vec<(Condition, Plane)>> {
    let Ok(float) = case.float() else {
        return Ok(Vec::new());
    };
    let mut waters = Vec::new();
    for loaded in float.loadings.iter().filter(|loaded| loaded.crew == Crew::Ashore) {
        let Some(state) = &loaded.after else {
            continue;
        };
        let name = loaded.name.as_str();
        let sinks = |why| say!("In `{}` ", name).then(why).then(Text::from(": see “metacentric height”."));
        let floating = state.upright().map_err(|why| Absent::NotApplicable(sinks(why)))?;
        let up = floating.plane.normal().into_inner();
        let at = Point3::from(up * floating.plane.offset().si());
        let plane = Plane::new("water", at, up).map_err(|error| refused(&error))?;
        waters.push((Condition::Loading(loaded.name.clone()), plane));
    }
    Ok(waters)
}

fn measured(case: &Case) -> Result<Vec<(Condition, Plane)>, Vec<Missing>> {
    let rig = case.rig;
    let stern = Stern::of(rig)?;
    let below = rig.job.waterline().ask().map_err(|m| vec![m])?.value;
    let (sin, cos) = stern.angle.value.sin_cos();
    let at = Point3::new(stern.top.x + below.value * sin, 0.0, stern.top.z - below.value * cos);
    Plane::new("water", at, Vector3::z()).map(|plane| vec![(Condition::Measured, plane)]).map_err(|_| Vec::new())
}

/// Every engine in every condition.
pub(super) fn above(case: &Case, hanging: &[Hanging]) -> Answer<Vec<AboveWater>> {
    let waterlines = rest_waterlines(case)?;
    let pairs: Vec<(&Hanging, &(Condition, Plane))> =
        hanging.iter().flat_map(|engine| waterlines.iter().map(move |water| (engine, water))).collect();
    each(&pairs, |(engine, (condition, plane))| {
        let tilt = engine.fitted.tilt.high();
        // At her mooring an engine on a lifting bracket is raised.
        let chain = match engine.lift {
            Some(lift) => engine.fitted.chain.shifted(lift.raised(lift.travel())),
            None => engine.fitted.chain.clone(),
        };
        let lowest =
            |bodies: &[&str]| height_above(&chain, bodies, tilt, degrees(0.0), plane).map_err(|error| refused(&error));
        Ok(AboveWater {
            label: engine.label.clone(),
            condition: condition.clone(),
            clearance: lowest(&BLADES)?,
            gearcase: lowest(&DIPS)?,
            tilt,
            raised: engine.lift.map(|lift| lift.travel()),
        })
    })
}

/// What was taken for granted.
pub(super) fn assumed(swing: &Swing) -> Option<Text> {
    let measured = |all: &Vec<AboveWater>| all.iter().any(|one| one.condition == Condition::Measured);
    swing
        .water
        .as_ref()
        .is_ok_and(measured)
        .then(|| Text::from("Swing: the measured waterline holds with the new engines, and she floats at level trim."))
}
