//! `weight/swamped-flotation`

use crate::rules::mend;
use uom::si::f64::Mass;

use super::{outside_small_boats, share};
use crate::case::Case;
use crate::job::Plate;
use crate::physics::weight;
use crate::quantity::{Measure, Style, Text, pounds, say};
use crate::reading::All;
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term, number};

rule! {
    /// What the new engines weigh under water beyond what her flotation was laid out for, and the
    /// foam that would carry the difference.
    ///
    /// **Why.** A swamped boat must stay afloat and level enough to hold on to; foam laid out for a
    /// lighter engine leaves her hanging by the bow.
    ///
    /// **Limit.** No more swamped weight than the table lists for the plate's power; without a plate
    /// no more than the old engines had; half a pound either way is the table's rounding, and what the
    /// engines' weights are known to is no matter either.
    ///
    /// **Source.** Coast Guard boatbuilder's handbook, flotation (foam volume = submerged weight over
    /// B, B = 62.4 lb/ft³ less the foam's own weight); ABYC S-30 table 1A (swamped weight 0.85 of
    /// running) as incorporated by 33 CFR 183.75.
    ///
    /// **When it warns.** Add that much closed-cell foam, high and aft, where the engines' weight
    /// acts, and test her swamped; where it must go exactly is the builder's to say.
    SWAMPED_FLOTATION = Weight "weight/swamped-flotation", judge;
}

/// What the table's rounding to whole pounds may have taken. Source: ABYC S-30 table 1A.
const TABLE_ROUNDING_LB: f64 = 0.5;

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    match outside_small_boats(rig) {
        Ok(None) => {}
        Ok(Some(why)) => return Ok(Finding::not_applicable(why)),
        Err(missing) => return Ok(Finding::unmeasured(missing)),
    }
    (rig.after.ask(), rig.job.plate().ask()).all()?;
    let engines = match rig.after.engine_weights() {
        Ok(engines) => engines,
        Err(missing) => return Ok(Finding::unmeasured(missing)),
    };
    let mut sheet = Sheet::default();
    let running = weight::total(&mut sheet, "Wr", "running weight of the new engines", &engines);
    let swamped = weight::swamped(&mut sheet, &running);
    let basis = match basis(case, &mut sheet) {
        Ok(basis) => basis,
        Err(missing) => return Ok(Finding::unmeasured(missing)),
    };
    let extra = sheet.set("We", "swamped weight beyond that", &swamped - &basis);
    let (found, limit) = (swamped.measure(), basis.measure());
    let closeness = weight::closeness(&mut sheet, &rig.after.engine_readings());
    let known = weight::swamped_part(&mut sheet, &closeness);
    // A boat that somebody built for himself may have none.
    let hers = match rig.job.plate().ask() {
        Ok(Plate::None) => ". Where she has flotation, it",
        _ => "; her flotation",
    };
    let laid_out = say!("Swamped, the engines weigh {}{} was laid out for {}", found, hers, limit);
    let finding = if extra.value() > known.value() + pounds(TABLE_ROUNDING_LB) {
        let foam = weight::foam_volume(&mut sheet, &extra);
        Finding::new(Verdict::Warn, laid_out.then(say!(": they weigh {} more.", extra.measure()))).remedy(mend::yard(
            say!(
                "Add {} of closed-cell foam aft and as high as it fits, and have her tested swamped.",
                Measure::styled(foam.value(), Style::Bulk)
            ),
        ))
    } else {
        Finding::new(Verdict::Pass, laid_out.then(Text::from(".")))
    };
    Ok(finding.against(found, Limit::AtMost(limit)).working(sheet))
}

/// The swamped weight that her flotation was laid out for.
fn basis(case: &Case, sheet: &mut Sheet) -> Result<Term<Mass>, Vec<Missing>> {
    let rig = case.rig;
    let plate_power = match rig.job.plate().ask().map_err(|missing| vec![missing])? {
        Plate::Capacity { power, .. } | Plate::Builders { power, .. } => power.as_ref(),
        Plate::None | Plate::Illegible => None,
    };
    let count = rig.before.mains().len().max(1);
    let row = plate_power
        .zip(rig.tables.engine_weights.as_ref())
        .and_then(|(power, table)| weight::table_row(table, share(power.value, count)));
    if let Some(row) = row {
        sheet.remark(say!("table row up to {} each, {} in number", Measure::of(row.power_to.value), count));
        return Ok(sheet.set(
            "Wb",
            "swamped weight that the table lists for the plate's power",
            number(count as f64) * Term::new("ws", row.swamped.value),
        ));
    }
    rig.before.ask().map_err(|missing| vec![missing])?;
    let old = rig.before.engine_weights()?;
    sheet.remark(Text::from("no plate power to look up: held against the old engines"));
    let old = weight::total(sheet, "Wo", "running weight of the old engines", &old);
    Ok(sheet.set("Wb", "swamped weight of the old engines", number(weight::SWAMPED_OVER_RUNNING) * old))
}
