//! Figures that others have printed: one file a source, each check with its clause beside it.

#[path = "../common/mod.rs"]
mod common;

mod abyc_s30;
mod actuator_disc;
mod archimedes;
mod astm_b258;
mod b_series;
mod beds;
mod bolt_pattern;
mod cfr_33_183;
mod coast_guard_float;
mod coast_guard_handbook;
mod epa_ap_42;
mod fasteners;
mod floating_bodies;
mod floating_properties;
mod floating_rest;
mod iso_898_1;
mod khurmi_brackets;
mod lofting;
mod mean_moments;
mod mesh_checks;
mod moody;
mod navier;
mod navier_patches;
mod plate_equilibrium;
mod plate_errors;
mod plate_theory;
mod plywood;
mod seams;
mod shapes;
mod shigley_bolts;
mod ship_stability;
mod steering_by_hand;
mod stl_files;
mod swing_bad_input;
mod swing_closed_forms;
mod swing_laws;
mod swing_mounting_sheet;
mod timoshenko_plates;
mod towing_by_hand;
mod units_sp811;
