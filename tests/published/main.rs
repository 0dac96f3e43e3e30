//! Checks against published tables, closed forms and worked examples: one file a source.

mod actuator_disc;
mod iso_898_1;
mod khurmi_brackets;
mod plate_equilibrium;
mod plate_errors;
mod plate_theory;
mod shigley_bolts;
mod timoshenko_plates;
