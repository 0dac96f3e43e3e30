//! What lies within what.

use uom::si::f64::Length;

use super::sizes::Sizes;
use super::{Known, Odd, Relation, si};
use crate::job::{EdgeKind, bounds};
use crate::quantity::{Dimensioned, Measure, Style, say};
use crate::reading::{Amount, Bounds, foot, inch};

/// Places fore and aft.
pub(super) const WITHIN_HER_LENGTH: Relation = Relation {
    name: "what is aboard stands within her length",
    why: "A place ahead of the stem, pulpit and all, is a slip: feet for inches, or a place from the bow.",
    source: PRACTICE,
    look: |known| {
        let near = Lies {
            times: 1.0,
            beyond: foot(4.0),
            what: "long",
            ..Lies::of(&[bounds::ALONG, bounds::STATION], |sizes| sizes.length)
        };
        let far = Lies { beyond: foot(10.0), ..Lies { sorts: &[bounds::FORWARD], ..near } };
        [near, far].iter().flat_map(|lies| lies.look(known)).collect()
    },
};

/// Heights.
pub(super) const WITHIN_HER_DEPTH: Relation = Relation {
    name: "what belongs to her hull stands no higher than it",
    why: "An edge, a mark or a bracket far above the sheer is a slip: feet for inches.",
    source: PRACTICE,
    look: |known| {
        let hull = Lies {
            times: 2.0,
            beyond: foot(2.0),
            what: "deep",
            ..Lies::of(&[bounds::UP, bounds::FREEBOARD], |sizes| sizes.depth)
        };
        // Persons and gear may be up a tower.
        let aboard = Lies { beyond: foot(10.0), sorts: &[bounds::HEIGHT, bounds::OBSTACLE_UP], ..hull };
        [hull, aboard].iter().flat_map(|lies| lies.look(known)).collect()
    },
};

/// Places off the centreline.
pub(super) const WITHIN_HER_BREADTH: Relation = Relation {
    name: "what is aboard stands within her breadth",
    why: "A place further out than her side is a slip: a whole breadth for half of it, or feet for inches.",
    source: PRACTICE,
    look: |known| {
        let lies = Lies {
            times: 0.5,
            beyond: foot(2.0),
            what: "wide",
            ..Lies::of(&[bounds::ACROSS, bounds::OUT], |sizes| sizes.breadth)
        };
        lies.look(known)
    },
};

/// Sizes of what is in her.
pub(super) const NOTHING_LONGER_THAN_SHE: Relation = Relation {
    name: "nothing in her is longer than she is",
    why: "A tank or a well as long as the boat is a slip: feet for inches.",
    source: PRACTICE,
    look: |known| {
        let lies = Lies { what: "long", ..Lies::of(&[bounds::TANK_SIZE, bounds::WELL_LENGTH], |sizes| sizes.length) };
        lies.look(known)
    },
};

/// Where a motorwell ends.
pub(super) const WELL_AT_THE_STERN: Relation = Relation {
    name: "a motorwell is at the stern",
    why: "A well's edge amidships is a slip: feet for inches.",
    source: PRACTICE,
    look: |known| {
        let Some(length) = known.sizes.length else { return Vec::new() };
        let edges = known.case.rig.job.edges.iter().enumerate().filter(|(_, edge)| edge.kind == EdgeKind::Well);
        let far = edges.filter_map(|(i, edge)| {
            let forward = edge.forward.as_ref()?;
            (forward.value.si() > WELL_OVER_LENGTH * length).then(|| Odd {
                entries: vec![format!("edges[{i}].forward")],
                said: say!(
                    "The well's edge `{}` is written {} forward of the transom; she is {} long. Is it so far forward?",
                    edge.name.as_str(),
                    Measure::styled(forward.value, Style::FeetInches),
                    feet(length)
                ),
            })
        });
        far.collect()
    },
};

/// How far forward a motorwell reaches at most, of her length. Common practice, no source.
const WELL_OVER_LENGTH: f64 = 0.5;

/// The floor of a well that the water fills.
pub(super) const WELL_OVER_THE_BOTTOM: Relation = Relation {
    name: "a well's floor is above the bottom",
    why: "Heights count from the bottom of the hull at the transom: a floor below it is outside of her.",
    source: PRACTICE,
    look: |known| {
        let wells = known.case.rig.job.flooded.iter().enumerate();
        let low = wells.filter_map(|(i, well)| {
            let floor = well.floor.as_ref()?;
            (floor.value.si() < -BELOW_BOTTOM.si()).then(|| Odd {
                entries: vec![format!("flooded[{i}].floor")],
                said: say!(
                    "The floor of the well `{}` is written {} below the bottom of the hull at the transom. Is it not above it?",
                    well.what.as_str(),
                    Measure::tape(-floor.value)
                ),
            })
        });
        low.collect()
    },
};

/// How far below the transom's bottom a floor may come where the keel falls forward. Common practice, no source.
const BELOW_BOTTOM: Amount = inch(2.0);

/// The waterline at the transom.
pub(super) const IN_THE_WATER: Relation = Relation {
    name: "her transom stands in the water, and its top out of it",
    why: "A waterline below the bottom is that of a boat in the air; one above the transom's top is that of a boat full of water.",
    source: PRACTICE,
    look: |known| {
        let (Some(line), Some(transom)) = (&known.case.rig.job.waterline, known.sizes.transom) else {
            return Vec::new();
        };
        let below = line.value.si() - transom;
        let said = if below > 0.0 {
            say!(
                "The waterline is written {} below the transom's top, which is {} high: the whole transom would stand out of the water, by {}. Is it so?",
                Measure::tape(line.value),
                tape(transom),
                tape(below)
            )
        } else if line.value.si() < 0.0 {
            say!("The waterline is written {} above the transom's top. Did she lie so?", Measure::tape(-line.value))
        } else {
            return Vec::new();
        };
        vec![Odd { entries: vec!["waterline".to_owned()], said }]
    },
};

/// The lowest point of a bracket.
pub(super) const BRACKET_ON_THE_TRANSOM: Relation = Relation {
    name: "a bracket hangs from the transom",
    why: "What hangs from the transom does not begin above its top.",
    source: PRACTICE,
    look: |known| {
        let Some(transom) = known.sizes.transom else { return Vec::new() };
        let rig = known.case.rig;
        let sides = [("engines_off", &rig.job.engines_off), ("engines_on", &rig.job.engines_on)];
        let high =
            sides.iter().flat_map(|(side, groups)| groups.iter().enumerate().map(move |(i, group)| (side, i, group)));
        high.filter_map(|(side, i, group)| {
            let bottom = group.bracket.as_ref()?.bottom.as_ref()?;
            (bottom.value.si() > transom + ABOVE_TOP.si()).then(|| Odd {
                entries: vec![format!("{side}[{i}].bracket.bottom")],
                said: say!(
                    "The bracket's lowest point is written {} above the bottom of the hull; the transom is {} high. Is it above the transom?",
                    Measure::styled(bottom.value, Style::FeetInches),
                    tape(transom)
                ),
            })
        })
        .collect()
    },
};

/// How far above the transom's top the lowest point of a small engine's bracket may be. Common practice, no source.
const ABOVE_TOP: Amount = inch(6.0);

const PRACTICE: &str = "Common practice, no source.";

/// Readings of these sorts, by the bounds that they are declared with, are no more than a size of the boat so many times and
/// so much beyond it: a new reading that is declared with such bounds is held to it too.
#[derive(Clone, Copy)]
struct Lies {
    sorts: &'static [Bounds],
    size: fn(&Sizes) -> Option<f64>,
    times: f64,
    beyond: Amount,
    /// What she is by that size.
    what: &'static str,
}

impl Lies {
    fn of(sorts: &'static [Bounds], size: fn(&Sizes) -> Option<f64>) -> Lies {
        Lies { sorts, size, times: 1.0, beyond: foot(0.0), what: "" }
    }

    fn look(&self, known: &Known) -> Vec<Odd> {
        let Some(size) = (self.size)(&known.sizes) else { return Vec::new() };
        let most = self.times * size + self.beyond.si();
        // The road has its own sizes.
        let of_her = known.of_sort(self.sorts).filter(|told| !told.path.starts_with("trailer"));
        of_her
            .filter_map(|told| {
                let value = si(told)?;
                (value.abs() > most).then(|| {
                    Odd::of(
                        told,
                        say!(
                            "`{}` is written as {}; she is {} {}. Is that so?",
                            told.name(),
                            feet(value),
                            feet(size),
                            self.what
                        ),
                    )
                })
            })
            .collect()
    }
}

fn feet(si: f64) -> Measure {
    Measure::styled(Length::from_si(si), Style::FeetInches)
}

fn tape(si: f64) -> Measure {
    Measure::tape(Length::from_si(si))
}
