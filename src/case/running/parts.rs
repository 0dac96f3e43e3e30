//! How she runs as tables, for `work` and the page.

use super::Predicted;
use crate::case::Case;
use crate::physics::matched::{Fit, Steady};
use crate::physics::propeller::write_square_to_shaft;
use crate::physics::running::write;
use crate::quantity::{Dimensioned, DistancePerVolume, Measure, Text, say};
use crate::working::{Part, Sheet, Table, Term};
use uom::si::f64::Ratio;

/// Every so many miles an hour a line of the range is told.
const EVERY: usize = 2;

impl Case<'_> {
    /// The working of how she runs, and of questions of running put outright.
    pub fn running_parts(&self) -> Vec<Part> {
        let mut parts = self.running_study_parts();
        match self.running() {
            Some(runs) => {
                parts.extend(runs.fit.as_ref().map(fitted));
                for (title, side) in [("before", &runs.before), ("after", &runs.after)] {
                    parts.push(match side {
                        Ok(predicted) => range(title, predicted),
                        Err(no) => Part::said(title, no.words()),
                    });
                }
            }
            None if parts.is_empty() => {
                let none = Text::from("The job does not ask how she runs: running: () does.");
                parts.push(Part::said("how she runs", none));
            }
            None => {}
        }
        parts
    }
}

fn fitted(fit: &Fit) -> Part {
    let mut sheet = Sheet::default();
    sheet.remark(say!(
        "By least squares from {} runs of the trial before: drag {} ± {} of the reckoned one, pitch at work {} ± {} of the marked one.",
        fit.used,
        format!("{:.3}", fit.factors.drag),
        format!("{:.3}", fit.doubts[0] * fit.factors.drag),
        format!("{:.3}", fit.factors.pitch),
        format!("{:.3}", fit.doubts[1] * fit.factors.pitch)
    ));
    for (knows, what) in [(fit.knows_drag(), "drag"), (fit.knows_pitch(), "pitch")] {
        if !knows {
            sheet.remark(say!("The runs hardly say anything of her {}: it rests on what boats commonly have.", what));
        }
    }
    sheet.remark(say!(
        "What is left of a run is {} times its doubt. What no trial before can say: how the new propellers' marks compare with the old ones', and what the new engines' weight does beyond the reckoning.",
        format!("{:.1}", fit.misfit.sqrt())
    ));
    let miss =
        |miss: &Option<f64>| miss.map_or(Text::from("–"), |miss| say!("{} %", format!("{:+.1}", 100.0 * miss)));
    let rows = fit
        .engine_misses
        .iter()
        .zip(&fit.thrust_misses)
        .enumerate()
        .map(|(i, (engine, thrust))| vec![say!("{}", i + 1), miss(engine), miss(thrust)]);
    let table = Table::new(
        "what is left, run by run",
        &["run", "engine speed reckoned over read", "thrust over drag at full throttle"],
        rows.collect(),
    );
    Part { title: "what the trial before says".to_owned(), tables: vec![table], sheet }
}

/// The table of the range.
pub(super) fn table(title: &str, points: &[Steady]) -> Table {
    let rows = points.iter().step_by(EVERY).map(row).collect();
    Table::new(
        title,
        &[
            "speed",
            "trim",
            "begins to porpoise at",
            "drag",
            "thrust at full throttle",
            "engine",
            "slip",
            "fuel",
            "for fuel",
        ],
        rows,
    )
}

fn row(point: &Steady) -> Vec<Text> {
    let held = point.is_held();
    let economy = DistancePerVolume::from_si(point.speed.si() / point.fuel.si());
    let or_dash = |measure: Measure| if held { Text::from(measure) } else { Text::from("–") };
    vec![
        Text::from(Measure::of(point.speed)),
        point.trim().map_or(Text::from("–"), |trim| Text::from(Measure::of(trim))),
        point
            .porpoises
            .map_or(Text::from("–"), |limit| say!("{} to {}", Measure::of(limit.from), Measure::of(limit.to))),
        Text::from(Measure::of(point.thrust)),
        Text::from(Measure::of(point.available)),
        or_dash(Measure::of(point.engine)),
        or_dash(Measure::of(point.slip)),
        or_dash(Measure::of(point.fuel)),
        if point.fuel.si() > 0.0 { or_dash(Measure::of(economy)) } else { Text::from("–") },
    ]
}

fn range(title: &str, predicted: &Predicted) -> Part {
    let mut sheet = Sheet::default();
    let built = &predicted.built;
    sheet.remark(say!("In the loading `{}`.", built.loading.as_str()));
    for limit in predicted.limits() {
        sheet.remark(limit);
    }
    match &predicted.top {
        Some(top) => sheet.remark(say!(
            "Greatest speed {} ± {}, the engines at {} ± {}.",
            Measure::of(top.speed),
            Measure::of(top.speed_doubt),
            Measure::of(top.engine),
            Measure::of(top.engine_doubt)
        )),
        None => sheet.remark(Text::from("Her greatest speed lies outside what the method tells.")),
    }
    if let Some(up) = &predicted.getting_up {
        for (to, time) in [("plane", up.to_plane), ("20 mph", up.to_speed)] {
            if let Some([from, until]) = time {
                sheet.remark(say!(
                    "From rest at full throttle to {}: {} to {}, drag below the method's range between none and what it is at its lower end.",
                    to,
                    Measure::of(from),
                    Measure::of(until)
                ));
            }
        }
    }
    if let Some(at) = predicted.range.top.as_ref().or_else(|| predicted.range.points.last()) {
        let (_, beside) = built.craft.running(at.speed).unwrap_or((at.running, Default::default()));
        let asked = crate::physics::running::Planing { speed: at.speed, beside, ..built.craft.planing };
        sheet.remark(say!("At {}:", Measure::of(at.speed)));
        let one = write_square_to_shaft(&mut sheet, &built.craft.sized(), &at.turning);
        let engines = Term::constant(Ratio::from_si(f64::from(built.craft.propulsion.engines)));
        sheet.set("Nψ", "of all propellers", engines * one);
        write(&mut sheet, &asked, &at.running);
    }
    Part {
        title: title.to_owned(),
        tables: vec![table(&format!("over the range, {title}"), &predicted.range.points)],
        sheet,
    }
}
