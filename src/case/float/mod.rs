//! How she floats, before and after, in every loading: the rig put through hydrostatics once.

mod aboard;
mod arms;
mod ledger;
mod parts;
mod remedy;
mod shape;

use nalgebra::Point3;
use uom::si::f64::{Angle, Length, Mass, MassDensity};

use super::Case;
use crate::job::{EdgeKind, EnginesThen, Sitting, Water, tape};
use crate::physics::float::{
    self, AsFloats, Floating, FreeSurface, Hull, Mark, Outcome, Weight, as_she_floats, equilibrium,
    free_surface_rise,
};
use crate::physics::weight::FRESH_WATER_LB_FT3;
use crate::quantity::{Dimensioned, Measure, Text, pounds_per_cubic_foot, say};
use crate::rig::{Missing, Rig};

use aboard::{Aboard, Loading};
pub use ledger::{Entry, Movable, plate_point};
pub use remedy::Shift;
pub use shape::{BracketBox, Built, ShapeFault, shape_fault};

/// Weight of salt water. Source: Coast Guard boatbuilder's handbook: 64 lb/ft³.
pub const SALT_WATER_LB_FT3: f64 = 64.0;
/// Height of the bare boat's centre over the height from keel to highest sheer, where nobody knows it.
/// Common practice, no source.
const CENTRE_OVER_HEIGHT: f64 = 0.5;

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

/// The fit to the marks.
#[derive(Clone, Debug)]
pub struct AsMeasured {
    /// What the marks say.
    pub fit: AsFloats,
    /// The marks, by name.
    pub names: Vec<String>,
    /// The marks.
    pub marks: Vec<Mark>,
    /// What was aboard then and is no part of the bare boat.
    pub aboard: Vec<Entry>,
    /// Which engines hung then.
    pub engines: EnginesThen,
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

/// One loading, before and after.
#[derive(Clone, Debug)]
pub struct Loaded {
    /// What it is called.
    pub name: String,
    /// Whether the crew stands to one side on purpose.
    pub to_one_side: bool,
    /// Whether no engines are given at all, and she floats as she is.
    pub alone: bool,
    /// With the old engines, where they are known.
    pub before: Option<State>,
    /// With the new engines, where they are known; as she is, where there are none at all.
    pub after: Option<State>,
}

/// She, loaded, at rest.
#[derive(Clone, Debug)]
pub struct State {
    /// Which hull floats.
    pub side: Side,
    /// What weighs on her.
    pub entries: Vec<Entry>,
    /// All of it together.
    pub total: Weight,
    /// Where she comes to rest.
    pub outcome: Outcome,
    /// What free surfaces take off her metacentric height.
    pub free_surface: FreeSurface,
}

impl State {
    /// How she lies, if she floats.
    pub fn floating(&self) -> Option<&Floating> {
        self.outcome.at_rest()
    }

    /// How she lies, if she floats right side up.
    ///
    /// # Errors
    /// Why not, in words.
    pub fn upright(&self) -> Result<&Floating, Text> {
        match &self.outcome {
            Outcome::Stable(floating) => Ok(floating),
            Outcome::Unstable { settled, .. } if settled.attitude().heel.si().cos() > 0.0 => {
                Ok(settled)
            }
            Outcome::Unstable { .. } | Outcome::Capsized(_) => Err(Text::from(
                "she turns over: she is not stable upright with these weights",
            )),
            Outcome::Sinks { mass, largest } => Err(say!(
                "she sinks: {} is more than the {} that her whole hull can carry",
                Measure::of(*mass),
                Measure::of(*largest)
            )),
            Outcome::NotConverged { .. } => Err(Text::from("no balance was found")),
        }
    }

    /// GM for heel, free surfaces taken off.
    pub fn gm(&self) -> Option<Length> {
        Some(self.floating()?.gm_transverse - self.free_surface.transverse)
    }

    /// How deep the transom sits: the origin of boat axes under the water.
    pub fn draft_aft(&self) -> Option<Length> {
        Some(self.floating()?.attitude().sinkage)
    }
}

impl Loaded {
    /// The state that rules judge: with the new engines, else as she is.
    pub fn judged(&self) -> Option<&State> {
        self.after.as_ref().or(self.before.as_ref())
    }

    /// Both sides, where both are known.
    pub fn both(&self) -> Option<(&State, &State)> {
        Some((self.before.as_ref()?, self.after.as_ref()?))
    }
}

impl Float {
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
    pub fn full(&self, tank: &crate::job::TankEntry) -> Option<Mass> {
        let entry = ledger::of_tank(tank, 1.0, self.water).ok()??;
        Some(entry.weight.mass)
    }

    /// Which side of the repower is judged, in words.
    pub fn judged_words(&self) -> &'static str {
        match self.loadings.first() {
            Some(Loaded { alone: true, .. }) => "as she is",
            Some(Loaded {
                before: Some(_),
                after: None,
                ..
            }) => "with the old engines",
            _ => "with the new engines",
        }
    }

    /// Floats these weights.
    fn state(&self, side: Side, entries: Vec<Entry>) -> Result<State, NoFloat> {
        state(self.hull(side), self.water, side, entries)
    }
}

fn state(
    hull: &Hull,
    water: MassDensity,
    side: Side,
    entries: Vec<Entry>,
) -> Result<State, NoFloat> {
    let weights: Vec<Weight> = entries.iter().map(|entry| entry.weight).collect();
    let cannot = |error: float::FloatError| NoFloat::Cannot(say!("{}.", error.to_string()));
    let total = float::total(&weights).map_err(cannot)?;
    let load = float::Load {
        mass: total.mass,
        centre: total.centre,
        water,
    };
    let outcome = equilibrium(hull, &load).map_err(cannot)?;
    let slack: Vec<float::Tank> = entries.iter().filter_map(|entry| entry.tank).collect();
    let free_surface = free_surface_rise(&slack, total.mass).map_err(cannot)?;
    Ok(State {
        side,
        entries,
        total,
        outcome,
        free_surface,
    })
}

impl<'a> Case<'a> {
    /// How she floats.
    ///
    /// # Errors
    /// What is missing, or why what is given cannot float.
    pub fn float(&self) -> Result<&Float, &NoFloat> {
        self.float.get_or_init(|| make(self.rig)).as_ref()
    }
}

fn make(rig: &Rig) -> Result<Float, NoFloat> {
    let afloat = &rig.afloat;
    if afloat.boat_weight.reading().is_none() && afloat.marks.reading().is_none() {
        let missing = [afloat.shape.ask().err(), afloat.marks.ask().err()];
        return Err(NoFloat::Missing(missing.into_iter().flatten().collect()));
    }
    let built = shape::built(rig)?;
    let mut assumed = Vec::new();
    let boxes = [
        shape::boxes(rig, &rig.before, &mut assumed),
        shape::boxes(rig, &rig.after, &mut assumed),
    ];
    let hulls = boxes.each_ref().map(|boxes| {
        boxes.iter().fold(built.hull.clone(), |hull, body| {
            hull.with_body(body.mesh.clone())
        })
    });
    let water = match &afloat.water {
        Some(Water::Salt) => pounds_per_cubic_foot(SALT_WATER_LB_FT3),
        Some(Water::Fresh) => pounds_per_cubic_foot(FRESH_WATER_LB_FT3),
        Some(Water::Density(density)) => density.value,
        None => {
            assumed.push(Text::from(
                "She is taken to lie in salt water: the water is not given.",
            ));
            pounds_per_cubic_foot(SALT_WATER_LB_FT3)
        }
    };
    let (low, high) = built.hull.bounds();
    let has_engines = !rig.before.is_empty() || !rig.after.is_empty();
    if has_engines {
        assumed.push(Text::from(
            "The engines' legs are taken to displace nothing (the careful way).",
        ));
    }
    let aboard = Aboard::of(rig, water, (low, high), &mut assumed)?;
    let before = side_entries(&rig.before, rig)?;
    let after = side_entries(&rig.after, rig)?;
    let centre_height = match &afloat.boat.above {
        Some(above) => above.value.si(),
        None => {
            let height = low.z + CENTRE_OVER_HEIGHT * (high.z - low.z);
            assumed.push(say!(
                "The bare boat's centre is taken {} above the bottom: half the height from keel to highest sheer (common practice, no source).",
                Measure::tape(Length::from_si(height))
            ));
            height
        }
    };
    let bare_of = |mass: Mass, centre: Point3<f64>| Entry::new("bare boat", mass, centre);
    let (bare, as_measured) = match (afloat.marks.reading(), afloat.boat_weight.reading()) {
        (Some(marks), _) => {
            let engines = afloat.engines.unwrap_or(match rig.sitting {
                Sitting::AsFitted => EnginesThen::New,
                _ if rig.before.is_empty() && rig.after.is_empty() => EnginesThen::None,
                _ => EnginesThen::Old,
            });
            let (hull, hung, outfit) = match engines {
                EnginesThen::Old => (&hulls[0], &before, Some(&rig.before)),
                EnginesThen::New => (&hulls[1], &after, Some(&rig.after)),
                EnginesThen::None => (&hulls[0], &None, None),
            };
            if let Some(outfit) = outfit {
                outfit
                    .ask()
                    .map_err(|missing| NoFloat::Missing(vec![missing]))?;
            }
            let mut then: Vec<Entry> = hung.clone().unwrap_or_default();
            then.extend(aboard.when_measured(rig)?);
            let marks: Vec<(String, Mark)> = marks.iter().enumerate().map(aboard::mark).collect();
            let measured = measure(hull, marks, centre_height, water, then, engines)?;
            if !measured.fit.heel_fitted {
                assumed.push(Text::from(
                    "She is taken as upright when her marks were taken: they do not stand on both sides.",
                ));
            }
            let worst = measured.fit.misfits.iter().map(|misfit| misfit.abs());
            if let Some(worst) = worst.max_by(|a, b| a.si().total_cmp(&b.si())) {
                let unknowns = if measured.fit.heel_fitted { 3 } else { 2 };
                if measured.marks.len() == unknowns {
                    assumed.push(Text::from(
                        "Her marks are just as many as what they tell: nothing checks them. One more mark would.",
                    ));
                } else {
                    assumed.push(say!(
                        "Her {} marks lie within {} of one water plane.",
                        measured.marks.len(),
                        Measure::of(worst)
                    ));
                }
            }
            let mut weights: Vec<Weight> = vec![Weight {
                mass: measured.fit.load.mass,
                centre: measured.fit.load.centre,
            }];
            weights.extend(measured.aboard.iter().map(|e| e.removed().weight));
            let bare = float::total(&weights).map_err(|_| too_much_aboard(&measured))?;
            (bare_of(bare.mass, bare.centre), Some(measured))
        }
        (None, Some(weight)) => {
            let Some(x) = ledger::value(afloat.boat.forward.as_ref()) else {
                return Err(NoFloat::Missing(vec![Missing {
                    measurement: &tape::BOAT_WEIGHT,
                    of: Some("her centre, forward of the transom".to_owned()),
                }]));
            };
            let y = ledger::y_of(afloat.boat.across.as_ref());
            (
                bare_of(weight.value, Point3::new(x, y, centre_height)),
                None,
            )
        }
        (None, None) => return Err(NoFloat::Missing(vec![])),
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
    let side_of = |fixed: &[Entry]| -> f64 {
        let moment = |entry: &Entry| entry.weight.mass.si() * entry.weight.centre.y;
        fixed.iter().chain([&float.bare]).map(moment).sum()
    };
    let heavy_side = side_of(after.as_deref().or(before.as_deref()).unwrap_or_default());
    let loadings = aboard.loadings(rig, heavy_side, float.as_measured.is_some())?;
    for loading in loadings {
        let loaded = load(&float, &loading, before.as_deref(), after.as_deref())?;
        float.loadings.push(loaded);
    }
    Ok(float)
}

fn load(
    float: &Float,
    loading: &Loading,
    before: Option<&[Entry]>,
    after: Option<&[Entry]>,
) -> Result<Loaded, NoFloat> {
    let alone = before.is_none() && after.is_none();
    let one = |side: Side, outfit: Option<&[Entry]>, wanted: bool| {
        wanted
            .then(|| {
                let mut entries = vec![float.bare.clone()];
                entries.extend(outfit.unwrap_or_default().iter().cloned());
                entries.extend(loading.entries.iter().cloned());
                float.state(side, entries)
            })
            .transpose()
    };
    Ok(Loaded {
        name: loading.name.clone(),
        to_one_side: loading.to_one_side,
        alone,
        before: one(Side::Before, before, before.is_some())?,
        after: one(Side::After, after, after.is_some() || alone)?,
    })
}

/// What an outfit weighs, where there is one.
fn side_entries(outfit: &crate::rig::Outfit, rig: &Rig) -> Result<Option<Vec<Entry>>, NoFloat> {
    if outfit.is_empty() && outfit.items.is_empty() {
        return Ok(None);
    }
    ledger::of_outfit(rig, outfit)
        .map(Some)
        .map_err(NoFloat::Missing)
}

/// Floats her to her marks. The height of the whole boat's centre is that of the bare boat with what is
/// aboard, which needs her mass first.
fn measure(
    hull: &Hull,
    marks: Vec<(String, Mark)>,
    bare_height: f64,
    water: MassDensity,
    aboard: Vec<Entry>,
    engines: EnginesThen,
) -> Result<AsMeasured, NoFloat> {
    let (names, marks): (Vec<String>, Vec<Mark>) = marks.into_iter().unzip();
    let fit = |height: f64| {
        as_she_floats(hull, &marks, Length::from_si(height), water).map_err(|error| {
            NoFloat::Cannot(say!(
                "Her marks do not tell how she lies: {}.",
                error.to_string()
            ))
        })
    };
    let mass = fit(bare_height)?.load.mass.si();
    let (kg, moment) = aboard.iter().fold((0.0, 0.0), |(kg, moment), entry| {
        let mass = entry.weight.mass.si();
        (kg + mass, moment + mass * entry.weight.centre.z)
    });
    let height = ((mass - kg) * bare_height + moment) / mass;
    let measured = AsMeasured {
        fit: fit(height)?,
        names,
        marks,
        aboard,
        engines,
    };
    if kg >= mass {
        return Err(too_much_aboard(&measured));
    }
    Ok(measured)
}

fn too_much_aboard(measured: &AsMeasured) -> NoFloat {
    let aboard: f64 = measured.aboard.iter().map(|e| e.weight.mass.si()).sum();
    NoFloat::Cannot(say!(
        "By her marks she displaces {}, and {} was hung on her and aboard: nothing is left for the boat. Check marks, sections and weights.",
        Measure::of(measured.fit.load.mass),
        Measure::of(Mass::from_si(aboard))
    ))
}

/// An angle in words: bow up or down.
pub fn trim_words(trim: Angle) -> Text {
    let size = Measure::of(trim.abs());
    if trim.si() >= 0.0 {
        say!("{} bow up", size)
    } else {
        say!("{} bow down", size)
    }
}

/// A heel in words.
pub fn heel_words(heel: Angle) -> Text {
    let size = Measure::of(heel.abs());
    if heel.si() >= 0.0 {
        say!("{} to starboard", size)
    } else {
        say!("{} to port", size)
    }
}
