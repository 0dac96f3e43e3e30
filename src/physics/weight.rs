//! Weights hung on a transom, and what it takes to float them.

use uom::si::f64::{Length, Mass, Power, Ratio, Volume};

use crate::catalog::{EngineWeightRow, EngineWeights};
use crate::quantity::{Basis, Dimensioned, Reading, Style, degrees, pounds_per_cubic_foot};
use crate::working::{Sheet, Term, number, tan};

/// Weight of fresh water. Source: Coast Guard boatbuilder's handbook, flotation: 62.4 lb/ft³.
pub const FRESH_WATER_LB_FT3: f64 = 62.4;
/// Weight of the foam that is assumed. Common practice, no source: poured or sheet foam of 2 lb/ft³.
pub const FOAM_LB_FT3: f64 = 2.0;
/// Swamped weight over running weight. Source: ABYC S-30 table 1A (33 CFR 183.75).
pub const SWAMPED_OVER_RUNNING: f64 = 0.85;

/// How far engines of one class differ in weight, either way. Common practice, no source.
const CLASS_SPREAD: f64 = 0.05;
/// How closely a weight is known that a scale or a mounting sheet gives. Common practice, no source: a crane scale, a
/// propeller.
const SCALE_SPREAD: f64 = 0.01;
/// Change of trim that nobody objects to, deg. Common practice, no source: half of what stern/trim-change allows, for
/// the water she lies in is only guessed at here.
const UNFELT_DEG: f64 = 0.5;
/// Waterline over length and breadth in the water over beam. Common practice, no source.
const WATERLINE_OF_LENGTH: f64 = 0.9;
const WATERLINE_OF_BEAM: f64 = 0.8;
/// Beam over length where no beam is known. Common practice, no source.
pub const BEAM_OF_LENGTH: f64 = 0.4;
/// Second moment of a waterplane about its middle, over that of the rectangle round it. Common practice, no source.
const WATERPLANE_SHARE: f64 = 0.7;

/// The row of the engine weight table for an engine of this power; `None` above the table's end.
pub fn table_row(table: &EngineWeights, power: Power) -> Option<&EngineWeightRow> {
    table.rows.iter().find(|row| !power.exceeds(row.power_to.value))
}

/// The sum of named weights.
pub fn total(sheet: &mut Sheet, symbol: &str, meaning: &str, parts: &[(String, Mass)]) -> Term<Mass> {
    let sum = parts
        .iter()
        .map(|(name, mass)| Term::new(name.clone(), *mass))
        .reduce(|a, b| a + b)
        .unwrap_or_else(|| Term::constant(Mass::from_si(0.0)));
    sheet.set(symbol, meaning, sum)
}

/// What an engine of this running weight weighs under water.
pub fn swamped(sheet: &mut Sheet, running: &Term<Mass>) -> Term<Mass> {
    sheet.set("Ws", "swamped weight of the engines", number(SWAMPED_OVER_RUNNING) * running)
}

/// What swamping leaves of how closely a weight is known.
pub fn swamped_part(sheet: &mut Sheet, closeness: &Term<Mass>) -> Term<Mass> {
    sheet.set("cs", "how closely the swamped weight is known", number(SWAMPED_OVER_RUNNING) * closeness)
}

/// Foam that floats a submerged weight: V = W / (water − foam).
pub fn foam_volume(sheet: &mut Sheet, submerged: &Term<Mass>) -> Term<Volume> {
    let density = |symbol, value| Term::new(symbol, pounds_per_cubic_foot(value));
    let buoyancy =
        sheet.set("B", "buoyancy of a unit of foam", density("γw", FRESH_WATER_LB_FT3) - density("γf", FOAM_LB_FT3));
    sheet.set_styled("V", "foam that floats it", submerged / &buoyancy, Style::Bulk)
}

/// How closely the sum of these weights is known: each by its tolerance, else by where it is from; engines of one
/// class are all off the same way, so they are added.
pub fn closeness(sheet: &mut Sheet, weights: &[(&str, &Reading<Mass>)]) -> Term<Mass> {
    let one = |(name, weight): &(&str, &Reading<Mass>)| match (weight.tolerance, weight.basis) {
        (Some(tolerance), _) => Term::new(format!("± {name}"), tolerance),
        (None, Basis::Measured | Basis::Builder) => number(SCALE_SPREAD) * Term::new(*name, weight.value),
        (None, Basis::Catalog | Basis::Assumed) => number(CLASS_SPREAD) * Term::new(*name, weight.value),
    };
    let sum = weights.iter().map(one).reduce(|a, b| a + b).unwrap_or_else(|| Term::constant(Mass::from_si(0.0)));
    sheet.set("c", "how closely these weights are known", sum)
}

/// How many times as far the stern of a vee bottom goes down as the weight over length by beam of water alone would
/// say: from the least to the most. Common practice, no source: the boats of tests/boats, floated, lie within them.
pub const STERN_OF_VEE: [f64; 2] = [5.5, 10.0];
/// The same of a flat or cathedral bottom. Common practice, no source.
pub const STERN_OF_FLAT: [f64; 2] = [5.0, 8.5];
/// The same of a round bottom, or one that is not known. Common practice, no source.
pub const STERN_OF_ANY: [f64; 2] = [5.0, 11.0];

/// How far weight put on her stern sinks her transom, at the least and at the most: a first figure from her length and beam,
/// d = K ΔW / (γ L B).
pub fn stern_sinks(sheet: &mut Sheet, more: &Term<Mass>, length: Length, beam: Length, times: [f64; 2]) -> [Length; 2] {
    let (length, beam) = (Term::styled("L", length, Style::Feet), Term::styled("B", beam, Style::Feet));
    let water = Term::new("γw", pounds_per_cubic_foot(FRESH_WATER_LB_FT3));
    let each = sheet.set("p", "weight that fills length by beam with water, to a height", water * (length * beam));
    let [least, most] = times;
    let least = sheet.set("d1", "how far her transom sinks, at the least", number(least) * (more / &each));
    let most = sheet.set("d2", "how far her transom sinks, at the most", number(most) * (more / &each));
    [least.value(), most.value()]
}

/// Weight at the stern that trims a boat of this length and beam by no more than anybody objects to. Half her length
/// is its arm; her waterplane's second moment over the weight of water is what it works against.
pub fn unfelt(sheet: &mut Sheet, length: Length, beam: Length) -> Term<Mass> {
    let length = sheet.set_styled(
        "Lw",
        "length of her waterline, about",
        number(WATERLINE_OF_LENGTH) * Term::styled("L", length, Style::Feet),
        Style::Feet,
    );
    let breadth = sheet.set_styled(
        "Bw",
        "breadth of her waterline, about",
        number(WATERLINE_OF_BEAM) * Term::styled("B", beam, Style::Feet),
        Style::Feet,
    );
    let water = Term::new("γw", pounds_per_cubic_foot(FRESH_WATER_LB_FT3));
    // k · γ · B L³ / 12 · tan θ = W · L / 2
    let slope: Term<Ratio> = number(WATERPLANE_SHARE / 6.0) * tan(Term::new("θ", degrees(UNFELT_DEG)));
    sheet.set(
        "Wu",
        "weight at the stern that trims her by half a degree, about",
        slope * water * (breadth * &length * &length),
    )
}
