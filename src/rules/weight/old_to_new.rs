//! `weight/old-to-new`

use crate::rules::mend;
use uom::si::f64::Mass;

use crate::case::Case;
use crate::job::{self, Bottom};
use crate::physics::weight;
use crate::quantity::{Dimensioned, Measure, Text, pounds, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Limit, Verdict};
use crate::working::{Sheet, Table, max};

rule! {
    /// What hangs on the stern after, against what hung there before, item by item. Where she is floated
    /// before and after, stern/trim-change judges it.
    ///
    /// **Why.** Weight at the very end of the boat sinks the stern and lifts the bow more than the
    /// same weight anywhere else; scuppers and well edges come nearer to the water.
    ///
    /// **Limit.** No more than hung there before and what trims a boat of her length and beam by about
    /// half a degree: some 80 lb on 17 ft, 130 lb on 20 ft, and 40 lb however short she is; and what the
    /// weights are known to (their tolerance; else 1 % from a scale or a sheet, 5 % for a class).
    ///
    /// **Source.** Common practice, no source (the half degree, the 40 lb, and the waterline taken from
    /// length and beam); hydrostatics of a waterplane.
    ///
    /// **When it warns.** The weight alone does not decide: she must be floated, by calculation or
    /// with sandbags at the engines' place, and the well edge and the scuppers measured.
    OLD_TO_NEW = Weight "weight/old-to-new", judge;
}

/// Weight for which nobody floats a boat, however short she is, lb. Common practice, no source: a quarter of a person, who moves
/// farther than that whenever he sits down.
const NOT_WORTH_FLOATING_LB: f64 = 40.0;

fn judge(case: &Case) -> Finding {
    let rig = case.rig;
    let mut missing: Vec<Missing> = [rig.before.ask().err(), rig.after.ask().err()].into_iter().flatten().collect();
    let (before, after) = match (rig.before.hung(), rig.after.hung()) {
        (Ok(before), Ok(after)) if missing.is_empty() => (before, after),
        (before, after) => {
            missing.extend(before.err().into_iter().chain(after.err()).flatten());
            return Finding::unmeasured(missing);
        }
    };
    let mut sheet = Sheet::default();
    let old = weight::total(&mut sheet, "Wo", "hung on the stern before", &before);
    let new = weight::total(&mut sheet, "Wn", "hangs on the stern after", &after);
    let change = sheet.set("ΔW", "net change", &new - &old);
    let found = new.measure();
    let hangs = say!("{} hangs on the stern where {} hung: ", found, old.measure()).then(words(change.value()));
    let table = items(&before, &after, change.measure());
    let floated = case.float().is_ok_and(|float| float.loadings.iter().any(|loaded| loaded.both().is_some()));
    if floated {
        let see = ". She is floated with both: see “trim change”, “well edge” and “scuppers”.";
        return Finding::not_applicable(hangs.then(Text::from(see))).table(table).working(sheet);
    }
    let (was, is) = (rig.before.hung_readings(), rig.after.hung_readings());
    let closeness = weight::closeness(&mut sheet, &was.into_iter().chain(is).collect::<Vec<_>>());
    let Some(length) = rig.job.boat.length().reading() else {
        let finding = if change.value().exceeds(closeness.value()) {
            let missing = vec![Missing::one(reading!(job::Boat.length))];
            let waits = say!(". Whether she feels it waits for her length.");
            Finding { summary: hangs.then(waits), ..Finding::unmeasured(missing) }
        } else {
            Finding::new(Verdict::Pass, hangs.then(Text::from(".")))
        };
        return finding.found(found).table(table).working(sheet);
    };
    sheet.told("L", Some(length));
    let beam = rig.job.boat.beam().reading().or(rig.job.boat.transom_width().reading());
    sheet.told("B", beam);
    let beam = beam.map(|beam| beam.value).unwrap_or_else(|| {
        sheet.remark("her beam is not given: taken as four tenths of her length");
        weight::BEAM_OF_LENGTH * length.value
    });
    let times = match rig.job.boat.bottom {
        Some(Bottom::Vee) => weight::STERN_OF_VEE,
        Some(Bottom::FlatHardChine | Bottom::Cathedral) => weight::STERN_OF_FLAT,
        Some(Bottom::Round) | None => weight::STERN_OF_ANY,
    };
    let sinks = weight::stern_sinks(&mut sheet, &change, length.value, beam, times);
    let unfelt = weight::unfelt(&mut sheet, length.value, beam);
    let little = pounds(NOT_WORTH_FLOATING_LB);
    let least = sheet.given("Wq", "weight for which nobody floats a boat", little, "practice: a quarter of a person");
    let more = max(unfelt.clone(), least);
    let limit = sheet.set("Wl", "what nobody objects to", &old + more + &closeness);
    let finding = if new.value().exceeds(limit.value()) {
        let trims = say!(
            ". About {} there trims a boat of her length by half a degree; her transom comes to lie {} to {} lower (a first figure from length and beam, assumed for her bottom).",
            Measure::of(unfelt.value()),
            Measure::tape(sinks[0]),
            Measure::tape(sinks[1])
        );
        Finding::new(Verdict::Warn, hangs.then(trims)).remedy(mend::look("Float her: by calculation (give her sections and freeboards, see `sternknee tape`), or with sandbags of that weight at the engines' place, persons and fuel aboard; measure well edge and scuppers."))
    } else if change.value().exceeds(unfelt.value() + closeness.value()) {
        let word = ", about a quarter of a person: nobody floats a boat for that.";
        Finding::new(Verdict::Pass, hangs.then(Text::from(word)))
    } else if change.value().exceeds(closeness.value()) {
        Finding::new(Verdict::Pass, hangs.then(Text::from(", which a boat of her length hardly feels.")))
    } else {
        Finding::new(Verdict::Pass, hangs.then(Text::from(".")))
    };
    finding.against(found, Limit::AtMost(limit.measure())).table(table).working(sheet)
}

/// A change of weight in words.
fn words(change: Mass) -> Text {
    if change.si() < 0.0 { say!("{} less", Measure::of(-change)) } else { say!("{} more", Measure::of(change)) }
}

fn items(before: &[(String, Mass)], after: &[(String, Mass)], change: Measure) -> Table {
    let row = |name: &str, sign: &str, measure| vec![say!("{}", name), say!("{}{}", sign, measure)];
    let mut rows: Vec<Vec<Text>> = Vec::new();
    rows.extend(before.iter().map(|(name, mass)| row(name, "-", Measure::of(*mass))));
    rows.extend(after.iter().map(|(name, mass)| row(name, "+", Measure::of(*mass))));
    rows.push(row("net change", "", change));
    Table::new("off and on the stern", &["item", "weight"], rows)
}
