//! The files of a catalog: compiled in, or in a folder and the folders inside it.

use std::path::{Path, PathBuf};

use include_dir::Dir;

use super::CatalogError;
use crate::written::{self, Faults, FileError, Page};

/// A folder of this name holds jobs, not entries of a catalog.
const JOBS: &str = "jobs";

/// The names and texts of the compiled-in files.
pub(super) fn built_in(folder: &Dir) -> Vec<(String, String)> {
    let mut files = Vec::new();
    collect_built_in(folder, &mut files);
    files
}

/// The names and texts of the compiled-in jobs.
pub(super) fn demos(folder: &Dir) -> Vec<(String, String)> {
    let named = |file: &include_dir::File| {
        Some((file.path().file_name()?.to_string_lossy().into_owned(), file.contents_utf8()?.to_owned()))
    };
    folder.get_dir(JOBS).map_or_else(Vec::new, |jobs| jobs.files().filter_map(named).collect())
}

fn collect_built_in(folder: &Dir, files: &mut Vec<(String, String)>) {
    for file in folder.files() {
        if file.path().extension().is_some_and(|e| e == "ron")
            && let Some(text) = file.contents_utf8()
        {
            files.push((file.path().display().to_string(), text.to_owned()));
        }
    }
    for inner in folder.dirs() {
        if inner.path() != Path::new(JOBS) {
            collect_built_in(inner, files);
        }
    }
}

/// A file of a catalog: its name, and its text or why it has none.
pub type FileText = (String, Result<String, Faults>);

/// The names and texts of the `.ron` files in the folder and its sub-folders, in the order of their paths. Left out are
/// sub-folders of jobs, hidden ones, and links.
///
/// # Errors
/// A folder that cannot be read, or no file at all.
pub fn read_folder(folder: &Path) -> Result<Vec<FileText>, CatalogError> {
    let mut paths = Vec::new();
    collect(folder, &mut paths)?;
    paths.sort();
    if paths.is_empty() {
        return Err(CatalogError::Empty { path: folder.to_owned() });
    }
    let read = |path: PathBuf| {
        let name = path.display().to_string();
        // A file that is no text is a fault of its own, beside those of the others.
        let text = plain_text(&path).map_err(|error| {
            let page = Page::new(name.as_str(), "");
            let fault = page.fault("", error.to_string(), "");
            Faults::new(&page, vec![fault])
        });
        (name, text)
    };
    Ok(paths.into_iter().map(read).collect())
}

/// The text of a plain file. Asked before it is opened: a pipe in the folder would be waited for.
fn plain_text(path: &Path) -> Result<String, FileError> {
    if !path.metadata()?.is_file() {
        return Err(std::io::Error::other("it is a pipe or a device").into());
    }
    written::text_of(path)
}

fn collect(folder: &Path, paths: &mut Vec<PathBuf>) -> Result<(), CatalogError> {
    let unreadable =
        |source: std::io::Error| CatalogError::Unreadable { path: folder.to_owned(), source: source.into() };
    for entry in std::fs::read_dir(folder).map_err(unreadable)? {
        let entry = entry.map_err(unreadable)?;
        let (path, name) = (entry.path(), entry.file_name());
        // A link is not followed: it may lead back up.
        if entry.file_type().map_err(unreadable)?.is_dir() {
            if name != JOBS && !name.as_encoded_bytes().starts_with(b".") {
                collect(&path, paths)?;
            }
        } else if path.extension().is_some_and(|e| e == "ron") {
            paths.push(path);
        }
    }
    Ok(())
}
