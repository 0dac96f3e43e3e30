//! From a job and a catalog to a rig.

mod assumed;
mod basis;
mod names;
mod outfit;
mod rigging;

use super::float::Files;
use super::swing::Surroundings;
use super::{Boat, Papers, Ran, Rig, Slot, Transom};
use crate::catalog::{Catalog, Entry, Material, likely_names};
use crate::job::{Job, tape};
use crate::quantity::Text;
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
    let mut before = resolver.outfit("engines_off", &job.engines_off, &job.comes_off, &tape::OLD_ENGINES);
    let mut after = resolver.outfit("engines_on", &job.engines_on, &job.goes_on, &tape::NEW_ENGINES);
    let rigging = resolver.rigging(job);
    resolver.old_rigging(&mut before);
    rigging::batteries_go_on(&rigging, &mut after);
    let material = job.transom.material.as_deref();
    let material = material.and_then(|name| resolver.material("transom.material", name));
    let structure = super::structure::resolve(&mut resolver, job, material.as_ref());
    if !resolver.unresolved.is_empty() {
        return Err(resolver.unresolved);
    }
    let boat = &job.boat;
    let transom = &job.transom;
    let mut rig = Rig {
        title: job.title.clone().unwrap_or_else(|| "untitled job".to_owned()),
        made_up: job.made_up,
        sitting: job.sitting,
        boat: Boat {
            craft: Slot::new(boat.craft, &tape::CRAFT),
            bottom: Slot::new(boat.bottom, &tape::BOTTOM),
            length: Slot::new(boat.length.clone(), &tape::BOAT_LENGTH),
            beam: Slot::new(boat.beam.clone(), &tape::BEAM),
            transom_width: Slot::new(boat.transom_width.clone(), &tape::TRANSOM_WIDTH),
            aft_quarter_beam: Slot::new(boat.aft_quarter_beam.clone(), &tape::AFT_QUARTER_BEAM),
            deadrise: Slot::new(boat.deadrise.clone(), &tape::DEADRISE),
            chine_beam: Slot::new(boat.chine_beam.clone(), &tape::CHINE_BEAM),
            transom_rating: Slot::new(boat.transom_rating.clone(), &tape::TRANSOM_RATING),
            stability_test: Slot::new(boat.stability_test.clone(), &tape::STABILITY_TEST),
            power_rating: boat.power_rating.clone(),
            fuel: boat.fuel,
            construction: boat.construction,
            year: boat.year,
            category: boat.category,
        },
        plate: Slot::new(job.plate.clone(), &tape::PLATE),
        transom: Transom {
            height: Slot::new(transom.height.clone(), &tape::TRANSOM_HEIGHT),
            heights: transom.heights.clone(),
            angle: Slot::new(transom.angle.clone(), &tape::TRANSOM_ANGLE),
            thickness: Slot::new(transom.thickness.clone(), &tape::TRANSOM_THICKNESS),
            material,
            core: transom.core,
            cutout_width: Slot::new(transom.cutout_width.clone(), &tape::CUTOUT_WIDTH),
            cutout: transom.cutout,
            top_edge: transom.top_edge,
            splash_well: Slot::new(transom.splash_well.clone(), &tape::SPLASH_WELL),
            upper_holes: Slot::new(transom.upper_holes.clone(), &tape::UPPER_HOLES),
            holes: transom.holes.clone(),
        },
        steering: Slot::new(job.steering, &tape::STEERING),
        before,
        after,
        papers: Papers::of(job),
        afloat: super::float::resolve(job, files),
        surroundings: Surroundings::of(job),
        ran: Ran::of(job),
        structure,
        rigging,
        tables: catalog.tables.clone(),
        assumed: resolver.assumed,
    };
    rig.assumed.extend(assumed::readings(job));
    Ok(rig)
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
