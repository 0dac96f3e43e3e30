//! Files that a job names: read where they lie in its folder or below it, and are plain files.

use std::fs::File;
use std::io::Read;
use std::path::Path;

/// The bytes of the file of this name, or why there are none, in a sentence. One that holds more than `longest` is refused.
pub(super) fn bytes(folder: &Path, name: &str, longest: u64) -> Result<Vec<u8>, String> {
    let folder = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
    let path = folder.join(name);
    let unread = |why: &dyn std::fmt::Display| format!("`{}` cannot be read: {why}", path.display());
    // Where links lead. A job may come from anybody; it reads nothing but what came with it.
    let inside = folder.canonicalize().and_then(|folder| Ok(path.canonicalize()?.starts_with(folder)));
    if !inside.map_err(|error| unread(&error))? {
        return Err(unread(&"it lies outside the job's folder"));
    }
    // Asked before it is opened: a pipe would be waited for.
    let about = path.metadata().map_err(|error| unread(&error))?;
    if !about.is_file() {
        return Err(unread(&"it is a folder, a pipe or a device"));
    }
    let mut bytes = Vec::new();
    File::open(&path)
        .and_then(|file| file.take(longest + 1).read_to_end(&mut bytes))
        .map_err(|error| unread(&error))?;
    if bytes.len() as u64 > longest {
        return Err(unread(&format!("it is larger than {} MB", longest >> 20)));
    }
    Ok(bytes)
}
