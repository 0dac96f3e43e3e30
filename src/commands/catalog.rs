//! `catalog`: what there is, one entry, or a folder checked.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, Subcommand};

use super::{CatalogChoice, CommandError, load_catalog, print};
use crate::case::swing::misfit;
use crate::catalog::{self, Catalog, CatalogError, CatalogFile};
use crate::report;
use crate::written::{Fault, Faults, Page, printable};

#[derive(Args)]
#[command(args_conflicts_with_subcommands = true)]
pub(super) struct CatalogArgs {
    #[command(subcommand)]
    verb: Option<CatalogVerb>,
    #[command(flatten)]
    catalog: CatalogChoice,
}

#[derive(Subcommand)]
enum CatalogVerb {
    /// Show an entry with all its figures
    Show {
        /// Its name
        name: String,
        #[command(flatten)]
        catalog: CatalogChoice,
    },
    /// Check the catalog files of a folder and of the folders inside it
    Check {
        /// The folder
        dir: PathBuf,
    },
}

pub(super) fn run(args: &CatalogArgs) -> Result<ExitCode, CommandError> {
    match &args.verb {
        None => print(&report::catalog_list(&load_catalog(&args.catalog)?))?,
        Some(CatalogVerb::Show { name, catalog }) => {
            let catalog = load_catalog(catalog)?;
            let shown = report::catalog_entry(&catalog, name).ok_or_else(|| unknown(&catalog, name))?;
            print(&shown)?;
        }
        Some(CatalogVerb::Check { dir }) => check(dir)?,
    }
    Ok(ExitCode::SUCCESS)
}

fn unknown(catalog: &Catalog, name: &str) -> CommandError {
    CommandError::Unknown {
        what: "the entry",
        name: name.to_owned(),
        hint: format!("did you mean `{}`?", catalog.likeliest(name)),
    }
}

/// The file, where each of its engines can be put together by its own mounting sheet.
fn put_together((file, page): (CatalogFile, Page)) -> Result<CatalogFile, Faults> {
    let engines = file.engines.iter().enumerate();
    let misfits = engines.filter_map(|(i, entry)| Some((i, misfit(&entry.name, &entry.spec)?)));
    let faults: Vec<Fault> = misfits
        .map(|(i, (shaft, why))| {
            let help = "with this shaft the numbers of the class's mounting sheet do not go together: check trim, tilt, cowl and reach";
            page.fault(&format!("engines[{i}].spec.shafts[{shaft}]"), why.to_string(), help)
        })
        .collect();
    if faults.is_empty() { Ok(file) } else { Err(Faults::new(&page, faults)) }
}

fn check(dir: &std::path::Path) -> Result<(), CommandError> {
    let mut faulty = Vec::new();
    let mut out = String::new();
    for (name, text) in catalog::read_folder(dir)? {
        match text.and_then(|text| catalog::load(&name, &text)).and_then(put_together) {
            Ok(file) => out.push_str(&format!("{}: sound, {} entries\n", printable(&name), file.count())),
            Err(faults) => faulty.push(faults),
        }
    }
    print(&out)?;
    if faulty.is_empty() { Ok(()) } else { Err(CatalogError::Faulty(faulty).into()) }
}
