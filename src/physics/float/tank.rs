//! Free surface of part-full tanks and live wells.

use uom::si::f64::{Length, Mass, MassDensity};
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;

use super::equilibrium::positive;
use super::error::FloatError;

/// A rectangular tank that is neither empty nor pressed full.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tank {
    /// Inside length, fore and aft.
    pub length: Length,
    /// Inside breadth, athwart; of each compartment, if baffles divide it along.
    pub breadth: Length,
    /// Density of what is in it.
    pub fluid: MassDensity,
}

/// The virtual rise of the centre of gravity from free surfaces: take it off GM, or add it to KG.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreeSurface {
    /// For heel.
    pub transverse: Length,
    /// For trim.
    pub longitudinal: Length,
}

/// Σ i ρ / m with i = l b³/12 for heel and b l³/12 for trim.
///
/// Exact for small angles at any fill between; the fluid's mass itself belongs in the ledger.
///
/// # Errors
/// [`FloatError`] where a dimension, a density or the boat's mass is not a positive number.
pub fn free_surface_rise(tanks: &[Tank], boat: Mass) -> Result<FreeSurface, FloatError> {
    let mass = positive("the mass", boat.get::<kilogram>())?;
    let (mut transverse, mut longitudinal) = (0.0, 0.0);
    for tank in tanks {
        let length = positive("a tank's length", tank.length.get::<meter>())?;
        let breadth = positive("a tank's breadth", tank.breadth.get::<meter>())?;
        let density = positive("a tank's density", tank.fluid.get::<kilogram_per_cubic_meter>())?;
        transverse += density * length * breadth.powi(3) / 12.0;
        longitudinal += density * breadth * length.powi(3) / 12.0;
    }
    Ok(FreeSurface {
        transverse: Length::new::<meter>(transverse / mass),
        longitudinal: Length::new::<meter>(longitudinal / mass),
    })
}
