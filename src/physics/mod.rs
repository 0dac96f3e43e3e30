<<<<<<< HEAD
//! Weights, floating, swing, strength, running: pure functions of plain values, each testable against a book.

pub mod strength;
=======
//! Pure functions of plain values: each can be held against the book that it is from.

pub mod capacity;
pub mod fit;
pub mod height;
pub mod weight;
>>>>>>> main
