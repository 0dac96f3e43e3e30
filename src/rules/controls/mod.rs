//! Controls: levers, cables, switches, gauges, tubes, and what stays of the old.

mod cables;
mod cut_off;
mod gauges;
mod levers;
mod old_rigging;
mod start_in_gear;
mod tube;

pub(crate) use old_rigging::goes;

use crate::case::Case;
use crate::job::rigging::Controls;
use crate::quantity::Text;
use crate::reading::Absent;
use crate::rules::Rule;

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] = &[
    &levers::LEVERS,
    &cables::CABLES,
    &cut_off::CUT_OFF,
    &start_in_gear::START_IN_GEAR,
    &gauges::GAUGES,
    &tube::TUBE,
    &old_rigging::OLD_RIGGING,
];

/// What the job tells of her controls; else that it does not.
fn told<'c>(case: &'c Case) -> Result<&'c Controls, Absent> {
    let told = case.rig.job.rigging.controls.as_ref();
    told.ok_or_else(|| Absent::NotApplicable(Text::from(NOTHING_TOLD)))
}

/// What is said where nothing of controls was told.
const NOTHING_TOLD: &str = "The job tells nothing of levers, switches, gauges and tubes (rigging.controls).";
