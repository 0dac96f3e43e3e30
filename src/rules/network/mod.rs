//! Network: the instruments' backbone.

mod backbone;
mod engines;
mod terminators;
mod voltage;

pub(super) use backbone::BACKBONE;
pub(super) use engines::ENGINES;
pub(super) use terminators::TERMINATORS;
pub(super) use voltage::VOLTAGE;

use crate::case::Case;
use crate::job::rigging::Network;
use crate::quantity::Text;
use crate::reading::Absent;

/// What the job tells of her network; else that it does not.
fn told<'c>(case: &'c Case) -> Result<&'c Network, Absent> {
    let told = case.rig.job.rigging.network.as_ref();
    told.ok_or_else(|| Absent::NotApplicable(Text::from("The job tells of no instruments' network (rigging.network).")))
}
