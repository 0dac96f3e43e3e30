//! A reading declared once: where it stands in a job, its kind and bounds, where on the boat, how and how closely it is
//! taken, what a sheet calls it and where its sketch shows it. All else is got from that by machine.

mod absent;
mod amount;
mod asked;
mod bounds;
mod declare;
mod declared;
mod form;
mod part;
mod told;

pub use absent::{Absent, All};
pub use amount::*;
pub use asked::{Asked, Missing};
pub use bounds::{Bounds, between, count};
pub(crate) use declare::{choices, declared, has_default, things, words};
pub(crate) use declared::reading;
pub use declared::{Declared, Stop, Taking, called, field, find, label, named_file};
pub use form::{Choice, Field, Form, Standing, standing};
pub(crate) use part::number;
pub use part::{Change, Loose, Number, Part, Place, See, Thing, Value};
pub use told::{Told, told};

use crate::quantity::Kind;

/// The kind of the first of several parts that has one.
pub(crate) const fn kind_of(kinds: &[Option<Kind>]) -> Option<Kind> {
    let mut i = 0;
    while i < kinds.len() {
        if let Some(kind) = kinds[i] {
            return Some(kind);
        }
        i += 1;
    }
    None
}

/// A part of a job as data, for a form: fields with path, kind, units, bounds, where, how and how closely they are taken.
pub fn describe<T: Part>() -> serde_json::Value {
    form::describe(&T::form(), None)
}
