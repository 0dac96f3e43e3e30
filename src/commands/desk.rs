//! `desk`: the page at the boat, as one file.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::Args;

use super::load::{LONGEST_NAMED_FILE, read};
use super::output::{Paper, write};
use super::{CommandError, beside, print, written_to};
use crate::desk::{self, Given};
use crate::job;
use crate::written::printable;

/// The engine that the page runs, where the program was built with it.
#[cfg(feature = "desk")]
const ENGINE: Option<&[u8]> =
    Some(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/target/engine/engine.wasm.gz")));
#[cfg(not(feature = "desk"))]
const ENGINE: Option<&[u8]> = None;

#[derive(Args)]
pub(super) struct DeskArgs {
    /// A job to begin with, put into the page
    job: Option<PathBuf>,
    /// The file to write
    #[arg(long, value_name = "FILE", default_value = "sternknee.html")]
    out: PathBuf,
}

pub(super) fn run(args: &DeskArgs) -> Result<ExitCode, CommandError> {
    let engine = ENGINE.ok_or(CommandError::NoPage)?;
    let text = args.job.as_deref().map(read).transpose()?;
    let name = args.job.as_deref().and_then(|job| job.file_name()).unwrap_or_default().to_string_lossy();
    let mut files = Vec::new();
    let mut absent = Vec::new();
    if let (Some(path), Some(text)) = (&args.job, &text) {
        let folder = path.parent().unwrap_or(Path::new("."));
        // A job that cannot be read yet is mended in the page.
        let job = job::draft(&name, text).value.unwrap_or_default();
        for (_, named) in job.files() {
            match beside::bytes(folder, named, LONGEST_NAMED_FILE) {
                Ok(bytes) => files.push((named.to_owned(), bytes)),
                Err(why) => absent.push(why),
            }
        }
    }
    let given = text.as_deref().map(|text| Given { name: &name, text, files: &files });
    write(&[Paper::sealed(&args.out, &desk::page(engine, given.as_ref()))])?;
    written_to(&args.out, ": open it in a browser, or mail it; it needs no network")?;
    for why in absent {
        print(&format!("{}; the page asks for it\n", printable(&why)))?;
    }
    Ok(ExitCode::SUCCESS)
}
