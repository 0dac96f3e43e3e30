//! From a job and a catalog to a rig.

mod assumed;
mod names;
mod outfit;

use std::sync::Arc;

use super::float::Files;
use super::swing::Surroundings;
use super::{Boat, Outfit, Papers, Ran, Rig, Slot, Transom};
use crate::catalog::{Catalog, Entry, Material, likely_names};
use crate::job::{self, Job};
use crate::quantity::Text;
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
    let mut resolver = Resolver { catalog, unresolved: Vec::new(), assumed: Vec::new() };
    let before = resolver.outfit("engines_off", &job.engines_off, &job.comes_off, reading!(job::Job.engines_off));
    let after = resolver.outfit("engines_on", &job.engines_on, &job.goes_on, reading!(job::Job.engines_on));
    let material = job.transom.material.as_deref();
    let material = material.and_then(|name| resolver.material("transom.material", name));
    let structure = super::structure::resolve(&mut resolver, job, material.as_ref());
    let (trial, unread) = super::trial::resolve(job, files);
    resolver.unresolved.extend(unread);
    if !resolver.unresolved.is_empty() {
        return Err(resolver.unresolved);
    }
    let boat = &job.boat;
    let transom = &job.transom;
    let mut rig = Rig {
        job: Arc::new(written_out(job, &before, &after)),
        title: job.title.clone().unwrap_or_else(|| "untitled job".to_owned()),
        made_up: job.made_up,
        sitting: job.sitting,
        boat: Boat {
            craft: Slot::new(boat.craft, reading!(job::Boat.craft)),
            bottom: Slot::new(boat.bottom, reading!(job::Boat.bottom)),
            length: Slot::new(boat.length.clone(), reading!(job::Boat.length)),
            beam: Slot::new(boat.beam.clone(), reading!(job::Boat.beam)),
            transom_width: Slot::new(boat.transom_width.clone(), reading!(job::Boat.transom_width)),
            aft_quarter_beam: Slot::new(boat.aft_quarter_beam.clone(), reading!(job::Boat.aft_quarter_beam)),
            deadrise: Slot::new(boat.deadrise.clone(), reading!(job::Boat.deadrise)),
            chine_beam: Slot::new(boat.chine_beam.clone(), reading!(job::Boat.chine_beam)),
            transom_rating: Slot::new(boat.transom_rating.clone(), reading!(job::Boat.transom_rating)),
            stability_test: Slot::new(boat.stability_test.clone(), reading!(job::Boat.stability_test)),
            power_rating: boat.power_rating.clone(),
            fuel: boat.fuel,
            construction: boat.construction,
            year: boat.year,
            category: boat.category,
        },
        plate: Slot::new(job.plate.clone(), reading!(job::Job.plate)),
        transom: Transom {
            height: Slot::new(transom.height.clone(), reading!(job::Transom.height)),
            heights: transom.heights.clone(),
            angle: Slot::new(transom.angle.clone(), reading!(job::Transom.angle)),
            thickness: Slot::new(transom.thickness.clone(), reading!(job::Transom.thickness)),
            material,
            core: transom.core,
            cutout_width: Slot::new(transom.cutout_width.clone(), reading!(job::Transom.cutout_width)),
            cutout: transom.cutout,
            top_edge: transom.top_edge,
            splash_well: Slot::new(transom.splash_well.clone(), reading!(job::Transom.splash_well)),
            upper_holes: Slot::new(transom.upper_holes.clone(), reading!(job::Transom.upper_holes)),
            holes: transom.holes.clone(),
        },
        steering: Slot::new(job.steering, reading!(job::Job.steering)),
        before,
        after,
        papers: Papers::of(job),
        afloat: super::float::resolve(job, files),
        surroundings: Surroundings::of(job),
        ran: Ran::of(job),
        running: job.running.clone(),
        trial,
        worth: job.worth.clone(),
        planing_study: job.planing_study.clone(),
        propeller_study: job.propeller_study.clone(),
        structure,
        tables: catalog.tables.clone(),
        assumed: resolver.assumed,
    };
    rig.assumed.extend(assumed::readings(job));
    Ok(rig)
}

/// The job with the figures of every class in place of its name.
fn written_out(job: &Job, before: &Outfit, after: &Outfit) -> Job {
    let mut job = job.clone();
    for (groups, outfit) in [(&mut job.engines_off, before), (&mut job.engines_on, after)] {
        for (group, resolved) in groups.iter_mut().zip(&outfit.groups) {
            // A sheet's numbers stand in the spec that they were put into.
            group.sheet = None;
            group.described = resolved.engines.first().map(|engine| engine.spec.clone());
            if let (Some(hung), Some(bracket)) = (&mut group.bracket, &resolved.bracket) {
                hung.described = Some(bracket.spec.clone());
            }
        }
    }
    job
}

pub(super) struct Resolver<'a> {
    pub(super) catalog: &'a Catalog,
    unresolved: Vec<Slip>,
    assumed: Vec<Text>,
}

impl<'a> Resolver<'a> {
    /// The entry of this name, a copy of it; where there is none, a slip at the path.
    pub(super) fn find<T: Clone>(
        &mut self,
        path: &str,
        name: &str,
        what: &str,
        entries: &'a [Entry<T>],
    ) -> Option<Entry<T>> {
        let found = entries.iter().find(|entry| entry.name == name).cloned();
        if found.is_none() {
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
