//! The search for a place where weight and buoyancy balance.
//!
//! With c the offset of the water plane and n its normal, both in boat axes, mass m at G and density ρ,
//! the potential energy over g is
//!
//! E(c, n) = m (n·G − c) + ρ ∫ (c − n·x) dV, over the immersed x.
//!
//! Its slope is the want of balance (∂E/∂c = ρV − m, ∂E/∂n = mG − ρVB), its curvature the stiffness of
//! the waterplane less the rise of G over B, and its minima are the stable equilibria. So a Newton step
//! that never lets E rise ends at an equilibrium from any start. The step is taken along each
//! direction of curvature with the size of that curvature, so that an unstable equilibrium is met only
//! from a start that is in balance in the unstable direction.

use nalgebra::{Matrix3, Point3, SymmetricEigen, Vector3};

use super::cut::Sums;
use super::hull::Hull;
use super::tree::Blade;
use super::water::WaterPlane;

/// Most steps before the search gives up.
const MAX_STEPS: usize = 200;
/// Want of balance at which the search ends, as a part of mass and of mass × hull scale.
const BALANCED: f64 = 2e-14;
/// Want of balance that is still called an equilibrium where rounding stops the search earlier.
pub(super) const BALANCED_WITHIN_ROUNDING: f64 = 1e-9;
/// Longest first step: half a radian, or half the hull scale.
const FIRST_RADIUS: f64 = 0.5;
/// Longest step ever.
const LARGEST_RADIUS: f64 = 1.0;
/// Part of the promised fall of energy that a step must deliver.
const LEAST_GAIN: f64 = 1e-4;
/// Changes of the scaled energy below this are rounding.
const ENERGY_ROUNDING: f64 = 1e-14;
/// Curvatures are taken for at least this part of the largest one.
const LEAST_CURVATURE: f64 = 1e-10;

/// Mass in kg, its centre relative to the hull's reference point in metres, water density in kg/m³.
#[derive(Clone, Copy, Debug)]
pub(super) struct Problem<'a> {
    pub hull: &'a Hull,
    pub mass: f64,
    pub centre: Vector3<f64>,
    pub density: f64,
    /// Heel stays as it is.
    pub heel_held: bool,
}

/// Energy and its derivatives at a plane, scaled by mass and hull scale: by offset, trim and heel.
#[derive(Clone, Copy, Debug)]
pub(super) struct State {
    pub plane: WaterPlane,
    pub sums: Sums,
    pub blade: Blade,
    energy: f64,
    /// Scaled want of balance: force, trimming moment, heeling moment.
    pub slope: Vector3<f64>,
    pub curvature: Matrix3<f64>,
}

#[derive(Clone, Copy, Debug)]
pub(super) struct Descent {
    pub state: State,
    pub steps: usize,
}

impl State {
    /// Potential energy, scaled by weight and hull scale.
    pub(super) fn energy(&self) -> f64 {
        self.energy
    }
}

impl Descent {
    pub(super) fn balanced(&self) -> bool {
        self.state.slope.norm() <= BALANCED_WITHIN_ROUNDING
    }
}

impl<'a> Problem<'a> {
    pub(super) fn new(hull: &'a Hull, mass: f64, centre: &Point3<f64>, density: f64) -> Self {
        Self { hull, mass, centre: centre - hull.reference(), density, heel_held: false }
    }

    pub(super) fn state(&self, plane: WaterPlane) -> State {
        let (sums, blade) = self.hull.sums(&plane);
        let scale = self.hull.scale();
        let density = self.density / self.mass;
        let pull = self.centre - sums.moment * density;
        let (n, e, f) = (blade.normal, blade.forward, blade.port);
        let along = n.dot(&pull);
        let energy = (along + blade.offset * (density * sums.volume - 1.0)) / scale;
        let mut slope = Vector3::new(density * sums.volume - 1.0, e.dot(&pull) / scale, f.dot(&pull) / scale);
        let rim = &sums.rim;
        let (offset_trim, offset_heel) = (-density * rim.u, -density * rim.v);
        let trim = (density * rim.uu - along) / scale;
        let heel = (density * rim.vv - along) / scale;
        let trim_heel = density * rim.uv / scale;
        let mut curvature = Matrix3::new(
            density * rim.area * scale,
            offset_trim,
            offset_heel,
            offset_trim,
            trim,
            trim_heel,
            offset_heel,
            trim_heel,
            heel,
        );
        if self.heel_held {
            slope.z = 0.0;
            curvature.fill_column(2, 0.0);
            curvature.fill_row(2, 0.0);
            curvature[(2, 2)] = 1.0;
        }
        State { plane, sums, blade, energy, slope, curvature }
    }

    /// The plane of the same normal that displaces the mass, within a part of it: Newton on the volume,
    /// kept between bounds.
    pub(super) fn sink(&self, plane: WaterPlane, within: f64, most_steps: usize) -> WaterPlane {
        let (mut low, mut high) = self.hull.reach_along(&plane.normal);
        let mut plane = plane;
        if !(plane.offset > low && plane.offset < high) {
            plane.offset = 0.5 * (low + high);
        }
        let wanted = self.mass / self.density;
        for _ in 0..most_steps {
            let (sums, _) = self.hull.sums(&plane);
            let excess = sums.volume - wanted;
            if excess.abs() <= within * wanted {
                break;
            }
            if excess > 0.0 {
                high = plane.offset;
            } else {
                low = plane.offset;
            }
            let newton = plane.offset - excess / sums.rim.area;
            plane.offset = if newton > low && newton < high { newton } else { 0.5 * (low + high) };
        }
        plane
    }

    pub(super) fn descend(&self, start: WaterPlane) -> Descent {
        let mut state = self.state(start);
        let mut radius = FIRST_RADIUS;
        for steps in 0..MAX_STEPS {
            let want = state.slope.norm();
            if want <= BALANCED || want.is_nan() {
                return Descent { state, steps };
            }
            let Some(step) = step(&state, radius) else {
                return Descent { state, steps };
            };
            let promised = -(state.slope.dot(&step) + 0.5 * step.dot(&(state.curvature * step)));
            let trial = self.moved(&state, &step).map(|plane| self.state(plane)).ok();
            let length = step.norm();
            let taken = trial.filter(|trial| {
                let rounding = ENERGY_ROUNDING * (1.0 + state.energy.abs());
                let gain = state.energy - trial.energy;
                if promised > rounding { gain >= LEAST_GAIN * promised } else { trial.slope.norm() < want }
            });
            match taken {
                Some(trial) => {
                    let gain = state.energy - trial.energy;
                    if gain > 0.7 * promised {
                        radius = (2.0 * length).clamp(radius, LARGEST_RADIUS);
                    }
                    state = trial;
                }
                None if length < 1e-15 || want < BALANCED_WITHIN_ROUNDING => {
                    return Descent { state, steps };
                }
                None => radius = 0.25 * length.min(radius),
            }
        }
        Descent { state, steps: MAX_STEPS }
    }

    fn moved(&self, state: &State, step: &Vector3<f64>) -> Result<WaterPlane, super::error::FloatError> {
        let blade = &state.blade;
        let normal = (blade.normal + blade.forward * step.y + blade.port * step.z).normalize();
        let offset = blade.offset + step.x * self.hull.scale() + normal.dot(&self.hull.reference().coords);
        WaterPlane::from_normal(normal, offset)
    }

    /// The plane turned about the face's centroid by an angle in the direction (trim, heel), radians.
    pub(super) fn turned(&self, state: &State, trim: f64, heel: f64) -> WaterPlane {
        self.moved(state, &Vector3::new(0.0, trim, heel)).map_or(state.plane, |plane| self.sink(plane, 1e-3, 30))
    }
}

fn step(state: &State, radius: f64) -> Option<Vector3<f64>> {
    let finite = state.slope.iter().chain(state.curvature.iter());
    if !finite.into_iter().all(|c| c.is_finite()) {
        return None;
    }
    if let Some(cholesky) = state.curvature.cholesky() {
        let step = -cholesky.solve(&state.slope);
        // A step within the radius needs no second thoughts.
        if step.norm() <= radius {
            return Some(step);
        }
    }
    let eigen = SymmetricEigen::try_new(state.curvature, 1e-15, 100)?;
    let largest = eigen.eigenvalues.amax();
    let turned = eigen.eigenvectors.transpose() * state.slope;
    let mut step = Vector3::zeros();
    for (i, &slope) in turned.iter().enumerate() {
        let curvature = eigen.eigenvalues[i].abs();
        let floor = (LEAST_CURVATURE * largest).max(f64::MIN_POSITIVE);
        // Held back one by one, so that a direction without stiffness does not starve the others.
        let along = (slope / curvature.max(floor)).clamp(-radius, radius);
        step -= eigen.eigenvectors.column(i) * along;
    }
    step.iter().all(|c| c.is_finite()).then_some(step)
}
