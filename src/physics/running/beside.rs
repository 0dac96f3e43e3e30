//! What acts on her besides the bottom and the thrust: air, the engines' lower units, trim tabs.

use uom::si::angle::degree;
use uom::si::f64::{Angle, Area, Force, Length, MassDensity, Ratio, Velocity};

use super::balance::Beside;
use crate::quantity::{Dimensioned, Moment};

/// Density of air at 15 °C, kg/m³. Source: ICAO standard atmosphere.
pub const AIR: f64 = 1.225;
/// Drag coefficient of an open boat in the wind. Common practice, no source: 0.6 to 0.9 of the frontal area.
pub const AIR_DRAG: f64 = 0.7;
/// Frontal area of an open boat over the square of her beam. Common practice, no source.
pub const FRONT_OF_BEAM: f64 = 0.45;
/// Height of the middle of that area above the keel over her beam. Common practice, no source.
pub const FRONT_HEIGHT_OF_BEAM: f64 = 0.45;
/// Drag area of a lower unit, what of it is in the water when planing, over the square of its propeller's diameter. Common
/// practice, no source.
pub const LOWER_UNIT_DRAG: f64 = 0.012;

/// Lift of a tab an area, a degree, a dynamic pressure. Source: Savitsky and Brown 1976, value from memory.
pub const TAB_LIFT: f64 = 0.046;
/// Drag of a tab over its lift, a degree of trim and deflection. Source: Savitsky and Brown 1976, value from memory.
pub const TAB_DRAG: f64 = 0.0052;
/// Greatest deflection that the fit knows, degrees. Source: Savitsky and Brown 1976, value from memory.
pub const MOST_DEFLECTION: f64 = 15.0;

/// Trim tabs, all of one boat together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tabs {
    /// Span of all of them together.
    pub span: Length,
    /// From their hinge aft.
    pub chord: Length,
    /// Down from the bottom's line.
    pub deflection: Angle,
}

/// A thing that only drags, seen from her centre of gravity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dragged {
    /// Drag coefficient times area.
    pub area: Area,
    /// Of what it goes through.
    pub density: MassDensity,
    /// Below her centre of gravity; negative above it.
    pub below: Length,
}

impl Dragged {
    /// Its force at this speed.
    pub fn at(&self, speed: Velocity) -> Beside {
        let drag = 0.5 * self.density.si() * self.area.si() * speed.si().powi(2);
        Beside { drag: Force::from_si(drag), bow_down: Moment::from_si(drag * self.below.si()), ..Beside::default() }
    }
}

impl Tabs {
    /// Their force at this speed on a boat of this beam and trim. Their lift acts `0.6 b + chord (1 − span/b)` forward of their
    /// trailing edge. Source: D. Savitsky and P. Brown, "Procedures for hydrodynamic evaluation of planing hulls in smooth and
    /// rough water", Marine Technology 13 (4), 1976; values from memory.
    pub fn at(
        &self,
        speed: Velocity,
        density: MassDensity,
        beam: Length,
        trim: Angle,
        centre_forward: Length,
    ) -> Beside {
        let (span, chord) = (self.span.si(), self.chord.si());
        let lift = self.lift(speed, density).si();
        let drag = TAB_DRAG * lift * (trim + self.deflection).get::<degree>();
        let share = (span / beam.si()).min(1.0);
        let forward = 0.6 * beam.si() + chord * (1.0 - share) - chord;
        Beside {
            drag: Force::from_si(drag),
            lift: Force::from_si(lift),
            bow_down: Moment::from_si(lift * (centre_forward.si() - forward)),
            ..Beside::default()
        }
    }

    /// Their lift at this speed, `0.046 · chord · span · δ · ½ ρ V²`, δ in degrees.
    pub fn lift(&self, speed: Velocity, density: MassDensity) -> Force {
        let head = 0.5 * density.si() * speed.si().powi(2);
        let factor = Ratio::from_si(TAB_LIFT * self.deflection.get::<degree>());
        Force::from_si(factor.si() * self.chord.si() * self.span.si() * head)
    }
}

impl std::ops::Add for Beside {
    type Output = Beside;

    fn add(self, other: Beside) -> Beside {
        Beside {
            drag: self.drag + other.drag,
            lift: self.lift + other.lift,
            bow_down: self.bow_down + other.bow_down,
            blades: self.blades + other.blades,
        }
    }
}
