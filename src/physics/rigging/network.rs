//! The instruments' network: load in equivalents, lengths, and the voltage along the backbone. Source of the limits:
//! NMEA 2000 and IEC 61162-3, values from memory.

use uom::si::f64::{ElectricCurrent, ElectricPotential, Length};

use crate::job::rigging::Backbone;
use crate::quantity::Dimensioned;
use crate::working::{Sheet, Term};

/// Current of one load equivalent, A.
pub const EQUIVALENT_A: f64 = 0.05;
/// Least supply at a device, V.
pub const LEAST_V: f64 = 9.0;
/// Longest drop, m.
pub const DROP_M: f64 = 6.0;
/// Most that all drops come to together, m.
pub const DROPS_M: f64 = 78.0;
/// Terminators, one at each end of the backbone.
pub const TERMINATORS: u8 = 2;
/// Devices on one backbone.
pub const DEVICES: usize = 50;
/// Supply that is reckoned with: a battery that starts an engine. Common practice, no source, V.
pub const SUPPLY_V: f64 = 12.0;

/// Greatest length of a backbone of this cable.
pub fn longest(cable: Backbone) -> Length {
    Length::from_si(match cable {
        Backbone::Light | Backbone::Mid => 100.0,
        Backbone::Heavy => 200.0,
    })
}

/// Gauge of its two power wires. Values from memory.
pub fn gauge(cable: Backbone) -> i8 {
    match cable {
        Backbone::Light => 22,
        Backbone::Mid => 18,
        Backbone::Heavy => 16,
    }
}

/// A device on the backbone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// Along the backbone from its first end, m.
    pub at: f64,
    /// What it draws, A.
    pub current: f64,
    /// Its drop cable, m.
    pub drop: f64,
}

/// Current of so many load equivalents.
pub fn current(equivalents: u8) -> ElectricCurrent {
    ElectricCurrent::from_si(f64::from(equivalents) * EQUIVALENT_A)
}

/// Voltage lost between where power enters and each device, V: in each stretch of the backbone its resistance there and
/// back times what flows beyond it, and in the drop what the device draws. `per_metre` is Ω of one wire; drops are light.
/// A plain numeric kernel.
pub fn losses(power_at: f64, loads: &[Load], per_metre: f64, drop_per_metre: f64) -> Vec<f64> {
    loads
        .iter()
        .map(|device| {
            let shared: f64 = loads
                .iter()
                .map(|other| {
                    // The stretch that both currents flow through, on the device's side of the supply.
                    let (here, there) = (device.at - power_at, other.at - power_at);
                    let same_side = here.signum() == there.signum();
                    if same_side { here.abs().min(there.abs()) * other.current } else { 0.0 }
                })
                .sum();
            2.0 * per_metre * shared + 2.0 * drop_per_metre * device.drop * device.current
        })
        .collect()
}

/// Voltage at the device that is worst off.
pub fn at_device(sheet: &mut Sheet, supply: ElectricPotential, lost: ElectricPotential) -> Term<ElectricPotential> {
    sheet.set("V", "at the device worst off", Term::new("Vs", supply) - Term::new("ΔV", lost))
}
