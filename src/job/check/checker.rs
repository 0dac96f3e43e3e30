//! The one who looks a page over and notes its faults.

use crate::quantity::Reading;
use crate::written::{Fault, Page};

/// Faults that are noted of one file.
const MOST_FAULTS: usize = 100;

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

    /// Notes a fault at the path. After so many, mending the first ones is the better use of time.
    pub fn fault(&mut self, path: &str, message: impl Into<String>, help: impl Into<String>) {
        if self.faults.len() >= MOST_FAULTS {
            return;
        }
        self.faults.push(self.page.fault(path, message, help));
    }

    /// Whether the page has an entry of this path.
    pub(super) fn has(&self, path: &str) -> bool {
        self.page.has(path)
    }

    /// The reading, where there is one and nothing is wrong with it so far: what cross-checks use, so
    /// that one slip is told once.
    pub(super) fn sound<'r, Q>(&self, path: &str, reading: &'r Option<Reading<Q>>) -> Option<&'r Reading<Q>> {
        let faulty = self.faults.iter().any(|fault| fault.path == path);
        reading.as_ref().filter(|_| !faulty)
    }
}
