//! Checks whether an outboard repower belongs on a given boat, and shows its working.
//!
//! Data flows one way: [`quantity`] reads what a tape says.
pub mod catalog;
pub mod commands;
pub mod job;
pub mod physics;
pub mod quantity;
pub mod report;
pub mod rig;
pub mod rules;
pub mod working;
pub mod written;
