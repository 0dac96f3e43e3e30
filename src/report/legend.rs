//! What goes into a calculation: each symbol that no line of it works out, with its meaning and value.

use std::sync::Arc;

use crate::quantity::{Kind, Measure, Units, capitalised};
use crate::rules::Family;
use crate::working::{Expression, Line, Sheet};

/// A symbol that was given.
pub(super) struct Given {
    /// As it stands in the formula.
    pub symbol: String,
    /// What it is.
    pub meaning: Option<String>,
    /// Its value.
    pub value: Measure,
    /// Where it is from: how a reading was come by, a standard, or what it was worked out from.
    pub from: Option<String>,
}

/// Longest symbol that is one: others are names in words, and need no meaning.
const LONGEST: usize = 4;

/// What goes into a sheet and is not worked out in it, in the order in which it is used: a symbol that stands for another value
/// further down once more.
pub(super) fn given(sheet: &Sheet, family: Option<Family>) -> Vec<Given> {
    let mut all: Vec<Given> = Vec::new();
    let mut worked_out: Vec<(&str, Kind)> = Vec::new();
    for (number, line) in sheet.lines().iter().enumerate() {
        if let Line::Step { symbol, expression, result, .. } = line {
            of(expression, &mut |symbol, value| {
                let origin = sheet.origin_of(number, symbol, value.kind);
                let above = worked_out.contains(&(symbol, value.kind)) && origin.is_none();
                let told = all.iter().any(|one| one.symbol == symbol && one.value == value);
                if !above && !told && symbol.chars().count() <= LONGEST {
                    let named = origin.and_then(|origin| origin.meaning.clone());
                    let meaning = named.or_else(|| meaning(symbol, value.kind, family).map(str::to_owned));
                    let from = origin.map(|origin| origin.from.clone());
                    let from = from.or_else(|| always_from(symbol, value.kind, family).map(str::to_owned));
                    all.push(Given { symbol: symbol.to_owned(), meaning, value, from });
                }
            });
            worked_out.push((symbol, result.kind));
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
    let strength = family.filter(|family| *family == Family::Strength).and_then(|_| of_strength(symbol, kind));
    strength.or_else(|| family.and_then(|family| own(symbol, family))).or_else(|| customary(symbol, kind))
}

impl Given {
    /// "L is length, 17 ft".
    fn words(&self, units: Units) -> String {
        format!("{} is {}, {}", self.symbol, self.meaning.as_deref().unwrap_or("as given"), self.value.show(units))
    }
}

/// What goes into a sheet, a line a symbol.
pub(super) fn lines(sheet: &Sheet, family: Option<Family>, units: Units) -> Vec<String> {
    let told = given(sheet, family).into_iter().map(|one| {
        let from = one.from.as_ref().map_or(String::new(), |from| format!(" ({from})"));
        one.words(units) + &from
    });
    told.collect()
}

/// The same in running words, what is from one place together; nothing where all of it is worked out there.
pub(super) fn in_words(sheet: &Sheet, family: Family, units: Units) -> Option<String> {
    let mut by_origin: Vec<(String, Vec<String>)> = Vec::new();
    for one in given(sheet, Some(family)) {
        let words = one.words(units);
        let from = one.from.unwrap_or_else(|| "given".to_owned());
        match by_origin.iter_mut().find(|(other, _)| *other == from) {
            Some((_, all)) => all.push(words),
            None => by_origin.push((from, vec![words])),
        }
    }
    let told: Vec<String> =
        by_origin.into_iter().map(|(from, all)| format!("{}: {}", capitalised(&from), all.join("; "))).collect();
    Some(told.join(". ")).filter(|words| !words.is_empty())
}

/// The family whose working stands under this topic.
pub(super) fn family_of(topic: &str) -> Option<Family> {
    match topic {
        "weights" => Some(Family::Weight),
        "float" => Some(Family::Stern),
        word => Family::ALL.iter().copied().find(|family| family.word() == word),
    }
}

/// What a symbol means in the working of strength, where one stands for things of several kinds.
fn of_strength(symbol: &str, kind: Kind) -> Option<&'static str> {
    Some(match (symbol, kind) {
        ("D", Kind::Length) => "propeller diameter",
        ("P", Kind::Power) => "rated power of the engine",
        ("Vs", Kind::Speed) => "top speed",
        ("Vkn", Kind::Ratio) => "top speed, in knots",
        ("a", Kind::Length) => "room to the next bolt",
        ("c", Kind::Ratio) => "part of the proof load",
        ("c", Kind::Length) => "the engine's usual centre aft of its mounting face",
        ("dr", Kind::Length) => "top of the engine's face below the transom's, plumb",
        ("m", Kind::Mass) => "mass of what hangs there",
        ("mLDC", Kind::Ratio) => "her laden mass, in kilograms",
        ("n", Kind::Length) => "across the nut",
        ("nz", Kind::Ratio) => "acceleration on top of gravity, in g",
        ("n", Kind::RotationRate) => "rated speed of the engine",
        ("p", Kind::Length) => "pitch of the propeller",
        ("s", Kind::Length) => "setback, square to the transom",
        ("sA", Kind::Ratio) => "apparent slip of the propeller",
        ("sp", Kind::Length) => "lesser side of the plate",
        ("we" | "he", Kind::Length) => "width or height of the strip that is pressed on",
        _ => return None,
    })
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
        (Family::Stern, "W") => "her weight, with all aboard",
        (Family::Stern, "w") => "weight of what is moved",
        (Family::Stern, "Aw") => "area of the water plane",
        (Family::Stern, "k") => "radius of gyration of the water plane about its fore-and-aft axis",
        (Family::Stern, "KB") => "centre of buoyancy above the bottom",
        (Family::Stern, "KG") => "centre of all weights above the bottom",
        (Family::Stern, "BML") => "metacentric radius for trim",
        (Family::Stern, "x") => "how far forward the edge lies",
        (Family::Stern, "y") => "how far to port the edge, or the centre of weight, lies",
        (Family::Stern, "z") => "how high the edge lies",
        (Family::Stern, "ρ") => "density of the water",
        (Family::Strength, "b") => "beam",
        (Family::Strength, "H") => "transom height at the centreline",
        (Family::Strength, "S") => "the engine's rest down to the plate",
        (Family::Strength, "ca") => "the engine's centre of gravity aft of its mounting face",
        (Family::Strength, "cu") => "the engine's centre of gravity above the bracket's rest",
        (Family::Strength, "gc") => "plate down to the propeller shaft",
        (Family::Strength, "nr") => "rows of holes above the lowest",
        (Family::Strength, "zm") => "height at which the forces act, up the transom",
        (Family::Strength, "φ") => "full tilt of the engine",
        (Family::Strength, "δ") => "steering at hard over",
        (Family::Strength, "ka") => "part of the thrust ahead that it has astern",
        (Family::Strength, "ηg") => "part of the power that comes through the gears",
        (Family::Strength, "KT") => "thrust coefficient of the propeller at rest",
        (Family::Strength, "KQ") => "torque coefficient of the propeller at rest",
        (Family::Strength, "CL") => "lift coefficient of a lower unit hard over",
        (Family::Strength, "ρ") => "density of sea water",
        (Family::Strength, "kDC") => "factor of the design category",
        (Family::Strength, "fw" | "fp" | "fs") => "strength of washer, plate or skin in bending",
        (Family::Strength, "tp") => "thickness of the plate",
        (Family::Strength, "ts") => "thickness of the skin",
        (Family::Strength, "d") => "diameter of the bolt",
        (Family::Strength, "N") => "pull on the bolt",
        (Family::Strength, "V") => "shear on the bolt",
        (Family::Strength, "e") => "bolt hole to the top edge",
        (Family::Strength, "h") => "thickness of the transom",
        (Family::Strength, "w") => "across the washer",
        (Family::Strength, "K") => "nut factor",
        (Family::Strength, "t" | "t1" | "t2" | "t3") => "thickness of the layer, washer or plate",
        (Family::Strength, "τ" | "τ1" | "τ2" | "τ3") => "shear strength of the layer",
        (Family::Steering, "D") => "bore of the cylinder",
        (Family::Steering, "Dl") => "inside of the line",
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
        (Family::Running, "b") => "beam of the prism, over the chines",
        (Family::Running, "Δ") => "her weight",
        (Family::Running, "L") => "lift of tabs and lower units",
        (Family::Running, "ρ") => "density of the water",
        (Family::Running, "τ") => "trim",
        (Family::Running, "λ") => "mean wetted length over beam",
        (Family::Running, "Cf") => "friction coefficient of the bottom",
        (Family::Running, "D") => "diameter of the propeller",
        (Family::Running, "KQ'") => "how the torque coefficient grows with the advance",
        (Family::Running, "ε") => "angle of the shaft to the keel, positive where its thrust lifts",
        (Family::Running, "a") => "how far aft of her centre of gravity the propeller works, along the shaft",
        (Family::Running, "J") => "advance",
        (Family::Running, "KT") => "thrust coefficient",
        (Family::Running, "KQ") => "torque coefficient",
        (Family::Running, "nD") => "turns in a second times diameter",
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

/// Where a value is from that is from there on every boat: a standard, practice, or what the program works out by itself.
fn always_from(symbol: &str, kind: Kind, family: Option<Family>) -> Option<&'static str> {
    family.and_then(|family| own_from(symbol, kind, family)).or(match symbol {
        "g" => Some(STANDARD),
        "γw" => Some("the Coast Guard's boatbuilder's handbook"),
        "ρ20" | "ν20" => Some(MEMORY),
        _ => None,
    })
}

const STANDARD: &str = "standard";
const PRACTICE: &str = "practice";
const MEMORY: &str = "from memory";
const CUT: &str = "the hull, cut at the water plane";
const BALANCE: &str = "the balance of weight and buoyancy";
const LEDGER: &str = "the ledger";

fn own_from(symbol: &str, kind: Kind, family: Family) -> Option<&'static str> {
    Some(match (family, symbol, kind) {
        (Family::Strength, "ρ", _) => "ITTC, from memory",
        (Family::Strength | Family::Running, "KT" | "KQ" | "KQ'", _) => "Wageningen B-series",
        (Family::Running, "D", _) => "the propeller's mark, or the usual one of the class",
        (Family::Running, "ε" | "a", _) => {
            "where the engine hangs and how it is trimmed, and her centre in the ledger"
        }
        (Family::Strength, "ka" | "CL" | "ηg" | "η" | "K" | "sA", _) => PRACTICE,
        (Family::Strength, "c", Kind::Ratio | Kind::Length) => PRACTICE,
        (Family::Strength, "n" | "dh", Kind::Length) => PRACTICE,
        (Family::Strength, "fw", _) => "standard, from memory",
        (Family::Weight, "γf" | "θ", _) => PRACTICE,
        (Family::Weight, "w" | "ws", _) => "ABYC S-30, table 1A",
        (Family::Height, "b", _) | (Family::Fit, "f", _) => PRACTICE,
        (Family::Fit, "m" | "p" | "tw", _) => "the bolt's table",
        (Family::Stern, "W" | "w" | "KG", _) => LEDGER,
        (Family::Stern, "y", _) => LEDGER,
        (Family::Stern, "Aw" | "k" | "KB" | "BML" | "∇" | "Wd", _) => CUT,
        (Family::Stern, "FS", _) => "the tanks that are not full",
        (Family::Stern, "ρ", _) => "the water that she floats in",
        (Family::Stern, "d" | "nx" | "ny" | "nz" | "T1" | "T2" | "τ1" | "τ2", _) => BALANCE,
        (Family::Running, "V", _) => "the table's greatest speed",
        (Family::Running, "b" | "β", _) => "chines and deadrise, or her sections' mean",
        (Family::Running, "Δ", _) => LEDGER,
        (Family::Running, "L", _) => "worked out for that speed",
        (Family::Running, "ρ", _) => "the water that she runs in",
        (Family::Running, "τ" | "λ", _) => "the balance of moments",
        (Family::Running, "Cf", _) => "Schoenherr's line, as told",
        (Family::Running, "J" | "nD", _) => "speed, turns and diameter, as asked",
        (Family::Trial, "C", _) => "what is told of her tanks",
        (Family::Worth, "c" | "K", _) => "as told",
        (Family::Steering, "a" | "b", _) => PRACTICE,
        (Family::Fuel, "t °C" | "T", _) => "practice: a mild day",
        (Family::Fuel, "ne" | "nb" | "nv", _) => "counted",
        (Family::Fuel, "f", _) => "the line before",
        (Family::Fuel, "Δpd", _) => "their papers, or practice",
        (Family::Fuel, "pa", _) => "ISO 2533",
        (Family::Electrical | Family::Network | Family::Steering, "ρ20", _) => "IEC 60028",
        (Family::Electrical | Family::Network | Family::Steering, "t °C", _) => "practice: a warm wire",
        (Family::Network, "n", _) => "its cable's papers, from memory",
        (Family::Network, "L", _) => "one wire of a metre, there and back",
        (Family::Network, "Vs", _) => PRACTICE,
        (Family::Network, "ΔV", _) => "all stretches on the way to it",
        (Family::Trailer, "cw", _) => PRACTICE,
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

/// Symbols of a sheet of which nothing says where their values are from.
pub fn unsourced(sheet: &Sheet, family: Family) -> Vec<String> {
    given(sheet, Some(family)).into_iter().filter(|one| one.from.is_none()).map(|one| one.symbol).collect()
}

/// Every symbol of a sheet with what it means there, whether it went in or was worked out.
pub fn meanings(sheet: &Sheet, family: Family) -> Vec<(String, String)> {
    let told = given(sheet, Some(family)).into_iter().filter_map(|one| Some((one.symbol, one.meaning?)));
    let worked_out = sheet.lines().iter().filter_map(|line| match line {
        Line::Step { symbol, meaning, .. } => Some((symbol.clone(), meaning.clone())),
        Line::Remark(_) => None,
    });
    told.chain(worked_out).collect()
}
