//! Comparisons with results that general-purpose libraries gave; each topic's script keeps them beside it.

mod strength;
mod float;
mod swing;
