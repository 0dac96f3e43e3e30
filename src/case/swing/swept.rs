//! What a sweep through a whole range comes to, and what would clear it.

use uom::si::f64::{Angle, Length};

use super::effort;
use crate::physics::swing::{Clearance, LiftLimit, Scene, SwingError, SwingLimit, permitted_lift};
use crate::quantity::say;
use crate::reading::Absent;

/// One sweep through a whole range.
#[derive(Clone, Debug)]
pub struct Swept {
    /// Which engine moves.
    pub label: String,
    /// Its neighbour, where the sweep is about two.
    pub other: Option<String>,
    /// The scene that was asked about.
    pub scene: Scene,
    /// The least distance in it.
    pub clearance: Clearance,
    /// The distance to keep.
    pub margin: Length,
    /// What would clear it, where it does not keep that distance.
    pub cure: Option<Cure>,
    /// Whether what moves was not described but taken as common practice has it: then contact is no more
    /// than a warning to measure.
    pub taken: bool,
    /// The spacing that would clear two engines, where they come too near each other.
    pub spacing: Option<Spacing>,
    /// How high its lifting bracket may go, where it does not keep that distance.
    pub lift: Option<LiftLimit>,
    /// What else of the boat comes nearer than that distance, each with its own least.
    pub also: Vec<Clearance>,
}

impl Swept {
    /// A sweep of this engine, judged by nothing yet.
    pub(super) fn new(label: &str, scene: Scene, clearance: Clearance, margin: Length) -> Self {
        Swept {
            label: label.to_owned(),
            other: None,
            scene,
            clearance,
            margin,
            cure: None,
            taken: false,
            spacing: None,
            lift: None,
            also: Vec::new(),
        }
    }

    /// The lift of either engine.
    pub fn lifts(&self) -> Option<&crate::physics::swing::Lift> {
        self.scene.engine.lift().or(self.scene.neighbour.as_ref().and_then(|other| other.chain.lift()))
    }

    /// How high the lift may go, where there is one and the distance is not kept.
    pub(super) fn limit_lift(&mut self) -> Result<(), SwingError> {
        if self.lifts().is_some() && !self.keeps() {
            self.lift = Some(permitted_lift(&self.scene, self.margin, &effort())?);
        }
        Ok(())
    }

    /// Whether two bodies touch for certain somewhere in the range.
    pub fn touches(&self) -> bool {
        self.clearance.upper.value <= 0.0
    }

    /// Whether the distance is kept for certain over the whole range.
    pub fn keeps(&self) -> bool {
        self.clearance.lower >= self.margin
    }
}

/// A solver's refusal in words.
pub(super) fn refused(error: &SwingError) -> Absent {
    Absent::CannotBe(say!("The swing cannot be worked out: {}.", format!("{error}")))
}

/// What would clear an engine's swing.
#[derive(Clone, Debug)]
pub struct Cure {
    /// Farther aft, level, by this much; `None` where no setback tried does.
    pub aft: Option<Length>,
    /// Higher by this much.
    pub up: Option<Length>,
    /// Tilt up to here, at any steering.
    pub tilt: SwingLimit,
    /// Steering no farther than this each way, at any tilt.
    pub steer: SwingLimit,
    /// Tilt at which two bodies first touch, from the low end of the range; `None` where none do.
    pub touches_from: Option<Angle>,
}

/// A spacing that clears two engines.
#[derive(Clone, Copy, Debug)]
pub struct Spacing {
    /// Between their centres as they are.
    pub now: Length,
    /// Between their centres so that they keep their distance; `None` where none tried does.
    pub needed: Option<Length>,
}
