//! The sum of weights.

use nalgebra::{Point3, Vector3};
use uom::ConstZero;
use uom::si::f64::Mass;
use uom::si::mass::kilogram;

use super::error::FloatError;

/// A mass at a place. A mass below zero is one that is taken away.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weight {
    /// The mass.
    pub mass: Mass,
    /// Its centre in boat axes, metres.
    pub centre: Point3<f64>,
}

impl Weight {
    /// The same weight, taken away.
    #[must_use]
    pub fn removed(self) -> Self {
        Self { mass: -self.mass, ..self }
    }
}

/// Total mass and its centre.
///
/// # Errors
/// [`FloatError::NotFinite`] for an entry that is not a number, [`FloatError::NotPositive`] where the total
/// is not above zero (an empty list too).
pub fn total(weights: &[Weight]) -> Result<Weight, FloatError> {
    let mut mass = Mass::ZERO;
    let mut moment = Vector3::zeros();
    for weight in weights {
        let kg = weight.mass.get::<kilogram>();
        if !kg.is_finite() || !weight.centre.iter().all(|c| c.is_finite()) {
            return Err(FloatError::NotFinite { what: "a weight" });
        }
        mass += weight.mass;
        moment += weight.centre.coords * kg;
    }
    let kg = mass.get::<kilogram>();
    if kg <= 0.0 {
        return Err(FloatError::NotPositive { what: "the total mass" });
    }
    let centre = Point3::from(moment / kg);
    if !kg.is_finite() || !centre.iter().all(|c| c.is_finite()) {
        return Err(FloatError::NotFinite { what: "the total mass" });
    }
    Ok(Weight { mass, centre })
}
