//! Pure functions of plain values: no verdicts, no report text, no files.

pub mod swing;
