//! Between the wheel and the engines.

use crate::job::bounds;
use crate::quantity::Reading;
use crate::reading::*;
use uom::si::f64::{Angle, ElectricCurrent, ElectricPotential, Length, Power, Pressure, Velocity};

use super::parts::{ChosenCylinder, ChosenHelm, ChosenWire};

things! {
    /// How the wheel turns the engines.
    pub struct SteeringRig {
        /// Cylinders that move together.
        cylinders: Option<u8> = called("cylinders").within(bounds::ENGINES)
            .taken(Stop::Papers, "papers of the steering, or at the engines", "how many move together"),
        /// Across the wheel's rim.
        wheel: Option<Reading<Length>> = called("diameter of the wheel").within(between(inch(8.0), inch(40.0)))
            .taken(Stop::Helm, "at the helm",
                "across its rim").closely(inch(0.5)).spot(318, 62),
        /// The hydraulic helm.
        helm: ChosenHelm = called("the hydraulic helm")
            .taken(Stop::Helm, "at the helm, plate on the pump",
                "what a turn displaces and at what pressure it lets go; or a class of the catalog").spot(318, 62),
        /// The steering cylinder.
        cylinder: ChosenCylinder = called("the steering cylinder that the wheel moves")
            .taken(Stop::Engine, "plate on the cylinder, or its papers",
                "bore, rod, stroke, whether its rod comes out at both ends, power and speed that it is rated for; or a class of the catalog"),
        /// Its lines.
        lines: Option<Lines> = called("the hydraulic lines")
            .taken(Stop::Helm, "helm to stern, and the print on the hose",
                "length one way, inside, rated pressure; whether they were bled till the wheel stands").closely(foot(1.0)).spot(318, 62),
        /// The mechanical cable.
        cable: Option<SteeringCable> = called("the steering cable")
            .taken(Stop::Helm, "helm to stern, and the mark on the cable",
                "marked length, legs from corner to corner with the bends between them, power and speed that it is rated for; free play: how far the wheel turns before the engine does").closely(inch(1.0)).spot(318, 62),
        /// The bar between two engines.
        tie_bar: Option<TieBarLink> = called("length of the tie bar")
            .taken(Stop::Engine, "between the engines' steering arms",
                "pin to pin, engines ahead; the arm from the steering axis to its pin").closely(inch(0.0625)).spot(96, 124),
        /// The electric actuator.
        actuator: Option<Actuator> = called("the electric steering actuator")
            .taken(Stop::Engine, "its papers, and the run of its wire",
                "greatest current, least voltage, length of its wire one way, and the wire"),
    }
}

things! {
    /// Hydraulic lines from the helm aft.
    pub struct Lines {
        /// Whether they were filled and bled till the wheel stands.
        bled: Option<bool>,
        /// One way, with bends and slack.
        length: Option<Reading<Length>> = called("length of a steering line").within(between(foot(1.0), foot(80.0))).in_feet(),
        /// Their inside.
        bore: Option<Reading<Length>> = called("inside of the steering lines").within(between(inch(0.125), inch(1.0))),
        /// Pressure that they are rated for.
        rated: Option<Reading<Pressure>> = called("pressure that the steering lines are rated for").within(between(psi(100.0), psi(6000.0))),
    }
}

things! {
    /// A mechanical steering cable with its helm.
    pub struct SteeringCable {
        /// As it is marked.
        length: Option<Reading<Length>> = called("marked length of the steering cable").within(between(foot(2.0), foot(80.0))).in_feet(),
        /// How far the wheel turns before the engine does.
        free_play: Option<Reading<Angle>> = called("free play at the wheel").within(between(deg(0.0), deg(360.0))),
        /// Power that it may steer.
        rated_power: Option<Reading<Power>> = called("power that the steering cable is rated for").within(between(hp(1.0), hp(1000.0))),
        /// Speed to which it may.
        rated_speed: Option<Reading<Velocity>> = called("speed that the steering cable is rated for").within(between(mph(5.0), mph(150.0))),
        /// From corner to corner, the helm first.
        legs: Vec<LegEntry>,
        /// The bends between them.
        bends: Vec<BendEntry>,
    }
}

things! {
    /// A straight stretch of a cable's way, measured from corner to corner.
    pub struct LegEntry {
        /// Its length.
        length: Option<Reading<Length>> = called("a leg of the cable's way").within(between(inch(1.0), foot(80.0))).in_feet(),
    }
}

things! {
    /// A bend of a cable.
    pub struct BendEntry {
        /// How far it turns.
        angle: Option<Reading<Angle>> = called("a bend of the cable").within(between(deg(1.0), deg(360.0))),
        /// Its radius.
        radius: Option<Reading<Length>> = called("radius of the cable's bend").within(between(inch(1.0), foot(10.0))),
    }
}

things! {
    /// The geometry of the bar between two engines.
    pub struct TieBarLink {
        /// From pin to pin.
        length: Option<Reading<Length>> = called("length of the tie bar, pin to pin").within(between(inch(6.0), foot(15.0))),
        /// From an engine's steering axis to its pin.
        arm: Option<Reading<Length>> = called("steering arm, axis to pin").within(between(inch(2.0), inch(24.0))),
        /// How far each arm is turned inboard, engines ahead; negative outboard.
        splay: Option<Reading<Angle>> = called("how far the steering arms are turned inboard").within(between(deg(-30.0), deg(30.0))),
    }
}

things! {
    /// An electric steering actuator.
    pub struct Actuator {
        /// What it draws at its hardest.
        current: Option<Reading<ElectricCurrent>> = called("current of the steering actuator").within(between(ampere(0.5), ampere(500.0))),
        /// One way from the battery.
        length: Option<Reading<Length>> = called("run to the steering actuator").within(between(foot(1.0), foot(100.0))).in_feet(),
        /// The least voltage with which it works.
        least_voltage: Option<Reading<ElectricPotential>> = called("least voltage of the steering actuator").within(between(volt(5.0), volt(60.0))),
        /// Its wire.
        wire: ChosenWire,
    }
}
