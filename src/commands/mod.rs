//! The command line: a file a verb.

mod catalog;
mod check;
mod output;
mod photographs;
mod rules;
mod start;
mod tape;
mod work;

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Args, Parser, Subcommand, ValueEnum};

use sha2::{Digest, Sha256};

use crate::case::Case;
use crate::case::float::shape_fault;
use crate::case::swing::study_faults;
use crate::catalog::{Catalog, CatalogError, hexadecimal};
use crate::job;
use crate::quantity::Units;
use crate::report::Stamp;
use crate::rig::{self, Files, Rig};
use crate::written::{self, Fault, Faults, FileError, Page};

/// Checks whether an outboard repower belongs on a given boat, and shows its working. It advises; it
/// never approves.
#[derive(Parser)]
#[command(name = "sternknee", version)]
pub struct Cli {
    #[command(subcommand)]
    verb: Verb,
}

#[derive(Subcommand)]
enum Verb {
    /// Judge a job and report. Exit 0: nothing fails; 1: something fails; 2: the input is unusable
    Check(check::CheckArgs),
    /// Write a commented job to fill in; never overwrites
    Start(start::StartArgs),
    /// List the readings still missing and how to take each
    Tape(tape::TapeArgs),
    /// Print the whole working of one topic
    Work(work::WorkArgs),
    /// List the rules, or explain one in full
    Rules(rules::RulesArgs),
    /// List the catalog, show an entry, or check a folder of entries
    Catalog(catalog::CatalogArgs),
}

/// Where engine classes and the rest are looked up.
#[derive(Args)]
struct CatalogChoice {
    /// A folder of .ron files whose entries are added to the built-in catalog or replace entries of the same name
    #[arg(long, value_name = "DIR")]
    catalog: Option<PathBuf>,
}

/// Units of a report.
#[derive(Clone, Copy, ValueEnum)]
enum UnitsChoice {
    /// US customary
    Us,
    /// Metric
    Si,
    /// US customary with metric behind it
    Both,
}

impl From<UnitsChoice> for Units {
    fn from(choice: UnitsChoice) -> Self {
        match choice {
            UnitsChoice::Us => Units::Us,
            UnitsChoice::Si => Units::Si,
            UnitsChoice::Both => Units::Both,
        }
    }
}

/// Why a command could not do its work. Its exit code is 2.
#[derive(Debug, thiserror::Error)]
pub enum CommandError {
    /// A file could not be read.
    #[error("{}: {source}", path.display())]
    Unreadable { path: PathBuf, source: FileError },
    /// A file could not be written.
    #[error("{}: cannot be written: {source}", path.display())]
    Unwritable {
        path: PathBuf,
        source: std::io::Error,
    },
    /// A file is there already.
    #[error("{}: is there already; nothing was written", path.display())]
    Exists { path: PathBuf },
    /// A file is there already, and this program did not write it.
    #[error("{}: is there already, and not a file that this program wrote; nothing was written", path.display())]
    Foreign { path: PathBuf },
    /// A job with faults.
    #[error(transparent)]
    Job(#[from] Faults),
    /// A catalog that cannot be used.
    #[error(transparent)]
    Catalog(#[from] CatalogError),
    /// A name that leads nowhere.
    #[error("{what} `{name}` is not known; {hint}")]
    Unknown {
        what: &'static str,
        name: String,
        hint: String,
    },
}

/// Exit code where the input is unusable.
const UNUSABLE: u8 = 2;

/// Carries out a command line.
pub fn run(cli: Cli) -> ExitCode {
    let outcome = match cli.verb {
        Verb::Check(args) => check::run(&args),
        Verb::Start(args) => start::run(&args),
        Verb::Tape(args) => tape::run(&args),
        Verb::Work(args) => work::run(&args),
        Verb::Rules(args) => rules::run(&args),
        Verb::Catalog(args) => catalog::run(&args),
    };
    outcome.unwrap_or_else(|error| {
        complain(&error);
        ExitCode::from(UNUSABLE)
    })
}

/// Says why on standard error; faults with the lines they are about.
fn complain(error: &CommandError) {
    let mut stderr = anstream::stderr();
    let colour = anstream::AutoStream::choice(&std::io::stderr()) != anstream::ColorChoice::Never;
    let message = match error {
        CommandError::Job(faults) => faults.render(colour),
        CommandError::Catalog(CatalogError::Faulty(all)) => {
            all.iter().map(|faults| faults.render(colour)).collect()
        }
        other => format!("{}\n", written::printable(&other.to_string())),
    };
    // Nobody is left to tell where standard error is closed.
    let _ = stderr.write_all(message.as_bytes());
}

/// Says that a file was written.
fn written_to(path: &Path, more: &str) {
    let name = written::printable(&path.display().to_string());
    print(&format!("{name} written{more}.\n"));
}

/// Prints to standard output, without colour where it is not wanted; a closed pipe ends it quietly.
fn print(text: &str) {
    let _ = anstream::stdout().write_all(text.as_bytes());
}

fn load_catalog(choice: &CatalogChoice) -> Result<Catalog, CommandError> {
    Ok(match &choice.catalog {
        Some(folder) => Catalog::with_folder(folder)?,
        None => Catalog::built_in()?,
    })
}

fn read(path: &Path) -> Result<String, CommandError> {
    written::text_of(path).map_err(|source| CommandError::Unreadable {
        path: path.to_owned(),
        source,
    })
}

/// A job that was read: its rig, and its page for what is found wrong later.
struct Loaded {
    rig: Rig,
    page: Page,
}

impl Loaded {
    /// What a page made from it is matched by.
    fn stamp(&self, path: &Path, catalog: &Catalog) -> Stamp {
        Stamp {
            job: path
                .file_name()
                .map(|name| name.to_string_lossy().into_owned())
                .unwrap_or_default(),
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
fn load_job(path: &Path, catalog: &Catalog) -> Result<Loaded, CommandError> {
    let text = read(path)?;
    let mut draft = job::draft(&path.display().to_string(), &text);
    let page = draft.page.clone();
    let (files, unread) = draft
        .value
        .as_ref()
        .map(|job| read_files(job, path, &page))
        .unwrap_or_default();
    draft.add(unread);
    let resolved = draft
        .value
        .as_ref()
        .map(|job| rig::resolve_with_files(job, catalog, &files));
    match resolved {
        Some(Ok(rig)) => {
            // A shape that was read may still be no hull; one that was not was told already.
            if draft.faults.is_empty()
                && let Some(fault) = shape_fault(&rig)
            {
                draft.add(vec![page.fault(&fault.path, fault.message, fault.help)]);
            }
            draft.add(
                study_faults(&rig)
                    .into_iter()
                    .map(|fault| page.fault(&fault.path, fault.error.to_string(), ""))
                    .collect(),
            );
            if draft.faults.is_empty() {
                let faults = Case::new(&rig).study_faults();
                draft.add(
                    faults
                        .into_iter()
                        .map(|one| page.fault(&one.path, one.message, one.help))
                        .collect(),
                );
            }
            let (_, page) = draft.finish()?;
            Ok(Loaded { rig, page })
        }
        Some(Err(unresolved)) => {
            draft.add(
                unresolved
                    .into_iter()
                    .map(|one| page.fault(&one.path, one.message, one.help))
                    .collect(),
            );
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
