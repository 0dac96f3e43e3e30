//! Rows of figures beside a calculation.

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
