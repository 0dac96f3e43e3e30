//! Readings of what is rigged, each declared once: what it is called, between what and what it can lie, how it is shown.
//! The declaration gives the field, the bound, and the place of the reading in every walk over a job.

use crate::quantity::{Basis, Dimensioned, Measure, Reading, Style};

/// A reading as a walk comes by it.
pub struct Visited<'a> {
    /// Its place in the job: `rigging.steering.wheel`.
    pub path: String,
    /// What it is called.
    pub name: &'static str,
    /// Between what and what it can lie, as a person writes it.
    pub bounds: (&'static str, &'static str),
    /// What it says.
    pub value: Measure,
    /// How far off it may be.
    pub tolerance: Option<Measure>,
    /// Where it is from.
    pub basis: Basis,
    /// What was noted of it.
    pub note: Option<&'a str>,
}

/// Whoever walks over the readings.
pub type Visitor<'v> = dyn FnMut(Visited<'_>) + 'v;

/// What has readings that can be walked over.
pub trait Walk {
    /// Shows every reading that is there to the visitor; `path` is where this stands.
    fn walk(&self, path: &str, visit: &mut Visitor<'_>);
}

impl<T: Walk> Walk for Option<T> {
    fn walk(&self, path: &str, visit: &mut Visitor<'_>) {
        if let Some(inner) = self {
            inner.walk(path, visit);
        }
    }
}

impl<T: Walk> Walk for Vec<T> {
    fn walk(&self, path: &str, visit: &mut Visitor<'_>) {
        for (i, inner) in self.iter().enumerate() {
            inner.walk(&format!("{path}[{i}]"), visit);
        }
    }
}

/// Shows one reading to the visitor, where it is there.
pub(super) fn show<Q: Dimensioned>(
    reading: Option<&Reading<Q>>,
    path: String,
    name: &'static str,
    style: Style,
    bounds: (&'static str, &'static str),
    visit: &mut Visitor<'_>,
) {
    if let Some(reading) = reading {
        visit(Visited {
            path,
            name,
            bounds,
            value: reading.measure(style),
            tolerance: reading.tolerance.map(|off| Measure::styled(off, style)),
            basis: reading.basis,
            note: reading.note.as_deref(),
        });
    }
}

/// Declares a thing that is rigged: `read` its readings, `have` what else is said of it, `hold` things that have readings of
/// their own.
macro_rules! rigged {
    (
        $(#[$doc:meta])* $thing:ident
        read { $($(#[$rdoc:meta])* $reading:ident: $quantity:ty = $name:literal, $style:ident, $least:literal, $most:literal;)* }
        have { $($(#[$hdoc:meta])* $had:ident: $type:ty;)* }
        hold { $($(#[$idoc:meta])* $held:ident: $inner:ty;)* }
    ) => {
        $(#[$doc])*
        #[derive(Clone, Debug, Default, serde::Deserialize)]
        #[serde(default, deny_unknown_fields)]
        pub struct $thing {
            $($(#[$hdoc])* pub $had: $type,)*
            $($(#[$rdoc])* pub $reading: Option<$crate::quantity::Reading<$quantity>>,)*
            $($(#[$idoc])* pub $held: $inner,)*
        }

        impl $crate::job::rigging::declare::Walk for $thing {
            fn walk(&self, path: &str, visit: &mut $crate::job::rigging::declare::Visitor<'_>) {
                $($crate::job::rigging::declare::show(
                    self.$reading.as_ref(), format!("{path}.{}", stringify!($reading)), $name,
                    $crate::quantity::Style::$style, ($least, $most), visit,
                );)*
                $($crate::job::rigging::declare::Walk::walk(&self.$held, &format!("{path}.{}", stringify!($held)), visit);)*
                let _ = (path, visit);
            }
        }
    };
}
pub(super) use rigged;
