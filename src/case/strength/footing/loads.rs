//! The loads on a face, case by case.

use uom::si::f64::{Length, Ratio};

use super::super::board::Board;
use super::super::driving::Driving;
use super::Footing;
use super::figures::{Figures, setback};
use crate::physics::strength::bolts::{Foot, GroupForces, bolt_forces};
use crate::physics::strength::loads::{self, Case as Kind, FaceLoad, OVERALL_EFFICIENCY, TRAILER_ACCELERATION};
use crate::quantity::{Dimensioned, say, standard_gravity};
use crate::reading::Absent;
use crate::rig::{Group, Outfit};
use crate::working::Sheet;

/// Propeller aft of the mounting face over the engine's centre aft of it. Common practice, no source.
const PROPELLER_OF_CENTRE: f64 = 1.5;

/// A load case of an outfit.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadCase {
    /// What happens.
    pub kind: Kind,
    /// Whether one engine drives alone.
    pub alone: bool,
}

impl LoadCase {
    /// Its name.
    pub fn name(&self) -> &'static str {
        if self.alone { "one engine alone, full throttle ahead at rest" } else { self.kind.name() }
    }
}

/// The cases of an outfit.
pub fn cases(outfit: &Outfit) -> Vec<LoadCase> {
    let mut cases: Vec<LoadCase> = Kind::ALL.into_iter().map(|kind| LoadCase { kind, alone: false }).collect();
    if outfit.mains().len() > 1 {
        cases.push(LoadCase { kind: Kind::StaticThrust, alone: true });
    }
    cases
}

/// What a case adds to gravity, in g.
pub fn heavier(kind: Kind, driving: Driving) -> f64 {
    match kind {
        Kind::Slamming => driving.slamming,
        Kind::Trailer => TRAILER_ACCELERATION,
        _ => 0.0,
    }
}

/// An outfit as it is driven.
pub(super) struct Driven<'a> {
    board: &'a Board,
    driving: Driving,
    cases: Vec<LoadCase>,
    /// The engine that drives in the case of one alone.
    alone: Option<&'a str>,
}

impl<'a> Driven<'a> {
    pub fn of(outfit: &'a Outfit, board: &'a Board, driving: Driving) -> Self {
        Driven {
            board,
            driving,
            cases: cases(outfit),
            alone: outfit.mains().first().map(|engine| engine.label.as_str()),
        }
    }

    /// Puts the loads of these engines on their face and its bolts.
    pub fn load(&self, footing: &mut Footing, group: &Group, engines: &[Figures]) -> Result<(), Absent> {
        footing.loads = vec![FaceLoad::default(); self.cases.len()];
        for (i, engine) in engines.iter().enumerate() {
            let mut sheet = Sheet::default();
            let own = self.of_engine(engine, footing.middle, &mut sheet)?;
            if i == 0 {
                footing.sheet.remark(say!("of the {}:", engine.engine.label.as_str()));
                footing.sheet.append(sheet);
            }
            for (total, load) in footing.loads.iter_mut().zip(own) {
                *total = total.plus(load);
            }
        }
        let bracket = group.bracket.as_ref();
        if let Some(weight) = bracket.and_then(|bracket| bracket.weight.reading()) {
            let place = self.bracket(group, engines, footing.middle);
            let counted = footing.loads.iter_mut().zip(&self.cases).filter(|(_, case)| case.kind.counts_weight());
            for (total, case) in counted {
                let gravity = standard_gravity().si() * (1.0 + heavier(case.kind, self.driving));
                let hangs = FaceLoad::at(place, [0.0, 0.0, -weight.value.si() * gravity]);
                *total = total.plus(hangs.leaning(self.board.lean()));
            }
        }
        let on = |foot: Foot| -> Result<Vec<GroupForces>, Absent> {
            let each =
                footing.loads.iter().map(|load| bolt_forces(&footing.bolts, foot, load.on_bolts(footing.middle)));
            each.collect::<Result<_, _>>().map_err(|error| {
                Absent::CannotBe(say!("The bolts of the {}: {}.", footing.name.as_str(), error.to_string()))
            })
        };
        (footing.forces, footing.pressed) = (on(footing.face)?, on(footing.arms())?);
        Ok(())
    }

    /// The middle of a bracket from the middle of its bolts, boat axes, m.
    fn bracket(&self, group: &Group, engines: &[Figures], middle: [f64; 2]) -> [f64; 3] {
        let stern = &self.board.stern;
        let drop = group.drop().reading().map(|drop| drop.value);
        let bottom = group.bracket.as_ref().and_then(|bracket| bracket.bottom.reading()).map(|bottom| bottom.value);
        let at = stern.bracket(setback(group), drop.unwrap_or_default(), bottom) - stern.on_face(middle[1]);
        let across: f64 = engines.iter().map(|one| one.engine.y.si()).sum();
        [at.x, across / engines.len().max(1) as f64 - middle[0], at.z]
    }

    /// What one engine brings to the middle of the bolts, a case an element.
    fn of_engine(&self, figures: &Figures, middle: [f64; 2], sheet: &mut Sheet) -> Result<Vec<FaceLoad>, Absent> {
        let Figures { engine, .. } = figures;
        // The engine's rest aft of the bolts' middle and above it, level.
        let rest = figures.rest - self.board.stern.on_face(middle[1]);
        let (aft, up) = (Length::from_si(-rest.x), Length::from_si(rest.z));
        let kernel = loads::Engine {
            mass: figures.mass,
            drive: figures.drive,
            screw: figures.screw(self.driving.speed),
            runs: figures.runs(),
            plate_to_shaft: figures.gearcase,
            weight_aft: aft + figures.aft,
            tilted_aft: aft + figures.tilted_aft(),
            weight_up: up + figures.above,
            shaft_down: figures.shaft - up,
            propeller_aft: aft + PROPELLER_OF_CENTRE * figures.aft,
            steering: figures.steering,
        };
        let outfit = loads::Outfit {
            speed: self.driving.speed,
            slamming: Ratio::from_si(self.driving.slamming),
            overall_efficiency: OVERALL_EFFICIENCY,
        };
        let own = loads::cases(sheet, &kernel, &outfit).map_err(|error| {
            Absent::CannotBe(say!("The loads of the {}: {}.", engine.label.as_str(), error.to_string()))
        })?;
        let of = |kind: Kind| {
            own.iter()
                .find(|(one, _)| *one == kind)
                .map_or(FaceLoad::default(), |(_, load)| load.leaning(self.board.lean()))
        };
        let off = engine.y.si() - middle[0];
        Ok(self
            .cases
            .iter()
            .map(|case| {
                let drives = !case.alone || self.alone == Some(engine.label.as_str());
                loads::both(&[(off, of(if drives { case.kind } else { Kind::Static }))])
            })
            .collect())
    }
}
