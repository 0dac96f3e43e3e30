//! Levers, switches, gauges, tubes, and the instruments' network.

use crate::job::bounds;
use crate::quantity::Reading;
use crate::quantity::Style;
use crate::reading::*;
use uom::si::f64::Length;

use super::steering::{BendEntry, LegEntry};

words! {
    /// How throttle and shift get to an engine.
    pub enum Reach {
        /// By push-pull cables.
        Cables = "cables";
        /// By wire.
        Electronic = "electronic";
        /// Both sit on the tiller.
        Tiller = "tiller";
    }
}

words! {
    /// The switch that stops the engine when the operator is thrown from the helm.
    pub enum CutOff {
        /// There is none.
        None = "none";
        /// The switch is there, its link is not.
        SwitchAlone = "switch_alone", "switch without its link";
        /// Switch and link: a lanyard or a wireless fob.
        WithLink = "with_link", "switch and link";
    }
}

words! {
    /// The cable of a network's backbone.
    pub enum Backbone {
        /// Light, as drops are.
        Light = "light";
        Mid = "mid";
        Heavy = "heavy";
    }
}

words! {
    /// What an engine or a gauge understands.
    pub enum Speaks {
        Analogue = "analogue";
        Digital = "digital";
        Both = "both";
    }
}

impl Speaks {
    /// Whether one understands the other.
    pub fn understands(self, other: Speaks) -> bool {
        self == other || self == Speaks::Both || other == Speaks::Both
    }
}

words! {
    /// A sort of thing that comes off with old engines, or stays.
    pub enum OldPart {
        OilTank = "oil_tank", "oil tank";
        OilLine = "oil_line", "oil line";
        SteeringCable = "steering_cable", "steering cable";
        SteeringHelm = "steering_helm", "steering helm";
        SteeringCylinder = "steering_cylinder", "steering cylinder";
        ControlCable = "control_cable", "control cable";
        ControlBox = "control_box", "control box";
        TieBar = "tie_bar", "tie bar";
        Gauge = "gauge";
        KeySwitch = "key_switch", "key switch";
        FuelLine = "fuel_line", "fuel line";
        Harness = "harness", "engine harness";
        Battery = "battery";
    }
}

things! {
    /// Something of the old rigging that stays.
    pub struct Kept [whole] {
        /// What sort of thing.
        part: OldPart,
        /// How old it is, in years.
        years: Option<f64> = called("age of what stays").within(bounds::YEARS),
    }
}

things! {
    /// Levers, switches, gauges.
    pub struct Controls {
        /// Helm stations.
        stations: Option<u8> = called("stations").within(bounds::ENGINES)
            .taken(Stop::Papers, "papers of the controls, or aboard", "how many places she is steered from"),
        /// How the levers reach the engines.
        levers: Option<Reach> = called("how the levers reach the engines")
            .taken(Stop::Helm, "at the helm, and the offer",
                "`levers`: one of `cables`, `electronic`, `tiller`; `engines_take`: what the new engines take").spot(340, 140),
        /// What the new engines take.
        engines_take: Option<Reach> = called("what throttle and shift the new engines take")
            .taken(Stop::Engine, "the engine's papers",
                "one of cables, electronic, tiller"),
        /// What the new engines tell their gauges.
        engines_speak: Option<Speaks> = called("what the new engines tell their gauges")
            .taken(Stop::Engine, "the engine's papers",
                "one of analogue, digital, both"),
        /// The switch that stops them when the operator is thrown.
        cut_off: Option<CutOff> = called("engine cut-off switch and its link")
            .taken(Stop::Helm, "at the helm, or on the tiller",
                "one of `none`, `switch_alone`, `with_link`").spot(340, 140),
        /// Whether they can be started in gear: no, where the control keeps them from it.
        starts_in_gear: Option<bool> = called("whether an engine starts in gear")
            .taken(Stop::Helm, "at the helm, propeller off or clear of everybody",
                "lever in gear, turn the key for a moment: true where it cranks").spot(340, 140),
        /// The gauges that stay or are new.
        gauges: Vec<Gauge> = called("gauges, and what they understand")
            .taken(Stop::Helm, "at the helm",
                "each that stays: analogue, digital or both").spot(340, 140),
        /// Throttle and shift cables.
        cables: Vec<ControlCable> = called("the control cables")
            .taken(Stop::Helm, "lever to engine, and the mark on the cable",
                "marked length, legs from corner to corner with the bends between them, age").closely(inch(1.0)).spot(340, 140),
    }
}

things! {
    /// A gauge at the helm.
    pub struct Gauge [whole] {
        /// What it shows.
        shows: String = label(),
        /// What it understands.
        reads: Speaks,
    }
}

things! {
    /// A push-pull cable for throttle or shift.
    pub struct ControlCable {
        /// What it moves.
        name: Option<String> = label(),
        /// How many run the same way.
        count: Option<u8> = called("count").within(bounds::PIECES),
        /// How old it is, in years.
        years: Option<f64> = called("years").within(bounds::YEARS),
        /// As it is marked.
        length: Option<Reading<Length>> = called("marked length of the control cable").within(between(foot(2.0), foot(100.0))).in_feet(),
        /// From corner to corner, the lever first.
        legs: Vec<LegEntry>,
        /// The bends between them.
        bends: Vec<BendEntry>,
    }
}

things! {
    /// A tube that cables, hoses and wires pass through.
    pub struct Tube {
        /// What it is called.
        name: Option<String> = label(),
        /// Whether its ends are smooth or bushed.
        smooth_ends: Option<bool>,
        /// Whether water runs out of it.
        drains: Option<bool>,
        /// Its inside.
        inside: Option<Reading<Length>> = called("inside of the rigging tube").within(between(inch(0.5), inch(12.0))),
        /// Radius of its sharpest bend.
        bend: Option<Reading<Length>> = called("radius of the rigging tube's sharpest bend").within(between(inch(1.0), foot(20.0))),
        /// What passes through.
        through: Vec<Passing>,
    }
}

things! {
    /// Something that passes through a tube.
    pub struct Passing {
        /// What it is.
        what: Option<String> = label(),
        /// How many of them; one where left out.
        count: Option<u8> = called("count").within(bounds::PIECES),
        /// Across it; across its end, where that must pass too.
        diameter: Option<Reading<Length>> = called("across what passes through the tube").within(between(inch(0.03125), inch(8.0))).shown(Style::Plain),
    }
}

things! {
    /// The instruments' network.
    pub struct Network {
        /// Its cable.
        cable: Option<Backbone>,
        /// Terminators on it.
        terminators: Option<u8> = called("terminators of the network").within(bounds::PIECES)
            .taken(Stop::Helm, "at both ends of the backbone",
                "count them").spot(288, 116),
        /// Whether the new engines reach it: by themselves or through a gateway each.
        engines_reach_it: Option<bool> = called("whether the engines reach the network")
            .taken(Stop::Engine, "the engine's papers",
                "by themselves, or through a gateway each"),
        /// End to end.
        length: Option<Reading<Length>> = called("length of the network's backbone").within(between(foot(1.0), foot(1000.0))).in_feet()
            .taken(Stop::Helm, "along its run",
                "end to end").closely(foot(1.0)).spot(288, 116),
        /// Where power enters, from its first end.
        power_at: Option<Reading<Length>> = called("where power enters the backbone").within(between(foot(0.0), foot(1000.0))).in_feet(),
        /// What hangs on it.
        devices: Vec<Device> = called("load of the network's devices")
            .taken(Stop::Helm, "plate on each device",
                "its load equivalents (50 mA each), where it joins the backbone, and the drop's length").closely(foot(1.0)).spot(288, 116),
    }
}

things! {
    /// A device on the network.
    pub struct Device {
        /// What it is.
        name: Option<String> = label(),
        /// Its load equivalents, as its plate says: 50 mA each.
        equivalents: Option<u8> = called("equivalents").within(bounds::EQUIVALENTS),
        /// From the backbone's first end.
        at: Option<Reading<Length>> = called("where the device joins the backbone").within(between(foot(0.0), foot(1000.0))).in_feet(),
        /// Its drop cable.
        drop: Option<Reading<Length>> = called("length of the drop cable").within(between(foot(0.0), foot(100.0))).in_feet(),
    }
}
