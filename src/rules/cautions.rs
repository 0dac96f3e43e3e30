//! Cautions for work that can hurt someone, as the job in hand calls for them.

use super::{Judged, Verdict};
use crate::job::Sitting;
use crate::rig::Rig;

/// The usual cautions of the trade that this job calls for. Common practice, no source; local codes
/// and licensed practice come first.
pub fn cautions(rig: &Rig, judged: &[Judged]) -> Vec<&'static str> {
    let mut cautions = Vec::new();
    let at_worst = |id: &str, verdict| judged.iter().any(|one| one.rule.id == id && one.finding.verdict <= verdict);
    let failed = |id: &str| at_worst(id, Verdict::Fail);
    if rig.job.sitting == Sitting::Study {
        return cautions;
    }
    if !rig.after.is_empty() {
        cautions.push(
            "Lifting: use a hoist, sling and lifting eye rated for the engine, keep clear from under it, and lower it onto the bolts only when the boat is chocked and steady.",
        );
        cautions.push("Batteries off and fuel shut, ventilated and away from sparks, before anything is unbolted.");
    }
    if rig.job.sitting == Sitting::BeforeOrdering && !rig.after.is_empty() {
        cautions.push(
            "Drilling: sound the transom first. Water from a hole, dark or soft dust mean a wet core: stop, and have it surveyed before anything hangs on it. Seal every hole.",
        );
    }
    if at_worst("strength/soft-core", Verdict::Warn) {
        cautions.push(
            "The core was found suspect or soft: hang no more weight or power on this transom until it has been opened, dried or rebuilt and signed for by someone licensed to.",
        );
    }
    if failed("power/plate-limit") || failed("power/formula-limit") {
        cautions.push(
            "Overpowering: she can flip in a turn or stuff her bow, and running her may break the law and void her insurance.",
        );
    }
    cautions.push(
        "A low well edge lets a following sea aboard: never run her with the motorwell drains blocked, and never move persons aft while stopped stern to the sea.",
    );
    cautions
}
