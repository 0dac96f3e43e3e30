//! Current: starting, wires, fuses, a day's balance, anodes.

mod ampacity;
mod bonding;
mod cranking;
mod day_balance;
mod fuse;
mod isolation;
mod starter_cable;
mod voltage_drop;

pub(super) use ampacity::AMPACITY;
pub(super) use bonding::BONDING;
pub(super) use cranking::CRANKING;
pub(super) use day_balance::DAY_BALANCE;
pub(super) use fuse::FUSE;
pub(super) use isolation::ISOLATION;
pub(super) use starter_cable::STARTER_CABLE;
pub(super) use voltage_drop::VOLTAGE_DROP;

use crate::case::Case;
use crate::job::rigging::Electrical;
use crate::quantity::Text;
use crate::reading::Absent;

/// What the job tells of her current; else that it does not.
fn told<'c>(case: &'c Case) -> Result<&'c Electrical, Absent> {
    let told = case.rig.job.rigging.electrical.as_ref();
    told.ok_or_else(|| {
        Absent::NotApplicable(Text::from("The job tells nothing of her batteries and wires (rigging.electrical)."))
    })
}
