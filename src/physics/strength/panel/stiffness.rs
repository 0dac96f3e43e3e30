//! A plate's stiffness, and what a layer gives to it: formulas that the plate runs on in numbers, and a sheet in terms.

use std::ops::{Add, Div, Mul, Sub};

use super::error::PanelError;

/// Bending and transverse shear stiffness of an orthotropic plate whose axes are the panel's own, per metre of width.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlateStiffness {
    /// Bending across, `M_y = D11 κ_y + D12 κ_z`, N·m.
    pub d11: f64,
    /// Coupling by Poisson's ratio, N·m.
    pub d12: f64,
    /// Bending up, N·m.
    pub d22: f64,
    /// Twist, `M_yz = D66 κ_yz` with the engineering curvature `κ_yz = −2 ∂²w/∂y∂z`, N·m.
    pub d66: f64,
    /// Transverse shear on faces normal to y, shear correction included, N/m.
    pub s1: f64,
    /// Transverse shear on faces normal to z, shear correction included, N/m.
    pub s2: f64,
}

impl PlateStiffness {
    /// An isotropic plate: modulus (Pa), Poisson's ratio, thickness (m), shear correction 5/6.
    pub fn isotropic(modulus: f64, poisson: f64, thickness: f64) -> Self {
        let d = modulus * thickness.powi(3) / (12.0 * (1.0 - poisson * poisson));
        let shear = SHEAR_CORRECTION * modulus / (2.0 * (1.0 + poisson)) * thickness;
        Self { d11: d, d12: poisson * d, d22: d, d66: 0.5 * (1.0 - poisson) * d, s1: shear, s2: shear }
    }

    /// Every stiffness multiplied by `factor` (a softened core, a knock-down).
    pub fn scaled(self, factor: f64) -> Self {
        Self {
            d11: factor * self.d11,
            d12: factor * self.d12,
            d22: factor * self.d22,
            d66: factor * self.d66,
            s1: factor * self.s1,
            s2: factor * self.s2,
        }
    }

    pub(super) fn check(&self) -> Result<(), PanelError> {
        let named = [
            ("D11", self.d11),
            ("D22", self.d22),
            ("D66", self.d66),
            ("the transverse shear stiffness S1", self.s1),
            ("the transverse shear stiffness S2", self.s2),
        ];
        for (what, value) in named {
            if !value.is_finite() {
                return Err(PanelError::NotFinite { what });
            }
            if value <= 0.0 {
                return Err(PanelError::NotPositive { what, value });
            }
        }
        if !self.d12.is_finite() {
            return Err(PanelError::NotFinite { what: "D12" });
        }
        if self.d12 * self.d12 >= self.d11 * self.d22 {
            return Err(PanelError::StiffnessIndefinite);
        }
        Ok(())
    }
}

/// Shear correction of a homogeneous rectangular section (E. Reissner, 1945).
pub(super) const SHEAR_CORRECTION: f64 = 5.0 / 6.0;

/// What a layer's stiffness in its plane is divided by besides: `1 − ν² E2 / E1`, with ν the strain along 2 over that along 1.
pub(super) fn narrowed<S, R>(along: S, across: S, poisson: R, one: R) -> R
where
    S: Div<S, Output = R>,
    R: Clone + Mul<R, Output = R> + Sub<R, Output = R>,
{
    one - poisson.clone() * poisson * (across / along)
}

/// What a layer gives to the bending stiffness of a unit of width, `Q t (x² + t² / 12)`, its middle x off the panel's; where the
/// panel's middle is stretched as it bends, with what turns it there, `(ΣQ s) t x`.
pub(super) fn share<S, L, A, N, M, R>(plane: S, turned: Option<N>, thick: L, middle: L, twelve: R) -> M
where
    S: Mul<L, Output = N>,
    L: Clone + Mul<L, Output = A>,
    A: Add<A, Output = A> + Div<R, Output = A>,
    N: Mul<A, Output = M>,
    M: Add<M, Output = M>,
{
    let square = |length: &L| length.clone() * length.clone();
    let own = plane * thick.clone() * (square(&middle) + square(&thick) / twelve);
    match turned {
        Some(turned) => own + turned * (thick * middle),
        None => own,
    }
}

/// Of a rectangle's second moment.
pub(super) const TWELVE: f64 = 12.0;
