//! A propeller that a job gives outright.

use std::f64::consts::TAU;

use uom::si::f64::{AngularVelocity, Force, Power, Ratio, Velocity};

use super::{Answered, density, figure, si};
use crate::job::PropellerStudy;
use crate::physics::propeller::{Curves, Propeller, REYNOLDS, REYNOLDS_RANGE, Sized, Turning, cavitation};
use crate::quantity::{Dimensioned, Measure, Moment, Text, say, standard_gravity};
use crate::working::{Sheet, Term, number};
use crate::written::Slip;

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

/// The answer to the question.
pub(super) fn answered(study: &PropellerStudy) -> Result<Answered, Slip> {
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
    Ok(Answered {
        name: "propeller_study",
        title: "the propeller asked about",
        figures,
        in_full: true,
        notes,
        source: "Wageningen B-series, Oosterveld and van Oossanen 1975; Gawn and Burrill's line of cavitation as Blount and Hubble 1981 fit it, value from memory",
        tables: Vec::new(),
        sheet,
    })
}
