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

impl Table {
    /// A table of this title with these heads.
    pub fn new(title: &str, heads: &[&str], rows: Vec<Vec<Text>>) -> Self {
        Table { title: title.to_owned(), heads: heads.iter().map(|head| (*head).to_owned()).collect(), rows }
    }
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

impl Part {
    /// A part that only says something.
    pub fn said(title: &str, text: Text) -> Self {
        let mut sheet = Sheet::default();
        sheet.remark(text);
        Part { title: title.to_owned(), sheet, ..Part::default() }
    }
}
