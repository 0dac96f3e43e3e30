//! The water that she runs in.

use uom::si::f64::MassDensity;

use crate::quantity::Dimensioned;

/// Water, as the method takes it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Water {
    /// Mass over volume.
    pub density: MassDensity,
    /// Kinematic viscosity, m²/s.
    pub viscosity: f64,
}

/// Density, kg/m³, and kinematic viscosity, m²/s, of fresh water at 15 °C. Source: ITTC fresh and seawater properties,
/// values from memory.
pub const FRESH: [f64; 2] = [999.1, 1.139e-6];
/// The same of sea water. Source: the same.
pub const SEA: [f64; 2] = [1026.0, 1.188e-6];

impl Water {
    /// Water of this density at 15 °C: its viscosity in proportion between fresh and sea water.
    pub fn of(density: MassDensity) -> Self {
        let part = ((density.si() - FRESH[0]) / (SEA[0] - FRESH[0])).clamp(0.0, 1.0);
        Water { density, viscosity: FRESH[1] + part * (SEA[1] - FRESH[1]) }
    }
}
