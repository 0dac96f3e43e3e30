//! How wide a nut presses on the transom, and how much transom stands above it.

use std::f64::consts::PI;

use uom::si::f64::{Length, Pressure};

use super::super::Footing;
use super::super::board::Board;
use crate::physics::strength::bolts::{Bends, OldHole, UnderNut, clear_wood, on_core, pad};
use crate::quantity::{Dimensioned, inches};
use crate::rig::Rig;
use crate::working::Sheet;

/// Width of a nut over the bolt's diameter. Source: ASME B18.2.2 and ISO 4032 (3/4 in on 1/2 in, 18 mm on 12 mm), value from memory.
const NUT_WIDTH: f64 = 1.5;
/// A thinner bolt is that of a small auxiliary engine. Common practice, no source: the pattern is drilled for 1/2 in.
const SMALL_BOLT_IN: f64 = 0.45;
/// Yield stress of a stainless washer, Pa. Source: ISO 3506-1 A2-50, value from memory.
const WASHER_YIELD: f64 = 210e6;
/// A hole is drilled so much larger than the bolt. Common practice, no source.
const HOLE_ROOM_IN: f64 = 1.0 / 32.0;
/// Outside diameter of a plain washer over the bolt's: the least that is set under a nut. Source: ISO 7089 and ASME B18.21.1,
/// type A narrow (1.9 to 2.2), value from memory.
const PLAIN_WASHER: f64 = 1.9;

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

    /// What lies between a nut and the core. Where neither washers nor plate are told, plain washers: the least that is
    /// ever set.
    pub fn under_nut(&self, board: &Board) -> UnderNut {
        self.under_nut_of(board, PLAIN_WASHER * self.size.spec.diameter.value)
    }

    /// The same with washers of this diameter where none are told.
    fn under_nut_of(&self, board: &Board, untold: Length) -> UnderNut {
        let said = &self.given.said;
        let thickness = said.washer_thickness.as_ref().unwrap_or(&self.size.spec.washer_thickness).value;
        let plate = said.backing_plate.as_ref().zip(self.given.plate.as_ref()).map(|(plate, material)| {
            let (width, height) = (plate.width.value, plate.height.value);
            let side = if width < height { width } else { height };
            (side, Bends { thickness: plate.thickness.value, strength: material.spec.bending_strength.value })
        });
        let skins = board.layers.iter().skip(board.core + 1).rev();
        UnderNut {
            nut: NUT_WIDTH * self.size.spec.diameter.value,
            washer: said.washer.as_ref().map_or(untold, |washer| washer.value),
            washer_sheet: Bends { thickness, strength: Pressure::from_si(WASHER_YIELD) },
            plate,
            skins: skins
                .map(|skin| Bends { thickness: skin.thickness, strength: skin.material.spec.bending_strength.value })
                .collect(),
            apart: Length::from_si(self.apart()),
        }
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

    /// The square (m) over which each bolt's pull comes onto the panel, cut off at the transom's edges. Where no washers are
    /// told, large ones: the panel hardly asks.
    pub fn spreads(&self, board: &Board) -> Vec<[f64; 2]> {
        let under = self.under_nut_of(board, self.size.spec.washer_diameter.value);
        let bears = board.core_material().crushing_strength.value;
        let sheet = &mut Sheet::default();
        let pad = pad(sheet, &under, bears);
        let side = 0.5 * PI.sqrt() * on_core(sheet, pad, &under, bears).value().si();
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

    /// From a bolt up to the transom's edge, m, less what old holes above it take of the wood; holes that were plugged and
    /// glassed over take none.
    pub fn edge(&self, rig: &Rig, board: &Board, bolt: usize) -> f64 {
        let Some(bolt) = self.bolts.get(bolt) else {
            return 0.0;
        };
        let half = 0.5 * self.hole();
        let rim = bolt.z + half;
        let holes: Vec<OldHole> = rig
            .job
            .transom
            .holes
            .iter()
            .filter(|hole| !hole.filled)
            .map(|hole| {
                let radius = hole.diameter.as_ref().map_or(half, |d| 0.5 * d.value.si());
                let (across, up) = (hole.at.y().si() - bolt.y, board.top - hole.below.value.si() - rim);
                OldHole { across: [across - radius, across + radius], up: [up - radius, up + radius] }
            })
            .collect();
        half + clear_wood(half, board.top - rim, &holes)
    }

    /// The same with every old hole filled.
    pub fn edge_filled(&self, board: &Board, bolt: usize) -> f64 {
        self.bolts.get(bolt).map_or(0.0, |bolt| board.top - bolt.z)
    }
}
