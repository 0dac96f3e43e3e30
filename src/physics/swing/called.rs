//! What the bodies of an engine are called: by that a body is known in its chain, and it is what people read.

/// The cowl, which is drawn as two bodies.
pub const COWL: [&str; 2] = ["powerhead cowl, forward edge", "powerhead cowl, after part"];
/// What stands below the cowl, down to the plate.
pub const LEG: &str = "leg";
/// The plate at the leg's foot, above the propeller.
pub const PLATE: &str = "anti-ventilation plate";
/// The housing about the propeller shaft.
pub const GEARCASE: &str = "gearcase";
/// The disc in which its blades turn.
pub const PROPELLER: &str = "propeller";
/// The fin below the gearcase.
pub const SKEG: &str = "skeg";
/// What it steers in; it tilts and does not steer.
pub const SWIVEL: &str = "swivel bracket";
/// What is bolted to the mounting face, and does not move.
pub const CLAMP: &str = "clamp bracket";
/// What it tilts about, on the clamp bracket.
pub const TUBE: &str = "tilt tube";
