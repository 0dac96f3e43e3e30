//! The margins of all findings in one chart: how much of its limit each one uses up, the worst first.

use maud::{Markup, html};

use super::kit::{Anchor, Drawing, FONT, ink, lettered, number, width};
use crate::quantity::{Measure, Units};
use crate::report::{Report, doubt, mark};
use crate::rules::{Judged, Verdict};

/// From here on a finding is near its limit. Common practice, no source.
const NEAR: f64 = 0.85;
/// A bar ends here, however much more of its limit is used.
const MOST: f64 = 1.6;
const HEAD: f64 = 34.0;
const EDGE: f64 = 6.0;

struct Row<'a> {
    judged: &'a Judged,
    share: Option<f64>,
    margin: Measure,
}

/// The chart, where any finding has a limit and something to hold against it.
pub(super) fn drawing(report: &Report, units: Units) -> Option<Drawing> {
    let mut rows: Vec<Row> = report
        .judged
        .iter()
        .filter_map(|judged| Some(Row { judged, share: judged.finding.used(), margin: judged.finding.margin()? }))
        .collect();
    if rows.is_empty() {
        return None;
    }
    let rank = |row: &Row| {
        let beyond = row.margin.si < 0.0;
        row.share.unwrap_or(if beyond { MOST } else { 0.0 })
    };
    rows.sort_by(|a, b| {
        (a.judged.finding.verdict.min(Verdict::Pass))
            .cmp(&b.judged.finding.verdict.min(Verdict::Pass))
            .then(rank(b).total_cmp(&rank(a)))
    });
    let words: Vec<String> =
        rows.iter().map(|row| doubt::figure(row.judged, "margin", units).unwrap_or_default()).collect();
    let beyond = rows.iter().filter(|row| row.margin.si < 0.0).count();
    let near = rows.iter().filter(|row| row.margin.si >= 0.0 && row.share.is_some_and(|share| share >= NEAR)).count();
    let make = |form: Form, narrow: Option<Box<Drawing>>| {
        let (size, body) = chart(&rows, &words, &form);
        Drawing {
            name: form.name,
            title: "How much of its limit each finding uses up".to_owned(),
            description: format!(
                "{} findings with a limit: {beyond} beyond it, {near} close to it, the others with room.",
                rows.len()
            ),
            notes: vec!["A bar that reaches the line stands at its limit; past the line it is beyond. Where readings must lie between two limits, the bar shows how far from the middle they lie. The number is the room that is left, negative beyond the limit.".to_owned()],
            size,
            scale: None,
            body,
            narrow,
        }
    };
    Some(make(WIDE, Some(Box::new(make(NARROW, None)))))
}

/// How the chart is laid out: words beside the bars, or above them on a narrow screen.
#[derive(Clone, Copy)]
struct Form {
    name: &'static str,
    paper: f64,
    row: f64,
    beside: bool,
}

const WIDE: Form = Form { name: "margins", paper: 660.0, row: 25.0, beside: true };
const NARROW: Form = Form { name: "margins-narrow", paper: 340.0, row: 40.0, beside: false };

fn chart(rows: &[Row], words: &[String], form: &Form) -> ((f64, f64), Markup) {
    let widest = |widths: &mut dyn Iterator<Item = f64>| widths.fold(0.0, f64::max);
    let ids = widest(&mut rows.iter().map(|row| width(&row.judged.rule.full_name(), FONT)));
    let margins = widest(&mut words.iter().map(|words| width(words, FONT))).max(width("margin", FONT));
    let (left, right) = if form.beside {
        (EDGE + 26.0 + ids + 8.0, form.paper - EDGE - margins - 16.0)
    } else {
        (EDGE + 4.0, form.paper - EDGE - 10.0)
    };
    let x = |share: f64| left + (right - left) * (share.min(MOST) / MOST);
    let high = HEAD + rows.len() as f64 * form.row + 10.0;
    let ground = format!("beyond-{}", form.name);
    let lines = rows
        .iter()
        .zip(words)
        .enumerate()
        .map(|(i, (row, words))| line(row, words, HEAD + i as f64 * form.row, form, &x));
    let body = html! {
        (mark::shapes(form.name))
        defs {
            pattern id=(ground) width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)" {
                rect width="7" height="7" fill="#f6e9e4" {}
                path d="M0 0v7" stroke="#e6cabf" stroke-width="2.4" {}
            }
        }
        rect x=(number(x(NEAR))) y=(number(HEAD - 4.0)) width=(number(x(1.0) - x(NEAR))) height=(number(high - HEAD)) fill="#fbf1d9" {}
        rect x=(number(x(1.0))) y=(number(HEAD - 4.0)) width=(number(x(MOST) - x(1.0))) height=(number(high - HEAD)) fill=(format!("url(#{ground})")) {}
        (scale_words(x(0.0), "0", Anchor::Start))
        (scale_words(x(0.5), "half of it", Anchor::Middle))
        (scale_words(x(1.0), "limit", Anchor::Middle))
        (scale_words(x(MOST), "beyond", Anchor::End))
        @if form.beside { (scale_words(form.paper - EDGE, "margin", Anchor::End)) }
        line x1=(number(x(1.0))) y1=(number(HEAD - 10.0)) x2=(number(x(1.0))) y2=(number(high - 8.0)) stroke=(ink::INK) stroke-width="1.6" {}
        @for line in lines { (line) }
    };
    ((form.paper, high), body)
}

fn scale_words(x: f64, words: &str, anchor: Anchor) -> Markup {
    lettered(x, 16.0, anchor, ink::SOFT, words)
}

fn line(row: &Row, words: &str, top: f64, form: &Form, x: &dyn Fn(f64) -> f64) -> Markup {
    let verdict = row.judged.finding.verdict;
    let colour = mark::colour(verdict);
    let middle = top + 25.0 / 2.0 - 3.0;
    let base = middle + FONT * 0.36;
    let bar = if form.beside { middle } else { middle + 17.0 };
    let id = row.judged.rule.id;
    html! {
        g data-rule=(id) data-share=[row.share.filter(|share| share.is_finite()).map(|share| format!("{share:.4}"))] {
            use href=(format!("#{}-{}", form.name, mark::class(verdict))) x=(number(EDGE)) y=(number(middle - 9.0)) width="18" height="18" {}
            text class="bare" x=(number(EDGE + 26.0)) y=(number(base)) { (row.judged.rule.full_name()) }
            @match row.share {
                Some(share) => {
                    rect x=(number(x(0.0))) y=(number(bar - 4.0)) width=(number(x(share) - x(0.0))) height="8" fill=(colour) {}
                    @if share > MOST {
                        path d=(format!("M{} {}l9 7-9 7z", number(x(MOST) - 1.0), number(bar - 7.0))) fill=(colour) {}
                    } @else {
                        circle cx=(number(x(share))) cy=(number(bar)) r="5" fill=(ink::PAPER) stroke=(colour) stroke-width="2.6" {}
                    }
                }
                // A limit of zero gives no scale: only the side of it is shown.
                None => {
                    @let at = if row.margin.si < 0.0 { 1.3 } else { 0.5 };
                    circle cx=(number(x(at))) cy=(number(bar)) r="5" fill=(ink::PAPER) stroke=(colour) stroke-width="2.6" stroke-dasharray="3 2" {}
                }
            }
            text x=(number(form.paper - EDGE)) y=(number(base)) class="bare" text-anchor="end" font-weight="600" { (words) }
        }
    }
}
