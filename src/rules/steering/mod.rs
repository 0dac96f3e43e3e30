//! Steering: from the wheel to the engines.

mod actuator;
mod cable;
mod effort;
mod lines;
mod rating;
mod toe;
mod turns;

pub use actuator::ACTUATOR;
pub use cable::CABLE;
pub use effort::EFFORT;
pub use lines::LINES;
pub use rating::RATING;
pub use toe::TOE;
pub use turns::TURNS;

use super::Finding;
use crate::case::Case;
use crate::case::rigging::asked;
use crate::job::Steering;
use crate::job::rigging;
use crate::job::rigging::SteeringRig;
use crate::physics::rigging::steering::Cylinder;
use crate::quantity::{Dimensioned, Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use uom::si::f64::{Power, Velocity};

/// What the job tells of her steering, where she is steered so; else the finding that says why not.
fn steered<'c>(case: &'c Case, so: Steering) -> Result<&'c SteeringRig, Finding> {
    let Some(rig) = &case.rig.job.rigging.steering else {
        return Err(Finding::not_applicable(Text::from(
            "The job tells nothing of what is rigged to steer her (rigging.steering).",
        )));
    };
    let fits = |steering: Steering| steering == so;
    match case.rig.job.steering.as_ref() {
        Some(steering) if !fits(*steering) => {
            Err(Finding::not_applicable(say!("She is steered otherwise: {}.", steering.words())))
        }
        _ => Ok(rig),
    }
}

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

/// What was asked already, to be asked with others.
struct Told<T>(Result<T, Missing>);

impl<T> Told<T> {
    fn ask(self) -> Result<T, Missing> {
        self.0
    }
}

/// The steering cable, as a missing reading.
fn missing_cable() -> Missing {
    Missing::one(reading!(rigging::SteeringRig.cable))
}

/// Cylinders that move together.
fn count(rig: &SteeringRig) -> u8 {
    rig.cylinders.unwrap_or(1)
}

/// Power of the main engines together, and the greatest speed.
fn driven(case: &Case) -> (Result<Power, Vec<Missing>>, Result<Velocity, Missing>) {
    let power = case.rig.after.main_power();
    let power = power.map(|all| all.iter().fold(Power::from_si(0.0), |sum, (_, power)| sum + *power));
    (power, case.rig.structure.top_speed.ask().map(|speed| speed.value))
}
