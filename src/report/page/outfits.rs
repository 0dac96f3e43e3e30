//! Before and after side by side, and what was found beside what had been planned.

use maud::{Markup, html};
use uom::si::f64::{Length, Mass, Power};

use super::{kept_together, prose, table};
use crate::job::{Planned, Sitting};
use crate::quantity::{Measure, Text, capitalised, say};
use crate::report::Report;
use crate::rig::{Engine, Outfit};

struct Row {
    name: &'static str,
    sides: [Option<Text>; 2],
}

/// Old beside new.
pub(super) fn before_and_after(report: &Report) -> Markup {
    let rig = report.case.rig;
    if rig.before.is_empty() && rig.after.is_empty() {
        return html! {};
    }
    let units = report.units;
    let sides = [&rig.before, &rig.after];
    let row = |name, of: &dyn Fn(&Outfit) -> Option<Text>| Row { name, sides: sides.map(of) };
    let rows = [
        row("engines", &|outfit| (!outfit.is_empty()).then(|| classes(outfit))),
        row("power of the main engines", &|outfit| power(outfit).map(|p| Measure::of(p).into())),
        row("all that hangs on the transom", &|outfit| hung(outfit).map(|m| Measure::of(m).into())),
        row("setback of the main engines", &|outfit| setback(outfit).map(|setback| Measure::tape(setback).into())),
    ];
    html! {
        section {
            h2 id="before-and-after" { "Before and after" }
            table {
                caption class="soft" { "What hangs aft" }
                thead { tr { td {} th scope="col" { "before" } th scope="col" { "after" } } }
                tbody {
                    @for row in rows.iter().filter(|row| row.sides.iter().any(Option::is_some)) {
                        tr {
                            th scope="row" { (row.name) }
                            @for side in &row.sides {
                                td { @match side { Some(text) => (prose(text, units)), None => span class="soft" { "not given" } } }
                            }
                        }
                    }
                }
            }
            @if let Ok(float) = report.case.float() {
                div class="working" {
                    h3 id="afloat" { "How she floats" }
                    p class="soft" { "Edges are given as heights above the water." }
                    @for loaded in &float.loadings {
                        details open[report.explain] {
                            summary { (capitalised(&loaded.name)) }
                            (table(&crate::working::Table { title: capitalised(&loaded.name), ..float.side_by_side(loaded) }, units))
                        }
                    }
                }
            }
            @for part in report.case.weights() {
                details {
                    summary { "Weights, " (part.title) }
                    @for rows in &part.tables { (table(rows, units)) }
                }
            }
        }
    }
}

fn classes(outfit: &Outfit) -> Text {
    let names = outfit.engines().map(|(_, engine)| say!("{}: {}", engine.label.as_str(), engine.class.as_str()));
    Text::join(names, "; ")
}

fn power(outfit: &Outfit) -> Option<Power> {
    let powers = outfit.main_power().ok()?;
    Some(powers.into_iter().map(|(_, power)| power).sum())
}

fn hung(outfit: &Outfit) -> Option<Mass> {
    if outfit.is_empty() {
        return None;
    }
    Some(outfit.hung().ok()?.into_iter().map(|(_, weight)| weight).sum())
}

fn setback(outfit: &Outfit) -> Option<Length> {
    let main = outfit.mains().first().copied()?;
    outfit
        .engines()
        .find(|(_, engine)| std::ptr::eq(*engine, main))
        .and_then(|(group, _)| group.setback().reading().map(|reading| reading.value))
}

/// What was found beside what had been planned.
pub(super) fn planned(report: &Report) -> Markup {
    let rig = report.case.rig;
    let Some(planned) = rig.job.planned.as_ref().filter(|_| rig.job.sitting == Sitting::AsFitted) else {
        return html! {};
    };
    let units = report.units;
    html! {
        section {
            h2 id="planned" { "Planned and fitted" }
            @if let Some(from) = &planned.from { p class="soft" { "Planned by: " (from) } }
            table {
                caption class="soft" { "The readings of the survey beside what had been planned" }
                thead { tr { td {} th scope="col" class="num" { "planned" } th scope="col" class="num" { "found" } th scope="col" class="num" { "difference" } } }
                tbody {
                    @for row in compared(planned, &rig.after, rig.job.transom.upper_holes().reading().map(|r| r.value)) {
                        tr {
                            th scope="row" { (row.name) }
                            td class="num" { (kept_together(row.planned, units)) }
                            td class="num" { @match row.found { Some(found) => (kept_together(found, units)), None => span class="soft" { "not taken" } } }
                            td class="num" { @if let Some(off) = row.difference { (kept_together(off, units)) } }
                        }
                    }
                }
            }
        }
    }
}

struct Compared {
    name: &'static str,
    planned: Measure,
    found: Option<Measure>,
    difference: Option<Measure>,
}

fn compared(planned: &Planned, after: &Outfit, upper_holes: Option<Length>) -> Vec<Compared> {
    let mains = after.mains();
    let first: Option<&Engine> = mains.first().copied();
    let mut rows = Vec::new();
    let mut put = |name, planned: Option<Measure>, found: Option<Measure>| {
        if let Some(planned) = planned {
            rows.push(Compared {
                name,
                planned,
                found,
                difference: found.map(|found| Measure { si: found.si - planned.si, ..planned }),
            });
        }
    };
    let ratio = |count: u8| Measure::of(uom::si::f64::Ratio::from(f64::from(count)));
    put(
        "power of the main engines",
        planned.power.as_ref().map(|power| Measure::of(power.value)),
        power(after).map(Measure::of),
    );
    put(
        "all that hangs on the transom",
        planned.hung_weight.as_ref().map(|weight| Measure::of(weight.value)),
        hung(after).map(Measure::of),
    );
    put(
        "shaft length",
        planned.shaft.as_ref().map(|shaft| Measure::tape(shaft.value)),
        first.and_then(|engine| engine.shaft_name).map(Measure::tape),
    );
    put(
        "holes up",
        planned.holes_up.map(ratio),
        first.and_then(|engine| engine.holes_up.reading().copied()).map(ratio),
    );
    put(
        "setback",
        planned.setback.as_ref().map(|setback| Measure::tape(setback.value)),
        setback(after).map(Measure::tape),
    );
    put(
        "between centres",
        planned.centre_distance.as_ref().map(|apart| Measure::tape(apart.value)),
        apart(&mains).map(Measure::tape),
    );
    put(
        "upper bolt holes below the top",
        planned.upper_holes.as_ref().map(|below| Measure::tape(below.value)),
        upper_holes.map(Measure::tape),
    );
    rows
}

/// Least distance between the centres of neighbours.
fn apart(mains: &[&Engine]) -> Option<Length> {
    let mut places: Vec<Length> = mains.iter().map(|engine| engine.y).collect();
    places.sort_by(|a, b| a.value.total_cmp(&b.value));
    places.windows(2).map(|pair| pair[1] - pair[0]).min_by(|a, b| a.value.total_cmp(&b.value))
}
