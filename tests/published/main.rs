//! Figures that others have printed: one file a source, each check with its clause beside it.

#[path = "../common/mod.rs"]
mod common;

mod abyc_s30;
mod bolt_pattern;
mod cfr_33_183;
mod coast_guard_handbook;
mod fasteners;
mod units_sp811;
