//! `work`: the whole working of one topic.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::builder::PossibleValue;
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
    #[arg(value_enum, default_value = TOPICS[0].word)]
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

/// Something that can be worked out.
#[derive(Clone, Copy)]
struct Topic {
    word: &'static str,
    about: &'static str,
    parts: fn(&Case) -> Vec<Part>,
    /// What costs many solutions, and is worked out for nobody else.
    sweeps: fn(&Case) -> Vec<Sweep>,
}

impl Topic {
    const fn of(word: &'static str, about: &'static str, parts: fn(&Case) -> Vec<Part>) -> Topic {
        Topic { word, about, parts, sweeps: |_| Vec::new() }
    }
}

/// All topics, a line each.
const TOPICS: &[Topic] = &[
    Topic::of("weights", "What comes off and goes on, item by item", |case| case.weights()),
    Topic::of("float", "How she floats, before and after, in every loading", |case| case.float_parts()),
    Topic::of("swing", "How the engines swing: chain, ranges, surroundings, every bound with its gap", |case| {
        case.swing_parts()
    }),
    Topic {
        sweeps: |case| case.strength_sweeps(),
        ..Topic::of("strength", "What the transom carries: loads, bolts, panel, core; studies of strength", |case| {
            case.strength_parts()
        })
    },
    Topic::of("steering", "How she is steered: turns, pull, cables, tie bar", |case| {
        rules::parts(case, Family::Steering)
    }),
    Topic::of("fuel", "How the engines are fed: suction, boiling, range", |case| rules::parts(case, Family::Fuel)),
    Topic::of("electrical", "Batteries, wires, fuses, a day's current", |case| rules::parts(case, Family::Electrical)),
    Topic::of("controls", "Levers, cables, tubes, what comes out", |case| rules::parts(case, Family::Controls)),
    Topic::of("network", "The instruments' network", |case| rules::parts(case, Family::Network)),
    Topic::of("trailer", "What she weighs on the road, and where", |case| rules::parts(case, Family::Trailer)),
    Topic::of(
        "running",
        "How she runs: the range before and after, the trial's say in it; studies of running",
        |case| case.running_parts(),
    ),
    Topic::of("trial", "The trials, run by run, and before against after", |case| case.trial_parts()),
    Topic::of("worth", "Costs, a season's fuel, when both are even", |case| case.worth_parts()),
];

impl ValueEnum for Topic {
    fn value_variants<'a>() -> &'a [Topic] {
        TOPICS
    }

    fn to_possible_value(&self) -> Option<PossibleValue> {
        Some(PossibleValue::new(self.word).help(self.about))
    }
}

pub(super) fn run(args: &WorkArgs) -> Result<ExitCode, CommandError> {
    let (catalog, loaded) = load(&args.catalog, &args.job)?;
    let rig = &loaded.rig;
    let case = loaded.case_by(side_by_side);
    let sweeps = (args.topic.sweeps)(&case);
    let mut parts = (args.topic.parts)(&case);
    parts.extend(sweep_part(&sweeps));
    let (topic, units) = (args.topic.word, args.units.into());
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
