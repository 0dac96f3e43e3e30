//! Current: starting, wires, fuses, a day's balance, anodes.

mod ampacity;
mod bonding;
mod cranking;
mod day_balance;
mod fuse;
mod isolation;
mod starter_cable;
mod voltage_drop;

use crate::case::Case;
use crate::job::rigging::Electrical;
use crate::quantity::Text;
use crate::reading::Absent;
use crate::rules::Rule;

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] = &[
    &cranking::CRANKING,
    &starter_cable::STARTER_CABLE,
    &voltage_drop::VOLTAGE_DROP,
    &ampacity::AMPACITY,
    &fuse::FUSE,
    &day_balance::DAY_BALANCE,
    &isolation::ISOLATION,
    &bonding::BONDING,
];

/// What the job tells of her current; else that it does not.
fn told<'c>(case: &'c Case) -> Result<&'c Electrical, Absent> {
    let told = case.rig.job.rigging.electrical.as_ref();
    told.ok_or_else(|| {
        Absent::NotApplicable(Text::from("The job tells nothing of her batteries and wires (rigging.electrical)."))
    })
}
