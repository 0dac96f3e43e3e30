//! A boat in the yard: her job, and what the yard has to hang on it.

use std::sync::Arc;

use uom::si::f64::Power;

use crate::case::strength::Store;
use crate::case::{Begun, Case};
use crate::catalog::Catalog;
use crate::job::{EngineGroup, Job, Role};
use crate::quantity::Dimensioned;
use crate::rig::{self, Files, Rig};
use crate::rules::{self, Verdict};
use crate::written::Slip;

/// A job whose engines are exchanged, with all that the exchanged ones share.
pub struct Yard<'a> {
    /// The job as it was written.
    pub job: &'a Job,
    /// Where names are looked up.
    pub catalog: &'a Catalog,
    files: &'a Files,
    begun: Begun,
    store: Arc<Store>,
    /// Power of the main engines that the job itself puts on, where it is known.
    pub(super) power: Option<Power>,
    /// Whether engines with too little power to plane are tried too.
    pub(super) underpowered: bool,
}

/// The rule that tells too little power.
pub(super) const TOO_LITTLE: &str = "power/too-little";

impl<'a> Yard<'a> {
    /// A job with the files that it names; `rig` is what was resolved from it, `begun` what was worked out of that.
    pub fn new(job: &'a Job, files: &'a Files, catalog: &'a Catalog, rig: &Rig, begun: Begun) -> Self {
        let power = rig.after.main_power().ok().map(|all| Power::from_si(all.iter().map(|(_, one)| one.si()).sum()));
        // A boat that is not meant to plane gets what she is meant to get.
        let judge = rules::find(TOO_LITTLE).map(|rule| (rule.judge)(&Case::new(rig)).verdict);
        let underpowered = judge == Some(Verdict::Warn);
        Yard { job, catalog, files, begun, store: Arc::default(), power, underpowered }
    }

    /// The same; engines with too little power to plane are tried too.
    #[must_use]
    pub fn underpowered(self, underpowered: bool) -> Self {
        Yard { underpowered: self.underpowered || underpowered, ..self }
    }

    /// Puts a job of the same boat on the desk; panels of the transom that were solved before are not solved again.
    ///
    /// # Errors
    /// Names that the catalog does not have.
    pub fn look<T>(&self, job: &Job, look: impl FnOnce(&Case) -> T) -> Result<T, Vec<Slip>> {
        let rig = rig::resolve_with_files(job, self.catalog, self.files)?;
        Ok(look(&Case::beside(&rig, self.begun_of(job), self.store.clone())))
    }

    /// The hull that was built of the job, where this one has the same.
    fn begun_of(&self, job: &Job) -> Begun {
        let own = self.job;
        let same = own.boat == job.boat
            && own.hull == job.hull
            && own.flooded == job.flooded
            && own.transom == job.transom
            && own.panel_study == job.panel_study;
        if same { self.begun.clone() } else { Begun::default() }
    }

    /// The job's own main engines, of which an option keeps what suits it.
    pub(super) fn own(&self) -> Option<(usize, &'a EngineGroup)> {
        let stays = stays(self.job);
        self.job.engines_on.iter().enumerate().find(|(_, group)| !stays(group))
    }
}

/// Which engines stay when others are tried: auxiliary ones beside those that drive her. Where all are called so, they drive her.
pub(super) fn stays(job: &Job) -> impl Fn(&EngineGroup) -> bool + use<> {
    let driven = job.engines_on.iter().any(|group| group.role != Some(Role::Auxiliary));
    move |group| driven && group.role == Some(Role::Auxiliary)
}

/// The engines that are exchanged.
pub(super) fn mains(job: &Job) -> impl Iterator<Item = &EngineGroup> {
    let stays = stays(job);
    job.engines_on.iter().filter(move |group| !stays(group))
}

/// The same, to change them.
pub(super) fn mains_mut(job: &mut Job) -> impl Iterator<Item = &mut EngineGroup> {
    let stays = stays(job);
    job.engines_on.iter_mut().filter(move |group| !stays(group))
}
