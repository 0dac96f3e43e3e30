//! What each bolt bears, and what the transom bears at it.

use uom::si::f64::{Force, Length, Pressure};

use super::board::Board;
use super::footing::{Footing, heavier};
use super::{Driving, Laden, Strength};
use crate::physics::strength::bolts;
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::loads::Case as Kind;
use crate::quantity::{Dimensioned, inches};
use crate::rig::Rig;
use crate::working::{Sheet, Term};

/// A way in which a bolt, or the transom at it, can give way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The bolt is pulled beyond its proof load.
    Tension,
    /// The bolt is sheared off.
    Shear,
    /// Both together.
    Combined,
    /// The shank is pressed into the core.
    Bearing,
    /// The washer crushes the core.
    Crush,
    /// The washer is punched through.
    Punch,
    /// The bolt tears out to the top edge.
    Tear,
}

/// The bolt that is nearest to giving way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Worst {
    pub footing: usize,
    pub case: usize,
    pub bolt: usize,
    /// What it must hold and what it can hold, N (plain numbers for the combined part).
    pub demand: f64,
    pub capacity: f64,
}

impl Worst {
    /// Capacity over demand.
    pub fn factor(&self) -> f64 {
        self.capacity / self.demand.max(f64::MIN_POSITIVE)
    }
}

/// Width of a nut over the bolt's diameter. Source: ASME B18.2.2 and ISO 4032 (3/4 in on 1/2 in, 18 mm on 12 mm), value from memory.
const NUT_WIDTH: f64 = 1.5;
/// Yield stress of a stainless washer, Pa. Source: ISO 3506-1 A2-50, value from memory.
const WASHER_YIELD: f64 = 210e6;
/// A hole is drilled so much larger than the bolt. Common practice, no source.
const HOLE_ROOM_IN: f64 = 1.0 / 32.0;
/// Yield of the plate that remedies name, 5083-H116, Pa. Source: ASTM B928, value from memory.
pub const PLATE_MATERIAL_YIELD: f64 = 215e6;

impl Footing {
    /// Whether it is of a small auxiliary engine.
    pub fn is_small(&self) -> bool {
        self.size.spec.diameter.value < inches(0.45)
    }

    /// The bolt's diameter, m.
    pub fn diameter(&self) -> f64 {
        self.size.spec.diameter.value.si()
    }

    /// The hole's diameter, m.
    pub fn hole(&self) -> f64 {
        self.diameter() + inches(HOLE_ROOM_IN).si()
    }

    /// The load that the bolt bears without a lasting stretch: its proof stress, or its yield where the standard gives
    /// no proof stress.
    pub fn proof(&self) -> Pressure {
        let grade = &self.grade.spec;
        grade
            .proof
            .as_ref()
            .map_or(grade.yield_strength.value, |proof| proof.value)
    }

    /// Diameter of the circle over which a nut's force comes onto the core, m: nut, washer, plate and inner skin, each
    /// spreading by what its own bending strength lets it.
    pub fn spread(&self, board: &Board, left: KnockDown) -> f64 {
        let crushing = left.strength * board.core_material().crushing_strength.value.si();
        let nut = NUT_WIDTH * self.diameter();
        let washer = self
            .given
            .said
            .washer
            .as_ref()
            .map_or(self.size.spec.washer_diameter.value, |d| d.value)
            .si();
        let thin = self.size.spec.washer_thickness.value.si();
        let mut across = washer
            .min(nut + 2.0 * cantilever(thin, WASHER_YIELD, crushing))
            .max(nut.min(washer));
        if let (Some(plate), Some(material)) = (&self.given.said.backing_plate, &self.given.plate) {
            let reach = cantilever(
                plate.thickness.value.si(),
                material.spec.bending_strength.value.si(),
                crushing,
            );
            let most = plate
                .width
                .value
                .si()
                .min(plate.height.value.si())
                .max(across);
            across = (across + 2.0 * reach).min(most);
        }
        if board.core + 1 < board.layers.len() {
            for skin in board.layers.iter().skip(board.core + 1).rev() {
                across += 2.0
                    * cantilever(
                        skin.thickness.si(),
                        skin.material.spec.bending_strength.value.si(),
                        crushing,
                    );
            }
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
        let side = 0.5 * std::f64::consts::PI.sqrt() * self.spread(board, KnockDown::SOUND);
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
                let radius = hole
                    .diameter
                    .as_ref()
                    .map_or(0.5 * self.diameter(), |d| 0.5 * d.value.si());
                let above = (board.top - hole.below.value.si()) - radius - bolt.z;
                let beside = (hole.at.y().si() - bolt.y).abs() < radius + 0.5 * self.diameter();
                (beside && above > self.diameter()).then_some(above)
            })
            .fold(to_top, f64::min)
    }

    /// What a bolt must hold in a case, N; plain for the combined part.
    pub fn demand(
        &self,
        part: Part,
        case: usize,
        bolt: usize,
        kind: Kind,
        driving: Driving,
    ) -> f64 {
        let Some(forces) = self
            .forces
            .get(case)
            .and_then(|group| group.bolts.get(bolt))
        else {
            return 0.0;
        };
        match part {
            Part::Tension | Part::Crush | Part::Punch => forces.tension,
            Part::Shear | Part::Bearing => forces.shear,
            Part::Combined => {
                let sheet = &mut Sheet::default();
                let (tension, shear) = (self.tension_capacity(sheet), self.shear_capacity(sheet));
                let force = Force::from_si;
                let used = bolts::combined_ratio(
                    sheet,
                    force(forces.tension),
                    force(forces.shear),
                    &tension,
                    &shear,
                );
                used.value().si().sqrt()
            }
            Part::Tear => {
                let up = forces.primary[1] + forces.secondary[1];
                // What jolts down springs back: 1 + n down, n − 1 up.
                let n = heavier(kind, driving);
                let rebound = if n > 1.0 { (n - 1.0) / (n + 1.0) } else { 0.0 };
                up.max(-up * rebound)
            }
        }
    }

    /// What a bolt can hold.
    pub fn capacity(
        &self,
        sheet: &mut Sheet,
        part: Part,
        rig: &Rig,
        board: &Board,
        left: KnockDown,
        bolt: usize,
    ) -> f64 {
        let length = Length::from_si;
        let thickness = length(board.thickness());
        let through =
            Pressure::from_si(board.mean(left, |material| material.shear_strength.value.si()));
        match part {
            Part::Tension => self.tension_capacity(sheet).value().si(),
            Part::Shear => self.shear_capacity(sheet).value().si(),
            Part::Combined => 1.0,
            Part::Bearing => {
                let strength = board.mean(left, |material| material.bearing_strength.value.si());
                strength * self.diameter() * board.thickness()
            }
            Part::Crush => {
                let area = bolts::washer_area(
                    sheet,
                    length(self.spread(board, left)),
                    length(self.hole()),
                );
                let crushing = left.strength * board.core_material().crushing_strength.value;
                bolts::crushing_capacity(sheet, crushing, &area)
                    .value()
                    .si()
            }
            Part::Punch => bolts::shear_out_capacity(
                sheet,
                through,
                thickness,
                length(self.spread(board, left)),
            )
            .value()
            .si(),
            Part::Tear => {
                let edge = length(self.edge(rig, board, bolt));
                bolts::tear_out_capacity(sheet, through, thickness, edge, length(self.hole()))
                    .value()
                    .si()
                    .max(0.0)
            }
        }
    }

    /// The pull that stretches one bolt for good.
    pub fn tension_capacity(&self, sheet: &mut Sheet) -> Term<Force> {
        let area = Term::new("As", self.size.spec.stress_area.value);
        bolts::proof_load(sheet, self.proof(), &area)
    }

    /// The force that shears one bolt off.
    pub fn shear_capacity(&self, sheet: &mut Sheet) -> Term<Force> {
        let area = Term::new("As", self.size.spec.stress_area.value);
        bolts::shear_capacity(sheet, self.grade.spec.tensile.value, &area)
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
    let across = (4.0 * area / std::f64::consts::PI + footing.hole().powi(2)).sqrt();
    let from = NUT_WIDTH * footing.diameter();
    let reach = 0.5 * (across - from).max(0.0);
    (
        reach / cantilever(1.0, PLATE_MATERIAL_YIELD, crushing),
        across,
    )
}

impl Laden {
    /// The bolt nearest to giving way in this part; `None` without bolts.
    pub fn worst(&self, part: Part, rig: &Rig, strength: &Strength) -> Option<Worst> {
        self.worst_with(part, rig, strength, strength.left())
    }

    /// The same with another core.
    pub fn worst_with(
        &self,
        part: Part,
        rig: &Rig,
        strength: &Strength,
        left: KnockDown,
    ) -> Option<Worst> {
        let mut worst: Option<Worst> = None;
        for (f, footing) in self.footings.iter().enumerate() {
            for bolt in 0..footing.bolts.len() {
                let capacity = footing.capacity(
                    &mut Sheet::default(),
                    part,
                    rig,
                    &strength.board,
                    left,
                    bolt,
                );
                for (case, what) in self.cases.iter().enumerate() {
                    let demand = footing.demand(part, case, bolt, what.kind, strength.driving);
                    let one = Worst {
                        footing: f,
                        case,
                        bolt,
                        demand,
                        capacity,
                    };
                    if worst.is_none_or(|worst| demand * worst.capacity > worst.demand * capacity) {
                        worst = Some(one);
                    }
                }
            }
        }
        worst
    }

    /// The greatest demand of each case, a bolt anywhere.
    pub fn demands(&self, part: Part, driving: Driving) -> Vec<f64> {
        self.cases
            .iter()
            .enumerate()
            .map(|(case, what)| {
                self.footings
                    .iter()
                    .flat_map(|footing| {
                        (0..footing.bolts.len())
                            .map(move |bolt| footing.demand(part, case, bolt, what.kind, driving))
                    })
                    .fold(0.0, f64::max)
            })
            .collect()
    }
}
