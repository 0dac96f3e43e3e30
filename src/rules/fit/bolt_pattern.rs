//! `fit/bolt-pattern`

use crate::job::Hole;
use crate::rules::mend::{self, Change, Remedy};
use uom::si::f64::Length;

use super::{bolted, no_bolts};
use crate::case::{Case, bolt_places};
use crate::job::SplashWell;
use crate::physics::fit::{self, HolePlace};
use crate::quantity::{Dimensioned, Measure, Text, horsepower, inches, say};
use crate::rig::{Engine, Group, Missing, Rig};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Table;

rule! {
    /// The bolts of each engine against the cutout, the holes that are there already and the floor of
    /// the splash-well: where the job says they stand, else the standard pattern from its upper holes.
    ///
    /// **Why.** A new hole beside an old one has no wood left between them; a lower bolt that comes
    /// out under the well's floor cannot be tightened, and leaks into the hull.
    ///
    /// **Limit.** The upper pair 12-7/8 in apart within the cutout (the transom's width where there is
    /// none) with an inch to spare; every new hole on an old one or at least 1-1/2 in (three bolt
    /// diameters) from it; bolts told alike on both sides of the engine; bolts of 1/2 in (or M12) from 40 hp up; the lower bolts, 8 in below the upper, above the well's floor by their washers.
    ///
    /// **Source.** Trade association bolt pattern in general use; common practice, no source (the
    /// distances to spare).
    ///
    /// **When it warns.** Old holes are drilled out, filled with thickened epoxy and glassed before
    /// new ones are drilled near them; every hole in a cored transom is drilled oversize, filled and
    /// drilled again so that no water reaches the core. It fails where a bolt cannot be set at all.
    BOLT_PATTERN = Fit "fit/bolt-pattern", judge;
}

/// Room between the upper bolts and the side of the cutout. Common practice, no source.
const SIDE_ROOM_IN: f64 = 1.0;
/// How near an old hole must be to be used again. Common practice, no source: what a file corrects.
const SAME_HOLE_IN: f64 = 1.0 / 16.0;
/// Least centre distance of a new hole from an old one that is not used again: three diameters.
/// Common practice, no source.
const APART_IN: f64 = 3.0 * fit::BOLT_DIAMETER_IN;
/// Half the washer that must lie flat above the well's floor. Common practice, no source.
const WASHER_ROOM_IN: f64 = 1.0;

/// Power from which the bracket of every engine is drilled for 1/2 in bolts. Common practice, no source.
const DRILLED_FROM_HP: f64 = 40.0;
/// The thinnest that is taken for a bolt of 1/2 in: M12. Common practice, no source.
const LEAST_BOLT_IN: f64 = 12.0 / 25.4;
/// The bolt that the pattern is drilled for. Source: the same as the pattern.
const STANDARD_BOLT: &str = "1/2-13";

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    if let Some(why) = no_bolts(rig) {
        return Ok(Finding::not_applicable(why));
    }
    rig.after.ask()?;
    let (side, well) = (side_of_top(rig), rig.job.transom.splash_well().ask());
    let mut complaints = Vec::new();
    let mut reused = 0;
    let mut rows = Vec::new();
    for (group, engine) in bolted(rig) {
        let bolts = bolt_places(rig, group, &[engine]).unwrap_or_default();
        complaints.extend(against_holes(rig, group, engine));
        if !group.bolts.said.at.is_empty() {
            complaints.extend(lopsided(engine, &bolts));
        }
        if let Ok(Some(side)) = &side {
            complaints.extend(against_side(engine, &bolts, side));
        }
        for hole in &bolts {
            let (word, complaint) = against_old(rig, *hole);
            reused += usize::from(word == REUSED);
            rows.push(vec![
                say!("{}", engine.label.as_str()),
                say!("{} {}", Measure::tape(hole.y.abs()), port_or_starboard(hole.y)),
                say!("{}", Measure::tape(hole.below)),
                Text::from(word),
            ]);
            complaints.extend(complaint);
        }
        if let Ok(SplashWell::Floor(floor)) = well {
            complaints.extend(against_floor(engine, &bolts, floor.value));
        }
    }
    complaints.sort_by(|a, b| a.verdict.cmp(&b.verdict).then(a.margin().total_cmp(&b.margin())));
    let more = complaints.len().saturating_sub(1);
    let missing: Vec<Missing> = [side.err(), well.err()].into_iter().flatten().collect();
    let finding = match complaints.into_iter().next() {
        Some(complaint) => Finding { missing, ..complaint.into_finding(more) },
        None if !missing.is_empty() => Finding::unmeasured(missing),
        None => Finding::new(
            Verdict::Pass,
            match reused {
                0 => Text::from("The bolts find room on the transom, clear of old holes and of a splash-well's floor."),
                1 => Text::from("The bolts find room on the transom; one old hole can be used again."),
                more => say!("The bolts find room on the transom; {} old holes can be used again.", more),
            },
        ),
    };
    Ok(finding.table(Table::new("bolt holes", &["engine", "across", "below the top", ""], rows)))
}

/// What a table says of a hole that is there already.
const REUSED: &str = "on an old hole";

/// One thing that stands in the way.
struct Complaint {
    verdict: Verdict,
    summary: Text,
    found: Measure,
    limit: Limit,
    remedy: Remedy,
}

impl Complaint {
    /// Room to its limit, m; the least is the worst.
    fn margin(&self) -> f64 {
        self.limit.margin(self.found).si
    }

    fn into_finding(self, more: usize) -> Finding {
        let summary = match more {
            0 => self.summary,
            more => self.summary.then(say!(" {} more in the table of holes.", more)),
        };
        Finding::new(self.verdict, summary).remedy(self.remedy).against(self.found, self.limit)
    }
}

fn port_or_starboard(y: Length) -> &'static str {
    if y.value >= 0.0 { "port" } else { "starboard" }
}

/// Where the edge ends on which the engines hang.
struct Side {
    what: &'static str,
    off: Length,
}

/// The side of the cutout; where there is none, of the transom, if anybody measured it.
fn side_of_top(rig: &Rig) -> Result<Option<Side>, Missing> {
    if rig.job.transom.cutout.is_some() {
        let width = rig.job.boat.transom_width().reading();
        return Ok(width.map(|width| Side { what: "transom", off: width.value / 2.0 }));
    }
    let cutout = rig.job.transom.cutout_width().ask()?;
    Ok(Some(Side { what: "cutout", off: cutout.value / 2.0 }))
}

/// Bolts thinner than the holes of the bracket that they go through.
fn against_holes(rig: &Rig, group: &Group, engine: &Engine) -> Option<Complaint> {
    let large = engine.power.reading().is_some_and(|power| !horsepower(DRILLED_FROM_HP).exceeds(power.value));
    let told = group.bolts.said.size.as_ref()?;
    let size = rig.tables.bolt_sizes.iter().find(|entry| entry.name == *told)?;
    let (thick, hole) = (size.spec.diameter.value, inches(fit::BOLT_DIAMETER_IN));
    let least = inches(LEAST_BOLT_IN);
    (large && least.exceeds(thick)).then(|| Complaint {
        verdict: Verdict::Fail,
        summary: say!(
            "The {} hangs on bolts of {}; its bracket is drilled for {}.",
            engine.label.as_str(),
            told.as_str(),
            Measure::tape(hole)
        ),
        found: Measure::tape(thick),
        limit: Limit::AtLeast(Measure::tape(least)),
        remedy: mend::change(
            say!("Drill the holes out and use bolts of {}, as its mounting sheet asks.", STANDARD_BOLT),
            [Change::to(format!("{}.bolts.size", group.entry), format!("{STANDARD_BOLT:?}"))],
        ),
    })
}

/// Bolts that stand farther out on one side of the engine than on the other: no bracket is drilled so.
fn lopsided(engine: &Engine, bolts: &[HolePlace]) -> Option<Complaint> {
    let most = inches(LOPSIDED_IN);
    let (bolt, off) = bolts
        .iter()
        .filter_map(|bolt| {
            let mirrored = HolePlace { y: engine.y + engine.y - bolt.y, below: bolt.below };
            let off =
                bolts.iter().map(|other| fit::apart(mirrored, *other)).min_by(|a, b| a.si().total_cmp(&b.si()))?;
            Some((bolt, off))
        })
        .max_by(|a, b| a.1.si().total_cmp(&b.1.si()))?;
    off.exceeds(most).then(|| Complaint {
        verdict: Verdict::Warn,
        summary: say!(
            "The bolt {} to {}, {} below the top, has no fellow as far on the other side of the {}: the nearest is {} off. No bracket is drilled so.",
            Measure::tape(bolt.y.abs()),
            port_or_starboard(bolt.y),
            Measure::tape(bolt.below),
            engine.label.as_str(),
            Measure::tape(off)
        ),
        found: Measure::tape(off),
        limit: Limit::AtMost(Measure::tape(most)),
        remedy: mend::look("Measure the bolts again, from the middle of the engine's bracket both ways."),
    })
}

/// How far bolts may differ from side to side. Common practice, no source: what a tape tells over a bracket.
const LOPSIDED_IN: f64 = 0.5;

/// The outermost bolts against the side of the cutout.
fn against_side(engine: &Engine, bolts: &[HolePlace], side: &Side) -> Option<Complaint> {
    let outermost = bolts.iter().map(|bolt| bolt.y.abs()).max_by(|a, b| a.si().total_cmp(&b.si()))?;
    let most = side.off - inches(SIDE_ROOM_IN);
    outermost.exceeds(most).then(|| Complaint {
        verdict: Verdict::Fail,
        summary: say!(
            "The outermost bolts of the {} come {} off the centreline; the {} ends at {}.",
            engine.label.as_str(),
            Measure::tape(outermost),
            side.what,
            Measure::tape(side.off)
        ),
        found: Measure::tape(outermost),
        limit: Limit::AtMost(Measure::tape(most)),
        remedy: mend::yard(
            "Move the engine inboard, widen the cutout with the builder's consent, or hang it on a bracket.",
        ),
    })
}

/// A new hole against the holes that are there already.
fn against_old(rig: &Rig, hole: HolePlace) -> (&'static str, Option<Complaint>) {
    let nearest = rig
        .job
        .transom
        .holes
        .iter()
        // What is filled and glassed over is transom again.
        .filter(|old| !old.filled)
        .map(|old| {
            let place = HolePlace { y: old.at.y(), below: old.below.value };
            let bolt = inches(fit::BOLT_DIAMETER_IN);
            let diameter = old.diameter.as_ref().map_or(bolt, |d| d.value);
            (fit::apart(hole, place), diameter)
        })
        .min_by(|a, b| a.0.value.total_cmp(&b.0.value));
    let Some((distance, diameter)) = nearest else {
        return ("new", None);
    };
    let too_wide = diameter.exceeds(inches(fit::BOLT_DIAMETER_IN + SAME_HOLE_IN));
    if !distance.exceeds(inches(SAME_HOLE_IN)) && !too_wide {
        return (REUSED, None);
    }
    let wanted = Measure::tape(inches(APART_IN));
    if !inches(APART_IN).exceeds(distance) {
        return ("new", None);
    }
    let complaint = Complaint {
        verdict: Verdict::Warn,
        summary: say!("A bolt hole comes {} from an old one, where {} is wanted.", Measure::tape(distance), wanted),
        found: Measure::tape(distance),
        limit: Limit::AtLeast(wanted),
        remedy: mend::change("Fill the old holes and glass them over before drilling.", filled(rig)),
    };
    ("too near an old hole", Some(complaint))
}

/// The lower bolts against the floor of the splash-well.
fn against_floor(engine: &Engine, bolts: &[HolePlace], floor: Length) -> Option<Complaint> {
    let room = inches(WASHER_ROOM_IN);
    let lowest = |bolts: &mut dyn Iterator<Item = Length>| bolts.max_by(|a, b| a.si().total_cmp(&b.si()));
    let mut all = bolts.iter().map(|bolt| bolt.below);
    let mut at_floor = bolts.iter().map(|bolt| bolt.below).filter(|below| room.exceeds((*below - floor).abs()));
    let label = engine.label.as_str();
    let (verdict, found, summary, remedy) = if let Some(below) = lowest(&mut at_floor) {
        (
            Verdict::Fail,
            below,
            say!(
                "Bolts of the {} come out at the well's floor ({} below the top, floor at {}).",
                label,
                Measure::tape(below),
                Measure::tape(floor)
            ),
            mend::yard(
                "Nothing can be tightened there: hang the engine on a bracket or setback plate with its own pattern, or have the well altered.",
            ),
        )
    } else {
        let below = lowest(&mut all).filter(|below| below.exceeds(floor))?;
        (
            Verdict::Warn,
            below,
            say!("The lower bolts of the {} come out below the well's floor, inside the hull.", label),
            mend::look(
                "See that the nuts can be reached and the holes are sealed: they are below the well and may be below the waterline.",
            ),
        )
    };
    Some(Complaint {
        verdict,
        summary,
        found: Measure::tape(found),
        limit: Limit::AtMost(Measure::tape(floor - room)),
        remedy,
    })
}

/// The old holes that stand too near a new one, filled.
fn filled(rig: &Rig) -> Vec<Change> {
    let bolts: Vec<HolePlace> = bolted(rig)
        .into_iter()
        .flat_map(|(group, engine)| bolt_places(rig, group, &[engine]).unwrap_or_default())
        .collect();
    let stands_in_the_way = |hole: &Hole| {
        let place = HolePlace { y: hole.at.y(), below: hole.below.value };
        bolts.iter().any(|bolt| {
            let apart = fit::apart(*bolt, place);
            apart.exceeds(inches(SAME_HOLE_IN)) && inches(APART_IN).exceeds(apart)
        })
    };
    let holes = rig.job.transom.holes.iter().enumerate().filter(|(_, hole)| stands_in_the_way(hole));
    holes.map(|(i, _)| Change::to(format!("transom.holes[{i}].filled"), "true")).collect()
}
