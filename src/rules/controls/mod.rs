//! Controls: levers, cables, switches, gauges, tubes, and what stays of the old.

mod cables;
mod cut_off;
mod gauges;
mod levers;
mod old_rigging;
mod start_in_gear;
mod tube;

pub(super) use cables::CABLES;
pub(super) use cut_off::CUT_OFF;
pub(super) use gauges::GAUGES;
pub(super) use levers::LEVERS;
pub(super) use old_rigging::OLD_RIGGING;
pub(crate) use old_rigging::goes;
pub(super) use start_in_gear::START_IN_GEAR;
pub(super) use tube::TUBE;

use crate::case::Case;
use crate::job::rigging::Controls;
use crate::quantity::Text;
use crate::reading::Absent;

/// What the job tells of her controls; else that it does not.
fn told<'c>(case: &'c Case) -> Result<&'c Controls, Absent> {
    let told = case.rig.job.rigging.controls.as_ref();
    told.ok_or_else(|| Absent::NotApplicable(Text::from(NOTHING_TOLD)))
}

/// What is said where nothing of controls was told.
const NOTHING_TOLD: &str = "The job tells nothing of levers, switches, gauges and tubes (rigging.controls).";
