//! What is wrong with a file, and where.

use std::fmt;
use std::ops::Range;
use std::sync::Arc;

use super::Page;
use super::places::byte_of;
use super::printable;

/// How a fault begins that is about a field of another version, or a slip of the pen.
const UNKNOWN_FIELD: &str = "no field is called";

/// One thing wrong with a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// The entry, such as `engines_on[0].class`; empty for the file itself.
    pub path: String,
    /// Bytes of the text that it is about.
    pub span: Range<usize>,
    /// What is wrong.
    pub message: String,
    /// What would be right.
    pub help: Option<String>,
}

impl Fault {
    /// Whether it is about a field that this version does not know.
    pub fn is_of_unknown_field(&self) -> bool {
        self.message.starts_with(UNKNOWN_FIELD)
    }
}

/// Everything wrong with one file.
#[derive(Clone, Debug)]
pub struct Faults {
    pub(super) name: String,
    pub(super) text: Arc<str>,
    /// The faults, in the order of the file.
    pub faults: Vec<Fault>,
}

impl Faults {
    /// Collects the faults of a page, in the order of its text.
    pub fn new(page: &Page, mut faults: Vec<Fault>) -> Self {
        faults.sort_by_key(|fault| fault.span.start);
        for fault in &mut faults {
            fault.message = printable(&fault.message);
            fault.path = printable(&fault.path);
            fault.help = fault.help.as_deref().map(printable);
        }
        Faults { name: printable(&page.name), text: printable(&page.text).into(), faults }
    }

    /// Line and column of a fault, both from 1.
    pub fn place(&self, fault: &Fault) -> (usize, usize) {
        let before = self.text.get(..fault.span.start).unwrap_or("");
        (before.matches('\n').count() + 1, before.rsplit('\n').next().unwrap_or("").chars().count() + 1)
    }
}

impl fmt::Display for Faults {
    /// A line a fault: file, line, column, entry, what is wrong, what would do.
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        for fault in &self.faults {
            let (line, column) = self.place(fault);
            write!(f, "{}:{line}:{column}: ", self.name)?;
            if !fault.path.is_empty() {
                write!(f, "{}: ", fault.path)?;
            }
            let help = fault.help.as_ref().map_or(String::new(), |help| format!("; {help}"));
            writeln!(f, "{}{help}", fault.message)?;
        }
        Ok(())
    }
}

impl std::error::Error for Faults {}

/// A parenthesis that was not closed: a field that does not belong where it stands would belong further out, if one more were
/// closed in front of it. `attempt` reads a text and gives the next error.
pub(super) fn not_closed(
    page: &Page,
    text: &str,
    path: &str,
    error: &ron::error::SpannedError,
    attempt: impl Fn(&str) -> Option<Box<(String, ron::error::SpannedError)>>,
) -> Option<Fault> {
    let ron::Error::NoSuchStructField { found, .. } = &error.code else { return None };
    if path.is_empty() || !page.is_left_open() {
        return None;
    }
    let place =
        page.places.around(byte_of(text, error.span.start)).filter(|entry| entry.path.ends_with(found.as_str()))?;
    let at = place.whole.start;
    let mut closed = text.to_owned();
    closed.insert_str(at, "), ");
    let belongs = attempt(&closed).is_none_or(|next| byte_of(&closed, next.1.span.start) > at + found.len() + 3);
    let holder = place.path.rsplit_once('.').map_or("", |(holder, _)| holder);
    belongs.then(|| Fault {
        path: holder.to_owned(),
        span: at..at + found.len(),
        message: format!("the parenthesis of `{holder}` is not closed before `{found}`"),
        help: Some("close it in front of this: ),".to_owned()),
    })
}

/// The reader's error in our words, at the value it is about.
pub(super) fn from_ron(page: &Page, path: &str, error: &ron::error::SpannedError) -> Fault {
    use ron::Error as E;
    let start = byte_of(&page.text, error.span.start);
    let end = byte_of(&page.text, error.span.end).max(start);
    let (message, help) = match &error.code {
        E::Message(message) => (message.clone(), None),
        E::InvalidValueForType { expected, found } => (format!("{expected} expected; {found} found"), None),
        E::NoSuchStructField { expected, found, .. } => {
            (format!("{UNKNOWN_FIELD} `{found}` here"), Some(closest(found, expected)))
        }
        E::NoSuchEnumVariant { expected, found, .. } => {
            (format!("`{found}` is none of the words that can stand here"), Some(closest(found, expected)))
        }
        E::DuplicateStructField { field, .. } => {
            (format!("`{field}` is given twice"), Some("keep one of the two".to_owned()))
        }
        E::MissingStructField { field, .. } => (format!("`{field}` is missing here"), None),
        E::IntegerOutOfBounds => (
            "no whole number that can stand here".to_owned(),
            Some("not negative, and no larger than such things are: persons: 6, year: 2006".to_owned()),
        ),
        E::InvalidIdentifier(word) | E::SuggestRawIdentifier(word) => (
            format!("`{word}` is no word that can stand here"),
            Some(match word.replace('-', "_") {
                joined if joined != *word => format!("words are joined by an underscore: {joined}"),
                _ => "a word without quotes, such as none, or a reading in quotes, such as \"16 ft\"".to_owned(),
            }),
        ),
        E::ExpectedString => ("words in quotes expected".to_owned(), Some("such as \"low tide ramp\"".to_owned())),
        E::ExceededRecursionLimit => (
            "brackets nest deeper here than any job does".to_owned(),
            Some("look for a bracket that is never closed".to_owned()),
        ),
        E::Eof | E::ExpectedStringEnd | E::UnclosedBlockComment => (
            "the file ends too soon".to_owned(),
            Some("close what was opened last; a job is one pair of parentheses".to_owned()),
        ),
        E::ExpectedNamedStructLike(_) | E::ExpectedDifferentStructName { .. } if path.is_empty() => (
            "a job or a catalog file is one pair of parentheses with fields in it".to_owned(),
            Some("begin with ( and end with ); `sternknee start FILE` writes one to fill in".to_owned()),
        ),
        E::ExpectedComma if page.text[end..].trim().is_empty() => (
            "the file ends too soon".to_owned(),
            Some("close what was opened last; a job is one pair of parentheses".to_owned()),
        ),
        E::ExpectedComma => (
            "a comma, or the bracket that closes this, expected".to_owned(),
            Some("fields are separated by commas: length: \"16 ft\", beam: \"7 ft\"".to_owned()),
        ),
        E::ExpectedIdentifier => (
            "a word without quotes, or the name of a field, expected".to_owned(),
            Some("such as none, or floor(\"12 in\"); `sternknee start FILE` writes every field's form".to_owned()),
        ),
        E::ExpectedMapColon => (
            "a colon expected between a field's name and its value".to_owned(),
            Some("such as length: \"16 ft\"".to_owned()),
        ),
        E::ExpectedArray => (
            "a list in square brackets expected".to_owned(),
            Some("such as [port(\"14 in\"), starboard(\"14 in\")]".to_owned()),
        ),
        E::ExpectedStructLike | E::ExpectedNamedStructLike(_) => {
            ("fields in parentheses expected".to_owned(), Some("such as (length: \"16 ft\")".to_owned()))
        }
        E::ExpectedInteger => ("a whole number without quotes expected".to_owned(), Some("such as 6".to_owned())),
        E::ExpectedFloat => ("a number without quotes expected".to_owned(), Some("such as 6".to_owned())),
        E::ExpectedBoolean => ("true or false expected".to_owned(), None),
        E::UnexpectedChar(c) => (
            format!("`{c}` cannot stand here"),
            Some("a value expected: \"16 ft\" in quotes, a word, or a bracket".to_owned()),
        ),
        E::TrailingCharacters => (
            "the file goes on behind the parenthesis that closes it".to_owned(),
            Some("a file is one pair of parentheses; look for one that is closed too soon".to_owned()),
        ),
        other => (other.to_string(), None),
    };
    let span = match &error.code {
        E::Message(_) | E::InvalidValueForType { .. } | E::MissingStructField { .. } if !path.is_empty() => {
            page.places.nearest(path)
        }
        _ => start..end,
    };
    Fault { path: path.to_owned(), span, message, help }
}

/// The fields or words that would have done, the likeliest first.
fn closest(found: &str, expected: &[&'static str]) -> String {
    let mut words: Vec<&str> = expected.to_vec();
    words.sort_by_key(|word| strsim::damerau_levenshtein(found, word));
    match words.first() {
        Some(first) if strsim::damerau_levenshtein(found, first) <= 2 => {
            format!("did you mean `{first}`?")
        }
        _ => format!("one of: {}", expected.join(", ")),
    }
}
