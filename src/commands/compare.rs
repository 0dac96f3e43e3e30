//! `compare`: candidates side by side.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;

use super::check::Format;
use super::output::{Paper, write};
use super::{CatalogChoice, CommandError, UnitsChoice, load, print, stamp, written_to};
use crate::options::compare;
use crate::report::{self, Comparison};
use crate::written::Faults;

#[derive(Args)]
pub(super) struct CompareArgs {
    /// The job, with its candidates
    job: PathBuf,
    /// Form of the answer
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
    /// Write the answer as one HTML file, the stern drawn with each
    #[arg(long, value_name = "FILE", conflicts_with = "format")]
    html: Option<PathBuf>,
    /// Units of the answer
    #[arg(long, value_enum, default_value = "us")]
    units: UnitsChoice,
    #[command(flatten)]
    catalog: CatalogChoice,
}

pub(super) fn run(args: &CompareArgs) -> Result<ExitCode, CommandError> {
    let (catalog, opened) = load(&args.catalog, &args.job)?;
    let page = &opened.page;
    if opened.job.candidates.is_empty() {
        let help = "candidates: [(name: \"one of 200 hp\", engines_on: [(class: \"…\", shaft: \"25 in\")])], each as engines_on of the job itself";
        return Err(Faults::new(page, vec![page.fault("", "the job holds no candidates to compare", help)]).into());
    }
    let yard = opened.yard(&catalog);
    let all = compare(&yard).map_err(|slips| {
        Faults::new(page, slips.into_iter().map(|slip| page.fault(&slip.path, slip.message, slip.help)).collect())
    })?;
    let comparison = Comparison { yard: &yard, all: &all, units: args.units.into() };
    if let Some(file) = &args.html {
        let page = report::compare_page(&comparison, &stamp(&args.job, &opened, &catalog));
        write(&[Paper::sealed(file, &page)])?;
        written_to(file, "")?;
        return Ok(ExitCode::SUCCESS);
    }
    print(&match args.format {
        Format::Text => report::compare_text(&comparison),
        Format::Json => format!("{:#}\n", report::harmless(report::compare_json(&comparison))),
    })?;
    Ok(ExitCode::SUCCESS)
}
