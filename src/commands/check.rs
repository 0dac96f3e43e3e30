//! `check`: the main job.

use std::mem::ManuallyDrop;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Args, ValueEnum};

use super::hands::side_by_side;
use super::output::{Paper, write};
use super::photographs::Shown;
use super::{CatalogChoice, CommandError, UnitsChoice, load, photographs, print, stamp, written_to};
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
    /// Put the job's photographs into the HTML file: upright, smaller, without the place and time that the camera wrote in
    #[arg(long, requires = "html")]
    photographs: bool,
    /// Put them in as they were taken, with all that the camera wrote in
    #[arg(long, requires = "photographs")]
    as_taken: bool,
    /// Units of the report
    #[arg(long, value_enum, default_value = "us")]
    units: UnitsChoice,
    /// Show the working of every finding
    #[arg(long)]
    explain: bool,
    /// Tell all of it: what passes and does not apply, what was assumed, the sources
    #[arg(long)]
    all: bool,
    /// Tell each finding in one line
    #[arg(long, conflicts_with = "explain")]
    brief: bool,
    /// Judge again with every reading a little off: what each finding is worth, and which readings decide
    #[arg(long)]
    how_sure: bool,
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
    // The system takes back at once what would be taken apart piece by piece.
    let read = ManuallyDrop::new(load(&args.catalog, &args.job)?);
    let (catalog, loaded) = &*read;
    let case = ManuallyDrop::new(loaded.case_by(side_by_side));
    let mut judged = ManuallyDrop::new(rules::judge(&case));
    if args.how_sure {
        loaded.weigh(catalog, &mut judged);
    }
    let report = Report { case: &case, judged: &judged, units: args.units.into(), explain: args.explain };
    let page = match &args.html {
        Some(file) => {
            let named = &loaded.rig.job.photographs;
            let shown = match (args.photographs, args.as_taken) {
                (true, true) => Some(Shown::AsTaken),
                (true, false) => Some(Shown::Report),
                (false, _) => None,
            };
            let pictures = photographs::embedded(named, &loaded.page, &args.job, shown)?;
            Some((file.clone(), report::page(&report, &stamp(&args.job, loaded, catalog), &pictures)))
        }
        None => None,
    };
    let drawings = args
        .drawings
        .iter()
        .flat_map(|folder| report::drawing_files(&report).into_iter().map(|(name, text)| (folder.join(name), text)));
    let files: Vec<(PathBuf, String)> = page.into_iter().chain(drawings).collect();
    write_in(args.drawings.as_deref(), &files)?;
    if args.html.is_some() {
        print(&format!("{}\n", report.headline()))?;
    }
    for (file, _) in &files {
        written_to(file, "")?;
    }
    let to_files = args.html.is_some() || args.drawings.is_some();
    match (args.format, to_files) {
        (Some(Format::Json), _) => print(&format!("{:#}\n", report::json(&report)))?,
        (Some(Format::Text), _) | (None, false) => print(&in_text(&report, args))?,
        (None, true) => {}
    }
    let asked = loaded.rig.questions().next().is_some();
    let code = if asked || report.count(Verdict::Fail) > 0 { ExitCode::from(FAILS) } else { ExitCode::SUCCESS };
    Ok(code)
}

/// As much of the report as was asked for.
fn in_text(report: &Report, args: &CheckArgs) -> String {
    match (args.brief, args.all) {
        (true, all) => report::brief(report, all),
        (false, true) => report::text_of_all(report),
        (false, false) => report::text(report),
    }
}

/// Writes the files, some of them into a folder that is made for them where there is none.
fn write_in(folder: Option<&Path>, files: &[(PathBuf, String)]) -> Result<(), CommandError> {
    let made = match folder {
        Some(folder) if !folder.exists() => {
            std::fs::create_dir_all(folder)
                .map_err(|source| CommandError::Unwritable { path: folder.to_owned(), source })?;
            Some(folder)
        }
        _ => None,
    };
    let papers: Vec<Paper> = files.iter().map(|(path, text)| Paper::sealed(path, text)).collect();
    write(&papers).inspect_err(|_| {
        if let Some(folder) = made {
            // It is empty; where it is not, it is somebody else's by now.
            let _ = std::fs::remove_dir(folder);
        }
    })
}
