//! A job and its catalog, read from their files.

use std::path::Path;
use std::sync::Arc;

use sha2::{Digest, Sha256};

use super::hands::side_by_side;
use super::{CatalogChoice, CommandError, beside};
use crate::catalog::{Catalog, hexadecimal};
use crate::front_door::{self, Opened};
use crate::hands::two;
use crate::job::{self, Job};
use crate::report::Stamp;
use crate::written::{self, Draft};

pub(super) fn load_catalog(choice: &CatalogChoice) -> Result<Catalog, CommandError> {
    Ok(match &choice.catalog {
        Some(folder) => Catalog::with_folder(folder, side_by_side)?,
        None => Catalog::built_in_by(side_by_side)?,
    })
}

pub(super) fn read(path: &Path) -> Result<String, CommandError> {
    written::text_of(path).map_err(|source| CommandError::Unreadable { path: path.to_owned(), source })
}

/// The catalog, and the job in this file, read side by side.
pub(super) fn load(choice: &CatalogChoice, path: &Path) -> Result<(Catalog, Opened), CommandError> {
    let (catalog, draft) = two(side_by_side, || load_catalog(choice), || draft(path));
    let catalog = catalog?;
    let opened = open(path, draft?, &catalog)?;
    Ok((catalog, opened))
}

/// The job in this file.
pub(super) fn load_job(path: &Path, catalog: &Catalog) -> Result<Opened, CommandError> {
    open(path, draft(path)?, catalog)
}

fn draft(path: &Path) -> Result<Draft<Job>, CommandError> {
    Ok(job::draft(&path.display().to_string(), &read(path)?))
}

fn open(path: &Path, draft: Draft<Job>, catalog: &Catalog) -> Result<Opened, CommandError> {
    let folder = path.parent().unwrap_or(Path::new("."));
    Ok(front_door::open_draft(draft, catalog, |name| beside::bytes(folder, name, LONGEST_NAMED_FILE).map(Arc::from))?)
}

/// What a page made from the job of this file is matched by.
pub(super) fn stamp(path: &Path, opened: &Opened, catalog: &Catalog) -> Stamp {
    Stamp {
        job: path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default(),
        // The bytes on the disk: the text may have lost a byte order mark.
        // What is no file, such as standard input, was read to its end, and gives nothing a second time.
        job_hash: hexadecimal(&match std::fs::metadata(path).and_then(|about| {
            if about.is_file() { std::fs::read(path) } else { Err(std::io::Error::other("read to its end")) }
        }) {
            Ok(bytes) => Sha256::digest(bytes),
            Err(_) => Sha256::digest(opened.page.text.as_bytes()),
        }),
        catalogs: catalog.stamp(),
    }
}

/// The longest file that a job may name, in bytes: more than any hull or log needs.
pub(super) const LONGEST_NAMED_FILE: u64 = 1 << 28;
