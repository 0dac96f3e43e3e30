//! Push-pull cables: how long one must be round its bends, and how much it turns.

use uom::si::angle::radian;
use uom::si::f64::{Angle, Length};

use crate::quantity::{Dimensioned, inches};
use crate::working::{Sheet, Term, number, tan};

/// Least radius of a bend of a steering or control cable. Common practice, no source.
pub const LEAST_RADIUS_IN: f64 = 8.0;
/// Degrees of bends together beyond which a cable drags. Common practice, no source: four right angles.
pub const MOST_BENDS_DEG: f64 = 360.0;
/// Free play at the wheel that is taken up without a thought. Common practice, no source: of a turn of the wheel, deg.
pub const FREE_PLAY_DEG: f64 = 15.0;
/// Steps in which cables are sold, ft. Common practice, no source.
pub const SOLD_STEP_FT: f64 = 1.0;

/// A bend.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bend {
    /// How far it turns.
    pub angle: Angle,
    /// Its radius.
    pub radius: Length,
}

/// Length that lies along legs measured from corner to corner, round the bends between them: a bend of radius r that
/// turns by θ saves `2 r tan(θ/2) − r θ`. At a right angle of 9.3 in that is the 4 in of the trade's rule.
pub fn length(sheet: &mut Sheet, legs: &[Length], bends: &[Bend]) -> Term<Length> {
    let zero = || Term::constant(Length::from_si(0.0));
    let sum = legs.iter().enumerate().map(|(i, leg)| Term::new(format!("l{}", i + 1), *leg)).reduce(|a, b| a + b);
    let corners = sheet.set("Lc", "from corner to corner", sum.unwrap_or_else(zero));
    let mut saved = Vec::new();
    for (i, bend) in bends.iter().enumerate() {
        let r = Term::new(format!("r{}", i + 1), bend.radius);
        let half = Term::new(format!("θ{}/2", i + 1), bend.angle / 2.0);
        let arc = Term::new(format!("θ{} in radians", i + 1), uom::si::f64::Ratio::from_si(bend.angle.get::<radian>()));
        let cut = number(2.0) * &r * tan(half) - r * arc;
        saved.push(sheet.set(&format!("c{}", i + 1), "saved by the bend", cut));
    }
    match saved.into_iter().reduce(|a, b| a + b) {
        Some(saved) => sheet.set("L", "length round the bends", corners - saved),
        None => corners,
    }
}

/// How far all bends turn together.
pub fn turned(bends: &[Bend]) -> Angle {
    bends.iter().fold(Angle::from_si(0.0), |sum, bend| sum + bend.angle)
}

/// Least radius of a bend.
pub fn least_radius() -> Length {
    inches(LEAST_RADIUS_IN)
}
