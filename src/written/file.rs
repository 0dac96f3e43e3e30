//! A file's text, or why it has none.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use super::LONGEST_FILE;

/// Why a file gave no text.
#[derive(Debug, thiserror::Error)]
pub enum FileError {
    /// The system would not hand it over.
    #[error("cannot be read: {0}")]
    Unreadable(#[from] io::Error),
    /// There is none.
    #[error("there is no such file; `sternknee start FILE` writes one to fill in")]
    None,
    /// It is a folder.
    #[error("is a folder; name the file in it")]
    Folder,
    /// It holds bytes that are no text.
    #[error("line {line}, column {column}: not UTF-8 text; save the file as UTF-8")]
    NotText {
        /// Line of the first of them, counted from 1.
        line: usize,
        /// Its column: characters of that line, counted from 1.
        column: usize,
    },
}

/// The text of a file. Of one that is longer than any job or catalog only the beginning is taken, enough
/// for [`super::read`] to refuse it: the file may be a device without an end.
///
/// # Errors
/// A file that cannot be opened or read, or that is not UTF-8.
pub fn text_of(path: &Path) -> Result<String, FileError> {
    let mut bytes = Vec::new();
    match std::fs::metadata(path) {
        Ok(about) if about.is_dir() => return Err(FileError::Folder),
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Err(FileError::None),
        _ => {}
    }
    File::open(path)?.take(LONGEST_FILE as u64 + 1).read_to_end(&mut bytes)?;
    if bytes.len() > LONGEST_FILE {
        return Ok(String::from_utf8_lossy(&bytes).into_owned());
    }
    let text = String::from_utf8(bytes).map_err(|error| {
        let good = &error.as_bytes()[..error.utf8_error().valid_up_to()];
        let before = String::from_utf8_lossy(good);
        FileError::NotText {
            line: before.matches('\n').count() + 1,
            column: before.rsplit('\n').next().unwrap_or("").chars().count() + 1,
        }
    })?;
    // Some editors begin a file with a mark of its byte order.
    Ok(text.strip_prefix('\u{feff}').map_or(text.clone(), str::to_owned))
}

/// Whether a sign could move a terminal's cursor or change its colours, turn the direction of the words behind it, or stands
/// there unseen: one of control (line breaks and tabs are none) or of direction, a width of nothing, or no letter at all.
pub fn is_unsafe(c: char) -> bool {
    let controls = c.is_control() && !matches!(c, '\n' | '\t');
    controls
        || matches!(c, '\u{61c}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}'
            | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{fffe}' | '\u{ffff}')
}

/// The text with every sign that is not safe ([`is_unsafe`]) replaced by a mark of the same length, so that places stay where
/// they were.
pub fn printable(text: &str) -> String {
    let mark = |c: char| match c.len_utf8() {
        1 => '?',
        2 => '¿',
        _ => '\u{fffd}',
    };
    text.chars().map(|c| if is_unsafe(c) { mark(c) } else { c }).collect()
}
