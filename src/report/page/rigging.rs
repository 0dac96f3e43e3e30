//! The rigging list.

use maud::{Markup, html};

use super::{anchor, prose};
use crate::report::Report;
use crate::report::rigging::{comes_out, to_buy};

/// What is to be bought, and what comes out.
pub(super) fn list(report: &Report) -> Markup {
    let (buy, out, units) = (to_buy(report), comes_out(report), report.units);
    html! {
        @if !buy.is_empty() || !out.is_empty() {
            section class="rigging" {
                h2 id="rigging" { "Rigging list" }
                @if !buy.is_empty() {
                    table {
                        caption { "To buy" }
                        thead { tr { th scope="col" { "what" } th scope="col" { "length and size" } th scope="col" { "from" } } }
                        tbody {
                            @for line in &buy {
                                tr {
                                    th scope="row" { (line.buy.what) }
                                    td { (prose(&line.buy.size, units)) }
                                    td { a href=(format!("#{}", anchor("finding", line.judged))) { (line.judged.rule.full_name()) } }
                                }
                            }
                        }
                    }
                }
                @if !out.is_empty() {
                    h3 id="comes-out" { "Comes out, and stays" }
                    ul { @for text in &out { li { (prose(text, units)) } } }
                }
            }
        }
    }
}
