//! What every rule owes, and where each changes its mind.

#[path = "../common/mod.rs"]
mod common;

mod fit;
mod height;
mod laws;
mod power;
mod rigging;
mod sure;
mod walk;
mod weight;
