//! `tape`: the readings still missing.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;

use super::hands::side_by_side;
use super::output::{Paper, write};
use super::{CatalogChoice, CommandError, UnitsChoice, load, print, written_to};
use crate::{report, rules};

#[derive(Args)]
pub(super) struct TapeArgs {
    /// The job
    job: PathBuf,
    /// Write them as a measuring sheet to print and take along, as one HTML file
    #[arg(long, value_name = "FILE")]
    html: Option<PathBuf>,
    /// Judge again with every reading a little off, and list what was taken already too: what removes most doubt first
    #[arg(long)]
    how_sure: bool,
    /// Units of what was taken already
    #[arg(long, value_enum, default_value = "us")]
    units: UnitsChoice,
    /// Write a sheet for a sea trial, to print and take along, as one HTML file
    #[arg(long, value_name = "FILE", conflicts_with = "html")]
    trial: Option<PathBuf>,
    #[command(flatten)]
    catalog: CatalogChoice,
}

pub(super) fn run(args: &TapeArgs) -> Result<ExitCode, CommandError> {
    let (catalog, loaded) = load(&args.catalog, &args.job)?;
    let (rig, mut judged) = (&loaded.rig, rules::judge(&loaded.case_by(side_by_side)));
    if args.how_sure {
        loaded.weigh(&catalog, &mut judged);
    }
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
        None => print(&report::measuring_list(rig.title(), &judged, args.units.into()))?,
    }
    Ok(ExitCode::SUCCESS)
}
