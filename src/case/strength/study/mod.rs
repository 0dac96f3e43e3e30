//! A panel and a bolt group that a study gives outright.

mod bolts;
mod panel;

use crate::case::Case;
use crate::working::Part;
use crate::written::Slip;

pub use bolts::BoltAnswer;
pub use panel::PanelAnswer;

impl<'a> Case<'a> {
    /// The answer to a study of a panel, where the job holds one.
    pub fn panel_study(&self) -> Option<Result<&PanelAnswer, &Slip>> {
        let answer = self.begun.panel_study.get_or_init(|| {
            let (study, layers) = self.rig.structure.panel_study.as_ref()?;
            Some(PanelAnswer::of(study, layers))
        });
        answer.as_ref().map(Result::as_ref)
    }

    /// The answer to a study of a bolt group, where the job holds one.
    pub fn bolt_study(&self) -> Option<Result<BoltAnswer, Slip>> {
        BoltAnswer::of(self.rig).transpose()
    }

    /// What the studies of the job ask and cannot be answered.
    pub fn study_faults(&self) -> Vec<Slip> {
        let panel = self.panel_study().and_then(Result::err).cloned();
        let bolts = self.bolt_study().and_then(Result::err);
        panel.into_iter().chain(bolts).collect()
    }
}

/// The working of a job's studies.
pub(super) fn parts(case: &Case) -> Vec<Part> {
    let panel = case.panel_study().and_then(Result::ok).map(PanelAnswer::part);
    let bolts = case.bolt_study().and_then(Result::ok).map(|answer| answer.part());
    panel.into_iter().chain(bolts).collect()
}
