//! Parts that a catalog has classes of, and that a job can describe in place.

use serde::Deserialize;
use uom::si::f64::{Area, ElectricCharge, ElectricCurrent, Length, Mass, Power, Pressure, Velocity, Volume};

use super::declare::{Visitor, Walk, rigged};

/// A part: a class of the catalog, or described in place. Once the job is resolved, what the class says stands in
/// `described` too.
#[derive(Clone, Debug, Deserialize)]
#[serde(default, deny_unknown_fields, bound = "T: serde::de::DeserializeOwned")]
pub struct Chosen<T> {
    /// A class of the catalog…
    pub class: Option<String>,
    /// …or the part described in place.
    pub described: Option<T>,
}

impl<T> Default for Chosen<T> {
    fn default() -> Self {
        Chosen { class: None, described: None }
    }
}

impl<T> Chosen<T> {
    /// What is known of it.
    pub fn spec(&self) -> Option<&T> {
        self.described.as_ref()
    }

    /// What it is called: its class, or in general words.
    pub fn name<'a>(&'a self, otherwise: &'a str) -> &'a str {
        self.class.as_deref().unwrap_or(otherwise)
    }
}

impl<T: Walk> Walk for Chosen<T> {
    fn walk(&self, path: &str, visit: &mut Visitor<'_>) {
        // What a class says was not read on this boat.
        if self.class.is_none() {
            self.described.walk(&format!("{path}.described"), visit);
        }
    }
}

rigged! {
    /// A hydraulic helm: the pump behind the wheel.
    HelmSpec
    read {
        /// What one turn displaces.
        displacement: Volume = "displacement of the helm", Displacement, "0.2 in³", "10 in³";
        /// Pressure at which it lets go.
        relief: Pressure = "relief pressure of the helm", Plain, "100 psi", "3,000 psi";
        /// What it weighs.
        weight: Mass = "weight of the helm", Plain, "1 lb", "80 lb";
    }
    have {}
    hold {}
}

rigged! {
    /// A steering cylinder.
    CylinderSpec
    read {
        /// Inside of its barrel.
        bore: Length = "bore of the steering cylinder", Plain, "1/2 in", "4 in";
        /// Its rod.
        rod: Length = "rod of the steering cylinder", Plain, "1/8 in", "3 in";
        /// From lock to lock.
        stroke: Length = "stroke of the steering cylinder", Plain, "2 in", "20 in";
        /// Power of all engines together that it may steer.
        rated_power: Power = "power that the steering is rated for", Plain, "1 hp", "4,000 hp";
        /// Speed to which it may steer them.
        rated_speed: Velocity = "speed that the steering is rated for", Plain, "5 mph", "150 mph";
        /// What it weighs.
        weight: Mass = "weight of the steering cylinder", Plain, "1 lb", "80 lb";
    }
    have {
        /// Whether its rod comes out at both ends.
        balanced: Option<bool>;
    }
    hold {}
}

rigged! {
    /// A fuel hose.
    HoseSpec
    read {
        /// Its inside.
        bore: Length = "inside of the fuel hose", Plain, "1/8 in", "2 in";
        /// Its outside.
        outside: Length = "outside of the fuel hose", Plain, "1/4 in", "3 in";
    }
    have {
        /// Whether it is made for gasoline.
        gasoline: Option<bool>;
        /// Whether it withstands fire for 2 1/2 minutes.
        fire_tested: Option<bool>;
    }
    hold {}
}

rigged! {
    /// A wire: a gauge of the American wire gauge (1/0 is 0, 4/0 is −3), or a section.
    WireSpec
    read {
        /// Its section, where it has no gauge.
        area: Area = "section of the wire", Plain, "0.1 mm²", "500 mm²";
        /// What it carries outside engine spaces, with insulation for 60, 75 and 105 °C.
        carries_60: ElectricCurrent = "what the wire carries, 60 °C", Plain, "1 A", "2,000 A";
        carries_75: ElectricCurrent = "what the wire carries, 75 °C", Plain, "1 A", "2,000 A";
        carries_105: ElectricCurrent = "what the wire carries, 105 °C", Plain, "1 A", "2,000 A";
        /// Across its insulation.
        outside: Length = "outside of the wire", Plain, "1/32 in", "2 in";
    }
    have {
        /// Its gauge.
        gauge: Option<i8>;
    }
    hold {}
}

rigged! {
    /// A battery.
    BatterySpec
    read {
        /// Cold cranking current (SAE J537, −18 °C).
        cranking: ElectricCurrent = "cold cranking current", Plain, "10 A", "3,000 A";
        /// What it holds at the twenty-hour rate.
        capacity: ElectricCharge = "capacity of the battery", Plain, "1 Ah", "2,000 Ah";
        /// What it weighs.
        weight: Mass = "weight of the battery", Plain, "2 lb", "400 lb";
    }
    have {}
    hold {}
}

rigged! {
    /// A fuse or breaker.
    FuseSpec
    read {
        /// The current that it carries.
        rating: ElectricCurrent = "rating of the fuse", Plain, "0.5 A", "1,000 A";
        /// The greatest current that it can break.
        breaks: ElectricCurrent = "greatest current that the fuse breaks", Plain, "10 A", "100,000 A";
    }
    have {}
    hold {}
}

rigged! {
    /// A trailer.
    TrailerSpec
    read {
        /// What it weighs empty.
        weight: Mass = "weight of the trailer", Plain, "50 lb", "10,000 lb";
        /// The most it may weigh with all on it.
        rated: Mass = "rating of the trailer with all on it", Plain, "200 lb", "60,000 lb";
        /// What its axles may carry together.
        axles: Mass = "rating of the axles together", Plain, "200 lb", "60,000 lb";
        /// What one tyre may carry.
        tyre: Mass = "load rating of one tyre", Plain, "100 lb", "10,000 lb";
        /// The heaviest trailer that its coupling may pull.
        coupling: Mass = "rating of the coupling", Plain, "200 lb", "60,000 lb";
        /// Its own centre forward of the axle.
        centre: Length = "the trailer's centre forward of the axle", Tape, "-10 ft", "30 ft";
    }
    have {
        /// How many tyres stand on the road.
        tyres: Option<u8>;
        /// Whether its axles have brakes.
        brakes: Option<bool>;
    }
    hold {}
}
