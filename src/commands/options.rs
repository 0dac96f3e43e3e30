//! `options`: which engines would do.

use std::io::IsTerminal;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::atomic::{AtomicBool, Ordering};

use clap::{Args, ValueEnum};
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use rayon::prelude::*;

use super::load::read;
use super::output::{Paper, write};
use super::{
    CatalogChoice, CommandError, UNUSABLE, UnitsChoice, complain, load_catalog, load_job, print, stamp, written_to,
};
use crate::catalog::Catalog;
use crate::front_door::Opened;
use crate::options::{By, Found, Near, Offer, Prices, Work, Yard, nearly, search};
use crate::report::{self, Options};

#[derive(Args)]
pub(super) struct OptionsArgs {
    /// The job; or a folder of jobs: one line of JSON a boat
    job: PathBuf,
    /// The yard's price list, only what stands in it is tried: RON, or columns class,shaft,price with commas
    #[arg(long, value_name = "FILE")]
    prices: Option<PathBuf>,
    /// What the list's money is called
    #[arg(long, value_name = "WORD", default_value = "", hide_default_value = true, requires = "prices")]
    currency: String,
    /// Only classes whose name holds this
    #[arg(long, value_name = "WORDS")]
    only: Option<String>,
    /// Try engines with too little power to plane too
    #[arg(long)]
    underpowered: bool,
    /// By what to rank, the first before the second
    #[arg(long, value_enum, value_delimiter = ',', default_values_t = By::USUAL.map(ByChoice::from))]
    by: Vec<ByChoice>,
    /// How many to tell of each sort; JSON has all
    #[arg(long, value_name = "COUNT", default_value_t = 10)]
    show: usize,
    /// On how many cores to work; all where left out
    #[arg(long, value_name = "COUNT")]
    cores: Option<usize>,
    /// Form of the answer; of a folder each boat is a line
    #[arg(long, value_enum, default_value = "text")]
    format: Form,
    /// Write the answer as one HTML file
    #[arg(long, value_name = "FILE", conflicts_with = "format")]
    html: Option<PathBuf>,
    /// Units of the answer
    #[arg(long, value_enum, default_value = "us")]
    units: UnitsChoice,
    #[command(flatten)]
    catalog: CatalogChoice,
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Form {
    /// For reading
    Text,
    /// Every option, for another program
    Json,
    /// A boat in one line of JSON: the counts and the best
    Line,
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum ByChoice {
    /// Fewest warnings
    Warnings,
    /// Most room to the limit where there is least
    Firmness,
    /// Least change of trim
    Trim,
    /// Least weight on the transom
    Weight,
    /// Most power
    Power,
    /// Least price
    Price,
}

impl From<By> for ByChoice {
    fn from(by: By) -> Self {
        match by {
            By::Warnings => ByChoice::Warnings,
            By::Firmness => ByChoice::Firmness,
            By::Trim => ByChoice::Trim,
            By::Weight => ByChoice::Weight,
            By::Power => ByChoice::Power,
            By::Price => ByChoice::Price,
        }
    }
}

impl From<ByChoice> for By {
    fn from(by: ByChoice) -> Self {
        match by {
            ByChoice::Warnings => By::Warnings,
            ByChoice::Firmness => By::Firmness,
            ByChoice::Trim => By::Trim,
            ByChoice::Weight => By::Weight,
            ByChoice::Power => By::Power,
            ByChoice::Price => By::Price,
        }
    }
}

/// Set by Ctrl-C: what is done so far is the answer.
static STOPPED: AtomicBool = AtomicBool::new(false);
/// Exit code of a program that Ctrl-C ended: 128 and the number of the signal.
const INTERRUPTED: i32 = 130;

pub(super) fn run(args: &OptionsArgs) -> Result<ExitCode, CommandError> {
    let catalog = load_catalog(&args.catalog)?;
    let prices = match &args.prices {
        Some(file) => Some(Prices::read(&file.display().to_string(), &read(file)?, &catalog)?),
        None => None,
    };
    // Where no handler can be set, Ctrl-C ends the program as it ends any other.
    let _ = ctrlc::set_handler(|| {
        if STOPPED.swap(true, Ordering::Relaxed) {
            std::process::exit(INTERRUPTED);
        }
    });
    let offer = Offer { prices: prices.as_ref(), only: args.only.as_deref() };
    let cores = rayon::ThreadPoolBuilder::new().num_threads(args.cores.unwrap_or(0)).build();
    let cores = cores.map_err(|error| CommandError::Cores { why: error.to_string() })?;
    cores.install(|| if args.job.is_dir() { fleet(args, &catalog, &offer) } else { one(args, &catalog, &offer) })
}

fn one(args: &OptionsArgs, catalog: &Catalog, offer: &Offer) -> Result<ExitCode, CommandError> {
    if args.format == Form::Line && args.html.is_none() {
        line(args, &args.job, catalog, offer)?;
        return Ok(ExitCode::SUCCESS);
    }
    let opened = load_job(&args.job, catalog)?;
    let yard = opened.yard(catalog).underpowered(args.underpowered);
    told(args, &opened, &yard, &tried(&yard, offer), |options| {
        if let Some(file) = &args.html {
            let page = report::options_page(options, &stamp(&args.job, &opened, catalog));
            write(&[Paper::sealed(file, &page)])?;
            return written_to(file, "");
        }
        print(&match args.format {
            Form::Text => report::options_text(options),
            Form::Json | Form::Line => format!("{:#}\n", report::options_json(options)),
        })
    })?;
    Ok(ExitCode::SUCCESS)
}

/// Every job of a folder, in the order of their names: a line each.
fn fleet(args: &OptionsArgs, catalog: &Catalog, offer: &Offer) -> Result<ExitCode, CommandError> {
    let unreadable =
        |source: std::io::Error| CommandError::Unreadable { path: args.job.clone(), source: source.into() };
    let files = std::fs::read_dir(&args.job).map_err(unreadable)?;
    let mut files: Vec<PathBuf> =
        files.map(|file| file.map(|file| file.path())).collect::<Result<_, _>>().map_err(unreadable)?;
    files.retain(|file| file.is_file() && file.extension().is_some_and(|end| end == "ron"));
    files.sort();
    let mut code = ExitCode::SUCCESS;
    for file in files {
        if STOPPED.load(Ordering::Relaxed) {
            break;
        }
        if let Err(error) = line(args, &file, catalog, offer) {
            // Nobody reads the other boats either.
            if matches!(error, CommandError::Unprinted(_)) {
                return Err(error);
            }
            complain(&error);
            code = ExitCode::from(UNUSABLE);
        }
    }
    Ok(code)
}

fn line(args: &OptionsArgs, file: &Path, catalog: &Catalog, offer: &Offer) -> Result<(), CommandError> {
    let opened = load_job(file, catalog)?;
    let yard = opened.yard(catalog).underpowered(args.underpowered);
    told(args, &opened, &yard, &tried(&yard, offer), |options| {
        let mut line = report::options_line(options);
        line["job"] = file.display().to_string().into();
        print(&format!("{line}\n"))
    })
}

/// All options, on all cores, with a bar on a terminal.
fn tried(yard: &Yard, offer: &Offer) -> (Found, Vec<Near>) {
    let hangs = offer.hangs(yard);
    let bar = ProgressBar::with_draw_target(Some(hangs.len() as u64), target());
    if let Ok(style) =
        ProgressStyle::with_template("{wide_bar} {pos} of {len} options, {eta} to go; Ctrl-C tells what is done")
    {
        bar.set_style(style);
    }
    let work = Work {
        hands: |count, task| (0..count).into_par_iter().with_max_len(1).for_each(task),
        done: &|| bar.inc(1),
        goes_on: &|| !STOPPED.load(Ordering::Relaxed),
    };
    let found = search(yard, &hangs, &work);
    bar.finish_and_clear();
    let near = nearly(yard, &found, &Work { done: &|| (), ..work });
    (found, near)
}

fn target() -> ProgressDrawTarget {
    if std::io::stderr().is_terminal() { ProgressDrawTarget::stderr() } else { ProgressDrawTarget::hidden() }
}

fn told<T>(
    args: &OptionsArgs,
    opened: &Opened,
    yard: &Yard,
    (found, near): &(Found, Vec<Near>),
    tell: impl FnOnce(&Options) -> Result<T, CommandError>,
) -> Result<T, CommandError> {
    let order: Vec<By> = args.by.iter().copied().map(By::from).collect();
    let ranked = found.ranked(&order);
    let best = ranked.iter().find(|one| one.is_decided()).or(ranked.first());
    let entries = best.map(|best| best.hang.entries(yard, &opened.page)).unwrap_or_default();
    let units = args.units.into();
    tell(&Options {
        yard,
        found,
        near,
        order: &order,
        currency: &args.currency,
        units,
        most: args.show,
        entries: &entries,
    })
}
