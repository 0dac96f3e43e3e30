//! What several findings come from: the cause first, and what it brings on.

use super::mend::{self, Change, Mend, Remedy};
use super::strength::{core_doubted, tabbing_let_go};
use super::{Cause, Comes, Finding, Judged, Verdict};
use crate::case::Case;

/// How a cause is known, and what it may bring on.
struct Known {
    cause: Cause,
    words: &'static str,
    /// Rules that tell of it, the likeliest first: the first that warns or fails leads.
    led_by: &'static [&'static str],
    /// Rules whose findings it may bring on.
    brings: &'static [&'static str],
    /// Which of their findings it does.
    of: fn(&Finding) -> bool,
}

const ALL: [Known; 8] = [
    Known {
        cause: Cause::SoftCore,
        words: "the core of the transom",
        led_by: &["strength/soft-core"],
        brings: &["strength/", "fit/top-edge", "fit/transom-thickness", "fit/bolt-pattern"],
        of: |_| true,
    },
    Known {
        cause: Cause::LetGo,
        words: "what ties the transom to the hull has let go",
        led_by: &["strength/tabbing"],
        brings: &["strength/"],
        of: |_| true,
    },
    Known {
        cause: Cause::Shaft,
        words: "the shaft does not suit the transom",
        led_by: &["height/shaft-match"],
        brings: &["height/plate-window", "stern/plate-immersed", "running/ventilation"],
        of: |_| true,
    },
    Known {
        cause: Cause::Crew,
        words: "more persons than the plate says",
        led_by: &["weight/plate-persons"],
        brings: &["stern/crew-to-side", "stern/freeboard", "stern/well-edge", "stern/capacity-from-shape"],
        of: |_| true,
    },
    Known {
        cause: Cause::WeightAft,
        words: "the weight on the stern",
        led_by: &["weight/transom-rating", "stern/trim-change", "weight/old-to-new"],
        brings: &[
            "weight/transom-rating",
            "weight/rated-basis",
            "weight/capacity-left",
            "weight/swamped-flotation",
            "weight/old-to-new",
            "stern/",
        ],
        of: asks_for_less,
    },
    Known {
        cause: Cause::Speed,
        words: "her speed",
        led_by: &["running/top-speed"],
        brings: &["steering/rating", "steering/effort"],
        of: |_| true,
    },
    Known {
        cause: Cause::Spacing,
        words: "the engines stand too near each other",
        led_by: &["fit/centre-distance", "swing/neighbour"],
        brings: &["fit/centre-distance", "swing/neighbour"],
        of: |_| true,
    },
    Known {
        cause: Cause::Room,
        words: "an engine has no room to tilt and steer",
        led_by: &["swing/full-tilt"],
        brings: &["swing/steering-lock", "swing/permitted-range"],
        of: |_| true,
    },
];

/// Whether less weight on the stern would mend it, or nothing but floating her tells more.
fn asks_for_less(finding: &Finding) -> bool {
    let lighter = |change: &Change| change.entry.ends_with(".weighed");
    let mends = |mend: &Mend| matches!(mend, Mend::Change(changes) if changes.iter().any(lighter));
    finding.mends.iter().any(mends) || !finding.mends.iter().any(|mend| matches!(mend, Mend::Change(_)))
}

impl Cause {
    /// The cause in words.
    pub fn words(self) -> &'static str {
        ALL.iter().find(|known| known.cause == self).map_or("", |known| known.words)
    }
}

impl Finding {
    fn wants(&self) -> bool {
        matches!(self.verdict, Verdict::Fail | Verdict::Warn)
    }

    /// Whether its remedy is work on the transom's own wood or plate, bolts in it, or what is put behind it.
    fn builds_on_the_transom(&self) -> bool {
        let builds = |change: &Change| {
            let entry = change.entry.as_str();
            entry.starts_with("structure.") || entry.starts_with("transom.") || entry.contains(".bolts")
        };
        self.mends.iter().any(|mend| match mend {
            Mend::Change(changes) => changes.iter().any(builds),
            Mend::First(rule) => rule.starts_with("strength/"),
            Mend::Yard => true,
            Mend::Look | Mend::Ask | Mend::Care => false,
        })
    }
}

/// Takes back what would be built on a transom that is not sound, and sends to what is wrong with it, which comes first. It hangs on the
/// rig alone, so that few rules asked by themselves say the same.
fn silence(case: &Case, judged: &mut [Judged]) {
    let core =
        (Cause::SoftCore, core_doubted(case), "Nothing is built on this core before it is settled: see “soft core”.");
    let tabs = (
        Cause::LetGo,
        tabbing_let_go(case).is_some(),
        "Nothing is built on this transom before it is tied to the hull again: see “tabbing”.",
    );
    for (cause, unsound, words) in [core, tabs] {
        let known = ALL.iter().find(|known| known.cause == cause).filter(|_| unsound);
        let Some(known) = known else { continue };
        let building = judged.iter_mut().filter(|one| {
            let of_it = known.brings.iter().any(|id| one.rule.id.starts_with(id));
            one.finding.wants() && of_it && !known.led_by.contains(&one.rule.id) && one.finding.builds_on_the_transom()
        });
        for one in building {
            let Remedy { words, ways } = mend::first(words, known.led_by[0]);
            (one.finding.remedy, one.finding.mends) = (Some(words), ways);
            one.finding.buys.clear();
        }
    }
}

/// Tells each finding that warns or fails what it comes from, and takes back what would be built on a transom that is not sound.
/// A finding comes from the first of its causes.
pub(super) fn settle(case: &Case, judged: &mut [Judged]) {
    silence(case, judged);
    for known in &ALL {
        let lead = known.led_by.iter().find(|id| judged.iter().any(|one| one.rule.id == **id && one.finding.wants()));
        let Some(lead) = lead else { continue };
        if known.cause == Cause::LetGo && tabbing_let_go(case).is_none() {
            continue;
        }
        for one in judged.iter_mut().filter(|one| one.finding.wants() && one.finding.cause.is_none()) {
            let leads = one.rule.id == *lead;
            let brought = known.brings.iter().any(|id| one.rule.id.starts_with(id)) && (known.of)(&one.finding);
            if !leads && !brought {
                continue;
            }
            one.finding.cause = Some(Comes { cause: known.cause, lead });
        }
        // A cause that brings nothing on is a finding like any other.
        let mut its = judged.iter_mut().filter(|one| one.finding.cause.is_some_and(|of| of.cause == known.cause));
        if let (Some(only), None) = (its.next(), its.next()) {
            only.finding.cause = None;
        }
    }
}

/// The findings of a report by what they come from: each cause with what it brings on below its lead, then each finding that
/// comes from none, all in the order in which they stand.
pub fn by_cause(judged: &[Judged]) -> Vec<Vec<&Judged>> {
    let mut groups: Vec<Vec<&Judged>> = Vec::new();
    for one in judged {
        let same = |group: &&mut Vec<&Judged>| {
            let first = group.first().and_then(|first| first.finding.cause);
            first.is_some() && first == one.finding.cause
        };
        match groups.iter_mut().find(same) {
            Some(group) if one.finding.cause.is_some_and(|cause| cause.lead == one.rule.id) => group.insert(0, one),
            Some(group) => group.push(one),
            None => groups.push(vec![one]),
        }
    }
    groups
}
