//! What a catalog file holds.

use serde::Deserialize;
use uom::si::f64::{Area, Length, Mass, MassDensity, Power, Pressure};

use crate::job::rigging::{BatterySpec, CylinderSpec, FuseSpec, HelmSpec, HoseSpec, TrailerSpec, WireSpec};
use crate::job::{BracketSpec, EngineSpec};
use crate::quantity::Reading;
use crate::written::Page;

/// One catalog file; a catalog is any number of them.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct CatalogFile {
    /// What the file holds and what its figures are worth.
    pub about: String,
    /// Engine classes.
    pub engines: Vec<Entry<EngineSpec>>,
    /// Brackets and setback devices.
    pub brackets: Vec<Entry<BracketSpec>>,
    /// Bolt sizes.
    pub bolt_sizes: Vec<Entry<BoltSize>>,
    /// Bolt grades.
    pub bolt_grades: Vec<Entry<BoltGrade>>,
    /// Transom materials and cores.
    pub materials: Vec<Entry<Material>>,
    /// Fuel hoses.
    pub hoses: Vec<Entry<HoseSpec>>,
    /// Wires.
    pub wires: Vec<Entry<WireSpec>>,
    /// Batteries.
    pub batteries: Vec<Entry<BatterySpec>>,
    /// Fuses and breakers.
    pub fuses: Vec<Entry<FuseSpec>>,
    /// Hydraulic helms.
    pub helms: Vec<Entry<HelmSpec>>,
    /// Steering cylinders.
    pub cylinders: Vec<Entry<CylinderSpec>>,
    /// Trailers.
    pub trailers: Vec<Entry<TrailerSpec>>,
    /// The horsepower capacity table.
    pub power_capacity: Option<PowerCapacity>,
    /// The engine weight table.
    pub engine_weights: Option<EngineWeights>,
}

impl CatalogFile {
    /// How many entries and tables it holds.
    pub fn count(&self) -> usize {
        self.engines.len()
            + self.brackets.len()
            + self.bolt_sizes.len()
            + self.bolt_grades.len()
            + self.materials.len()
            + self.hoses.len()
            + self.wires.len()
            + self.batteries.len()
            + self.fuses.len()
            + self.helms.len()
            + self.cylinders.len()
            + self.trailers.len()
            + usize::from(self.power_capacity.is_some())
            + usize::from(self.engine_weights.is_some())
    }

    /// Gives every entry its text from the page that the file was read from.
    pub(super) fn keep_texts(&mut self, page: &Page) {
        keep_texts(&mut self.engines, "engines", page);
        keep_texts(&mut self.brackets, "brackets", page);
        keep_texts(&mut self.bolt_sizes, "bolt_sizes", page);
        keep_texts(&mut self.bolt_grades, "bolt_grades", page);
        keep_texts(&mut self.materials, "materials", page);
        keep_texts(&mut self.hoses, "hoses", page);
        keep_texts(&mut self.wires, "wires", page);
        keep_texts(&mut self.batteries, "batteries", page);
        keep_texts(&mut self.fuses, "fuses", page);
        keep_texts(&mut self.helms, "helms", page);
        keep_texts(&mut self.cylinders, "cylinders", page);
        keep_texts(&mut self.trailers, "trailers", page);
    }
}

fn keep_texts<T>(entries: &mut [Entry<T>], list: &str, page: &Page) {
    for (i, entry) in entries.iter_mut().enumerate() {
        entry.text = page.slice(&format!("{list}[{i}]")).to_owned();
    }
}

/// A named entry.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Entry<T> {
    /// The name that a job gives; an entry of a later file with the same name takes its place.
    pub name: String,
    /// What it is and where its figures are from.
    #[serde(default)]
    pub about: String,
    /// Its figures.
    pub spec: T,
    /// The entry as it stands in its file.
    #[serde(skip)]
    pub text: String,
}

/// A screw thread.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoltSize {
    /// Major diameter.
    pub diameter: Reading<Length>,
    /// Distance from thread to thread.
    pub pitch: Reading<Length>,
    /// Tensile stress area as the standard prints it.
    pub stress_area: Reading<Area>,
    /// Height of a standard nut.
    pub nut_height: Reading<Length>,
    /// Thickness of a plain washer.
    pub washer_thickness: Reading<Length>,
    /// Outside diameter of a large (fender) washer.
    pub washer_diameter: Reading<Length>,
    /// The standard.
    pub source: String,
}

/// A property class or grade.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoltGrade {
    /// Tensile strength.
    pub tensile: Reading<Pressure>,
    /// Yield or 0.2 % proof strength.
    pub yield_strength: Reading<Pressure>,
    /// Proof stress, where the standard gives one.
    pub proof: Option<Reading<Pressure>>,
    /// Whether it is stainless.
    pub stainless: bool,
    /// The standard.
    pub source: String,
}

/// A transom material or core.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Material {
    /// Mass of its volume.
    pub density: Reading<MassDensity>,
    /// Modulus of elasticity along the stronger direction.
    pub modulus_along: Reading<Pressure>,
    /// Modulus of elasticity across it.
    pub modulus_across: Reading<Pressure>,
    /// In-plane shear modulus.
    pub shear_modulus: Reading<Pressure>,
    /// Through-thickness (transverse) shear modulus.
    pub transverse_shear_modulus: Reading<Pressure>,
    /// Bending strength, of plywood along its face grain.
    pub bending_strength: Reading<Pressure>,
    /// Bending strength across it; where left out it follows from the plies, or from the moduli.
    pub bending_strength_across: Option<Reading<Pressure>>,
    /// The sheets of which thicker boards are glued up, where it is plywood: moduli and bending strengths are those of one.
    pub plywood: Option<PlywoodSheet>,
    /// Through-thickness (transverse) shear strength.
    pub shear_strength: Reading<Pressure>,
    /// Crushing strength through the thickness, under a washer; of wood whose grain lies in the transom, the proportional
    /// limit across it.
    pub crushing_strength: Reading<Pressure>,
    /// Bearing strength in the plane, at a bolt.
    pub bearing_strength: Reading<Pressure>,
    /// Whether it crushes or indents under bolts that go through it bare, so that something solid must be let in there.
    #[serde(default)]
    pub needs_inserts: bool,
    /// Where the figures are from.
    pub source: String,
}

/// A sheet of plywood, its plies of one thickness.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlywoodSheet {
    /// How many plies it has: an odd number.
    pub plies: u8,
    /// Its thickness.
    pub thickness: Reading<Length>,
}

/// The horsepower capacity table of 33 CFR 183.53.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PowerCapacity {
    /// Citation.
    pub citation: String,
    /// The text it was taken from.
    pub edition: String,
    /// Steps by factor, the least first.
    pub steps: Vec<PowerStep>,
    /// Greatest factor that the steps cover.
    pub steps_end: f64,
}

/// A step of the horsepower capacity table.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PowerStep {
    /// Greatest factor, as a whole number, to which the step applies.
    pub factor_to: u32,
    /// Horsepower capacity.
    pub power: Reading<Power>,
}

/// The weights of outboard engines and their gear of ABYC S-30, as incorporated by 33 CFR 183.75.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EngineWeights {
    /// Citation.
    pub citation: String,
    /// Edition of the table.
    pub edition: String,
    /// Rows by power, the least first.
    pub rows: Vec<EngineWeightRow>,
}

/// A row of the engine weight table.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EngineWeightRow {
    /// Greatest power of the row.
    pub power_to: Reading<Power>,
    /// Dry weight.
    pub dry: Reading<Mass>,
    /// Running weight.
    pub running: Reading<Mass>,
    /// Weight when swamped.
    pub swamped: Reading<Mass>,
    /// Controls.
    pub controls: Reading<Mass>,
    /// Battery, dry.
    pub battery_dry: Reading<Mass>,
    /// Battery, submerged.
    pub battery_submerged: Reading<Mass>,
    /// Full portable fuel tank.
    pub portable_fuel: Reading<Mass>,
}
