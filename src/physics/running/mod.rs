//! How she planes: the trim, wetted lengths and drag at which weight, pressure, friction and thrust balance; the trim above
//! which she porpoises; what air, lower units and tabs add.

mod balance;
mod beside;
pub mod hump;
mod limits;
mod porpoising;
pub mod prism;
mod told;
mod water;

pub use balance::{Beside, Bottom, Planing, Running, ThrustLine, displaced};
pub use beside::{
    AIR, AIR_DRAG, Dragged, FRONT_HEIGHT_OF_BEAM, FRONT_OF_BEAM, LOWER_UNIT_DRAG, MOST_DEFLECTION, TAB_DRAG, TAB_LIFT,
    Tabs,
};
pub(in crate::physics) use limits::within;
pub use limits::{LONGEST_WETTED, Outside, SPEEDS, TRIMS};
pub use porpoising::{DEADRISES, Porpoising, ROOTS, critical_degrees, critical_trim, curves, porpoising, taken_at};
pub use told::write;
pub use water::{FRESH, SEA, Water};
