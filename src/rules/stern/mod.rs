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
        Finding::new(verdict, why).remedy(Text::from(
            "Check weights, places and shape first; if they are right, she must not carry this (see stern/metacentric-height).",
        ))
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

/// What to move forward, in words.
fn plan_words(plan: &[Shift]) -> Text {
    Text::join(
        plan.iter().map(|shift| {
            say!(
                "{} ({}) {} forward, to {} from the transom",
                shift.name.as_str(),
                Measure::of(shift.mass),
                Measure::styled(shift.forward.unwrap_or(Length::from_si(0.0)), Style::FeetInches),
                Measure::styled(shift.to, Style::FeetInches)
            )
        }),
        ", and ",
    )
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

/// The ways to meet a goal: things moved forward, else ballast; and less on the stern. In words, with a
/// table of what each thing does alone.
fn put_back(float: &Float, state: &State, goal: &dyn Fn(&Floating) -> f64) -> (Option<Text>, Option<Table>) {
    let shifts = float.shifts(state, goal);
    let table = (!shifts.is_empty()).then(|| shifts_table(&shifts));
    let moved = match float.plan(state, goal) {
        Some(plan) => Some(say!("move ").then(plan_words(&plan))),
        None => ballast(float, state, goal),
    };
    let less = float.on_stern(state).and_then(|(_, hung)| {
        let room = room_at_stern(float, state, goal).filter(|room| room.si() < 0.0)?;
        let left = hung + room;
        (left >= LEAST_LEFT * hung)
            .then(|| say!("hang {} less on the stern, {} in all", Measure::of(-room), Measure::of(left)))
    });
    let ways = match (moved, less) {
        (Some(moved), Some(less)) => Some(moved.then(Text::from("; or ")).then(less)),
        (Some(moved), None) => Some(moved),
        (None, Some(less)) => Some(less.then(Text::from(" (nothing moved or stowed forward is enough)"))),
        (None, None) => None,
    };
    (ways.map(|ways| ways.then(Text::from("."))), table)
}

/// More than this part of what she weighs is not stowed to trim her, and is not told. Common practice, no source.
const MOST_BALLAST: f64 = 0.2;

fn ballast(float: &Float, state: &State, goal: &dyn Fn(&Floating) -> f64) -> Option<Text> {
    let place = float.ballast_place(state);
    let none = Mass::from_si(0.0);
    let mass = float.mass_at(state, &place, (none, MOST_BALLAST * state.total.mass), goal)?;
    Some(say!(
        "stow {} more {} forward of the transom (nothing aboard moved forward is enough)",
        Measure::of(mass),
        Measure::styled(Length::from_si(place.x), Style::FeetInches)
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
