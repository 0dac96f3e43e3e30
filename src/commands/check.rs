//! `check`: the main job.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueEnum};

use super::output::write_own;
use super::{CatalogChoice, CommandError, UnitsChoice, load_catalog, load_job, photographs, print, stamp, written_to};
use crate::report::{self, Report};
use crate::rules::{self, Verdict};

#[derive(Args)]
pub(super) struct CheckArgs {
    /// The job
    job: PathBuf,
    /// Form of the report that is printed; text, or nothing where a file is written instead
    #[arg(long, value_enum)]
    format: Option<Format>,
    /// Write the report as one HTML file, to hand over or to print
    #[arg(long, value_name = "FILE")]
    html: Option<PathBuf>,
    /// Write the drawings as SVG files into this folder
    #[arg(long, value_name = "DIR")]
    drawings: Option<PathBuf>,
    /// Put the job's photographs into the HTML file, as they are: with place and time, where the camera
    /// wrote them in
    #[arg(long, requires = "html")]
    photographs: bool,
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

/// Exit code where something fails, or is asked back.
const FAILS: u8 = 1;

pub(super) fn run(args: &CheckArgs) -> Result<ExitCode, CommandError> {
    let catalog = load_catalog(&args.catalog)?;
    let loaded = load_job(&args.job, &catalog)?;
    let case = loaded.case();
    let judged = rules::judge(&case);
    let report = Report { case: &case, judged: &judged, units: args.units.into(), explain: args.explain };
    if let Some(file) = &args.html {
        let papers = &loaded.rig.job.photographs;
        let pictures = if args.photographs {
            photographs::embedded(papers, &loaded.page, &args.job)?
        } else {
            photographs::named(papers)
        };
        let page = report::page(&report, &stamp(&args.job, &loaded, &catalog), &pictures);
        write_own(file, &page, report::GENERATOR)?;
        print(&format!("{}\n", report.headline()));
        written_to(file, "");
    }
    if let Some(folder) = &args.drawings {
        drawings(folder, &report)?;
    }
    let to_files = args.html.is_some() || args.drawings.is_some();
    match (args.format, to_files) {
        (Some(Format::Json), _) => print(&format!("{:#}\n", report::json(&report))),
        (Some(Format::Text), _) | (None, false) => print(&report::text(&report)),
        (None, true) => {}
    }
    let asked = loaded.rig.questions().next().is_some();
    Ok(if asked || report.count(Verdict::Fail) > 0 { ExitCode::from(FAILS) } else { ExitCode::SUCCESS })
}

/// What an SVG file of this program says of itself in its first lines.
const DRAWN: &str = "drawn by sternknee";

fn drawings(folder: &std::path::Path, report: &Report) -> Result<(), CommandError> {
    std::fs::create_dir_all(folder).map_err(|source| CommandError::Unwritable { path: folder.to_owned(), source })?;
    for (name, text) in report::drawing_files(report) {
        let file = folder.join(name);
        write_own(&file, &text, DRAWN)?;
        written_to(&file, "");
    }
    Ok(())
}
