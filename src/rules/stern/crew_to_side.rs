//! `stern/crew-to-side`

use crate::rules::mend;
use uom::si::f64::{Angle, Length, Mass};

use super::upright;
use crate::case::Case;
use crate::case::float::{EdgePoint, Entry, Float, Loaded, Movable, State, heel_words};
use crate::physics::float::Floating;
use crate::quantity::{Dimensioned, Measure, Style, Text, degrees, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term, number};

rule! {
    /// How far she heels when part of the crew goes to one rail, and how high the lowest edge then stands.
    ///
    /// **Why.** Everybody goes to the side where the fish is.
    ///
    /// **Limit.** At most 10 deg + (24 − length in metres)³ / 600 deg of heel, and no edge under water, with
    /// 60 % of the crew's weight along the worse rail, at the height of the seat and no higher than the
    /// gunwale; loadings of the job as they are given. What the whole crew at the rail does is told.
    ///
    /// **Source.** 33 CFR 183.41(b), stability test (60 %; where the weights lie: from memory); ISO 12217-1,
    /// offset-load test (formula of the heel from memory), taken as practice.
    ///
    /// **When it warns.** It fails where an edge goes under water or she turns over. Allow fewer persons at
    /// the rail: the finding says how many are enough.
    CREW_TO_SIDE = Stern "stern/crew-to-side", judge;
}

/// Base of the limit, degrees. Source: ISO 12217-1, from memory.
const BASE_DEG: f64 = 10.0;
/// Length at which it reaches its base, m. Same source.
const LONG_M: f64 = 24.0;
/// Divisor of the cube, m³/deg. Same source.
const CUBE_OVER: f64 = 600.0;

/// The limit of heel for a length of hull.
fn most(sheet: &mut Sheet, length: Length) -> Angle {
    let short = sheet.set(
        "s",
        "how much shorter than 24 m she is, in metres",
        (Term::constant(Length::from_si(LONG_M)) - Term::new("L", length)) / Term::constant(Length::from_si(1.0)),
    );
    let most = number(BASE_DEG) + &short * &short * &short / number(CUBE_OVER);
    let most = sheet.set("φ", "most heel, in degrees", most);
    degrees(most.value().si())
}

fn judge(case: &Case) -> Judgement {
    let float = case.float()?;
    let turned = float
        .loadings
        .iter()
        .filter(|loaded| loaded.to_one_side())
        .find_map(|loaded| Some((loaded, loaded.judged()?.upright().err()?)));
    if let Some((loaded, why)) = turned {
        return Ok(Finding::new(Verdict::Fail, say!("In `{}` ", loaded.name.as_str()).then(why).then(Text::from(".")))
            .remedy(mend::care("Never let so many to one rail; check weights and places if that cannot be.")));
    }
    let loadings = upright(float)?;
    let heel = |lies: &Floating| lies.attitude().heel.abs();
    let worst = loadings
        .iter()
        .filter(|(loaded, ..)| loaded.to_one_side())
        .max_by(|(.., a), (.., b)| heel(a).si().total_cmp(&heel(b).si()));
    let Some((loaded, state, lies)) = worst else {
        return Ok(Finding::not_applicable(Text::from("No loading that floats upright has the crew to one side.")));
    };
    let lowest = float.lowest_edge(&lies.plane);
    let mut sheet = Sheet::default();
    let bounds = float.hull(state.side).bounds();
    let length = match case.rig.job.boat.length().reading() {
        Some(length) => length.value,
        None => Length::from_si(bounds.1.x - bounds.0.x),
    };
    let from = case.rig.job.boat.length.as_ref().map_or("her shape", |length| length.basis.origin());
    sheet.origin::<Length>("L", from);
    let most = most(&mut sheet, length);
    let found = Measure::of(heel(lies));
    let words = say!("In `{}` ", loaded.name.as_str())
        .then(at_rail(state).map_or(Text::default(), |entry| say!("({}) ", entry.name.as_str())))
        .then(Text::from("she "))
        .then(heels_words(lies, lowest))
        .then(Text::from("."))
        .then(everybody(float));
    let wet = lowest.is_some_and(|(height, _)| height.si() <= 0.0);
    let verdict = if wet {
        Verdict::Fail
    } else if heel(lies) > most {
        Verdict::Warn
    } else {
        Verdict::Pass
    };
    let mut finding = Finding::new(verdict, words);
    if verdict != Verdict::Pass {
        let angle = |f: &Floating| most.si() - f.attitude().heel.si().abs();
        let goal = |f: &Floating| {
            let room = lowest.map_or(f64::INFINITY, |(_, edge)| f.height_above_water(&edge.point).si());
            angle(f).min(room)
        };
        let at_rail = at_rail(state);
        let less = |goal: &dyn Fn(&Floating) -> f64| {
            let entry = at_rail?;
            let range = (-entry.weight.mass, Mass::from_si(0.0));
            float.mass_at(state, &entry.weight.centre, range, goal)
        };
        let heels = || angle(lies) < 0.0 && less(&angle).is_none();
        finding = finding.remedy(mend::care(match (less(&goal), at_rail, lowest) {
            (Some(less), Some(entry), _) => say!(
                "Allow no more than {} at the rail, {} less than here.",
                Measure::of(entry.weight.mass + less),
                Measure::of(-less)
            ),
            (.., Some((_, edge))) if wet && !heels() => say!(
                "Even with nobody at the rail {} stays under water: raise it or keep the water out there, or lighten her (see “freeboard”, “well edge”).",
                edge.name.as_str()
            ),
            _ => Text::from(
                "Even with nobody at the rail she heels too far: right her list first (see “list”).",
            ),
        }));
    }
    sheet.remark(say!(
        "{} altogether, centre {} off the centreline; beam {}",
        Measure::of(state.total.mass),
        Measure::tape(Length::from_si(state.total.centre.y.abs())),
        Measure::styled(Length::from_si(bounds.1.y - bounds.0.y), Style::FeetInches)
    ));
    Ok(finding.against(found, Limit::AtMost(Measure::of(most))).working(sheet))
}

/// The persons at the rail, or the weights that stand for them.
fn at_rail(state: &State) -> Option<&Entry> {
    state.entries.iter().find(|entry| entry.movable == Movable::Persons)
}

fn heels_words(lies: &Floating, lowest: Option<(Length, &EdgePoint)>) -> Text {
    let edge = lowest.map_or(Text::default(), |(height, edge)| {
        if height.si() > 0.0 {
            say!("; the lowest edge ({}) stands {} above the water", edge.name.as_str(), Measure::tape(height))
        } else {
            say!("; the {} lies {} under water", edge.name.as_str(), Measure::tape(-height))
        }
    });
    say!("heels ").then(heel_words(lies.attitude().heel)).then(edge)
}

/// What becomes of her with everybody at that rail.
fn everybody(float: &Float) -> Text {
    let Some(state) = float.all_to_one_side.as_ref().and_then(Loaded::judged) else {
        return Text::default();
    };
    let Some(entry) = at_rail(state) else {
        return Text::default();
    };
    let does = match state.upright() {
        Ok(lies) => say!("she ").then(heels_words(lies, float.lowest_edge(&lies.plane))),
        Err(why) => why,
    };
    say!(" With {} ({}) ", entry.name.as_str(), Measure::of(entry.weight.mass)).then(does).then(Text::from("."))
}
