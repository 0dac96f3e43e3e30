//! What a measured deflection under a known pull says of a panel's stiffness.

use super::error::PanelError;
use super::load::{Load, Locator};
use super::model::{Panel, Point};
use super::outline;
use super::reference::shape;
use super::solve::{Accuracy, Solution};

impl Solution {
    /// Deflection (m) at a place on the panel; `None` off it.
    pub fn deflection_at(&self, at: Point) -> Option<f64> {
        let reach = outline::extent(&self.mesh.nodes);
        let (t, n) = Locator::new(
            &self.mesh,
            reach / (self.mesh.triangles.len() as f64).sqrt(),
        )
        .find(at)?;
        Some(
            shape(n)
                .iter()
                .zip(self.mesh.triangles[t])
                .map(|(s, node)| s * self.deflection[node as usize])
                .sum(),
        )
    }
}

/// The factor by which every stiffness of the panel (sections, beams, springs) must be multiplied for `loads` to give
/// `measured` (m) at `at`. Deflection is proportional to 1/stiffness, so one solve answers.
///
/// Errors: those of [`Panel::solve`]; a measured or computed deflection of zero or of the other sign.
pub fn scale_from_deflection(
    panel: &Panel,
    loads: &[Load],
    at: Point,
    measured: f64,
) -> Result<f64, PanelError> {
    let sound = panel
        .solve(loads, Accuracy::default())?
        .deflection_at(at)
        .unwrap_or(0.0);
    let scale = sound / measured;
    if !measured.is_finite() {
        return Err(PanelError::NotFinite {
            what: "the measured deflection",
        });
    }
    if scale.is_finite() && scale > 0.0 {
        Ok(scale)
    } else {
        Err(PanelError::NotPositive {
            what: "the measured deflection",
            value: measured,
        })
    }
}

/// Bounds between which the stiffness of a region is sought, as parts of the sound one.
const SCALES: [f64; 2] = [1e-3, 1e2];
/// Halvings of the logarithm of the scale; 24 leave one part in 10⁶.
const HALVINGS: usize = 24;

/// As [`scale_from_deflection`], but only a part of the panel is softened: `softened` gives the panel with that part's
/// stiffness times a scale.
///
/// Errors: those of `softened` and of [`Panel::solve`]; [`PanelError::NoScale`] where no scale between a thousandth and a
/// hundredfold explains the reading.
pub fn scale_of_part(
    softened: impl Fn(f64) -> Result<Panel, PanelError>,
    loads: &[Load],
    at: Point,
    measured: f64,
) -> Result<f64, PanelError> {
    if !measured.is_finite() {
        return Err(PanelError::NotFinite {
            what: "the measured deflection",
        });
    }
    let moved = |scale: f64, relative: f64| -> Result<f64, PanelError> {
        let accuracy = Accuracy {
            relative,
            fields: f64::INFINITY,
            ..Accuracy::default()
        };
        let solution = softened(scale)?.solve(loads, accuracy)?;
        Ok(solution.deflection_at(at).unwrap_or(0.0).abs())
    };
    // All trials stay on the first mesh, so that the deflection is a smooth function of the scale; what that mesh misses of a
    // sound panel it is taken to miss of a soft one.
    let reading =
        measured.abs() * moved(1.0, f64::INFINITY)? / moved(1.0, Accuracy::default().relative)?;
    let excess =
        |scale: f64| -> Result<f64, PanelError> { Ok(moved(scale, f64::INFINITY)? - reading) };
    let [mut low, mut high] = SCALES.map(f64::ln);
    if excess(SCALES[0])? < 0.0 || excess(SCALES[1])? > 0.0 {
        return Err(PanelError::NoScale {
            low: SCALES[0],
            high: SCALES[1],
        });
    }
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if excess(middle.exp())? > 0.0 {
            low = middle
        } else {
            high = middle
        }
    }
    Ok((0.5 * (low + high)).exp())
}

/// As [`scale_of_part`] for region `region`, a soft patch; the rest is sound.
///
/// Errors: as there; no such region.
pub fn scale_of_region(
    panel: &Panel,
    region: usize,
    loads: &[Load],
    at: Point,
    measured: f64,
) -> Result<f64, PanelError> {
    let sound = panel
        .regions
        .get(region)
        .ok_or(PanelError::Region { index: region })?
        .section
        .stiffness;
    let softened = |scale: f64| {
        let mut panel = panel.clone();
        panel.regions[region].section.stiffness = sound.scaled(scale);
        Ok(panel)
    };
    scale_of_part(softened, loads, at, measured)
}
