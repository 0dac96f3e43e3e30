//! The case: a rig with what physics makes of it. Each expensive result is worked out once, when a
//! rule or a report first asks for it.

mod bolts;
pub mod float;
pub mod rigging;
mod rows;
pub mod running;
mod stern;
pub mod strength;
pub mod studies;
pub mod swing;
pub mod trial;
mod weights;
pub mod worth;

use std::sync::{Arc, OnceLock};

use crate::hands::Hands;
use crate::reading::Absent;
use crate::rig::Rig;
use crate::written::Slip;
use float::{Built, Float};

pub(crate) use bolts::{drop_along, places as bolt_places, upper_holes};
pub(crate) use rows::{Rows, fixed_engines, holes_up, is_clamped, row_of};
pub(crate) use stern::{is_beside_cutout, lean};
use strength::{Store, Strength};
use studies::PanelAnswer;

/// What was worked out of a rig while its faults were looked for; right for all rigs of that boat, whatever hangs on her.
#[derive(Clone, Debug, Default)]
pub struct Begun {
    shape: OnceLock<Option<Result<Built, Slip>>>,
    panel_study: OnceLock<Option<Result<PanelAnswer, Slip>>>,
}

/// How a rig floats, where that was worked out; of no other rig.
pub type Floated = OnceLock<Arc<Result<Float, Absent>>>;

/// One rig on the desk.
pub struct Case<'a> {
    /// The rig.
    pub rig: &'a Rig,
    begun: Begun,
    float: Floated,
    swing: swing::Kept,
    strength: OnceLock<Result<Strength, Absent>>,
    store: Arc<Store>,
    running: OnceLock<Option<running::Runs>>,
    trial: OnceLock<Option<trial::Trials>>,
}

impl<'a> Case<'a> {
    /// Puts a rig on the desk.
    pub fn new(rig: &'a Rig) -> Self {
        Case::resume(rig, Begun::default())
    }

    /// Puts a rig on the desk of which something was worked out already.
    pub fn resume(rig: &'a Rig, begun: Begun) -> Self {
        Case::beside(rig, begun, Arc::default())
    }

    /// Puts a rig on the desk of which something was worked out already. These hands do what does not wait for each other; what it
    /// comes to is the same by any.
    pub fn by(rig: &'a Rig, begun: Begun, float: Floated, hands: Hands) -> Self {
        Case { float, ..Case::beside(rig, begun, Arc::new(Store::by(hands))) }
    }

    /// Puts a rig on the desk beside others that share the panels in this store.
    pub fn beside(rig: &'a Rig, begun: Begun, store: Arc<Store>) -> Self {
        Case {
            rig,
            begun,
            float: Floated::new(),
            swing: swing::Kept::default(),
            strength: OnceLock::new(),
            store,
            running: OnceLock::new(),
            trial: OnceLock::new(),
        }
    }

    /// What each of so many tasks gives that do not wait for each other, by the hands that there are.
    pub(crate) fn each<T: Send>(&self, count: usize, of: impl Fn(usize) -> T + Sync) -> Vec<T> {
        self.store.each(count, of)
    }

    /// Takes the rig off the desk, and keeps what its faults were looked for with.
    pub fn lay_aside(self) -> (Begun, Floated) {
        (self.begun, self.float)
    }
}
