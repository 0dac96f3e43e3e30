//! `weight/rated-basis`

use super::share;
use crate::case::Case;
use crate::job::{self, Plate};
use crate::physics::weight;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::reading::{All, reading};
use crate::rig::Missing;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term, number};

rule! {
    /// Everything that hangs on the transom, against the engine weight that the standard's table
    /// lists for her rated power: what her loading was worked out with.
    ///
    /// **Why.** A plate says how much power she may have; the weights behind it are those of the
    /// engines of its day. Engines of the same power that weigh more use up capacity and buoyancy
    /// that the plate still promises.
    ///
    /// **Limit.** At most the table's running weight for the rated power, shared over as many engines
    /// as she had (one where that is not known), times their number; a weight over it by no more than it
    /// is known to (its tolerance; else 1 % from a scale or a sheet, 5 % for a class) passes.
    ///
    /// **Source.** ABYC S-30 table 1A, as incorporated by 33 CFR 183.75.
    ///
    /// **When it warns.** Look at weight/capacity-left and weight/swamped-flotation, have her floated
    /// with the new weight before relying on the plate, and lower the persons or gear she carries.
    RATED_BASIS = Weight "weight/rated-basis", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    (rig.after.ask(), rig.job.plate().ask()).all()?;
    let power = match rig.job.plate().ask() {
        Ok(Plate::Capacity { power, .. } | Plate::Builders { power, .. }) => power.clone(),
        Ok(Plate::None | Plate::Illegible) => None,
        Err(missing) => return Ok(Finding::unmeasured(vec![missing])),
    };
    let Some(power) = power.or_else(|| rig.job.boat.power_rating.clone()) else {
        // A plate that is not there, or cannot be read, is not to be read again.
        let on_plate = !matches!(rig.job.plate, Some(Plate::None | Plate::Illegible));
        return Ok(Finding::unmeasured(vec![Missing::one(if on_plate {
            reading!(job::Plate.power)
        } else {
            reading!(job::Boat.power_rating)
        })]));
    };
    let parts = match rig.after.hung() {
        Ok(parts) => parts,
        Err(missing) => return Ok(Finding::unmeasured(missing)),
    };
    let Some(table) = &rig.tables.engine_weights else {
        return Ok(Finding::not_applicable(Text::from("The catalog holds no engine weight table.")));
    };
    let count = rig.before.mains().len().max(1);
    let each = share(power.value, count);
    let Some(row) = weight::table_row(table, each) else {
        return Ok(Finding::not_applicable(say!(
            "The table ends below {} for one engine; the builder knows what weight he reckoned with.",
            Measure::of(each)
        )));
    };
    let mut sheet = Sheet::default();
    sheet.remark(say!("table row for {} each, {} in number", Measure::of(each), count));
    let listed = sheet.set(
        "Wt",
        "running weight that the table lists",
        number(count as f64) * Term::new("w", row.running.value),
    );
    let total = weight::total(&mut sheet, "W", "all that hangs on the transom", &parts);
    let (found, limit) = (total.measure(), listed.measure());
    let closeness = weight::closeness(&mut sheet, &rig.after.hung_readings());
    let over = total.value() - listed.value();
    let finding = if over.exceeds(closeness.value()) {
        Finding::new(Verdict::Warn, say!("{} hangs where her loading was worked out with {}.", found, limit)).remedy(
            mend::care(say!(
                "Reckon {} less for persons and gear until the boat has been floated with the new weight.",
                Measure::of(total.value() - listed.value())
            )),
        )
    } else if total.value().exceeds(listed.value()) {
        Finding::new(
            Verdict::Pass,
            say!(
                "{} hangs where her loading was worked out with {}: no more over it than the weights are known to, {}.",
                found,
                limit,
                closeness.measure()
            ),
        )
    } else {
        Finding::new(Verdict::Pass, say!("{} hangs where her loading was worked out with {}.", found, limit))
    };
    Ok(finding.against(found, Limit::AtMost(limit)).working(sheet))
}
