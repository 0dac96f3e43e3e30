//! By what a finding holds: a regulation, a rating, a collision, or no more than practice.

use crate::rules::{Family, Judged, Verdict};

/// What stands behind a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Rank {
    /// The law, or the plate that it asks for.
    Regulation,
    /// What the maker or the builder rates a part for.
    Rating,
    /// Two parts meet.
    Collision,
    /// A part does not go on.
    Unfit,
    /// More than the boat or a part bears.
    Overload,
    /// What the trade does.
    Practice,
    /// What the trade does, and nobody has written down.
    Unwritten,
}

impl Rank {
    /// In words, behind the verdict.
    pub(super) fn words(self) -> &'static str {
        match self {
            Rank::Regulation => "regulation",
            Rank::Rating => "rating",
            Rank::Collision => "collision",
            Rank::Unfit => "cannot be fitted",
            Rank::Overload => "cannot carry it",
            Rank::Practice => "practice",
            Rank::Unwritten => "practice, no source",
        }
    }
}

/// Said in a source that is nobody's paper.
const NO_SOURCE: &str = "no source";

/// By what this finding holds. A limit of practice warns, whatever a failure of the same rule would be.
pub(super) fn of(judged: &Judged) -> Rank {
    let sources = judged.rule.sources();
    let practice =
        if sources.iter().all(|source| source.contains(NO_SOURCE)) { Rank::Unwritten } else { Rank::Practice };
    match (ground(judged), judged.finding.verdict) {
        (Some(ground @ (Rank::Regulation | Rank::Rating)), _) => ground,
        (Some(ground), Verdict::Fail) => ground,
        _ => practice,
    }
}

/// What a failure of this rule is.
fn ground(judged: &Judged) -> Option<Rank> {
    Some(match judged.rule.id {
        "power/plate-limit"
        | "power/formula-limit"
        | "weight/plate-persons"
        | "weight/capacity-left"
        | "weight/swamped-flotation"
        | "weight/rated-basis"
        | "stern/capacity-from-shape"
        | "controls/cut-off"
        | "controls/start-in-gear"
        | "fuel/hose" => Rank::Regulation,
        "weight/transom-rating"
        | "weight/bracket-rating"
        | "steering/rating"
        | "steering/lines"
        | "electrical/ampacity"
        | "electrical/fuse"
        | "trailer/load"
        | "running/top-speed" => Rank::Rating,
        "fit/centre-distance" => Rank::Collision,
        "height/shaft-match"
        | "fit/bolt-pattern"
        | "fit/top-edge"
        | "fit/transom-thickness"
        | "controls/cables"
        | "controls/levers"
        | "controls/tube"
        | "steering/cable"
        | "steering/toe" => Rank::Unfit,
        _ => match judged.rule.family {
            Family::Swing => Rank::Collision,
            Family::Stern | Family::Strength => Rank::Overload,
            _ => return None,
        },
    })
}
