//! Weights hung on a transom, and what it takes to float them.

use uom::si::f64::{Mass, Power, Volume};

use crate::catalog::{EngineWeightRow, EngineWeights};
use crate::quantity::{Dimensioned, Style, pounds_per_cubic_foot};
use crate::working::{Sheet, Term, number};

/// Weight of fresh water. Source: Coast Guard boatbuilder's handbook, flotation: 62.4 lb/ft³.
pub const FRESH_WATER_LB_FT3: f64 = 62.4;
/// Weight of the foam that is assumed. Common practice, no source: poured or sheet foam of 2 lb/ft³.
pub const FOAM_LB_FT3: f64 = 2.0;
/// Swamped weight over running weight. Source: ABYC S-30 table 1A (33 CFR 183.75).
pub const SWAMPED_OVER_RUNNING: f64 = 0.85;

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

/// Foam that floats a submerged weight: V = W / (water − foam).
pub fn foam_volume(sheet: &mut Sheet, submerged: &Term<Mass>) -> Term<Volume> {
    let density = |symbol, value| Term::new(symbol, pounds_per_cubic_foot(value));
    let buoyancy =
        sheet.set("B", "buoyancy of a unit of foam", density("γw", FRESH_WATER_LB_FT3) - density("γf", FOAM_LB_FT3));
    sheet.set_styled("V", "foam that floats it", submerged / &buoyancy, Style::Bulk)
}
