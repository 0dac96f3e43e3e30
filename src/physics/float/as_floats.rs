//! Displacement and centre of gravity from how she lies at the dock.

use nalgebra::{Matrix3, Point3, Vector3};
use uom::si::f64::{Length, MassDensity};
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::volume::cubic_meter;

use super::equilibrium::{Load, positive};
use super::error::FloatError;
use super::hull::Hull;
use super::water::WaterPlane;

/// Most rounds of fitting; the heights are all but linear in the attitude, a few are enough.
const ROUNDS: usize = 30;
/// Marks count as on both sides when they stand off the centreline by this part of the beam.
const OFF_CENTRE: f64 = 0.05;
/// Least spread of the marks fore and aft, as a part of the hull's length, that fixes the trim.
const LEAST_SPREAD: f64 = 0.1;

/// A reading at the dock: a point of the boat and how high above the water it stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// The point in boat axes, metres.
    pub point: Point3<f64>,
    /// Its plumb height above the water: a freeboard; zero on the waterline, negative under it.
    pub height: Length,
}

/// What the marks say of the boat.
#[derive(Clone, Debug, PartialEq)]
pub struct AsFloats {
    /// Displacement and centre of gravity that make the fitted water plane an equilibrium. The height of
    /// the centre is the one that was given: an upright boat lies the same at any stable height.
    pub load: Load,
    /// The fitted water plane.
    pub plane: WaterPlane,
    /// Whether the marks stand on both sides, so that heel was fitted; otherwise she is taken upright.
    pub heel_fitted: bool,
    /// Fitted height less reading for each mark, in their order; all but zero where the marks are only
    /// as many as the unknowns.
    pub misfits: Vec<Length>,
}

/// Fits a water plane to the marks by least squares and finds what weighs her down to it.
///
/// At least two marks spread fore and aft are needed; heel is fitted where marks stand on both sides and
/// there are at least three. `centre_height` is an estimate of the height of the centre of gravity in boat
/// axes: it shifts the centre fore and aft only by its error times the trim.
///
/// # Errors
/// [`FloatError`] where a number is not finite, the density is not positive, the marks do not fix the
/// trim, or the fitted plane leaves her dry or wholly under water.
pub fn as_she_floats(
    hull: &Hull,
    marks: &[Mark],
    centre_height: Length,
    water: MassDensity,
) -> Result<AsFloats, FloatError> {
    let finite = marks.iter().all(|m| m.height.is_finite() && m.point.iter().all(|c| c.is_finite()));
    if !finite {
        return Err(FloatError::NotFinite { what: "a mark" });
    }
    let heel_fitted = marks_on_both_sides(hull, marks);
    let plane = fit(hull, marks, heel_fitted)?;
    let load = load_for(hull, &plane, centre_height, water)?;
    let misfits = marks.iter().map(|mark| plane.height_above(&mark.point) - mark.height).collect();
    Ok(AsFloats { load, plane, heel_fitted, misfits })
}

/// What must weigh her down for a water plane to be an equilibrium: the displaced mass, with its centre on
/// the plumb line of the centre of buoyancy at a given height in boat axes.
///
/// # Errors
/// [`FloatError`] where a number is not finite, the density is not positive, the plane leaves her dry or
/// wholly under water, or she lies on her side so that the height fixes nothing.
pub fn load_for(
    hull: &Hull,
    plane: &WaterPlane,
    centre_height: Length,
    water: MassDensity,
) -> Result<Load, FloatError> {
    positive("the density of the water", water.get::<kilogram_per_cubic_meter>())?;
    let centre_height = centre_height.get::<meter>();
    if !centre_height.is_finite() {
        return Err(FloatError::NotFinite { what: "the height of the centre of gravity" });
    }
    let immersed = hull.cut(plane);
    let (displaced, whole) = (immersed.volume, hull.volume());
    if displaced.get::<cubic_meter>() <= 0.0 {
        return Err(FloatError::Dry);
    }
    if displaced >= whole * (1.0 - 1e-12) {
        return Err(FloatError::Sinks {
            mass_kg: (water * displaced).get::<kilogram>(),
            largest_kg: (water * whole).get::<kilogram>(),
        });
    }
    let buoyancy = immersed.centre_of_buoyancy;
    let n = plane.normal;
    if n.z.abs() < 1e-3 {
        return Err(FloatError::TooFewPoints { what: "a centre of gravity of that height: she lies on her side" });
    }
    let along = (centre_height - buoyancy.z) / n.z;
    Ok(Load { mass: water * displaced, centre: buoyancy + n.into_inner() * along, water })
}

fn marks_on_both_sides(hull: &Hull, marks: &[Mark]) -> bool {
    let (low, high) = hull.bounds();
    let off = OFF_CENTRE * (high.y - low.y);
    let side = |sign: f64| marks.iter().any(|mark| sign * mark.point.y > off);
    marks.len() >= 3 && side(1.0) && side(-1.0) && !in_line(hull, marks)
}

/// Whether the marks lie within a hand of one straight line as seen from above, so that heel is not fixed.
fn in_line(hull: &Hull, marks: &[Mark]) -> bool {
    let middle = marks.iter().fold(Vector3::zeros(), |sum, m| sum + m.point.coords) / marks.len() as f64;
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for mark in marks {
        let d = mark.point.coords - middle;
        xx += d.x * d.x;
        xy += d.x * d.y;
        yy += d.y * d.y;
    }
    let across = 0.5 * (xx + yy) - (0.5 * (xx - yy)).hypot(xy);
    let (low, high) = hull.bounds();
    let off = OFF_CENTRE * (high.y - low.y);
    across <= off * off
}

fn fit(hull: &Hull, marks: &[Mark], heel: bool) -> Result<WaterPlane, FloatError> {
    let (low, high) = hull.bounds();
    let stations = marks.iter().map(|m| m.point.x);
    let spread = stations.clone().fold(f64::NEG_INFINITY, f64::max) - stations.fold(f64::INFINITY, f64::min);
    if marks.len() < 2 || spread < LEAST_SPREAD * (high.x - low.x) {
        return Err(FloatError::TooFewPoints { what: "the trim: at least two are needed, well apart fore and aft" });
    }
    let heights = || marks.iter().map(|m| m.height.get::<meter>());
    let mean_height = heights().sum::<f64>() / marks.len() as f64;
    let mean_z = marks.iter().map(|m| m.point.z).sum::<f64>() / marks.len() as f64;
    let mut plane = WaterPlane::from_normal(Vector3::z(), mean_z - mean_height)?;
    for _ in 0..ROUNDS {
        let (forward, port) = plane.in_plane();
        let (mut normal_equations, mut right) = (Matrix3::zeros(), Vector3::zeros());
        for mark in marks {
            let point = mark.point.coords;
            let athwart = if heel { port.dot(&point) } else { 0.0 };
            let slopes = Vector3::new(-1.0, forward.dot(&point), athwart);
            let misfit = (mark.height - plane.height_above(&mark.point)).get::<meter>();
            normal_equations += slopes * slopes.transpose();
            right += slopes * misfit;
        }
        if !heel {
            normal_equations[(2, 2)] = 1.0;
        }
        let step = normal_equations.lu().solve(&right).ok_or(FloatError::TooFewPoints { what: "the trim" })?;
        let normal = plane.normal.into_inner() + forward * step.y + port * step.z;
        plane = WaterPlane::from_normal(normal, plane.offset + step.x)?;
        if step.norm() < 1e-14 * (1.0 + hull.scale()) {
            break;
        }
    }
    Ok(plane)
}
