//! What each reading of a job is worth.

use std::collections::HashMap;
use std::sync::Arc;

use crate::job::Job;
use crate::quantity::{Basis, Kind};
use crate::reading::{Amount, Bounds, Number, Part, Place, Value, deg, inch, percent, told};
use crate::rules::Taken;

/// A reading that may be off, and which number of the job it is in the order of the walk.
pub(super) struct Loosely {
    pub taken: Arc<Taken>,
    pub number: usize,
}

impl Loosely {
    /// Its value, off by so many of its tolerance, within what it can be at all.
    pub(super) fn off_by(&self, tolerances: f64) -> f64 {
        let taken = &self.taken;
        let si = taken.value.si + tolerances * taken.tolerance.si;
        match taken.declared.bounds.filter(|bounds| bounds.kind() == Some(taken.value.kind)) {
            Some(Bounds::Between(least, most)) => si.clamp(least.si(), most.si()),
            Some(Bounds::Count(..)) | None => si,
        }
    }
}

/// How far engines and brackets of a class lie round its figures: weights. Common practice, no source.
const CLASS_WEIGHT: Amount = percent(5.0);
/// The same of their measures: half an inch, and less of a small one. Common practice, no source.
const CLASS_LENGTH: Amount = inch(0.5);
const CLASS_SMALL: Amount = percent(3.0);
/// The same of their angles. Common practice, no source.
const CLASS_ANGLE: Amount = deg(1.0);
/// How far off a figure may be that nobody took, where its closeness was not told. Common practice, no source.
const ASSUMED: Amount = percent(10.0);
/// The same of an angle, which has no size of its own. Common practice, no source.
const ASSUMED_ANGLE: Amount = deg(2.0);

/// Every reading that may be off, in the order of the job.
pub(super) fn readings(job: &Job) -> Vec<Loosely> {
    let told: HashMap<String, _> = told(job).into_iter().map(|told| (told.path.clone(), told)).collect();
    let mut readings = Vec::new();
    let mut numbers = 0;
    job.visit(&Place::root(""), &mut |at, value| {
        let Value::Number(number) = value else { return };
        numbers += 1;
        let Some(told) = told.get(&at.path()).filter(|told| told.number().is_some()) else { return };
        let closely = at.chain().filter_map(Place::own).find_map(|declared| declared.closely);
        let tolerance = tolerance(&number, closely.filter(|closely| closely.kind() == number.kind));
        if tolerance > 0.0 {
            let taken = Taken {
                path: told.path.clone(),
                name: told.name(),
                declared: told.declared,
                value: number.measure(told.declared),
                tolerance: Number { tolerance: Some(tolerance), ..number }
                    .tolerance(told.declared)
                    .unwrap_or(number.measure(told.declared)),
                basis: number.basis,
            };
            readings.push(Loosely { taken: Arc::new(taken), number: numbers - 1 });
        }
    });
    readings
}

/// How far off a number may be: as it was written, else by where it is from.
fn tolerance(number: &Number, closely: Option<Amount>) -> f64 {
    let taken = closely.map_or(0.0, Amount::si);
    let size = number.si.abs();
    let part = |percent: Amount| percent.si() * size;
    if let Some(written) = number.tolerance {
        return written;
    }
    match (number.basis, number.kind) {
        (Basis::Measured | Basis::Builder, _) => taken,
        (Basis::Catalog, Kind::Mass) => part(CLASS_WEIGHT),
        (Basis::Catalog, Kind::Length) => CLASS_LENGTH.si().min(part(CLASS_SMALL)),
        (Basis::Catalog, Kind::Angle) => CLASS_ANGLE.si(),
        (Basis::Catalog, _) => 0.0,
        (Basis::Assumed, Kind::Angle) => taken.max(ASSUMED_ANGLE.si()),
        // Its zero is none, and a tenth of it no measure of what it is worth.
        (Basis::Assumed, Kind::Temperature) => taken,
        (Basis::Assumed, _) => taken.max(part(ASSUMED)),
    }
}
