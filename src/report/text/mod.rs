//! The report as text: readable at 80 columns, with and without colour.

mod first;
mod layout;
mod lookup;
mod questions;
mod working;

use super::readings::readings;
use super::sources::Sources;
use super::{DEFERRAL, Report, causes, counted, doubt, plain, rank, rigging, waiting};
use crate::job::Sitting;
use crate::quantity::{Kind, Measure, Style};
use crate::rig::Missing;
use crate::rules::{Judged, Verdict};
use layout::{INDENT, word};
pub(super) use layout::{block, bold, fill, head, one_line, rule, wrap};
pub use lookup::{catalog_entry, catalog_list, explain_rule, rule_list};
pub(super) use working::rows;
pub use working::work_text;
use working::{given, working_line};

/// The report that is read first: the first screen, then what fails, warns and waits. With the working, all of it.
pub fn text(report: &Report) -> String {
    told(report, report.explain)
}

/// The whole report: what passes, what does not apply, what was assumed and every source too.
pub fn text_of_all(report: &Report) -> String {
    told(report, true)
}

/// A line a finding: what fails, warns and waits; of a whole report, what passes and does not apply too.
pub fn brief(report: &Report, whole: bool) -> String {
    let mut out = String::new();
    for verdict in Verdict::ALL {
        if !whole && matches!(verdict, Verdict::Pass | Verdict::NotApplicable) {
            continue;
        }
        let study = report.case.rig.job.sitting == Sitting::Study;
        let unasked = |judged: &&Judged| study && verdict == Verdict::Unmeasured && !judged.finding.is_answer();
        for judged in report.with(verdict).filter(|judged| whole || !unasked(judged)) {
            let words = one_line(&judged.finding.summary.show(report.units));
            out.push_str(&format!("{}  {}  {words}\n", word(verdict), judged.rule.full_name()));
        }
    }
    out
}

fn told(report: &Report, whole: bool) -> String {
    let rig = report.case.rig;
    let study = rig.job.sitting == Sitting::Study;
    let telling = Telling { report, whole, sources: Sources::of_report(report) };
    let mut out = first::screen(report);
    out.push_str(&questions::questions(report));
    if study {
        telling.section(&mut out, "answers", &mut report.answers());
        studies(&mut out, report);
    }
    telling.section(&mut out, "fails", &mut report.with(Verdict::Fail));
    telling.section(&mut out, "warns", &mut report.with(Verdict::Warn));
    telling.unmeasured(&mut out);
    telling.section(&mut out, "undecided: passes as read, not firmly", &mut doubt::undecided(report));
    let undecided: Vec<&str> = doubt::undecided(report).map(|judged| judged.rule.id).collect();
    if whole || study {
        let mut firm = report.with(Verdict::Pass).filter(|judged| !undecided.contains(&judged.rule.id));
        telling.section(&mut out, "passes", &mut firm);
    }
    if whole {
        not_applicable(&mut out, report);
    }
    if !study {
        studies(&mut out, report);
    }
    list(&mut out, "take again first", doubt::next(report).iter().map(|text| text.show(report.units)));
    list(&mut out, "rigging list: to buy", rigging::to_buy(report).iter().map(|line| line.in_words(report.units)));
    list(&mut out, "rigging list: comes out", rigging::comes_out(report).iter().map(|text| text.show(report.units)));
    if report.explain {
        readings_used(&mut out, report);
    }
    if whole {
        list(&mut out, "assumed", report.assumed().iter().map(|text| text.show(report.units)));
    }
    list(&mut out, "cautions", report.cautions().into_iter().map(str::to_owned));
    if whole {
        list_numbered(
            &mut out,
            "sources",
            telling.sources.list().filter_map(|(source, asked)| asked.then_some(source)),
        );
    } else {
        out.push('\n');
        out.push_str(&wrap(&left_out(report), ""));
    }
    out.push('\n');
    out.push_str(&wrap(DEFERRAL, ""));
    out
}

/// What is told on request, and by which word.
fn left_out(report: &Report) -> String {
    let passed = counted(report.count(Verdict::Pass), "check passes", "checks pass");
    let assumed = counted(report.assumed().len(), "thing was assumed", "things were assumed");
    format!(
        "{passed}, {assumed}: --all tells them, with the sources; --explain shows the working; --brief is a line a finding."
    )
}

fn invented(report: &Report) -> &'static str {
    if report.case.rig.job.made_up { " · an invented scenario" } else { "" }
}

/// A figure of a study: angles and plain numbers with more digits than a gauge has.
fn precise(measure: &Measure, report: &Report) -> String {
    let (value, unit) = measure.in_unit(report.units);
    match measure.kind {
        _ if measure.style == Style::Factor => measure.show(report.units),
        Kind::Angle => format!("{value:.3} {unit}"),
        Kind::Ratio if value.abs() < 1e4 => format!("{value:.5}"),
        Kind::Ratio => format!("{value:.4e}"),
        _ => measure.show(report.units),
    }
}

/// Questions that the job puts outright, with their answers.
fn studies(out: &mut String, report: &Report) {
    for answer in report.case.studies() {
        out.push_str(&head(answer.title));
        for figure in &answer.figures {
            out.push_str(&wrap(&format!("{}: {}", figure.meaning, precise(&figure.shown, report)), "  "));
        }
        for note in &answer.notes {
            out.push_str(&wrap(&note.show(report.units), "  "));
        }
        out.push_str(&wrap(&format!("Source: {}.", answer.source), "  "));
        if report.explain {
            for table in &answer.tables {
                out.push_str(&rows(table, report.units));
            }
            for line in answer.sheet.lines() {
                out.push_str(&working_line(&line.show(report.units), line.meaning()));
            }
        }
    }
}

fn counts(report: &Report) -> String {
    let applies = |verdict: &&Verdict| **verdict != Verdict::NotApplicable && report.count(**verdict) > 0;
    let counted = Verdict::ALL.iter().filter(applies);
    counted.map(|verdict| format!("{} {}", report.count(*verdict), verdict.word())).collect::<Vec<_>>().join(" · ")
}

/// How findings are told: all of it with sources by number, or what must be read.
struct Telling<'r> {
    report: &'r Report<'r>,
    whole: bool,
    sources: Sources,
}

impl Telling<'_> {
    fn section(&self, out: &mut String, title: &str, judged: &mut dyn Iterator<Item = &Judged>) {
        let told: Vec<&Judged> =
            judged.filter(|one| self.whole || causes::brought_on_by(self.report, one).is_none()).collect();
        if !told.is_empty() {
            out.push_str(&head(title));
        }
        let alike = |one: &Judged, next: &Judged| {
            let [one, next] = [&one.finding, &next.finding];
            !self.whole
                && one.verdict == Verdict::Unmeasured
                && one.verdict == next.verdict
                && one.summary == next.summary
        };
        for same in told.chunk_by(|one, next| alike(one, next)) {
            match same {
                [one] => self.finding(out, one),
                _ => {
                    out.push_str(&format!("  {}\n", word(Verdict::Unmeasured)));
                    out.push_str(&wrap(&named(same), INDENT));
                    out.push_str(&wrap(&same[0].finding.summary.show(self.report.units), INDENT));
                    out.push('\n');
                }
            }
        }
        while out.ends_with("\n\n") {
            out.pop();
        }
    }

    fn finding(&self, out: &mut String, judged: &Judged) {
        let (rule, finding, units) = (judged.rule, &judged.finding, self.report.units);
        let name = rule.full_name();
        let rank = match finding.verdict {
            Verdict::Fail | Verdict::Warn | Verdict::Pass => format!(" · {}", rank::of(judged).words()),
            _ => String::new(),
        };
        let lead = match finding.verdict {
            Verdict::Unmeasured if finding.is_answer() && !self.whole => String::new(),
            verdict => format!("{}{}  ", word(verdict), doubt::firmness(judged)),
        };
        out.push_str(&format!("  {lead}{name}{rank}\n"));
        out.push_str(&wrap(&finding.summary.show(units), INDENT));
        let figures: Vec<String> =
            doubt::figures(judged, units).into_iter().map(|(name, figure)| format!("{name} {figure}")).collect();
        if !figures.is_empty() {
            out.push_str(&wrap(&figures.join(" · "), INDENT));
        }
        if let Some(hangs) = doubt::hangs_on(judged) {
            out.push_str(&block("how sure", &hangs.show(units)));
        }
        if let Some(remedy) = &finding.remedy {
            out.push_str(&block("do", &remedy.show(units)));
        }
        let brings: Vec<String> =
            causes::brought_on(self.report, judged).iter().map(|judged| plain::name(judged.rule)).collect();
        if !brings.is_empty() {
            out.push_str(&block("brings on", &brings.join(", ")));
        }
        if self.whole {
            for other in &finding.each {
                out.push_str(&wrap(&other.show(units), INDENT));
            }
        }
        if self.report.explain {
            for table in &finding.tables {
                out.push_str(&rows(table, units));
            }
            out.push_str(&given(&finding.working, Some(rule.family), units));
            for line in finding.working.lines() {
                out.push_str(&working_line(&line.show(units), line.meaning()));
            }
        }
        if self.whole {
            let numbers: Vec<String> = self.sources.numbers(rule).iter().map(|n| format!("[{n}]")).collect();
            out.push_str(&block("sources", &numbers.join(" ")));
        }
        if finding.verdict != Verdict::Pass || self.report.explain {
            out.push('\n');
        }
    }

    /// What waits: in the whole report every finding, else those that say more than that, and the readings with what
    /// waits for each.
    fn unmeasured(&self, out: &mut String) {
        let report = self.report;
        let study = report.case.rig.job.sitting == Sitting::Study;
        let all: Vec<&Judged> =
            report.with(Verdict::Unmeasured).filter(|judged| !(study && judged.finding.is_answer())).collect();
        if study && self.whole && !all.is_empty() {
            out.push_str(&head("not asked"));
            out.push_str(&wrap(&named(&all), "  "));
        } else if self.whole {
            self.section(out, "unmeasured", &mut all.into_iter());
        } else if !study {
            let only_waits = |judged: &&&Judged| judged.finding.summary == Missing::awaited(&judged.finding.missing);
            self.section(out, "undecided", &mut all.iter().filter(|judged| !only_waits(judged)).copied());
            let lines = waiting(report.judged).into_iter().map(|entry| {
                let rules = report.judged.iter().filter(|judged| entry.rules.contains(&judged.rule.id));
                let names: Vec<String> = rules.map(|judged| plain::name(judged.rule)).collect();
                format!("{}: for {}", entry.missing.name(), names.join(", "))
            });
            list(out, "unmeasured is not pass: still to take", lines);
        }
    }
}

fn list_numbered<'l>(out: &mut String, title: &str, lines: impl Iterator<Item = &'l str>) {
    for (i, line) in lines.enumerate() {
        if i == 0 {
            out.push_str(&head(title));
        }
        out.push_str(&fill(line, &format!("{:>4}. ", i + 1), "      "));
    }
}

fn not_applicable(out: &mut String, report: &Report) {
    let all: Vec<&Judged> = report.with(Verdict::NotApplicable).collect();
    if !all.is_empty() {
        out.push_str(&head("not applicable"));
    }
    // Neighbours that say the same say it once: a family that was not asked about is one entry.
    for same in all.chunk_by(|one, next| one.finding.summary == next.finding.summary) {
        out.push_str(&wrap(&named(same), "  "));
        out.push_str(&wrap(&same[0].finding.summary.show(report.units), INDENT));
    }
}

/// What findings are called, each under its family: "Fuel: hose, endurance; Electrical: fuse".
fn named(all: &[&Judged]) -> String {
    let families = all.chunk_by(|one, next| one.rule.family == next.rule.family);
    let told = families.filter_map(|same| {
        let lead = same.first()?.rule.full_name();
        let others = same.iter().skip(1).map(|judged| judged.rule.name());
        Some(std::iter::once(lead).chain(others).collect::<Vec<_>>().join(", "))
    });
    told.collect::<Vec<_>>().join("; ")
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
