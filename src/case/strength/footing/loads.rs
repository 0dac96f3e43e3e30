//! The loads on a face, case by case.

use uom::si::f64::{Length, Ratio, Velocity};

use super::super::NoStrength;
use super::Footing;
use super::figures::{Figures, setback};
use crate::physics::strength::bolts::bolt_forces;
use crate::physics::strength::loads::{
    self, Case as Kind, DISC_EFFICIENCY, FaceLoad, OVERALL_EFFICIENCY, TRAILER_ACCELERATION,
};
use crate::quantity::{Dimensioned, say, standard_gravity};
use crate::rig::{Group, Outfit};
use crate::working::Sheet;

/// Propeller aft of the mounting face over the engine's centre aft of it. Common practice, no source.
const PROPELLER_OF_CENTRE: f64 = 1.5;

/// How she is driven, in the kernel's terms.
#[derive(Clone, Copy, Debug)]
pub struct Driving {
    pub speed: Velocity,
    /// Slamming on top of gravity, in g.
    pub slamming: f64,
}

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
        if self.alone {
            "one engine alone, static full thrust"
        } else {
            self.kind.name()
        }
    }
}

/// The cases of an outfit.
pub fn cases(outfit: &Outfit) -> Vec<LoadCase> {
    let mut cases: Vec<LoadCase> = Kind::ALL
        .into_iter()
        .map(|kind| LoadCase { kind, alone: false })
        .collect();
    if outfit.mains().len() > 1 {
        cases.push(LoadCase {
            kind: Kind::StaticThrust,
            alone: true,
        });
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
    driving: Driving,
    cases: Vec<LoadCase>,
    /// The engine that drives in the case of one alone.
    alone: Option<&'a str>,
}

impl<'a> Driven<'a> {
    pub fn of(outfit: &'a Outfit, driving: Driving) -> Self {
        Driven {
            driving,
            cases: cases(outfit),
            alone: outfit.mains().first().map(|engine| engine.label.as_str()),
        }
    }

    /// Puts the loads of these engines on their face and its bolts.
    pub fn load(
        &self,
        footing: &mut Footing,
        group: &Group,
        engines: &[Figures],
    ) -> Result<(), NoStrength> {
        footing.loads = vec![FaceLoad::default(); self.cases.len()];
        for (i, engine) in engines.iter().enumerate() {
            let mut sheet = Sheet::default();
            let own = self.of_engine(engine, footing.middle, &mut sheet)?;
            if i == 0 {
                footing
                    .sheet
                    .remark(say!("of the {}:", engine.engine.label.as_str()));
                footing.sheet.append(sheet);
            }
            for (total, load) in footing.loads.iter_mut().zip(own) {
                *total = total.plus(load);
            }
        }
        let bracket = group.bracket.as_ref();
        if let Some(weight) = bracket.and_then(|bracket| bracket.weight.reading()) {
            let place = [-0.5 * setback(group).si(), 0.0, 0.0];
            for (total, case) in footing.loads.iter_mut().zip(&self.cases) {
                let gravity = standard_gravity().si() * (1.0 + heavier(case.kind, self.driving));
                *total = total.plus(FaceLoad::at(
                    place,
                    [0.0, 0.0, -weight.value.si() * gravity],
                ));
            }
        }
        footing.forces = footing
            .loads
            .iter()
            .map(|load| bolt_forces(&footing.bolts, footing.face, load.on_bolts(footing.middle)))
            .collect::<Result<_, _>>()
            .map_err(|error| {
                NoStrength::Unfit(say!(
                    "The bolts of the {}: {}.",
                    footing.name.as_str(),
                    error.to_string()
                ))
            })?;
        Ok(())
    }

    /// What one engine brings to the middle of the bolts, a case an element.
    fn of_engine(
        &self,
        figures: &Figures,
        middle: [f64; 2],
        sheet: &mut Sheet,
    ) -> Result<Vec<FaceLoad>, NoStrength> {
        let Figures { engine, .. } = figures;
        let centre = Length::from_si(middle[1]);
        let power = engine.power.reading().map(|power| power.value);
        let kernel = loads::Engine {
            mass: figures.mass,
            power: power.unwrap_or_default(),
            propeller: figures.propeller,
            weight_aft: figures.weight_aft(),
            tilted_aft: figures.tilted_aft(),
            weight_up: figures.rest + figures.above - centre,
            shaft_down: centre - figures.shaft,
            propeller_aft: figures.setback + PROPELLER_OF_CENTRE * figures.aft,
            steering: figures.steering,
        };
        let outfit = loads::Outfit {
            speed: self.driving.speed,
            slamming: Ratio::from_si(self.driving.slamming),
            disc_efficiency: DISC_EFFICIENCY,
            overall_efficiency: OVERALL_EFFICIENCY,
        };
        let own = loads::cases(sheet, &kernel, &outfit).map_err(|error| {
            NoStrength::Unfit(say!(
                "The loads of the {}: {}.",
                engine.label.as_str(),
                error.to_string()
            ))
        })?;
        let of = |kind: Kind| {
            own.iter()
                .find(|(one, _)| *one == kind)
                .map_or(FaceLoad::default(), |(_, load)| *load)
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
