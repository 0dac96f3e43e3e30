//! How she floats, before and after, in every loading: the rig put through hydrostatics once.

mod aboard;
mod arms;
mod bare;
mod ledger;
mod parts;
mod remedy;
mod shape;
mod state;

use nalgebra::Point3;
use uom::si::f64::{Angle, Mass, MassDensity};

use super::Case;
use crate::job::{EdgeKind, EnginesThen, TankEntry, Water};
use crate::physics::float::{Hull, Mark};
use crate::physics::weight::FRESH_WATER_LB_FT3;
use crate::quantity::{Dimensioned, Measure, Text, pounds_per_cubic_foot, say};
use crate::rig::{Missing, Outfit, Rig};

use aboard::Aboard;
pub use bare::AsMeasured;
pub use ledger::{Entry, Movable, bracket_foot, plate_point};
pub use remedy::Shift;
pub use shape::{BracketBox, Built};
pub use state::{Loaded, State};

/// Weight of salt water. Source: Coast Guard boatbuilder's handbook: 64 lb/ft³.
const SALT_WATER_LB_FT3: f64 = 64.0;

/// Why she cannot be floated.
#[derive(Clone, Debug, PartialEq)]
pub enum NoFloat {
    /// Readings are missing.
    Missing(Vec<Missing>),
    /// What is given cannot float, and why.
    Cannot(Text),
}

/// Before or after the repower.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    Before,
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
}

impl Float {
    fn of(case: &Case) -> Result<Float, NoFloat> {
        let rig = case.rig;
        let afloat = &rig.afloat;
        if afloat.boat_weight.reading().is_none() && afloat.marks.reading().is_none() {
            let missing = [afloat.shape.ask().err(), afloat.marks.ask().err()];
            return Err(NoFloat::Missing(missing.into_iter().flatten().collect()));
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
        let aboard = Aboard::of(rig, water, built.hull.bounds(), &mut assumed)?;
        let before = weights(rig, &rig.before)?;
        let after = weights(rig, &rig.after)?;
        let centre_height = bare::centre_height(rig, &built.hull, &mut assumed);
        let (bare, as_measured) = match afloat.marks.reading() {
            None => (bare::weighed(rig, centre_height)?, None),
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
            assumed,
        };
        let (before, after) = (before.as_deref(), after.as_deref());
        let heavy_side: f64 = after
            .or(before)
            .unwrap_or_default()
            .iter()
            .chain([&float.bare])
            .map(|entry| entry.weight.mass.si() * entry.weight.centre.y)
            .sum();
        for loading in aboard.loadings(rig, heavy_side, float.as_measured.is_some())? {
            let loaded = Loaded::of(&float, &loading, before, after)?;
            float.loadings.push(loaded);
        }
        Ok(float)
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
    pub fn float(&self) -> Result<&Float, &NoFloat> {
        self.float.get_or_init(|| Float::of(self)).as_ref()
    }
}

/// The water that she lies in.
fn water(rig: &Rig, assumed: &mut Vec<Text>) -> MassDensity {
    match &rig.afloat.water {
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
fn weights(rig: &Rig, outfit: &Outfit) -> Result<Option<Vec<Entry>>, NoFloat> {
    if outfit.is_empty() && outfit.items.is_empty() {
        return Ok(None);
    }
    ledger::of_outfit(rig, outfit).map(Some).map_err(NoFloat::Missing)
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
