//! The way of a push-pull cable.

use crate::job::rigging::{self, BendEntry, LegEntry};
use crate::physics::rigging::cable::{self, Bend};
use crate::quantity::{Dimensioned, Measure, Style, degrees, inches};
use crate::reading::reading;
use crate::rig::Missing;
use crate::working::{Sheet, Term};
use uom::si::f64::{Angle, Length};

/// What the way of a cable asks of it.
pub struct Way {
    /// Length round the bends.
    pub length: Term<Length>,
    /// Radius of its sharpest bend, where one was measured.
    pub sharpest: Option<Length>,
    /// How far all bends turn together.
    pub turned: Angle,
}

/// A bend is a right angle, and as wide as the cable may be laid, where that was not measured. Common practice, no source.
fn bend(entry: &BendEntry) -> Bend {
    Bend {
        angle: entry.angle.as_ref().map_or(degrees(90.0), |angle| angle.value),
        radius: entry.radius.as_ref().map_or(cable::least_radius(), |radius| radius.value),
    }
}

/// The way of a cable over these legs and bends.
///
/// # Errors
/// A leg that was not measured, or none at all.
pub fn way(sheet: &mut Sheet, legs: &[LegEntry], bends: &[BendEntry], of: &str) -> Result<Way, Missing> {
    let lengths: Option<Vec<Length>> = legs.iter().map(|leg| Some(leg.length.as_ref()?.value)).collect();
    let lengths = lengths.filter(|lengths| !lengths.is_empty());
    let Some(lengths) = lengths else {
        let measurement =
            if of == STEERING { reading!(rigging::SteeringRig.cable) } else { reading!(rigging::Controls.cables) };
        return Err(Missing { measurement, of: (of != STEERING).then(|| of.to_owned()) });
    };
    for (i, leg) in legs.iter().enumerate() {
        sheet.told(&format!("l{}", i + 1), leg.length.as_ref());
    }
    for (i, bend) in bends.iter().enumerate() {
        sheet.told(&format!("r{}", i + 1), bend.radius.as_ref());
        sheet.told(&format!("θ{}/2", i + 1), bend.angle.as_ref());
    }
    let bends_given: Vec<Bend> = bends.iter().map(bend).collect();
    let measured = bends.iter().filter_map(|bend| Some(bend.radius.as_ref()?.value));
    Ok(Way {
        length: cable::length(sheet, &lengths, &bends_given),
        sharpest: measured.reduce(|a, b| if b.si() < a.si() { b } else { a }),
        turned: cable::turned(&bends_given),
    })
}

/// A way as it is told: to the next whole inch, which is what its legs were taken to.
pub fn told(length: Length) -> Measure {
    let inch = inches(1.0);
    // A hair over a whole inch is that inch.
    Measure::styled(inch * ((length / inch).si() - HAIR).ceil(), Style::FeetInches)
}

/// Part of an inch that no leg is taken to. Common practice, no source.
const HAIR: f64 = 0.05;

/// What the steering cable is called here.
pub const STEERING: &str = "steering cable";
