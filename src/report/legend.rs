//! What goes into a calculation: each symbol that no line of it works out, with its meaning and value.

use std::sync::Arc;

use crate::quantity::{Kind, Measure, Units};
use crate::rules::Family;
use crate::working::{Expression, Line, Sheet};

/// A symbol that was given.
pub(super) struct Given {
    /// As it stands in the formula.
    pub symbol: String,
    /// What it is.
    pub meaning: Option<&'static str>,
    /// Its value.
    pub value: Measure,
}

/// Longest symbol that is one: others are names in words, and need no meaning.
const LONGEST: usize = 4;

/// What goes into a sheet and is not worked out in it, in the order in which it is used.
pub(super) fn given(sheet: &Sheet, family: Option<Family>) -> Vec<Given> {
    let mut all: Vec<Given> = Vec::new();
    let mut worked_out: Vec<&str> = Vec::new();
    for line in sheet.lines() {
        if let Line::Step { symbol, expression, .. } = line {
            of(expression, &mut |symbol, value| {
                let known = worked_out.contains(&symbol) || all.iter().any(|one| one.symbol == symbol);
                if !known && symbol.chars().count() <= LONGEST {
                    let meaning = meaning(symbol, value.kind, family);
                    all.push(Given { symbol: symbol.to_owned(), meaning, value });
                }
            });
            worked_out.push(symbol);
        }
    }
    all
}

fn of(expression: &Arc<Expression>, told: &mut dyn FnMut(&str, Measure)) {
    match expression.as_ref() {
        Expression::Quantity { symbol, measure } => told(symbol, *measure),
        Expression::Binary(_, left, right) => {
            of(left, told);
            of(right, told);
        }
        Expression::Call(_, arguments) => {
            for argument in arguments {
                of(argument, told);
            }
        }
        Expression::Constant(_) | Expression::Number(_) | Expression::Sign(_) => {}
    }
}

/// What a symbol means, in the working of a family or wherever it is used alike.
pub(super) fn meaning(symbol: &str, kind: Kind, family: Option<Family>) -> Option<&'static str> {
    family.and_then(|family| own(symbol, family)).or_else(|| customary(symbol, kind))
}

/// What goes into a sheet, in a line; nothing where all of it is worked out there.
pub(super) fn in_words(sheet: &Sheet, family: Family, units: Units) -> Option<String> {
    let told = given(sheet, Some(family)).into_iter().map(|one| {
        let meaning = one.meaning.unwrap_or("as given");
        format!("{} is {meaning}, {}", one.symbol, one.value.show(units))
    });
    Some(told.collect::<Vec<_>>().join("; ")).filter(|words| !words.is_empty())
}

/// What a symbol means in one family alone.
fn own(symbol: &str, family: Family) -> Option<&'static str> {
    Some(match (family, symbol) {
        (Family::Weight, "A") => "weight of the stability test",
        (Family::Weight, "Wc") => "weight that the plate allows in all",
        (Family::Weight, "Wp") => "weight of persons that the plate allows",
        (Family::Weight, "w") => "running weight in the table's row",
        (Family::Weight, "ws") => "swamped weight in the table's row",
        (Family::Weight, "θ") => "angle that she trims",
        (Family::Power, "W") => "width of the transom",
        (Family::Height, "d") => "drop of the bracket",
        (Family::Height, "θ") => "angle of the transom from plumb",
        (Family::Height, "θe") => "angle that the engine is laid out for",
        (Family::Height, "b") => "height of the engine's bracket",
        (Family::Fit, "c1") => "room that the one engine needs",
        (Family::Fit, "c2") => "room that the other needs",
        (Family::Fit, "k") => "reach of the powerhead at full lock",
        (Family::Fit, "f") => "flange of the engine's bracket",
        (Family::Fit, "p") => "pitch of the thread",
        (Family::Stern, "d") => "height of the water plane over the origin, along its normal",
        (Family::Stern, "w" | "W") => "weight",
        (Family::Stern, "x") => "how far forward the edge lies",
        (Family::Stern, "y") => "how far to port the edge, or the centre of weight, lies",
        (Family::Stern, "z") => "how high the edge lies",
        (Family::Stern, "ρ") => "density of the water",
        (Family::Strength, "a") => "room to the neighbour, or arm of the weight",
        (Family::Strength, "b") => "beam",
        (Family::Strength, "c") => "part of the proof load, or the weight's place",
        (Family::Strength, "d") => "diameter of the bolt",
        (Family::Strength, "n") => "across the nut, or times its weight",
        (Family::Strength, "N") => "pull on the bolt",
        (Family::Strength, "V") => "shear on the bolt",
        (Family::Strength, "e") => "bolt hole to the top edge",
        (Family::Strength, "h") => "thickness of the transom",
        (Family::Strength, "s") => "setback, or side of the plate",
        (Family::Strength, "w") => "across the washer",
        (Family::Strength, "K") => "nut factor",
        (Family::Strength, "t" | "t1" | "t2" | "t3") => "thickness of the layer, washer or plate",
        (Family::Strength, "τ" | "τ1" | "τ2" | "τ3") => "shear strength of the layer",
        (Family::Steering, "D") => "bore of the cylinder, or propeller diameter",
        (Family::Steering, "d") => "diameter of the rod",
        (Family::Steering, "s") => "stroke",
        (Family::Steering, "N") => "number of cylinders",
        (Family::Steering, "Vh") => "what the helm displaces in a turn",
        (Family::Steering, "a") => "arm of the tiller",
        (Family::Steering, "b") => "thrust behind the steering axis",
        (Family::Steering, "Dw") => "diameter of the wheel",
        (Family::Steering, "v") => "greatest speed",
        (Family::Steering | Family::Controls, "l1") => "first run of the cable",
        (Family::Steering | Family::Controls, "l2") => "second run of the cable",
        (Family::Steering | Family::Controls, "r1") => "radius of the bend",
        (Family::Steering | Family::Controls, "θ1/2") => "half of the bend's angle",
        (Family::Controls, "D") => "inside of the tube",
        (Family::Fuel, "D") => "bore of the hose",
        (Family::Fuel, "N") => "engines on the line",
        (Family::Fuel, "h") => "how high the fuel is lifted",
        (Family::Fuel, "f") => "friction factor, by Reynolds number and roughness",
        (Family::Fuel, "T") => "temperature of the fuel",
        (Family::Fuel, "Q") => "fuel at full throttle",
        (Family::Fuel, "V") => "speed of the fuel",
        (Family::Electrical | Family::Network | Family::Steering, "L") => "length of the wire, or of the line, one way",
        (Family::Electrical | Family::Network | Family::Steering, "n") => "gauge of the wire",
        (Family::Electrical | Family::Network | Family::Steering, "ρ20") => "resistivity of copper at 20 °C",
        (Family::Electrical, "t") => "hours in use",
        (Family::Trailer, "x") => "how far forward of the coupling's end the weight lies",
        (Family::Trailer, "F" | "ΣM") => "moments of all that stands on it",
        (Family::Trailer, "W") => "weight",
        (Family::Trial, "f") => "fuel at that speed",
        (Family::Trial, "p") => "pitch of the propeller",
        (Family::Trial, "n") => "engine speed",
        (Family::Trial, "C") => "what the tank holds",
        (Family::Worth, "f") => "fuel in an hour",
        (Family::Worth, "h") => "hours in a season",
        (Family::Worth, "c") => "price of fuel",
        (Family::Worth, "K") => "cost of it all",
        _ => return None,
    })
}

/// What a symbol means that is used alike all over the program; some mean one thing as a length and
/// another as a force.
fn customary(symbol: &str, kind: Kind) -> Option<&'static str> {
    Some(match (symbol, kind) {
        ("As", _) => "stress area of the thread",
        ("B", Kind::Length) => "beam",
        ("BC", _) => "beam between the chines",
        ("CCA", _) => "cranking current of the battery",
        ("Dp", _) => "propeller diameter",
        ("FS", _) => "loss by free surfaces of liquids",
        ("H", Kind::Length) => "transom height",
        ("H0", _) => "transom height at the centreline",
        ("I", Kind::Current) => "current",
        ("Ig", _) => "what the alternator gives",
        ("Is", _) => "current of the starter",
        ("L", Kind::Length) => "length",
        ("LWL", _) => "length on the waterline",
        ("Lc", _) => "coupling to axle",
        ("P", Kind::Power) => "power",
        ("Pr", _) => "power that the boat is rated for",
        ("RVP", _) => "Reid vapour pressure of the gasoline",
        ("Rm", _) => "tensile strength of the bolt",
        ("S", Kind::Length) => "bracket's rest down to the plate",
        ("Sp", _) => "proof strength of the bolt",
        ("T1", _) => "draft at the transom, before",
        ("T2", _) => "draft at the transom, after",
        ("V", Kind::Speed | Kind::Ratio) => "speed",
        ("V", Kind::Force) => "shear force",
        ("V1", _) => "speed one way",
        ("V2", _) => "speed the other way",
        ("Vs", _) => "voltage at the source",
        ("Vt", _) => "what the tanks hold",
        ("Wb", _) => "weight of the boat",
        ("Wc", _) => "weight that stands on the coupling",
        ("Wd", _) => "most that she carries before water comes in",
        ("Wr", _) => "weight that the bracket is rated for",
        ("cw", _) => "part that is wanted on the coupling",
        ("dh", _) => "diameter of the bolt's hole",
        ("fc", _) => "what the core bears under a washer",
        ("fy", _) => "strength of washer or plate in bending",
        ("g", _) => "standard gravity",
        ("i", Kind::Ratio) => "gear ratio",
        ("m", Kind::Mass | Kind::Ratio) => "mass",
        ("m", Kind::Length) => "height of the nut",
        ("n", Kind::RotationRate) => "engine speed",
        ("nb", _) => "barbs",
        ("ne", _) => "elbows",
        ("nv", _) => "valves",
        ("nx" | "ny" | "nz", _) => "part of the upward normal of the water, along each axis",
        ("pa", _) => "pressure of the air",
        ("per", _) => "what the price is of",
        ("s", Kind::Length) => "setback",
        ("t", Kind::Length) => "thickness",
        ("t °C", _) => "temperature in degrees Celsius",
        ("tc", _) => "hours under way",
        ("ti", _) => "hours idling",
        ("tw", _) => "thickness of a washer",
        ("vi", _) => "speed that the propeller gives the water",
        ("xa", _) => "how far forward the axle stands",
        ("y", Kind::Length) => "distance off the centreline",
        ("ΔV", _) => "drop of the voltage",
        ("Δpd", _) => "suction of filter, valve and what else has no papers",
        ("ΣM", _) => "moments of all that stands on it",
        ("β", _) => "deadrise",
        ("γf", _) => "weight of foam",
        ("γw", _) => "weight of water",
        ("η", _) => "efficiency",
        ("θ", Kind::Angle) => "angle of the transom from plumb",
        ("ν20", _) => "viscosity of gasoline at 20 °C",
        ("ρ20", _) => "density of gasoline at 20 °C",
        ("σc", _) => "what the core bears under a washer",
        ("τ1", _) => "trim before, bow up",
        ("τ2", _) => "trim after, bow up",
        ("∇", _) => "volume under water",
        (thing, Kind::Length) if numbered(thing, 'd') => "diameter of each thing in the tube",
        _ => return None,
    })
}

/// Whether a symbol is this letter with a number.
fn numbered(symbol: &str, letter: char) -> bool {
    symbol.strip_prefix(letter).is_some_and(|number| !number.is_empty() && number.bytes().all(|b| b.is_ascii_digit()))
}

/// Symbols of a sheet that nothing names: none must be left.
pub fn unnamed(sheet: &Sheet, family: Family) -> Vec<String> {
    given(sheet, Some(family)).into_iter().filter(|one| one.meaning.is_none()).map(|one| one.symbol).collect()
}
