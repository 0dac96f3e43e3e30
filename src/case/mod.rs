//! The case: a rig with what physics makes of it. Each expensive result is worked out once, when a
//! rule or a report first asks for it.

pub mod float;
pub mod swing;
mod weights;

use std::sync::OnceLock;

use crate::rig::Rig;
use float::{Float, NoFloat};

/// One rig on the desk.
pub struct Case<'a> {
    /// The rig.
    pub rig: &'a Rig,
    float: OnceLock<Result<Float, NoFloat>>,
    swing: swing::Kept,
}

impl<'a> Case<'a> {
    /// Puts a rig on the desk.
    pub fn new(rig: &'a Rig) -> Self {
        Case {
            rig,
            float: OnceLock::new(),
            swing: swing::Kept::default(),
        }
    }
}
