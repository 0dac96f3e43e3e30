//! What is rigged to her: how she is steered, fed, started and charged, shifted, told to the instruments, and carried on
//! the road. All of it may be left out; what is told is judged.

mod controls;
mod electrical;
mod fuel;
mod parts;
mod steering;
mod towed;

pub use controls::{
    Backbone, ControlCable, Controls, CutOff, Device, Gauge, Kept, Network, OldPart, Passing, Reach, Speaks, Tube,
};
pub use electrical::{Anodes, BatteryEntry, Circuit, Does, Electrical, HouseLoad, Insulation, Parallel, StarterCable};
pub use fuel::{Filter, FuelLine, FuelRig};
pub use parts::{
    BatterySpec, Chosen, ChosenBattery, ChosenCylinder, ChosenFuse, ChosenHelm, ChosenHose, ChosenTrailer, ChosenWire,
    CylinderSpec, FuseSpec, HelmSpec, HoseSpec, TrailerSpec, WireSpec,
};
pub use steering::{Actuator, BendEntry, LegEntry, Lines, SteeringCable, SteeringRig, TieBarLink};
pub use towed::{Towed, TowedWeight};

use crate::reading::*;

things! {
    /// What is rigged to her.
    pub struct Rigging {
        /// What of the old rigging stays.
        kept: Vec<Kept> = called("what of the old rigging stays")
            .taken(Stop::Items, "on the boat: helm, well and bilge",
                "what stays, with its age; what comes off stands in `comes_off` with its part"),
        /// How the wheel turns the engines.
        steering: Option<SteeringRig> = called("steering"),
        /// How they are fed.
        fuel: Option<FuelRig> = called("fuel"),
        /// How they are started, and what else runs on their current.
        electrical: Option<Electrical> = called("current"),
        /// Levers, switches, gauges.
        controls: Option<Controls> = called("controls"),
        /// Tubes that cables, hoses and wires pass through.
        tubes: Vec<Tube> = called("what passes through the rigging tube")
            .taken(Stop::Aboard, "at both ends of the tube",
                "its inside, its sharpest bend, and the diameter of all that passes, ends and plugs with it").closely(inch(0.0625)).spot(214, 120),
        /// The instruments' network.
        network: Option<Network> = called("the instruments' backbone")
            .taken(Stop::Helm, "along its run",
                "cable, length end to end, terminators, where power enters").closely(foot(1.0)).spot(288, 116),
        /// What she weighs on the road.
        towed: Option<Towed> = called("on the road"),
    }
}

/// The legs and bends of a cable's way.
pub type Bends<'a> = (&'a [LegEntry], &'a [BendEntry]);

impl Rigging {
    /// Ways of cables, each with its place in the job.
    pub fn ways(&self) -> Vec<(String, Bends<'_>)> {
        let steering = self.steering.as_ref().and_then(|steering| steering.cable.as_ref());
        let steering = steering.map(|cable| ("rigging.steering.cable".to_owned(), (&*cable.legs, &*cable.bends)));
        let controls = self.controls.iter().flat_map(|controls| &controls.cables).enumerate();
        let controls =
            controls.map(|(i, cable)| (format!("rigging.controls.cables[{i}]"), (&*cable.legs, &*cable.bends)));
        steering.into_iter().chain(controls).collect()
    }

    /// Whether anything of it was told.
    pub fn is_told(&self) -> bool {
        self.steering.is_some()
            || self.fuel.is_some()
            || self.electrical.is_some()
            || self.controls.is_some()
            || self.network.is_some()
            || self.towed.is_some()
            || !self.tubes.is_empty()
            || !self.kept.is_empty()
    }
}
