//! The rig: a job with every catalog reference resolved and every reading in SI. Physics and rules
//! see this and nothing else.

mod engine;
mod float;
mod papers;
mod ran;
mod resolve;
mod slot;
mod structure;
mod swing;
mod trial;

use std::sync::Arc;

use uom::si::f64::{Angle, Length, Mass, Power};

use crate::catalog::{Entry, Material, Tables};
use crate::job::{
    self, Bottom, Category, Construction, Core, Craft, Cutout, Fuel, Hole, Job, OffCentreHeight, Plate, Sitting,
    SplashWell, Steering, TopEdge,
};
use crate::quantity::{Reading, Text, inches};

pub use engine::{Bracket, Engine, Group, ItemOfOutfit, Outfit, ShaftChoice};
pub use float::{Afloat, Files, Shape};
pub use papers::Papers;
pub use ran::Ran;
pub use resolve::{resolve, resolve_with_files};
pub use slot::{Missing, Slot};
pub use structure::{Bolts, Layer, Structure};
pub use swing::{OnTrailer, Surroundings, SwingSheet};
pub use trial::{Sailing, Trial};

/// Everything that a rule can look at.
#[derive(Clone, Debug)]
pub struct Rig {
    /// The job with every class of its engines and brackets written out in place, as every reading of it was used.
    pub job: Arc<Job>,
    /// What the job is called.
    pub title: String,
    /// Whether the scenario was invented.
    pub made_up: bool,
    /// Which of the three sittings it is.
    pub sitting: Sitting,
    /// The boat.
    pub boat: Boat,
    /// Her plate.
    pub plate: Slot<Plate>,
    /// Her transom.
    pub transom: Transom,
    /// How she will be steered.
    pub steering: Slot<Steering>,
    /// What hangs on her now, or hung before.
    pub before: Outfit,
    /// What shall hang on her, or hangs there now.
    pub after: Outfit,
    /// What goes with the readings on paper.
    pub papers: Papers,
    /// Her shape, how she lay, what is aboard.
    pub afloat: Afloat,
    /// What stands round the engines when they tilt and steer.
    pub surroundings: Surroundings,
    /// How she has run with the engines that come off, where the job says.
    pub ran: Option<Ran>,
    /// How she shall run, where the job asks.
    pub running: Option<job::Running>,
    /// Her trials.
    pub trial: Option<Trial>,
    /// Costs and use.
    pub worth: Option<job::Worth>,
    /// A planing prism given outright, and a propeller.
    pub planing_study: Option<job::PlaningStudy>,
    pub propeller_study: Option<job::PropellerStudy>,
    /// How the transom is built and bolted to, and how hard she is driven.
    pub structure: Structure,
    /// The tables of regulations and standards.
    pub tables: Arc<Tables>,
    /// What was taken for granted in resolving the job, in sentences.
    pub assumed: Vec<Text>,
}

/// The boat in SI.
#[derive(Clone, Debug)]
pub struct Boat {
    pub craft: Slot<Craft>,
    pub bottom: Slot<Bottom>,
    pub length: Slot<Reading<Length>>,
    pub beam: Slot<Reading<Length>>,
    pub transom_width: Slot<Reading<Length>>,
    pub aft_quarter_beam: Slot<Reading<Length>>,
    pub deadrise: Slot<Reading<Angle>>,
    pub chine_beam: Slot<Reading<Length>>,
    pub transom_rating: Slot<Reading<Mass>>,
    pub stability_test: Slot<Reading<Mass>>,
    pub power_rating: Option<Reading<Power>>,
    pub fuel: Option<Fuel>,
    pub construction: Option<Construction>,
    pub year: Option<u16>,
    pub category: Option<Category>,
}

/// The transom in SI.
#[derive(Clone, Debug)]
pub struct Transom {
    pub height: Slot<Reading<Length>>,
    pub heights: Vec<OffCentreHeight>,
    pub angle: Slot<Reading<Angle>>,
    pub thickness: Slot<Reading<Length>>,
    pub material: Option<Entry<Material>>,
    pub core: Option<Core>,
    pub cutout_width: Slot<Reading<Length>>,
    /// Said to be none: the top is level all across.
    pub cutout: Option<Cutout>,
    pub top_edge: Option<TopEdge>,
    pub splash_well: Slot<SplashWell>,
    pub upper_holes: Slot<Reading<Length>>,
    pub holes: Vec<Hole>,
}

/// How near a height must have been taken to count for a place. Common practice, no source: half the
/// width of a straightedge.
const SAME_PLACE_IN: f64 = 1.0;

impl Transom {
    /// The height measured at this distance off the centreline, where one was.
    pub fn height_at(&self, y: Length) -> Option<&Reading<Length>> {
        if y.abs() < inches(SAME_PLACE_IN) {
            return self.height.reading();
        }
        self.heights.iter().find(|taken| (taken.at.y() - y).abs() < inches(SAME_PLACE_IN)).map(|taken| &taken.height)
    }
}
