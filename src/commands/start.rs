//! `start`: a commented job to fill in.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueEnum};

use super::output::{Paper, write};
use super::{CommandError, print, written_to};
use crate::catalog::Catalog;
use crate::job::Sitting;
use crate::job::start::{short, template};
use crate::report;
use crate::written::printable;

#[derive(Args)]
pub(super) struct StartArgs {
    /// The file to write
    file: PathBuf,
    /// Which sitting it is for
    #[arg(long = "for", value_enum, default_value = "before-ordering")]
    sitting: SittingChoice,
    /// With every field there is, not only what is in hand in ten minutes
    #[arg(long)]
    long: bool,
    /// Also write a blank measuring sheet to print and take along, as one HTML file
    #[arg(long, value_name = "SHEET")]
    sheet: Option<PathBuf>,
}

#[derive(Clone, Copy, ValueEnum)]
enum SittingChoice {
    /// A rigging tech, before the engines are ordered
    BeforeOrdering,
    /// A surveyor, at a finished install
    AsFitted,
    /// A student, with one question
    Study,
}

impl From<SittingChoice> for Sitting {
    fn from(choice: SittingChoice) -> Self {
        match choice {
            SittingChoice::BeforeOrdering => Sitting::BeforeOrdering,
            SittingChoice::AsFitted => Sitting::AsFitted,
            SittingChoice::Study => Sitting::Study,
        }
    }
}

pub(super) fn run(args: &StartArgs) -> Result<ExitCode, CommandError> {
    let sitting = args.sitting.into();
    let text = if args.long { template(sitting) } else { short(sitting) };
    let mut papers = vec![Paper::fresh(&args.file, text)];
    if let Some(sheet) = &args.sheet {
        papers.push(Paper::sealed(sheet, &report::blank_sheet(sitting, &Catalog::built_in()?)));
    }
    write(&papers)?;
    print(&format!(
        "{} written. Fill it in, then: sternknee check {0}\n",
        printable(&args.file.display().to_string())
    ))?;
    if let Some(sheet) = &args.sheet {
        written_to(sheet, ": print it and take it along")?;
    }
    Ok(ExitCode::SUCCESS)
}
