//! The case: a rig with what physics makes of it. Each expensive result is worked out once, when a
//! rule or a report first asks for it.

mod weights;

use crate::rig::Rig;

/// One rig on the desk.
pub struct Case<'a> {
    /// The rig.
    pub rig: &'a Rig,
}

impl<'a> Case<'a> {
    /// Puts a rig on the desk.
    pub fn new(rig: &'a Rig) -> Self {
        Case { rig }
    }
}
