//! Checks against published tables, closed forms and worked examples: one file a source.

mod actuator_disc;
mod archimedes;
mod coast_guard_float;
mod floating_bodies;
mod floating_properties;
mod floating_rest;
mod iso_898_1;
mod khurmi_brackets;
mod lofting;
mod mesh_checks;
mod plate_errors;
mod plate_theory;
mod shapes;
mod shigley_bolts;
mod ship_stability;
mod stl_files;
mod swing_bad_input;
mod swing_closed_forms;
mod swing_laws;
mod swing_mounting_sheet;
mod timoshenko_plates;
