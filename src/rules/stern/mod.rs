//! Stern: how she floats with what hangs on her, in every loading.

mod bracket_immersion;
mod capacity_from_shape;
mod crew_to_side;
mod freeboard;
mod list;
mod metacentric_height;
mod plate_immersed;
mod put_back;
mod scuppers;
mod trim_change;
mod well_edge;

use put_back::{Wanted, put_back, room_at_stern, so, stowed, too_low};

use crate::rules::mend;
use uom::si::f64::Length;

use super::{Finding, Rule, Verdict};
use crate::case::float::{Crew, EdgePoint, Float, Loaded, State};
use crate::job::EdgeKind;
use crate::physics::float::Floating;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::working::{Sheet, Table};

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] = &[
    &trim_change::TRIM_CHANGE,
    &well_edge::WELL_EDGE,
    &scuppers::SCUPPERS,
    &freeboard::FREEBOARD,
    &list::LIST,
    &metacentric_height::METACENTRIC_HEIGHT,
    &crew_to_side::CREW_TO_SIDE,
    &capacity_from_shape::CAPACITY_FROM_SHAPE,
    &bracket_immersion::BRACKET_IMMERSION,
    &plate_immersed::PLATE_IMMERSED,
];

/// A loading, what is judged in it, and how she lies.
type Lying<'f> = (&'f Loaded, &'f State, &'f Floating);

/// The loadings in which what is judged floats upright. None at all is another rule's finding.
fn upright(float: &Float) -> Result<Vec<Lying<'_>>, Finding> {
    let all: Vec<_> = float.loadings.iter().filter_map(|loaded| lying(loaded)?.ok()).collect();
    if all.is_empty() {
        return Err(Finding::not_applicable(Text::from("She floats upright in no loading: see “metacentric height”.")));
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
            "Check weights, places and shape first; if they are right, she must not carry this (see “metacentric height”)."))
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
    for symbol in ["x", "y", "z"] {
        sheet.origin::<Length>(symbol, "the edge's place, as told");
    }
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
