//! Current: starting, wires, fuses, a day's balance, anodes.

mod ampacity;
mod bonding;
mod cranking;
mod day_balance;
mod fuse;
mod isolation;
mod starter_cable;
mod voltage_drop;

pub use ampacity::AMPACITY;
pub use bonding::BONDING;
pub use cranking::CRANKING;
pub use day_balance::DAY_BALANCE;
pub use fuse::FUSE;
pub use isolation::ISOLATION;
pub use starter_cable::STARTER_CABLE;
pub use voltage_drop::VOLTAGE_DROP;

use super::Finding;
use crate::case::Case;
use crate::job::rigging::Electrical;
use crate::quantity::Text;

/// What the job tells of her current; else the finding that says so.
fn told<'c>(case: &'c Case) -> Result<&'c Electrical, Finding> {
    case.rig.job.rigging.electrical.as_ref().ok_or_else(|| {
        Finding::not_applicable(Text::from("The job tells nothing of her batteries and wires (rigging.electrical)."))
    })
}
