//! Parts that a catalog has classes of, and that a job can describe in place.

use crate::job::bounds;
use crate::quantity::Reading;
use crate::quantity::Style;
use crate::reading::*;
use uom::si::f64::{Area, ElectricCharge, ElectricCurrent, Length, Mass, Power, Pressure, Velocity, Volume};

/// A part that a job names by a class of the catalog or describes in place.
pub trait Chosen {
    /// What its maker gives of it.
    type Spec: Clone;

    /// The class of the catalog that is named.
    fn class(&self) -> Option<&str>;

    /// What is known of it: described in place or, once the job is resolved, what its class says.
    fn spec(&self) -> Option<&Self::Spec>;

    /// Writes it out.
    fn describe(&mut self, spec: Option<Self::Spec>);

    /// What it is called: its class, or in general words.
    fn name<'a>(&'a self, otherwise: &'a str) -> &'a str {
        self.class().unwrap_or(otherwise)
    }
}

macro_rules! chosen {
    ($($(#[doc = $doc:literal])+ $name:ident of $spec:ident;)+) => {$(
        things! {
            $(#[doc = $doc])+
            pub struct $name {
                /// A class of the catalog…
                class: Option<String> = label(),
                /// …or the part described in place.
                described: Option<$spec>,
            }
        }

        impl Chosen for $name {
            type Spec = $spec;

            fn class(&self) -> Option<&str> {
                self.class.as_deref()
            }

            fn spec(&self) -> Option<&$spec> {
                self.described.as_ref()
            }

            fn describe(&mut self, spec: Option<$spec>) {
                self.described = spec;
            }
        }
    )+};
}

chosen! {
    /// A hydraulic helm by its class, or described.
    ChosenHelm of HelmSpec;
    /// A steering cylinder by its class, or described.
    ChosenCylinder of CylinderSpec;
    /// A fuel hose by its class, or described.
    ChosenHose of HoseSpec;
    /// A wire by its gauge, or described.
    ChosenWire of WireSpec;
    /// A battery by its class, or described.
    ChosenBattery of BatterySpec;
    /// A fuse by its rating, or described.
    ChosenFuse of FuseSpec;
    /// A trailer by its class, or described.
    ChosenTrailer of TrailerSpec;
}

things! {
    /// A hydraulic helm: the pump behind the wheel.
    pub struct HelmSpec {
        /// What one turn displaces.
        displacement: Option<Reading<Volume>> = called("displacement of the helm").within(between(cubic_inch(0.2), cubic_inch(10.0))).shown(Style::Displacement),
        /// Pressure at which it lets go.
        relief: Option<Reading<Pressure>> = called("relief pressure of the helm").within(between(psi(100.0), psi(3000.0))),
        /// What it weighs.
        weight: Option<Reading<Mass>> = called("weight of the helm").within(between(lb(1.0), lb(80.0))),
    }
}

things! {
    /// A steering cylinder.
    pub struct CylinderSpec {
        /// Whether its rod comes out at both ends.
        balanced: Option<bool>,
        /// Inside of its barrel.
        bore: Option<Reading<Length>> = called("bore of the steering cylinder").within(between(inch(0.5), inch(4.0))),
        /// Its rod.
        rod: Option<Reading<Length>> = called("rod of the steering cylinder").within(between(inch(0.125), inch(3.0))),
        /// From lock to lock.
        stroke: Option<Reading<Length>> = called("stroke of the steering cylinder").within(between(inch(2.0), inch(20.0))).shown(Style::Plain),
        /// Power of all engines together that it may steer.
        rated_power: Option<Reading<Power>> = called("power that the steering is rated for").within(between(hp(1.0), hp(4000.0))),
        /// Speed to which it may steer them.
        rated_speed: Option<Reading<Velocity>> = called("speed that the steering is rated for").within(between(mph(5.0), mph(150.0))),
        /// What it weighs.
        weight: Option<Reading<Mass>> = called("weight of the steering cylinder").within(between(lb(1.0), lb(80.0))),
    }
}

things! {
    /// A fuel hose.
    pub struct HoseSpec {
        /// Whether it is made for gasoline.
        gasoline: Option<bool>,
        /// Whether it withstands fire for 2 1/2 minutes.
        fire_tested: Option<bool>,
        /// Its inside.
        bore: Option<Reading<Length>> = called("inside of the fuel hose").within(between(inch(0.125), inch(2.0))),
        /// Its outside.
        outside: Option<Reading<Length>> = called("outside of the fuel hose").within(between(inch(0.25), inch(3.0))),
    }
}

things! {
    /// A wire: a gauge of the American wire gauge (1/0 is 0, 4/0 is −3), or a section.
    pub struct WireSpec {
        /// Its gauge: 1/0 is 0, 4/0 is -3.
        gauge: Option<i8> = called("gauge").within(bounds::GAUGES),
        /// Its section, where it has no gauge.
        area: Option<Reading<Area>> = called("section of the wire").within(between(square_mm(0.1), square_mm(500.0))),
        /// What it carries outside engine spaces, with insulation for 60 °C.
        carries_60: Option<Reading<ElectricCurrent>> = called("what the wire carries, 60 °C").within(between(ampere(1.0), ampere(2000.0))),
        /// The same for 75 °C.
        carries_75: Option<Reading<ElectricCurrent>> = called("what the wire carries, 75 °C").within(between(ampere(1.0), ampere(2000.0))),
        /// The same for 105 °C.
        carries_105: Option<Reading<ElectricCurrent>> = called("what the wire carries, 105 °C").within(between(ampere(1.0), ampere(2000.0))),
        /// Across its insulation.
        outside: Option<Reading<Length>> = called("outside of the wire").within(between(inch(0.03125), inch(2.0))).shown(Style::Plain),
    }
}

things! {
    /// A battery.
    pub struct BatterySpec {
        /// Cold cranking current (SAE J537, −18 °C).
        cranking: Option<Reading<ElectricCurrent>> = called("cold cranking current").within(between(ampere(10.0), ampere(3000.0))),
        /// What it holds at the twenty-hour rate.
        capacity: Option<Reading<ElectricCharge>> = called("capacity of the battery").within(between(ampere_hour(1.0), ampere_hour(2000.0))),
        /// What it weighs.
        weight: Option<Reading<Mass>> = called("weight of the battery").within(between(lb(2.0), lb(400.0))),
    }
}

things! {
    /// A fuse or breaker.
    pub struct FuseSpec {
        /// The current that it carries.
        rating: Option<Reading<ElectricCurrent>> = called("rating of the fuse").within(between(ampere(0.5), ampere(1000.0))),
        /// The greatest current that it can break.
        breaks: Option<Reading<ElectricCurrent>> = called("greatest current that the fuse breaks").within(between(ampere(10.0), ampere(100000.0))),
    }
}

things! {
    /// A trailer.
    pub struct TrailerSpec {
        /// How many tyres stand on the road.
        tyres: Option<u8> = called("tyres").within(bounds::PIECES),
        /// Whether its axles have brakes.
        brakes: Option<bool> = called("brakes of the trailer")
            .taken(Stop::Trailer, "at its wheels",
                "whether it has them").spot(585, 400),
        /// What it weighs empty.
        weight: Option<Reading<Mass>> = called("weight of the trailer").within(between(lb(50.0), lb(10000.0))),
        /// The most it may weigh with all on it.
        rated: Option<Reading<Mass>> = called("rating of the trailer with all on it").within(between(lb(200.0), lb(60000.0))),
        /// What its axles may carry together.
        axles: Option<Reading<Mass>> = called("rating of the axles together").within(between(lb(200.0), lb(60000.0))),
        /// What one tyre may carry.
        tyre: Option<Reading<Mass>> = called("load rating of one tyre").within(between(lb(100.0), lb(10000.0))),
        /// The heaviest trailer that its coupling may pull.
        coupling: Option<Reading<Mass>> = called("rating of the coupling").within(between(lb(200.0), lb(60000.0))),
        /// Its own centre forward of the axle.
        centre: Option<Reading<Length>> = called("the trailer's centre forward of the axle").within(between(foot(-10.0), foot(30.0))),
    }
}
