//! `power/matched-pair`

use super::auxiliaries_alone;
use crate::case::Case;
use crate::job::Hand;
use crate::job::{Role, Sitting};
use crate::quantity::{Style, Text, inches, say};
use crate::rig::Rig;
use crate::rig::{Engine, Missing};
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Verdict};

rule! {
    /// Main engines of a multiple install alike in class, power and shaft, the outer propellers of
    /// opposed hands.
    ///
    /// **Why.** Unlike engines share the load unevenly and wear unevenly; propellers that all turn
    /// one way walk the stern sideways and pull the wheel to one side.
    ///
    /// **Limit.** The same class and power for all, and the same shaft to port and starboard; the outermost pair turns opposite ways, or
    /// every engine has two counter-turning propellers.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** Order one engine of the pair with the opposite rotation; where an odd
    /// engine must stay, say in the report that it was known.
    MATCHED_PAIR = Power "power/matched-pair", judge;
}

fn judge(case: &Case) -> Finding {
    if let Some(alone) = auxiliaries_alone(case.rig) {
        return alone;
    }
    let mut mains = case.rig.after.mains();
    if mains.is_empty() {
        return Finding::unmeasured(vec![case.rig.after.missing()]);
    }
    if mains.len() == 1 {
        return Finding::not_applicable(Text::from("A single main engine has nothing to match."));
    }
    if let Some(unlike) = unlike(&mains) {
        return Finding::new(Verdict::Warn, unlike).remedy(mend::change(
            if ordered(case.rig) {
                "Order the same class, power and shaft for all main engines."
            } else {
                "Change the odd one for one of the same class, power and shaft as the others."
            },
            alike(case.rig),
        ));
    }
    mains.sort_by(|a, b| b.y.value.total_cmp(&a.y.value));
    let (Some(port), Some(starboard)) = (mains.first(), mains.last()) else {
        return Finding::unmeasured(vec![case.rig.after.missing()]);
    };
    let missing: Vec<Missing> = [port, starboard].iter().filter_map(|engine| engine.hand.ask().err()).collect();
    let (Some(port_hand), Some(starboard_hand)) = (port.hand.reading(), starboard.hand.reading()) else {
        return Finding::unmeasured(missing);
    };
    let opposed = match (port_hand, starboard_hand) {
        (Hand::Counter, Hand::Counter) => true,
        (one, other) => one != other && ![one, other].contains(&&Hand::Counter),
    };
    if opposed {
        Finding::new(
            Verdict::Pass,
            say!("The {} main engines are alike and their outer propellers turn opposite ways.", mains.len()),
        )
    } else {
        Finding::new(
            Verdict::Warn,
            say!(
                "The propellers of the {} and the {} turn the same way.",
                port.label.as_str(),
                starboard.label.as_str()
            ),
        )
        .remedy(mend::change(if ordered(case.rig) {"Order one of the outer engines with the opposite rotation."} else {"Change the propeller and gearcase of one of the outer engines for the opposite rotation; ask the maker whether they are made for it."}, opposite(case.rig)))
    }
}

/// How the engines differ, if they do: in class and power any two, in shaft those that stand alike to port and starboard. On a vee
/// the middle one of three reaches deeper than its neighbours.
fn unlike(mains: &[&Engine]) -> Option<Text> {
    let (first, rest) = mains.split_first()?;
    let differ = |one: &Engine, other: &Engine, what: &str| {
        say!("The {} and the {} differ in {}.", one.label.as_str(), other.label.as_str(), what)
    };
    let power = |engine: &Engine| engine.power.reading().map(|power| power.value);
    let odd = rest.iter().find_map(|other| match () {
        () if first.class != other.class => Some(differ(first, other, "class")),
        () if power(first) != power(other) => Some(differ(first, other, "power")),
        () => None,
    });
    let shaft = |engine: &Engine| engine.rest_to_plate.reading().map(|shaft| shaft.value);
    let mirrored = |one: &Engine, other: &Engine| (one.y + other.y).abs() <= inches(ONE_PLACE_IN);
    let pairs = mains.iter().enumerate().flat_map(|(i, one)| mains[i + 1..].iter().map(move |other| (*one, *other)));
    odd.or_else(|| {
        let (one, other) = pairs.into_iter().find(|(one, other)| mirrored(one, other) && shaft(one) != shaft(other))?;
        Some(differ(one, other, "shaft length"))
    })
}

/// Engines whose places to port and starboard differ by less are a pair. Common practice, no source.
const ONE_PLACE_IN: f64 = 2.0;

/// Whether the engines are still to be ordered.
fn ordered(rig: &Rig) -> bool {
    rig.job.sitting != Sitting::AsFitted
}

/// All main engines like the first group's.
fn alike(rig: &Rig) -> Vec<Change> {
    let mains = rig.after.groups.iter().zip(&rig.job.engines_on);
    let mut mains = mains.filter(|(group, _)| group.engines.iter().any(|engine| engine.role == Role::Main));
    let Some((_, first)) = mains.next() else { return Vec::new() };
    let mut changes = Vec::new();
    for (group, _) in mains {
        if let Some(spec) = &first.described {
            changes.extend(Change::like(&group.entry, spec, &[]));
            let name = first.class.clone().unwrap_or_default();
            changes.extend(
                Some(name)
                    .filter(|name| !name.is_empty())
                    .into_iter()
                    .flat_map(|name| Change::class(&group.entry, &name)),
            );
        }
        if let Some(shaft) = &first.shaft {
            changes.push(Change::told(format!("{}.shaft", group.entry), shaft.measure(Style::Tape)));
        }
    }
    changes
}

/// The outer main engine to starboard turning the other way.
fn opposite(rig: &Rig) -> Vec<Change> {
    let outer =
        rig.after.groups.iter().flat_map(|group| group.engines.iter().enumerate().map(move |(i, one)| (group, i, one)));
    let outer = outer.filter(|(.., one)| one.role == Role::Main).min_by(|a, b| a.2.y.value.total_cmp(&b.2.y.value));
    let Some((group, place, engine)) = outer else { return Vec::new() };
    let hand = if engine.hand.reading() == Some(&Hand::Right) { "left" } else { "right" };
    vec![Change::to(format!("{}.propellers[{place}]", group.entry), hand)]
}
