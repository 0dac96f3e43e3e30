//! `stern/list`

use super::stowed;
use crate::case::float::{Entry, Float};
use crate::rules::mend::{self, Remedy};
use uom::si::f64::Angle;
use uom::si::f64::{Length, Mass};

use super::{all_upright, inboard};
use crate::case::Case;
use crate::case::float::{Crew, State, heel_words};
use crate::quantity::{Dimensioned, Measure, Style, Text, degrees, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term};

rule! {
    /// How far she lists with engines, batteries and tanks where they stand, nobody aboard: where persons
    /// sit is their own choice.
    ///
    /// **Why.** A list is tiresome, steers her to one side, and takes freeboard from the low corner.
    ///
    /// **Limit.** At most 1 deg.
    ///
    /// **Source.** Common practice, no source (the limit); hydrostatics of her own shape (the figure).
    ///
    /// **When it warns.** Move the item that the finding names across, by as much as it says.
    LIST = Stern "stern/list", judge;
}

/// A list that nobody minds. Common practice, no source.
const MOST_DEG: f64 = 1.0;

fn judge(case: &Case) -> Judgement {
    let float = case.float()?;
    let mut loadings = all_upright(float, Verdict::Warn, inboard)?;
    loadings.retain(|(loaded, ..)| loaded.crew == Crew::Ashore);
    let heel = |lies: &crate::physics::float::Floating| lies.attitude().heel.abs();
    let worst = loadings.iter().max_by(|(.., a), (.., b)| heel(a).si().total_cmp(&heel(b).si()));
    let Some((loaded, state, lies)) = worst else {
        return Ok(Finding::not_applicable(Text::from("There is no loading to look at.")));
    };
    let limit = degrees(MOST_DEG);
    let found = Measure::of(heel(lies));
    let words =
        say!("Most in `{}`: ", loaded.name.as_str()).then(heel_words(lies.attitude().heel)).then(Text::from("."));
    let mut sheet = Sheet::default();
    let moment = Term::new("W", state.total.mass) * Term::new("y", Length::from_si(state.total.centre.y));
    let finding = if heel(lies) > limit {
        let finding = Finding::new(Verdict::Warn, words);
        match across(case, float, state, limit, &mut sheet, moment) {
            Some(remedy) => finding.remedy(remedy),
            None => finding.remedy(mend::yard(say!(
                "Her weights together stand {} off the centreline: nothing that can be stowed elsewhere brings them back within the boat; ballast on the high side would.",
                Measure::of(Length::from_si(state.total.centre.y.abs()))
            ))),
        }
    } else {
        sheet.remark(say!(
            "her weights together stand {} off the centreline",
            Measure::of(Length::from_si(state.total.centre.y.abs()))
        ));
        Finding::new(Verdict::Pass, words)
    };
    Ok(finding.against(found, Limit::AtMost(Measure::of(limit))).working(sheet))
}

/// The item that, moved across within the boat, brings the centre back onto the centreline: the easiest, then the shortest
/// way. Where none does, the one that brings her list under its limit, moved as far as the boat is wide.
fn across<M>(
    case: &Case,
    float: &Float,
    state: &State,
    most: Angle,
    sheet: &mut Sheet,
    moment: Term<M>,
) -> Option<Remedy>
where
    M: std::ops::Div<Mass, Output = Length> + Copy,
{
    let off = state.total.mass.si() * state.total.centre.y;
    let rail = state.entries.iter().map(|entry| entry.weight.centre.y.abs()).fold(LEAST_REACH_M, f64::max);
    let heel = |way: f64, entry: &Entry| float.heel_with(state, way * entry.weight.mass.si()).map(|heel| heel.abs());
    let movable = state.entries.iter().filter(|entry| entry.movable.can_move() && entry.weight.mass.si() > 0.0);
    let moved = movable.map(|entry| {
        let y = entry.weight.centre.y;
        // The whole way, or as far as the other rail.
        let way = (y - off / entry.weight.mass.si()).clamp(-rail, rail) - y;
        (entry, way, (off + way * entry.weight.mass.si()).abs() < UPRIGHT * off.abs())
    });
    let enough = moved.filter(|(entry, way, upright)| *upright || heel(*way, entry).is_some_and(|heel| heel < most));
    let (item, way, upright) = enough.min_by(|(a, way, upright), (b, other, as_upright)| {
        (!upright, a.movable, way.abs())
            .partial_cmp(&(!as_upright, b.movable, other.abs()))
            .unwrap_or(std::cmp::Ordering::Equal)
    })?;
    sheet.set("b", "how far it must move across, to the high side", moment / Term::new("w", item.weight.mass));
    let side = if way > 0.0 { "port" } else { "starboard" };
    let at = item.weight.centre.y + way;
    let there = if at > 0.0 { "port" } else { "starboard" };
    let then = if upright {
        Text::from("she is upright then.")
    } else {
        say!("she lists {} then.", Measure::of(heel(way, item).unwrap_or_default()))
    };
    let place = mend::across(Length::from_si(at));
    let change = item.entry.as_ref().and_then(|entry| stowed(case.rig, entry, "across", place));
    let words = say!(
        "Move {} ({}) {} to {}, to {} off the centreline on the {} side: ",
        item.name.as_str(),
        Measure::of(item.weight.mass),
        Measure::tape(Length::from_si(way.abs())),
        side,
        Measure::styled(Length::from_si(at.abs()), Style::Tape),
        there
    );
    Some(mend::Remedy::new(words.then(then), [change.map_or(mend::Mend::Care, mend::Mend::Change)]))
}

/// Things are moved this far off the centreline at the least where nothing stands farther out, m. Common practice, no source.
const LEAST_REACH_M: f64 = 0.5;
/// Part of the moment that may be left where she counts as upright. Common practice, no source.
const UPRIGHT: f64 = 0.01;
