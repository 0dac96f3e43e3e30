//! The mechanics of a boat and her engines: pure functions of plain values, without verdicts or text.

pub mod float;
