//! What each bolt bears, and what the transom bears at it.

mod pad;
mod spread;

use uom::si::f64::{Area, Force, Length, Pressure};

use super::board::Board;
use super::footing::{Footing, heavier};
use super::{Driving, Laden, Strength};
use crate::catalog::{BoltSize, Entry};
use crate::job;
use crate::physics::strength::bolts;
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::loads::Case as Kind;
use crate::quantity::{Basis, Dimensioned};
use crate::reading::reading;
use crate::rig::{Missing, Rig};
use crate::working::{Sheet, Term};

pub(super) use pad::STRIP_IN;
pub use pad::{Pressed, Side, backing_plate};

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
    /// The washer sinks into the core.
    Crush,
    /// The washer is punched through.
    Punch,
    /// The bolt tears out to the top edge.
    Tear,
}

/// The bolt that is nearest to giving way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Worst {
    /// The face that it holds, as counted in [`Laden::footings`].
    pub footing: usize,
    /// The load case that asks most of it, as counted in [`Laden::cases`].
    pub case: usize,
    /// Which bolt it is, as counted in [`Footing::bolts`].
    pub bolt: usize,
    /// What it must hold, N (a plain number for the combined part).
    pub demand: f64,
    /// What it can hold, likewise.
    pub capacity: f64,
}

impl Worst {
    /// Capacity over demand.
    pub fn factor(&self) -> f64 {
        self.capacity / self.demand.max(f64::MIN_POSITIVE)
    }
}

impl Footing {
    /// The load that the bolt bears without a lasting stretch: its proof stress, or its yield where the standard gives
    /// no proof stress.
    pub fn proof(&self) -> Pressure {
        let grade = &self.grade.spec;
        grade.proof.as_ref().map_or(grade.yield_strength.value, |proof| proof.value)
    }

    /// What the job does not tell of its bolts and this part asks: without it the usual stands in, which may let pass and
    /// never fail.
    pub fn lacks(&self, part: Part) -> Vec<Missing> {
        let said = &self.given.said;
        let of_bolt = matches!(part, Part::Tension | Part::Shear | Part::Combined);
        let under_nut = matches!(part, Part::Crush | Part::Punch);
        let bolts = self.given.size.is_none() || (of_bolt && self.given.grade.is_none());
        let washers = under_nut && said.washer.is_none() && said.backing_plate.is_none();
        [(bolts, reading!(job::EngineGroup.bolts)), (washers, reading!(job::Bolting.washer))]
            .into_iter()
            .filter(|(lacking, _)| *lacking)
            .map(|(_, measurement)| Missing { measurement, of: Some(self.name.clone()) })
            .collect()
    }

    /// What a bolt must hold in a case, N; plain for the combined part.
    pub fn demand(&self, part: Part, case: usize, bolt: usize, kind: Kind, driving: Driving) -> f64 {
        let Some(forces) = self.forces.get(case).and_then(|group| group.bolts.get(bolt)) else {
            return 0.0;
        };
        match part {
            Part::Tension | Part::Crush | Part::Punch => forces.tension,
            Part::Shear | Part::Bearing => forces.shear,
            Part::Combined => {
                let sheet = &mut Sheet::default();
                let (tension, shear) = (self.tension_capacity(sheet), self.shear_capacity(sheet));
                let force = Force::from_si;
                let used = bolts::combined_ratio(sheet, force(forces.tension), force(forces.shear), &tension, &shear);
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
        match part {
            Part::Tension => self.tension_capacity(sheet).value().si(),
            Part::Shear => self.shear_capacity(sheet).value().si(),
            Part::Combined => 1.0,
            Part::Bearing => {
                let strength = board.mean(left, |material| material.bearing_strength.value.si());
                strength * self.diameter() * board.thickness()
            }
            Part::Crush | Part::Punch => self.pull_capacity(sheet, part, &self.under_nut(board), board, left),
            Part::Tear => {
                let through = Pressure::from_si(board.mean(left, |material| material.shear_strength.value.si()));
                let edge = length(self.edge(rig, board, bolt));
                let thickness = length(board.thickness());
                bolts::tear_out_capacity(sheet, through, thickness, edge, length(self.hole())).value().si().max(0.0)
            }
        }
    }

    /// Says on a sheet where the figures are from of what a bolt, and the transom at it, bears.
    pub fn say_origins(&self, sheet: &mut Sheet, rig: &Rig, board: &Board, left: KnockDown) {
        let class = Basis::Catalog.origin();
        let of = |told: bool| if told { class } else { Basis::Assumed.origin() };
        let said = &self.given.said;
        let (size, grade) = (of(self.given.size.is_some()), of(self.given.grade.is_some()));
        let washer = said.washer.as_ref().map_or(Basis::Assumed, |washer| washer.basis).origin();
        let sheet_of_washer = said.washer_thickness.as_ref().map_or(Basis::Catalog, |one| one.basis).origin();
        let plate = said.backing_plate.as_ref();
        let plate_from = plate.map_or(Basis::Assumed, |plate| plate.thickness.basis).origin();
        let layers = board.layers_from(rig);
        let core = if left == KnockDown::SOUND { class } else { "catalog class, and what is left of the core" };
        sheet.origin::<Area>("As", size);
        sheet.origin::<Pressure>("Sp", grade);
        sheet.origin::<Pressure>("Rm", grade);
        for (symbol, from) in [
            ("d", size),
            ("w", washer),
            ("tw", sheet_of_washer),
            ("tp", plate_from),
            ("sp", plate_from),
            ("ts", layers),
            ("h", layers),
            ("t", layers),
            ("a", self.bolts_from),
            ("e", self.bolts_from),
            ("we", self.face_from),
            ("he", self.face_from),
        ] {
            sheet.origin::<Length>(symbol, from);
        }
        for (symbol, from) in [("fp", class), ("fs", class), ("fc", core), ("σc", core), ("τ", core)] {
            sheet.origin::<Pressure>(symbol, from);
        }
        for i in 1..=board.layers.len() {
            sheet.origin::<Length>(&format!("t{i}"), layers);
            sheet.origin::<Pressure>(&format!("τ{i}"), core);
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

impl Laden {
    /// The bolt nearest to giving way in this part, of those of which the job tells what the part asks; `None` without.
    pub fn worst(&self, part: Part, rig: &Rig, strength: &Strength) -> Option<Worst> {
        self.worst_with(part, rig, strength, strength.left())
    }

    /// The same with another core.
    pub fn worst_with(&self, part: Part, rig: &Rig, strength: &Strength, left: KnockDown) -> Option<Worst> {
        self.worst_of(part, rig, strength, left, |footing| footing.lacks(part).is_empty())
    }

    /// The same of these faces. What is held by clamp screws has no bolts.
    pub fn worst_of(
        &self,
        part: Part,
        rig: &Rig,
        strength: &Strength,
        left: KnockDown,
        of: impl Fn(&Footing) -> bool,
    ) -> Option<Worst> {
        let mut worst: Option<Worst> = None;
        let footings = self.footings.iter().enumerate().filter(|(_, footing)| !footing.clamped && of(footing));
        for (f, footing) in footings {
            for bolt in 0..footing.bolts.len() {
                let capacity = footing.capacity(&mut Sheet::default(), part, rig, &strength.board, left, bolt);
                for (case, what) in self.cases.iter().enumerate() {
                    let demand = footing.demand(part, case, bolt, what.kind, strength.driving);
                    let one = Worst { footing: f, case, bolt, demand, capacity };
                    if worst.is_none_or(|worst| demand * worst.capacity > worst.demand * capacity) {
                        worst = Some(one);
                    }
                }
            }
        }
        worst
    }

    /// The least factor of pull and shear together on the bolts of a face, were they of this size: what each of them bears does
    /// not change, for they are all alike.
    pub fn combined_with(&self, footing: &Footing, size: &Entry<BoltSize>, driving: Driving) -> f64 {
        let footing = Footing { size: size.clone(), ..footing.clone() };
        let cases = self.cases.iter().enumerate();
        let used = cases.flat_map(|(case, what)| {
            let footing = &footing;
            (0..footing.bolts.len()).map(move |bolt| footing.demand(Part::Combined, case, bolt, what.kind, driving))
        });
        1.0 / used.fold(f64::MIN_POSITIVE, f64::max)
    }

    /// The greatest demand of each case, a bolt anywhere.
    pub fn demands(&self, part: Part, driving: Driving) -> Vec<f64> {
        self.cases
            .iter()
            .enumerate()
            .map(|(case, what)| {
                self.footings
                    .iter()
                    .filter(|footing| !footing.clamped)
                    .flat_map(|footing| {
                        (0..footing.bolts.len()).map(move |bolt| footing.demand(part, case, bolt, what.kind, driving))
                    })
                    .fold(0.0, f64::max)
            })
            .collect()
    }
}
