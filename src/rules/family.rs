//! The families of rules.

/// Declares the families: each with the first part of its rules' ids, and what a report calls it.
macro_rules! families {
    ($($(#[doc = $about:literal])+ $family:ident = $word:literal, $title:literal;)+) => {
        /// What a rule is about.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Family {
            $($(#[doc = $about])+ $family),+
        }

        impl Family {
            /// All of them, in the order of the report.
            pub const ALL: &[Family] = &[$(Family::$family),+];

            /// The first part of its rules' ids.
            pub fn word(self) -> &'static str {
                match self {
                    $(Family::$family => $word),+
                }
            }

            /// What a report calls what they are about.
            pub fn title(self) -> &'static str {
                match self {
                    $(Family::$family => $title),+
                }
            }
        }
    };
}

families! {
    /// Whether she may carry the power, and has enough of it.
    Power = "power", "Power";
    /// What may hang on the stern, and what she may carry.
    Weight = "weight", "Weight on the stern";
    /// Whether the shaft suits the transom, and where the anti-ventilation plate comes to stand.
    Height = "height", "Height of the engine";
    /// Whether the engines can be bolted there, and have room.
    Fit = "fit", "Bolts and width";
    /// How she floats with what hangs on her, in every loading.
    Stern = "stern", "How she floats";
    /// What the engines strike, tilting and steering.
    Swing = "swing", "Room to tilt and turn";
    /// Whether the transom, and what holds the engines to it, bears what they bring.
    Strength = "strength", "Strength of the transom";
    /// From the wheel to the engines.
    Steering = "steering", "Steering";
    /// From the tanks to the engines.
    Fuel = "fuel", "Fuel";
    /// Starting, wires, fuses, a day's balance, anodes.
    Electrical = "electrical", "Batteries and wires";
    /// Levers, cables, switches, gauges, tubes, and what stays of the old.
    Controls = "controls", "Controls";
    /// The instruments' backbone.
    Network = "network", "Network";
    /// What she weighs on the road, and where.
    Trailer = "trailer", "Trailer";
    /// How she planes with the new engines, and whether engines and propellers suit her.
    Running = "running", "How she runs";
    /// Whether the runs can be believed, whether before and after can be compared, and what was promised.
    Trial = "trial", "Trial";
    /// What it costs and what it saves; the owner decides.
    Worth = "worth", "Costs";
}
