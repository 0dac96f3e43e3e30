//! Stern: how she floats with what hangs on her, in every loading.

mod bracket_immersion;
mod capacity_from_shape;
mod crew_to_side;
mod freeboard;
mod list;
mod metacentric_height;
mod plate_immersed;
mod scuppers;
mod trim_change;
mod well_edge;

pub use bracket_immersion::BRACKET_IMMERSION;
pub use capacity_from_shape::CAPACITY_FROM_SHAPE;
pub use crew_to_side::CREW_TO_SIDE;
pub use freeboard::FREEBOARD;
pub use list::LIST;
pub use metacentric_height::METACENTRIC_HEIGHT;
pub use plate_immersed::PLATE_IMMERSED;
pub use scuppers::SCUPPERS;
pub use trim_change::TRIM_CHANGE;
pub use well_edge::WELL_EDGE;

use crate::job::{EnginesThen, Item, Sitting};
use crate::rig::Rig;
use crate::rules::mend::{self, Change, Mend, Remedy};
use nalgebra::Point3;
use uom::si::f64::{Length, Mass};

use super::{Finding, Verdict};
use crate::case::float::{Crew, EdgePoint, Float, Loaded, Shift, State};
use crate::job::EdgeKind;
use crate::physics::float::Floating;
use crate::quantity::{Dimensioned, Measure, Style, Text, inches, say};
use crate::working::{Sheet, Table};

/// A loading, what is judged in it, and how she lies.
type Lying<'f> = (&'f Loaded, &'f State, &'f Floating);

/// The loadings in which what is judged floats upright. None at all is another rule's finding.
fn upright(float: &Float) -> Result<Vec<Lying<'_>>, Finding> {
    let all: Vec<_> = float.loadings.iter().filter_map(|loaded| lying(loaded)?.ok()).collect();
    if all.is_empty() {
        return Err(Finding::not_applicable(Text::from(
            "She floats upright in no loading: see stern/metacentric-height.",
        )));
    }
    Ok(all)
}

/// These loadings as she lies in them; where she sinks or turns over in one of them, the finding of this verdict
/// that says so: nothing is high enough then.
fn all_upright(float: &Float, verdict: Verdict, wanted: impl Fn(&Loaded) -> bool) -> Result<Vec<Lying<'_>>, Finding> {
    let all = float.loadings.iter().filter(|loaded| wanted(loaded)).filter_map(lying);
    all.collect::<Result<_, _>>().map_err(|why| {
        let why = why.then(Text::from("."));
        Finding::new(verdict, why).remedy(mend::look(
            "Check weights, places and shape first; if they are right, she must not carry this (see stern/metacentric-height)."))
    })
}

/// How she lies in a loading, or why she does not float upright in it.
fn lying(loaded: &Loaded) -> Option<Result<Lying<'_>, Text>> {
    let state = loaded.judged()?;
    Some(match state.upright() {
        Ok(floating) => Ok((loaded, state, floating)),
        Err(why) => Err(say!("In `{}` ", loaded.name.as_str()).then(why)),
    })
}

/// With the crew inboard of the rail.
fn inboard(loaded: &Loaded) -> bool {
    !loaded.to_one_side()
}

/// As she lies for long: at her mooring, or with everybody at their stations.
fn lasting(loaded: &Loaded) -> bool {
    matches!(loaded.crew, Crew::Ashore | Crew::AtStations)
}

/// An edge in a loading, and how high it stands above the water there.
#[derive(Clone, Copy)]
struct Height<'f> {
    loaded: &'f Loaded,
    state: &'f State,
    edge: &'f EdgePoint,
    height: Length,
}

/// The height with the least room to its limit; where there is no limit, it does not count.
fn worst<'f>(
    loadings: &[Lying<'f>],
    edges: &[&'f EdgePoint],
    limit: &dyn Fn(&Loaded, EdgeKind) -> Option<Length>,
) -> Option<Height<'f>> {
    let heights = loadings.iter().flat_map(|(loaded, state, floating)| {
        edges.iter().filter_map(move |edge| {
            let height = floating.height_above_water(&edge.point);
            let room = height - limit(loaded, edge.kind)?;
            Some((room, Height { loaded, state, edge, height }))
        })
    });
    // Of places that stand alike the first is told, on whichever side rounding puts the lower one.
    let lower = |least: (Length, Height<'f>), other: (Length, Height<'f>)| {
        if other.0.si() < least.0.si() - ALIKE_M { other } else { least }
    };
    heights.reduce(lower).map(|(_, height)| height)
}

/// Two heights that differ by no more are alike, metres: rounding.
const ALIKE_M: f64 = 1e-9;

/// Heights of edges in every loading, before and after.
fn heights_table(float: &Float, edges: &[&EdgePoint]) -> Table {
    let mut rows = Vec::new();
    for loaded in &float.loadings {
        for edge in edges {
            let at = |state: Option<&State>| {
                state
                    .and_then(State::floating)
                    .map_or(Text::from("-"), |floating| Measure::of(floating.height_above_water(&edge.point)).into())
            };
            rows.push(vec![
                Text::from(loaded.name.as_str()),
                Text::from(edge.name.as_str()),
                at(loaded.before.as_ref()),
                at(loaded.after.as_ref()),
            ]);
        }
    }
    Table::new("heights above water", &["loading", "edge", "before", "after"], rows)
}

/// What an edge lost by the repower in this loading, where a tape shows it.
fn lost(loaded: &Loaded, edge: &EdgePoint) -> Option<Length> {
    let (before, after) = loaded.both()?;
    let height = |state: &State| Some(state.floating()?.height_above_water(&edge.point));
    let lost = height(before)? - height(after)?;
    (lost.abs() >= inches(HALF_A_MARK_IN)).then_some(lost)
}

/// A change of less does not show on a tape: half a sixteenth of an inch.
const HALF_A_MARK_IN: f64 = 1.0 / 32.0;

/// How the height came about: the solver, its residual and its inputs.
fn height_sheet(height: &Height, floating: &Floating) -> Sheet {
    use crate::working::Term;
    let mut sheet = Sheet::default();
    let normal = floating.plane.normal();
    let point = height.edge.point;
    sheet.remark(say!(
        "loading `{}`: {}, centre {} forward; balance by Newton's method in sinkage, trim and heel, {} steps, weight and buoyancy agree to {}",
        height.loaded.name.as_str(),
        Measure::of(height.state.total.mass),
        Measure::of(Length::from_si(height.state.total.centre.x)),
        floating.steps,
        format!("{:.0e}", floating.residual.force.abs())
    ));
    let part = |symbol: &str, n: f64, at: f64| {
        Term::new(format!("n{symbol}"), uom::si::f64::Ratio::from_si(n))
            * Term::new(symbol.to_owned(), Length::from_si(at))
    };
    sheet.set(
        "h",
        "height of the edge above the water plane of normal n and offset d",
        part("x", normal.x, point.x) + part("y", normal.y, point.y) + part("z", normal.z, point.z)
            - Term::new("d", floating.plane.offset()),
    );
    sheet
}

/// Step in which things are stowed. Common practice, no source.
const STOWED_IN: f64 = 1.0;

/// The remedy with this before its words.
fn so(before: Text, remedy: Remedy) -> Remedy {
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
fn stowed(rig: &Rig, entry: &str, field: &str, value: String) -> Option<Vec<Change>> {
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

/// A loading in which something is to come about: what is not below zero is enough.
struct Wanted<'f> {
    state: &'f State,
    goal: Box<dyn Fn(&Floating) -> f64 + 'f>,
}

/// All loadings with what is to come about in them, no edge below its limit, the worst first.
fn too_low<'f>(
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
fn put_back(rig: &Rig, float: &Float, wanted: &[Wanted]) -> (Option<Remedy>, Option<Table>) {
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
        (left >= LEAST_LEFT * hung).then(|| {
            let words = if rig.job.sitting == Sitting::AsFitted {
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
const MOST_BALLAST: f64 = 0.2;

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
fn room_at_stern(float: &Float, state: &State, goal: &dyn Fn(&Floating) -> f64) -> Option<Mass> {
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
