//! The report as text: readable at 80 columns, with and without colour.

mod layout;
mod lookup;
mod working;

use super::readings::readings;
use super::{DEFERRAL, Report, counted, rigging};
use crate::job::Sitting;
use crate::quantity::{Kind, Measure};
use crate::rules::{Judged, Verdict};
use layout::{INDENT, word};
pub(super) use layout::{block, bold, fill, head, one_line, rule, wrap};
pub use lookup::{catalog_entry, catalog_list, explain_rule, rule_list};
pub(super) use working::rows;
pub use working::work_text;
use working::working_line;

/// The whole report.
pub fn text(report: &Report) -> String {
    let rig = report.case.rig;
    let mut out = wrap(rig.title(), "");
    let invented = if rig.job.made_up { " · an invented scenario" } else { "" };
    out.push_str(&format!("{}{invented}\n", rig.job.sitting.words()));
    out.push_str(&format!("{}\n\n", rule()));
    out.push_str(&bold(&wrap(&report.headline(), "")));
    out.push_str(&wrap(&counts(report), ""));
    let missing = report.missing().len();
    if missing > 0 && rig.job.sitting != Sitting::Study {
        out.push_str(&wrap(
            &format!(
                "Unmeasured is not pass: {} missing. `sternknee tape` prints how to take each.",
                counted(missing, "reading is", "readings are")
            ),
            "",
        ));
    }
    if rig.job.sitting == Sitting::Study {
        section(&mut out, "answers", &mut report.answers(), report);
        studies(&mut out, report);
    }
    section(&mut out, "fails", &mut report.with(Verdict::Fail), report);
    section(&mut out, "warns", &mut report.with(Verdict::Warn), report);
    unmeasured(&mut out, report);
    section(&mut out, "passes", &mut report.with(Verdict::Pass), report);
    not_applicable(&mut out, report);
    list(&mut out, "rigging list: to buy", rigging::to_buy(report).iter().map(|line| line.in_words(report.units)));
    list(&mut out, "rigging list: comes out", rigging::comes_out(report).iter().map(|text| text.show(report.units)));
    if report.explain {
        readings_used(&mut out, report);
    }
    list(&mut out, "assumed", report.assumed().iter().map(|text| text.show(report.units)));
    list(&mut out, "cautions", report.cautions().into_iter().map(str::to_owned));
    out.push('\n');
    out.push_str(&wrap(DEFERRAL, ""));
    out
}

/// A figure of a study: angles and plain numbers with more digits than a gauge has.
fn precise(measure: &Measure, report: &Report) -> String {
    let (value, unit) = measure.in_unit(report.units);
    match measure.kind {
        Kind::Angle => format!("{value:.3} {unit}"),
        Kind::Ratio if value.abs() < 1e4 => format!("{value:.5}"),
        Kind::Ratio => format!("{value:.4e}"),
        _ => measure.show(report.units),
    }
}

/// Questions of running that the job puts outright, with their answers.
fn studies(out: &mut String, report: &Report) {
    for answer in report.case.running_studies() {
        out.push_str(&head(answer.title));
        for figure in &answer.figures {
            out.push_str(&wrap(&format!("{}: {}", figure.meaning, precise(&figure.shown, report)), "  "));
        }
        for note in &answer.notes {
            out.push_str(&wrap(&note.show(report.units), "  "));
        }
        if report.explain {
            for line in answer.sheet.lines() {
                out.push_str(&working_line(&line.show(report.units), line.meaning()));
            }
        }
    }
}

fn counts(report: &Report) -> String {
    Verdict::ALL
        .iter()
        .map(|verdict| format!("{} {}", report.count(*verdict), verdict.word()))
        .collect::<Vec<_>>()
        .join(" · ")
}

fn section(out: &mut String, title: &str, judged: &mut dyn Iterator<Item = &Judged>, report: &Report) {
    let mut first = true;
    for one in judged {
        if first {
            out.push_str(&head(title));
            first = false;
        }
        finding(out, one, report);
    }
}

fn finding(out: &mut String, judged: &Judged, report: &Report) {
    let (rule, finding) = (judged.rule, &judged.finding);
    let units = report.units;
    let short = finding.verdict == Verdict::Pass && !report.explain;
    out.push_str(&format!("  {}  {}\n", word(finding.verdict), rule.id));
    out.push_str(&wrap(&finding.summary.show(units), INDENT));
    let mut figures = Vec::new();
    if let Some(found) = finding.found {
        figures.push(format!("found {}", found.show(units)));
    }
    if let Some(limit) = finding.limit {
        figures.push(format!("limit {}", limit.show(units)));
    }
    if let Some(margin) = finding.margin() {
        figures.push(format!("margin {}", margin.show(units)));
    }
    if !figures.is_empty() {
        out.push_str(&wrap(&figures.join(" · "), INDENT));
    }
    if let Some(remedy) = &finding.remedy {
        out.push_str(&block("do", &remedy.show(units)));
    }
    if report.explain {
        for table in &finding.tables {
            out.push_str(&rows(table, units));
        }
        for line in finding.working.lines() {
            out.push_str(&working_line(&line.show(units), line.meaning()));
        }
    }
    out.push_str(&block("source", &rule.sources().join("; ")));
    if !short {
        out.push('\n');
    }
}

fn unmeasured(out: &mut String, report: &Report) {
    let study = report.case.rig.job.sitting == Sitting::Study;
    let waiting: Vec<&Judged> =
        report.with(Verdict::Unmeasured).filter(|judged| !(study && judged.finding.is_answer())).collect();
    if waiting.is_empty() {
        return;
    }
    out.push_str(&head(if study { "not asked" } else { "unmeasured" }));
    if study {
        let ids: Vec<&str> = waiting.iter().map(|judged| judged.rule.id).collect();
        out.push_str(&wrap(&ids.join(", "), "  "));
        return;
    }
    for judged in waiting {
        finding(out, judged, report);
    }
    while out.ends_with("\n\n") {
        out.pop();
    }
}

fn not_applicable(out: &mut String, report: &Report) {
    let all: Vec<&Judged> = report.with(Verdict::NotApplicable).collect();
    if !all.is_empty() {
        out.push_str(&head("not applicable"));
    }
    // Neighbours that say the same say it once: a family that was not asked about is one entry.
    for same in all.chunk_by(|one, next| one.finding.summary == next.finding.summary) {
        let ids: Vec<&str> = same.iter().map(|judged| judged.rule.id).collect();
        out.push_str(&wrap(&ids.join(", "), "  "));
        out.push_str(&wrap(&same[0].finding.summary.show(report.units), INDENT));
    }
}

/// Every reading, with where it is from.
fn readings_used(out: &mut String, report: &Report) {
    for group in readings(&report.case.rig.job) {
        let lines = group.rows.iter().map(|row| {
            let from = if row.basis.is_empty() { String::new() } else { format!(" ({})", row.basis) };
            format!("{}: {}{from}", row.name, row.value.show(report.units))
        });
        list(out, &format!("readings used: {}", group.of), lines);
    }
}

fn list(out: &mut String, title: &str, lines: impl Iterator<Item = String>) {
    let mut lines = lines.peekable();
    if lines.peek().is_some() {
        out.push_str(&head(title));
    }
    for line in lines {
        out.push_str(&fill(&line, "  - ", "    "));
    }
}
