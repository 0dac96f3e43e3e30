//! What leans on a reading that hardly can be does not pass.

use super::{Finding, Judged, Verdict};
use crate::case::Case;
use crate::quantity::{Text, say};
use crate::rig::{Rig, Suspect};

/// Takes every pass back that would not say the same if the readings in doubt had never been taken.
pub(super) fn hold_back(rig: &Rig, judged: &mut [Judged]) {
    for suspect in &rig.suspects {
        let without = suspect.without.as_ref().map(|rig| Case::new(rig));
        for one in judged.iter_mut().filter(|one| one.finding.verdict == Verdict::Pass) {
            let leans = without.as_ref().is_none_or(|without| !(one.rule.judge)(without).tells_the_same(&one.finding));
            if leans {
                one.finding = waits(&one.finding, suspect);
            }
        }
    }
}

/// A pass that waits for an answer.
fn waits(pass: &Finding, suspect: &Suspect) -> Finding {
    let said = pass.summary.clone();
    let words = match suspect.questions.as_slice() {
        [one] => Text::from("Waits for an answer to the question at the top: ").then(one.said.clone()),
        _ => Text::from("Waits for answers to the questions at the top."),
    };
    Finding::new(Verdict::Unmeasured, words.then(say!(" With what is written it would pass: ")).then(said))
        .working(pass.working.clone())
}
