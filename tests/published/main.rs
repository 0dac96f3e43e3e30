//! Checks against books, standards and closed forms, one file a source.

mod swing_bad_input;
mod swing_closed_forms;
mod swing_laws;
mod swing_mounting_sheet;
