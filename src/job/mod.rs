//! The job: what a person writes down of a boat, the engines coming off and the engines going on.
//!
//! Every field may be left out by someone who does not know it yet; what is then missing is told by
//! the rules that need it, with the way to take it ([`tape`]).

mod boat;
mod check;
mod engines;
mod float;
mod papers;
pub mod rigging;
mod signs;
mod specs;
pub mod start;
mod structure;
mod study;
mod swing;
mod swing_study;
pub mod tape;

use serde::Deserialize;

use crate::quantity::Reading;
use crate::written::{self, Draft, Faults, Page};
use uom::si::f64::{Length, Mass};

pub use boat::{
    Boat, Bottom, Category, Construction, Core, Craft, Cutout, Fuel, Hole, OffCentreHeight, Plate, SplashWell,
    Steering, TopEdge, Transom,
};
pub use check::{Checker, check_bracket, check_engine, check_rigged};
pub use engines::{Across, EngineGroup, Hand, Hung, PropellerSpec, Role};
pub use float::{
    Afloat, BoatWeight, Condition, CrewAt, Edge, EdgeKind, EnginesThen, Flooded, HullShape, Lines, Liquid, Mark,
    Offset, OffsetStation, Seat, Section, TankEntry, Water, Weights,
};
pub use papers::{Photograph, Planned};
pub use rigging::Rigging;
pub use signs::{Ran, Sign, Signs};
pub use specs::{BracketKind, BracketSpec, Cycle, EngineSpec, Powerhead, ShaftOption, Span};
pub use swing::{BoxedObstacle, Cylinder, MountingNumbers, SteeringGear, TieBar, TiltTube, Trailer, Well};
pub use swing_study::{
    ObstacleShape, Point, StudyAxis, StudyBody, StudyNeighbour, StudyObstacle, StudyPart, StudyShape, SwingStudy,
};

pub use structure::{
    BackingPlate, BoltPlace, Bolting, Bond, Face, Flex, Inserts, Layer, Operating, Sound, Stiffener, Structure,
    Tabbing, ThreadState, Upright,
};
pub use study::{
    BoltStudy, EdgeHold, LineDoes, PanelLine, PanelLoad, PanelPlace, PanelShape, PanelStiffness, PanelStudy, StudyFace,
};

/// A job as it is written.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Job {
    /// What the job is called, at the head of every report.
    pub title: Option<String>,
    /// True for a scenario that was invented: reports say so.
    pub made_up: bool,
    /// The day of the readings, as it shall be printed.
    pub date: Option<String>,
    /// Who took them.
    pub by: Option<String>,
    /// For whom.
    pub for_whom: Option<String>,
    /// Which of the three sittings it is.
    pub sitting: Sitting,
    /// The boat.
    pub boat: Boat,
    /// The plate that says what she may carry.
    pub plate: Option<Plate>,
    /// The transom.
    pub transom: Transom,
    /// How she will be steered with the new engines.
    pub steering: Option<Steering>,
    /// Engines coming off.
    pub engines_off: Vec<EngineGroup>,
    /// Engines going on.
    pub engines_on: Vec<EngineGroup>,
    /// What else comes off with the old engines.
    pub comes_off: Vec<Item>,
    /// What else goes on with the new engines.
    pub goes_on: Vec<Item>,
    /// What had been planned, where a finished install is surveyed.
    pub planned: Option<Planned>,
    /// Photographs that go with the report.
    pub photographs: Vec<Photograph>,
    /// The shape of her hull; made from length, chine beam, deadrise and depth where it is left out.
    pub hull: Option<HullShape>,
    /// Wells that the water fills to its own level, and that carry nothing.
    pub flooded: Vec<Flooded>,
    /// The water, and how she lies in it.
    pub afloat: Option<Afloat>,
    /// What she and everything aboard weighs.
    pub weights: Weights,
    /// Edges where water comes in or runs off.
    pub edges: Vec<Edge>,
    /// Loadings to look at; sensible ones are made where none is given.
    pub conditions: Vec<Condition>,
    /// The motorwell that the engines tilt into.
    pub well: Well,
    /// What else they could strike.
    pub obstacles: Vec<BoxedObstacle>,
    /// Steering cylinder and tie bar.
    pub steering_gear: SteeringGear,
    /// From the transom's top, along it at the centreline, down to the water, boat at rest.
    pub waterline: Option<Reading<Length>>,
    /// Whether she travels on a trailer, and how she stands on it.
    pub trailer: Option<Trailer>,
    /// A swing question given outright.
    pub swing_study: Option<SwingStudy>,
    /// How she has run with the engines that come off.
    pub ran: Option<Ran>,
    /// How the transom is built and held.
    pub structure: Option<Structure>,
    /// How hard she is driven.
    pub operating: Option<Operating>,
    /// A panel given outright, for a study.
    pub panel_study: Option<PanelStudy>,
    /// A bolt group given outright, for a study.
    pub bolt_study: Option<BoltStudy>,
    /// What is rigged to her.
    pub rigging: Rigging,
    /// Anything the reader of the report should know.
    pub notes: Option<String>,
}

/// Who sits down with the job, and when.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sitting {
    /// A rigging tech, before the engines are ordered.
    #[default]
    BeforeOrdering,
    /// A surveyor, at a finished install.
    AsFitted,
    /// A student, with one question.
    Study,
}

impl Sitting {
    /// The sitting in words.
    pub fn words(self) -> &'static str {
        match self {
            Sitting::BeforeOrdering => "before ordering",
            Sitting::AsFitted => "as fitted",
            Sitting::Study => "study",
        }
    }
}

/// A weight that comes off or goes on with the engines: an oil tank, a battery, a tie bar.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Item {
    /// What it is.
    pub what: String,
    /// What sort of thing, where it comes off with the old engines' rigging: then its weight may be left out.
    pub part: Option<rigging::OldPart>,
    /// How many of them; one where left out.
    pub count: Option<u8>,
    /// All of it together.
    pub weight: Option<Reading<Mass>>,
    /// Whether it hangs on the transom or its bracket, and so counts against their ratings.
    pub on_transom: bool,
    /// Distance of its centre forward of the transom; negative behind it.
    pub forward: Option<Reading<Length>>,
    /// Which side, and how far off the centreline.
    pub across: Option<Across>,
    /// Height of its centre above the baseline.
    pub above: Option<Reading<Length>>,
}

impl Job {
    /// The files that the job names: the path of the entry, and the name.
    pub fn files(&self) -> Vec<(&'static str, &str)> {
        match &self.hull {
            Some(HullShape::Mesh { file, .. }) => vec![("hull.file", file.as_str())],
            _ => Vec::new(),
        }
    }
}

/// Reads a job and checks that it can be one; what is wrong is noted in the draft.
pub fn draft(name: &str, text: &str) -> Draft<Job> {
    let mut draft = written::read::<Job>(name, text);
    if let Some(job) = &draft.value {
        let found = check::job(job, &draft.page);
        draft.add(found);
    }
    draft
}

/// Reads a job and checks that it can be one.
///
/// # Errors
/// Everything that is wrong with the text, each with its place, in one go.
pub fn load(name: &str, text: &str) -> Result<(Job, Page), Faults> {
    draft(name, text).finish()
}
