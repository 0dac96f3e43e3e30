//! Whether it was worth it: figures for the owner, who decides; nothing here advises to buy.

mod payback;
mod season;

pub(super) use payback::PAYBACK;
pub(super) use season::SEASON;

use crate::case::Case;
use crate::case::worth::Reckoned;
use crate::quantity::Text;
use crate::reading::Absent;

/// Costs and use; else that the job tells none.
fn ready(case: &Case) -> Result<Reckoned, Absent> {
    let none = || Text::from("The job tells no costs and no use; `worth: (costs: [...])` does.");
    case.worth().ok_or_else(|| Absent::NotApplicable(none()))
}
