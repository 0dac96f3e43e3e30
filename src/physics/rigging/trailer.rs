//! A boat on the road: weight on the coupling and the axle by moments.

use uom::si::f64::{Force, Length, Mass, Ratio};

use crate::quantity::{Dimensioned, Moment, standard_gravity};
use crate::working::{Sheet, Term};

/// Part of the all-up weight that usually stands on the coupling. Common practice, no source: less and she sways, more and
/// the car's rear sits down.
pub const COUPLING_SHARE: (f64, f64) = (0.05, 0.10);
/// Beyond this share the car's own limit is near; below the lesser she sways for certain. Common practice, no source.
pub const COUPLING_MOST: f64 = 0.15;

/// A weight with its place forward of the transom.
#[derive(Clone, Debug, PartialEq)]
pub struct Weight {
    /// What it is.
    pub name: String,
    /// What it weighs.
    pub mass: Mass,
    /// How far forward of the transom.
    pub forward: Length,
    /// Where both are from, as a legend says it.
    pub from: &'static str,
}

/// Where a trailer stands under a boat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// The axle, or the middle between two, forward of the transom.
    pub axle: Length,
    /// The coupling forward of the axle.
    pub coupling: Length,
}

/// All of it together.
pub fn all_up(sheet: &mut Sheet, weights: &[Weight]) -> Term<Mass> {
    let zero = || Term::constant(Mass::from_si(0.0));
    let sum = weights.iter().map(|w| Term::new(w.name.clone(), w.mass)).reduce(|a, b| a + b).unwrap_or_else(zero);
    sheet.set("W", "all of it on the road", sum)
}

/// What stands on the coupling: moments about the axle. Negative where it lifts.
pub fn coupling(sheet: &mut Sheet, weights: &[Weight], stand: &Stand) -> Term<Mass> {
    let g = standard_gravity();
    let mut moments = Vec::new();
    for (i, w) in weights.iter().enumerate() {
        let i = i + 1;
        let mass = sheet.given(&format!("w{i}"), &format!("weight of {}", w.name), w.mass, w.from);
        let at = sheet.given(&format!("x{i}"), &format!("{}, forward of the transom", w.name), w.forward, w.from);
        let moment = mass * Term::constant(g) * (at - Term::new("xa", stand.axle));
        moments.push(sheet.set(&format!("M{i}"), &format!("moment about the axle of {}", w.name), moment));
    }
    let none = || Term::constant(Moment::from_si(0.0));
    let moment = sheet.set(
        "ΣM",
        "moments of all that stands on it",
        moments.into_iter().reduce(|a, b| a + b).unwrap_or_else(none),
    );
    let load: Term<Force> = sheet.set("F", "force on the coupling", moment / Term::new("Lc", stand.coupling));
    sheet.set("Wc", "weight on the coupling", load / Term::constant(g))
}

/// Its part of the whole.
pub fn share(sheet: &mut Sheet, coupling: &Term<Mass>, all_up: &Term<Mass>) -> Term<Ratio> {
    sheet.set("c", "part of all of it on the coupling", coupling / all_up)
}

/// How far the boat must go forward on her trailer (negative: aft) for this share on the coupling: each pound of her
/// moved by x adds x over the coupling's length.
pub fn move_boat(
    sheet: &mut Sheet,
    coupling: &Term<Mass>,
    wanted: Ratio,
    all_up: &Term<Mass>,
    boat: Mass,
    stand: &Stand,
) -> Term<Length> {
    let lacking = Term::new("cw", wanted) * all_up - coupling;
    let share = sheet.set("k", "lacking on the coupling over the boat's weight", lacking / Term::new("Wb", boat));
    sheet.set("Δx", "boat to go forward", share * Term::new("Lc", stand.coupling))
}

/// How far the axle must go aft (negative: forward) for this share, the coupling staying where it is.
pub fn move_axle(coupling: Mass, wanted: Ratio, all_up: Mass, stand: &Stand) -> Length {
    // With the axle moved aft by x the moment grows by W·x and the coupling's arm by x: solve the share for x.
    let (c, w) = (coupling.si(), all_up.si());
    let lacking = wanted.si() * w - c;
    Length::from_si(lacking * stand.coupling.si() / (w * (1.0 - wanted.si())))
}
