//! The loads on a face, case by case.

use uom::si::f64::{Angle, Length, Mass, Ratio, Velocity};

use super::super::board::Board;
use super::super::driving::Driving;
use super::Footing;
use super::figures::{Figures, setback};
use crate::physics::strength::bolts::{Foot, GroupForces, bolt_forces};
use crate::physics::strength::loads::{
    self, Acting, Arms, Case as Kind, FaceLoad, Hang, OVERALL_EFFICIENCY, TRAILER_ACCELERATION,
};
use crate::quantity::{Dimensioned, say};
use crate::reading::Absent;
use crate::rig::{Group, Outfit};
use crate::working::Sheet;

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
pub(crate) fn cases(outfit: &Outfit) -> Vec<LoadCase> {
    let mut cases: Vec<LoadCase> = Kind::ALL.into_iter().map(|kind| LoadCase { kind, alone: false }).collect();
    if outfit.mains().len() > 1 {
        cases.push(LoadCase { kind: Kind::StaticThrust, alone: true });
    }
    cases
}

/// What a case adds to gravity, in g.
pub(crate) fn heavier(kind: Kind, driving: Driving) -> f64 {
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
    pub(super) fn of(outfit: &'a Outfit, board: &'a Board, driving: Driving) -> Self {
        Driven {
            board,
            driving,
            cases: cases(outfit),
            alone: outfit.mains().first().map(|engine| engine.label.as_str()),
        }
    }

    /// Puts the loads of these engines on their face and its bolts.
    pub(super) fn load(&self, footing: &mut Footing, group: &Group, engines: &[Figures]) -> Result<(), Absent> {
        footing.acting = vec![Vec::new(); self.cases.len()];
        let mut told: Option<Sheet> = None;
        for engine in engines {
            let mut sheet = Sheet::default();
            let own = self.of_engine(engine, footing.middle, footing.bolts_from, &mut sheet)?;
            let label = engine.engine.label.as_str();
            if told.as_ref() == Some(&sheet) {
                footing.sheet.remark(say!("The {} is like the one before it: the same lines.", label));
            } else {
                footing.sheet.remark(say!("of the {}:", label));
                footing.sheet.append(sheet.clone());
                told = Some(sheet);
            }
            for (all, own) in footing.acting.iter_mut().zip(own) {
                all.extend(own.into_iter().map(|acting| (label.to_owned(), acting)));
            }
        }
        let bracket = group.bracket.as_ref();
        if let Some((bracket, weight)) = bracket.and_then(|bracket| Some((bracket, bracket.weight.reading()?))) {
            let place = self.bracket(group, engines, footing.middle);
            footing.sheet.remark(say!(
                "of the {}, its weight times one, in slamming and on the trailer:",
                bracket.name.as_str()
            ));
            footing.sheet.origin::<Mass>("m", weight.basis.origin());
            let mut told = Vec::new();
            let counted = footing.acting.iter_mut().zip(&self.cases).filter(|(_, case)| case.kind.counts_weight());
            for (all, case) in counted {
                let more = heavier(case.kind, self.driving);
                let mut sheet = Sheet::default();
                let from = "as of the engines in the same case";
                let weight = loads::heavy_weight(&mut sheet, weight.value, Ratio::from_si(more), from);
                if !told.contains(&more) {
                    told.push(more);
                    footing.sheet.append(sheet);
                }
                all.push((bracket.name.clone(), Acting { place, force: [0.0, 0.0, -weight.value().si()] }));
            }
        }
        let lean = self.board.lean();
        let face_load = |acting: &Vec<(String, Acting)>| {
            FaceLoad::of(&acting.iter().map(|(_, acting)| *acting).collect::<Vec<_>>(), lean)
        };
        footing.loads = footing.acting.iter().map(face_load).collect();
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
    fn of_engine(
        &self,
        figures: &Figures,
        middle: [f64; 2],
        middle_from: &str,
        sheet: &mut Sheet,
    ) -> Result<Vec<Vec<Acting>>, Absent> {
        let Figures { engine, .. } = figures;
        self.say_origins(figures, middle_from, sheet);
        let hang = Hang { middle: Length::from_si(middle[1]), ..figures.hang };
        let arms = Arms::of(sheet, &hang);
        let kernel = loads::Engine {
            mass: figures.mass,
            drive: figures.drive,
            screw: figures.screw(self.driving.speed),
            runs: figures.runs(),
            plate_to_shaft: hang.gearcase,
            weight_aft: arms.weight_aft.value(),
            tilted_aft: arms.tilted_aft.value(),
            weight_up: arms.weight_up.value(),
            shaft_down: arms.shaft_down.value(),
            propeller_aft: arms.propeller_aft.value(),
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
        let of = |kind: Kind| own.iter().find(|(one, _)| *one == kind).map_or(&[][..], |(_, acting)| acting.as_slice());
        let off = engine.y.si() - middle[0];
        Ok(self
            .cases
            .iter()
            .map(|case| {
                let drives = !case.alone || self.alone == Some(engine.label.as_str());
                of(if drives { case.kind } else { Kind::Static }).iter().map(|acting| acting.moved(off)).collect()
            })
            .collect())
    }

    /// Where the figures of an engine's loads are from.
    fn say_origins(&self, figures: &Figures, middle_from: &str, sheet: &mut Sheet) {
        figures.say_origins(sheet);
        sheet.origin::<Length>("H", self.board.height_from);
        sheet.origin::<Angle>("θ", self.board.lean_from);
        sheet.origin::<Length>("zm", middle_from);
        sheet.origin::<Velocity>("Vs", self.driving.speed_from);
    }
}
