//! `start`: a commented job to fill in.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Args, ValueEnum};

use super::{CommandError, print};
use crate::job::{Sitting, start::template};
use crate::written::printable;

#[derive(Args)]
pub(super) struct StartArgs {
    /// The file to write
    file: PathBuf,
    /// Which sitting it is for
    #[arg(long = "for", value_enum, default_value = "before-ordering")]
    sitting: SittingChoice,
}

#[derive(Clone, Copy, ValueEnum)]
enum SittingChoice {
    /// A rigging tech, before the engines are ordered
    BeforeOrdering,
    /// A surveyor, at a finished install
    AsFitted,
    /// A student, with one question
    Study,
}

impl From<SittingChoice> for Sitting {
    fn from(choice: SittingChoice) -> Self {
        match choice {
            SittingChoice::BeforeOrdering => Sitting::BeforeOrdering,
            SittingChoice::AsFitted => Sitting::AsFitted,
            SittingChoice::Study => Sitting::Study,
        }
    }
}

pub(super) fn run(args: &StartArgs) -> Result<ExitCode, CommandError> {
    write_new(&args.file, template(args.sitting.into()))?;
    print(&format!(
        "{} written. Fill it in, then: sternknee check {0}\n",
        printable(&args.file.display().to_string())
    ));
    Ok(ExitCode::SUCCESS)
}

/// Writes a file that is not there yet: whole, or not at all.
fn write_new(path: &Path, text: &str) -> Result<(), CommandError> {
    let unwritable = |source| CommandError::Unwritable {
        path: path.to_owned(),
        source,
    };
    let folder = match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent,
        _ => Path::new("."),
    };
    let mut file = tempfile::NamedTempFile::new_in(folder).map_err(unwritable)?;
    file.write_all(text.as_bytes()).map_err(unwritable)?;
    file.persist_noclobber(path).map_err(|error| {
        if error.error.kind() == std::io::ErrorKind::AlreadyExists {
            CommandError::Exists {
                path: path.to_owned(),
            }
        } else {
            unwritable(error.error)
        }
    })?;
    Ok(())
}
