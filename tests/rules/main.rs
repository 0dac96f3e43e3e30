//! What every rule owes, and where each changes its mind.

#[path = "../common/mod.rs"]
mod common;

mod afloat;
mod causes;
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
mod swung;
mod tables;
mod told;
mod trade;
mod transom;
mod trials;
mod walk;
mod weight;
mod worst;
