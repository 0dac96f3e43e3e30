//! What a nut, a plate or the pressed edge of a face does to the wood under it.

use uom::si::f64::{Force, Length, Pressure};

use super::super::board::Board;
use super::super::{Footing, Laden, Strength};
use super::Part;
use crate::physics::strength::bolts::{
    self, Bends, UnderNut, crushing_capacity, drawn_down, indentation_capacity, on_core, pad, perimeter_of_oblong,
    perimeter_of_round, punching_capacity, washer_area,
};
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, inches};
use crate::working::{Sheet, Term};

/// Yield of the plate that remedies name, 5083-H116, Pa. Source: ASTM B928, value from memory.
const PLATE_YIELD: f64 = 215e6;
/// Steps in which plates are sold, from the thinnest that stays flat to the thickest that is drilled on a boat, in. Common
/// practice, no source.
const PLATE_STEP_IN: f64 = 1.0 / 16.0;
const PLATE_STEPS: std::ops::RangeInclusive<u8> = 3..=16;
/// Width of the strip along a face's edge that presses on the transom, as the panel takes it. Common practice, no source.
pub(in crate::case::strength) const STRIP_IN: f64 = 1.5;
/// Times the proportional limit that wood under a washer bears when the nut is drawn up. Source: EN 1995-1-1, 8.5.2 (2),
/// value from memory.
const DRAWN_UP: f64 = 3.0;
/// Part of its crushing strength that a foam or board bears for years. Common practice, no source.
const STANDING: f64 = 0.75;
/// Least pressure that a core is taken to bear, Pa: against division by nothing.
const LEAST_PRESSURE: f64 = 1.0;

/// An edge of a face that presses on the transom.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The lower or the upper one.
    Level,
    /// That to port or to starboard.
    Upright,
}

/// The pressed edge that is nearest to being punched through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pressed {
    /// The face that it is an edge of, as counted in [`Laden::footings`].
    pub footing: usize,
    /// The load case that presses it on most, as counted in [`Laden::cases`].
    pub case: usize,
    /// Which of its edges it is.
    pub side: Side,
    /// What it presses with, N.
    pub demand: f64,
    /// What the transom holds before it is punched through, N.
    pub capacity: f64,
}

impl Pressed {
    /// Capacity over demand.
    pub fn factor(&self) -> f64 {
        self.capacity / self.demand.max(f64::MIN_POSITIVE)
    }
}

/// What the core bears under a washer.
fn bears(board: &Board, left: KnockDown) -> Pressure {
    let bears = left.strength * board.core_material().crushing_strength.value;
    Pressure::from_si(bears.si().max(LEAST_PRESSURE))
}

impl Footing {
    /// The pull at which what lies under a nut sinks in, or is punched through, N.
    pub(super) fn pull_capacity(
        &self,
        sheet: &mut Sheet,
        part: Part,
        under: &UnderNut,
        board: &Board,
        left: KnockDown,
    ) -> f64 {
        let bears = bears(board, left);
        let pad = pad(sheet, under, bears);
        let held = if part == Part::Crush {
            let across = on_core(sheet, pad, under, bears);
            let area = washer_area(sheet, across.value(), Length::from_si(self.hole()));
            if board.core_has_grain() {
                indentation_capacity(sheet, bears, &area, &across)
            } else {
                crushing_capacity(sheet, bears, &area)
            }
        } else {
            let thickness = Term::new("h", Length::from_si(board.thickness()));
            let perimeter = perimeter_of_round(sheet, &pad, &thickness);
            punching_capacity(sheet, &perimeter, &layers(board, left))
        };
        held.value().si().max(0.0)
    }

    /// The preload that the core bears for years under a washer: wood, which a nut draws the whole washer down on, and
    /// foams and boards, which must not crush.
    pub fn drawn_up_capacity(&self, sheet: &mut Sheet, board: &Board, left: KnockDown) -> Term<Force> {
        let under = self.under_nut(board);
        let (bears, pad) = if board.core_has_grain() {
            let bears = DRAWN_UP * bears(board, left);
            (bears, drawn_down(sheet, &under, bears))
        } else {
            let bears = STANDING * bears(board, left);
            (bears, pad(sheet, &under, bears))
        };
        let across = on_core(sheet, pad, &under, bears);
        let area = washer_area(sheet, across.value(), Length::from_si(self.hole()));
        crushing_capacity(sheet, bears, &area)
    }

    /// The force with which an edge of its face is punched through, N.
    pub fn edge_capacity(&self, sheet: &mut Sheet, side: Side, board: &Board, left: KnockDown) -> f64 {
        let face = &self.face;
        let (width, height) = (face.port - face.starboard, face.top - face.bottom);
        let strip = inches(STRIP_IN).si();
        let (width, height) = match side {
            Side::Level => (width, strip.min(height)),
            Side::Upright => (strip.min(width), height),
        };
        let thickness = Term::new("h", Length::from_si(board.thickness()));
        let perimeter = perimeter_of_oblong(sheet, Length::from_si(width), Length::from_si(height), &thickness);
        punching_capacity(sheet, &perimeter, &layers(board, left)).value().si()
    }
}

/// The layers that are cut, from the inside out: thickness, and strength through it.
fn layers(board: &Board, left: KnockDown) -> Vec<(Length, Pressure)> {
    let strength = |(i, layer): (usize, &crate::rig::Layer)| {
        let whole = layer.material.spec.shear_strength.value;
        (layer.thickness, if i == board.core { left.strength * whole } else { whole })
    };
    board.layers.iter().enumerate().rev().map(strength).collect()
}

impl Laden {
    /// The pressed edge nearest to being punched through; `None` where none presses.
    pub fn pressed(&self, strength: &Strength) -> Option<Pressed> {
        let mut worst: Option<Pressed> = None;
        for (f, footing) in self.footings.iter().enumerate() {
            for side in [Side::Level, Side::Upright] {
                let capacity = footing.edge_capacity(&mut Sheet::default(), side, &strength.board, strength.left());
                for (case, forces) in footing.forces.iter().enumerate() {
                    let demand = match side {
                        Side::Level => forces.edge_pitch,
                        Side::Upright => forces.edge_yaw,
                    };
                    let one = Pressed { footing: f, case, side, demand, capacity };
                    if demand > 0.0 && worst.is_none_or(|worst| one.factor() < worst.factor()) {
                        worst = Some(one);
                    }
                }
            }
        }
        worst
    }
}

/// A backing plate of aluminium 5083-H116 behind the bolts of a face that is enough for this pull (N): its thickness, and
/// how far it presses round each bolt, m. `None` where no plate is enough.
pub fn backing_plate(footing: &Footing, board: &Board, left: KnockDown, part: Part, pull: f64) -> Option<[f64; 2]> {
    PLATE_STEPS.into_iter().find_map(|steps| {
        let plate =
            Bends { thickness: f64::from(steps) * inches(PLATE_STEP_IN), strength: Pressure::from_si(PLATE_YIELD) };
        let whole = Length::from_si(f64::INFINITY);
        let under = UnderNut { plate: Some((whole, plate)), ..footing.under_nut(board) };
        let enough = footing.pull_capacity(&mut Sheet::default(), part, &under, board, left) >= pull;
        let across = bolts::pad(&mut Sheet::default(), &under, bears(board, left)).value().si();
        enough.then_some([plate.thickness.si(), across])
    })
}
