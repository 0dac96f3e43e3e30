//! Files that a command writes: whole, or not at all.

use std::fs::File;
use std::io::{Read, Write};
use std::path::Path;

use super::CommandError;

/// Writes a file that is not there yet.
pub(super) fn write_new(path: &Path, text: &str) -> Result<(), CommandError> {
    prepared(path, text)?.persist_noclobber(path).map_err(|error| {
        if error.error.kind() == std::io::ErrorKind::AlreadyExists {
            CommandError::Exists { path: path.to_owned() }
        } else {
            unwritable(path, error.error)
        }
    })?;
    Ok(())
}

/// Bytes at the start of a file in which this program's mark stands.
const HEAD: usize = 512;

/// Writes a file, in the place of one that this program wrote before; any other is left alone.
pub(super) fn write_own(path: &Path, text: &str, mark: &str) -> Result<(), CommandError> {
    if path.exists() && !is_own(path, mark) {
        return Err(CommandError::Foreign { path: path.to_owned() });
    }
    prepared(path, text)?.persist(path).map_err(|error| unwritable(path, error.error))?;
    Ok(())
}

fn is_own(path: &Path, mark: &str) -> bool {
    let mut head = vec![0; HEAD];
    let read = File::open(path).and_then(|mut file| file.read(&mut head));
    match read {
        // An empty file holds nothing that could be lost.
        Ok(length) => length == 0 || String::from_utf8_lossy(&head[..length]).contains(mark),
        Err(_) => false,
    }
}

fn unwritable(path: &Path, source: std::io::Error) -> CommandError {
    CommandError::Unwritable { path: path.to_owned(), source }
}

/// The text in a temporary file beside its place.
fn prepared(path: &Path, text: &str) -> Result<tempfile::NamedTempFile, CommandError> {
    let folder = match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent,
        _ => Path::new("."),
    };
    let mut builder = tempfile::Builder::new();
    #[cfg(unix)]
    {
        // As any other file of the user's: what the umask leaves.
        use std::os::unix::fs::PermissionsExt;
        builder.permissions(std::fs::Permissions::from_mode(0o666));
    }
    let mut file = builder.tempfile_in(folder).map_err(|error| unwritable(path, error))?;
    file.write_all(text.as_bytes()).map_err(|error| unwritable(path, error))?;
    Ok(file)
}
