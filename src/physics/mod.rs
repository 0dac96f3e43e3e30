//! The mechanics of a boat and her engines: pure functions of plain values, without verdicts, each of
//! which can be held against the book that it is from.

pub mod capacity;
pub mod engine;
pub mod fit;
pub mod float;
pub mod height;
pub mod matched;
pub mod power;
pub mod propeller;
pub mod rigging;
pub mod root;
pub mod running;
pub mod strength;
pub mod swing;
pub mod trial;
pub mod uncertainty;
pub mod weight;
pub mod worth;
