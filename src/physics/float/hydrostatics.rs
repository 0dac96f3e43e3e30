//! The hydrostatic particulars over a range of drafts, and the small formulas that follow from them.

use nalgebra::Point3;
use uom::si::angle::radian;
use uom::si::area::square_meter;
use uom::si::f64::{Angle, Area, Length, Mass, MassDensity, Torque, Volume};
use uom::si::length::meter;
use uom::si::mass_density::kilogram_per_cubic_meter;

use super::cut::{Immersed, Waterplane};
use super::equilibrium::{metacentric_radii, positive};
use super::error::FloatError;
use super::hull::Hull;
use super::water::{Attitude, WaterPlane};
use crate::quantity::standard_gravity;

/// One line of a hydrostatics table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hydrostatics {
    /// Plumb depth of the origin of boat axes under the water.
    pub draft: Length,
    /// Trim, positive bow up.
    pub trim: Angle,
    /// Mass of the displaced water.
    pub displacement: Mass,
    /// Its volume.
    pub volume: Volume,
    /// Centre of buoyancy (LCB, TCB, VCB) in boat axes, metres.
    pub centre_of_buoyancy: Point3<f64>,
    /// KB: plumb height of the centre of buoyancy above the origin.
    pub kb: Length,
    /// Waterplane, with its centroid (LCF) and second moments.
    pub waterplane: Waterplane,
    /// Wetted surface.
    pub wetted_surface: Area,
    /// BM for heel: transverse second moment over volume.
    pub bm_transverse: Length,
    /// BM for trim.
    pub bm_longitudinal: Length,
    /// Density of the water.
    pub water: MassDensity,
}

impl Hydrostatics {
    /// KM for heel: KB + BM.
    #[must_use]
    pub fn km_transverse(&self) -> Length {
        self.kb + self.bm_transverse
    }

    /// KM for trim.
    #[must_use]
    pub fn km_longitudinal(&self) -> Length {
        self.kb + self.bm_longitudinal
    }

    /// Mass that sinks her by a distance at constant trim, for a small distance.
    #[must_use]
    pub fn mass_to_sink(&self, distance: Length) -> Mass {
        mass_to_sink(self.waterplane.area, self.water, distance)
    }

    /// Moment that changes her trim by a difference of draft between two marks a length apart, for a
    /// centre of gravity at a plumb height above the origin.
    #[must_use]
    pub fn moment_to_trim(&self, kg: Length, between_marks: Length, change: Length) -> Torque {
        let gm = self.km_longitudinal() - kg;
        moment_to_trim(self.displacement, gm, between_marks, change)
    }
}

/// m = ρ A d: the mass that sinks a waterplane by a small distance at constant trim.
#[must_use]
pub fn mass_to_sink(waterplane: Area, water: MassDensity, distance: Length) -> Mass {
    water * waterplane * distance
}

/// M = m g GM_L d / L: the moment that changes the trim by a difference of draft d over a length L.
#[must_use]
pub fn moment_to_trim(mass: Mass, gm_longitudinal: Length, between_marks: Length, change: Length) -> Torque {
    // uom keeps torque (an energy per angle) apart from force times length.
    Torque::from(mass * standard_gravity() * gm_longitudinal * (change / between_marks))
}

/// The hydrostatics at a water plane.
///
/// # Errors
/// [`FloatError`] where the density is not a positive number; [`FloatError::Dry`] where nothing is
/// immersed.
pub fn hydrostatics_at(hull: &Hull, water: MassDensity, plane: &WaterPlane) -> Result<Hydrostatics, FloatError> {
    positive("the density of the water", water.get::<kilogram_per_cubic_meter>())?;
    let immersed = hull.cut(plane);
    if immersed.waterplane.area.get::<square_meter>() <= 0.0 {
        return Err(FloatError::Dry);
    }
    let (bm_transverse, bm_longitudinal) = metacentric_radii(&immersed);
    let Immersed { volume, centre_of_buoyancy, waterplane, wetted_surface } = immersed;
    let attitude = plane.attitude();
    Ok(Hydrostatics {
        draft: attitude.sinkage,
        trim: attitude.trim,
        displacement: water * volume,
        volume,
        centre_of_buoyancy,
        kb: Length::new::<meter>(plane.normal.dot(&centre_of_buoyancy.coords)),
        waterplane,
        wetted_surface,
        bm_transverse,
        bm_longitudinal,
        water,
    })
}

/// The hydrostatics for several drafts of the origin, upright at one trim.
///
/// # Errors
/// As [`hydrostatics_at`], at the first draft that fails.
pub fn hydrostatics_table(
    hull: &Hull,
    water: MassDensity,
    trim: Angle,
    drafts: &[Length],
) -> Result<Vec<Hydrostatics>, FloatError> {
    drafts
        .iter()
        .map(|&sinkage| {
            let plane = WaterPlane::at(Attitude { sinkage, trim, heel: Angle::new::<radian>(0.0) })?;
            hydrostatics_at(hull, water, &plane)
        })
        .collect()
}
