//! Checks whether an outboard repower belongs on a given boat, and shows its working.
//!
//! Data flows one way: [`quantity`] and [`working`] carry numbers that show themselves, [`written`]
//! reads files, [`reading`] declares what a job can hold, [`job`] and [`catalog`] hold what they say, [`rig`] is the resolved boat, [`physics`]
//! computes, [`case`] puts the rig through the physics, [`rules`] judge, [`report`] tells.
//!
//! # The front door
//! [`front_door::answer`] takes the text of a job and the files that it names, and gives faults, findings, readings and
//! drawings as data, without a disk, a clock, a thread or a terminal. With default features off the crate is that and
//! compiles for `wasm32-unknown-unknown`, where [`front_door::reply`] is exported, JSON in and JSON out.
//!
//! ```
//! use sternknee::catalog::Catalog;
//! use sternknee::front_door::{Question, answer};
//! use sternknee::quantity::Units;
//!
//! let text = r#"(
//!     sitting: study,
//!     boat: (craft: monohull, length: "19.5 ft", transom_width: "7 ft"),
//!     transom: (height: "20 in"),
//!     steering: remote_mechanical,
//! )"#;
//! let catalog = Catalog::built_in()?;
//! let files = Default::default();
//! let answer = answer(&Question { name: "limit.ron", text, files: &files, catalog: &catalog, units: Units::Us });
//! assert!(answer.faults.is_none());
//! let findings = answer.report["findings"].as_array().ok_or("no findings")?;
//! let limit = findings.iter().find(|finding| finding["rule"] == "power/formula-limit").ok_or("no such rule")?;
//! assert_eq!(limit["limit"]["at_most"]["text"], "185 hp");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

// Nothing that a person can write may stop the program.
#![warn(clippy::unwrap_used, clippy::expect_used)]
#![warn(missing_docs, unreachable_pub)]

pub mod case;
pub mod catalog;
#[cfg(feature = "terminal")]
pub mod commands;
#[cfg(feature = "terminal")]
pub mod desk;
#[cfg(target_arch = "wasm32")]
mod engine;
pub mod front_door;
pub mod hands;
pub mod job;
pub mod logged;
pub mod options;
pub mod physics;
pub mod quantity;
pub mod questions;
pub mod reading;
pub mod report;
pub mod rig;
pub mod rules;
pub mod sure;
pub mod working;
pub mod written;
