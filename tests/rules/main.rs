//! What every rule owes, and where each changes its mind.

#[path = "../common/mod.rs"]
mod common;

mod fit;
mod height;
mod laws;
mod money;
mod power;
mod remedies;
mod rigging;
mod running;
mod studies;
mod sure;
mod trade;
mod trials;
mod walk;
mod weight;
