//! `tape`: the readings still missing.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;

use super::{CatalogChoice, CommandError, load_catalog, load_rig, print};
use crate::case::Case;
use crate::{report, rules};

#[derive(Args)]
pub(super) struct TapeArgs {
    /// The job
    job: PathBuf,
    #[command(flatten)]
    catalog: CatalogChoice,
}

pub(super) fn run(args: &TapeArgs) -> Result<ExitCode, CommandError> {
    let catalog = load_catalog(&args.catalog)?;
    let rig = load_rig(&args.job, &catalog)?;
    print(&report::measuring_list(
        &rig.title,
        &rules::judge(&Case::new(&rig)),
    ));
    Ok(ExitCode::SUCCESS)
}
