//! The job: what a person writes down of a boat, the engines coming off and the engines going on.
//!
//! Every field may be left out by someone who does not know it yet; what is then missing is told by
//! the rules that need it, with the way to take it ([`crate::reading`]).

mod across;
mod boat;
pub(crate) mod bounds;
mod candidates;
mod check;
mod engines;
mod float;
mod form;
mod papers;
pub mod rigging;
mod running;
mod running_study;
mod signs;
mod specs;
pub mod start;
mod structure;
mod study;
mod swing;
mod swing_study;
mod trial;
mod worth;

use crate::quantity::Reading;
use crate::reading::*;
use crate::written::{self, Draft, Faults, Page};
use uom::si::f64::{Length, Mass};

pub use across::Across;
pub use boat::{
    Boat, Bottom, Category, Construction, Core, Craft, Cutout, Fuel, Hole, OffCentreHeight, Plate, SplashWell,
    Steering, TopEdge, Transom,
};
pub use candidates::Candidate;
pub(crate) use check::ONE_PLACE;
pub use check::{Checker, check_bracket, check_engine, check_rigged};
pub use engines::{EngineGroup, Hand, Hung, PropellerSpec, Role};
pub use float::{
    Afloat, BoatWeight, Condition, CrewAt, DRAINS, Edge, EdgeKind, EnginesThen, Flooded, HullShape, Lines, Liquid,
    Mark, Offset, OffsetStation, SHEER, Seat, Section, TankEntry, Water, Weights,
};
pub use form::{describe, fields, lines, order, path};
pub use papers::{Photograph, Planned};
pub use rigging::Rigging;
pub use running::{Running, TrimTabs};
pub use running_study::{PlaningStudy, PropellerStudy};
pub use signs::{Ran, Sign, Signs};
pub use specs::{BracketKind, BracketSpec, Cycle, EngineSpec, LiftArms, Powerhead, ShaftOption, Span};
pub use swing::{BoxedObstacle, Cylinder, MountingNumbers, SteeringGear, TieBar, TiltTube, Trailer, Well};
pub use swing_study::{
    ObstacleShape, Point, StudyAxis, StudyBody, StudyNeighbour, StudyObstacle, StudyPart, StudyShape, SwingStudy,
};
pub use trial::{Effort, Porpoises, Promised, Run, Sailed, Sea, Trial, Ventilates, Vibration};
pub use worth::{Cost, FuelPrice, Use, Worth};

pub use structure::{
    BackingPlate, BoltPlace, Bolting, Bond, Face, Flex, Inserts, Layer, Operating, Sound, Stiffener, Structure,
    Tabbing, ThreadState, Upright,
};
pub use study::{
    BoltStudy, EdgeHold, LineDoes, PanelLine, PanelLoad, PanelPlace, PanelShape, PanelStiffness, PanelStudy, StudyFace,
};

things! {
    /// A job as it is written.
    pub struct Job {
        /// What the job is called, at the head of every report.
        title: Option<String>,
        /// True for a scenario that was invented: reports say so.
        made_up: bool,
        /// The day of the readings, as it shall be printed.
        date: Option<String>,
        /// Who took them.
        by: Option<String>,
        /// For whom.
        for_whom: Option<String>,
        /// Which of the three sittings it is.
        sitting: Sitting,
        /// The boat.
        boat: Boat = called("the boat"),
        /// The plate that says what she may carry.
        plate: Option<Plate> = called("capacity or builder's plate")
            .taken(Stop::Papers, "at the helm or inside the transom",
                "read it as it stands; write none where there is none, illegible where it cannot be read")
            .spot(352, 78),
        /// The transom.
        transom: Transom = called("the transom"),
        /// How the transom is built and held.
        structure: Option<Structure> = called("how the transom is built"),
        /// How she has run with the engines that come off.
        ran: Option<Ran> = called("how she has run with the engines that come off")
            .taken(Stop::Papers, "hour meter and the owner's papers",
                "years and hours, and what the transom shows of them: ran: (years: 12, hours: 900, signs: none)"),
        /// How hard she is driven.
        operating: Option<Operating> = called("how she is driven"),
        /// How she will be steered with the new engines.
        steering: Option<Steering> = called("how she will be steered")
            .taken(Stop::Helm, "helm", "one of `tiller`, `remote_mechanical`, `remote_hydraulic`, `remote_electric`")
            .spot(330, 118),
        /// The motorwell that the engines tilt into.
        well: Well = called("the motorwell"),
        /// What else they could strike.
        obstacles: Vec<BoxedObstacle> = called("what else the engines could strike").up_to(60)
            .taken(Stop::Inside, "inside, forward of the well",
                "hatches, seats, ladders: from and to, forward of the outside of the transom's top, across, and \
                above it").closely(inch(0.25)).spot(190, 66),
        /// Steering cylinder and tie bar.
        steering_gear: SteeringGear = called("steering cylinder and tie bar"),
        /// From the transom's top, along it at the centreline, down to the water, boat at rest.
        waterline: Option<Reading<Length>> = called("waterline at the transom, at rest").within(bounds::WATERLINE)
            .taken(Stop::Afloat, "outside, on the centreline, afloat",
                "usual gear aboard, nobody aft; from the transom's top along it down to the water")
            .closely(inch(0.5)).spot(186, 372),
        /// Whether she travels on a trailer, and how she stands on it.
        trailer: Option<Trailer> = called("whether she travels on a trailer")
            .taken(Stop::Trailer, "on the trailer, hitched up",
                "`none`, or `on(keel_above_ground: \"24 in\")`: from the road up to the bottom of the hull at the \
                transom").closely(inch(0.5)).spot(560, 426),
        /// The shape of her hull; made from length, chine beam, deadrise and depth where it is left out.
        hull: Option<HullShape> = called("shape of the hull")
            .taken(Stop::Hull, "round the boat, on the trailer or ashore, keel level",
                "at the transom and four more places forward: height of keel, chine and sheer above a level line \
                through the bottom at the transom, and half the breadth at chine and sheer: hull: tape(sections: \
                [...]); at the least `boat.length`, `boat.chine_beam`, `boat.deadrise` and `boat.depth`")
            .closely(inch(0.5)).spot(300, 52),
        /// Wells that the water fills to its own level, and that carry nothing.
        flooded: Vec<Flooded> = called("wells that the water fills").up_to(12)
            .taken(Stop::Inside, "motorwell",
                "length, width and the floor's height above the level line through the bottom, where its drains are \
                open and the floor is near the water").closely(inch(0.5)).spot(160, 108),
        /// The water, and how she lies in it.
        afloat: Afloat = called("afloat"),
        /// What she and everything aboard weighs.
        weights: Weights = called("what is aboard"),
        /// Edges where water comes in or runs off.
        edges: Vec<Edge> = called("height of the well's edge").up_to(60)
            .taken(Stop::Inside, "motorwell, or the transom's top where there is no well",
                "the lowest point where water would come aboard: above the level line through the bottom, forward \
                of the transom, off the centreline; kind: well")
            .closely(inch(0.25)).spot(160, 84).also(&[DRAINS, SHEER]),
        /// Loadings to look at; sensible ones are made where none is given.
        conditions: Vec<Condition> = called("loadings to look at").up_to(24)
            .taken(Stop::Aboard, "what she is used for",
                "who and what is aboard, and where, in each way in which she goes out"),
        /// Engines going on.
        engines_on: Vec<EngineGroup> = called("engines that go on").up_to(12)
            .taken(Stop::Engine, "the offer, or the engines themselves",
                "class or description, place and weight of each").spot(62, 88),
        /// Engines coming off.
        engines_off: Vec<EngineGroup> = called("engines that come off").up_to(12)
            .taken(Stop::Engine, "transom, engine plates", "class or description, place and weight of each")
            .spot(62, 88),
        /// What else goes on with the new engines.
        goes_on: Vec<Item> = called("what goes on with the engines").up_to(60)
            .taken(Stop::Items, "the offer", "oil tank, batteries, pump: what each weighs and where it shall stand"),
        /// What else comes off with the old engines.
        comes_off: Vec<Item> = called("what comes off with the engines").up_to(60)
            .taken(Stop::Items, "on a scale", "oil tank, batteries, pump: what each weighs and where it stands"),
        /// Sets of engines that are weighed against each other; `compare` puts them side by side.
        candidates: Vec<Candidate> = called("engines weighed against each other")
            .taken(Stop::Desk, "the offers", "each with a name and its engines, as `engines_on` of the job itself"),
        /// What had been planned, where a finished install is surveyed.
        planned: Option<Planned> = called("what had been planned")
            .taken(Stop::Papers, "order, drawing or letter", "the figures as they were ordered or drawn"),
        /// Photographs that go with the report.
        photographs: Vec<Photograph> = called("photographs"),
        /// A swing question given outright.
        swing_study: Option<SwingStudy> = called("a swing question")
            .taken(Stop::Desk, "the question", "as the question gives it"),
        /// How she shall run.
        running: Option<Running> = called("how she runs")
            .taken(Stop::Helm, "on the water", "running: () asks for the prediction; what it wants is then named"),
        /// Her sea trials.
        trial: Option<Trial> = called("sea trial"),
        /// Costs and use.
        worth: Option<Worth> = called("costs and use"),
        /// A planing prism given outright, for a study.
        planing_study: Option<PlaningStudy> = called("a planing prism")
            .taken(Stop::Desk, "the question", "as the question gives it"),
        /// A propeller given outright, for a study.
        propeller_study: Option<PropellerStudy> = called("a propeller")
            .taken(Stop::Desk, "the question", "as the question gives it"),
        /// A panel given outright, for a study.
        panel_study: Option<PanelStudy> = called("a panel")
            .taken(Stop::Desk, "the question", "as the question gives it"),
        /// A bolt group given outright, for a study.
        bolt_study: Option<BoltStudy> = called("a bolt group")
            .taken(Stop::Desk, "the question", "as the question gives it"),
        /// What is rigged to her.
        rigging: Rigging = called("what is rigged"),
        /// Readings that were asked back, were looked at again, and stand as they are written, by their entries:
        /// `sure: ["plate.power"]`.
        sure: Vec<String> = called("readings that were looked at again"),
        /// Anything the reader of the report should know.
        notes: Option<String>,
    }
}

words! {
    /// Who sits down with the job, and when.
    pub enum Sitting [Default] {
        /// A rigging tech, before the engines are ordered.
        [default] BeforeOrdering = "before_ordering", "before ordering";
        /// A surveyor, at a finished install.
        AsFitted = "as_fitted", "as fitted";
        /// A student, with one question.
        Study = "study";
    }
}

things! {
    /// A weight that comes off or goes on with the engines: an oil tank, a battery, a tie bar.
    pub struct Item {
        /// What it is.
        what: String = label(),
        /// What sort of thing, where it comes off with the old engines' rigging: then its weight may be left out.
        part: Option<rigging::OldPart>,
        /// How many of them; one where left out.
        count: Option<u8> = called("how many").within(bounds::PIECES),
        /// All of it together.
        weight: Option<Reading<Mass>> = called("weight of what goes on or comes off with the engines").within(bounds::ITEM_WEIGHT)
            .taken(Stop::Items, "a scale, or its papers", "everything of that name together").closely(lb(1.0)),
        /// Whether it hangs on the transom or its bracket, and so counts against their ratings.
        on_transom: bool,
        /// Distance of its centre forward of the transom; negative behind it.
        forward: Option<Reading<Length>> = called("where it stands").within(bounds::ALONG)
            .taken(Stop::Items, "on the boat", "its centre forward of the transom and above the bottom")
            .closely(inch(2.0)),
        /// Which side, and how far off the centreline.
        across: Option<Across> = called("off the centreline").within(bounds::ACROSS),
        /// Height of its centre above the baseline.
        above: Option<Reading<Length>> = called("above the baseline").within(bounds::HEIGHT),
    }
}

impl Job {
    /// The files that the job names: the path of the entry, and the name.
    pub fn files(&self) -> Vec<(&'static str, &str)> {
        let hull = match &self.hull {
            Some(HullShape::Mesh { file, .. }) => Some(("hull.file", file.as_str())),
            _ => None,
        };
        let trial = self.trial.as_ref();
        let before = trial.and_then(|trial| trial.before.as_ref()?.file.as_deref());
        let after = trial.and_then(|trial| trial.after.as_ref()?.file.as_deref());
        let logs = [("trial.before.file", before), ("trial.after.file", after)];
        hull.into_iter().chain(logs.into_iter().filter_map(|(entry, file)| Some((entry, file?)))).collect()
    }
}

/// Reads a job and checks that it can be one; what is wrong is noted in the draft.
pub fn draft(name: &str, text: &str) -> Draft<Job> {
    let mut draft = written::read::<Job>(name, text);
    if let Some(job) = &draft.value {
        match check::job(job, &draft.page) {
            Ok(found) => draft.add(found),
            Err(too_much) => {
                draft.value = None;
                draft.faults.extend(too_much);
            }
        }
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
