//! From a job and a catalog to a rig.

mod assumed;
mod names;
mod outfit;
mod rigging;
mod roles;
mod structure;

use std::sync::Arc;

use super::float::Files;
use super::{Outfit, Ran, Rig};
use crate::catalog::{Catalog, Entry, Material, likely_names};
use crate::job::{self, Cycle, Job};
use crate::quantity::{Text, say};
use crate::reading::reading;
use crate::written::Slip;

/// Resolves a job.
///
/// # Errors
/// Every class, bracket, material or shaft length that the catalog does not have.
pub fn resolve(job: &Job, catalog: &Catalog) -> Result<Rig, Vec<Slip>> {
    resolve_with_files(job, catalog, &Files::new())
}

/// Resolves a job that names files, whose bytes were read.
///
/// # Errors
/// As [`resolve`].
pub fn resolve_with_files(job: &Job, catalog: &Catalog, files: &Files) -> Result<Rig, Vec<Slip>> {
    Resolver::new(catalog).rig(job, files)
}

/// Resolves a job in which every class stands written out, as [`Rig::job`] does: its figures are taken as they stand there.
///
/// # Errors
/// As [`resolve`].
pub fn resolve_again(job: &Job, catalog: &Catalog, files: &Files) -> Result<Rig, Vec<Slip>> {
    Resolver { written_out: true, ..Resolver::new(catalog) }.rig(job, files)
}

/// The job with the figures of every class in place of its name.
fn written_out(job: &Job, before: &Outfit, after: &Outfit) -> Job {
    let mut job = job.clone();
    for (groups, outfit) in [(&mut job.engines_off, before), (&mut job.engines_on, after)] {
        for (group, resolved) in groups.iter_mut().zip(&outfit.groups) {
            // A sheet's numbers stand in the spec that they were put into.
            group.sheet = None;
            group.described = resolved.engines.first().map(|engine| engine.spec.clone());
            group.role = resolved.engines.first().map(|engine| engine.role);
            if let (Some(hung), Some(bracket)) = (&mut group.bracket, &resolved.bracket) {
                hung.described = Some(bracket.spec.clone());
            }
        }
    }
    job
}

/// Names that are told not to be found; after so many, mending the first ones is the better use of time.
const MOST_UNRESOLVED: usize = 50;

pub(super) struct Resolver<'a> {
    pub(super) catalog: &'a Catalog,
    /// Whether the figures of every class stand in the job beside its name.
    written_out: bool,
    unresolved: Vec<Slip>,
    assumed: Vec<Text>,
    /// Whether the engines that are being looked up come off.
    comes_off: bool,
}

impl<'a> Resolver<'a> {
    fn new(catalog: &'a Catalog) -> Self {
        Resolver { catalog, written_out: false, unresolved: Vec::new(), assumed: Vec::new(), comes_off: false }
    }

    fn rig(mut self, job: &Job, files: &Files) -> Result<Rig, Vec<Slip>> {
        let mut before = self.outfit("engines_off", &job.engines_off, &job.comes_off, reading!(job::Job.engines_off));
        let mut after = self.outfit("engines_on", &job.engines_on, &job.goes_on, reading!(job::Job.engines_on));
        let rigging = self.rigging(job);
        self.old_rigging(&mut before);
        rigging::batteries_go_on(&rigging, &mut after);
        let electric = after.engines().find(|(_, engine)| engine.spec.cycle == Some(Cycle::Electric));
        if let (Some((_, engine)), true) = (electric, after.items.is_empty()) {
            self.assumed.push(say!(
                "The battery that drives the {} is not weighed: it weighs about as much as the engine, or more. Tell it under `goes_on`.",
                engine.label.as_str()
            ));
        }
        let material = job.transom.material.as_deref();
        let material = material.and_then(|name| self.material("transom.material", name));
        let structure = structure::resolve(&mut self, job, material.as_ref());
        let (trial, unread) = super::trial::resolve(job, files);
        self.unresolved.extend(unread);
        if !self.unresolved.is_empty() {
            return Err(self.unresolved);
        }
        let mut rig = Rig {
            job: Arc::new(Job { rigging, ..written_out(job, &before, &after) }),
            before,
            after,
            material,
            shape: super::float::shape(job, files),
            ran: Ran::of(job),
            trial,
            structure,
            tables: self.catalog.tables.clone(),
            suspects: Vec::new(),
            assumed: self.assumed,
        };
        rig.assumed.extend(assumed::readings(job));
        Ok(rig)
    }

    /// The entry of this name, a copy of it; where there is none, a slip at the path.
    pub(super) fn find<T: Clone>(
        &mut self,
        path: &str,
        name: &str,
        what: &str,
        entries: &'a [Entry<T>],
    ) -> Option<Entry<T>> {
        let found = entries.iter().find(|entry| entry.name == name).cloned();
        if found.is_none() && self.unresolved.len() < MOST_UNRESOLVED {
            let likely = likely_names(entries, name);
            self.unresolved.push(Slip {
                path: path.to_owned(),
                message: format!("no {what} of the catalog is called `{name}`"),
                help: match likely.as_slice() {
                    [first, second, ..] => {
                        format!("did you mean `{first}` or `{second}`? `sternknee catalog` lists all")
                    }
                    [first] => format!("did you mean `{first}`?"),
                    [] => "the catalog has none".to_owned(),
                },
            });
        }
        found
    }

    pub(super) fn material(&mut self, path: &str, name: &str) -> Option<Entry<Material>> {
        self.find(path, name, "material", &self.catalog.materials)
    }
}
