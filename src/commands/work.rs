//! `work`: the whole working of one topic.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueEnum};

use super::check::Format;
use super::hands::side_by_side;
use super::output::{Paper, write};
use super::{CatalogChoice, CommandError, UnitsChoice, load, print, stamp, written_to};
use crate::case::Case;
use crate::case::strength::{Sweep, sweep_part};
use crate::report;
use crate::rules::{self, Family};
use crate::working::Part;

#[derive(Args)]
pub(super) struct WorkArgs {
    /// The job
    job: PathBuf,
    /// What to work out
    #[arg(value_enum, default_value = "weights")]
    topic: Topic,
    /// Form of the working
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
    /// Write the working, typeset, as one HTML file
    #[arg(long, value_name = "FILE", conflicts_with = "format")]
    html: Option<PathBuf>,
    /// Units of the working
    #[arg(long, value_enum, default_value = "us")]
    units: UnitsChoice,
    #[command(flatten)]
    catalog: CatalogChoice,
}

#[derive(Clone, Copy, ValueEnum)]
enum Topic {
    /// What comes off and goes on, item by item
    Weights,
    /// How she floats, before and after, in every loading
    Float,
    /// How the engines swing: chain, ranges, surroundings, every bound with its gap
    Swing,
    /// What the transom carries: loads, bolts, panel, core; studies of strength
    Strength,
    /// How she is steered: turns, pull, cables, tie bar
    Steering,
    /// How the engines are fed: suction, boiling, range
    Fuel,
    /// Batteries, wires, fuses, a day's current
    Electrical,
    /// Levers, cables, tubes, what comes out
    Controls,
    /// The instruments' network
    Network,
    /// What she weighs on the road, and where
    Trailer,
    /// How she runs: the range before and after, the trial's say in it; studies of running
    Running,
    /// The trials, run by run, and before against after
    Trial,
    /// Costs, a season's fuel, when both are even
    Worth,
}

impl Topic {
    fn word(self) -> &'static str {
        match self {
            Topic::Weights => "weights",
            Topic::Float => "float",
            Topic::Swing => "swing",
            Topic::Strength => "strength",
            Topic::Steering => "steering",
            Topic::Fuel => "fuel",
            Topic::Electrical => "electrical",
            Topic::Controls => "controls",
            Topic::Network => "network",
            Topic::Trailer => "trailer",
            Topic::Running => "running",
            Topic::Trial => "trial",
            Topic::Worth => "worth",
        }
    }

    fn parts(self, case: &Case) -> Vec<Part> {
        match self {
            Topic::Weights => case.weights(),
            Topic::Float => case.float_parts(),
            Topic::Swing => case.swing_parts(),
            Topic::Strength => case.strength_parts(),
            Topic::Steering => rules::parts(case, Family::Steering),
            Topic::Fuel => rules::parts(case, Family::Fuel),
            Topic::Electrical => rules::parts(case, Family::Electrical),
            Topic::Controls => rules::parts(case, Family::Controls),
            Topic::Network => rules::parts(case, Family::Network),
            Topic::Trailer => rules::parts(case, Family::Trailer),
            Topic::Running => case.running_parts(),
            Topic::Trial => case.trial_parts(),
            Topic::Worth => case.worth_parts(),
        }
    }

    /// What costs many solutions, and is worked out for nobody else.
    fn sweeps(self, case: &Case) -> Vec<Sweep> {
        match self {
            Topic::Strength => case.strength_sweeps(),
            _ => Vec::new(),
        }
    }
}

pub(super) fn run(args: &WorkArgs) -> Result<ExitCode, CommandError> {
    let (catalog, loaded) = load(&args.catalog, &args.job)?;
    let rig = &loaded.rig;
    let case = loaded.case_by(side_by_side);
    let sweeps = args.topic.sweeps(&case);
    let mut parts = args.topic.parts(&case);
    parts.extend(sweep_part(&sweeps));
    let (topic, units) = (args.topic.word(), args.units.into());
    if let Some(file) = &args.html {
        let stamp = stamp(&args.job, &loaded, &catalog);
        let page = report::work_page(rig.title(), topic, &parts, &sweeps, units, &stamp);
        write(&[Paper::sealed(file, &page)])?;
        written_to(file, "")?;
        return Ok(ExitCode::SUCCESS);
    }
    print(&match args.format {
        Format::Text => report::work_text(rig.title(), topic, &parts, units),
        Format::Json => format!("{:#}\n", report::work_json(rig.title(), topic, &parts, units)),
    })?;
    Ok(ExitCode::SUCCESS)
}
