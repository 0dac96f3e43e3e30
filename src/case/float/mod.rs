//! How she floats, before and after, in every loading: the rig put through hydrostatics once.

mod aboard;
mod arms;
mod bare;
mod ledger;
mod parts;
mod remedy;
mod shape;
mod state;

use std::cmp::Ordering;
use std::sync::Arc;

use nalgebra::Point3;
use uom::si::f64::{Angle, Length, Mass, MassDensity};

use super::Case;
use crate::job::{EdgeKind, EnginesThen, TankEntry, Water};
use crate::physics::float::{Hull, Mark, WaterPlane};
use crate::physics::weight::FRESH_WATER_LB_FT3;
use crate::quantity::{Dimensioned, Measure, Text, pounds_per_cubic_foot, say};
use crate::reading::Absent;
use crate::rig::{Outfit, Rig};

pub use aboard::Crew;
use aboard::{Aboard, Crowd, Loading};
pub use arms::{Arm, Heeled};
pub use bare::AsMeasured;
pub use ledger::{Entry, Movable, bracket_foot, plate_point};
pub use remedy::Shift;
pub use shape::{BracketBox, Built};
pub use state::{Loaded, State};

/// Weight of salt water. Source: Coast Guard boatbuilder's handbook: 64 lb/ft³.
const SALT_WATER_LB_FT3: f64 = 64.0;

/// Two sides whose heights or heels differ by no more are alike, metres or radians: rounding.
const ALIKE: f64 = 1e-9;

/// Before or after the repower.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// With the engines that hang on her now, or hung before.
    Before,
    /// With the engines that shall hang on her, or hang there now.
    After,
}

/// Everything that is known of how she floats.
#[derive(Debug)]
pub struct Float {
    /// The hull without brackets.
    pub built: Built,
    /// The hull before and after, with closed brackets.
    pub hulls: [Hull; 2],
    /// Closed brackets before and after.
    pub boxes: [Vec<BracketBox>; 2],
    /// The water.
    pub water: MassDensity,
    /// How she lay when her marks were taken, where they were.
    pub as_measured: Option<AsMeasured>,
    /// The bare boat, as she was weighed or as her marks tell.
    pub bare: Entry,
    /// Edges to look at.
    pub edges: Vec<EdgePoint>,
    /// The loadings, in order.
    pub loadings: Vec<Loaded>,
    /// With the whole crew at the worse rail, which is told but not judged; where the job gives no loadings.
    pub all_to_one_side: Option<Loaded>,
    /// What was assumed, in sentences.
    pub assumed: Vec<Text>,
}

/// An edge as a point.
#[derive(Clone, Debug, PartialEq)]
pub struct EdgePoint {
    /// What it is called.
    pub name: String,
    /// What sort.
    pub kind: EdgeKind,
    /// Where.
    pub point: Point3<f64>,
    /// Its entry in the job, where it has one.
    pub entry: Option<String>,
}

impl Float {
    fn of(case: &Case) -> Result<Float, Absent> {
        let rig = case.rig;
        let job = &rig.job;
        if job.weights.boat.weight().reading().is_none() && job.afloat.marks().reading().is_none() {
            let missing = [rig.shape.ask().err(), job.afloat.marks().ask().err()];
            return Err(Absent::Waits(missing.into_iter().flatten().collect()));
        }
        let built = shape::built(case)?;
        let mut assumed = Vec::new();
        let boxes = [&rig.before, &rig.after].map(|outfit| shape::boxes(rig, outfit, &mut assumed));
        let hulls = boxes
            .each_ref()
            .map(|boxes| boxes.iter().fold(built.hull.clone(), |hull, body| hull.with_body(body.mesh.clone())));
        let water = water(rig, &mut assumed);
        if !rig.before.is_empty() || !rig.after.is_empty() {
            assumed.push(Text::from("The engines' legs are taken to displace nothing (the careful way)."));
        }
        let aboard = Aboard::of(rig, water, &built, &mut assumed)?;
        let before = weights(rig, &rig.before)?;
        let after = weights(rig, &rig.after)?;
        let centre_height = bare::centre_height(rig, &built.hull, &mut assumed);
        let (bare, as_measured) = match job.afloat.marks().reading() {
            None => (bare::weighed(rig, &built.hull, centre_height, &mut assumed)?, None),
            Some(marks) => {
                let engines = bare::engines_then(rig)?;
                let (hull, hung) = match engines {
                    EnginesThen::Old => (&hulls[0], &before),
                    EnginesThen::New => (&hulls[1], &after),
                    EnginesThen::None => (&hulls[0], &None),
                };
                let mut then: Vec<Entry> = hung.clone().unwrap_or_default();
                then.extend(aboard.when_measured(rig)?);
                let marks: Vec<(String, Mark)> = marks.iter().enumerate().map(aboard::mark).collect();
                let measured = AsMeasured::of(hull, marks, centre_height, water, then, engines)?;
                measured.remarks(&mut assumed);
                (measured.bare()?, Some(measured))
            }
        };
        let mut float = Float {
            edges: aboard::edges(rig, &built, &mut assumed),
            built,
            hulls,
            boxes,
            water,
            as_measured,
            bare,
            loadings: Vec::new(),
            all_to_one_side: None,
            assumed,
        };
        let (before, after) = (before.as_deref(), after.as_deref());
        let load = |float: &Float, loading: &Loading| Loaded::of(float, loading, before, after);
        for loading in aboard.loadings(rig, float.as_measured.is_some())? {
            let loaded = load(&float, &loading)?;
            float.loadings.push(loaded);
        }
        for crowd in [Crowd::Tested, Crowd::Everybody] {
            let sides = aboard.crowds(rig, crowd)?;
            let sides = sides.iter().map(|loading| load(&float, loading)).collect::<Result<Vec<_>, _>>()?;
            let worse = sides.into_iter().reduce(|one, other| if float.is_worse(&other, &one) { other } else { one });
            match crowd {
                Crowd::Tested => float.loadings.extend(worse),
                Crowd::Everybody => float.all_to_one_side = worse,
            }
        }
        Ok(float)
    }

    /// Whether one loading is worse for her than another: she sinks or turns over, her lowest edge is lower, or,
    /// edges alike, she heels further. Where both are alike as she is judged, as she was before decides.
    fn is_worse(&self, one: &Loaded, other: &Loaded) -> bool {
        let judged = self.compared(one.judged(), other.judged());
        judged.then_with(|| self.compared(one.before.as_ref(), other.before.as_ref())).is_gt()
    }

    /// Greater where the one state is worse for her than the other.
    fn compared(&self, one: Option<&State>, other: Option<&State>) -> Ordering {
        let rounded = |a: f64, b: f64| if (a - b).abs() <= ALIKE { Ordering::Equal } else { a.total_cmp(&b) };
        match (self.lies(one), self.lies(other)) {
            (Some((low, heel)), Some((other_low, other_heel))) => {
                rounded(other_low, low).then_with(|| rounded(heel, other_heel))
            }
            (one, other) => one.is_none().cmp(&other.is_none()),
        }
    }

    /// Height of her lowest edge above the water, metres, and her heel either way; nothing where she does not float
    /// upright.
    fn lies(&self, state: Option<&State>) -> Option<(f64, f64)> {
        let floating = state?.upright().ok()?;
        let low = self.lowest_edge(&floating.plane).map_or(f64::MAX, |(height, _)| height.si());
        Some((low, floating.attitude().heel.si().abs()))
    }

    /// The lowest place where water comes aboard over this water, and how high it stands.
    pub fn lowest_edge(&self, water: &WaterPlane) -> Option<(Length, &EdgePoint)> {
        self.edges_of(&[EdgeKind::Well, EdgeKind::Sheer, EdgeKind::Other])
            .map(|edge| (water.height_above(&edge.point), edge))
            .min_by(|(a, _), (b, _)| a.si().total_cmp(&b.si()))
    }

    /// The hull of this side.
    pub fn hull(&self, side: Side) -> &Hull {
        match side {
            Side::Before => &self.hulls[0],
            Side::After => &self.hulls[1],
        }
    }

    /// Edges of these kinds.
    pub fn edges_of<'s>(&'s self, kinds: &'s [EdgeKind]) -> impl Iterator<Item = &'s EdgePoint> {
        self.edges.iter().filter(|edge| kinds.contains(&edge.kind))
    }

    /// What a tank weighs full.
    pub fn full(&self, tank: &TankEntry) -> Option<Mass> {
        let entry = ledger::of_tank(tank, 1.0, self.water).ok()??;
        Some(entry.weight.mass)
    }

    /// Which side of the repower is judged, in words.
    pub fn judged_words(&self) -> &'static str {
        match self.loadings.first() {
            Some(Loaded { alone: true, .. }) => "as she is",
            Some(Loaded { before: Some(_), after: None, .. }) => "with the old engines",
            _ => "with the new engines",
        }
    }
}

impl<'a> Case<'a> {
    /// How she floats.
    ///
    /// # Errors
    /// What is missing, or why what is given cannot float.
    pub fn float(&self) -> Result<&Float, &Absent> {
        self.float.get_or_init(|| Arc::new(Float::of(self))).as_ref().as_ref()
    }
}

/// The water that she lies in.
fn water(rig: &Rig, assumed: &mut Vec<Text>) -> MassDensity {
    match &rig.job.afloat.water {
        Some(Water::Salt) => pounds_per_cubic_foot(SALT_WATER_LB_FT3),
        Some(Water::Fresh) => pounds_per_cubic_foot(FRESH_WATER_LB_FT3),
        Some(Water::Density(density)) => density.value,
        None => {
            assumed.push(Text::from("She is taken to lie in salt water: the water is not given."));
            pounds_per_cubic_foot(SALT_WATER_LB_FT3)
        }
    }
}

/// What an outfit weighs, where there is one.
fn weights(rig: &Rig, outfit: &Outfit) -> Result<Option<Vec<Entry>>, Absent> {
    if outfit.is_empty() && outfit.items.is_empty() {
        return Ok(None);
    }
    ledger::of_outfit(rig, outfit).map(Some).map_err(Absent::Waits)
}

/// An angle in words: bow up or down.
pub fn trim_words(trim: Angle) -> Text {
    let size = Measure::of(trim.abs());
    if trim.si() >= 0.0 { say!("{} bow up", size) } else { say!("{} bow down", size) }
}

/// A heel in words.
pub fn heel_words(heel: Angle) -> Text {
    let size = Measure::of(heel.abs());
    if heel.si() >= 0.0 { say!("{} to starboard", size) } else { say!("{} to port", size) }
}
