//! Between the wheel and the engines.

use uom::si::f64::{Angle, ElectricCurrent, ElectricPotential, Length, Power, Pressure, Velocity};

use super::declare::rigged;
use super::parts::{Chosen, CylinderSpec, HelmSpec, WireSpec};

rigged! {
    /// How the wheel turns the engines.
    SteeringRig
    read {
        /// Across the wheel's rim.
        wheel: Length = "diameter of the wheel", Tape, "8 in", "40 in";
    }
    have {
        /// Cylinders that move together.
        cylinders: Option<u8>;
    }
    hold {
        /// The hydraulic helm.
        helm: Chosen<HelmSpec>;
        /// The steering cylinder.
        cylinder: Chosen<CylinderSpec>;
        /// Its lines.
        lines: Option<Lines>;
        /// The mechanical cable.
        cable: Option<SteeringCable>;
        /// The bar between two engines.
        tie_bar: Option<TieBarLink>;
        /// The electric actuator.
        actuator: Option<Actuator>;
    }
}

rigged! {
    /// Hydraulic lines from the helm aft.
    Lines
    read {
        /// One way, with bends and slack.
        length: Length = "length of a steering line", FeetInches, "1 ft", "80 ft";
        /// Their inside.
        bore: Length = "inside of the steering lines", Plain, "1/8 in", "1 in";
        /// Pressure that they are rated for.
        rated: Pressure = "pressure that the steering lines are rated for", Plain, "100 psi", "6,000 psi";
    }
    have {
        /// Whether they were filled and bled till the wheel stands.
        bled: Option<bool>;
    }
    hold {}
}

rigged! {
    /// A mechanical steering cable with its helm.
    SteeringCable
    read {
        /// As it is marked.
        length: Length = "marked length of the steering cable", FeetInches, "2 ft", "80 ft";
        /// How far the wheel turns before the engine does.
        free_play: Angle = "free play at the wheel", Plain, "0 deg", "360 deg";
        /// Power that it may steer.
        rated_power: Power = "power that the steering cable is rated for", Plain, "1 hp", "1,000 hp";
        /// Speed to which it may.
        rated_speed: Velocity = "speed that the steering cable is rated for", Plain, "5 mph", "150 mph";
    }
    have {}
    hold {
        /// From corner to corner, the helm first.
        legs: Vec<LegEntry>;
        /// The bends between them.
        bends: Vec<BendEntry>;
    }
}

rigged! {
    /// A straight stretch of a cable's way, measured from corner to corner.
    LegEntry
    read {
        /// Its length.
        length: Length = "a leg of the cable's way", FeetInches, "1 in", "80 ft";
    }
    have {}
    hold {}
}

rigged! {
    /// A bend of a cable.
    BendEntry
    read {
        /// How far it turns.
        angle: Angle = "a bend of the cable", Plain, "1 deg", "360 deg";
        /// Its radius.
        radius: Length = "radius of the cable's bend", Tape, "1 in", "10 ft";
    }
    have {}
    hold {}
}

rigged! {
    /// The geometry of the bar between two engines.
    TieBarLink
    read {
        /// From pin to pin.
        length: Length = "length of the tie bar, pin to pin", Tape, "6 in", "15 ft";
        /// From an engine's steering axis to its pin.
        arm: Length = "steering arm, axis to pin", Tape, "2 in", "24 in";
        /// How far each arm is turned inboard, engines ahead; negative outboard.
        splay: Angle = "how far the steering arms are turned inboard", Plain, "-30 deg", "30 deg";
    }
    have {}
    hold {}
}

rigged! {
    /// An electric steering actuator.
    Actuator
    read {
        /// What it draws at its hardest.
        current: ElectricCurrent = "current of the steering actuator", Plain, "0.5 A", "500 A";
        /// One way from the battery.
        length: Length = "run to the steering actuator", FeetInches, "1 ft", "100 ft";
        /// The least voltage with which it works.
        least_voltage: ElectricPotential = "least voltage of the steering actuator", Plain, "5 V", "60 V";
    }
    have {}
    hold {
        /// Its wire.
        wire: Chosen<WireSpec>;
    }
}
