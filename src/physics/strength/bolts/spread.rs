//! How wide a nut presses on what it is drawn up against.

use uom::si::f64::{Length, Pressure};

use crate::working::{Sheet, Term, max, min, number, sqrt};

/// What lies between a nut and the core, from the nut inwards.
#[derive(Clone, Debug, PartialEq)]
pub struct UnderNut {
    /// Across the flats of the nut.
    pub nut: Length,
    /// Outside diameter of the washer.
    pub washer: Length,
    /// Its thickness, and the stress at which it bends.
    pub washer_sheet: Bends,
    /// The lesser side of the plate under it, and what it is made of.
    pub plate: Option<(Length, Bends)>,
    /// The transom's layers before the core.
    pub skins: Vec<Bends>,
    /// From the bolt to the next: beyond it two circles share their wood.
    pub apart: Length,
}

/// A sheet that spreads a force by bending.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bends {
    /// Along the force.
    pub thickness: Length,
    /// Stress at which it bends.
    pub strength: Pressure,
}

impl Bends {
    /// How far it carries pressure beyond the edge that presses it: `c = t √(fy / 3 fc)`. Source: EN 1993-1-8, 6.2.5 (base
    /// plates on concrete), value from memory.
    fn reach(self, sheet: &mut Sheet, what: &str, pressure: Pressure) -> Term<Length> {
        let of = |symbol: char| format!("{symbol}{}", &what[..1]);
        let root = sqrt(Term::new(of('f'), self.strength) / (number(3.0) * Term::new("fc", pressure)));
        let reach = Term::new(of('t'), self.thickness) * root;
        sheet.set(&of('c'), &format!("reach of the {what} beyond what presses it"), reach)
    }
}

/// Diameter of the circle over which nut, washer and plate press on the transom's face, `pressure` being what the core
/// bears: the washer as far as it can bend, then the plate within its lesser side.
pub fn pad(sheet: &mut Sheet, under: &UnderNut, pressure: Pressure) -> Term<Length> {
    let reach = under.washer_sheet.reach(sheet, "washer", pressure);
    let nut = Term::new("n", under.nut) + number(2.0) * reach;
    let washer = sheet.set("Dw", "the washer presses over", min(Term::new("w", under.washer), nut));
    on_plate(sheet, under, pressure, washer)
}

/// No further than the next bolt.
fn within(across: Term<Length>, under: &UnderNut) -> Term<Length> {
    if under.apart.is_finite() { min(across, Term::new("a", under.apart)) } else { across }
}

/// The same where all of the washer lies on, as it does when a nut has drawn it down.
pub fn drawn_down(sheet: &mut Sheet, under: &UnderNut, pressure: Pressure) -> Term<Length> {
    on_plate(sheet, under, pressure, Term::new("w", under.washer))
}

fn on_plate(sheet: &mut Sheet, under: &UnderNut, pressure: Pressure, washer: Term<Length>) -> Term<Length> {
    let pad = match under.plate {
        Some((side, plate)) => {
            let reach = plate.reach(sheet, "plate", pressure);
            let side = max(Term::new("sp", side), washer.clone());
            sheet.set("Dp", "the plate presses over", min(washer + number(2.0) * reach, side))
        }
        None => washer,
    };
    within(pad, under)
}

/// Diameter of the circle over which a pad presses on the core: the skin under it spreads further, as far as the next bolt.
pub fn on_core(sheet: &mut Sheet, pad: Term<Length>, under: &UnderNut, pressure: Pressure) -> Term<Length> {
    let mut across = pad;
    for skin in &under.skins {
        let reach = skin.reach(sheet, "skin", pressure);
        across = sheet.set("Ds", "the skin presses over", across + number(2.0) * reach);
    }
    sheet.set("D", "the core is pressed over", within(across, under))
}
