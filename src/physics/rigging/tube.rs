//! Rigging tubes: what passes through, and how full they are.

use uom::si::f64::{Area, Length, Ratio};

use crate::quantity::{Dimensioned, Style, inches};
use crate::working::{Sheet, Term, max, number, pi};

/// Part of a tube that may be filled: by one thing, by two, by more. Source: NEC (NFPA 70) chapter 9, table 1, for wires in
/// conduit, values from memory; in a boat common practice, no source.
pub const FILL: [f64; 3] = [0.53, 0.31, 0.40];
/// Least radius of a tube's bend over its inside. Common practice, no source.
pub const BEND_DIAMETERS: f64 = 4.0;
/// Insides in which rigging tubes are sold, in. Common practice, no source.
pub const SOLD_IN: [f64; 6] = [1.5, 2.0, 2.5, 3.0, 4.0, 5.0];

/// Part of a tube that may be filled by so many things.
pub fn permitted(count: usize) -> f64 {
    FILL[count.clamp(1, FILL.len()) - 1]
}

/// Part of a tube that is filled by things of these diameters.
pub fn fill(sheet: &mut Sheet, inside: Length, through: &[(String, Length)]) -> Term<Ratio> {
    let filled = area(sheet, through);
    let d = Term::styled("D", inside, Style::Tape);
    let whole = sheet.set("At", "area of the tube", pi() / number(4.0) * &d * &d);
    sheet.set("f", "part that is filled", filled / whole)
}

fn area(sheet: &mut Sheet, through: &[(String, Length)]) -> Term<Area> {
    let each = through.iter().enumerate().map(|(i, (_, across))| {
        let d = Term::styled(format!("d{}", i + 1), *across, Style::Tape);
        &d * &d
    });
    let squares = each.reduce(|a, b| a + b).unwrap_or_else(|| Term::constant(Area::from_si(0.0)));
    sheet.set("A", "area of all that passes", pi() / number(4.0) * squares)
}

/// The smallest tube that is sold that takes them, the thickest passing too; none where no such tube is sold.
pub fn smallest(sheet: &mut Sheet, through: &[(String, Length)]) -> Option<Length> {
    let zero = || Term::constant(Length::from_si(0.0));
    let thickest = through.iter().map(|(name, d)| Term::new(name.clone(), *d)).reduce(max).unwrap_or_else(zero);
    let filled = area(sheet, through).value().si();
    let needs = 4.0 / std::f64::consts::PI * filled / permitted(through.len());
    let needs = Length::from_si(needs.sqrt().max(thickest.value().si()));
    SOLD_IN.into_iter().map(inches).find(|inside| !needs.exceeds(*inside))
}
