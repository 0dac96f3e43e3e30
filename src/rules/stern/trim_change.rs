//! `stern/trim-change`

use super::{Wanted, so};
use crate::rules::mend;
use uom::si::f64::{Angle, Length};

use super::put_back;
use crate::case::Case;
use crate::case::float::{Float, Loaded, State, heel_words, trim_words};
use crate::physics::float::Floating;
use crate::quantity::{Dimensioned, Measure, Style, Text, capitalised, degrees, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Table, Term};

rule! {
    /// How much the repower changes her trim, and how much lower her transom sits, in every loading.
    ///
    /// **Why.** A boat down by the stern squats, climbs over her bow wave late, hides the water ahead
    /// and takes following seas over the well.
    ///
    /// **Limit.** At most 1 deg of trim, either way.
    ///
    /// **Source.** Common practice, no source (the limit); hydrostatics of her own shape, cut exactly
    /// and balanced in sinkage, trim and heel (the figures).
    ///
    /// **When it warns.** Move what the finding names forward, choose lighter engines or less setback,
    /// and float her again.
    TRIM_CHANGE = Stern "stern/trim-change", judge;
}

/// Change of trim that owners do not notice. Common practice, no source.
const MOST_CHANGE_DEG: f64 = 1.0;

struct Change<'f> {
    loaded: &'f Loaded,
    after: &'f State,
    before_lies: &'f Floating,
    after_lies: &'f Floating,
}

impl Change<'_> {
    fn trim(&self) -> Angle {
        self.after_lies.attitude().trim - self.before_lies.attitude().trim
    }

    fn sinks(&self) -> Length {
        self.after_lies.attitude().sinkage - self.before_lies.attitude().sinkage
    }
}

fn judge(case: &Case) -> Judgement {
    let float = case.float()?;
    let changes: Vec<Change> = float
        .loadings
        .iter()
        .filter_map(|loaded| {
            let (before, after) = loaded.both()?;
            Some(Change { loaded, after, before_lies: before.upright().ok()?, after_lies: after.upright().ok()? })
        })
        .collect();
    let size = |change: &&Change| change.trim().abs().si();
    let Some(worst) = changes.iter().max_by(|a, b| size(a).total_cmp(&size(b))) else {
        return Ok(as_she_is(case, float));
    };
    let limit = degrees(MOST_CHANGE_DEG);
    let found = Measure::of(worst.trim().abs());
    let finding = if worst.trim().abs() > limit {
        let wanted = worst.before_lies.attitude().trim.si();
        let sign = worst.trim().si().signum();
        let goal = |f: &Floating| sign * (wanted - f.attitude().trim.si());
        let finding = Finding::new(Verdict::Warn, words(worst));
        let (remedy, table) = put_back(case.rig, float, &[Wanted { state: worst.after, goal: Box::new(goal) }]);
        let finding = match remedy.filter(|_| sign > 0.0) {
            Some(remedy) => finding.remedy(so(Text::from("To give the whole trim back: "), remedy)),
            None => finding.remedy(mend::care(if sign > 0.0 {
                "Nothing that can be moved or stowed gives the trim back: lighter engines or less setback would."
            } else {
                "She trims by the bow now: stow what can be moved farther aft."
            })),
        };
        match table.filter(|_| sign > 0.0) {
            Some(table) => finding.table(table),
            None => finding,
        }
    } else {
        Finding::new(Verdict::Pass, words(worst))
    };
    Ok(finding
        .against(found, Limit::AtMost(Measure::of(limit)))
        .table(changes_table(&changes))
        .table(float.side_by_side(worst.loaded))
        .working(sheet(worst)))
}

fn words(change: &Change) -> Text {
    let sinks = change.sinks();
    let lower = if sinks.si() >= 0.0 { "lower" } else { "higher" };
    let more = if change.trim().si() >= 0.0 { "stern" } else { "bow" };
    say!(
        "Most in `{}`: her transom sits {} {}, and she trims {} more by the {}.",
        change.loaded.name.as_str(),
        Measure::tape(sinks.abs()),
        lower,
        Measure::of(change.trim().abs()),
        more
    )
}

fn changes_table(changes: &[Change]) -> Table {
    let rows = changes
        .iter()
        .map(|change| {
            vec![
                Text::from(change.loaded.name.as_str()),
                Measure::of(change.before_lies.attitude().trim).into(),
                Measure::of(change.after_lies.attitude().trim).into(),
                Measure::of(change.sinks()).into(),
            ]
        })
        .collect();
    Table::new(
        "trim, bow up, before and after; how much lower the transom sits",
        &["loading", "before", "after", "transom lower"],
        rows,
    )
}

fn sheet(change: &Change) -> Sheet {
    let mut sheet = Sheet::default();
    let trim = |symbol: &str, lies: &Floating| Term::new(symbol, lies.attitude().trim);
    let draft = |symbol: &str, lies: &Floating| Term::new(symbol, lies.attitude().sinkage);
    sheet.remark(say!(
        "loading `{}`; balance by Newton's method, weight and buoyancy agree to {} before and {} after",
        change.loaded.name.as_str(),
        format!("{:.0e}", change.before_lies.residual.force.abs()),
        format!("{:.0e}", change.after_lies.residual.force.abs())
    ));
    sheet.set("Δτ", "change of trim, bow up", trim("τ2", change.after_lies) - trim("τ1", change.before_lies));
    sheet.set(
        "ΔT",
        "how much lower the transom sits",
        draft("T2", change.after_lies) - draft("T1", change.before_lies),
    );
    sheet
}

/// Nothing to compare: how she lies is the answer.
fn as_she_is(case: &Case, float: &Float) -> Finding {
    let lies = float.loadings.iter().find_map(|loaded| {
        let state = loaded.judged()?;
        Some((loaded, state, state.upright().ok()?))
    });
    let Some((loaded, state, lies)) = lies else {
        return Finding::not_applicable(Text::from("She floats upright in no loading: see “metacentric height”."));
    };
    let attitude = lies.attitude();
    let buoyancy = lies.immersed.centre_of_buoyancy;
    let length = |metres: f64| Measure::tape(Length::from_si(metres));
    let side = |to_port: f64| if to_port < 0.0 { "to starboard" } else { "to port" };
    let gravity = state.total.centre;
    let says = say!(
        "{}, `{}`: she weighs {}, with her centre {} forward and {} {}; the origin lies {} under water, she trims ",
        capitalised(float.judged_words()),
        loaded.name.as_str(),
        Measure::of(state.total.mass),
        Measure::styled(Length::from_si(gravity.x), Style::FeetInches),
        length(gravity.y.abs()),
        side(gravity.y),
        Measure::tape(attitude.sinkage)
    )
    .then(trim_words(attitude.trim))
    .then(Text::from(" and heels "))
    .then(heel_words(attitude.heel))
    .then(say!(
        "; her centre of buoyancy is {} forward, {} {} and {} up; GM is {}. `sternknee work JOB float` prints the rest.",
        Measure::styled(Length::from_si(buoyancy.x), Style::FeetInches),
        length(buoyancy.y.abs()),
        side(buoyancy.y),
        length(buoyancy.z),
        Measure::tape(state.gm().unwrap_or(Length::from_si(0.0)))
    ));
    let rig = case.rig;
    let missing =
        [rig.before.ask().err(), rig.after.ask().err()].into_iter().flatten().filter(|_| !loaded.alone).collect();
    Finding { missing, ..Finding::new(Verdict::Unmeasured, says) }
        .found(Measure::of(attitude.trim))
        .table(float.side_by_side(loaded))
}
