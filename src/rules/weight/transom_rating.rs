//! `weight/transom-rating`

use super::overweight;
use crate::case::Case;
use crate::physics::weight;
use crate::quantity::{Measure, say};
use crate::reading::All;
use crate::rules::mend::{self, Mend, Remedy};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// Everything that hangs on the transom, running: engines, bracket and rigging, against the
    /// weight that her builder lets the transom carry.
    ///
    /// **Why.** The weight pulls on the transom at every wave, on an arm that a bracket makes longer.
    /// A transom that is overloaded softens, then cracks, often under paint that looks well.
    ///
    /// **Limit.** At most the builder's rating.
    ///
    /// **Source.** The builder's manual or letter; ABYC S-12 treats transoms and motorwells (no
    /// figure is taken from it).
    ///
    /// **When it warns.** It fails above the rating: choose lighter engines or fewer, or ask the
    /// builder for a rating with the transom rebuilt.
    TRANSOM_RATING = Weight "weight/transom-rating", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    let (_, rating) = (rig.after.ask(), rig.job.boat.transom_rating().ask()).all()?;
    let parts = match rig.after.hung() {
        Ok(parts) => parts,
        Err(missing) => return Ok(Finding::unmeasured(missing)),
    };
    let mut sheet = Sheet::default();
    let total = weight::total(&mut sheet, "W", "all that hangs on the transom", &parts);
    let (found, limit) = (total.measure(), Measure::of(rating.value));
    let finding = if overweight(total.value(), rating.value) {
        Finding::new(Verdict::Fail, say!("{} would hang on a transom that its builder rates for {}.", found, limit))
            .remedy({
                let over = mend::pounds_up(total.value() - rating.value);
                let lighter = mend::lighter(rig, over).map(Mend::Change);
                Remedy::new(
                    say!(
                        "Take {} off the transom, or ask the builder what a rebuilt one may carry.",
                        Measure::of(over)
                    ),
                    lighter.into_iter().chain([Mend::Ask]),
                )
            })
    } else {
        Finding::new(Verdict::Pass, say!("{} hangs on a transom rated for {}.", found, limit))
    };
    Ok(finding.against(found, Limit::AtMost(limit)).working(sheet))
}
