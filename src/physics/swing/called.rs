//! What the bodies of an engine are called: by that a body is known in its chain, and it is what people read.

/// The cowl, which is drawn as two bodies.
pub const COWL: [&str; 2] = ["powerhead cowl, forward edge", "powerhead cowl, after part"];
/// What stands below the cowl, from the top down.
pub const LEG: &str = "leg";
pub const PLATE: &str = "anti-ventilation plate";
pub const GEARCASE: &str = "gearcase";
pub const PROPELLER: &str = "propeller";
pub const SKEG: &str = "skeg";
/// What it turns on.
pub const SWIVEL: &str = "swivel bracket";
pub const CLAMP: &str = "clamp bracket";
pub const TUBE: &str = "tilt tube";
