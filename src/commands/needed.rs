//! `needed`: the heaviest engine, the lowest bracket, the least lip that would just do.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;

use super::check::Format;
use super::{CatalogChoice, CommandError, UnitsChoice, load, print};
use crate::options::{needed, questions};
use crate::report::{self, WhatIsNeeded};
use crate::written::Faults;

#[derive(Args)]
pub(super) struct NeededArgs {
    /// The job
    job: PathBuf,
    /// Form of the answer
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
    /// Units of the answer
    #[arg(long, value_enum, default_value = "us")]
    units: UnitsChoice,
    #[command(flatten)]
    catalog: CatalogChoice,
}

pub(super) fn run(args: &NeededArgs) -> Result<ExitCode, CommandError> {
    let (catalog, opened) = load(&args.catalog, &args.job)?;
    let (page, yard) = (&opened.page, opened.yard(&catalog));
    let all = questions(&opened.job, &opened.rig).into_iter().map(|moved| needed(&yard, moved));
    let all = all.collect::<Result<Vec<_>, _>>().map_err(|slips| {
        Faults::new(page, slips.into_iter().map(|slip| page.fault(&slip.path, slip.message, slip.help)).collect())
    })?;
    let (title, made_up) = (opened.rig.title(), opened.job.made_up);
    let what = WhatIsNeeded { title, made_up, all: &all, units: args.units.into() };
    print(&match args.format {
        Format::Text => report::needed_text(&what),
        Format::Json => format!("{:#}\n", report::needed_json(&what)),
    })?;
    Ok(ExitCode::SUCCESS)
}
