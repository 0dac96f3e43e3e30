//! Checks against published tables, closed forms and worked examples: one file a source.

mod plate_theory;
mod timoshenko_plates;
