//! Steering: from the wheel to the engines.

mod actuator;
mod cable;
mod effort;
mod lines;
mod rating;
mod toe;
mod turns;

use crate::case::Case;
use crate::case::rigging::asked;
use crate::job::Steering;
use crate::job::rigging;
use crate::job::rigging::SteeringRig;
use crate::physics::rigging::steering::Cylinder;
use crate::quantity::{Basis, Dimensioned, Text, say};
use crate::reading::{Absent, reading};
use crate::rig::Missing;
use crate::rules::Rule;
use crate::working::Sheet;
use uom::si::f64::{Power, Ratio, Velocity};

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] =
    &[&turns::TURNS, &effort::EFFORT, &rating::RATING, &cable::CABLE, &toe::TOE, &lines::LINES, &actuator::ACTUATOR];

/// What the job tells of her steering, where she is steered so; else why there is nothing.
fn steered<'c>(case: &'c Case, so: Steering) -> Result<&'c SteeringRig, Absent> {
    let Some(rig) = &case.rig.job.rigging.steering else {
        return Err(Absent::NotApplicable(Text::from(NOTHING_TOLD)));
    };
    match case.rig.job.steering {
        Some(steering) if steering != so => {
            Err(Absent::NotApplicable(say!("She is steered otherwise: {}.", steering.words())))
        }
        _ => Ok(rig),
    }
}

/// What is said where nothing of it was told.
const NOTHING_TOLD: &str = "The job tells nothing of what is rigged to steer her (rigging.steering).";

/// The cylinder's measures.
fn cylinder(rig: &SteeringRig) -> Result<Cylinder, Missing> {
    use rigging::Chosen;
    let told = rig.cylinder.spec().and_then(|spec| {
        Some(Cylinder {
            bore: spec.bore.as_ref()?.value,
            rod: spec.rod.as_ref()?.value,
            stroke: spec.stroke.as_ref()?.value,
            balanced: spec.balanced?,
        })
    });
    asked(told.as_ref(), reading!(rigging::SteeringRig.cylinder)).ask().copied()
}

/// The steering cable, as a missing reading.
fn missing_cable() -> Missing {
    Missing::one(reading!(rigging::SteeringRig.cable))
}

/// Cylinders that move together.
fn count(rig: &SteeringRig) -> u8 {
    rig.cylinders.unwrap_or(1)
}

/// Where the cylinders' figures are from, and the helm's.
fn say_origins(rig: &SteeringRig, sheet: &mut Sheet) {
    use rigging::Chosen;
    let cylinder = rig.cylinder.spec();
    sheet.told("D", cylinder.and_then(|spec| spec.bore.as_ref()));
    sheet.told("d", cylinder.and_then(|spec| spec.rod.as_ref()));
    sheet.told("s", cylinder.and_then(|spec| spec.stroke.as_ref()));
    sheet.origin::<Ratio>("N", if rig.cylinders.is_some() { Basis::Measured } else { Basis::Assumed }.origin());
    sheet.told("Vh", rig.helm.spec().and_then(|helm| helm.displacement.as_ref()));
}

/// Power of the main engines together, and the greatest speed.
fn driven(case: &Case) -> (Result<Power, Vec<Missing>>, Result<Velocity, Missing>) {
    let power = case.rig.after.main_power();
    let power = power.map(|all| all.iter().fold(Power::from_si(0.0), |sum, (_, power)| sum + *power));
    (power, case.rig.structure.top_speed.ask().map(|speed| speed.value))
}
