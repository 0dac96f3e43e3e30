//! What an engine and a bracket are: the same entry in a catalog and described in place on a job.

use serde::Deserialize;
use uom::si::f64::{Angle, AngularVelocity, ElectricCurrent, Length, Mass, Power, Ratio, Volume, VolumeRate};

use super::bounds;
use super::swing::TiltTube;
use crate::quantity::{Dimensioned, Kind, Moment, Reading};
use crate::reading::*;

/// From one value to another.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, bound = "Q: Dimensioned")]
pub struct Span<Q> {
    /// The lesser.
    pub from: Reading<Q>,
    /// The greater.
    pub to: Reading<Q>,
}

impl<Q: Dimensioned> Part for Span<Q> {
    const KIND: Option<Kind> = Some(Q::KIND);

    type Held = Self;

    fn held(&self) -> Option<&Self::Held> {
        Some(self)
    }

    fn form() -> Form {
        Form::Span(Q::KIND)
    }

    fn visit<'v>(&'v self, at: &Place<'_>, see: &mut See<'_, 'v>) {
        see(at, Value::Range(number(&self.from), number(&self.to)));
        self.from.visit(&at.part("from"), see);
        self.to.visit(&at.part("to"), see);
    }

    fn change(&mut self, change: &mut Change<'_>) {
        self.from.change(change);
        self.to.change(change);
    }
}

things! {
    /// What a maker's mounting sheet gives of an engine.
    pub struct EngineSpec {
        /// Rated power at the propeller shaft (ISO 8665).
        power: Option<Reading<Power>> = called("rated power of the engine").within(bounds::ENGINE_POWER)
            .taken(Stop::Engine, "its plate or mounting sheet", "power at the propeller shaft").spot(100, 102),
        /// How it works.
        cycle: Option<Cycle> = called("how it works"),
        /// Cylinders in words: "inline-4", "V6".
        cylinders: Option<String> = called("cylinders"),
        /// Rated speed band at full throttle.
        full_throttle: Option<Span<AngularVelocity>> = called("speed band at full throttle").within(bounds::ROTATION),
        /// Weight without fluids and propeller, on the shortest shaft listed.
        dry_weight: Option<Reading<Mass>> = called("weight of the engine, dry").within(bounds::ENGINE_WEIGHT),
        /// Weight with fluids and propeller, on the shortest shaft listed.
        running_weight: Option<Reading<Mass>> = called("weight of the engine as it hangs").within(bounds::ENGINE_WEIGHT)
            .taken(Stop::Engine, "mounting sheet, or a scale",
                "with fluids and propeller; on a crane scale where there is one").closely(lb(5.0)).spot(100, 102),
        /// Centre of gravity aft of the mounting face, engine down.
        centre_aft: Option<Reading<Length>> = called("the engine's centre of gravity").within(bounds::OFFSET)
            .taken(Stop::Engine, "mounting sheet", "aft of the mounting face and above the bracket's rest, engine down")
            .closely(inch(1.0)),
        /// Centre of gravity above the bracket's rest, engine down; negative below it.
        centre_above: Option<Reading<Length>> = called("its centre of gravity above the bracket's rest").within(bounds::OFFSET),
        /// The shaft lengths it comes in, the shortest first.
        shafts: Vec<ShaftOption> = called("shaft lengths that it comes in"),
        /// Anti-ventilation plate down to the propeller shaft's centre.
        plate_to_propeller_shaft: Option<Reading<Length>> = called("plate down to the propeller shaft").within(bounds::SMALL_LENGTH),
        /// Crankshaft turns for one of the propeller.
        gear_ratio: Option<Reading<Ratio>> = called("gear ratio").within(bounds::GEAR),
        /// Propeller diameters that fit it.
        propeller_diameter: Option<Span<Length>> = called("propeller diameters that fit it").within(bounds::SMALL_LENGTH),
        /// Height of its bracket's face: from the transom's top, on which it rests, down to its heel.
        bracket_height: Option<Reading<Length>> = called("height of its bracket's face").within(bounds::BRACKET_FACE),
        /// Rows of holes in its bracket, 3/4 in apart.
        hole_rows: Option<u8> = called("rows of holes in the engine's bracket").within(bounds::HOLE_ROWS)
            .taken(Stop::Engine, "mounting sheet, or the engine's bracket", "count the rows of the upper bolts"),
        /// Transom thickness that its bracket takes.
        transom_thickness: Option<Span<Length>> = called("transom thickness that the engine takes").within(bounds::THICKNESS)
            .taken(Stop::Engine, "mounting sheet", "from and to"),
        /// Transom angle at which its trim range is laid out.
        transom_angle: Option<Reading<Angle>> = called("transom angle that the engine is laid out for").within(bounds::TRANSOM_ANGLE)
            .taken(Stop::Engine, "mounting sheet", "the angle at which its trim range is stated"),
        /// Trim range from the shaft square to the bottom: in (negative, under) to out.
        trim: Option<Span<Angle>> = called("the engine's trim range").within(bounds::TRIM)
            .taken(Stop::Engine, "mounting sheet", "in (under) and out, at that transom angle"),
        /// Full tilt, from vertical, at that transom angle.
        full_tilt: Option<Reading<Angle>> = called("full tilt").within(bounds::TILT),
        /// Steering, each way.
        steering: Option<Reading<Angle>> = called("steering, each way").within(bounds::STEER),
        /// Least distance between the centres of two of them.
        centre_distance: Option<Reading<Length>> = called("least distance between centres of two such engines").within(bounds::SMALL_LENGTH)
            .taken(Stop::Engine, "mounting sheet", "for parallel steering over the full range"),
        /// To what its mounting bolts are tightened.
        torque: Option<Reading<Moment>> = called("torque on its mounting sheet").within(bounds::TORQUE),
        /// Where its tilt tube is.
        tilt_tube: Option<TiltTube> = called("tilt tube"),
        /// The powerhead's size and where it goes at full tilt.
        powerhead: Option<Powerhead> = called("powerhead"),
        /// Alternator's rated current.
        alternator: Option<Reading<ElectricCurrent>> = called("alternator's rated current").within(bounds::CURRENT),
        /// Starter's current.
        starting: Option<Reading<ElectricCurrent>> = called("starter's current").within(bounds::CURRENT),
        /// Fuel burnt at full throttle; none for an electric one.
        fuel_rate: Option<Reading<VolumeRate>> = called("fuel burnt at full throttle").within(bounds::FUEL_RATE),
    }
}

words! {
    /// How an engine works.
    pub enum Cycle {
        FourStroke = "four_stroke", "four stroke";
        TwoStroke = "two_stroke", "two stroke";
        Electric = "electric";
    }
}

things! {
    /// One shaft length that an engine comes in.
    pub struct ShaftOption [whole] {
        /// The trade's name for it, after the transom height it is meant for.
        name: Reading<Length> = called("shaft").within(bounds::SHAFT),
        /// Bracket's rest down to the anti-ventilation plate.
        rest_to_plate: Reading<Length> = called("bracket's rest down to the plate").within(bounds::SHAFT),
        /// What it weighs more than the shortest.
        extra_weight: Option<Reading<Mass>> = called("more than the shortest shaft weighs").within(bounds::ITEM_WEIGHT),
    }
}

things! {
    /// The powerhead.
    pub struct Powerhead {
        /// Greatest width.
        width: Option<Reading<Length>> = called("width of the powerhead").within(bounds::SMALL_LENGTH),
        /// From the bracket's rest to its top, engine down.
        height: Option<Reading<Length>> = called("top of the powerhead above the bracket's rest").within(bounds::SMALL_LENGTH),
        /// How far anything of the engine comes forward of the mounting face at full tilt.
        forward_at_full_tilt: Option<Reading<Length>> = called("forward of the mounting face at full tilt").within(bounds::OFFSET),
        /// Highest point above the bracket's rest at full tilt.
        height_at_full_tilt: Option<Reading<Length>> = called("above the bracket's rest at full tilt").within(bounds::SMALL_LENGTH),
        /// Clearance that the powerhead asks for each way from the engine's centreline at full lock.
        clearance_each_way: Option<Reading<Length>> = called("clearance of the powerhead at full lock").within(bounds::SMALL_LENGTH)
            .taken(Stop::Engine, "mounting sheet",
                "from the engine's centreline to the farthest point each way at full lock").closely(inch(0.5)),
    }
}

things! {
    /// A bracket or setback device.
    pub struct BracketSpec {
        /// What sort it is.
        kind: Option<BracketKind> = called("sort of bracket"),
        /// Transom's face to the face on which the engines hang.
        setback: Option<Reading<Length>> = called("setback in its papers").within(bounds::SETBACK),
        /// Its top below the transom's top, plumb from a level line; negative where it stands above.
        drop: Option<Reading<Length>> = called("drop in its papers").within(bounds::DROP),
        /// How far it lifts its engine from the bottom of its travel, along the transom.
        travel: Option<Reading<Length>> = called("travel in its papers").within(bounds::TRAVEL),
        /// The parallel arms on which it lifts; where left out it goes straight up along the transom.
        arms: Option<LiftArms> = called("arms of the lifting bracket"),
        /// Height of its face that lies on the transom.
        face_height: Option<Reading<Length>> = called("height of its face on the transom").within(bounds::BRACKET_FACE),
        /// Power that its maker allows, all engines together.
        rated_power: Option<Reading<Power>> = called("the bracket's rated power").within(bounds::BOAT_POWER)
            .taken(Stop::Bracket, "its plate or papers", "all engines together, as its maker gives it").spot(498, 298),
        /// Weight that its maker allows, all engines together.
        rated_weight: Option<Reading<Mass>> = called("the bracket's rated weight").within(bounds::LOAD)
            .taken(Stop::Bracket, "its plate or papers", "all engines together, as its maker gives it").spot(498, 298),
        /// Engines it takes.
        engines: Option<u8> = called("engines that the bracket takes").within(bounds::ENGINES),
        /// What it weighs itself.
        weight: Option<Reading<Mass>> = called("the bracket's own weight").within(bounds::ITEM_WEIGHT)
            .taken(Stop::Bracket, "a scale, or its papers", "with the bolts and plates that come with it")
            .closely(lb(1.0)).spot(498, 298),
        /// To what the bolts that hold it to the transom are tightened.
        torque: Option<Reading<Moment>> = called("torque in its papers").within(bounds::TORQUE),
        /// Its closed volume, where it is a box that floats.
        buoyant_volume: Option<Reading<Volume>> = called("volume of the bracket's closed box").within(bounds::VOLUME)
            .taken(Stop::Bracket, "its plate or papers",
                "as its maker gives it, or its outside length by width by height"),
    }
}

things! {
    /// Parallel arms that carry a lifting bracket's face, so that it goes aft and forward again as it rises.
    pub struct LiftArms [whole] {
        /// Between the pins of one arm.
        length: Reading<Length> = called("arm of the lifting bracket").within(bounds::LIFT_ARM),
        /// How far its after pin lies below the forward one at the bottom of the travel, along the transom.
        hang: Reading<Length> = called("hang of the lifting bracket's arm").within(bounds::LIFT_HANG),
    }
}

words! {
    /// The sort of a bracket.
    pub enum BracketKind {
        /// A plate or casting that only moves the engine aft.
        SetbackPlate = "setback_plate", "setback plate";
        /// One that also lifts the engine.
        JackPlate = "jack_plate", "jack plate";
        /// Open arms.
        Frame = "frame";
        /// A closed box with buoyancy of its own.
        Box = "box";
        /// A small one for an auxiliary engine.
        Auxiliary = "auxiliary";
    }
}
