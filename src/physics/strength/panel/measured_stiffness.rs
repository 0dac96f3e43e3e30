//! What a measured deflection under a known pull says of a panel's stiffness.

use super::error::PanelError;
use super::load::Locator;
use super::mesh::Mesh;
use super::outline;
use super::reference::shape;
use super::solve::Solution;
use super::vector::Point;

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

/// Bounds between which the stiffness of a part is sought, as parts of the sound one.
const SCALES: [f64; 2] = [1e-3, 1e2];
/// Logarithm of computed over measured deflection at which the search ends.
const CLOSE: f64 = 1e-9;
/// Steps of the search; about ten are needed.
const MOST_STEPS: usize = 60;

/// The factor on the stiffness of a part of the panel with which it moves as `measured` (m). `deflection` gives how far it moves
/// (m) with that part's stiffness times a factor, 1 where it is sound.
///
/// Errors: those of `deflection`; a measured deflection of zero or of the other sign than the sound panel's;
/// [`PanelError::NoScale`] where no factor between a thousandth and a hundred explains it.
pub fn scale_of_part(deflection: impl Fn(f64) -> Result<f64, PanelError>, measured: f64) -> Result<f64, PanelError> {
    let [low, high] = SCALES;
    let [scale] = scales_of_part(deflection, [measured])?;
    if (low..=high).contains(&scale) { Ok(scale) } else { Err(PanelError::NoScale { low, high }) }
}

/// The same for several measured deflections of one place: 0 for one that is more than a thousandth of the stiffness gives,
/// infinite for one that is less than a hundred times of it gives.
///
/// Errors: as [`scale_of_part`], but for [`PanelError::NoScale`].
pub fn scales_of_part<const N: usize>(
    deflection: impl Fn(f64) -> Result<f64, PanelError>,
    measured: [f64; N],
) -> Result<[f64; N], PanelError> {
    let what = "the measured deflection";
    if measured.iter().any(|one| !one.is_finite()) {
        return Err(PanelError::NotFinite { what });
    }
    let moves = deflection(1.0)?;
    for value in measured {
        let same_way = moves / value;
        if !(same_way.is_finite() && same_way > 0.0) {
            return Err(PanelError::NotPositive { what, value });
        }
    }
    // The logarithm of what it moves, at the logarithm of the part's stiffness.
    let moved =
        |log: f64| -> Result<f64, PanelError> { Ok((deflection(log.exp())? / moves).max(f64::MIN_POSITIVE).ln()) };
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
