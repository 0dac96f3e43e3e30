//! Network: the instruments' backbone.

mod backbone;
mod engines;
mod terminators;
mod voltage;

pub use backbone::BACKBONE;
pub use engines::ENGINES;
pub use terminators::TERMINATORS;
pub use voltage::VOLTAGE;

use super::Finding;
use crate::case::Case;
use crate::job::rigging::Network;
use crate::quantity::Text;

/// What the job tells of her network; else the finding that says so.
fn told<'c>(case: &'c Case) -> Result<&'c Network, Finding> {
    case.rig.job.rigging.network.as_ref().ok_or_else(|| {
        Finding::not_applicable(Text::from("The job tells of no instruments' network (rigging.network)."))
    })
}
