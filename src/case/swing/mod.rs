//! How the engines swing: every clearance over the whole range, worked out once for rules and reports.

mod answers;
mod around;
mod beside;
mod cures;
mod followed;
mod gear;
mod ground;
mod hang;
mod lifted;
mod outlines;
mod parts;
mod study;
mod sweep;
mod swept;
mod water;
mod words;

use std::sync::OnceLock;

use uom::si::f64::Length;

use super::Case;
use crate::physics::swing::Effort;
use crate::quantity::{Text, inches};
use crate::reading::Absent;

pub use around::{Around, FACE, TUB};
pub use ground::OverGround;
pub use hang::{Hanging, misfit};
pub(in crate::case) use hang::{TUBE_ABOVE_IN, TUBE_FORWARD_IN};
pub use outlines::{NamedPolygon, View, outlines};
pub use parts::{swept_sheet, swept_working};
pub use study::{Question, StudyFault, study_faults};
pub use swept::{Cure, Spacing, Swept};
pub use water::{AboveWater, Condition, rest_waterlines};
pub use words::{body_words, pose_words, raised_words, touch_words};

/// Distance that a powerhead should keep from the boat, tilting and steering. Common practice, no source: an
/// engine shifts on its rubber mounts, and a boat works.
const FROM_BOAT_IN: f64 = 0.5;
/// Distance between two engines. Common practice, no source.
const FROM_NEIGHBOUR_IN: f64 = 1.0;
/// Distance that steering cylinder, hoses and tie bar should keep. Common practice, no source.
const OF_GEAR_IN: f64 = 0.5;
/// Height over the road. Common practice, no source.
const OVER_ROAD_IN: f64 = 6.0;

/// An answer, or why there is none.
pub type Answer<T> = Result<T, Absent>;

/// Every answer about the swing of the engines.
#[derive(Clone, Debug)]
pub struct Swing {
    /// The engines as they hang.
    pub engines: Answer<Vec<Hanging>>,
    /// What stands round them.
    pub around: Answer<Around>,
    /// Each engine, whole range of tilt and steering, against the boat.
    pub full_tilt: Answer<Vec<Swept>>,
    /// Each engine on a lifting bracket, whole range of tilt and steering at every height of the bracket, against the boat; and its
    /// bracket's face against the other engines.
    pub raised: Answer<Vec<Swept>>,
    /// Each engine where it runs, from lock to lock, against the boat.
    pub lock: Answer<Vec<Swept>>,
    /// Each two neighbouring engines, tilted together and alone.
    pub neighbours: Answer<Vec<Swept>>,
    /// Each steering cylinder against the boat.
    pub cylinder: Answer<Vec<Swept>>,
    /// Each tie bar against the boat.
    pub tie_bar: Answer<Vec<Swept>>,
    /// Each engine at full tilt over the water, in every condition.
    pub water: Answer<Vec<AboveWater>>,
    /// Each engine over the road.
    pub ground: Answer<Vec<OverGround>>,
    /// A question given outright.
    pub study: Option<Answer<Question>>,
    /// What was taken for granted for those answers that there are.
    pub assumed: Vec<Text>,
}

/// Where the swing is kept once it is worked out.
pub(super) type Kept = OnceLock<Swing>;

impl Case<'_> {
    /// How the engines swing.
    pub fn swing(&self) -> &Swing {
        self.swing.get_or_init(|| answers::swing(self))
    }
}

impl Swing {
    /// What keeps the engines themselves from being known.
    pub(super) fn nothing(open: Absent) -> Self {
        Swing {
            engines: Err(open.clone()),
            around: Err(open.clone()),
            full_tilt: Err(open.clone()),
            raised: Err(open.clone()),
            lock: Err(open.clone()),
            neighbours: Err(open.clone()),
            cylinder: Err(open.clone()),
            tie_bar: Err(open.clone()),
            water: Err(open.clone()),
            ground: Err(open),
            study: None,
            assumed: Vec::new(),
        }
    }
}

/// How closely every answer is worked out.
fn effort() -> Effort {
    Effort::default()
}

/// Distance to keep from the boat.
pub fn from_boat() -> Length {
    inches(FROM_BOAT_IN)
}

/// Distance to keep between engines.
pub fn from_neighbour() -> Length {
    inches(FROM_NEIGHBOUR_IN)
}

/// Distance that steering gear keeps.
pub fn of_gear() -> Length {
    inches(OF_GEAR_IN)
}

/// Height to keep over the road.
pub fn over_road() -> Length {
    inches(OVER_ROAD_IN)
}
