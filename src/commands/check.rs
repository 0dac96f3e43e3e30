//! `check`: the main job.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueEnum};

use super::{CatalogChoice, CommandError, UnitsChoice, load_catalog, load_rig, print};
use crate::case::Case;
use crate::report::{self, Report};
use crate::rules::{self, Verdict};

#[derive(Args)]
pub(super) struct CheckArgs {
    /// The job
    job: PathBuf,
    /// Form of the report
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
    /// Units of the report
    #[arg(long, value_enum, default_value = "us")]
    units: UnitsChoice,
    /// Show the working of every finding
    #[arg(long)]
    explain: bool,
    #[command(flatten)]
    catalog: CatalogChoice,
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Format {
    /// For reading
    Text,
    /// For another program
    Json,
}

/// Exit code where something fails.
const FAILS: u8 = 1;

pub(super) fn run(args: &CheckArgs) -> Result<ExitCode, CommandError> {
    let catalog = load_catalog(&args.catalog)?;
    let rig = load_rig(&args.job, &catalog)?;
    let case = Case::new(&rig);
    let judged = rules::judge(&case);
    let report = Report {
        case: &case,
        judged: &judged,
        units: args.units.into(),
        explain: args.explain,
    };
    match args.format {
        Format::Text => print(&report::text(&report)),
        Format::Json => print(&format!("{:#}\n", report::json(&report))),
    }
    Ok(if report.count(Verdict::Fail) > 0 {
        ExitCode::from(FAILS)
    } else {
        ExitCode::SUCCESS
    })
}
