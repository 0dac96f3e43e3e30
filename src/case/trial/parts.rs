//! The trials as tables, for `work` and the page.

use uom::si::f64::{AngularVelocity, Velocity, VolumeRate};

use super::{Compared, Measured, Row, Trials};
use crate::case::Case;
use crate::physics::trial::Change;
use crate::quantity::{Dimensioned, DistancePerVolume, Measure, Style, Text, say};
use crate::working::{Part, Sheet, Table};

impl Case<'_> {
    /// The working of the trials.
    pub fn trial_parts(&self) -> Vec<Part> {
        let Some(trials) = self.trial() else {
            let none = Text::from("The job tells no trial: trial: (before: (runs: [...]), after: (runs: [...])).");
            return vec![Part::said("trials", none)];
        };
        let mut parts = Vec::new();
        for (title, trial) in [("trial before", &trials.before), ("trial after", &trials.after)] {
            if let Some(trial) = trial {
                parts.push(runs(title, trial));
            }
        }
        if let Some((before, after)) = trials.both() {
            parts.push(compared(&Compared::of(before, after)));
        }
        parts
    }
}

/// A measure, or a dash where there is none.
fn cell<Q: Dimensioned>(value: Option<Q>, style: Style) -> Text {
    value.map_or(Text::from("–"), |value| Text::from(Measure::styled(value, style)))
}

fn runs(title: &str, trial: &Measured) -> Part {
    let rows = trial.runs.iter().map(|run| {
        vec![
            cell(run.engine, Style::Plain),
            cell(run.speed.map(|speed| speed.value), Style::Plain),
            cell(run.speed.map(|speed| speed.doubt), Style::Plain),
            cell(run.current, Style::Plain),
            cell(run.fuel, Style::Plain),
            cell(run.economy, Style::Plain),
            cell(run.range, Style::Distance),
            cell(run.slip, Style::Plain),
            Text::from(if run.full_throttle { "full throttle" } else { "" }),
        ]
    });
    let heads = ["engine", "speed", "give or take", "current", "fuel", "for fuel", "range", "slip", ""];
    let mut sheet = Sheet::default();
    if let Some(damage) = trial.damage.as_ref().and_then(|damage| damage.told()) {
        sheet.remark(damage);
    }
    if let Some(best) = trial.best_cruise() {
        let at = say!(" at ").then(cell(best.speed.map(|speed| speed.value), Style::Plain));
        sheet.remark(
            say!("Best cruise of the runs: ").then(cell(best.economy, Style::Plain)).then(at).then(Text::from(".")),
        );
        sheet.append(best.sheet.clone());
    }
    Part { title: title.to_owned(), tables: vec![Table::new("run by run", &heads, rows.collect())], sheet }
}

/// A change in percent with its doubt.
pub(in crate::case) fn percent(change: &Change) -> Text {
    let sign = if change.part < 0.0 { "−" } else { "+" };
    say!("{} {} %", sign, format!("{:.1} ± {:.1}", 100.0 * change.part.abs(), 100.0 * change.doubt))
}

fn compared(compared: &Compared) -> Part {
    let cells = |change: &Option<Change>, show: &dyn Fn(f64) -> Measure| match change {
        Some(change) => vec![Text::from(show(change.before)), Text::from(show(change.after)), percent(change)],
        None => vec![Text::from("–"); 3],
    };
    let speed = |si| Measure::of(Velocity::from_si(si));
    let fuel = |si| Measure::of(VolumeRate::from_si(si));
    let economy = |si| Measure::of(DistancePerVolume::from_si(si));
    let engine = |rows: &[Row]| {
        let rows = rows.iter().map(|row| {
            let mut cells_of = vec![Text::from(Measure::of(AngularVelocity::from_si(row.along)))];
            cells_of.extend(cells(&row.speed, &speed));
            cells_of.extend(cells(&row.fuel, &fuel));
            cells_of
        });
        let heads = ["engine", "speed before", "after", "change", "fuel before", "after", "change"];
        Table::new("at equal engine speed", &heads, rows.collect())
    };
    let equal = |rows: &[Row]| {
        let rows = rows.iter().map(|row| {
            let mut cells_of = vec![Text::from(Measure::of(Velocity::from_si(row.along)))];
            cells_of.extend(cells(&row.fuel, &fuel));
            cells_of.extend(cells(&row.economy, &economy));
            cells_of
        });
        let heads = ["speed", "fuel before", "after", "change", "for fuel before", "after", "change"];
        Table::new("at equal speed", &heads, rows.collect())
    };
    let each = |name: &str, change: &Option<Change>, show: &dyn Fn(f64) -> Measure| {
        let mut row = vec![Text::from(name)];
        row.extend(cells(change, show));
        row
    };
    let best = vec![each("greatest speed", &compared.top, &speed), each("farthest for fuel", &compared.best, &economy)];
    Part {
        title: "before against after".to_owned(),
        tables: vec![
            engine(&compared.at_equal_engine),
            equal(&compared.at_equal_speed),
            Table::new("each at its best", &["", "before", "after", "change"], best),
        ],
        ..Part::default()
    }
}

impl Trials {
    /// What was assumed of the runs, in sentences.
    pub fn assumed(&self) -> Vec<Text> {
        let both = [&self.before, &self.after].into_iter().flatten();
        both.flat_map(|trial| trial.assumed.iter().cloned()).collect()
    }
}
