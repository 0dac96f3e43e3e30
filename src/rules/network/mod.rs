//! Network: the instruments' backbone.

mod backbone;
mod engines;
mod terminators;
mod voltage;

use crate::case::Case;
use crate::job::rigging::Network;
use crate::quantity::Text;
use crate::reading::Absent;
use crate::rules::Rule;

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] =
    &[&backbone::BACKBONE, &terminators::TERMINATORS, &voltage::VOLTAGE, &engines::ENGINES];

/// What the job tells of her network; else that it does not.
fn told<'c>(case: &'c Case) -> Result<&'c Network, Absent> {
    let told = case.rig.job.rigging.network.as_ref();
    told.ok_or_else(|| Absent::NotApplicable(Text::from("The job tells of no instruments' network (rigging.network).")))
}
