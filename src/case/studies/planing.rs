//! A planing prism that a job gives outright.

use uom::si::angle::degree;
use uom::si::f64::{Angle, Force, Length, Ratio};

use super::{Answered, density, figure, si};
use crate::job::PlaningStudy;
use crate::physics::running::{Beside, Bottom, Planing, ThrustLine, Water, critical_trim, taken_at, write};
use crate::quantity::{Dimensioned, Measure, Text, say, standard_gravity};
use crate::working::Sheet;

/// The answer to the question.
pub(super) fn answered(study: &PlaningStudy) -> Answered {
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
        in_full: false,
        notes: Vec::new(),
        source: "Savitsky 1964 (the prism, the limit of porpoising); Celano 1998, a formula from memory (the higher limit)",
        tables: Vec::new(),
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
            let taken = taken_at(asked.bottom.deadrise);
            let limit = critical_trim(taken, running.lift);
            if limit.is_none() {
                answered.notes.push(Text::from(
                    "The porpoising limit is told for up to 25 degrees of deadrise and √(CL/2) of 0.10 to 0.30: it is not told here.",
                ));
            }
            if limit.is_some() && taken.exceeds(asked.bottom.deadrise) {
                answered
                    .notes
                    .push(say!("Celano's limit is taken at {} of deadrise: she is flatter.", Measure::of(taken)));
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
            answered.in_full = true;
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
