//! Checks against results kept from general-purpose libraries.

mod swing;
