//! How wide a nut presses on the transom, and how much transom stands above it.

use std::f64::consts::PI;

use super::super::Footing;
use super::super::board::Board;
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, inches};
use crate::rig::Rig;

/// Width of a nut over the bolt's diameter. Source: ASME B18.2.2 and ISO 4032 (3/4 in on 1/2 in, 18 mm on 12 mm), value from memory.
const NUT_WIDTH: f64 = 1.5;
/// A thinner bolt is that of a small auxiliary engine. Common practice, no source: the pattern is drilled for 1/2 in.
const SMALL_BOLT_IN: f64 = 0.45;
/// Yield stress of a stainless washer, Pa. Source: ISO 3506-1 A2-50, value from memory.
const WASHER_YIELD: f64 = 210e6;
/// A hole is drilled so much larger than the bolt. Common practice, no source.
const HOLE_ROOM_IN: f64 = 1.0 / 32.0;
/// Yield of the plate that remedies name, 5083-H116, Pa. Source: ASTM B928, value from memory.
pub const PLATE_MATERIAL_YIELD: f64 = 215e6;

impl Footing {
    /// Whether it is of a small auxiliary engine.
    pub fn is_small(&self) -> bool {
        self.size.spec.diameter.value < inches(SMALL_BOLT_IN)
    }

    /// The bolt's diameter, m.
    pub fn diameter(&self) -> f64 {
        self.size.spec.diameter.value.si()
    }

    /// The hole's diameter, m.
    pub fn hole(&self) -> f64 {
        self.diameter() + inches(HOLE_ROOM_IN).si()
    }

    /// Diameter of the circle over which a nut's force comes onto the core, m: nut, washer, plate and inner skin, each
    /// spreading by what its own bending strength lets it.
    pub fn spread(&self, board: &Board, left: KnockDown) -> f64 {
        let crushing = left.strength * board.core_material().crushing_strength.value.si();
        let nut = NUT_WIDTH * self.diameter();
        let washer = self.given.said.washer.as_ref().map_or(self.size.spec.washer_diameter.value, |d| d.value).si();
        let thin = self.size.spec.washer_thickness.value.si();
        let mut across = washer.min(nut + 2.0 * cantilever(thin, WASHER_YIELD, crushing)).max(nut.min(washer));
        if let (Some(plate), Some(material)) = (&self.given.said.backing_plate, &self.given.plate) {
            let reach = cantilever(plate.thickness.value.si(), material.spec.bending_strength.value.si(), crushing);
            let most = plate.width.value.si().min(plate.height.value.si()).max(across);
            across = (across + 2.0 * reach).min(most);
        }
        for skin in board.layers.iter().skip(board.core + 1).rev() {
            across += 2.0 * cantilever(skin.thickness.si(), skin.material.spec.bending_strength.value.si(), crushing);
        }
        across.min(self.apart())
    }

    /// Least distance between two of its bolts, m: beyond it two circles share their wood.
    fn apart(&self) -> f64 {
        let mut least = f64::INFINITY;
        for (i, a) in self.bolts.iter().enumerate() {
            for b in &self.bolts[i + 1..] {
                least = least.min((a.y - b.y).hypot(a.z - b.z));
            }
        }
        least
    }

    /// The square (m) over which each bolt's pull comes onto the panel, cut off at the transom's edges.
    pub fn spreads(&self, board: &Board) -> Vec<[f64; 2]> {
        let side = 0.5 * PI.sqrt() * self.spread(board, KnockDown::SOUND);
        self.bolts
            .iter()
            .map(|bolt| {
                let up = board.top - bolt.z;
                let out = board.chine[0] - bolt.y.abs();
                let down = (bolt.z - board.rise * (bolt.y.abs() + 0.5 * side)).max(1e-3);
                let half = (0.5 * side).min(0.99 * up).min(0.99 * out).min(0.99 * down);
                [2.0 * half, 2.0 * half]
            })
            .collect()
    }

    /// From a bolt up to the transom's edge, or to an old hole above it, m.
    pub fn edge(&self, rig: &Rig, board: &Board, bolt: usize) -> f64 {
        let Some(bolt) = self.bolts.get(bolt) else {
            return 0.0;
        };
        let to_top = board.top - bolt.z;
        rig.transom
            .holes
            .iter()
            .filter_map(|hole| {
                let radius = hole.diameter.as_ref().map_or(0.5 * self.diameter(), |d| 0.5 * d.value.si());
                let above = (board.top - hole.below.value.si()) - radius - bolt.z;
                let beside = (hole.at.y().si() - bolt.y).abs() < radius + 0.5 * self.diameter();
                (beside && above > self.diameter()).then_some(above)
            })
            .fold(to_top, f64::min)
    }
}

/// How far a plate carries pressure beyond the edge that presses it, m: `c = t √(fy / 3 fc)`. Source: EN 1993-1-8, 6.2.5
/// (base plates on concrete), value from memory.
fn cantilever(thickness: f64, bending: f64, crushing: f64) -> f64 {
    thickness * (bending / (3.0 * crushing.max(1.0))).sqrt()
}

/// The thickness (m) of an aluminium backing plate that spreads a pull (N) so that the core bears it, and the circle
/// (m) that it makes of it.
pub fn plate_for(footing: &Footing, board: &Board, left: KnockDown, pull: f64) -> (f64, f64) {
    let crushing = left.strength * board.core_material().crushing_strength.value.si();
    let area = pull / crushing;
    let across = (4.0 * area / PI + footing.hole().powi(2)).sqrt();
    let from = NUT_WIDTH * footing.diameter();
    let reach = 0.5 * (across - from).max(0.0);
    (reach / cantilever(1.0, PLATE_MATERIAL_YIELD, crushing), across)
}
