//! Working and tables as text.

use super::layout::{INDENT, WIDTH, fill, head, one_line, wrap};
use crate::quantity::Units;
use crate::report::legend;
use crate::rules::Family;
use crate::working::{Part, Sheet, Table};
use crate::written::printable;

/// A whole working, part by part.
pub fn work_text(title: &str, topic: &str, parts: &[Part], units: Units) -> String {
    let mut out = format!("{}{topic}\n", wrap(title, ""));
    for part in parts {
        out.push_str(&head(&part.title));
        for table in &part.tables {
            out.push_str(&rows(table, units));
        }
        out.push_str(&given(&part.sheet, legend::family_of(topic), units));
        for line in part.sheet.lines() {
            out.push_str(&working_line(&line.show(units), line.meaning()));
        }
    }
    out
}

/// What goes into a calculation, a line a symbol: what it is, its value, where it is from.
pub(super) fn given(sheet: &Sheet, family: Option<Family>, units: Units) -> String {
    let lines = legend::lines(sheet, family, units);
    if lines.is_empty() {
        return String::new();
    }
    let told: String = lines.iter().map(|line| fill(line, "        ", "          ")).collect();
    format!("{INDENT}given:\n{told}")
}

pub(super) fn working_line(line: &str, meaning: Option<&str>) -> String {
    let mut out = String::new();
    if let Some(meaning) = meaning {
        out.push_str(&wrap(&format!("{meaning}:"), INDENT));
    }
    out.push_str(&fill(line, "        ", "          "));
    out
}

pub(in super::super) fn rows(table: &Table, units: Units) -> String {
    let mut cells: Vec<Vec<String>> = Vec::new();
    if table.heads.iter().any(|head| !head.is_empty()) {
        cells.push(table.heads.clone());
    }
    cells.extend(table.rows.iter().map(|row| row.iter().map(|cell| one_line(&cell.show(units))).collect()));
    let mut out = format!("{INDENT}{}:\n", printable(&table.title));
    let lines = columns(&cells);
    let room = WIDTH - INDENT.len() - 2;
    if lines.iter().all(|line| line.chars().count() <= room) {
        for line in lines {
            out.push_str(&format!("{INDENT}  {line}\n"));
        }
    } else {
        for row in &cells {
            out.push_str(&fill(&row.join(" · "), "        ", "          "));
        }
    }
    out
}

/// The words with spaces behind them up to a width; not by the formatter, which knows none beyond 65,535.
pub(super) fn padded(words: &str, width: usize) -> String {
    let spaces = width.saturating_sub(words.chars().count());
    format!("{words}{}", " ".repeat(spaces))
}

/// Cells laid out in columns as wide as their widest.
fn columns(cells: &[Vec<String>]) -> Vec<String> {
    let count = cells.iter().map(Vec::len).max().unwrap_or(0);
    let widths: Vec<usize> = (0..count)
        .map(|column| {
            cells.iter().filter_map(|row| row.get(column)).map(|cell| cell.chars().count()).max().unwrap_or(0)
        })
        .collect();
    cells
        .iter()
        .map(|row| {
            let line: Vec<String> = row.iter().zip(&widths).map(|(cell, width)| padded(cell, *width)).collect();
            line.join("  ").trim_end().to_owned()
        })
        .collect()
}
