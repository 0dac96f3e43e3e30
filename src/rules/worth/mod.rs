//! Whether it was worth it: figures for the owner, who decides; nothing here advises to buy.

mod payback;
mod season;

pub use payback::PAYBACK;
pub use season::SEASON;

use super::Finding;
use crate::case::Case;
use crate::case::worth::Reckoned;
use crate::quantity::Text;

/// Costs and use, or the finding that says that the job tells none.
fn ready(case: &Case) -> Result<Reckoned, Box<Finding>> {
    case.worth().ok_or_else(|| {
        Box::new(Finding::not_applicable(Text::from(
            "The job tells no costs and no use; `worth: (costs: [...])` does.",
        )))
    })
}
