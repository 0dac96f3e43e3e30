//! The balance written down: the formulas that the solver used, asked once more at its answer.

use uom::si::angle::degree;
use uom::si::f64::Ratio;

use super::balance::{Planing, Running};
use super::{porpoising, prism};
use crate::quantity::{Dimensioned, Measure, say, standard_gravity};
use crate::working::{Figure, Sheet, Term, cos, max, number, sin, sqrt, tan};

/// Writes down how she runs, line by line, as Savitsky's paper does.
pub fn write(sheet: &mut Sheet, asked: &Planing, running: &Running) {
    let ratio = |symbol: &str, value: f64| Term::new(symbol, Ratio::from_si(value));
    sheet.remark(say!(
        "Savitsky's prism, long form: the trim at which the moments about her centre balance, by interpolation between two trims; {} of weight times beam is left.",
        format!("{:.0e}", running.residual.si().abs())
    ));
    let beam = Term::new("b", asked.bottom.beam);
    let speed = Term::new("V", asked.speed);
    let density = Term::new("ρ", asked.water.density);
    let gravity = Term::new("g", standard_gravity());
    let froude = &speed * &speed / (gravity * &beam);
    let cv = sheet.set("Cv", "speed coefficient", sqrt(froude));
    let lifted = Term::new("Δ", asked.weight) - Term::new("L", asked.beside.lift);
    let carried = if asked.beside.blades.si() == 0.0 {
        lifted
    } else {
        let meets = sheet.set(
            "ψ",
            "angle at which the water meets the propeller: trim, and the shaft's to the keel",
            Term::new("τ", running.trim) + Term::new("ε", asked.thrust.angle),
        );
        let square = Term::new("Nψ", asked.beside.blades) * sin(meets.clone());
        let square = sheet.set("N", "force of all blades square to the shaft, up", square);
        let arm = Term::new("a", asked.thrust.aft);
        sheet.set("M", "its moment about her centre, bow down", square.clone() * arm);
        lifted - square * cos(meets)
    };
    let carried = sheet.set("Δe", "what the bottom carries: the weight less what else lifts", carried);
    let head = <Term<Ratio> as Figure>::number(0.5) * &density * &speed * &speed;
    sheet.set("CLβ", "lift coefficient of the bottom", &carried / (head.clone() * &beam * &beam));
    let beta = ratio("β", asked.bottom.deadrise.get::<degree>());
    let trim = ratio("τ", running.trim.get::<degree>());
    let wetted = ratio("λ", running.wetted.si());
    sheet.remark(say!(
        "Trim and deadrise in degrees: τ = {}, β = {}; mean wetted length over beam λ = {}.",
        Measure::of(running.trim),
        Measure::of(asked.bottom.deadrise),
        Measure::of(running.wetted)
    ));
    let flat = sheet.set(
        "CL0",
        "lift coefficient of a flat bottom",
        prism::flat_lift(trim.clone(), wetted.clone(), cv.clone()),
    );
    sheet.remark("Less what the deadrise takes of it, that comes to the same as above:");
    sheet.set("CLβ", "lift coefficient of the bottom", prism::lift(flat, beta.clone()));
    let dynamic = sheet.set("CLd0", "its dynamic part, flat", prism::dynamic_lift(trim.clone(), wetted.clone()));
    let dynamic = sheet.set("CLd", "the same at the deadrise", prism::lift(dynamic, beta.clone()));
    let cosine = sheet.set("cos τ", "cosine of the trim", cos(Term::new("τ", running.trim)));
    let slowed = prism::bottom_speed_squared(dynamic, wetted.clone(), cosine);
    let slowed = sheet.set("V1/V", "mean speed along the bottom over her own", slowed.root());
    let friction = ratio("Cf", running.friction_coefficient.si());
    sheet.remark(say!(
        "Reynolds number of the bottom {}: friction coefficient by Schoenherr's line and 0.0004 for roughness, Cf = {}.",
        format!("{:.3e}", running.reynolds.si()),
        format!("{:.6}", running.friction_coefficient.si())
    ));
    let area = wetted.clone() * &beam * &beam / cos(Term::new("β", asked.bottom.deadrise));
    let friction = sheet.set("Df", "friction", head * &slowed * &slowed * area * friction);
    let drag = &carried * tan(Term::new("τ", running.trim)) + friction / cos(Term::new("τ", running.trim));
    let drag = sheet.set("R", "drag of the bottom", drag);
    sheet.set("Cp", "centre of pressure over the mean wetted length", prism::centre_of_pressure(cv, wetted));
    sheet.set("PE", "effective power of the bottom", drag * &speed);
    let taken = porpoising::taken_at(asked.bottom.deadrise);
    if porpoising::critical_trim(taken, running.lift).is_some() {
        let flatter = taken.exceeds(asked.bottom.deadrise);
        let beta = if flatter { max(beta, number(*porpoising::DEADRISES.start())) } else { beta };
        let lift = ratio("CLβ", running.lift.si());
        sheet.set("τc", "trim above which she porpoises, degrees", porpoising::critical_degrees(beta, lift));
    }
}
