//! What a measured deflection under a known pull says of a panel's stiffness.

use super::error::PanelError;
use super::load::Locator;
use super::mesh::Mesh;
use super::model::Point;
use super::outline;
use super::reference::shape;
use super::solve::Solution;

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
    let what = "the measured deflection";
    if !measured.is_finite() {
        return Err(PanelError::NotFinite { what });
    }
    let same_way = deflection(1.0)? / measured;
    if !(same_way.is_finite() && same_way > 0.0) {
        let value = measured;
        return Err(PanelError::NotPositive { what, value });
    }
    // Positive where the part is too soft. Deflection all but follows a power of stiffness: in logarithms, a line.
    let excess =
        |log: f64| -> Result<f64, PanelError> { Ok((deflection(log.exp())? / measured).max(f64::MIN_POSITIVE).ln()) };
    let [mut low, mut high] = SCALES.map(f64::ln);
    let [mut at_low, mut at_high] = [excess(low)?, excess(high)?];
    if at_low < 0.0 || at_high > 0.0 {
        let [low, high] = SCALES;
        return Err(PanelError::NoScale { low, high });
    }
    // Regula falsi; an end that stays twice counts half (the Illinois variant), so that both ends move.
    let mut stayed = None;
    for _ in 0..MOST_STEPS {
        let middle = low + (high - low) * at_low / (at_low - at_high).max(f64::MIN_POSITIVE);
        let found = excess(middle)?;
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
