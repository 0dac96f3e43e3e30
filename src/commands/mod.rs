//! The command line: a file a verb.

mod beside;
mod catalog;
mod check;
mod compare;
mod desk;
mod hands;
mod load;
mod manual;
mod needed;
mod options;
mod output;
mod photographs;
mod rules;
mod start;
mod tape;
mod work;

use std::ffi::OsString;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Args, Parser, Subcommand, ValueEnum};

use crate::catalog::CatalogError;
use crate::quantity::Units;
use crate::written::{self, Faults, FileError};

use load::{load, load_catalog, load_job, stamp};

/// Checks whether an outboard repower belongs on a given boat, and shows its working. It advises; it
/// never approves.
#[derive(Parser)]
#[command(name = "sternknee", version)]
struct Cli {
    #[command(subcommand)]
    verb: Verb,
}

#[derive(Subcommand)]
enum Verb {
    /// Judge a job and report. Exit 0: nothing fails; 1: something fails or is asked back; 2: the input is unusable
    Check(check::CheckArgs),
    /// Write a commented job to fill in; never overwrites
    Start(start::StartArgs),
    /// List the readings still missing and how to take each
    Tape(tape::TapeArgs),
    /// Print the whole working of one topic
    Work(work::WorkArgs),
    /// Put the job's candidates side by side
    Compare(compare::CompareArgs),
    /// Tell the heaviest engine, the lowest bracket, the least lip that would just do
    Needed(needed::NeededArgs),
    /// Try the whole catalog, or a price list, on a boat: which engines, brackets, heights and holes would do
    Options(options::OptionsArgs),
    /// List the rules, or explain one in full
    Rules(rules::RulesArgs),
    /// Write the page at the boat: one HTML file that judges jobs in a browser, without a network
    Desk(desk::DeskArgs),
    /// List the catalog, show an entry, or check a folder of entries
    Catalog(catalog::CatalogArgs),
    /// Print a script that completes command lines in a shell
    Completions(manual::CompletionsArgs),
    /// Print the manual page of the program, or of one command
    Man(manual::ManArgs),
}

/// Where engine classes and the rest are looked up.
#[derive(Args)]
struct CatalogChoice {
    /// A folder of .ron files, sub-folders too, whose entries are added to the built-in catalog or replace entries of the same name
    #[arg(long, value_name = "DIR")]
    catalog: Option<PathBuf>,
}

/// Units of a report.
#[derive(Clone, Copy, ValueEnum)]
enum UnitsChoice {
    /// US customary
    Us,
    /// Metric
    Si,
    /// US customary with metric behind it
    Both,
}

impl From<UnitsChoice> for Units {
    fn from(choice: UnitsChoice) -> Self {
        match choice {
            UnitsChoice::Us => Units::Us,
            UnitsChoice::Si => Units::Si,
            UnitsChoice::Both => Units::Both,
        }
    }
}

/// Why a command could not do its work. Its exit code is 2.
#[derive(Debug, thiserror::Error)]
pub enum CommandError {
    /// A file could not be read.
    #[error("{}: {source}", path.display())]
    Unreadable {
        /// Where it stands.
        path: PathBuf,
        /// Why it gave no text.
        source: FileError,
    },
    /// A file could not be written.
    #[error("{}: cannot be written: {source}", path.display())]
    Unwritable {
        /// Where it was to stand.
        path: PathBuf,
        /// What the system said.
        source: std::io::Error,
    },
    /// A file is there already.
    #[error("{}: is there already; nothing was written", path.display())]
    Exists {
        /// Where it stands.
        path: PathBuf,
    },
    /// A file is there already, and this program did not write it.
    #[error("{}: is there already, and not a file that this program wrote; nothing was written", path.display())]
    Foreign {
        /// Where it stands.
        path: PathBuf,
    },
    /// A file of this program's that somebody altered.
    #[error("{}: was altered since this program wrote it; nothing was written", path.display())]
    Altered {
        /// Where it stands.
        path: PathBuf,
    },
    /// A file that must not be written over.
    #[error("{}: may only be read; nothing was written", path.display())]
    ReadOnly {
        /// Where it stands.
        path: PathBuf,
    },
    /// Something else than a plain file.
    #[error("{}: is a folder, a link, a pipe or a device and no plain file; nothing was written", path.display())]
    NoFile {
        /// Where it stands.
        path: PathBuf,
    },
    /// Standard output takes no more.
    #[error("standard output: {0}")]
    Unprinted(std::io::Error),
    /// A job with faults.
    #[error(transparent)]
    Job(#[from] Faults),
    /// A catalog that cannot be used.
    #[error(transparent)]
    Catalog(#[from] CatalogError),
    /// The page is not in this program.
    #[error("this program was built without the page; the README says how to build it with the page in it")]
    NoPage,
    /// No cores to work on.
    #[error("the work cannot be shared out: {why}")]
    Cores {
        /// What the pool of threads said.
        why: String,
    },
    /// A name that leads nowhere.
    #[error("{what} `{name}` is not known; {hint}")]
    Unknown {
        /// What it was to name, with its article.
        what: &'static str,
        /// The name as it was written.
        name: String,
        /// The likeliest right name, or where the right ones are listed.
        hint: String,
    },
}

/// Exit code where the input is unusable.
const UNUSABLE: u8 = 2;

/// Carries out a command line, the program's name first.
pub fn main(line: impl IntoIterator<Item = OsString>) -> ExitCode {
    match Cli::try_parse_from(line) {
        Ok(cli) => run(cli),
        Err(told) => match told.print() {
            // Help and version are no mistakes.
            Ok(()) if !told.use_stderr() => ExitCode::SUCCESS,
            _ => ExitCode::from(UNUSABLE),
        },
    }
}

fn run(cli: Cli) -> ExitCode {
    let outcome = match cli.verb {
        Verb::Check(args) => check::run(&args),
        Verb::Start(args) => start::run(&args),
        Verb::Tape(args) => tape::run(&args),
        Verb::Work(args) => work::run(&args),
        Verb::Compare(args) => compare::run(&args),
        Verb::Needed(args) => needed::run(&args),
        Verb::Options(args) => options::run(&args),
        Verb::Rules(args) => rules::run(&args),
        Verb::Catalog(args) => catalog::run(&args),
        Verb::Desk(args) => desk::run(&args),
        Verb::Completions(args) => manual::completions(&args),
        Verb::Man(args) => manual::man(&args),
    };
    outcome.unwrap_or_else(|error| {
        complain(&error);
        ExitCode::from(UNUSABLE)
    })
}

/// Says why on standard error; faults with the lines they are about.
fn complain(error: &CommandError) {
    // Who closed the pipe knows.
    if matches!(error, CommandError::Unprinted(why) if why.kind() == std::io::ErrorKind::BrokenPipe) {
        return;
    }
    let mut stderr = anstream::stderr();
    let colour = anstream::AutoStream::choice(&std::io::stderr()) != anstream::ColorChoice::Never;
    let message = match error {
        CommandError::Job(faults) => faults.render(colour),
        CommandError::Catalog(CatalogError::Faulty(all)) => all.iter().map(|faults| faults.render(colour)).collect(),
        other => format!("{}\n", written::printable(&other.to_string())),
    };
    // Nobody is left to tell where standard error is closed.
    let _ = stderr.write_all(message.as_bytes());
}

/// Says that a file was written.
fn written_to(path: &Path, more: &str) -> Result<(), CommandError> {
    let name = written::printable(&path.display().to_string());
    print(&format!("{name} written{more}.\n"))
}

/// Prints to standard output, without colour where it is not wanted.
fn print(text: &str) -> Result<(), CommandError> {
    let mut out = anstream::stdout();
    out.write_all(text.as_bytes()).and_then(|()| out.flush()).map_err(CommandError::Unprinted)
}
