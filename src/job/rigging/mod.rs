//! What is rigged to her: how she is steered, fed, started and charged, shifted, told to the instruments, and carried on
//! the road. All of it may be left out; what is told is judged.

pub mod declare;
mod electrical;
mod controls;
mod fuel;
mod parts;
mod steering;
mod towed;

pub use controls::{
    Backbone, ControlCable, Controls, CutOff, Device, Gauge, Kept, Network, OldPart, Passing, Reach, Speaks, Tube,
};
pub use declare::{Visited, Visitor, Walk};
pub use electrical::{Anodes, BatteryEntry, Circuit, Does, Electrical, HouseLoad, Insulation, Parallel, StarterCable};
pub use fuel::{Filter, FuelLine, FuelRig};
pub use parts::{BatterySpec, Chosen, CylinderSpec, FuseSpec, HelmSpec, HoseSpec, TrailerSpec, WireSpec};
pub use steering::{Actuator, BendEntry, LegEntry, Lines, SteeringCable, SteeringRig, TieBarLink};
pub use towed::{Towed, TowedWeight};

use declare::rigged;

rigged! {
    /// What is rigged to her.
    Rigging
    read {}
    have {
        /// What of the old rigging stays.
        kept: Vec<Kept>;
    }
    hold {
        /// How the wheel turns the engines.
        steering: Option<SteeringRig>;
        /// How they are fed.
        fuel: Option<FuelRig>;
        /// How they are started, and what else runs on their current.
        electrical: Option<Electrical>;
        /// Levers, switches, gauges.
        controls: Option<Controls>;
        /// Tubes that cables, hoses and wires pass through.
        tubes: Vec<Tube>;
        /// The instruments' network.
        network: Option<Network>;
        /// What she weighs on the road.
        towed: Option<Towed>;
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
        let controls = controls
            .map(|(i, cable)| (format!("rigging.controls.cables[{i}]"), (&*cable.legs, &*cable.bends)));
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
