//! Whole boats: sound ones that must never fail, unsound ones whose fault must be found, and the table
//! of what every rule says of each of them, told more and more.

#[path = "../common/mod.rs"]
mod common;

mod corpus;
#[path = "../common/drawn.rs"]
mod drawn;
mod laws;
mod random;
mod remedies;
mod sound;
mod table;
mod unsound;
mod verdicts;
mod whole;
