//! Which of these: engines, brackets, heights and holes tried on a boat, each judged as if a job had been written for it.
//!
//! A judgement is a pure function of a rig; so an option is a changed job, judged. Options of one transom share what was factored of
//! it. Nothing here knows a disk, a clock or a thread: who works is handed in.

mod change;
mod compare;
mod entry;
mod hang;
mod needed;
mod offer;
mod order;
mod prices;
mod search;
mod tried;
mod yard;

pub use change::{Near, nearly};
pub use compare::{Compared, FIGURES, compare};
pub use hang::Hang;
pub use needed::{Moved, Needed, PLACES, needed, questions};
pub use offer::Offer;
pub use order::{By, firmness, percent};
pub use prices::Prices;
pub use search::{Found, Work, search};
pub use tried::{SCREENS, Said, Screen, Tried, all_said};
pub use yard::Yard;
