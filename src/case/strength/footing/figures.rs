//! One engine on its face: what its entry says, and the usual figure where it says nothing.

use nalgebra::Point3;
use uom::si::f64::{Angle, Length, Mass};

use super::super::board::Board;
use crate::job::Role;
use crate::quantity::{Dimensioned, Reading, degrees, inches};
use crate::rig::{Engine, Group};

/// What the job leaves open of an engine. Common practice, no source, for all of them.
const CENTRE_AFT_IN: f64 = 12.0;
const CENTRE_ABOVE_IN: f64 = 5.0;
const PLATE_TO_SHAFT_IN: f64 = 8.0;
const PROPELLER_IN: f64 = 14.0;
const STEERING_DEG: f64 = 30.0;
const TILT_DEG: f64 = 70.0;

/// What the loads of an engine are reckoned from.
pub(super) struct Figures<'a> {
    pub engine: &'a Engine,
    /// With its share of what else hangs on the transom.
    pub mass: Mass,
    /// That share.
    pub beside: Mass,
    /// Its own mounting face aft of the transom's, level.
    pub setback: Length,
    /// Centre of gravity aft of its own mounting face.
    pub aft: Length,
    /// Centre of gravity above the rest of its bracket.
    pub above: Length,
    /// The middle of that rest, boat axes, on the boat's centreline, m.
    pub rest: Point3<f64>,
    /// Propeller shaft below that rest.
    pub shaft: Length,
    pub propeller: Length,
    pub steering: Angle,
    pub tilt: Angle,
    /// What usual figures were taken for.
    pub usual: Vec<&'static str>,
}

impl<'a> Figures<'a> {
    /// Of an engine of the group; a main engine bears a `share` of what else hangs there.
    pub fn of(group: &Group, engine: &'a Engine, board: &Board, share: Mass) -> Self {
        let spec = &engine.spec;
        let mut usual = Vec::new();
        let (centre_aft, centre_above) = (given(&spec.centre_aft), given(&spec.centre_above));
        if centre_aft.is_none() || centre_above.is_none() {
            usual.push("its centre of gravity");
        }
        let mut or = |given: Option<Length>, what, inch| {
            given.unwrap_or_else(|| {
                usual.push(what);
                inches(inch)
            })
        };
        let gearcase = or(given(&spec.plate_to_propeller_shaft), "its gearcase", PLATE_TO_SHAFT_IN);
        let propeller = spec.propeller_diameter.as_ref().map(|d| d.to.value);
        let propeller = or(propeller, "its propeller", PROPELLER_IN);
        let mut or = |given: Option<Angle>, what, degree| {
            given.unwrap_or_else(|| {
                usual.push(what);
                degrees(degree)
            })
        };
        let steering = or(given(&spec.steering), "its steering", STEERING_DEG);
        let tilt = or(given(&spec.full_tilt), "its tilt", TILT_DEG);
        let weight = engine.weight.reading().map(|weight| weight.value);
        let leg = engine.rest_to_plate.reading().map(|leg| leg.value);
        let drop = group.drop().reading().map(|drop| drop.value);
        let rows = engine.holes_up.reading().copied().unwrap_or_default();
        let rest = board.stern.rest(setback(group), drop.unwrap_or_default(), rows);
        let beside = match engine.role {
            Role::Main => share,
            Role::Auxiliary => Mass::default(),
        };
        Figures {
            engine,
            mass: weight.unwrap_or_default() + beside,
            beside,
            setback: board.level(setback(group)),
            aft: centre_aft.unwrap_or(inches(CENTRE_AFT_IN)),
            above: centre_above.unwrap_or(inches(CENTRE_ABOVE_IN)),
            rest,
            shaft: leg.unwrap_or_default() + gearcase,
            propeller,
            steering,
            tilt,
            usual,
        }
    }

    /// Centre of gravity aft of the transom's face, level.
    pub fn weight_aft(&self) -> Length {
        self.setback + self.aft
    }

    /// Centre of gravity aft of its mounting face at full tilt.
    pub fn tilted_aft(&self) -> Length {
        self.aft * self.tilt.cos() - self.above * self.tilt.sin()
    }
}

/// How far the engines' faces stand off the transom's, square to it.
pub(super) fn setback(group: &Group) -> Length {
    let setback = group.setback();
    setback.reading().map_or(Length::default(), |setback| setback.value)
}

fn given<Q: Dimensioned>(reading: &Option<Reading<Q>>) -> Option<Q> {
    reading.as_ref().map(|reading| reading.value)
}
