//! What stands where on a page.

use maud::{Markup, html};

use crate::job::Sitting;
use crate::report::rigging::{comes_out, to_buy};
use crate::report::{Report, readings, waiting};
use crate::rules::{Verdict, doubt_by_reading};

/// The contents, after the first sheet.
pub(super) fn list(report: &Report, photographs: bool, drawings: bool) -> Markup {
    let rig = report.case.rig;
    let study = rig.job.sitting == Sitting::Study;
    let outfits = !rig.before.is_empty() || !rig.after.is_empty();
    let parts = [
        (!study && !waiting(report.judged).is_empty(), "unmeasured", "What is still unmeasured"),
        (!doubt_by_reading(report.judged).is_empty(), "sure", "How sure this is"),
        (drawings, "drawings", "Drawings"),
        (report.count(Verdict::Fail) > 0, "what-fail", "What fails"),
        (report.count(Verdict::Warn) > 0, "what-warn", "What warns"),
        (report.count(Verdict::Pass) > 0, "what-pass", "What passes"),
        (!report.cautions().is_empty(), "cautions", "Cautions"),
        (!to_buy(report).is_empty() || !comes_out(report).is_empty(), "rigging", "Rigging list"),
        (outfits, "before-and-after", "Before and after"),
        (photographs, "photographs", "Photographs"),
        (true, "working", "Annex: working"),
        (!readings::readings(&rig.job).is_empty(), "readings", "Annex: readings used"),
        (!report.assumed().is_empty(), "assumed", "Annex: assumed"),
        (true, "sources", "Annex: sources"),
        (true, "words", "Annex: words"),
    ];
    html! {
        nav aria-label="Contents" {
            h2 id="contents" { "Contents" }
            ul { @for (_, id, title) in parts.iter().filter(|(there, ..)| *there) { li { a href=(format!("#{id}")) { (title) } } } }
            p class="soft" { "On paper the working is left out: unfold what shall be printed, or write the page with " b { "--explain" } "." }
        }
    }
}
