//! Rows of figures beside a calculation, and the parts of a whole working.

use super::Sheet;
use crate::quantity::Text;

/// Rows of figures: hole rows, items of a ledger.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// What it shows.
    pub title: String,
    /// Heads of its columns.
    pub heads: Vec<String>,
    /// Its rows, a cell a column.
    pub rows: Vec<Vec<Text>>,
}

/// A part of a whole working: the ledger, the hydrostatics, one load case.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Part {
    /// What it is about.
    pub title: String,
    /// Its rows of figures.
    pub tables: Vec<Table>,
    /// Its calculation.
    pub sheet: Sheet,
}
