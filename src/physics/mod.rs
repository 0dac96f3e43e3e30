//! Pure functions of plain values: each can be held against the book that it is from.

pub mod capacity;
pub mod fit;
pub mod height;
pub mod strength;
pub mod weight;
