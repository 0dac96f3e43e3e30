//! How the forces of a bolted foot come onto the transom's panel.

use super::bolts::{Bolt, Foot, GroupForces, GroupLoad};
use super::loads::FaceLoad;
use super::panel::{Load, Rect};

impl FaceLoad {
    /// As a bolt group takes it, acting at `at` (`[y, z]`, m) in the transom's coordinates.
    pub fn on_bolts(self, at: [f64; 2]) -> GroupLoad {
        let ([fx, fy, fz], [mx, my, mz]) = (self.force, self.moment);
        GroupLoad { at, push: fx, shear: [fy, fz], twist: mx, pitch: my, yaw: mz }
    }
}

/// Patch loads on the panel: each bolt pulls its washer or backing plate aft, the pressed edges of the foot push forward
/// over strips of width `strip` (m) along the edge. `washers[i]` is the rectangle (width, height, m) that bolt `i` spreads
/// over. The forces sum to the push. A strip's middle lies half a strip inside the edge: a narrow strip keeps the
/// moment.
pub fn panel_loads(bolts: &[Bolt], foot: Foot, forces: &GroupForces, washers: &[[f64; 2]], strip: f64) -> Vec<Load> {
    let mut loads: Vec<Load> = bolts
        .iter()
        .zip(&forces.bolts)
        .zip(washers)
        .filter(|((_, f), _)| f.tension > 0.0)
        .map(|((b, f), &[width, height])| Load::Patch {
            area: Rect { centre: [b.y, b.z], width, height },
            force: -f.tension,
        })
        .collect();
    let (width, height) = (foot.port - foot.starboard, foot.top - foot.bottom);
    let middle = [0.5 * (foot.port + foot.starboard), 0.5 * (foot.top + foot.bottom)];
    let inside = |at: f64, low: f64, high: f64| {
        let half = 0.5 * strip.min(high - low);
        at.clamp(low + half, high - half)
    };
    if forces.edge_pitch > 0.0 {
        let centre = [middle[0], inside(forces.pivot_z, foot.bottom, foot.top)];
        loads.push(Load::Patch { area: Rect { centre, width, height: strip.min(height) }, force: forces.edge_pitch });
    }
    if forces.edge_yaw > 0.0 {
        let centre = [inside(forces.pivot_y, foot.starboard, foot.port), middle[1]];
        loads.push(Load::Patch { area: Rect { centre, width: strip.min(width), height }, force: forces.edge_yaw });
    }
    loads
}
