//! Weights, floating, swing, strength, running: pure functions of plain values, each testable against a book.

pub mod strength;
