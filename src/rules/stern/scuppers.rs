//! `stern/scuppers`

use crate::rules::mend::{self, Remedy};
use uom::si::f64::Length;

use super::{Height, Lying, all_upright, height_sheet, heights_table, inboard, lost, put_back, too_low, worst};
use crate::case::Case;
use crate::case::float::{Crew, EdgePoint, Loaded};
use crate::job::{self, Category, EdgeKind};
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// How high the cockpit sole and the scuppers' outlets stand above the water, at her mooring and with
    /// the crew at their stations.
    ///
    /// **Why.** A sole below the water, or scuppers under it, let water in instead of out: she settles
    /// by the stern, unnoticed, at the dock.
    ///
    /// **Limit.** At her mooring, the sole 6, 4, 3, 2 in (0.15, 0.10, 0.075, 0.05 m) for design categories A
    /// to D, 2 in where the category is not known, less half an inch that a hull taken with a tape leaves
    /// open; the outlets above the water. With the crew at their stations, the sole above the water.
    /// Outlets that go under with persons aboard, and a sole with the crew crowded aft, are told: that is
    /// what flaps are for.
    ///
    /// **Source.** ISO 11812:2001, sole heights (values from memory), taken as practice; Common practice,
    /// no source (the outlets; the loadings; the half inch).
    ///
    /// **When it warns.** It fails where the sole of a boat with scuppers lies under water with nobody aboard, by more than the half
    /// inch. Move weights forward, fit check valves that can be shut, raise the sole, or
    /// hang less on the stern. It warns too where she sinks or turns over.
    SCUPPERS = Stern "stern/scuppers", judge;
}

/// How far heights over the water may be off on a hull taken with a tape. Common practice, no source.
const TAPE_CLOSENESS_IN: f64 = 0.5;

/// Height of the sole above the water, m. Source: ISO 11812:2001, values from memory.
fn sole(category: Option<Category>) -> Length {
    Length::from_si(match category {
        Some(Category::A) => 0.15,
        Some(Category::B) => 0.10,
        Some(Category::C) => 0.075,
        Some(Category::D) | None => 0.05,
    })
}

/// How high it must stand in this loading; nothing where that is not judged.
fn limit(loaded: &Loaded, kind: EdgeKind, category: Option<Category>) -> Option<Length> {
    let above_water = Length::from_si(0.0);
    match (loaded.crew, kind) {
        (Crew::Ashore, EdgeKind::Sole) => Some(sole(category) - inches(TAPE_CLOSENESS_IN)),
        (Crew::Ashore, _) | (Crew::AtStations, EdgeKind::Sole) => Some(above_water),
        _ => None,
    }
}

fn judge(case: &Case) -> Judgement {
    let float = case.float()?;
    let edges: Vec<&EdgePoint> = float.edges_of(&[EdgeKind::Sole, EdgeKind::Scupper]).collect();
    let all = all_upright(float, Verdict::Warn, inboard)?;
    let limit = |loaded: &Loaded, kind| limit(loaded, kind, case.rig.job.boat.category);
    let lowest = worst(&all, &edges, &limit);
    let Some((lowest, least)) = lowest.and_then(|lowest| Some((lowest, limit(lowest.loaded, lowest.edge.kind)?)))
    else {
        return Ok(Finding::unmeasured(vec![Missing::one(&job::DRAINS)]));
    };
    let found = Measure::tape(lowest.height);
    let drained = edges.iter().any(|edge| edge.kind == EdgeKind::Scupper);
    let fills = drained
        && lowest.edge.kind == EdgeKind::Sole
        && lowest.loaded.crew == Crew::Ashore
        && lowest.height < -inches(TAPE_CLOSENESS_IN);
    let verdict = match lowest.height < least {
        true if fills => Verdict::Fail,
        true => Verdict::Warn,
        false => Verdict::Pass,
    };
    let change = lost(lowest.loaded, lowest.edge)
        .filter(|lost| lost.si() > 0.0)
        .map(|lost| say!(", {} lower than before", Measure::tape(lost)))
        .unwrap_or_default();
    let stands = if lowest.height.si() < 0.0 {
        say!("lies {} under water", Measure::tape(-lowest.height))
    } else {
        say!("stands {} above the water", found)
    };
    let mut finding = Finding::new(
        verdict,
        say!("The {} ", lowest.edge.name.as_str())
            .then(stands)
            .then(say!(" in `{}`", lowest.loaded.name.as_str()))
            .then(change)
            .then(Text::from(if fills { ": by open scuppers she fills there with nobody aboard." } else { "." }))
            .then(for_a_while(&all, &edges, &lowest)),
    );
    if verdict != Verdict::Pass {
        let (remedy, table) = put_back(case.rig, float, &too_low(&all, &edges, &limit));
        let keep = if least.si() > 0.0 {
            say!("To keep {}: ", Measure::tape(least))
        } else {
            Text::from("To keep it above water: ")
        };
        finding = finding.remedy(match remedy {
            Some(remedy) => {
                let until = Text::from(" Until then keep the scuppers' valves shut at rest.");
                Remedy { words: keep.then(remedy.words).then(until), ..remedy }
            }
            None => mend::yard("Stowing forward and lighter engines are not enough: raise sole and outlets, or keep the scuppers' valves shut at rest."),
        });
        if let Some(table) = table {
            finding = finding.table(table);
        }
    }
    if let Some(floating) = lowest.state.floating() {
        finding = finding.working(height_sheet(&lowest, floating));
    }
    Ok(finding.against(found, Limit::AtLeast(Measure::tape(least))).table(heights_table(float, &edges)))
}

/// What goes under with persons aboard, besides what is judged: told.
fn for_a_while(all: &[Lying], edges: &[&EdgePoint], judged: &Height) -> Text {
    let aboard: Vec<Lying> = all.iter().filter(|(loaded, ..)| loaded.crew != Crew::Ashore).copied().collect();
    match worst(&aboard, edges, &|_, _| Some(Length::from_si(0.0))) {
        Some(lowest) if lowest.height.si() < 0.0 && lowest.height < judged.height => say!(
            " In `{}` the {} lies {} under water: let flaps or valves keep it out there.",
            lowest.loaded.name.as_str(),
            lowest.edge.name.as_str(),
            Measure::tape(-lowest.height)
        ),
        _ => Text::default(),
    }
}
