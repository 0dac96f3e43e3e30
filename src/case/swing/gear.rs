//! Steering cylinder and tie bar, which move with the engines.

use nalgebra::{Point3, Vector3};
use uom::si::f64::Length;

use super::around::Around;
use super::hang::Hanging;
use super::sweep::{against, boat_scene, each, is_main};
use super::swept::{Swept, refused};
use super::{Answer, Swing, of_gear};
use crate::job::{Cylinder, Steering, TieBar};
use crate::physics::swing::called::GEARCASE;
use crate::physics::swing::{AngleRange, ConvexBody, Neighbour, NeighbourTilt, Part, Pin, Rod, Side};
use crate::quantity::{Measure, Reading, Text, degrees, inches, say};
use crate::reading::Absent;
use crate::rig::Rig;

/// A steering cylinder or actuator that was not described: forward of the tilt tube and above it, the
/// length that it sweeps, its diameter with fittings and hoses. Common practice, no source.
const CYLINDER_FORWARD_IN: f64 = 3.5;
const CYLINDER_ABOVE_IN: f64 = 1.5;
const CYLINDER_LENGTH_IN: f64 = 20.0;
const CYLINDER_DIAMETER_IN: f64 = 2.5;
/// A tie bar that was not described: its pins forward of the tilt tube and above it, its diameter. Common
/// practice, no source.
const BAR_FORWARD_IN: f64 = 5.0;
const BAR_ABOVE_IN: f64 = 1.5;
const BAR_DIAMETER_IN: f64 = 1.0;

/// Names in findings.
const CYLINDER: &str = "steering cylinder";
const BAR: &str = "tie bar";

fn or(reading: Option<&Reading<Length>>, common: f64) -> Length {
    reading.map_or(inches(common), |reading| reading.value)
}

/// Each main engine's cylinder over the whole range of tilt.
pub(super) fn cylinders(rig: &Rig, hanging: &[Hanging], around: &Around) -> Answer<Vec<Swept>> {
    let described = rig.job.steering_gear.cylinder.as_ref();
    if described == Some(&Cylinder::None) {
        return Err(Absent::NotApplicable(Text::from(
            "No steering cylinder or actuator stands forward of the engine.",
        )));
    }
    if described.is_none() {
        let why = match rig.job.steering().ask() {
            Err(missing) => return Err(Absent::Waits(vec![missing])),
            Ok(Steering::Tiller) => "Steered by a tiller: there is no cylinder.",
            Ok(Steering::RemoteMechanical) => "Steered by a cable through the tilt tube: there is no cylinder.",
            Ok(Steering::RemoteHydraulic | Steering::RemoteElectric) => "",
        };
        if !why.is_empty() {
            return Err(Absent::NotApplicable(Text::from(why)));
        }
    }
    let mains: Vec<&Hanging> = hanging.iter().filter(is_main).collect();
    let [forward, above, length, diameter] = cylinder_sizes(described);
    each(&mains, |engine| {
        let tube = engine.fitted.chain.tilt_axis().point();
        let middle = tube + Vector3::new(forward.value, 0.0, above.value);
        let half = Vector3::new(0.0, (0.5 * length.value - 0.5 * diameter.value).max(0.0), 0.0);
        let body = ConvexBody::capsule(CYLINDER, middle - half, middle + half, diameter * 0.5)
            .map_err(|error| refused(&error))?;
        let mut alone = (*engine).clone();
        alone.fitted.chain = alone
            .fitted
            .chain
            .with_body(Part::Swivel, body)
            .keeping(|_, name| name == CYLINDER)
            .map_err(|error| refused(&error))?;
        let mut scene = boat_scene(&alone, alone.fitted.tilt, around.known.clone());
        scene.may_touch.clear();
        // The cylinder is carried by the swivel: steering does not move it.
        scene.steer = AngleRange::only("the steering", degrees(0.0)).map_err(|e| refused(&e))?;
        let mut swept = against(&engine.label, scene, around, of_gear(), true)?;
        swept.taken = !cylinder_described(described);
        Ok(swept)
    })
}

fn cylinder_sizes(described: Option<&Cylinder>) -> [Length; 4] {
    let (forward, above, length, diameter) = match described {
        Some(Cylinder::Fitted { forward, above, length, diameter }) => {
            (forward.as_ref(), above.as_ref(), length.as_ref(), diameter.as_ref())
        }
        Some(Cylinder::None) | None => (None, None, None, None),
    };
    [
        or(forward, CYLINDER_FORWARD_IN),
        or(above, CYLINDER_ABOVE_IN),
        or(length, CYLINDER_LENGTH_IN),
        or(diameter, CYLINDER_DIAMETER_IN),
    ]
}

/// Whether nothing of the cylinder is taken for granted.
fn cylinder_described(described: Option<&Cylinder>) -> bool {
    matches!(described, Some(Cylinder::Fitted { forward: Some(_), above: Some(_), length: Some(_), diameter: Some(_) }))
}

/// Whether nothing of the bar is taken for granted.
fn bar_described(described: Option<&TieBar>) -> bool {
    matches!(described, Some(TieBar::Fitted { forward: Some(_), above: Some(_), diameter: Some(_) }))
}

fn bar_sizes(described: Option<&TieBar>) -> [Length; 3] {
    let (forward, above, diameter) = match described {
        Some(TieBar::Fitted { forward, above, diameter }) => (forward.as_ref(), above.as_ref(), diameter.as_ref()),
        Some(TieBar::None) | None => (None, None, None),
    };
    [or(forward, BAR_FORWARD_IN), or(above, BAR_ABOVE_IN), or(diameter, BAR_DIAMETER_IN)]
}

/// Each tie bar, engines tilted together and alone.
pub(super) fn tie_bars(rig: &Rig, hanging: &[Hanging], around: &Around) -> Answer<Vec<Swept>> {
    let mut mains: Vec<&Hanging> = hanging.iter().filter(is_main).collect();
    if mains.len() < 2 {
        return Err(Absent::NotApplicable(Text::from("A single main engine needs no tie bar.")));
    }
    let described = rig.job.steering_gear.tie_bar.as_ref();
    if described == Some(&TieBar::None) {
        return Err(Absent::NotApplicable(Text::from("There is no tie bar.")));
    }
    mains.sort_by(|a, b| b.rest.y.total_cmp(&a.rest.y));
    let pairs: Vec<[&Hanging; 2]> = mains.windows(2).map(|two| [two[0], two[1]]).collect();
    let [forward, above, diameter] = bar_sizes(described);
    each(&pairs, |[one, other]| {
        let pin = |side, engine: &Hanging| {
            let tube = engine.fitted.chain.tilt_axis().point();
            Pin { side, part: Part::Head, at: Point3::new(tube.x + forward.value, engine.rest.y, tube.z + above.value) }
        };
        // Only the bar is asked about: one body of each engine is kept to carry it, and may touch anything.
        let mut alone = (*one).clone();
        let carrier = |_: Part, name: &str| name == GEARCASE;
        alone.fitted.chain = alone.fitted.chain.keeping(carrier).map_err(|error| refused(&error))?;
        let mut scene = boat_scene(&alone, alone.fitted.tilt, around.known.clone());
        scene.neighbour = Some(Neighbour {
            chain: other.fitted.chain.keeping(carrier).map_err(|error| refused(&error))?,
            tilt: NeighbourTilt::Independent(other.fitted.tilt),
        });
        scene.rods.push(Rod {
            name: BAR.to_owned(),
            ends: [pin(Side::Own, one), pin(Side::Neighbour, other)],
            radius: diameter * 0.5,
        });
        let others = scene.obstacles.iter().map(|obstacle| obstacle.name());
        let free: Vec<String> = others.chain([super::around::UNMEASURED, GEARCASE]).map(str::to_owned).collect();
        scene.may_touch = free.into_iter().map(|name| (GEARCASE.to_owned(), name)).collect();
        let mut swept = against(&one.label, scene, around, of_gear(), true)?;
        swept.other = Some(other.label.clone());
        swept.taken = !bar_described(described);
        Ok(swept)
    })
}

/// What was taken for granted of the gear, where it was looked at.
pub(super) fn assumed(swing: &Swing, rig: &Rig) -> Vec<Text> {
    let mut assumed = Vec::new();
    if swing.cylinder.is_ok() && !cylinder_described(rig.job.steering_gear.cylinder.as_ref()) {
        let [forward, above, length, diameter] =
            cylinder_sizes(rig.job.steering_gear.cylinder.as_ref()).map(Measure::tape);
        assumed.push(say!(
                "Swing: the steering cylinder lies {} forward of the tilt tube and {} above it, sweeps {} across and is {} thick with hoses and fittings.",
                forward, above, length, diameter
            ));
    }
    if swing.tie_bar.is_ok() && !bar_described(rig.job.steering_gear.tie_bar.as_ref()) {
        let [forward, above, diameter] = bar_sizes(rig.job.steering_gear.tie_bar.as_ref()).map(Measure::tape);
        assumed.push(say!(
            "Swing: the tie bar's pins lie {} forward of the tilt tubes and {} above them; it is {} thick.",
            forward,
            above,
            diameter
        ));
    }
    assumed
}
