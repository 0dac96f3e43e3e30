//! Where the anti-ventilation plate comes to stand against the bottom.

use uom::si::f64::{Angle, Length};

use crate::quantity::{Style, inches};
use crate::working::{Sheet, Term, cos, number, tan};

/// Distance between the rows of holes in an engine's bracket. Source: the trade association's bolt
/// pattern in general use.
pub const HOLE_ROW_STEP_IN: f64 = 0.75;
/// Height of the plate above the bottom, without setback, at the top of its window. Common practice,
/// no source.
pub const PLATE_ABOVE_IN: f64 = 1.0;
/// Setback for each inch of additional height at the lower edge of the window. Common practice, no
/// source (the careful figure).
pub const SETBACK_FOR_AN_INCH_LOW: f64 = 12.0;
/// The same at the upper edge. Common practice, no source (the keen figure).
pub const SETBACK_FOR_AN_INCH_HIGH: f64 = 8.0;

/// Rise of a vee bottom at a distance off the centreline, along a transom that leans: y·tan β / cos θ.
pub fn bottom_rise(sheet: &mut Sheet, y: Length, deadrise: Angle, lean: Angle) -> Term<Length> {
    let y = Term::new("y", y.abs());
    let deadrise = Term::new("β", deadrise);
    sheet.set(
        "r",
        "rise of the bottom at the engine's centreline, along the transom",
        y * tan(deadrise) / cos(Term::new("θ", lean)),
    )
}

/// Transom height at an engine's centreline: the height on the boat's centreline less the rise.
pub fn height_off_centre(sheet: &mut Sheet, centreline: Length, rise: &Term<Length>) -> Term<Length> {
    let centreline = Term::styled("H0", centreline, Style::Plain);
    sheet.set("H", "transom height at the engine's centreline", centreline - rise)
}

/// Height of the plate above the bottom, engine as low as it goes: H − S; behind a bracket whose face stands
/// parallel to the transom, with its top so far plumb below the transom's: H − d / cos θ − S.
pub fn plate_height_lowest(
    sheet: &mut Sheet,
    height: &Term<Length>,
    drop: Length,
    lean: Angle,
    rest_to_plate: Length,
) -> Term<Length> {
    let shaft = Term::new("S", rest_to_plate);
    let rest = if drop == Length::default() {
        height.clone()
    } else {
        height - Term::new("d", drop) / cos(Term::new("θ", lean))
    };
    sheet.set("h0", "plate above the bottom, engine in its lowest hole", rest - shaft)
}

/// Height of the plate above the bottom so many holes up.
pub fn plate_height(sheet: &mut Sheet, lowest: &Term<Length>, holes_up: u8) -> Term<Length> {
    let step = Term::constant(inches(HOLE_ROW_STEP_IN));
    sheet.set("h", "plate above the bottom", lowest + number(f64::from(holes_up)) * step)
}

/// The window in which the plate should stand above the bottom, for this setback.
pub fn plate_window(sheet: &mut Sheet, setback: Length) -> (Term<Length>, Term<Length>) {
    let setback = Term::new("s", setback);
    let low = sheet.set("h1", "lower edge of the window", &setback / number(SETBACK_FOR_AN_INCH_LOW));
    let high = sheet.set(
        "h2",
        "upper edge of the window",
        Term::constant(inches(PLATE_ABOVE_IN)) + &setback / number(SETBACK_FOR_AN_INCH_HIGH),
    );
    (low, high)
}

/// Thickness of the wedge that turns an engine's bracket by an angle, over the bracket's height.
pub fn wedge(sheet: &mut Sheet, angle: Angle, bracket_height: Length) -> Term<Length> {
    let height = Term::new("b", bracket_height);
    let angle = Term::new("δ", angle);
    sheet.set("w", "thickness of the wedge at its thick end", height * tan(angle))
}

/// Height over the bottom of the water that leaves the transom, a setback aft of it, under way: s / 8, the keen figure.
pub fn running_water(sheet: &mut Sheet, setback: Length) -> Term<Length> {
    let setback = Term::styled("s", setback, Style::Plain);
    sheet.set(
        "hw",
        "height of the water under way at the bracket's aft edge",
        setback / number(SETBACK_FOR_AN_INCH_HIGH),
    )
}
