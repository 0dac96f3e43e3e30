//! Checks whether an outboard repower belongs on a given boat, and shows its working.
//!
//! Data flows one way: [`quantity`] and [`working`] carry numbers that show themselves, [`written`]
//! reads files, [`reading`] declares what a job can hold, [`job`] and [`catalog`] hold what they say, [`rig`] is the resolved boat, [`physics`]
//! computes, [`case`] puts the rig through the physics, [`rules`] judge, [`report`] tells.

pub mod case;
pub mod catalog;
pub mod commands;
pub mod job;
pub mod logged;
pub mod physics;
pub mod quantity;
pub mod reading;
pub mod report;
pub mod rig;
pub mod rules;
pub mod working;
pub mod written;
