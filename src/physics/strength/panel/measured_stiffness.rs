//! What a measured deflection under a known pull says of a panel's stiffness.

use super::error::PanelError;
use super::load::{Load, Locator};
use super::mesh::Mesh;
use super::model::{Panel, Point};
use super::outline;
use super::plate::Plate;
use super::reference::shape;
use super::solve::{Accuracy, Solution};

impl Solution {
    /// Deflection (m) at a place on the panel; `None` off it.
    pub fn deflection_at(&self, at: Point) -> Option<f64> {
        interpolated(&self.mesh, at, |node| self.deflection[node])
    }
}

/// Of values at the nodes; `None` off the mesh.
fn interpolated(mesh: &Mesh, at: Point, value: impl Fn(usize) -> f64) -> Option<f64> {
    let reach = outline::extent(&mesh.nodes);
    let (t, n) = Locator::new(mesh, reach / (mesh.triangles.len() as f64).sqrt()).find(at)?;
    let nodes = shape(n).into_iter().zip(mesh.triangles[t]);
    Some(nodes.map(|(s, node)| s * value(node as usize)).sum())
}

/// Deflection (m) of a panel at a place, on a mesh that was made for one of the same outline and lines.
fn deflection_on(mesh: &Mesh, panel: &Panel, loads: &[Load], at: Point) -> Result<f64, PanelError> {
    let (plate, _) = Plate::of(panel)?;
    let stage = plate.stage(mesh.clone())?;
    let bent = plate.bend(&stage, std::iter::once(loads))?;
    let moved = bent.first().and_then(|bent| interpolated(mesh, at, |node| bent.values[node][0]));
    Ok(moved.unwrap_or(0.0))
}

/// Bounds between which the stiffness of a part is sought, as parts of the sound one.
const SCALES: [f64; 2] = [1e-3, 1e2];
/// Logarithm of computed over measured deflection at which the search ends.
const CLOSE: f64 = 1e-12;
/// Steps of the search; about ten are needed.
const MOST_STEPS: usize = 60;

/// The factor on the stiffness of a part of the panel with which `loads` give `measured` (m) at `at`. `softened` gives the
/// panel with that part's stiffness times a factor, and the sound panel at 1, whose mesh, made for `accuracy`, serves for all.
///
/// Errors: those of `softened` and of [`Panel::solve`]; a measured deflection of zero or of the other sign than the sound
/// panel's; [`PanelError::NoScale`] where no factor between a thousandth and a hundred explains it.
pub fn scale_of_part(
    softened: impl Fn(f64) -> Result<Panel, PanelError>,
    loads: &[Load],
    at: Point,
    measured: f64,
    accuracy: Accuracy,
) -> Result<f64, PanelError> {
    let [low, high] = SCALES;
    let [scale] = scales_of_part(softened, loads, at, [measured], accuracy)?;
    if (low..=high).contains(&scale) { Ok(scale) } else { Err(PanelError::NoScale { low, high }) }
}

/// The same for several measured deflections of one place: 0 for one that is more than a thousandth of the stiffness gives,
/// infinite for one that is less than a hundred times of it gives.
///
/// Errors: as [`scale_of_part`], but for [`PanelError::NoScale`].
pub fn scales_of_part<const N: usize>(
    softened: impl Fn(f64) -> Result<Panel, PanelError>,
    loads: &[Load],
    at: Point,
    measured: [f64; N],
    accuracy: Accuracy,
) -> Result<[f64; N], PanelError> {
    let what = "the measured deflection";
    if measured.iter().any(|one| !one.is_finite()) {
        return Err(PanelError::NotFinite { what });
    }
    let sound = softened(1.0)?.solve(loads, accuracy)?;
    let moves = sound.deflection_at(at).unwrap_or(0.0);
    for value in measured {
        let same_way = moves / value;
        if !(same_way.is_finite() && same_way > 0.0) {
            return Err(PanelError::NotPositive { what, value });
        }
    }
    // The logarithm of what it moves, at the logarithm of the part's stiffness.
    let moved = |log: f64| -> Result<f64, PanelError> {
        let moved = deflection_on(&sound.mesh, &softened(log.exp())?, loads, at)?;
        Ok((moved / moves).max(f64::MIN_POSITIVE).ln())
    };
    let ends = SCALES.map(f64::ln);
    let at_ends = [moved(ends[0])?, moved(ends[1])?];
    let mut scales = [0.0; N];
    for (scale, measured) in scales.iter_mut().zip(measured) {
        *scale = sought(moved, ends, at_ends, (measured / moves).ln())?;
    }
    Ok(scales)
}

/// The factor at which `moved` gives `wanted`, both in logarithms: deflection all but follows a power of stiffness, a line.
/// Where the part is too soft, it moves too much.
fn sought(
    moved: impl Fn(f64) -> Result<f64, PanelError>,
    ends: [f64; 2],
    at_ends: [f64; 2],
    wanted: f64,
) -> Result<f64, PanelError> {
    let [mut low, mut high] = ends;
    let [mut at_low, mut at_high] = at_ends.map(|end| end - wanted);
    if at_low < 0.0 {
        return Ok(0.0);
    }
    if at_high > 0.0 {
        return Ok(f64::INFINITY);
    }
    // Regula falsi; an end that stays twice counts half (the Illinois variant), so that both ends move.
    let mut stayed = None;
    for _ in 0..MOST_STEPS {
        let middle = low + (high - low) * at_low / (at_low - at_high).max(f64::MIN_POSITIVE);
        let found = moved(middle)? - wanted;
        let soft = found > 0.0;
        if soft {
            (low, at_low) = (middle, found);
            if stayed == Some(soft) {
                at_high *= 0.5;
            }
        } else {
            (high, at_high) = (middle, found);
            if stayed == Some(soft) {
                at_low *= 0.5;
            }
        }
        stayed = Some(soft);
        if found.abs() < CLOSE {
            return Ok(middle.exp());
        }
    }
    Ok((0.5 * (low + high)).exp())
}
