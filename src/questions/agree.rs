//! What two readings say alike.

use uom::si::f64::{Angle, Length, Mass, Ratio};

use super::weighs::is_a_boat;
use super::{Odd, Relation};
use crate::case::Case;
use crate::case::float::{AsMeasured, heel_words, trim_words};
use crate::job::{HullShape, Job, Section};
use crate::quantity::{Dimensioned, Kind, Measure, Reading, Style, Text, say};
use crate::reading::{Amount, deg, inch};

/// One fact, taken or written twice.
pub(super) const SAID_TWICE: Relation = Relation {
    name: "what is said twice is said alike",
    why: "Two readings of one thing differ by what a tape or a gauge leaves open. Where they differ by more, one of them is wrong, and nobody but the one who stands before her knows which.",
    source: "Common practice, no source.",
    look: |known| TWICE.iter().flat_map(|twice| twice.look(known.case)).collect(),
};

/// Every fact that a job can say twice: a new one joins by a line. Each with how far the two may be apart, in all and as a
/// part of the greater.
pub(super) const TWICE: &[Twice] = &[
    Twice { apart: (deg(6.0), 0.0), pairs: |case| one(deadrise(&case.rig.job)) },
    Twice { apart: (inch(18.0), 0.15), pairs: |case| one(length(&case.rig.job)) },
    Twice { apart: (inch(9.0), 0.15), pairs: |case| one(beam(&case.rig.job)) },
    Twice { apart: (inch(9.0), 0.15), pairs: |case| one(chine_beam(&case.rig.job)) },
    Twice { apart: (inch(9.0), 0.25), pairs: |case| one(depth(&case.rig.job)) },
    Twice { apart: (inch(0.5), 0.1), pairs: |case| upper_holes(&case.rig.job) },
    Twice { apart: (inch(2.0), 0.25), pairs: |case| brackets(&case.rig.job, Of::Setback) },
    Twice { apart: (inch(8.0), 0.25), pairs: |case| brackets(&case.rig.job, Of::Drop) },
    Twice { apart: (inch(8.0), 0.6), pairs: |case| brackets(&case.rig.job, Of::Travel) },
    Twice { apart: (inch(6.0), 0.0), pairs: waterline },
];

pub(super) struct Twice {
    /// In all, and as a part of the greater of the two.
    apart: (Amount, f64),
    pairs: fn(&Case) -> Vec<(Said, Said)>,
}

/// One of the two.
struct Said {
    entry: String,
    /// As a sentence calls it.
    name: &'static str,
    si: f64,
    tolerance: f64,
    kind: Kind,
}

impl Said {
    fn read<Q: Dimensioned>(entry: impl Into<String>, name: &'static str, reading: &Reading<Q>) -> Said {
        let tolerance = reading.tolerance.map_or(0.0, Q::si);
        Said { entry: entry.into(), name, si: reading.value.si(), tolerance, kind: Q::KIND }
    }

    fn measure(&self) -> Measure {
        Measure { si: self.si, kind: self.kind, style: Style::Tape }
    }
}

impl Twice {
    fn look(&self, case: &Case) -> Vec<Odd> {
        let (amount, part) = self.apart;
        (self.pairs)(case)
            .into_iter()
            .filter(|(one, other)| {
                let room = amount.si().max(part * one.si.abs().max(other.si.abs())) + one.tolerance + other.tolerance;
                Ratio::from_si((one.si - other.si).abs()).exceeds(Ratio::from_si(room))
            })
            .map(|(one, other)| {
                let said = say!(
                    "The {} is {}, and the {} is {}: which of the two is right?",
                    one.name,
                    one.measure(),
                    other.name,
                    other.measure()
                );
                let mut entries = vec![one.entry, other.entry];
                entries.dedup();
                Odd { entries, said }
            })
            .collect()
    }
}

fn one(pair: Option<(Said, Said)>) -> Vec<(Said, Said)> {
    pair.into_iter().collect()
}

fn sections(job: &Job) -> Option<&[Section]> {
    match &job.hull {
        Some(HullShape::Tape { sections, .. }) if !sections.is_empty() => Some(sections),
        _ => None,
    }
}

fn length(job: &Job) -> Option<(Said, Said)> {
    let told = job.boat.length.as_ref()?;
    let last = sections(job)?.last()?;
    let said = Said::read("hull", "foremost section's place", &last.forward);
    Some((Said::read("boat.length", "overall length", told), said))
}

fn deadrise(job: &Job) -> Option<(Said, Said)> {
    let told = job.boat.deadrise.as_ref()?;
    let at_transom = sections(job)?.first()?;
    let rise = at_transom.chine.up.value - at_transom.keel.value;
    let out = at_transom.chine.out.value.si();
    // Knuckles and a rounded bottom have no one deadrise.
    if out <= 0.0 || !at_transom.bottom_knuckles.is_empty() {
        return None;
    }
    let angle = Angle::from_si(rise.si().atan2(out));
    let said = Said {
        entry: "hull".to_owned(),
        name: "deadrise of the hull's first section",
        si: angle.si(),
        tolerance: 0.0,
        kind: Kind::Angle,
    };
    Some((Said::read("boat.deadrise", "deadrise at the transom", told), said))
}

fn beam(job: &Job) -> Option<(Said, Said)> {
    let told = job.boat.beam.as_ref()?;
    let widest = sections(job)?.iter().map(|section| section.sheer.out.value.si().max(section.chine.out.value.si()));
    let widest = 2.0 * widest.fold(0.0, f64::max);
    Some((Said::read("boat.beam", "greatest beam", told), of_hull("beam of the hull's widest section", widest)))
}

fn chine_beam(job: &Job) -> Option<(Said, Said)> {
    let told = job.boat.chine_beam.as_ref()?;
    let chine = 2.0 * sections(job)?.first()?.chine.out.value.si();
    Some((
        Said::read("boat.chine_beam", "beam between the chines", told),
        of_hull("beam between the chines of the hull's first section", chine),
    ))
}

fn depth(job: &Job) -> Option<(Said, Said)> {
    let told = job.boat.depth.as_ref()?;
    let sheer = sections(job)?.first()?.sheer.up.value.si();
    Some((Said::read("boat.depth", "depth at the transom", told), of_hull("sheer of the hull's first section", sheer)))
}

fn of_hull(name: &'static str, si: f64) -> Said {
    Said { entry: "hull".to_owned(), name, si, tolerance: 0.0, kind: Kind::Length }
}

/// The upper holes, and the highest bolts of engines that hang on the transom itself.
fn upper_holes(job: &Job) -> Vec<(Said, Said)> {
    let Some(told) = &job.transom.upper_holes else { return Vec::new() };
    let on_transom = job.engines_on.iter().enumerate().filter(|(_, group)| group.bracket.is_none());
    let highest = on_transom.filter_map(|(i, group)| {
        let bolts = group.bolts.as_ref()?;
        let highest = bolts.at.iter().min_by(|a, b| a.below.value.si().total_cmp(&b.below.value.si()))?;
        let bolt =
            Said::read(format!("engines_on[{i}].bolts.at"), "highest bolt's place below the top", &highest.below);
        Some((Said::read("transom.upper_holes", "place of the upper holes below the top", told), bolt))
    });
    highest.collect()
}

#[derive(Clone, Copy)]
enum Of {
    Setback,
    Drop,
    Travel,
}

/// A setback, drop or travel as measured, beside what the bracket's own papers or class say.
fn brackets(job: &Job, of: Of) -> Vec<(Said, Said)> {
    let sides = [("engines_off", &job.engines_off), ("engines_on", &job.engines_on)];
    let groups =
        sides.iter().flat_map(|(side, groups)| groups.iter().enumerate().map(move |(i, group)| (side, i, group)));
    let pair = |(side, i, group): (&&str, usize, &crate::job::EngineGroup)| {
        // The resolver writes a class's figures where a bracket could have been described.
        let hung = group.bracket.as_ref()?;
        let spec = hung.described.as_ref()?;
        let path = format!("{side}[{i}]");
        let (field, name, told, own_name, own) = match of {
            Of::Setback => (
                "setback",
                "setback as written",
                group.setback.as_ref()?,
                "bracket's own setback",
                spec.setback.as_ref()?,
            ),
            Of::Drop => ("drop", "drop as written", group.drop.as_ref()?, "bracket's own drop", spec.drop.as_ref()?),
            Of::Travel => (
                "bracket.travel",
                "travel as written",
                hung.travel.as_ref()?,
                "bracket's own travel",
                spec.travel.as_ref()?,
            ),
        };
        // Without what is written the bracket's own stands; without the bracket no engine would hang there.
        let entry = format!("{path}.{field}");
        Some((Said::read(entry.clone(), name, told), Said::read(entry, own_name, own)))
    };
    groups.filter_map(pair).collect()
}

/// The waterline at the transom, and as her marks have it.
fn waterline(case: &Case) -> Vec<(Said, Said)> {
    let job = &case.rig.job;
    let pair = || {
        let (told, height) = (job.waterline.as_ref()?, job.transom.height.as_ref()?);
        let measured = case.float().ok()?.as_measured.as_ref()?;
        let bottom = measured.fit.plane.height_above(&nalgebra::Point3::origin());
        // Along the transom, from its top: the bottom lies so far below the water.
        let lean = job.transom.angle.as_ref().map_or(1.0, |angle| angle.value.si().cos());
        let by_marks = height.value + bottom / lean;
        let said = Said {
            entry: "afloat.marks".to_owned(),
            name: "waterline by her marks, likewise below the top,",
            si: by_marks.si(),
            tolerance: 0.0,
            kind: Kind::Length,
        };
        Some((Said::read("waterline", "waterline below the transom's top", told), said))
    };
    one(pair())
}

/// Marks on one boat.
pub(super) const MARKS_OF_ONE_WATER: Relation = Relation {
    name: "her marks lie in one water plane",
    why: "Still water is flat: marks that do not lie in a plane by more than they were read to were not taken together, or not where they are written.",
    source: "Common practice, no source: two inches are more than chop and tape leave open.",
    look: |known| {
        let Some((measured, worst)) = known.case.float().ok().and_then(|float| {
            let measured = float.as_measured.as_ref()?;
            let worst = measured.fit.misfits.iter().map(|misfit| misfit.abs()).reduce(Length::max)?;
            Some((measured, worst))
        }) else {
            return Vec::new();
        };
        let read = known.case.rig.job.afloat.marks.iter().filter_map(|mark| mark.above_water.as_ref()?.tolerance);
        let room = MARKS_APART.si() + read.map(Dimensioned::si).fold(0.0, f64::max);
        let asked = (worst.si() > room).then(|| Odd {
            entries: vec!["afloat.marks".to_owned()],
            said: say!(
                "Her {} marks lie up to {} off one water plane. Which of them was read or written wrongly?",
                measured.marks.len(),
                Measure::tape(worst)
            ),
        });
        asked.into_iter().collect()
    },
};

/// How far marks may lie off one plane. Common practice, no source.
const MARKS_APART: Amount = inch(2.0);

/// What the marks leave for the boat.
pub(super) const MARKS_OF_A_BOAT: Relation = Relation {
    name: "her marks leave a boat of her size",
    why: "What she displaces, less what hung on her and was aboard, is the boat: as light as a canoe or heavy as a barge, marks or weights are wrong.",
    source: "Common practice, no source.",
    look: |known| {
        let bulk = known.sizes.bulk();
        let Some((float, bulk)) = known.case.float().ok().filter(|float| float.as_measured.is_some()).zip(bulk) else {
            return Vec::new();
        };
        let bare = float.bare.weight.mass;
        let entries = vec!["afloat.marks".to_owned()];
        if let Some(said) = float.as_measured.as_ref().and_then(lies_oddly) {
            return vec![Odd { entries, said }];
        }
        if !is_a_boat(bare.si(), bulk) {
            let said = say!(
                "By her marks, less what was aboard, the bare boat weighs {}. Does a boat of her size weigh that?",
                Measure::of(bare)
            );
            return vec![Odd { entries, said }];
        }
        let told = known.case.rig.job.weights.boat.weight.as_ref();
        let apart = told.filter(|told| {
            let room = BARE_APART * told.value.si() + told.tolerance.map_or(0.0, Mass::si);
            (told.value.si() - bare.si()).abs() > room
        });
        let asked = apart.map(|told| Odd {
            entries: vec!["afloat.marks".to_owned(), "weights.boat.weight".to_owned()],
            said: say!(
                "By her marks, less what was aboard, the bare boat weighs {}; it is written as {}. Which of the two is right?",
                Measure::of(bare),
                Measure::of(told.value)
            ),
        });
        asked.into_iter().collect()
    },
};

/// How she would lie by her marks, where boats at a dock do not lie so.
fn lies_oddly(measured: &AsMeasured) -> Option<Text> {
    let attitude = measured.fit.plane.attitude();
    let (trim, heel) = (attitude.trim, attitude.heel);
    if trim.abs().si() > MOST_TRIM.si() {
        return Some(
            Text::from("By her marks she lay ").then(trim_words(trim)).then(Text::from(" at the dock. Did she?")),
        );
    }
    let heels = heel.abs().si() > MOST_HEEL.si();
    heels.then(|| {
        Text::from("By her marks she lay heeled ").then(heel_words(heel)).then(Text::from(" at the dock. Did she?"))
    })
}

/// No boat lies so at a dock with nobody aboard, against the level line through her bottom. Common practice, no source.
const MOST_TRIM: Amount = deg(5.0);
const MOST_HEEL: Amount = deg(6.0);

/// How far the bare boat's weight by her marks may be from what it is written as, of that. Common practice, no source.
const BARE_APART: f64 = 0.5;
