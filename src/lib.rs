//! Checks whether an outboard repower belongs on a given boat, and shows its working.

pub mod physics;
