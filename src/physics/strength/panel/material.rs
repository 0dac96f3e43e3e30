//! Plies: what they are made of and what they bear.

use nalgebra::Matrix3;
use uom::si::f64::{Length, Pressure};

use super::error::PanelError;
use super::stiffness::narrowed;

/// A ply's stiffness and strength in the panel's axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Material {
    /// Modulus along y.
    pub modulus_y: Pressure,
    /// Modulus along z.
    pub modulus_z: Pressure,
    /// Strain along −z over strain along y, stretched along y.
    pub poisson: f64,
    /// Shear modulus in the panel's plane.
    pub shear_plane: Pressure,
    /// Shear modulus between x and y: through the thickness (for plywood, rolling shear of the cross plies counts).
    pub shear_y: Pressure,
    /// Shear modulus between x and z.
    pub shear_z: Pressure,
    /// What it bears.
    pub strength: Strength,
}

/// What a ply bears.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Strength {
    /// A metal: von Mises's stress against yield.
    VonMises {
        /// Where it yields in plain tension.
        yield_stress: Pressure,
    },
    /// Each stress against its own limit.
    MaxStress {
        /// Along y, the lesser of tension and compression.
        along_y: Pressure,
        /// Along z, likewise.
        along_z: Pressure,
        /// Shear in the panel's plane.
        plane_shear: Pressure,
        /// Shear between x and y, through the thickness.
        shear_y: Pressure,
        /// Shear between x and z.
        shear_z: Pressure,
    },
}

impl Material {
    /// The same modulus E and ratio ν every way, `G = E / 2(1 + ν)`.
    pub fn isotropic(modulus: Pressure, poisson: f64, strength: Strength) -> Self {
        let shear = modulus / (2.0 * (1.0 + poisson));
        Self {
            modulus_y: modulus,
            modulus_z: modulus,
            poisson,
            shear_plane: shear,
            shear_y: shear,
            shear_z: shear,
            strength,
        }
    }

    /// A core that shears and does not bend: its moduli in the plane are this part of its shear modulus's, small enough
    /// not to count and large enough to keep the ply's matrices sound.
    pub fn core(shear: Pressure, shear_strength: Pressure, crushing: Pressure) -> Self {
        const NEGLIGIBLE: f64 = 1e-6;
        let modulus = NEGLIGIBLE * shear;
        Self {
            modulus_y: modulus,
            modulus_z: modulus,
            poisson: 0.0,
            shear_plane: 0.5 * modulus,
            shear_y: shear,
            shear_z: shear,
            strength: Strength::MaxStress {
                along_y: crushing,
                along_z: crushing,
                plane_shear: shear_strength,
                shear_y: shear_strength,
                shear_z: shear_strength,
            },
        }
    }

    /// Turned by a quarter: y and z change places.
    pub fn turned(self) -> Self {
        let strength = match self.strength {
            Strength::MaxStress { along_y, along_z, plane_shear, shear_y, shear_z } => Strength::MaxStress {
                along_y: along_z,
                along_z: along_y,
                plane_shear,
                shear_y: shear_z,
                shear_z: shear_y,
            },
            other => other,
        };
        Self {
            modulus_y: self.modulus_z,
            modulus_z: self.modulus_y,
            poisson: self.poisson * (self.modulus_z / self.modulus_y).value,
            shear_y: self.shear_z,
            shear_z: self.shear_y,
            strength,
            ..self
        }
    }

    /// Plane-stress stiffness, Pa.
    pub(super) fn plane(&self) -> Matrix3<f64> {
        let (e1, e2, nu) = (self.modulus_y.value, self.modulus_z.value, self.poisson);
        let part = narrowed(e1, e2, nu, 1.0);
        let coupling = nu * e2 / part;
        Matrix3::new(e1 / part, coupling, 0.0, coupling, e2 / part, 0.0, 0.0, 0.0, self.shear_plane.value)
    }
}

/// A layer of one material.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ply {
    /// What it is made of, in the panel's axes.
    pub material: Material,
    /// Along x.
    pub thickness: Length,
}

impl Strength {
    pub(super) fn utilisation(&self, [sy, sz, tyz]: [f64; 3], [txy, txz]: [f64; 2]) -> f64 {
        match self {
            Strength::VonMises { yield_stress } => {
                let square = sy * sy - sy * sz + sz * sz + 3.0 * (tyz * tyz + txy * txy + txz * txz);
                square.sqrt() / yield_stress.value
            }
            Strength::MaxStress { along_y, along_z, plane_shear, shear_y, shear_z } => {
                [(sy, along_y), (sz, along_z), (tyz, plane_shear), (txy, shear_y), (txz, shear_z)]
                    .iter()
                    .fold(0.0, |worst, (stress, limit)| f64::max(worst, stress.abs() / limit.value))
            }
        }
    }
}

pub(super) fn check(ply: &Ply) -> Result<(), PanelError> {
    let m = &ply.material;
    let mut named = vec![
        ("the thickness of a ply", ply.thickness.value),
        ("a modulus", m.modulus_y.value),
        ("a modulus", m.modulus_z.value),
        ("a shear modulus", m.shear_plane.value),
        ("a shear modulus", m.shear_y.value),
        ("a shear modulus", m.shear_z.value),
    ];
    match m.strength {
        Strength::VonMises { yield_stress } => named.push(("a strength", yield_stress.value)),
        Strength::MaxStress { along_y, along_z, plane_shear, shear_y, shear_z } => {
            named.extend([along_y, along_z, plane_shear, shear_y, shear_z].map(|s| ("a strength", s.value)));
        }
    }
    for (what, value) in named {
        if !value.is_finite() {
            return Err(PanelError::NotFinite { what });
        }
        if value <= 0.0 {
            return Err(PanelError::NotPositive { what, value });
        }
    }
    if !m.poisson.is_finite() {
        return Err(PanelError::NotFinite { what: "Poisson's ratio" });
    }
    if m.poisson * m.poisson * (m.modulus_z / m.modulus_y).value >= 1.0 {
        return Err(PanelError::StiffnessIndefinite);
    }
    Ok(())
}
