//! D. Savitsky, "Hydrodynamic design of planing hulls", Marine Technology 1 (1), 1964: the paper's own example, line by line. A
//! boat of 60,000 lb, 14 ft over the chines, 10 deg of deadrise, her centre 29 ft forward and 2 ft up, thrust at 4 deg, half a
//! foot below her centre, at 40 kn. What the paper prints: values read or from memory, as each says. The paper reads its charts
//! to two or three digits and takes λ and V1/V off them, which is where its friction differs in the third digit.

use proptest::prelude::*;
use sternknee::physics::running::{
    Beside, Bottom, Outside, Planing, Running, ThrustLine, Water, critical_trim, curves, porpoising, prism, write,
};
use sternknee::quantity::{Dimensioned, Units, degrees, feet};
use sternknee::working::Sheet;
use uom::si::angle::degree;
use uom::si::f64::{Force, MassDensity, Ratio, Velocity};
use uom::si::force::pound_force;
use uom::si::mass_density::slug_per_cubic_foot;
use uom::si::power::horsepower;
use uom::si::velocity::knot;

/// Water of the paper's time: 1.94 slugs/ft³ and 1.22e-5 ft²/s, values from memory.
fn water() -> Water {
    Water { density: MassDensity::new::<slug_per_cubic_foot>(1.94), viscosity: 1.22e-5 * 0.3048 * 0.3048 }
}

pub fn example() -> Planing {
    Planing {
        bottom: Bottom { beam: feet(14.0), deadrise: degrees(10.0) },
        water: water(),
        weight: Force::new::<pound_force>(60_000.0),
        centre_forward: feet(29.0),
        centre_above: feet(2.0),
        thrust: ThrustLine { angle: degrees(4.0), below: feet(0.5), ..ThrustLine::default() },
        speed: Velocity::new::<knot>(40.0),
        beside: Beside::default(),
    }
}

fn close(what: &str, value: f64, printed: f64, within: f64) {
    println!("{what}: {value:.5}, printed {printed}");
    assert!((value - printed).abs() <= within, "{what}: {value}, printed {printed}");
}

#[test]
fn the_papers_example_comes_out_line_by_line() {
    let running = example().balance().unwrap();
    close("speed coefficient (read)", running.speed_coefficient.si(), 3.18, 0.005);
    close("lift coefficient (read)", running.lift.si(), 0.069, 0.0005);
    // Read off a chart in the paper.
    close("lift coefficient of a flat bottom (read)", running.flat_lift.si(), 0.085, 0.0015);
    close("equilibrium trim, deg (value from memory)", running.trim.get::<degree>(), 2.3, 0.05);
    close("the same (derived)", running.trim.get::<degree>(), 2.26, 0.005);
    close("wetted length over beam (derived)", running.wetted.si(), 3.44, 0.005);
    close("drag, lb (derived)", running.drag.get::<pound_force>(), 8993.0, 5.0);
    close("effective power, hp (derived)", running.effective_power.get::<horsepower>(), 1104.0, 1.0);
    assert!(running.residual.si().abs() < 1e-12, "{:?}", running.residual);
}

/// The spray root of a prism (the paper's equation for L1 less L2): keel and chine differ by b tan β / (π tan τ), and their mean
/// is λ b.
#[test]
fn wetted_keel_and_chine_lie_about_their_mean_as_the_paper_says() {
    let running = example().balance().unwrap();
    let [keel, chine] = [running.keel, running.chine].map(|length| length.si() / 0.3048);
    let apart = 14.0 * 10.0_f64.to_radians().tan() / (std::f64::consts::PI * running.trim.si().tan());
    close("wetted keel less wetted chine, ft", keel - chine, apart, 1e-9 * apart);
    close("their mean, ft", 0.5 * (keel + chine), 14.0 * running.wetted.si(), 1e-9);
    close("wetted keel less wetted chine, ft (derived)", apart, 19.9, 0.1);
}

/// The column for a trim of 2 deg, from which the paper interpolates.
#[test]
fn friction_at_two_degrees_is_the_papers() {
    let asked = example();
    let lift = 60_000.0 / (0.5 * 1.94 * (40.0 * 1.687_81_f64).powi(2) * 14.0 * 14.0);
    let flat = prism::flat_lift_for(lift, 10.0);
    let wetted = prism::wetted_for(flat, 2.0, asked.speed_coefficient());
    close("wetted length over beam (read off a chart)", wetted, 3.85, 0.02);
    let dynamic = prism::lift(prism::dynamic_lift(2.0, wetted), 10.0);
    let slowed = prism::bottom_speed_squared(dynamic, wetted, 2.0_f64.to_radians().cos()).sqrt();
    let speed = 40.0 * 1.687_81;
    let reynolds = slowed * speed * wetted * 14.0 / 1.22e-5;
    let coefficient = prism::friction_coefficient(reynolds) + prism::ROUGHNESS;
    let area = wetted * 14.0 * 14.0 / 10.0_f64.to_radians().cos();
    let friction = 0.5 * 1.94 * (slowed * speed).powi(2) * area * coefficient;
    close("friction at 2 deg, lb (read)", friction, 7340.0, 0.005 * 7340.0);
}

/// The columns for 2, 3 and 4 deg (values from memory; the wetted lengths are read off a chart in the paper).
#[test]
fn the_papers_columns_come_out() {
    let speed = example().speed_coefficient();
    for (trim, power, over, wetted) in
        [(2.0_f64, 2.14, 0.0397, 3.85), (3.0, 3.35, 0.0254, 2.60), (4.0, 4.59, 0.0185, 1.85)]
    {
        close("trim to the power of 1.1", trim.powf(1.1), power, 0.006);
        close("lift coefficient over it", 0.085 / trim.powf(1.1), over, 0.00006);
        close("wetted length over beam", prism::wetted_for(0.085, trim, speed), wetted, 0.03 * wetted);
    }
}

#[test]
fn schoenherrs_line_solves_its_own_equation() {
    for reynolds in [1e5_f64, 1e6, 1e7, 2.5e8, 1e9] {
        let c = prism::friction_coefficient(reynolds);
        assert!((0.242 / c.sqrt() - (reynolds * c).log10()).abs() < 1e-12, "{reynolds}");
    }
    // Schoenherr's table, values from memory.
    close("1000 Cf at 1e7", 1000.0 * prism::friction_coefficient(1e7), 2.94, 0.01);
    close("1000 Cf at 1e9", 1000.0 * prism::friction_coefficient(1e9), 1.53, 0.01);
}

/// T. Celano, 1998, a formula from memory, by hand at one point: β 10, CL 0.1.
#[test]
fn the_porpoising_formula_is_celanos() {
    let limit = critical_trim(degrees(10.0), Ratio::from_si(0.1)).unwrap().get::<degree>();
    let by_hand = 0.1197 * 10.0_f64.powf(0.7651) * (15.7132 * 0.05_f64.sqrt() * 10.0_f64.powf(-0.2629)).exp();
    close("critical trim, deg", limit, by_hand, 1e-12);
    close("the same by hand", limit, 4.74, 0.02);
    // Below 5 deg of deadrise, and where she does not plane yet or hardly touches the water, nothing is told.
    assert!(critical_trim(degrees(0.0), Ratio::from_si(0.1)).is_none());
    assert!(critical_trim(degrees(20.0), Ratio::from_si(1.2)).is_none());
    assert!(critical_trim(degrees(20.0), Ratio::from_si(0.01)).is_none());
}

/// Savitsky's porpoising curves, points read off: √(CL/2), trims of 0, 10 and 20 deg of deadrise.
#[test]
fn his_porpoising_curves_stand_over_celanos_formula() {
    for (root, drawn) in [(0.13, [1.1, 2.7, 3.4]), (0.20, [3.8, 5.0, 5.8]), (0.30, [9.3, 9.8, 10.5])] {
        for (deadrise, trim) in [0.0, 10.0, 20.0].into_iter().zip(drawn) {
            close("critical trim, deg", curves(deadrise, root), trim, 1e-9);
            let between = porpoising(degrees(deadrise), Ratio::from_si(2.0 * root * root)).unwrap();
            assert!(between.from <= between.to);
        }
    }
}

proptest! {
    /// More weight on the beam, or more deadrise, lets her trim more, but for a hair where Celano's formula itself dips: flat and
    /// heavy, β below 6 degrees. No limit jumps.
    #[test]
    fn porpoising_limits_grow_evenly(deadrise in 0.0..24.9f64, root in 0.101..0.298f64) {
        let at = |deadrise: f64, root: f64| porpoising(degrees(deadrise), Ratio::from_si(2.0 * root * root)).unwrap();
        let here = at(deadrise, root);
        for there in [at(deadrise + 0.01, root), at(deadrise, root + 0.0001)] {
            for (a, b) in [(here.from, there.from), (here.to, there.to)] {
                let step = (b - a).get::<degree>();
                prop_assert!((-1e-3..0.02).contains(&step), "{step} at {deadrise}, {root}");
            }
        }
    }
}

#[test]
fn outside_its_ranges_nothing_is_told() {
    let at = |change: fn(&mut Planing)| {
        let mut asked = example();
        change(&mut asked);
        asked.balance()
    };
    let slow = at(|p| p.speed = Velocity::new::<knot>(6.0));
    assert!(matches!(slow, Err(Outside::Speed(_) | Outside::Wetted(_) | Outside::NoBalance)), "{slow:?}");
    let flat = at(|p| p.centre_forward = feet(40.0));
    assert!(matches!(flat, Err(Outside::Trim(_) | Outside::Wetted(_))), "{flat:?}");
    assert!(at(|p| p.weight = Force::default()).is_err());
    assert!(at(|p| p.speed = Velocity::from_si(f64::NAN)).is_err());
}

#[test]
fn the_working_holds_the_answers_own_formulas() {
    let asked = example();
    let running: Running = asked.balance().unwrap();
    let mut sheet = Sheet::default();
    write(&mut sheet, &asked, &running);
    let value = |symbol: &str| {
        sheet.lines().iter().rev().find_map(|line| match line {
            sternknee::working::Line::Step { symbol: s, result, .. } if s == symbol => Some(result.si),
            _ => None,
        })
    };
    for (symbol, solved) in [
        ("CL0", running.flat_lift.si()),
        ("CLβ", running.lift.si()),
        ("V1/V", running.bottom_speed.si()),
        ("Df", running.friction.si()),
        ("R", running.drag.si()),
        ("Cp", running.centre_of_pressure.si()),
    ] {
        let written = value(symbol).unwrap();
        assert!((written / solved - 1.0).abs() < 1e-9, "{symbol}: {written} on the sheet, {solved} solved");
    }
    for line in sheet.lines() {
        println!("{}", line.show(Units::Us));
    }
}
