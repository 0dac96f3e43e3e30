//! The kinds of quantity that appear on a job, and the bridge from `uom`'s types to them.

use uom::si::f64::{
    Acceleration, Angle, AngularVelocity, Area, DiffusionCoefficient, ElectricCharge, ElectricCurrent,
    ElectricPotential, ElectricalResistance, ElectricalResistivity, Energy, Force, Length, LinearMassDensity, Mass,
    MassDensity, Power, Pressure, Ratio, TemperatureInterval, Time, Velocity, Volume, VolumeRate,
};

use uom::typenum::{N2, Z0};

/// A moment of force, in N·m. `uom` gives force times length the type of an energy; on a boat it
/// is a moment, and is shown in lbf·ft.
pub type Moment = Energy;

/// A temperature from absolute zero, in kelvin. `uom` does no arithmetic with its own; formulas here take the number of
/// degrees, as the books do.
pub type Temperature = TemperatureInterval;

/// A kinematic viscosity. `uom` gives its own a kind apart, which no product has.
pub type Viscosity = DiffusionCoefficient;
/// A distance that a volume of fuel takes her, in m/m³. `uom` has no name for it.
pub type DistancePerVolume = uom::si::Quantity<uom::si::ISQ<N2, Z0, Z0, Z0, Z0, Z0, Z0>, uom::si::SI<f64>, f64>;

/// What sort of quantity a number is: decides which units it may be written in and how it is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// A length, m.
    Length,
    /// A mass, kg: what the trade calls a weight.
    Mass,
    /// A force, N.
    Force,
    /// A power, W.
    Power,
    /// An angle, rad.
    Angle,
    /// A volume, m³.
    Volume,
    /// An area, m².
    Area,
    /// A speed, m/s.
    Speed,
    /// A rotation rate, rad/s; written and shown in rpm.
    RotationRate,
    /// A pressure, a stress or a modulus of elasticity, Pa.
    Pressure,
    /// A moment of force, N·m.
    Moment,
    /// An electric current, A.
    Current,
    /// A voltage, V.
    Voltage,
    /// A mass per volume, kg/m³.
    Density,
    /// A mass per length, kg/m.
    MassPerLength,
    /// A volume per time, m³/s.
    FlowRate,
    /// An acceleration, m/s².
    Acceleration,
    /// An electric charge, A·s; written and shown in Ah.
    Charge,
    /// An electric resistance, Ω.
    Resistance,
    /// An electric resistivity, Ω·m.
    Resistivity,
    /// A kinematic viscosity, m²/s.
    Viscosity,
    /// A temperature from absolute zero, K.
    Temperature,
    /// A time, s.
    Duration,
    /// A distance that a volume of fuel takes her, m/m³.
    DistancePerVolume,
    /// A plain number or a percentage, as a part of one.
    Ratio,
}

impl Kind {
    /// Every kind, for tables and tests.
    pub const ALL: [Kind; 25] = [
        Kind::Length,
        Kind::Mass,
        Kind::Force,
        Kind::Power,
        Kind::Angle,
        Kind::Volume,
        Kind::Area,
        Kind::Speed,
        Kind::RotationRate,
        Kind::Pressure,
        Kind::Moment,
        Kind::Current,
        Kind::Voltage,
        Kind::Density,
        Kind::MassPerLength,
        Kind::FlowRate,
        Kind::Acceleration,
        Kind::Charge,
        Kind::Resistance,
        Kind::Resistivity,
        Kind::Viscosity,
        Kind::Temperature,
        Kind::Duration,
        Kind::DistancePerVolume,
        Kind::Ratio,
    ];

    /// The kind with its article, as an error names it: "a length".
    pub fn name(self) -> &'static str {
        match self {
            Kind::Length => "a length",
            Kind::Mass => "a weight (mass)",
            Kind::Force => "a force",
            Kind::Power => "a power",
            Kind::Angle => "an angle",
            Kind::Volume => "a volume",
            Kind::Area => "an area",
            Kind::Speed => "a speed",
            Kind::RotationRate => "a rotation rate",
            Kind::Pressure => "a pressure",
            Kind::Moment => "a moment of force",
            Kind::Current => "a current",
            Kind::Voltage => "a voltage",
            Kind::Density => "a density",
            Kind::MassPerLength => "a mass per length",
            Kind::FlowRate => "a flow rate",
            Kind::Acceleration => "an acceleration",
            Kind::Charge => "an electric charge",
            Kind::Resistance => "an electric resistance",
            Kind::Resistivity => "an electric resistivity",
            Kind::Viscosity => "a kinematic viscosity",
            Kind::Temperature => "a temperature",
            Kind::Duration => "a time",
            Kind::DistancePerVolume => "a distance per volume of fuel",
            Kind::Ratio => "a plain number or a percentage",
        }
    }

    /// The kind in a word, for another program.
    pub fn word(self) -> &'static str {
        match self {
            Kind::Length => "length",
            Kind::Mass => "mass",
            Kind::Force => "force",
            Kind::Power => "power",
            Kind::Angle => "angle",
            Kind::Volume => "volume",
            Kind::Area => "area",
            Kind::Speed => "speed",
            Kind::RotationRate => "rotation rate",
            Kind::Pressure => "pressure",
            Kind::Moment => "moment",
            Kind::Current => "current",
            Kind::Voltage => "voltage",
            Kind::Density => "density",
            Kind::MassPerLength => "mass per length",
            Kind::FlowRate => "flow rate",
            Kind::Acceleration => "acceleration",
            Kind::Charge => "charge",
            Kind::Resistance => "resistance",
            Kind::Resistivity => "resistivity",
            Kind::Viscosity => "kinematic viscosity",
            Kind::Temperature => "temperature",
            Kind::Duration => "time",
            Kind::DistancePerVolume => "distance per volume",
            Kind::Ratio => "ratio",
        }
    }

    /// Something that would have been read, for the end of an error.
    pub fn example(self) -> &'static str {
        match self {
            Kind::Length => "12-7/8 in, 9 ft 8 in or 654 mm",
            Kind::Mass => "1,250 lb or 567 kg",
            Kind::Force => "450 lbf or 2 kN",
            Kind::Power => "250 hp or 186 kW",
            Kind::Angle => "14 deg",
            Kind::Volume => "300 gal or 1,136 L",
            Kind::Area => "12 ft² or 1.1 m²",
            Kind::Speed => "35 mph or 30 kn",
            Kind::RotationRate => "5,500 rpm",
            Kind::Pressure => "1,200 psi or 8.3 MPa",
            Kind::Moment => "40 lbf·ft or 54 N·m",
            Kind::Current => "60 A",
            Kind::Voltage => "12.6 V",
            Kind::Density => "64 lb/ft³ or 1,025 kg/m³",
            Kind::MassPerLength => "900 lb/in or 16,000 kg/m",
            Kind::FlowRate => "14 gal/h or 53 L/h",
            Kind::Acceleration => "9.81 m/s² or 1 gn",
            Kind::Charge => "90 Ah",
            Kind::Resistance => "2.5 mΩ",
            Kind::Resistivity => "17.24 nΩ·m",
            Kind::Viscosity => "0.7 mm²/s",
            Kind::Temperature => "75 °F or 24 °C",
            Kind::Duration => "6 h, 45 min or 6.5 s",
            Kind::DistancePerVolume => "1.1 mi/gal or 0.5 km/L",
            Kind::Ratio => "1.85 or 5 %",
        }
    }
}

/// Relative error that units and a handful of operations may leave in a value: far above what binary
/// rounding does, far below any tape or scale.
const ROUNDING: f64 = 1e-9;

/// A `uom` quantity that can be read from a job and shown to a person.
pub trait Dimensioned: Copy {
    /// The kind it is written and shown as.
    const KIND: Kind;

    /// The quantity of this many coherent SI units (m, kg, N, W, rad, m³, Pa…).
    fn from_si(value: f64) -> Self;

    /// Its value in the coherent SI unit.
    fn si(self) -> f64;

    /// Whether it is greater than a limit by more than the arithmetic may have rounded: four engines
    /// of exactly their share of a rating do not exceed it, whatever the last bit of their sum says.
    fn exceeds(self, limit: Self) -> bool {
        let (value, limit) = (self.si(), limit.si());
        value - limit > ROUNDING * value.abs().max(limit.abs())
    }
}

macro_rules! dimensioned {
    ($($quantity:ident => $kind:ident),+ $(,)?) => {$(
        impl Dimensioned for $quantity {
            const KIND: Kind = Kind::$kind;

            fn from_si(value: f64) -> Self {
                Self { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value }
            }

            fn si(self) -> f64 {
                self.value
            }
        }
    )+};
}

dimensioned!(
    Length => Length,
    Mass => Mass,
    Force => Force,
    Power => Power,
    Angle => Angle,
    Volume => Volume,
    Area => Area,
    Velocity => Speed,
    AngularVelocity => RotationRate,
    Pressure => Pressure,
    Energy => Moment,
    ElectricCurrent => Current,
    ElectricPotential => Voltage,
    MassDensity => Density,
    LinearMassDensity => MassPerLength,
    VolumeRate => FlowRate,
    Acceleration => Acceleration,
    ElectricCharge => Charge,
    ElectricalResistance => Resistance,
    ElectricalResistivity => Resistivity,
    DiffusionCoefficient => Viscosity,
    TemperatureInterval => Temperature,
    Time => Duration,
    DistancePerVolume => DistancePerVolume,
    Ratio => Ratio,
);
