//! A number as somebody types it, read back.

use serde_json::{Value, json as value};

use crate::quantity::{Kind, Measure, Style, Units, parse};

/// Reads what was typed: `written` as it shall stand in the job, with the unit where none was typed, and `shown` as it was
/// understood; or `problem`, what is wrong with it.
pub(super) fn read(kind: &str, typed: &str, unit: &str) -> Value {
    let Some(kind) = Kind::ALL.into_iter().find(|known| known.word() == kind) else {
        return value!({ "written": typed, "problem": format!("`{kind}` is no kind of quantity") });
    };
    let plain = typed.trim();
    let first = parse(plain, kind);
    let (written, read) = match &first {
        Ok(_) => (plain.to_owned(), first),
        Err(_) => {
            // The unit stands before a tolerance: 12-7/8 ± 1/8.
            let (number, tolerance) = match plain.find(['±', '+']).filter(|at| *at > 0) {
                Some(at) => (plain[..at].trim_end(), format!(" {} {unit}", &plain[at..])),
                None => (plain, String::new()),
            };
            let with_unit = format!("{number} {unit}{tolerance}");
            match parse(&with_unit, kind) {
                Ok(read) => (with_unit, Ok(read)),
                Err(_) => (plain.to_owned(), first),
            }
        }
    };
    match read {
        Ok(read) => {
            let long =
                ["ft", "feet", "foot", "'", " m"].iter().any(|unit| written.contains(unit)) && !written.contains("mm");
            let style = match kind {
                Kind::Length if long => Style::FeetInches,
                Kind::Length => Style::Tape,
                _ => Style::Plain,
            };
            value!({ "written": written, "shown": Measure { si: read.si, kind, style }.show(Units::Both), "si": read.si })
        }
        Err(problem) => value!({ "written": written, "problem": problem.to_string() }),
    }
}
