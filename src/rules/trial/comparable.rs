//! `trial/comparable`

use crate::rules::mend;
use uom::si::f64::Velocity;

use super::ready;
use crate::case::Case;
use crate::case::trial::{Compared, Measured};
use crate::job::{Sailed, Sea};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::reading::{mph, reading};
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// Whether both trials can be held against each other: runs that overlap, wind and sea alike.
    ///
    /// **Why.** A calm morning and a breezy afternoon differ by more than many repowers do.
    ///
    /// **Limit.** At least three runs each, over speeds that overlap; wind within 10 mph; the sea of the
    /// same word or the next.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** Sail again on a day like the first.
    COMPARABLE = Trial "trial/comparable", judge;
}

/// Common practice, no source, for both.
const WIND_WITHIN_MPH: f64 = 10.0;
const LEAST_RUNS: usize = 3;

fn judge(case: &Case) -> Judgement {
    let trials = ready(case)?;
    let Some((before, after)) = trials.both() else {
        return Ok(Finding::not_applicable(Text::from("One trial only: there is nothing to compare it with.")));
    };
    let weather = |trial: &Measured| Some((trial.said.wind.as_ref()?.value, trial.said.sea?));
    let (Some((wind, sea)), Some((later_wind, later_sea))) = (weather(before), weather(after)) else {
        return Ok(Finding::unmeasured(vec![Missing {
            measurement: reading!(Sailed.wind),
            of: Some("both trials, and the sea".to_owned()),
        }]));
    };
    let compared = Compared::of(before, after);
    let mut wrong = Vec::new();
    let fewest = before.runs.len().min(after.runs.len());
    if fewest < LEAST_RUNS {
        wrong.push(say!("one of them has {} runs only", fewest));
    }
    if compared.at_equal_speed.is_empty() && compared.at_equal_engine.is_empty() {
        wrong.push(Text::from("their runs do not overlap, in speed or in engine speed"));
    }
    let windier: Velocity = (later_wind - wind).abs();
    if windier.exceeds(Velocity::from_si(mph(WIND_WITHIN_MPH).si())) {
        wrong.push(say!("the wind differs by {}", Measure::of(windier)));
    }
    if sea_of(sea).abs_diff(sea_of(later_sea)) > 1 {
        wrong.push(say!("the sea was {} and {}", sea.words(), later_sea.words()));
    }
    if wrong.is_empty() {
        return Ok(Finding::new(
            Verdict::Pass,
            say!("Both trials can be compared: {} and {} runs, weather alike.", before.runs.len(), after.runs.len()),
        ));
    }
    Ok(Finding::new(
        Verdict::Warn,
        Text::from("The trials hardly compare: ").then(Text::join(wrong, "; ")).then(Text::from(".")),
    )
    .remedy(mend::look("Sail the trial after again, with the same runs, on a day like the first.")))
}

/// Its place among seas.
fn sea_of(sea: Sea) -> usize {
    Sea::ALL.iter().position(|other| *other == sea).unwrap_or_default()
}
