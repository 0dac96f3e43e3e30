//! The one who looks a page over and notes its faults.

use std::fmt::Display;
use std::ops::RangeInclusive;

use super::bounds::{Bounds, si};
use crate::job::specs::Span;
use crate::quantity::{Dimensioned, Measure, Reading, Style, Units};
use crate::written::{Fault, Page};

/// Collects faults against a page.
pub struct Checker<'a> {
    page: &'a Page,
    /// The faults so far.
    pub faults: Vec<Fault>,
}

impl<'a> Checker<'a> {
    /// A checker for the page.
    pub fn new(page: &'a Page) -> Self {
        Checker { page, faults: Vec::new() }
    }

    /// Notes a fault at the path.
    pub fn fault(&mut self, path: &str, message: impl Into<String>, help: impl Into<String>) {
        self.faults.push(self.page.fault(path, message, help));
    }

    /// The reading, where there is one, must lie within the bounds.
    pub(super) fn within<Q: Dimensioned>(&mut self, path: &str, reading: Option<&Reading<Q>>, bounds: Bounds) {
        let Some(reading) = reading else { return };
        let value = reading.value.si();
        if !(si::<Q>(bounds.least)..=si::<Q>(bounds.most)).contains(&value) {
            let shown = Measure::styled(reading.value, Style::Tape).show(Units::Both);
            self.out_of_bounds(path, shown, bounds.least, bounds.most);
        }
    }

    fn out_of_bounds<N: Display>(&mut self, path: &str, shown: impl Display, least: N, most: N) {
        let name = path.rsplit('.').next().unwrap_or(path).replace('_', " ");
        self.fault(
            path,
            format!("{shown} cannot be right for `{name}`"),
            format!("between {least} and {most} is expected"),
        );
    }

    /// The reading, where there is one and nothing is wrong with it so far: what cross-checks use, so
    /// that one slip is told once.
    pub(super) fn sound<'r, Q>(&self, path: &str, reading: &'r Option<Reading<Q>>) -> Option<&'r Reading<Q>> {
        let faulty = self.faults.iter().any(|fault| fault.path == path);
        reading.as_ref().filter(|_| !faulty)
    }

    pub(super) fn span<Q: Dimensioned>(&mut self, path: &str, span: Option<&Span<Q>>, bounds: Bounds) {
        let Some(span) = span else { return };
        self.within(&format!("{path}.from"), Some(&span.from), bounds);
        self.within(&format!("{path}.to"), Some(&span.to), bounds);
        if span.from.value.si() > span.to.value.si() {
            self.fault(path, "the range runs backwards", "the lesser value is `from`, the greater `to`");
        }
    }

    pub(super) fn count<N: PartialOrd + Display>(&mut self, path: &str, count: Option<N>, range: RangeInclusive<N>) {
        if let Some(count) = count
            && !range.contains(&count)
        {
            self.out_of_bounds(path, count, range.start(), range.end());
        }
    }
}
