//! Whether it was worth it: figures for the owner, who decides; nothing here advises to buy.

mod payback;
mod season;

use crate::case::Case;
use crate::case::worth::Reckoned;
use crate::quantity::Text;
use crate::reading::Absent;
use crate::rules::Rule;

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] = &[&season::SEASON, &payback::PAYBACK];

/// Costs and use; else that the job tells none.
fn ready(case: &Case) -> Result<Reckoned, Absent> {
    let none = || Text::from("The job tells no costs and no use; `worth: (costs: [...])` does.");
    case.worth().ok_or_else(|| Absent::NotApplicable(none()))
}
