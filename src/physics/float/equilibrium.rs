//! Where she comes to rest: sinkage, trim and heel together.

use nalgebra::Point3;
use uom::si::angle::radian;
use uom::si::area::square_meter;
use uom::si::f64::{Length, Mass, MassDensity};
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::volume::cubic_meter;

use super::cut::{self, Immersed};
use super::descent::{Descent, Problem, State};
use super::error::FloatError;
use super::hull::Hull;
use super::water::{Attitude, WaterPlane};

/// Push off an unstable equilibrium, radians.
const PUSH: f64 = 0.05;
/// Unstable equilibria that are left behind before the search gives up.
const MOST_PUSHES: usize = 8;
/// A least metacentric height no further below zero than this is called neutral, metres: rounding.
const NEUTRAL_M: f64 = 1e-9;
/// Two resting places whose scaled energies differ by no more than this are equally deep: rounding.
const ENERGY_TIE: f64 = 1e-9;

/// What the boat weighs, where, and the water that she floats in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// Mass of boat and everything in her.
    pub mass: Mass,
    /// Centre of gravity in boat axes, metres.
    pub centre: Point3<f64>,
    /// Density of the water.
    pub water: MassDensity,
}

/// How well weight and buoyancy balance where the search ended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Residual {
    /// (Displaced mass − mass) / mass.
    pub force: f64,
    /// Horizontal distance between centre of gravity and centre of buoyancy, fore and aft.
    pub trim_lever: Length,
    /// The same athwart.
    pub heel_lever: Length,
}

/// An equilibrium, and how she lies in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Floating {
    /// What floats.
    pub load: Load,
    /// The water surface in boat axes.
    pub plane: WaterPlane,
    /// What lies under it.
    pub immersed: Immersed,
    /// Metacentric height for heel, without free surface.
    pub gm_transverse: Length,
    /// Metacentric height for trim, without free surface.
    pub gm_longitudinal: Length,
    /// The least metacentric height about any axis in the water plane, with sinkage free; below zero
    /// the equilibrium is unstable.
    pub gm_least: Length,
    /// How well it balances.
    pub residual: Residual,
    /// Newton steps taken.
    pub steps: usize,
}

impl Floating {
    /// Sinkage of the origin, trim (positive bow up) and heel (positive to starboard).
    #[must_use]
    pub fn attitude(&self) -> Attitude {
        self.plane.attitude()
    }

    /// Plumb height of a point of the boat above the water, negative under it.
    #[must_use]
    pub fn height_above_water(&self, point: &Point3<f64>) -> Length {
        self.plane.height_above(point)
    }

    /// The same for several points, in their order.
    #[must_use]
    pub fn heights_above_water(&self, points: &[Point3<f64>]) -> Vec<Length> {
        points.iter().map(|p| self.plane.height_above(p)).collect()
    }

    /// Whether every small turn is resisted (or at worst met with indifference).
    #[must_use]
    pub fn is_stable(&self) -> bool {
        self.gm_least.get::<meter>() >= -NEUTRAL_M
    }
}

/// How the search for an equilibrium ended.
#[derive(Clone, Debug, PartialEq)]
pub enum Outcome {
    /// She floats stably, right side up: heel within ±90°. A list shows in the attitude.
    Stable(Floating),
    /// In balance where the search began, but unstable there: the least touch and she settles elsewhere.
    Unstable {
        /// The equilibrium that does not last.
        balance: Box<Floating>,
        /// Where she comes to rest when it is disturbed (to starboard, if both sides are equal).
        settled: Box<Floating>,
    },
    /// She floats stably bottom up or past her beam ends: heel beyond ±90°.
    Capsized(Floating),
    /// She weighs more than the water that her whole hull displaces.
    Sinks {
        /// Her mass.
        mass: Mass,
        /// The mass of water that the whole hull displaces.
        largest: Mass,
    },
    /// The search ended without balance.
    NotConverged {
        /// Where it ended.
        attitude: Attitude,
        /// What was left.
        residual: Residual,
    },
}

impl Outcome {
    /// Where she comes to rest, if she does: right side up or not.
    #[must_use]
    pub fn at_rest(&self) -> Option<&Floating> {
        match self {
            Self::Stable(floating) | Self::Capsized(floating) => Some(floating),
            Self::Unstable { settled, .. } => Some(settled),
            Self::Sinks { .. } | Self::NotConverged { .. } => None,
        }
    }
}

/// Where she comes to rest, starting upright and level.
///
/// # Errors
/// [`FloatError`] where an input is not finite, or mass or density is not above zero.
pub fn equilibrium(hull: &Hull, load: &Load) -> Result<Outcome, FloatError> {
    equilibrium_from(hull, load, Attitude::default())
}

/// Where she comes to rest from a given trim and heel. The sinkage of the start does not matter: she is
/// first put at about the one that carries her.
///
/// # Errors
/// As [`equilibrium`], and for a start that is not finite.
pub fn equilibrium_from(hull: &Hull, load: &Load, start: Attitude) -> Result<Outcome, FloatError> {
    let problem = match problem(hull, load) {
        Ok(problem) => problem,
        Err(FloatError::Sinks { mass_kg, largest_kg }) => {
            return Ok(Outcome::Sinks {
                mass: Mass::new::<kilogram>(mass_kg),
                largest: Mass::new::<kilogram>(largest_kg),
            });
        }
        Err(error) => return Err(error),
    };
    let start = problem.sink(WaterPlane::at(start)?, 0.05, 30);
    let mut descent = problem.descend(start);
    let mut first = None;
    for _ in 0..MOST_PUSHES {
        if !descent.balanced() {
            break;
        }
        let floating = floating(hull, load, &descent);
        if floating.is_stable() {
            return Ok(match first {
                Some(balance) => Outcome::Unstable { balance: Box::new(balance), settled: Box::new(floating) },
                None if floating.attitude().heel.get::<radian>().cos() < 0.0 => Outcome::Capsized(floating),
                None => Outcome::Stable(floating),
            });
        }
        first.get_or_insert(floating);
        let (_, [trim, heel]) = softest(&descent.state);
        let pushed = |way: f64| problem.descend(problem.turned(&descent.state, way * PUSH * trim, way * PUSH * heel));
        // She settles on the side that takes her lower: port and starboard alike, whichever is tried first.
        let (starboard, port) = (pushed(1.0), pushed(-1.0));
        let deeper = starboard.state.energy() - port.state.energy() > ENERGY_TIE;
        let settled = if port.balanced() && (deeper || !starboard.balanced()) { port } else { starboard };
        descent = Descent { steps: descent.steps + settled.steps, ..settled };
    }
    Ok(Outcome::NotConverged { attitude: descent.state.plane.attitude(), residual: residual(hull, &descent.state) })
}

/// The water plane of a given trim and heel at which she displaces a mass; the sinkage of `attitude` does
/// not matter.
///
/// With [`load_for`](super::load_for) it answers where the centre of gravity must lie for a wanted trim.
///
/// # Errors
/// [`FloatError`] where an input is not finite or not above zero, or the mass sinks her.
pub fn plane_carrying(
    hull: &Hull,
    mass: Mass,
    water: MassDensity,
    attitude: Attitude,
) -> Result<WaterPlane, FloatError> {
    let load = Load { mass, centre: Point3::origin(), water };
    Ok(problem(hull, &load)?.sink(WaterPlane::at(attitude)?, 1e-13, 100))
}

/// Checks the load and puts it in the solver's terms; a load too heavy is [`FloatError::Sinks`].
pub(super) fn problem<'a>(hull: &'a Hull, load: &Load) -> Result<Problem<'a>, FloatError> {
    let mass = positive("the mass", load.mass.get::<kilogram>())?;
    let density = positive("the density of the water", load.water.get::<kilogram_per_cubic_meter>())?;
    if !load.centre.iter().all(|c| c.is_finite()) {
        return Err(FloatError::NotFinite { what: "the centre of gravity" });
    }
    let largest = density * hull.volume().get::<cubic_meter>();
    if mass >= largest * (1.0 - 1e-12) {
        return Err(FloatError::Sinks { mass_kg: mass, largest_kg: largest });
    }
    Ok(Problem::new(hull, mass, &load.centre, density))
}

pub(super) fn positive(what: &'static str, value: f64) -> Result<f64, FloatError> {
    if !value.is_finite() {
        Err(FloatError::NotFinite { what })
    } else if value <= 0.0 {
        Err(FloatError::NotPositive { what })
    } else {
        Ok(value)
    }
}

pub(super) fn residual(hull: &Hull, state: &State) -> Residual {
    let scale = hull.scale();
    Residual {
        force: state.slope.x,
        trim_lever: Length::new::<meter>(state.slope.y * scale),
        heel_lever: Length::new::<meter>(state.slope.z * scale),
    }
}

/// Least stiffness for turning with sinkage free, as a part of the hull scale, and its direction
/// (trim, heel), with heel not to port.
fn softest(state: &State) -> (f64, [f64; 2]) {
    let k = &state.curvature;
    let by_sinking = |i: usize, j: usize| {
        if k[(0, 0)] > 0.0 { k[(i, j)] - k[(i, 0)] * k[(0, j)] / k[(0, 0)] } else { k[(i, j)] }
    };
    let (trim, heel, both) = (by_sinking(1, 1), by_sinking(2, 2), by_sinking(1, 2));
    // Principal axes as on Mohr's circle.
    let spread = (0.5 * (trim - heel)).hypot(both);
    let stiffest = 0.5 * (2.0 * both).atan2(trim - heel);
    let (heel_part, trim_part) = (stiffest.cos(), -stiffest.sin());
    let side = if heel_part < 0.0 { -1.0 } else { 1.0 };
    (0.5 * (trim + heel) - spread, [side * trim_part, side * heel_part])
}

pub(super) fn floating(hull: &Hull, load: &Load, descent: &Descent) -> Floating {
    let state = &descent.state;
    let immersed = cut::immersed(hull, &state.sums, &state.blade);
    let (gm_transverse, gm_longitudinal) = metacentric_heights(load, &state.plane, &immersed);
    let (least, _) = softest(state);
    Floating {
        load: *load,
        plane: state.plane,
        immersed,
        gm_transverse,
        gm_longitudinal,
        gm_least: Length::new::<meter>(least * hull.scale()),
        residual: residual(hull, state),
        steps: descent.steps,
    }
}

/// GM = I / V − BG for heel and for trim, with BG measured plumb.
pub(super) fn metacentric_heights(load: &Load, plane: &WaterPlane, immersed: &Immersed) -> (Length, Length) {
    let (bm_transverse, bm_longitudinal) = metacentric_radii(immersed);
    let rise = Length::new::<meter>(plane.normal.dot(&(load.centre - immersed.centre_of_buoyancy)));
    (bm_transverse - rise, bm_longitudinal - rise)
}

/// BM = I / V for heel and for trim; zero where nothing is immersed.
pub(super) fn metacentric_radii(immersed: &Immersed) -> (Length, Length) {
    let volume = immersed.volume.get::<cubic_meter>();
    let radius = |second_moment: f64| {
        let dry = volume <= 0.0 || immersed.waterplane.area.get::<square_meter>() <= 0.0;
        Length::new::<meter>(if dry { 0.0 } else { second_moment / volume })
    };
    (radius(immersed.waterplane.second_moment_transverse_m4), radius(immersed.waterplane.second_moment_longitudinal_m4))
}
