//! An invented boat's trial after, made by another model than the program's, against what the program predicts from her trial
//! before, made by that same other model.
//!
//! The other model: G. Crouch's speed formula, V = C √(hp / lb), value from memory (a drag that grows with the speed alone, where
//! Savitsky's does not), and a slip that falls with the square of the speed to an eighth at full throttle. It knows nothing of
//! trim, thrust line, deadrise, propeller series, or of diameters, which are therefore alike before and after.

use sternknee::case::Case;
use sternknee::quantity::Dimensioned;

use crate::common;

/// Pounds of the loaded boat with the old engine and with the new one: as the job below weighs her.
const BEFORE_LB: f64 = 3_400.0;
const AFTER_LB: f64 = 3_550.0;

struct Other {
    /// Crouch's constant.
    constant: f64,
    /// Part of rated power that the old engine has left.
    left: f64,
}

impl Other {
    fn top(&self, hp: f64, lb: f64) -> f64 {
        self.constant * (hp / lb).sqrt()
    }

    /// Engine speed at a speed, of a propeller of so much pitch behind these gears.
    fn rpm(top: f64, mph: f64, pitch: f64, gears: f64) -> f64 {
        let slip = 0.125 * (top / mph).powi(2).min(4.0);
        mph * gears * 1056.0 / (pitch * (1.0 - slip))
    }
}

/// The pitch, in whole inches, with which the other model's engine turns at `rpm` at this greatest speed, behind gears of 2.
fn pitch(top: f64, rpm: f64) -> f64 {
    (top * GEARS * 1056.0 / (rpm * 0.875)).round()
}

/// Gears of both classes.
const GEARS: f64 = 2.0;

/// The job with a trial before at these speeds, parts of the greatest.
fn job(other: &Other) -> String {
    let top = other.top(115.0 * other.left, BEFORE_LB);
    let (old, new) = (pitch(top, 5250.0), pitch(other.top(150.0, AFTER_LB), 5600.0));
    let run = |part: f64| {
        let (mph, full) = (part * top, part == 1.0);
        let rpm = Other::rpm(top, mph, old, GEARS);
        format!(
            "(rpm: \"{rpm:.0} rpm\", speed: \"{:.1} mph\", back: \"{:.1} mph\", full_throttle: {full})",
            mph + 0.4,
            mph - 0.4
        )
    };
    let runs: Vec<String> = [0.62, 0.75, 0.88, 1.0].map(run).to_vec();
    format!(
        r#"(
    boat: (bottom: vee, length: "20 ft", beam: "8 ft", transom_width: "7 ft", deadrise: "19 deg", chine_beam: "6 ft 8 in", depth: "36 in"),
    transom: (height: "25 in", angle: "13 deg"),
    steering: remote_hydraulic,
    afloat: (water: salt),
    weights: (
        boat: (weight: "2,300 lb", forward: "8 ft", above: "20 in"), crew: 2, person: "185 lb",
        places: [(what: "helm", holds: 3, forward: "9 ft", above: "40 in")],
        tanks: [(what: "fuel tank", holds: fuel, capacity: "60 gal", forward: "7 ft", above: "10 in")],
    ),
    engines_off: [(class: "two-stroke 115 hp V4", shaft: "25 in", at: [centre], holes_up: 1, propeller: (blades: 3, diameter: "14 in", pitch: "{old} in"))],
    engines_on: [(class: "four-stroke 150 hp inline-4", shaft: "25 in", at: [centre], holes_up: 1, propeller: (blades: 3, diameter: "14 in", pitch: "{new} in"))],
    running: (),
    trial: (before: (runs: [{}])),
)"#,
        runs.join(", ")
    )
}

#[test]
fn a_trial_before_predicts_the_trial_after_of_another_model_within_its_doubt() {
    for constant in [185.0, 195.0, 205.0] {
        let other = Other { constant, left: 1.0 };
        let rig = common::rig(&job(&other));
        let case = Case::new(&rig);
        let runs = case.running().expect("asked");
        let fit = runs.fit.as_ref().expect("a trial that fits");
        let after = runs.after.as_ref().expect("told");
        let mass =
            |side: &sternknee::case::running::Predicted| side.built.craft.planing.weight.si() / 9.806_65 / 0.453_592_37;
        let (before_lb, after_lb) = (mass(runs.before.as_ref().expect("told")), mass(after));
        let top = after.top.expect("a greatest speed");
        let mph = |speed: uom::si::f64::Velocity| speed.si() / 0.447_04;
        let rpm = |engine: uom::si::f64::AngularVelocity| engine.si() * 60.0 / std::f64::consts::TAU;
        let sailed = other.top(150.0, after_lb);
        let turned = Other::rpm(sailed, sailed, pitch(other.top(150.0, AFTER_LB), 5600.0), GEARS);
        println!(
            "C {constant}: drag {:.3} ± {:.3}, pitch {:.3} ± {:.3}; reckoned {:.1} ± {:.1} mph at {:.0} ± {:.0} rpm, sailed {sailed:.1} at {turned:.0} ({before_lb:.0}, {after_lb:.0} lb)",
            fit.factors.drag,
            fit.doubts[0],
            fit.factors.pitch,
            fit.doubts[1],
            mph(top.speed),
            mph(top.speed_doubt),
            rpm(top.engine),
            rpm(top.engine_doubt)
        );
        assert!((before_lb / BEFORE_LB - 1.0).abs() < 0.02 && (after_lb / AFTER_LB - 1.0).abs() < 0.02);
        assert!((mph(top.speed) - sailed).abs() <= mph(top.speed_doubt), "speed");
        assert!((rpm(top.engine) - turned).abs() <= rpm(top.engine_doubt), "engine speed");
        // And the doubt is worth something: less than without a trial.
        assert!(top.speed_doubt.si() / top.speed.si() < 0.06, "{:?}", top.speed_doubt);
    }
}

/// What a trial corrects is what the trial had: a boat that the program itself made up gives her factors back.
#[test]
fn factors_come_back_from_runs_made_with_them() {
    use sternknee::physics::matched::{Craft, Factors, Observed, fit};
    let rig = common::rig(&job(&Other { constant: 190.0, left: 1.0 }));
    let case = Case::new(&rig);
    let built = &case.running().expect("asked").before.as_ref().expect("told").built;
    for (drag, pitch) in [(0.9, 1.03), (1.0, 1.0), (1.15, 0.97)] {
        let made = Craft { factors: Factors { drag, pitch }, ..built.craft.clone() };
        let top = made.range().top.expect("a greatest speed");
        let runs: Vec<Observed> = [0.6, 0.7, 0.8, 0.9, 1.0]
            .into_iter()
            .map(|part| {
                let steady = made.steady(top.speed * part).expect("told");
                Observed {
                    speed: steady.speed,
                    speed_doubt: steady.speed * 0.002,
                    engine: Some((steady.engine, steady.engine * 0.002)),
                    full_throttle: part == 1.0,
                }
            })
            .collect();
        let found = fit(&Craft { factors: Factors::default(), ..built.craft.clone() }, &runs).expect("fits");
        println!("{drag} {pitch}: {:?} ± {:?}", found.factors, found.doubts);
        // The prior pulls a little towards 1.
        assert!((found.factors.drag / drag - 1.0).abs() < 0.01 && (found.factors.pitch / pitch - 1.0).abs() < 0.005);
        assert!(found.knows_drag() && found.knows_pitch());
    }
}
