//! Checks against books, standards and closed forms: one file a source.

mod archimedes;
mod coast_guard_float;
mod floating_bodies;
mod floating_properties;
mod floating_rest;
mod lofting;
mod mesh_checks;
mod shapes;
mod ship_stability;
mod stl_files;
mod swing_bad_input;
mod swing_closed_forms;
mod swing_laws;
mod swing_mounting_sheet;
