//! The ways to bring an edge or a trim back: things moved forward, ballast, less on the stern.

use nalgebra::Point3;
use uom::si::f64::{Length, Mass};

use super::Lying;
use crate::case::float::{EdgePoint, Float, Loaded, Shift, State};
use crate::job::{EdgeKind, EnginesThen, Item, Sitting};
use crate::physics::float::Floating;
use crate::quantity::{Dimensioned, Measure, Style, Text, say};
use crate::rig::Rig;
use crate::rules::mend::{self, Change, Mend, Remedy};
use crate::working::Table;

/// Step in which things are stowed. Common practice, no source.
const STOWED_IN: f64 = 1.0;

/// The remedy with this before its words.
pub(super) fn so(before: Text, remedy: Remedy) -> Remedy {
    Remedy { words: before.then(remedy.words), ..remedy }
}

/// What to move forward: in words, and as changes of the job where all of it has its entry there.
fn planned(rig: &Rig, plan: &[Shift]) -> Remedy {
    let mut words = Vec::new();
    let mut changes = Some(Vec::new());
    for shift in plan {
        let by = shift.forward.unwrap_or_default();
        let forward = mend::up(by, STOWED_IN);
        let to = shift.to - by + forward;
        words.push(say!(
            "{} ({}) {} forward, to {} from the transom",
            shift.name.as_str(),
            Measure::of(shift.mass),
            Measure::styled(forward, Style::FeetInches),
            Measure::styled(to, Style::FeetInches)
        ));
        let moved = shift.entry.as_ref().and_then(|entry| stowed(rig, entry, "forward", mend::exactly(to)));
        changes = changes.zip(moved).map(|(mut all, moved)| {
            all.extend(moved);
            all
        });
    }
    Remedy::new(Text::join(words, ", and "), [changes.map_or(Mend::Care, Mend::Change)])
}

/// An item that is stowed elsewhere. What was aboard when her marks were taken lay then where it lay: it comes off there, and
/// goes on here. Where they were taken with the new engines on her, there is no writing that.
pub(super) fn stowed(rig: &Rig, entry: &str, field: &str, value: String) -> Option<Vec<Change>> {
    let direct = || Some(vec![Change::to(format!("{entry}.{field}"), value.clone())]);
    if entry.starts_with("goes_on") {
        return direct();
    }
    let index = entry.strip_prefix("weights.gear[")?.strip_suffix(']')?.parse::<usize>().ok()?;
    let afloat = &rig.job.afloat;
    if afloat.marks().reading().is_none() {
        return direct();
    }
    let fitted = rig.job.sitting == Sitting::AsFitted;
    let then = afloat.engines.unwrap_or(if fitted { EnginesThen::New } else { EnginesThen::Old });
    if then != EnginesThen::Old {
        return None;
    }
    let item = rig.job.weights.gear.get(index)?;
    let across = |item: &Item| item.across.as_ref().map(|across| ("across", mend::across(across.y())));
    let before: Vec<(&str, String)> = across(item).into_iter().collect();
    let mut after = before.clone();
    after.push((field, value.clone()));
    Some(vec![
        Change::out(entry),
        Change::to(format!("comes_off[{}]", rig.job.comes_off.len()), mend::described(item, &before)),
        Change::to(format!("goes_on[{}]", rig.job.goes_on.len()), mend::described(item, &after)),
    ])
}

/// How far each thing aboard would have to go alone.
fn shifts_table(shifts: &[Shift]) -> Table {
    let rows = shifts
        .iter()
        .map(|shift| {
            vec![
                Text::from(shift.name.as_str()),
                Measure::of(shift.mass).into(),
                shift.forward.map_or(Text::from("not enough alone"), |forward| {
                    Measure::styled(forward, Style::FeetInches).into()
                }),
                Measure::styled(shift.to, Style::FeetInches).into(),
            ]
        })
        .collect();
    Table::new("what would put her back, each alone", &["item", "weight", "forward by", "to"], rows)
}

/// Less than this part of what hangs on the stern is no engine for the boat any more, and is not told as a way out.
/// Common practice, no source.
const LEAST_LEFT: f64 = 0.5;
/// The same where the engines hang there already, and others of their power would take their place.
const LEAST_LEFT_FITTED: f64 = 0.75;

/// A loading in which something is to come about: what is not below zero is enough.
pub(super) struct Wanted<'f> {
    pub state: &'f State,
    pub goal: Box<dyn Fn(&Floating) -> f64 + 'f>,
}

/// All loadings with what is to come about in them, no edge below its limit, the worst first.
pub(super) fn too_low<'f>(
    loadings: &[Lying<'f>],
    edges: &'f [&'f EdgePoint],
    limit: &dyn Fn(&Loaded, EdgeKind) -> Option<Length>,
) -> Vec<Wanted<'f>> {
    let mut all: Vec<(f64, Wanted<'f>)> = Vec::new();
    for (loaded, state, lies) in loadings {
        let points: Vec<(Point3<f64>, f64)> =
            edges.iter().filter_map(|edge| Some((edge.point, limit(loaded, edge.kind)?.si()))).collect();
        let goal = move |f: &Floating| {
            let rooms = points.iter().map(|(point, least)| f.height_above_water(point).si() - least);
            rooms.fold(f64::INFINITY, f64::min)
        };
        let room = goal(lies);
        if room.is_finite() {
            all.push((room, Wanted { state, goal: Box::new(goal) }));
        }
    }
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    all.into_iter().map(|(_, wanted)| wanted).collect()
}

impl Wanted<'_> {
    /// Whether it lacks anything as she is.
    fn lacks(&self) -> bool {
        self.state.floating().is_some_and(|lies| (self.goal)(lies) < 0.0)
    }
}

/// The ways to meet a goal: things moved forward, else ballast; and less on the stern. With a table of what each thing does
/// alone.
///
/// It is to be met in each of these loadings, of which the first is the worst.
pub(super) fn put_back(rig: &Rig, float: &Float, wanted: &[Wanted]) -> (Option<Remedy>, Option<Table>) {
    let Some(Wanted { state, goal }) = wanted.first() else { return (None, None) };
    let shifts = float.shifts(state, &**goal);
    let table = (!shifts.is_empty()).then(|| shifts_table(&shifts));
    let lacking: Vec<&Wanted> = wanted.iter().filter(|one| one.lacks()).collect();
    let plans: Option<Vec<Vec<Shift>>> = lacking.iter().map(|one| float.plan(one.state, &*one.goal)).collect();
    let carried = |plan: &Vec<Shift>| -> f64 {
        plan.iter().map(|shift| shift.mass.si() * shift.forward.map_or(0.0, Dimensioned::si)).sum()
    };
    let most = plans.and_then(|plans| plans.into_iter().max_by(|a, b| carried(a).total_cmp(&carried(b))));
    let moved = match most {
        Some(plan) => {
            let planned = planned(rig, &plan);
            Some(so(Text::from("move "), planned))
        }
        None => ballast(rig, float, wanted),
    };
    let less = float.on_stern(state).and_then(|(_, hung)| {
        let rooms: Option<Vec<Mass>> = lacking.iter().map(|one| room_at_stern(float, one.state, &*one.goal)).collect();
        let room = rooms?.into_iter().reduce(|a, b| if b < a { b } else { a }).filter(|room| room.si() < 0.0)?;
        let less = mend::pounds_up(-room);
        let lighter = mend::lighter(rig, less)?;
        let left = hung - less;
        let fitted = rig.job.sitting == Sitting::AsFitted;
        let least = if fitted { LEAST_LEFT_FITTED } else { LEAST_LEFT };
        (left >= least * hung).then(|| {
            let words = if fitted {
                say!("take {} off the stern, so that {} hangs there in all", Measure::of(less), Measure::of(left))
            } else {
                say!("hang {} less on the stern, {} in all", Measure::of(less), Measure::of(left))
            };
            Remedy::new(words, [Mend::Change(lighter)])
        })
    });
    let alone = less.is_some() && moved.is_none();
    let ways: Vec<Remedy> = moved.into_iter().chain(less).collect();
    let words = Text::join(ways.iter().map(|way| way.words.clone()), "; or ").then(Text::from(if alone {
        " (nothing moved or stowed forward is enough)."
    } else {
        "."
    }));
    let remedy = (!ways.is_empty()).then(|| Remedy::new(words, ways.into_iter().flat_map(|way| way.ways)));
    (remedy, table)
}

/// More than this part of what she weighs is not stowed to trim her, and is not told. Common practice, no source.
const MOST_BALLAST: f64 = 0.1;

fn ballast(rig: &Rig, float: &Float, wanted: &[Wanted]) -> Option<Remedy> {
    let place = float.ballast_place(wanted.first()?.state);
    let none = Mass::from_si(0.0);
    let enough =
        |one: &Wanted| float.mass_at(one.state, &place, (none, MOST_BALLAST * one.state.total.mass), &*one.goal);
    let masses: Option<Vec<Mass>> = wanted.iter().filter(|one| one.lacks()).map(enough).collect();
    let mass = masses?.into_iter().reduce(|a, b| if b > a { b } else { a })?;
    // More weight must not put another edge under, or another loading.
    let told = mend::pounds_up(mass);
    let keeps = |one: &Wanted| float.goal_with(one.state, &place, told, &*one.goal).is_some_and(|room| room >= 0.0);
    if !wanted.iter().all(keeps) {
        return None;
    }
    let (mass, forward) = (mend::pounds_up(mass), Length::from_si(place.x));
    let written = format!(
        "(what: \"stowed forward\", weight: {}, forward: {}, above: {})",
        mend::weighing(mass),
        mend::exactly(forward),
        mend::exactly(Length::from_si(place.z))
    );
    Some(Remedy::new(
        say!(
            "stow {} more {} forward of the transom (nothing aboard moved forward is enough)",
            Measure::of(mass),
            Measure::styled(mend::up(forward, STOWED_IN), Style::FeetInches)
        ),
        [Mend::Change(vec![Change::to(format!("goes_on[{}]", rig.job.goes_on.len()), written)])],
    ))
}

/// More than anyone would hang on her stern, kg: where the search for the most ends.
const SEARCH_KG: f64 = 5000.0;

/// The weight that can still be hung at the engines' place until the goal comes down to zero; below zero
/// as much must come off.
pub(super) fn room_at_stern(float: &Float, state: &State, goal: &dyn Fn(&Floating) -> f64) -> Option<Mass> {
    let (place, hung) = float.on_stern(state)?;
    let room = |from: f64, to: f64| float.mass_at(state, &place, (Mass::from_si(from), Mass::from_si(to)), goal);
    if goal(state.floating()?) < 0.0 {
        return room(-hung.si(), 0.0);
    }
    // She may turn over or sink on the way to the far end: come nearer until she does not.
    let mut most = SEARCH_KG;
    while most > 1.0 {
        if let Some(room) = room(0.0, most) {
            return Some(room);
        }
        most *= 0.7;
    }
    None
}
