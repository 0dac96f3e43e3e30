//! `fit/centre-distance`

use crate::case::{Case, is_beside_cutout};
use crate::job::Role;
use crate::physics::fit;
use crate::quantity::{Basis, Dimensioned, Measure, Text, say};
use crate::reading::All;
use crate::rig::Rig;
use crate::rig::{Engine, Group, Missing};
use crate::rules::mend::{self, Remedy};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term};
use uom::si::f64::Length;

rule! {
    /// Neighbouring engines apart at least by what both need, and the outer one's powerhead inside
    /// the cutout at full lock.
    ///
    /// **Why.** Engines that are too near strike each other when one is tilted or the tie bar is
    /// slack; a powerhead that swings into the side of the cutout breaks its cowl and the steering.
    ///
    /// **Limit.** Half of what each engine asks beside its like, together; and the outer engine's
    /// centreline and reach within half the cutout, where it hangs on the transom itself.
    ///
    /// **Source.** The engines' mounting sheets; common practice, no source (26 in and up for narrow
    /// engines, 28 to 32 in for large ones).
    ///
    /// **When it warns.** It fails where the engines are too near: move them apart, within the
    /// cutout. It warns where a powerhead may reach the side of the cutout at lock: limit the
    /// steering, or move inboard.
    CENTRE_DISTANCE = Fit "fit/centre-distance", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    let mut engines: Vec<(&Group, &Engine)> = rig.after.engines().collect();
    engines.sort_by(|a, b| b.1.y.value.total_cmp(&a.1.y.value));
    rig.after.ask()?;
    let mut tightest: Option<Finding> = None;
    for pair in engines.windows(2) {
        let (one, other) = (pair[0].1, pair[1].1);
        let (needs, other_needs) = (one.centre_distance.ask(), other.centre_distance.ask()).all()?;
        let mut sheet = Sheet::default();
        sheet.told("c1", Some(needs));
        sheet.told("c2", Some(other_needs));
        let needed = fit::centres_needed(&mut sheet, needs.value, other_needs.value);
        let apart = Measure::tape(one.y - other.y);
        let limit = Limit::AtLeast(needed.tape());
        let (a, b) = (one.label.as_str(), other.label.as_str());
        let finding = if needed.value().exceeds(one.y - other.y) {
            Finding::new(
                Verdict::Fail,
                say!("The {} and the {} stand {} apart and need {}.", a, b, apart, needed.tape()),
            )
            .remedy(set_apart(rig, pair[0], pair[1], needed.value()))
        } else {
            Finding::new(
                Verdict::Pass,
                say!("The {} and the {} stand {} apart and need {}.", a, b, apart, needed.tape()),
            )
        }
        .against(apart, limit)
        .working(sheet);
        let si = |finding: &Finding| finding.margin().map_or(0.0, |margin| margin.si);
        if tightest.as_ref().is_none_or(|tightest| si(&finding) < si(tightest)) {
            tightest = Some(finding);
        }
    }
    if let Some(failed) = tightest.as_ref().filter(|finding| finding.verdict == Verdict::Fail) {
        return Ok(failed.clone());
    }
    Ok(match (tightest, at_lock(case, &engines)) {
        (Some(pair), Ok(Some(lock))) if lock.verdict == Verdict::Pass => pair,
        (None, Ok(Some(lock))) | (Some(_), Ok(Some(lock))) => lock,
        (Some(pair), Ok(None)) => pair,
        (None, Ok(None)) => Finding::not_applicable(Text::from(
            "A single engine has no neighbour, and no side of a cutout stands beside its powerhead.",
        )),
        (_, Err(missing)) => Finding::unmeasured(missing),
    })
}

/// The engine that reaches farthest, against the cutout; `None` where none hangs on the
/// transom, or there is no cutout.
fn at_lock(case: &Case, engines: &[(&Group, &Engine)]) -> Result<Option<Finding>, Vec<Missing>> {
    let on_transom: Vec<&Engine> = engines
        .iter()
        .filter(|(group, engine)| in_cutout(case.rig, group, engine))
        .map(|(_, engine)| *engine)
        .collect();
    if on_transom.is_empty() || case.rig.job.transom.cutout.is_some() {
        return Ok(None);
    }
    let cutout = case.rig.job.transom.cutout_width().ask();
    let mut missing: Vec<Missing> = cutout.as_ref().err().cloned().into_iter().collect();
    let mut farthest: Option<(&Engine, Sheet, Term<Length>)> = None;
    for engine in on_transom {
        match engine.clearance_each_way.ask() {
            Ok(reach) => {
                let mut sheet = Sheet::default();
                sheet.told("k", Some(reach));
                sheet.origin::<Length>("y", Basis::Measured.origin());
                let swept = fit::swept_half_width(&mut sheet, engine.y, reach.value);
                if farthest.as_ref().is_none_or(|(_, _, most)| swept.value() > most.value()) {
                    farthest = Some((engine, sheet, swept));
                }
            }
            Err(lacking) => missing.push(lacking),
        }
    }
    let (Ok(cutout), Some((engine, sheet, swept)), true) = (cutout, farthest, missing.is_empty()) else {
        return Err(missing);
    };
    let half = Measure::tape(cutout.value / 2.0);
    let label = engine.label.as_str();
    let finding = if swept.value().exceeds(cutout.value / 2.0) {
        Finding::new(
            Verdict::Warn,
            say!("At full lock the powerhead of the {} reaches {} from the boat's centreline; the cutout ends at {}.", label, swept.tape(), half),
        )
        .remedy(mend::look(if engine.y.si() == 0.0 {
            "Limit the steering, or set the engine back on a bracket; try it with the engine on the hoist before drilling."
        } else {
            "Limit the steering, move the engine inboard, or set it back on a bracket; try it with the engine on the hoist before drilling."
        }))
    } else {
        Finding::new(Verdict::Pass, say!("At full lock the powerhead of the {} stays inside the cutout.", label))
    };
    Ok(Some(finding.against(swept.tape(), Limit::AtMost(half)).working(sheet)))
}

/// Whether sides of the cutout stand beside its powerhead.
fn in_cutout(rig: &Rig, group: &Group, engine: &Engine) -> bool {
    group.bracket.is_none() && !is_beside_cutout(rig, group, engine)
}

/// Two neighbours set so far apart.
fn set_apart(rig: &Rig, one: (&Group, &Engine), other: (&Group, &Engine), needed: Length) -> Remedy {
    let needed = mend::up(needed, SET_STEP_IN);
    let more = needed - (one.1.y - other.1.y).abs();
    let half = rig.job.transom.cutout_width.as_ref().map(|cutout| cutout.value / 2.0);
    let reaches = |(group, engine): (&Group, &Engine)| {
        let reach = engine.clearance_each_way.reading().map(|reach| engine.y.abs() + more / 2.0 + reach.value);
        let on_transom = in_cutout(rig, group, engine) && engine.role == Role::Main;
        on_transom && reach.zip(half).is_some_and(|(reach, half)| reach.exceeds(half))
    };
    if [one, other].into_iter().any(reaches) {
        return mend::yard(say!(
            "They need centres {} apart, and there the cowls reach the side of the cutout at full lock: choose narrower engines, one instead of two, or a bracket.",
            Measure::tape(needed)
        ));
    }
    mend::change(
        say!("Set their centres at least {} apart.", Measure::tape(needed)),
        mend::apart(rig, one, other, needed),
    )
}

/// Step in which engines are set apart. Common practice, no source.
const SET_STEP_IN: f64 = 0.25;
