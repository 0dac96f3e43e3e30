//! A job and its catalog, read from their files.

use std::path::Path;

use sha2::{Digest, Sha256};

use super::{CatalogChoice, CommandError};
use crate::case::swing::study_faults;
use crate::case::{Begun, Case};
use crate::catalog::{Catalog, hexadecimal};
use crate::job;
use crate::report::Stamp;
use crate::rig::{self, Files, Rig};
use crate::written::{self, Fault, Faults, Page, Slip};

pub(super) fn load_catalog(choice: &CatalogChoice) -> Result<Catalog, CommandError> {
    Ok(match &choice.catalog {
        Some(folder) => Catalog::with_folder(folder)?,
        None => Catalog::built_in()?,
    })
}

fn read(path: &Path) -> Result<String, CommandError> {
    written::text_of(path).map_err(|source| CommandError::Unreadable { path: path.to_owned(), source })
}

/// A job that was read: its rig, and its page for what is found wrong later.
pub(super) struct Loaded {
    pub rig: Rig,
    pub page: Page,
    begun: Begun,
}

impl Loaded {
    /// The rig on the desk, with what was worked out while its faults were looked for.
    pub fn case(&self) -> Case<'_> {
        Case::resume(&self.rig, self.begun.clone())
    }

    /// What a page made from it is matched by.
    pub fn stamp(&self, path: &Path, catalog: &Catalog) -> Stamp {
        Stamp {
            job: path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default(),
            // The bytes on the disk: the text may have lost a byte order mark.
            job_hash: hexadecimal(&match std::fs::read(path) {
                Ok(bytes) => Sha256::digest(bytes),
                Err(_) => Sha256::digest(self.page.text.as_bytes()),
            }),
            catalogs: catalog.stamp(),
        }
    }
}

/// The job in this file.
pub(super) fn load_job(path: &Path, catalog: &Catalog) -> Result<Loaded, CommandError> {
    let text = read(path)?;
    let mut draft = job::draft(&path.display().to_string(), &text);
    let page = draft.page.clone();
    let (files, unread) = draft.value.as_ref().map(|job| read_files(job, path, &page)).unwrap_or_default();
    draft.add(unread);
    let resolved = draft.value.as_ref().map(|job| rig::resolve_with_files(job, catalog, &files));
    match resolved {
        Some(Ok(rig)) => {
            let case = Case::new(&rig);
            // A shape that was read may still be no hull; one that was not was told already.
            if draft.faults.is_empty() {
                draft.add_slips(case.shape_fault());
            }
            draft.add_slips(study_faults(&rig).into_iter().map(|fault| Slip {
                path: fault.path,
                message: fault.error.to_string(),
                help: String::new(),
            }));
            if draft.faults.is_empty() {
                draft.add_slips(case.study_faults());
                draft.add_slips(case.running_study_faults());
            }
            let (_, page) = draft.finish()?;
            let begun = case.lay_aside();
            Ok(Loaded { rig, page, begun })
        }
        Some(Err(unresolved)) => {
            draft.add_slips(unresolved);
            Err(Faults::new(&page, draft.faults).into())
        }
        None => Err(Faults::new(&draft.page, draft.faults).into()),
    }
}

/// The longest file that a job may name.
const LONGEST_NAMED_FILE: u64 = 1 << 28;

/// The bytes of the files that a job names, from the job's own folder, and the faults of those that
/// cannot be read.
fn read_files(job: &job::Job, path: &Path, page: &Page) -> (Files, Vec<Fault>) {
    let folder = path.parent().unwrap_or(Path::new("."));
    let mut files = Files::new();
    let mut faults = Vec::new();
    for (entry, name) in job.files() {
        let file = folder.join(name);
        let read = std::fs::metadata(&file).and_then(|about| {
            if !about.is_file() || about.len() > LONGEST_NAMED_FILE {
                let why = "no file, or a longer one than any hull needs";
                return Err(std::io::Error::other(why));
            }
            std::fs::read(&file)
        });
        match read {
            Ok(bytes) => {
                files.insert(name.to_owned(), bytes.into());
            }
            Err(error) => faults.push(page.fault(
                entry,
                format!("`{}` cannot be read: {error}", file.display()),
                "the name counts from the folder of the job",
            )),
        }
    }
    (files, faults)
}
