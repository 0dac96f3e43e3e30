//! Questions of running that a job puts outright: a planing prism, a propeller.

use std::f64::consts::TAU;

use uom::si::angle::degree;
use uom::si::f64::{Angle, AngularVelocity, Force, Length, MassDensity, Power, Ratio, Velocity};

use super::Case;
use crate::job::{PlaningStudy, PropellerStudy, Water as JobWater};
use crate::physics::propeller::{Curves, Propeller, REYNOLDS, REYNOLDS_RANGE, Sized, Turning, cavitation};
use crate::physics::running::{Beside, Bottom, Planing, ThrustLine, Water, critical_trim, write};
use crate::physics::weight::FRESH_WATER_LB_FT3;
use crate::quantity::{Dimensioned, Measure, Moment, Text, pounds_per_cubic_foot, say, standard_gravity};
use crate::working::{Part, Sheet, Term, number};
use crate::written::Slip;

/// A figure of an answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Its key, with its unit, for another program.
    pub key: &'static str,
    /// What it is.
    pub meaning: &'static str,
    /// For showing.
    pub shown: Measure,
    /// In the unit of its key, unrounded.
    pub value: f64,
}

/// The answer to a question put outright.
#[derive(Clone, Debug, PartialEq)]
pub struct Answered {
    /// The field of the job that asks.
    pub name: &'static str,
    /// What a working calls it.
    pub title: &'static str,
    /// What comes out, figure by figure; none where the method does not tell it.
    pub figures: Vec<Figure>,
    /// Why nothing, or not all, is answered; and what else must be said.
    pub notes: Vec<Text>,
    /// How they came about.
    pub sheet: Sheet,
}

impl Case<'_> {
    /// The answers to the questions of running that the job puts.
    pub fn running_studies(&self) -> Vec<Answered> {
        let planing = self.rig.job.planing_study.as_ref().map(planing);
        let propeller = self.rig.job.propeller_study.as_ref().and_then(|study| propeller(study).ok());
        planing.into_iter().chain(propeller).collect()
    }

    /// What those questions ask and cannot be answered.
    pub fn running_study_faults(&self) -> Vec<Slip> {
        self.rig.job.propeller_study.as_ref().and_then(|study| propeller(study).err()).into_iter().collect()
    }

    /// The working of those questions.
    pub fn running_study_parts(&self) -> Vec<Part> {
        self.running_studies().into_iter().map(Answered::part).collect()
    }
}

impl Answered {
    /// As a part of a working: figures first.
    pub fn part(self) -> Part {
        let rows =
            self.figures.iter().map(|figure| vec![Text::from(figure.meaning), Text::from(figure.shown)]).collect();
        let mut sheet = Sheet::default();
        for note in self.notes {
            sheet.remark(note);
        }
        sheet.append(self.sheet);
        Part {
            title: self.title.to_owned(),
            tables: vec![crate::working::Table::new("answer", &["", ""], rows)],
            sheet,
        }
    }
}

/// Salt water, as everywhere else. Source: Coast Guard boatbuilder's handbook: 64 lb/ft³.
const SALT_WATER_LB_FT3: f64 = 64.0;

fn density(water: Option<&JobWater>) -> MassDensity {
    match water {
        Some(JobWater::Fresh) => pounds_per_cubic_foot(FRESH_WATER_LB_FT3),
        Some(JobWater::Density(density)) => density.value,
        Some(JobWater::Salt) | None => pounds_per_cubic_foot(SALT_WATER_LB_FT3),
    }
}

fn planing(study: &PlaningStudy) -> Answered {
    let asked = Planing {
        bottom: Bottom { beam: study.beam.value, deadrise: study.deadrise.value },
        water: Water::of(density(study.water.as_ref())),
        weight: study.weight.value * standard_gravity(),
        centre_forward: study.centre_forward.value,
        centre_above: study.centre_above.value,
        thrust: ThrustLine {
            angle: study.thrust_angle.as_ref().map_or(Angle::default(), |angle| angle.value),
            below: study.thrust_below.as_ref().map_or(Length::default(), |below| below.value),
            ..ThrustLine::default()
        },
        speed: study.speed.value,
        beside: Beside::default(),
    };
    let mut answered = Answered {
        name: "planing_study",
        title: "the planing prism asked about",
        figures: Vec::new(),
        notes: Vec::new(),
        sheet: Sheet::default(),
    };
    match asked.balance() {
        Ok(running) => {
            let sheet = &mut answered.sheet;
            sheet.told("b", Some(&study.beam));
            sheet.told("β", Some(&study.deadrise));
            sheet.origin::<Ratio>("β", study.deadrise.basis.origin());
            sheet.told("V", Some(&study.speed));
            sheet.origin::<Force>("Δ", study.weight.basis.origin());
            write(sheet, &asked, &running);
            let limit = critical_trim(asked.bottom.deadrise, running.lift);
            if limit.is_none() {
                answered.notes.push(Text::from(
                    "The porpoising limit is told for 5 to 25 degrees of deadrise and √(CL/2) of 0.10 to 0.30: it is not told here.",
                ));
            }
            if let Some(limit) = limit {
                let word = if running.trim > limit { "above" } else { "below" };
                answered.notes.push(say!(
                    "She runs {} {} the trim at which she begins to porpoise.",
                    Measure::of((running.trim - limit).abs()),
                    word
                ));
            }
            let angle = |key, meaning, angle: Angle| figure(key, meaning, angle, angle.get::<degree>());
            answered.figures = vec![
                angle("trim_deg", "equilibrium trim", running.trim),
                si("wetted_length_over_beam", "mean wetted length over beam", running.wetted),
                si("keel_wetted_m", "wetted length of the keel", running.keel),
                si("chine_wetted_m", "wetted length of the chines", running.chine),
                si("drag_n", "drag", running.drag),
                si("effective_power_w", "effective power", running.effective_power),
                si("thrust_n", "thrust along its line", running.thrust),
                si("speed_coefficient", "speed coefficient", running.speed_coefficient),
                si("lift_coefficient", "lift coefficient of the bottom", running.lift),
                si("flat_lift_coefficient", "lift coefficient of a flat bottom", running.flat_lift),
                si("friction_n", "friction", running.friction),
                si("pressure_n", "pressure square to the bottom", running.pressure),
                si("friction_coefficient", "friction coefficient, roughness with it", running.friction_coefficient),
                si("reynolds", "Reynolds number of the bottom", running.reynolds),
            ];
            answered.figures.extend(limit.map(|limit| angle("porpoising_limit_deg", "porpoising limit", limit)));
        }
        Err(outside) => answered.notes.push(say!("Not told: {}.", outside.to_string())),
    }
    answered
}

fn figure<Q: Dimensioned>(key: &'static str, meaning: &'static str, value: Q, number: f64) -> Figure {
    Figure { key, meaning, shown: Measure::of(value), value: number }
}

fn si<Q: Dimensioned>(key: &'static str, meaning: &'static str, value: Q) -> Figure {
    figure(key, meaning, value, value.si())
}

/// Advance, and what turns where it is known, from whichever two are given.
struct Asked {
    advance: f64,
    /// Turns a second and speed, m/s.
    turning: Option<[f64; 2]>,
}

fn asked(study: &PropellerStudy) -> Result<Asked, Slip> {
    let slip = |message: &str| Slip {
        path: "propeller_study".to_owned(),
        message: message.to_owned(),
        help: "give speed and rpm, or advance, or advance with one of them".to_owned(),
    };
    let diameter = study.diameter.value.si();
    let speed = study.speed.as_ref().map(|speed| speed.value.si());
    let turns = study.rpm.as_ref().map(|rpm| rpm.value.si() / TAU);
    let advance = study.advance.as_ref().map(|advance| advance.value.si());
    match (speed, turns, advance) {
        (Some(_), Some(_), Some(_)) => Err(slip("speed, rpm and advance say one thing too many")),
        (Some(speed), Some(turns), None) => {
            Ok(Asked { advance: speed / (turns * diameter), turning: Some([turns, speed]) })
        }
        (None, Some(turns), Some(advance)) => Ok(Asked { advance, turning: Some([turns, advance * turns * diameter]) }),
        (Some(speed), None, Some(advance)) if advance > 0.0 => {
            Ok(Asked { advance, turning: Some([speed / (advance * diameter), speed]) })
        }
        (None, None, Some(advance)) => Ok(Asked { advance, turning: None }),
        _ => Err(slip("speed and rpm, or advance, are missing")),
    }
}

fn propeller(study: &PropellerStudy) -> Result<Answered, Slip> {
    let Asked { advance, turning } = asked(study)?;
    let diameter = study.diameter.value.si();
    let ratio = (study.pitch.value / study.diameter.value).si();
    let propeller = Propeller::new(study.blades, study.area_ratio.value.si(), ratio).map_err(|error| Slip {
        path: "propeller_study".to_owned(),
        message: error.to_string(),
        help: "the Wageningen B-series answers within its own bounds".to_owned(),
    })?;
    let reynolds = study.reynolds.filter(|reynolds| *reynolds != REYNOLDS);
    let curves = reynolds.map_or_else(|| Curves::of(&propeller), |reynolds| Curves::at_reynolds(&propeller, reynolds));
    let mut notes = Vec::new();
    if reynolds.is_some_and(|reynolds| reynolds < REYNOLDS_RANGE[0]) {
        notes.push(Text::from(
            "Below a Reynolds number of two million the correction is not told: that of two million is used.",
        ));
    }
    if advance > curves.no_thrust {
        notes.push(say!(
            "At this advance it does not pull any more: it stops at {}.",
            Measure::of(Ratio::from_si(curves.no_thrust))
        ));
    }
    let open = curves.at(advance);
    let efficiency = open.efficiency();
    let mut sheet = Sheet::default();
    sheet.told("D", Some(&study.diameter));
    let plain = |symbol: &str, value: f64| Term::new(symbol, Ratio::from_si(value));
    sheet.remark(say!(
        "A propeller of {} blades, blade area {} of the disc, P/D {}, by the polynomials of the Wageningen B-series at Reynolds number {}: KT = {}, KQ = {}.",
        u32::from(study.blades),
        Measure::of(study.area_ratio.value),
        Measure::of(Ratio::from_si(ratio)),
        format!("{:.1e}", reynolds.unwrap_or(REYNOLDS)),
        format!("{:.5}", open.thrust),
        format!("{:.6}", open.torque)
    ));
    let (kt, kq, j) = (plain("KT", open.thrust), plain("KQ", open.torque), plain("J", advance));
    sheet.set("η", "efficiency in open water", j * &kt / (number(TAU) * &kq));
    let mut figures = vec![
        si("advance", "advance J", Ratio::from_si(advance)),
        si("kt", "KT", Ratio::from_si(open.thrust)),
        si("kq", "KQ", Ratio::from_si(open.torque)),
        si("efficiency", "efficiency", Ratio::from_si(efficiency)),
    ];
    if let Some([turns, speed]) = turning {
        let water = density(study.water.as_ref());
        let base = water.si() * turns * turns * diameter.powi(4);
        let (thrust, torque) = (open.thrust * base, open.torque * base * diameter);
        let power = TAU * turns * torque;
        let tip = Term::new("nD", Velocity::from_si(turns * diameter));
        let d = Term::new("D", study.diameter.value);
        let pull = kt * Term::new("ρ", water) * &tip * &tip * &d * &d;
        sheet.set("T", "thrust", pull);
        let twist = kq * Term::new("ρ", water) * &tip * &tip * &d * &d * &d;
        sheet.set("Q", "torque", twist);
        figures.extend([
            si("thrust_n", "thrust", Force::from_si(thrust)),
            si("torque_nm", "torque", Moment::from_si(torque)),
            si("power_w", "power at the shaft", Power::from_si(power)),
            figure("turns_per_second", "turns of the propeller", AngularVelocity::from_si(TAU * turns), turns),
            si("speed_m_s", "speed of the water to it", Velocity::from_si(speed)),
        ]);
        if let Some(depth) = &study.depth {
            let sized = Sized { curves, diameter, density: water.si(), stretch: 1.0, pitch: ratio * diameter };
            let turning = Turning { turns, open_water: open, thrust, torque, power };
            let load = cavitation(&sized, &propeller, &turning, speed, depth.value.si(), standard_gravity().si());
            figures.push(si(
                "cavitation_load",
                "load over that from which a tenth of the blades' backs cavitates",
                Ratio::from_si(load),
            ));
            if load > 1.0 {
                notes.push(Text::from("It cavitates: open-water figures promise too much."));
            }
        }
    }
    Ok(Answered { name: "propeller_study", title: "the propeller asked about", figures, notes, sheet })
}
