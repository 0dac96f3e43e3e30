//! Where an engine's weight and thrust act on a face, line by line.

use uom::si::f64::{Angle, Length, Ratio};

use crate::physics::height::HOLE_ROW_STEP_IN;
use crate::quantity::{Dimensioned, inches};
use crate::working::{Sheet, Term, cos, number, sin};

/// Propeller aft of the mounting face over the engine's centre aft of it. Common practice, no source.
const PROPELLER_OF_CENTRE: f64 = 1.5;

/// How an engine hangs, as it is measured; heights along the transom unless they are said to be plumb.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hang {
    /// The transom on the centreline, from bottom to top.
    pub height: Length,
    /// Its lean from vertical; positive with the top aft.
    pub lean: Angle,
    /// Middle of the bolts, up along it.
    pub middle: Length,
    /// The face that the engine hangs on, square off the transom.
    pub setback: Length,
    /// That face's top plumb below the transom's; negative above it.
    pub drop: Length,
    /// Rows of holes above the lowest in which it hangs.
    pub holes_up: u8,
    /// Its centre of gravity aft of that face, engine down.
    pub centre_aft: Length,
    /// Its centre of gravity above the bracket's rest, engine down; negative below it.
    pub centre_above: Length,
    /// Its full tilt, from vertical.
    pub tilt: Angle,
    /// Bracket's rest down to the anti-ventilation plate.
    pub leg: Length,
    /// That plate down to the propeller's shaft.
    pub gearcase: Length,
}

/// Arms from the middle of the bolts, level and plumb.
#[derive(Debug, Clone)]
pub struct Arms {
    /// Its weight aft, engine down.
    pub weight_aft: Term<Length>,
    /// The same tilted up.
    pub tilted_aft: Term<Length>,
    /// Its weight above, engine down; negative below.
    pub weight_up: Term<Length>,
    /// Its propeller aft.
    pub propeller_aft: Term<Length>,
    /// Its propeller's shaft below.
    pub shaft_down: Term<Length>,
}

impl Arms {
    /// Of an engine that hangs so.
    pub fn of(sheet: &mut Sheet, hang: &Hang) -> Arms {
        let lean = Term::new("θ", hang.lean);
        let middle = Term::new("zm", hang.middle);
        let row = Term::constant(inches(HOLE_ROW_STEP_IN));
        let rows = Term::new("nr", Ratio::from_si(f64::from(hang.holes_up)));
        let raised = (Term::new("H", hang.height) + rows * row) * cos(lean.clone()) - Term::new("dr", hang.drop);
        let rest = sheet.set("zr", "the engine's rest above the bottom, plumb", raised);
        let up = sheet.set("ur", "the rest above the middle of the bolts, plumb", &rest - &middle * cos(lean.clone()));
        let aft = (Term::new("s", hang.setback) + rest * sin(lean.clone())) / cos(lean.clone()) - middle * sin(lean);
        let aft = sheet.set("ar", "the rest aft of the middle of the bolts, level", aft);
        let centre = Term::new("ca", hang.centre_aft);
        let above = Term::new("cu", hang.centre_above);
        let tilt = Term::new("φ", hang.tilt);
        let weight_aft = sheet.set("a", "arm of its weight: its centre aft of the middle of the bolts", &aft + &centre);
        let tilted = &aft + &(&centre * cos(tilt.clone())) - &above * sin(tilt);
        let tilted_aft = sheet.set("at", "the same tilted up", tilted);
        let leg = Term::new("S", hang.leg) + Term::new("gc", hang.gearcase);
        let shaft_down = sheet.set("h", "arm of its thrust: the shaft below the middle of the bolts", leg - &up);
        let propeller_aft =
            sheet.set("ap", "its propeller aft of the middle of the bolts", aft + number(PROPELLER_OF_CENTRE) * centre);
        let weight_up = sheet.set("cz", "its centre above the middle of the bolts", up + above);
        Arms { weight_aft, tilted_aft, weight_up, propeller_aft, shaft_down }
    }
}
