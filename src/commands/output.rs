//! Files that a command writes: every one of them whole, or none at all; and never over anything that somebody would miss.

use std::fs;
use std::io::{ErrorKind, Write};
use std::path::Path;

use sha2::{Digest, Sha256};
use tempfile::NamedTempFile;

use super::CommandError;
use crate::catalog::hexadecimal;

/// A file to be written.
pub(super) struct Paper<'a> {
    path: &'a Path,
    text: String,
    may_replace: bool,
}

impl<'a> Paper<'a> {
    /// A file that somebody will fill in: it must not be there yet.
    pub(super) fn fresh(path: &'a Path, text: &str) -> Self {
        Paper { path, text: text.to_owned(), may_replace: false }
    }

    /// HTML or SVG: it may take the place of one that this program wrote and nobody altered since, which its last line tells.
    pub(super) fn sealed(path: &'a Path, text: &str) -> Self {
        let end = if text.ends_with('\n') { "" } else { "\n" };
        let above = format!("{text}{end}");
        let seal = seal(&above);
        Paper { path, text: above + &seal, may_replace: true }
    }

    /// What stands at its place and may be replaced; nothing where nothing stands there.
    fn before(&self) -> Result<Option<Vec<u8>>, CommandError> {
        let path = || self.path.to_owned();
        let about = match fs::symlink_metadata(self.path) {
            Ok(about) => about,
            Err(error) if error.kind() == ErrorKind::NotFound => return Ok(None),
            Err(error) => return Err(unwritable(self.path, error)),
        };
        // Asked before it is opened: a pipe would be waited for, and a device would answer.
        if !about.is_file() {
            return Err(CommandError::NoFile { path: path() });
        }
        if !self.may_replace {
            return Err(CommandError::Exists { path: path() });
        }
        // Told apart from the rights of whoever runs this: the head of a system may write everything.
        if about.permissions().readonly() {
            return Err(CommandError::ReadOnly { path: path() });
        }
        let bytes = fs::read(self.path).map_err(|error| unwritable(self.path, error))?;
        match of_whom(&bytes) {
            Author::Nobody | Author::Us => Ok(Some(bytes)),
            Author::UsAndSomebody => Err(CommandError::Altered { path: path() }),
            Author::Somebody => Err(CommandError::Foreign { path: path() }),
        }
    }
}

/// Begin of the last line of a file that this program wrote. A comment, in HTML as in SVG.
const SEAL: &str = "<!-- written by sternknee; SHA-256 of all above this line: ";

fn seal(above: &str) -> String {
    format!("{SEAL}{} -->\n", hexadecimal(&Sha256::digest(above)))
}

/// Whose work would be lost with a file.
#[derive(Debug, PartialEq)]
enum Author {
    /// It is empty.
    Nobody,
    Us,
    UsAndSomebody,
    Somebody,
}

fn of_whom(bytes: &[u8]) -> Author {
    if bytes.is_empty() {
        return Author::Nobody;
    }
    let Ok(text) = std::str::from_utf8(bytes) else { return Author::Somebody };
    match text.rfind(SEAL).map(|at| text.split_at(at)) {
        Some((above, last)) if last == seal(above) => Author::Us,
        Some(_) => Author::UsAndSomebody,
        None => Author::Somebody,
    }
}

/// Writes all of them, or none: what stands at their places is looked at first, then each is written beside its place, and
/// only then are they put there.
pub(super) fn write(papers: &[Paper]) -> Result<(), CommandError> {
    let before = papers.iter().map(Paper::before).collect::<Result<Vec<_>, _>>()?;
    let prepared = papers.iter().zip(before).map(|(paper, before)| {
        Ok(Prepared { file: beside(paper.path, paper.text.as_bytes())?, path: paper.path, before })
    });
    put(prepared.collect::<Result<Vec<_>, CommandError>>()?)
}

/// A file that only has to be put in its place.
struct Prepared<'a> {
    file: NamedTempFile,
    path: &'a Path,
    before: Option<Vec<u8>>,
}

fn put(all: Vec<Prepared>) -> Result<(), CommandError> {
    let mut done: Vec<(&Path, Option<Vec<u8>>)> = Vec::new();
    for Prepared { file, path, before } in all {
        let placed = match before {
            Some(_) => file.persist(path),
            None => file.persist_noclobber(path),
        };
        if let Err(error) = placed {
            for (path, before) in done.iter().rev() {
                take_back(path, before.as_deref());
            }
            return Err(match error.error.kind() {
                ErrorKind::AlreadyExists => CommandError::Exists { path: path.to_owned() },
                _ => unwritable(path, error.error),
            });
        }
        done.push((path, before));
    }
    Ok(())
}

/// Makes a place what it was before. Where that fails too, the error that led here is the one to tell.
fn take_back(path: &Path, before: Option<&[u8]>) {
    let _ = match before {
        None => fs::remove_file(path).map_err(|error| unwritable(path, error)),
        Some(bytes) => beside(path, bytes)
            .and_then(|file| file.persist(path).map(drop).map_err(|error| unwritable(path, error.error))),
    };
}

fn unwritable(path: &Path, source: std::io::Error) -> CommandError {
    CommandError::Unwritable { path: path.to_owned(), source }
}

/// A temporary file beside its place, on the disk.
fn beside(path: &Path, bytes: &[u8]) -> Result<NamedTempFile, CommandError> {
    let folder = match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent,
        _ => Path::new("."),
    };
    let mut builder = tempfile::Builder::new();
    #[cfg(unix)]
    {
        // As any other file of the user's: what the umask leaves.
        use std::os::unix::fs::PermissionsExt;
        builder.permissions(fs::Permissions::from_mode(0o666));
    }
    let written = builder.tempfile_in(folder).and_then(|mut file| {
        file.write_all(bytes)?;
        // Some disks say only here that they are full.
        file.as_file().sync_all()?;
        Ok(file)
    });
    written.map_err(|error| unwritable(path, error))
}
