//! Slips with quotation marks, which the reader would tell as something else further on: readings without them, an inch mark
//! inside them, quotes that are not closed on their line.

use std::ops::Range;

use super::Fault;
use super::places::Places;

/// A slip, and what of the text it spoils.
pub(super) struct Misquoted {
    pub fault: Fault,
    /// The field that the slip is in, and what of the text is left out with it; nothing where the rest cannot be made sense of.
    pub spoiled: Option<(String, Range<usize>)>,
}

/// The first such slip of a text whose entries stand in these places.
pub(super) fn misquoted(text: &str, places: &Places) -> Option<Misquoted> {
    let mut at = 0;
    while at < text.len() {
        let rest = &text[at..];
        let blank = Places::blank(rest);
        if blank > 0 {
            at += blank;
            continue;
        }
        if rest.starts_with('"') {
            let end = at + string(rest);
            if let Some(slip) = not_closed(text, places, at..end).or_else(|| inch_mark(text, places, at..end)) {
                return Some(slip);
            }
            at = end;
            continue;
        }
        let word = rest.len() - rest.trim_start_matches(is_word).len();
        let is_reading = word > 0 && rest.starts_with(|c: char| c.is_ascii_digit() || c == '.');
        if is_reading && let Some(run) = bare_reading(rest) {
            return Some(without_quotes(text, places, at..at + run));
        }
        at += word.max(rest.chars().next().map_or(1, char::len_utf8));
    }
    None
}

fn is_word(c: char) -> bool {
    c.is_alphanumeric() || matches!(c, '_' | '.')
}

/// Bytes of the string that the text begins with, its quotes included.
pub(super) fn string(text: &str) -> usize {
    let mut escaped = false;
    for (i, c) in text.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => return i + 1,
            _ => {}
        }
    }
    text.len()
}

/// Bytes of a reading without quotes: a number with a unit, up to what ends it. Of plain numbers nothing.
fn bare_reading(text: &str) -> Option<usize> {
    let end = text.find([',', ')', ']', '}', '\n', '"', ':']).unwrap_or(text.len());
    let run = text[..end].split("//").next()?.trim_end();
    // A number, then a unit: letters or marks of feet and inches; 1e5 and 0x1F are numbers of the notation itself.
    let behind = run.trim_start_matches(|c: char| c.is_ascii_digit() || matches!(c, '.' | '-' | '/' | ' ' | '_'));
    let marked = behind.is_empty() && ends_in_inch_mark(&text[end..]);
    let unit = marked || behind.starts_with(|c: char| c.is_alphabetic() || matches!(c, '\'' | '%' | '°' | '′' | '″'));
    let of_the_notation =
        behind.starts_with(['e', 'E', 'x', 'b', 'o', 'u', 'i']) && !run.contains(' ') && !behind.starts_with("in");
    (unit && !of_the_notation).then_some(run.len())
}

/// Whether this begins with an inch mark that ends a value, and not with a string.
fn ends_in_inch_mark(text: &str) -> bool {
    let behind = text.strip_prefix('"').map(|behind| behind.trim_start_matches(' '));
    behind.is_some_and(|behind| behind.is_empty() || behind.starts_with([',', ')', ']', '\n']))
}

fn without_quotes(text: &str, places: &Places, run: Range<usize>) -> Misquoted {
    let reading = &text[run.clone()];
    // An inch mark behind it belongs to it.
    let marked = text[run.end..].starts_with('"');
    let reading = if marked { format!("{reading}\\\"") } else { reading.to_owned() };
    let end = run.end + usize::from(marked);
    Misquoted {
        fault: Fault {
            path: places.around(run.start).map(|entry| entry.path.clone()).unwrap_or_default(),
            span: run.start..end,
            message: "a reading stands without quotes".to_owned(),
            help: Some(format!("write it in quotes: \"{reading}\"")),
        },
        spoiled: places
            .field_around(run.start)
            .map(|field| (field.path.clone(), field.whole.start..end.max(field.whole.end))),
    }
}

/// A string that ends in an inch mark, where its writer meant the next quote to end it: `"7' 6""`.
fn inch_mark(text: &str, places: &Places, string: Range<usize>) -> Option<Misquoted> {
    let said = text[string.clone()].strip_prefix('"')?.strip_suffix('"')?;
    let behind = &text[string.end..];
    let slipped = said.ends_with(|c: char| c.is_ascii_digit()) && behind.starts_with('"');
    slipped.then(|| {
        let end = string.end + 1;
        Misquoted {
            fault: Fault {
                path: places.around(string.start).map(|entry| entry.path.clone()).unwrap_or_default(),
                span: string.start..end,
                message: "the inch mark ends the quotes".to_owned(),
                help: Some(
                    format!("write \"{said} in\", or \"{said}\\\"\"").replace("' ", " ft ").replacen("'", " ft ", 1),
                ),
            },
            spoiled: places.field_around(string.start).map(|field| (field.path.clone(), field.whole.start..end)),
        }
    })
}

/// A string that goes on over a line that begins another field.
fn not_closed(text: &str, places: &Places, string: Range<usize>) -> Option<Misquoted> {
    let said = &text[string.clone()];
    let (first, rest) = said.split_once('\n')?;
    let begins_a_field = rest.lines().next().is_some_and(|line| {
        let line = line.trim_start();
        let name = line.len() - line.trim_start_matches(|c: char| c.is_ascii_lowercase() || c == '_').len();
        name > 0 && line[name..].starts_with(':')
    });
    begins_a_field.then(|| Misquoted {
        fault: Fault {
            path: places.around(string.start).map(|entry| entry.path.clone()).unwrap_or_default(),
            span: string.start..string.start + first.trim_end().len(),
            message: "these quotes are not closed on their line".to_owned(),
            help: Some(format!("close them: {}\",", first.trim_end().trim_end_matches(','))),
        },
        spoiled: None,
    })
}
