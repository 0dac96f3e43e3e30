//! `desk`: the page at the boat, as one file.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;

use super::output::write_own;
use super::{CommandError, load::read, written_to};
use crate::desk::{self, Given};
use crate::report;

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
    let given = text.as_deref().map(|text| Given { name: &name, text });
    write_own(&args.out, &desk::page(engine, given.as_ref()), report::GENERATOR)?;
    written_to(&args.out, ": open it in a browser, or mail it; it needs no network");
    Ok(ExitCode::SUCCESS)
}
