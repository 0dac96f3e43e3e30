//! The measuring sheet that goes on a clipboard: what to measure, where, how, how closely, a box to
//! write in, what it decides; in the order of one walk round the boat.

use maud::{Markup, html};

use super::{figure, shell};
use crate::case::Case;
use crate::catalog::Catalog;
use crate::job::{self, Across, EngineGroup, EngineSpec, Hung, Job, Sitting};
use crate::quantity::{Dimensioned, Reading, capitalised};
use crate::reading::Declared;
use crate::report::drawings::places;
use crate::report::plain;
use crate::report::sheet::{Again, again, waiting};
use crate::rig;
use crate::rules::{self, Judged};

/// A line of the sheet.
struct Entry {
    measurement: &'static Declared,
    name: String,
    rules: Vec<&'static str>,
}

/// The sheet of a job: the readings that it lacks.
pub fn measuring_sheet(title: &str, judged: &[Judged]) -> String {
    let missing = waiting(judged).into_iter().map(|entry| Entry {
        measurement: entry.missing.measurement,
        name: entry.missing.name(),
        rules: entry.rules,
    });
    let again: Vec<Entry> = again(judged)
        .into_iter()
        .map(|Again { taken, rules, .. }| Entry {
            measurement: taken.declared,
            name: format!("again: {}", taken.name),
            rules,
        })
        .collect();
    let about = if again.is_empty() {
        "the readings that are still missing"
    } else {
        "what is missing, and what to take again"
    };
    page(&format!("Measuring sheet: {title}"), about, missing.chain(again).collect())
}

/// A blank sheet for a sitting: every reading that a job can hold.
pub fn blank_sheet(sitting: Sitting, catalog: &Catalog) -> String {
    let decided = decided(sitting, catalog);
    let entries = job::lines()
        .iter()
        .map(|measurement| Entry {
            measurement,
            name: measurement.words(),
            rules: decided
                .iter()
                .find(|(known, _)| known == measurement)
                .map(|(_, rules)| rules.clone())
                .unwrap_or_default(),
        })
        .collect();
    page(&format!("Measuring sheet, {}", sitting.words()), sitting.words(), entries)
}

/// What each reading decides: asked of the rules themselves, on boats of which nothing is known.
fn decided(sitting: Sitting, catalog: &Catalog) -> Vec<(&'static Declared, Vec<&'static str>)> {
    let unknown = |bracket: bool, places: Vec<Across>| EngineGroup {
        described: Some(EngineSpec::default()),
        bracket: bracket.then(|| Hung { described: Some(Default::default()), ..Hung::default() }),
        at: places,
        ..EngineGroup::default()
    };
    let metre = |value: f64| Reading::assumed(uom::si::f64::Length::from_si(value), "");
    let pair = || vec![Across::Port(metre(0.35)), Across::Starboard(metre(0.35))];
    let mut all: Vec<(&'static Declared, Vec<&'static str>)> = Vec::new();
    for on in
        [vec![], vec![unknown(false, vec![Across::Centre])], vec![unknown(false, pair())], vec![unknown(true, pair())]]
    {
        let job = Job { sitting, engines_on: on, ..Job::default() };
        // A job that names nothing of the catalog always resolves.
        let Ok(rig) = rig::resolve(&job, catalog) else {
            continue;
        };
        let judged = rules::judge(&Case::new(&rig));
        for entry in waiting(&judged) {
            let measurement = entry.missing.measurement;
            let rules = match all.iter_mut().find(|(known, _)| *known == measurement) {
                Some((_, rules)) => rules,
                None => {
                    all.push((measurement, Vec::new()));
                    match all.last_mut() {
                        Some((_, rules)) => rules,
                        None => continue,
                    }
                }
            };
            for rule in entry.rules {
                if !rules.contains(&rule) {
                    rules.push(rule);
                }
            }
        }
    }
    all
}

fn page(heading: &str, about: &str, mut entries: Vec<Entry>) -> String {
    entries.sort_by_key(|entry| job::order(entry.measurement));
    let numbered: Vec<(usize, &Declared)> =
        entries.iter().enumerate().map(|(i, entry)| (i + 1, entry.measurement)).collect();
    let body = html! {
        header {
            h1 { (heading) }
            p class="soft" { (about) ", in the order of one walk round the boat" }
            div class="sign" { p { "Boat" } p { "Date" } p { "Taken by" } }
        }
        main {
            p { b { "Before you start: " } "engine down and off, boat chocked, nobody under it." }
            @if entries.is_empty() {
                p { b { "No reading is missing." } }
            } @else {
                (figure(&places::drawing(&numbered)))
                p { "Write each reading with its unit, as the tape says: 25-1/4 in, 9 ft 8 in, 654 mm, 512 lb, 14 deg. Where it was read less closely, write how closely: ± 1/4 in." }
                (list(&entries))
            }
        }
    };
    shell::document(heading, heading, body)
}

fn list(entries: &[Entry]) -> Markup {
    html! {
        table class="sheet" {
            caption class="soft" { "Readings" }
            thead { tr { th scope="col" { "no." } th scope="col" { "what, where and how" } th scope="col" { "reading" } } }
            tbody {
                @for (i, entry) in entries.iter().enumerate() {
                    @let how = entry.measurement;
                    tr {
                        td class="place" { (i + 1) }
                        td {
                            p { span class="label" { (capitalised(&entry.name)) } }
                            p { (super::quoted_words(how.place())) ": " (super::quoted_words(how.how())) "." }
                            p class="where" {
                                @if let Some(closely) = how.closely { "To within " span class="n" { (closely) } ". " }
                                @if !places::is_placed(how) { "Not on the sketch. " }
                                @if entry.rules.is_empty() { "Taken where it applies." } @else { "Decides " (plain::names(&entry.rules)) "." }
                            }
                        }
                        td class="box" {}
                    }
                }
            }
        }
    }
}
