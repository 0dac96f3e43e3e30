//! `tape`: the readings still missing.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;

use super::output::{Paper, write};
use super::{CatalogChoice, CommandError, load_catalog, load_job, print, written_to};
use crate::{report, rules};

#[derive(Args)]
pub(super) struct TapeArgs {
    /// The job
    job: PathBuf,
    /// Write them as a measuring sheet to print and take along, as one HTML file
    #[arg(long, value_name = "FILE")]
    html: Option<PathBuf>,
    /// Write a sheet for a sea trial, to print and take along, as one HTML file
    #[arg(long, value_name = "FILE", conflicts_with = "html")]
    trial: Option<PathBuf>,
    #[command(flatten)]
    catalog: CatalogChoice,
}

pub(super) fn run(args: &TapeArgs) -> Result<ExitCode, CommandError> {
    let catalog = load_catalog(&args.catalog)?;
    let loaded = load_job(&args.job, &catalog)?;
    let (rig, judged) = (&loaded.rig, rules::judge(&loaded.case()));
    if let Some(file) = &args.trial {
        write(&[Paper::sealed(file, &report::trial_sheet(rig.title()))])?;
        written_to(file, ": print it and take it along")?;
        return Ok(ExitCode::SUCCESS);
    }
    match &args.html {
        Some(file) => {
            write(&[Paper::sealed(file, &report::measuring_sheet(rig.title(), &judged))])?;
            written_to(file, ": print it and take it along")?;
        }
        None => print(&report::measuring_list(rig.title(), &judged))?,
    }
    Ok(ExitCode::SUCCESS)
}
