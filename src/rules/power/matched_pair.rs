//! `power/matched-pair`

use crate::case::Case;
use crate::job::Hand;
use crate::quantity::{Text, say};
use crate::rig::{Engine, Missing};
use crate::rules::rule::rule;
use crate::rules::{Finding, Verdict};

rule! {
    /// Main engines of a multiple install alike in class, power and shaft, the outer propellers of
    /// opposed hands.
    ///
    /// **Why.** Unlike engines share the load unevenly and wear unevenly; propellers that all turn
    /// one way walk the stern sideways and pull the wheel to one side.
    ///
    /// **Limit.** The same class, power and shaft for all; the outermost pair turns opposite ways, or
    /// every engine has two counter-turning propellers.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** Order one engine of the pair with the opposite rotation; where an odd
    /// engine must stay, say in the report that it was known.
    MATCHED_PAIR = Power "power/matched-pair", judge;
}

fn judge(case: &Case) -> Finding {
    let mut mains = case.rig.after.mains();
    if mains.is_empty() {
        return Finding::unmeasured(vec![case.rig.after.missing()]);
    }
    if mains.len() == 1 {
        return Finding::not_applicable(Text::from("A single main engine has nothing to match."));
    }
    if let Some(unlike) = unlike(&mains) {
        return Finding::new(Verdict::Warn, unlike)
            .remedy(Text::from("Order the same class, power and shaft for all main engines."));
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
        .remedy(Text::from("Order one of the outer engines with the opposite rotation."))
    }
}

/// How the engines differ, if they do.
fn unlike(mains: &[&Engine]) -> Option<Text> {
    let (first, rest) = mains.split_first()?;
    rest.iter().find_map(|other| {
        let power = |engine: &Engine| engine.power.reading().map(|power| power.value);
        let shaft = |engine: &Engine| engine.rest_to_plate.reading().map(|shaft| shaft.value);
        let what = if first.class != other.class {
            "class"
        } else if power(first) != power(other) {
            "power"
        } else if shaft(first) != shaft(other) {
            "shaft length"
        } else {
            return None;
        };
        Some(say!("The {} and the {} differ in {}.", first.label.as_str(), other.label.as_str(), what))
    })
}
