//! Checks against published tables, closed forms and worked examples: one file a source.

mod actuator_disc;
mod iso_898_1;
mod khurmi_brackets;
mod plate_errors;
mod plate_theory;
mod shigley_bolts;
mod timoshenko_plates;
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
