//! Who and what is aboard in each loading, and the edges to look at.

use nalgebra::Point3;
use uom::si::f64::{Length, Mass, MassDensity};

use super::ledger::{self, Entry, Movable, value, y_of};
use super::shape::Built;
use super::{EdgePoint, NoFloat};
use crate::job::{CrewAt, EdgeKind, Liquid, Mark as JobMark, Plate, TankEntry};
use crate::physics::float::Mark;
use crate::quantity::{Dimensioned, Measure, Text, inches, pounds, say};
use crate::rig::Rig;

/// Weight of a person. Value from memory: the average that US passenger vessels reckon with.
const PERSON_LB: f64 = 185.0;
/// Persons who go out in her where nobody says. Common practice, no source.
const CREW: u16 = 3;
/// How full a tank is where nobody looked. Common practice, no source.
const HALF: f64 = 0.5;
/// Where persons stand aft, where no place is given, as a part of the hull's length. Common practice,
/// no source.
const AFT_OVER_LENGTH: f64 = 0.1;
/// Where the helm stands, likewise.
const HELM_OVER_LENGTH: f64 = 0.4;
/// How far inside the greatest breadth a person's centre comes at the rail. Common practice, no source.
const INSIDE_RAIL_IN: f64 = 8.0;

/// A place for persons, resolved.
#[derive(Clone, Debug)]
struct Place {
    name: String,
    holds: u16,
    at: Point3<f64>,
}

/// All that can be aboard.
#[derive(Clone, Debug)]
pub(super) struct Aboard {
    person: Mass,
    crew: u16,
    /// The aftmost first.
    places: Vec<Place>,
    tanks: Vec<TankEntry>,
    gear: Vec<Entry>,
    sea: MassDensity,
    /// Centre of a person where its height is not given.
    standing: f64,
    rail: f64,
}

/// One loading, without the boat and her engines.
#[derive(Clone, Debug)]
pub(super) struct Loading {
    pub name: String,
    pub to_one_side: bool,
    pub entries: Vec<Entry>,
}

/// How full the tanks are.
#[derive(Clone, Copy)]
struct Fill {
    fuel: Option<f64>,
    water: Option<f64>,
    live_well: Option<f64>,
}

impl Aboard {
    pub(super) fn of(
        rig: &Rig,
        sea: MassDensity,
        (low, high): (Point3<f64>, Point3<f64>),
        assumed: &mut Vec<Text>,
    ) -> Result<Self, NoFloat> {
        let afloat = &rig.afloat;
        let in_use = rig.sitting != crate::job::Sitting::Study || !rig.after.is_empty();
        let standing = high.z;
        let person = match &afloat.person {
            Some(person) => person.value,
            None => {
                if in_use {
                    assumed.push(say!(
                        "A person is taken as {} (value from memory).",
                        Measure::of(pounds(PERSON_LB))
                    ));
                }
                pounds(PERSON_LB)
            }
        };
        let crew = afloat.crew.unwrap_or_else(|| {
            let plate = match rig.plate.reading() {
                Some(Plate::Capacity { persons, .. } | Plate::Builders { persons, .. }) => *persons,
                _ => None,
            };
            let crew = plate.unwrap_or(CREW).min(CREW);
            if in_use && afloat.conditions.is_empty() {
                assumed.push(say!(
                    "{} persons are taken to go out in her.",
                    u32::from(crew)
                ));
            }
            crew
        });
        let length = high.x - low.x.min(0.0);
        let mut places: Vec<Place> = afloat
            .places
            .iter()
            .map(|seat| Place {
                name: seat.what.clone(),
                holds: seat.holds.unwrap_or(1),
                at: Point3::new(
                    value(seat.forward.as_ref()).unwrap_or(AFT_OVER_LENGTH * length),
                    y_of(seat.across.as_ref()),
                    value(seat.above.as_ref()).unwrap_or(standing),
                ),
            })
            .collect();
        if afloat.places.iter().any(|seat| seat.above.is_none())
            || (places.is_empty() && in_use && afloat.conditions.is_empty())
        {
            assumed.push(say!(
                "Persons' centres are taken {} above the bottom, level with the highest sheer, where nothing is given (the careful way).",
                Measure::tape(Length::from_si(standing))
            ));
        }
        if places.is_empty() {
            let place = |name: &str, holds, part: f64| Place {
                name: name.to_owned(),
                holds,
                at: Point3::new(part * length, 0.0, standing),
            };
            places = vec![
                place("aft in the cockpit", u16::MAX, AFT_OVER_LENGTH),
                place("at the helm", 2, HELM_OVER_LENGTH),
            ];
            if in_use && afloat.conditions.is_empty() {
                assumed.push(say!(
                    "Persons aft are taken to stand {} forward of the transom: no place is given.",
                    Measure::tape(Length::from_si(AFT_OVER_LENGTH * length))
                ));
            }
        }
        places.sort_by(|a, b| a.at.x.total_cmp(&b.at.x));
        let gear = ledger::of_items(rig, &afloat.gear).map_err(NoFloat::Missing)?;
        for tank in &afloat.tanks {
            if tank.fill.is_none() && afloat.marks.reading().is_some() {
                assumed.push(say!(
                    "`{}` is taken as half full when the marks were taken.",
                    tank.what.as_str()
                ));
            }
            if tank.length.is_none() || tank.width.is_none() {
                assumed.push(say!(
                    "The free surface of `{}` is left out: its length and width are not given.",
                    tank.what.as_str()
                ));
            }
        }
        Ok(Aboard {
            person,
            crew,
            places,
            tanks: afloat.tanks.clone(),
            gear,
            sea,
            standing,
            rail: (high.y - inches(INSIDE_RAIL_IN).si()).max(0.0),
        })
    }

    /// Tanks, persons and the rest when the marks were taken.
    pub(super) fn when_measured(&self, rig: &Rig) -> Result<Vec<Entry>, NoFloat> {
        let mut entries = self.tanks(&Fill {
            fuel: None,
            water: None,
            live_well: None,
        })?;
        entries.extend(self.gear.iter().cloned());
        entries.extend(self.crew_at(&rig.afloat.crew_then));
        entries.extend(ledger::of_items(rig, &rig.afloat.also_then).map_err(NoFloat::Missing)?);
        Ok(entries)
    }

    fn tanks(&self, fill: &Fill) -> Result<Vec<Entry>, NoFloat> {
        let mut entries = Vec::new();
        for tank in &self.tanks {
            let wanted = match tank.holds {
                Liquid::Fuel => fill.fuel,
                Liquid::Water => fill.water,
                Liquid::LiveWell => fill.live_well,
            };
            let as_found = tank.fill.as_ref().map_or(HALF, |fill| fill.value.si());
            entries.extend(ledger::of_tank(tank, wanted.unwrap_or(as_found), self.sea)?);
        }
        Ok(entries)
    }

    fn persons(&self, count: u16, name: &str, at: Point3<f64>) -> Option<Entry> {
        let persons = match count {
            0 => return None,
            1 => "1 person".to_owned(),
            n => format!("{n} persons"),
        };
        let entry = Entry::new(
            format!("{persons}, {name}"),
            self.person * f64::from(count),
            at,
        );
        Some(entry.movable(Movable::Persons))
    }

    fn crew_at(&self, crew: &[CrewAt]) -> Vec<Entry> {
        crew.iter()
            .filter_map(|one| {
                let seat = one
                    .at
                    .as_ref()
                    .and_then(|name| self.places.iter().find(|place| place.name == *name));
                let base = seat.map_or(Point3::new(0.0, 0.0, self.standing), |seat| seat.at);
                let at = Point3::new(
                    value(one.forward.as_ref()).unwrap_or(base.x),
                    one.across
                        .as_ref()
                        .map_or(base.y, |across| y_of(Some(across))),
                    value(one.above.as_ref()).unwrap_or(base.z),
                );
                let name = seat.map_or("where the job says", |seat| seat.name.as_str());
                self.persons(one.persons.unwrap_or(1), name, at)
            })
            .collect()
    }

    /// The crew in the aftmost places, as many in each as it holds; the rest in the last one.
    fn crew_aft(&self) -> Vec<Entry> {
        let mut left = self.crew;
        let mut entries = Vec::new();
        let last = self.places.len().saturating_sub(1);
        for (i, place) in self.places.iter().enumerate() {
            let here = if i == last {
                left
            } else {
                left.min(place.holds)
            };
            entries.extend(self.persons(here, &place.name, place.at));
            left -= here;
        }
        entries
    }

    fn crew_at_stern(&self) -> Vec<Entry> {
        self.places
            .first()
            .and_then(|place| self.persons(self.crew, &place.name, place.at))
            .into_iter()
            .collect()
    }

    fn crew_to_side(&self, sign: f64) -> Vec<Entry> {
        let side = if sign > 0.0 { "port" } else { "starboard" };
        let middle = self.places.iter().map(|place| place.at.x).sum::<f64>()
            / self.places.len().max(1) as f64;
        let height = self
            .places
            .iter()
            .map(|place| place.at.z)
            .fold(f64::NEG_INFINITY, f64::max);
        let at = Point3::new(middle, sign * self.rail, height);
        self.persons(self.crew, &format!("at the {side} rail"), at)
            .into_iter()
            .collect()
    }

    /// The user's loadings, or those that are worth a look.
    pub(super) fn loadings(
        &self,
        rig: &Rig,
        heavy_side: f64,
        measured: bool,
    ) -> Result<Vec<Loading>, NoFloat> {
        let mut loadings: Vec<Loading> = Vec::new();
        let fill = |fuel, water, live_well| Fill {
            fuel,
            water,
            live_well,
        };
        if measured {
            loadings.push(Loading {
                name: "as measured".to_owned(),
                to_one_side: false,
                entries: self.when_measured(rig)?,
            });
        }
        let own = &rig.afloat.conditions;
        for condition in own {
            let share = |reading: &Option<crate::quantity::Reading<uom::si::f64::Ratio>>| {
                reading.as_ref().map(|fill| fill.value.si())
            };
            let mut entries = self.tanks(&fill(
                share(&condition.fuel),
                share(&condition.water),
                share(&condition.live_well),
            ))?;
            if !condition.gear_ashore {
                entries.extend(self.gear.iter().cloned());
            }
            entries.extend(self.crew_at(&condition.crew));
            entries.extend(ledger::of_items(rig, &condition.also).map_err(NoFloat::Missing)?);
            loadings.push(Loading {
                name: condition.name.clone(),
                to_one_side: is_to_one_side(&entries, self.rail),
                entries,
            });
        }
        if !own.is_empty() {
            return Ok(loadings);
        }
        let study = rig.sitting == crate::job::Sitting::Study
            && rig.afloat.places.is_empty()
            && rig.afloat.crew.is_none();
        if study {
            if loadings.is_empty() {
                loadings.push(Loading {
                    name: "as given".to_owned(),
                    to_one_side: false,
                    entries: self.when_measured(rig)?,
                });
            }
            return Ok(loadings);
        }
        let mut add = |name: &str, to_one_side, fill: Fill, gear: bool, crew: Vec<Entry>| {
            let mut entries = self.tanks(&fill)?;
            if gear {
                entries.extend(self.gear.iter().cloned());
            }
            entries.extend(crew);
            if !loadings.iter().any(|other| other.entries == entries) {
                loadings.push(Loading {
                    name: name.to_owned(),
                    to_one_side,
                    entries,
                });
            }
            Ok::<(), NoFloat>(())
        };
        let (full, empty) = (Some(1.0), Some(0.0));
        let has_well = self.tanks.iter().any(|t| t.holds == Liquid::LiveWell);
        add("light", false, fill(empty, empty, empty), false, Vec::new())?;
        add(
            "full fuel, crew aft",
            false,
            fill(full, full, empty),
            true,
            self.crew_aft(),
        )?;
        let worst = if has_well {
            "live well full, crew at the stern"
        } else {
            "all full, crew at the stern"
        };
        add(
            worst,
            false,
            fill(full, full, full),
            true,
            self.crew_at_stern(),
        )?;
        let sign = if heavy_side > 0.0 { 1.0 } else { -1.0 };
        add(
            "crew to one side",
            true,
            fill(full, full, empty),
            true,
            self.crew_to_side(sign),
        )?;
        Ok(loadings)
    }
}

/// Whether the persons of a loading stand together well off the centreline.
fn is_to_one_side(entries: &[Entry], rail: f64) -> bool {
    let persons = entries.iter().filter(|e| e.movable == Movable::Persons);
    let (kg, moment) = persons.fold((0.0, 0.0), |(kg, moment), entry| {
        let mass = entry.weight.mass.si();
        (kg + mass, moment + mass * entry.weight.centre.y)
    });
    kg > 0.0 && (moment / kg).abs() > 0.25 * rail
}

/// A mark by name; marks without place or height were refused with the job.
pub(super) fn mark((index, mark): (usize, &JobMark)) -> (String, Mark) {
    let name = mark
        .what
        .clone()
        .unwrap_or_else(|| format!("mark {}", index + 1));
    let point = Point3::new(
        value(mark.forward.as_ref()).unwrap_or(0.0),
        y_of(mark.across.as_ref()),
        value(mark.up.as_ref()).unwrap_or(0.0),
    );
    let height = mark
        .above_water
        .as_ref()
        .map_or(Length::from_si(0.0), |height| height.value);
    (name, Mark { point, height })
}

/// The edges of the job, those of the hull's sheer, and the transom's top where no other edge of the
/// motorwell is given.
pub(super) fn edges(rig: &Rig, built: &Built, assumed: &mut Vec<Text>) -> Vec<EdgePoint> {
    let mut edges = Vec::new();
    for edge in rig.afloat.edges.reading().into_iter().flatten() {
        let point = Point3::new(
            value(edge.forward.as_ref()).unwrap_or(0.0),
            y_of(edge.across.as_ref()),
            value(edge.up.as_ref()).unwrap_or(0.0),
        );
        let sides = if edge.both_sides { 2 } else { 1 };
        for side in 0..sides {
            let y = if side == 0 { point.y } else { -point.y };
            let word = if y > 0.0 { ", port" } else { ", starboard" };
            edges.push(EdgePoint {
                name: format!("{}{}", edge.name, if edge.both_sides { word } else { "" }),
                kind: edge.kind,
                point: Point3::new(point.x, y, point.z),
            });
        }
    }
    let has = |edges: &[EdgePoint], kind| edges.iter().any(|edge| edge.kind == kind);
    if !has(&edges, EdgeKind::Well)
        && let Ok(point) = ledger::transom_top(rig)
    {
        assumed.push(Text::from(
            "The transom's top is taken as the edge where water comes in: no edge of kind well is given.",
        ));
        edges.push(EdgePoint {
            name: "transom's top".to_owned(),
            kind: EdgeKind::Well,
            point,
        });
    }
    if !has(&edges, EdgeKind::Sheer) {
        edges.extend(built.sheer.iter().map(|(name, point)| EdgePoint {
            name: name.clone(),
            kind: EdgeKind::Sheer,
            point: *point,
        }));
    }
    edges
}
