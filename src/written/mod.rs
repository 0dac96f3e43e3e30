//! RON that a person wrote: read into a struct, with the place of every value at hand.
//!
//! Everything that is wrong with a file is told in one run. The reader is strict and stops at its
//! first error; so each faulty entry is noted, blanked out of a copy of the text and the copy read
//! again, until it passes or nothing is left to blank.

mod edit;
mod fault;
mod file;
mod places;
mod quotes;
#[cfg(feature = "terminal")]
mod rendered;
mod slip;

use std::ops::Range;
use std::sync::Arc;

use serde::de::DeserializeOwned;
use serde_path_to_error::Segment;

pub use edit::{Draught, NoEdit, Said};
pub use fault::{Fault, Faults};
pub use file::{FileError, is_unsafe, printable, text_of};
use places::Places;
pub use slip::Slip;

/// The longest file taken for a job or a catalog; a longer one is something else.
pub const LONGEST_FILE: usize = 1 << 20;
/// Faults told in one run; after so many, mending the first ones is the better use of time.
const MOST_FAULTS: usize = 50;
/// How deep a file may nest; a job needs about eight levels.
const DEEPEST_NESTING: usize = 64;

/// The text of a file and where its entries stand.
#[derive(Clone, Debug)]
pub struct Page {
    /// The name that errors give, usually the path.
    pub name: String,
    /// The text, as it was written.
    pub text: Arc<str>,
    places: Places,
}

impl Page {
    /// Takes the text of the file of this name.
    pub fn new(name: impl Into<String>, text: &str) -> Self {
        Page { name: name.into(), text: text.into(), places: Places::of(text, DEEPEST_NESTING) }
    }

    /// A fault at the value of this path, such as `engines_on[0].at[1]`; a path that is not in the
    /// file points at the nearest entry around it.
    pub fn fault(&self, path: &str, message: impl Into<String>, help: impl Into<String>) -> Fault {
        Fault {
            path: path.to_owned(),
            span: self.places.nearest(path),
            message: message.into(),
            help: Some(help.into()).filter(|help| !help.is_empty()),
        }
    }

    /// Whether it has an entry of this path.
    pub fn has(&self, path: &str) -> bool {
        self.places.has(path)
    }

    /// Whether more parentheses are opened in it than closed.
    fn is_left_open(&self) -> bool {
        let (mut depth, mut at) = (0_i64, 0);
        while let Some(c) = self.text[at..].chars().next() {
            at += match c {
                '"' => quotes::string(&self.text[at..]),
                '/' => Places::blank(&self.text[at..]).max(1),
                _ => c.len_utf8(),
            };
            depth += match c {
                '(' => 1,
                ')' => -1,
                _ => 0,
            };
        }
        depth > 0
    }

    /// The value at this path as it is written, or the nearest entry around it.
    pub fn slice(&self, path: &str) -> &str {
        &self.text[self.places.nearest(path)]
    }
}

/// What could be read of a file, and all that was wrong with it.
#[derive(Debug)]
pub struct Draft<T> {
    /// The value without the faulty entries; `None` where too little was left.
    pub value: Option<T>,
    /// The text and its places.
    pub page: Page,
    /// What was wrong.
    pub faults: Vec<Fault>,
    /// What holds a field that could be read but for its notation, and was left out: nothing is said of its neighbours.
    spoiled: Vec<String>,
}

impl<T> Draft<T> {
    /// Adds faults that a later check found. One about an entry that encloses an earlier fault is its
    /// consequence (a class that could not be read is missing afterwards), and is left out.
    pub fn add(&mut self, later: Vec<Fault>) {
        for fault in later {
            let consequence = self
                .faults
                .iter()
                .any(|earlier| earlier.path.strip_prefix(&fault.path).is_some_and(|rest| rest.starts_with(['.', '['])));
            let beside = self.spoiled.iter().any(|holder| places::parent(&fault.path) == holder);
            if !consequence && !beside {
                self.faults.push(fault);
            }
        }
    }

    /// Adds what was found wrong with entries after the reading.
    pub fn add_slips(&mut self, slips: impl IntoIterator<Item = Slip>) {
        let faults = slips.into_iter().map(|slip| self.page.fault(&slip.path, slip.message, slip.help)).collect();
        self.add(faults);
    }

    /// The value and its page, or every fault.
    ///
    /// # Errors
    /// All faults noted so far.
    pub fn finish(self) -> Result<(T, Page), Faults> {
        match self.value {
            Some(value) if self.faults.is_empty() => Ok((value, self.page)),
            _ => Err(Faults::new(&self.page, self.faults)),
        }
    }
}

/// Reads a file's text. Faults are collected in the draft, never thrown.
pub fn read<T: DeserializeOwned>(name: &str, text: &str) -> Draft<T> {
    if text.len() > LONGEST_FILE {
        // The page is left empty: nobody wants a megabyte quoted.
        let page = Page::new(name, "");
        let fault = page.fault(
            "",
            format!("the file holds more than {LONGEST_FILE} bytes"),
            "no job and no catalog file is as long; check that it is the file you meant",
        );
        return Draft { value: None, page, faults: vec![fault], spoiled: Vec::new() };
    }
    let mut page = Page::new(name, text);
    let mut copy = text.to_owned();
    let mut faults: Vec<Fault> = Vec::new();
    let mut beside: Vec<String> = Vec::new();
    while faults.len() < MOST_FAULTS
        && let Some(slip) = quotes::misquoted(&copy, &page.places)
    {
        faults.push(slip.fault);
        let Some((field, spoiled)) = slip.spoiled else {
            return Draft { value: None, page, faults, spoiled: beside };
        };
        beside.push(places::parent(&field).to_owned());
        let entry = with_comma(&copy, spoiled);
        if !blank(&mut copy, entry) {
            return Draft { value: None, page, faults, spoiled: beside };
        }
        // Quotes that end too soon had the scanner see strings where there are none.
        page.places = Places::of(&copy, DEEPEST_NESTING);
    }
    loop {
        let refusal = match attempt::<T>(&copy) {
            Ok(value) => {
                return Draft { value: Some(value), page, faults, spoiled: beside };
            }
            Err(refusal) => refusal,
        };
        let (path, error) = *refusal;
        let consequence = matches!(error.code, ron::Error::MissingStructField { .. })
            && faults.iter().any(|fault| fault.path.starts_with(&path));
        if let Some(fault) = fault::not_closed(&page, &copy, &path, &error, |text| attempt::<T>(text).err()) {
            faults.push(fault);
            return Draft { value: None, page, faults, spoiled: beside };
        }
        if !consequence {
            let fault = fault::from_ron(&page, &path, &error);
            if !faults.contains(&fault) {
                faults.push(fault);
            }
        }
        let blanked = faults.len() < MOST_FAULTS
            && (can_go_on(&error.code) || is_reading_for_word(&copy, &error))
            && page.places.entry(&path, &error.span, &page.text).is_some_and(|entry| blank(&mut copy, entry));
        if !blanked {
            return Draft { value: None, page, faults, spoiled: beside };
        }
    }
}

/// One strict reading: the value, or the path of the entry that stopped it and why.
fn attempt<T: DeserializeOwned>(text: &str) -> Result<T, Box<(String, ron::error::SpannedError)>> {
    let options = ron::Options::default()
        .with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME)
        .with_recursion_limit(DEEPEST_NESTING);
    let mut reader =
        ron::Deserializer::from_str_with_options(text, &options).map_err(|error| Box::new((String::new(), error)))?;
    match serde_path_to_error::deserialize(&mut reader) {
        Ok(value) => match reader.end() {
            Ok(()) => Ok(value),
            Err(code) => Err(Box::new((String::new(), reader.span_error(code)))),
        },
        Err(error) => {
            let path = path_of(error.path());
            Err(Box::new((path, reader.span_error(error.into_inner()))))
        }
    }
}

/// The path as [`Places`] writes it: fields and positions, without the names of variants.
fn path_of(path: &serde_path_to_error::Path) -> String {
    let mut text = String::new();
    for segment in path.iter() {
        match segment {
            Segment::Map { key } => {
                if !text.is_empty() {
                    text.push('.');
                }
                text.push_str(key);
            }
            Segment::Seq { index } => text.push_str(&format!("[{index}]")),
            Segment::Enum { .. } | Segment::Unknown => {}
        }
    }
    text
}

/// Whether the rest of the file can be made sense of after such an error. After a slip in the
/// notation itself it cannot: what follows would be guesswork.
fn can_go_on(code: &ron::Error) -> bool {
    use ron::Error as E;
    matches!(
        code,
        E::Message(_)
            | E::NoSuchStructField { .. }
            | E::MissingStructField { .. }
            | E::DuplicateStructField { .. }
            | E::NoSuchEnumVariant { .. }
            | E::InvalidValueForType { .. }
            | E::IntegerOutOfBounds
            | E::ExpectedString
            | E::ExpectedBoolean
            | E::ExpectedInteger
            | E::ExpectedFloat
            | E::ExpectedArray
            | E::ExpectedNamedStructLike(_)
            | E::ExpectedStructLike
    )
}

/// Whether a reading in quotes stands where a word belongs, such as `splash_well: "12 in"`: the notation is whole there.
fn is_reading_for_word(text: &str, error: &ron::error::SpannedError) -> bool {
    matches!(error.code, ron::Error::ExpectedIdentifier)
        && text[places::byte_of(text, error.span.start)..].starts_with('"')
}

/// The entry with the comma behind it.
fn with_comma(text: &str, entry: Range<usize>) -> Range<usize> {
    let behind = &text[entry.end..];
    let comma = behind.find(',').filter(|i| behind[..*i].trim().is_empty()).map_or(0, |i| i + 1);
    entry.start..entry.end + comma
}

/// Replaces the entry by spaces, line breaks kept so that every other place stays where it was.
/// False where nothing was left to blank.
fn blank(text: &mut String, range: Range<usize>) -> bool {
    let Some(old) = text.get(range.clone()) else {
        return false;
    };
    if old.trim().is_empty() {
        return false;
    }
    let spaces: String = old
        .chars()
        .flat_map(|c| {
            let filler = if c == '\n' { '\n' } else { ' ' };
            std::iter::repeat_n(filler, c.len_utf8())
        })
        .collect();
    text.replace_range(range, &spaces);
    true
}
