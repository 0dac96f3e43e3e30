//! The families of rules.

/// Declares the families: a line each, with the first part of its rules' ids, and what a report calls it.
macro_rules! families {
    ($($family:ident = $word:literal, $title:literal;)+) => {
        /// What a rule is about.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Family {
            $($family),+
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
    Power = "power", "Power";
    Weight = "weight", "Weight on the stern";
    Height = "height", "Height of the engine";
    Fit = "fit", "Bolts and width";
    Stern = "stern", "How she floats";
    Swing = "swing", "Room to tilt and turn";
    Strength = "strength", "Strength of the transom";
    Steering = "steering", "Steering";
    Fuel = "fuel", "Fuel";
    Electrical = "electrical", "Batteries and wires";
    Controls = "controls", "Controls";
    Network = "network", "Network";
    Trailer = "trailer", "Trailer";
    Running = "running", "How she runs";
    Trial = "trial", "Trial";
    Worth = "worth", "Costs";
}
