//! Changes to a RON text that somebody wrote: one entry is put in, altered or taken out, and every other byte stays as it
//! was, comments and unknown parts too.

use std::ops::Range;

use super::places::{Entry, Places};
use super::{DEEPEST_NESTING, LONGEST_FILE};

/// An entry of a text, as it is written.
#[derive(Clone, Debug, PartialEq)]
pub struct Said<'a> {
    /// `engines_on[0].class`
    pub path: &'a str,
    /// Its value.
    pub value: &'a str,
}

/// Why a change cannot be made.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NoEdit {
    /// What should hold the entry is no group of fields and no list.
    #[error("`{0}` holds no fields and no entries")]
    NoRoom(String),
    /// The entry would not be the next of its list.
    #[error("`{0}` is not the next entry of its list")]
    NotNext(String),
    /// The text would be longer than any job.
    #[error("the job would hold more than {LONGEST_FILE} bytes")]
    TooLong,
}

/// A text with the places of its entries.
#[derive(Clone, Debug)]
pub struct Draught {
    text: String,
    places: Places,
}

/// What indents a field deeper than what it stands in.
const INDENT: &str = "    ";

impl Draught {
    /// Takes a text, whatever it is.
    pub fn new(text: &str) -> Self {
        Draught { text: text.to_owned(), places: Places::of(text, DEEPEST_NESTING) }
    }

    /// The text.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Every entry in the order of the text, outer before inner.
    pub fn entries(&self) -> impl Iterator<Item = Said<'_>> {
        self.places.entries.iter().map(|entry| Said { path: &entry.path, value: &self.text[entry.value.clone()] })
    }

    /// What a person noted between the entries, in the order of the text.
    pub fn remarks(&self) -> impl Iterator<Item = &str> {
        self.places.remarks.iter().map(|at| &self.text[at.clone()])
    }

    /// The text with this value at the path; what it stands in is put there too where it is missing.
    ///
    /// # Errors
    /// A place that cannot hold it, or a text that grows too long.
    pub fn put(&self, path: &str, value: &str) -> Result<String, NoEdit> {
        if self.text.len() + path.len() + value.len() > LONGEST_FILE {
            return Err(NoEdit::TooLong);
        }
        if let Some(entry) = self.entry(path) {
            return Ok(self.replaced(entry.value.clone(), value));
        }
        if self.places.whole.is_empty() {
            return Ok(format!("{}(\n{INDENT}{},\n)\n", self.text, nested(&steps(path), value)?));
        }
        // The innermost place that is there already holds what is missing.
        let mut known = path;
        while !known.is_empty() && self.entry(known).is_none() {
            known = parent(known);
        }
        let missing = path[known.len()..].trim_start_matches('.');
        let place = self.entry(known).map_or(self.places.whole.clone(), |entry| entry.value.clone());
        self.inserted(known, place, &steps(missing), value)
    }

    /// The text without the entry; with its line, where nothing else stands on it.
    pub fn without(&self, path: &str) -> String {
        let Some(entry) = self.entry(path) else { return self.text.clone() };
        let Range { mut start, mut end } = entry.whole.clone();
        if let Some(comma) = self.comma_behind(end) {
            if self.text[end..comma - 1].trim().is_empty() {
                end = comma;
            } else {
                // A remark stands before the comma; it stays.
                return Draught::new(&self.replaced(comma - 1..comma, "")).without(path);
            }
        }
        let line = self.text[..start].rfind('\n').map_or(0, |i| i + 1);
        let line_end = self.text[end..].find('\n').map_or(self.text.len(), |i| end + i + 1);
        if self.text[line..start].trim().is_empty() && self.text[end..line_end].trim().is_empty() {
            (start, end) = (line, line_end);
        } else if self.text[end..].starts_with(' ') {
            end += 1;
        }
        self.replaced(start..end, "")
    }

    fn entry(&self, path: &str) -> Option<&Entry> {
        self.places.entries.iter().find(|entry| entry.path == path)
    }

    fn replaced(&self, range: Range<usize>, by: &str) -> String {
        let mut text = self.text.clone();
        text.replace_range(range, by);
        text
    }

    /// A new entry in the group or list that stands in this place.
    fn inserted(&self, holder: &str, place: Range<usize>, steps: &[Step], value: &str) -> Result<String, NoEdit> {
        let held = &self.text[place.clone()];
        let no_room = || NoEdit::NoRoom(holder.to_owned());
        let is_word = !held.is_empty() && held.chars().all(|c| c.is_alphanumeric() || c == '_');
        let new = nested(steps, value)?;
        if is_word && matches!(steps.first(), Some(Step::Field(_))) {
            return Ok(self.replaced(place.end..place.end, &format!("({new})")));
        }
        let open = held.find(['(', '[']).filter(|_| held.ends_with([')', ']'])).ok_or_else(no_room)?;
        let is_list = held[open..].starts_with('[');
        let children: Vec<&Entry> = self
            .places
            .entries
            .iter()
            .filter(|entry| !entry.path.is_empty() && parent(&entry.path) == holder)
            .collect();
        let next = match steps.first() {
            Some(Step::Entry(index)) => is_list && *index == children.len(),
            Some(Step::Field(_)) => !is_list,
            None => false,
        };
        if !next {
            return Err(if is_list { NoEdit::NotNext(holder.to_owned()) } else { no_room() });
        }
        let Some(last) = children.last() else {
            let inner = place.start + open + 1..place.end - 1;
            if self.text[inner.clone()].contains('\n') {
                let indent = self.indent_of(place.start);
                return Ok(self.replaced(inner.start..inner.start, &format!("\n{indent}{INDENT}{new},")));
            }
            return Ok(self.replaced(inner.start..inner.start, &new));
        };
        let line = self.text[..last.whole.start].rfind('\n').map_or(0, |i| i + 1);
        let lead = &self.text[line..last.whole.start];
        let (comma, at) = match self.comma_behind(last.whole.end) {
            Some(behind) => ("", behind),
            None => (",", last.whole.end),
        };
        if !lead.trim().is_empty() || line == 0 {
            return Ok(self.replaced(at..at, &format!("{comma} {new}")));
        }
        // Behind what is noted on the line of the last one.
        let rest = self.text[at..place.end].find('\n').map(|i| at + i);
        let line_end = rest.filter(|end| self.is_remark(&self.text[at..*end]));
        let mut text = self.text.clone();
        let behind = line_end.unwrap_or(at);
        text.insert_str(behind, &format!("\n{lead}{new},"));
        text.insert_str(at.min(behind), comma);
        Ok(text)
    }

    fn is_remark(&self, rest: &str) -> bool {
        rest.trim().is_empty() || rest.trim_start().starts_with("//")
    }

    /// Behind the comma that follows, where one does; remarks may stand between.
    fn comma_behind(&self, at: usize) -> Option<usize> {
        let blank = Places::blank(&self.text[at..]);
        self.text[at + blank..].starts_with(',').then_some(at + blank + 1)
    }

    fn indent_of(&self, at: usize) -> &str {
        let line = self.text[..at].rfind('\n').map_or(0, |i| i + 1);
        let rest = &self.text[line..];
        &rest[..rest.len() - rest.trim_start_matches([' ', '\t']).len()]
    }
}

/// One step of a path.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Step<'a> {
    Field(&'a str),
    Entry(usize),
}

fn steps(path: &str) -> Vec<Step<'_>> {
    path.split(['.', '['])
        .filter(|part| !part.is_empty())
        .map(|part| match part.strip_suffix(']').map(str::parse) {
            Some(Ok(index)) => Step::Entry(index),
            _ => Step::Field(part),
        })
        .collect()
}

fn parent(path: &str) -> &str {
    path.rfind(['.', '[']).map_or("", |cut| &path[..cut])
}

/// The value, with what it stands in that is not there yet: `boat.length` gives `boat: (length: …)`.
fn nested(steps: &[Step], value: &str) -> Result<String, NoEdit> {
    let Some((first, rest)) = steps.split_first() else { return Ok(value.to_owned()) };
    let inner = match rest.first() {
        None => value.to_owned(),
        Some(Step::Field(_)) => format!("({})", nested(rest, value)?),
        Some(Step::Entry(0)) => format!("[{}]", nested(rest, value)?),
        Some(Step::Entry(index)) => return Err(NoEdit::NotNext(format!("[{index}]"))),
    };
    Ok(match first {
        Step::Field(name) => format!("{name}: {inner}"),
        Step::Entry(_) => inner,
    })
}
