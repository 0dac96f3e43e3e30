//! The trial sheet: printed, taken along, filled in on the water.

use maud::{Markup, html};

use super::shell;
use crate::job::{Effort, Porpoises, Sea, Ventilates, Vibration};

/// Runs that the sheet has room for.
const RUNS: usize = 8;

/// The sheet of a job, for one trial.
pub fn trial_sheet(title: &str) -> String {
    let heading = format!("Trial sheet: {title}");
    let body = html! {
        header {
            h1 { (heading) }
            p class="soft" { "one sheet for each trial: before, with the old engines; after, with the new ones, loaded alike" }
            div class="sign" { p { "Boat" } p { "Date" } p { "Sailed by" } }
        }
        main {
            p { b { "Before you cast off: " } "cut-off lanyard on, nobody in the bow, a lookout beside the helmsman; full throttle in open water only, and never hard over at full speed." }
            div class="beside" {
                (words(&[("engines", "before / after"), ("persons aboard", ""), ("wind", "mph")]))
                (words(&[("fuel aboard", "gal"), ("gear aboard", "lb"), ("sailed both ways", "yes / no")]))
            }
            h2 { "Runs" }
            p { "Each both ways over the same water, half a minute each way, throttle untouched; the last at full throttle, trimmed for speed." }
            (runs())
            h2 { "From rest, and how she behaves" }
            (words(&[
                ("sea", &choices(Sea::ALL.iter().map(|one| one.words()))),
                ("until she planes", "s"),
                ("to 20 mph", "s"),
                ("turns lock to lock", ""),
                ("steering", &choices(Effort::ALL.iter().map(|one| one.words()))),
                ("propellers draw air", &choices(Ventilates::ALL.iter().map(|one| one.words()))),
                ("porpoises", &choices(Porpoises::ALL.iter().map(|one| one.words()))),
                ("vibration", &choices(Vibration::ALL.iter().map(|one| one.words()))),
            ]))
        }
    };
    shell::document(&heading, &heading, body)
}

fn choices<'w>(words: impl Iterator<Item = &'w str>) -> String {
    words.collect::<Vec<_>>().join(" / ")
}

/// Lines with a box each.
fn words(lines: &[(&str, &str)]) -> Markup {
    html! {
        table class="sheet trial" {
            tbody {
                @for (what, unit) in lines {
                    tr { th scope="row" { (what) } td class="where" { (unit) } td class="box" {} }
                }
            }
        }
    }
}

fn runs() -> Markup {
    html! {
        div class="scroll" role="group" tabindex="0" aria-label="Runs" {
            table class="sheet trial runs" {
                thead { tr {
                    th scope="col" { "no." } th scope="col" { "rpm" } th scope="col" { "speed there" } th scope="col" { "speed back" }
                    th scope="col" { "fuel, all engines" } th scope="col" { "engine trim" } th scope="col" { "tabs" }
                } }
                tbody {
                    @for number in 1..=RUNS {
                        tr { td class="place" { (number) } @for _ in 0..6 { td class="box" {} } }
                    }
                }
            }
        }
    }
}
