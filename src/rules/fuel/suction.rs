//! `fuel/suction`

use super::{lines, told};
use crate::case::Case;
use crate::case::rigging::fuel::Fed;
use crate::job::rigging::{self, Chosen};
use crate::physics::rigging::fuel;
use crate::quantity::{Dimensioned, Measure, Style, Text, capitalised, inches, say};
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Table};
use uom::si::f64::{Length, Pressure};

rule! {
    /// Suction at each engine's pump at full throttle: hose with its fittings, lift, filter, anti-siphon valve and bulb.
    ///
    /// **Why.** An engine that draws hard starves at full throttle, runs lean, and its fuel boils sooner. A larger engine on
    /// the old hose is the usual way to get there.
    ///
    /// **Limit.** 2 inHg at the engine. Flow is the engine's rate at full throttle, else 0.1 US gal a horsepower and hour: the
    /// thirstiest main engine's, or the auxiliary's in a line that is told to feed that; gasoline of 15 °C.
    ///
    /// **Source.** Common practice, no source (the limit, the flow, devices without papers); pressure drop by Darcy and Weisbach,
    /// friction by 64/Re or Colebrook, fittings after Crane TP-410 (values from memory).
    ///
    /// **When it warns.** It warns over the limit, and names the hose that keeps it.
    SUCTION = Fuel "fuel/suction", judge;
}

/// Insides in which fuel hose is sold, in. Common practice, no source.
const SOLD_IN: [f64; 5] = [0.25, 0.3125, 0.375, 0.5, 0.625];

fn judge(case: &Case) -> Judgement {
    let rig = told(case)?;
    let lines = lines(case, rig)?;
    let rows = lines
        .iter()
        .map(|fed| {
            vec![
                Text::from(fed.name.as_str()),
                Measure::styled(fed.flow.value(), Style::Round).into(),
                shown(fed.suction.value()).into(),
            ]
        })
        .collect();
    let table = Table::new("fuel lines at full throttle", &["line", "flow", "suction at the engine"], rows);
    let mut worst: Option<Finding> = None;
    for fed in lines {
        of_line(rig, fed).keep_worse(&mut worst);
    }
    Ok(worst.map_or_else(|| Finding::not_applicable(Text::from("There is no fuel line.")), |worst| worst.table(table)))
}

/// A suction as pumps are rated for it.
fn shown(pressure: Pressure) -> Measure {
    Measure::styled(pressure, Style::Suction)
}

/// What is said of one line.
fn of_line(rig: &rigging::FuelRig, fed: Fed) -> Finding {
    let most = fuel::permitted_suction();
    let found = shown(fed.suction.value());
    let summary = say!(
        "{}: {} at full throttle, and the engine draws with {}.",
        capitalised(&fed.name),
        Measure::styled(fed.flow.value(), Style::Round),
        found
    );
    let finding = if fed.suction.value().exceeds(most) {
        let name = fed.name.as_str();
        match wider(&fed) {
            _ if fed.line.engines.unwrap_or(1) > 1 => Finding::new(Verdict::Warn, summary)
                .remedy(mend::first("Feed each engine by a line of its own first (“one feed”): half the flow draws less.", "fuel/one-feed")),
            Some(bore) => Finding::new(Verdict::Warn, summary)
                .remedy(mend::change(say!("Lay the {} of hose {} inside in the same run: it keeps {}.", name, Measure::tape(bore), shown(most)), wide(rig, fed.line, bore)))
                .buys(format!("fuel hose for gasoline, fire tested, for the {name}"), say!("{} inside, {}", Measure::tape(bore), length(&fed))),
            None => Finding::new(Verdict::Warn, summary).remedy(mend::yard(say!(
                "No common hose keeps the {} to {}: shorten its run, take out fittings, or fit a lift pump that the engine's maker allows.", name, shown(most)))),
        }
    } else {
        Finding::new(Verdict::Pass, summary)
    };
    finding.against(found, Limit::AtMost(shown(most))).working(fed.sheet)
}

fn length(fed: &Fed) -> Measure {
    let length = fed.line.length.as_ref().map_or(Length::from_si(0.0), |length| length.value);
    Measure::styled(length, Style::FeetInches)
}

/// The narrowest hose that keeps the limit in the same run.
fn wider(fed: &Fed) -> Option<Length> {
    SOLD_IN.into_iter().map(inches).find(|bore| {
        let line = fuel::Line { bore: *bore, ..fed.hydraulic };
        !fuel::suction(&mut Sheet::default(), &line, fed.flow.value()).value().exceeds(fuel::permitted_suction())
    })
}

/// The hose of this line, so wide inside.
fn wide(rig: &rigging::FuelRig, line: &rigging::FuelLine, bore: Length) -> Vec<Change> {
    let Some(index) = rig.lines.iter().position(|other| std::ptr::eq(other, line)) else { return Vec::new() };
    let fields = [("bore", mend::quoted(Measure::tape(bore)))];
    let hose = line.hose.spec().cloned().unwrap_or_default();
    Change::like(&format!("rigging.fuel.lines[{index}].hose"), &hose, &fields).to_vec()
}
