//! What an engine and a bracket are: the same entry in a catalog and described in place on a job.

use serde::Deserialize;
use uom::si::f64::{Angle, AngularVelocity, ElectricCurrent, Length, Mass, Power, Ratio, Volume, VolumeRate};

use super::swing::TiltTube;
use crate::quantity::{Moment, Reading};

/// From one value to another.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, bound = "Q: crate::quantity::Dimensioned")]
pub struct Span<Q> {
    /// The lesser.
    pub from: Reading<Q>,
    /// The greater.
    pub to: Reading<Q>,
}

/// What a maker's mounting sheet gives of an engine.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct EngineSpec {
    /// Rated power at the propeller shaft (ISO 8665).
    pub power: Option<Reading<Power>>,
    /// How it works.
    pub cycle: Option<Cycle>,
    /// Cylinders in words: "inline-4", "V6".
    pub cylinders: Option<String>,
    /// Rated speed band at full throttle.
    pub full_throttle: Option<Span<AngularVelocity>>,
    /// Weight without fluids and propeller, on the shortest shaft listed.
    pub dry_weight: Option<Reading<Mass>>,
    /// Weight with fluids and propeller, on the shortest shaft listed.
    pub running_weight: Option<Reading<Mass>>,
    /// Centre of gravity aft of the mounting face, engine down.
    pub centre_aft: Option<Reading<Length>>,
    /// Centre of gravity above the bracket's rest, engine down; negative below it.
    pub centre_above: Option<Reading<Length>>,
    /// The shaft lengths it comes in, the shortest first.
    pub shafts: Vec<ShaftOption>,
    /// Anti-ventilation plate down to the propeller shaft's centre.
    pub plate_to_propeller_shaft: Option<Reading<Length>>,
    /// Crankshaft turns for one of the propeller.
    pub gear_ratio: Option<Reading<Ratio>>,
    /// Propeller diameters that fit it.
    pub propeller_diameter: Option<Span<Length>>,
    /// Height of its bracket's face: from the transom's top, on which it rests, down to its heel.
    pub bracket_height: Option<Reading<Length>>,
    /// Rows of holes in its bracket, 3/4 in apart.
    pub hole_rows: Option<u8>,
    /// Transom thickness that its bracket takes.
    pub transom_thickness: Option<Span<Length>>,
    /// Transom angle at which its trim range is laid out.
    pub transom_angle: Option<Reading<Angle>>,
    /// Trim range from the shaft square to the bottom: in (negative, under) to out.
    pub trim: Option<Span<Angle>>,
    /// Full tilt, from vertical, at that transom angle.
    pub full_tilt: Option<Reading<Angle>>,
    /// Steering, each way.
    pub steering: Option<Reading<Angle>>,
    /// Least distance between the centres of two of them.
    pub centre_distance: Option<Reading<Length>>,
    /// To what its mounting bolts are tightened.
    pub torque: Option<Reading<Moment>>,
    /// Where its tilt tube is.
    pub tilt_tube: Option<TiltTube>,
    /// The powerhead's size and where it goes at full tilt.
    pub powerhead: Option<Powerhead>,
    /// Alternator's rated current.
    pub alternator: Option<Reading<ElectricCurrent>>,
    /// Starter's current.
    pub starting: Option<Reading<ElectricCurrent>>,
    /// Fuel burnt at full throttle; none for an electric one.
    pub fuel_rate: Option<Reading<VolumeRate>>,
}

/// How an engine works.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Cycle {
    FourStroke,
    TwoStroke,
    Electric,
}

/// One shaft length that an engine comes in.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShaftOption {
    /// The trade's name for it, after the transom height it is meant for.
    pub name: Reading<Length>,
    /// Bracket's rest down to the anti-ventilation plate.
    pub rest_to_plate: Reading<Length>,
    /// What it weighs more than the shortest.
    pub extra_weight: Option<Reading<Mass>>,
}

/// The powerhead.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Powerhead {
    /// Greatest width.
    pub width: Option<Reading<Length>>,
    /// From the bracket's rest to its top, engine down.
    pub height: Option<Reading<Length>>,
    /// How far anything of the engine comes forward of the mounting face at full tilt.
    pub forward_at_full_tilt: Option<Reading<Length>>,
    /// Highest point above the bracket's rest at full tilt.
    pub height_at_full_tilt: Option<Reading<Length>>,
    /// Clearance that the powerhead asks for each way from the engine's centreline at full lock.
    pub clearance_each_way: Option<Reading<Length>>,
}

/// A bracket or setback device.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct BracketSpec {
    /// What sort it is.
    pub kind: Option<BracketKind>,
    /// Transom's face to the face on which the engines hang.
    pub setback: Option<Reading<Length>>,
    /// Its top below the transom's top, plumb from a level line; negative where it stands above.
    pub drop: Option<Reading<Length>>,
    /// Height of its face that lies on the transom.
    pub face_height: Option<Reading<Length>>,
    /// Power that its maker allows, all engines together.
    pub rated_power: Option<Reading<Power>>,
    /// Weight that its maker allows, all engines together.
    pub rated_weight: Option<Reading<Mass>>,
    /// Engines it takes.
    pub engines: Option<u8>,
    /// What it weighs itself.
    pub weight: Option<Reading<Mass>>,
    /// To what the bolts that hold it to the transom are tightened.
    pub torque: Option<Reading<Moment>>,
    /// Its closed volume, where it is a box that floats.
    pub buoyant_volume: Option<Reading<Volume>>,
}

/// The sort of a bracket.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BracketKind {
    /// A plate or casting that only moves the engine aft.
    SetbackPlate,
    /// One that also lifts the engine.
    JackPlate,
    /// Open arms.
    Frame,
    /// A closed box with buoyancy of its own.
    Box,
    /// A small one for an auxiliary engine.
    Auxiliary,
}
