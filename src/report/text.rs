//! The report as text: readable at 80 columns, with and without colour.

use anstyle::{AnsiColor, Style};

use super::{DEFERRAL, Report, counted};
use crate::catalog::{Catalog, Entry};
use crate::job::Sitting;
use crate::quantity::Units;
use crate::rules::rule::PARTS;
use crate::rules::{self, Judged, Rule, Verdict};
use crate::working::{Part, Table};
use crate::written::printable;

/// Columns of a report.
const WIDTH: usize = 80;
/// Indent of what belongs to a finding.
const INDENT: &str = "      ";

/// The whole report.
pub fn text(report: &Report) -> String {
    let rig = report.case.rig;
    let mut out = wrap(&rig.title, "");
    let invented = if rig.made_up {
        " · an invented scenario"
    } else {
        ""
    };
    out.push_str(&format!("{}{invented}\n", rig.sitting.words()));
    out.push_str(&format!("{}\n\n", "─".repeat(WIDTH)));
    out.push_str(&bold(&wrap(&report.headline(), "")));
    out.push_str(&wrap(&counts(report), ""));
    let missing = report.missing().len();
    if missing > 0 && rig.sitting != Sitting::Study {
        out.push_str(&wrap(
            &format!(
                "Unmeasured is not pass: {} missing. `sternknee tape` prints how to take each.",
                counted(missing, "reading is", "readings are")
            ),
            "",
        ));
    }
    if rig.sitting == Sitting::Study {
        section(&mut out, "answers", &mut report.answers(), report);
    }
    section(&mut out, "fails", &mut report.with(Verdict::Fail), report);
    section(&mut out, "warns", &mut report.with(Verdict::Warn), report);
    unmeasured(&mut out, report);
    section(&mut out, "passes", &mut report.with(Verdict::Pass), report);
    not_applicable(&mut out, report);
    list(
        &mut out,
        "assumed",
        report.assumed().iter().map(|text| text.show(report.units)),
    );
    list(
        &mut out,
        "cautions",
        report.cautions().into_iter().map(str::to_owned),
    );
    out.push('\n');
    out.push_str(&wrap(DEFERRAL, ""));
    out
}

fn counts(report: &Report) -> String {
    Verdict::ALL
        .iter()
        .map(|verdict| format!("{} {}", report.count(*verdict), verdict.word()))
        .collect::<Vec<_>>()
        .join(" · ")
}

fn section(
    out: &mut String,
    title: &str,
    judged: &mut dyn Iterator<Item = &Judged>,
    report: &Report,
) {
    let mut first = true;
    for one in judged {
        if first {
            out.push_str(&head(title));
            first = false;
        }
        finding(out, one, report);
    }
}

fn head(title: &str) -> String {
    format!("\n{}", bold(&format!("{}\n", title.to_uppercase())))
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

fn working_line(line: &str, meaning: Option<&str>) -> String {
    let mut out = String::new();
    if let Some(meaning) = meaning {
        out.push_str(&wrap(&format!("{meaning}:"), INDENT));
    }
    out.push_str(&fill(line, "        ", "          "));
    out
}

fn rows(table: &Table, units: Units) -> String {
    let mut cells: Vec<Vec<String>> = Vec::new();
    if table.heads.iter().any(|head| !head.is_empty()) {
        cells.push(table.heads.clone());
    }
    cells.extend(
        table
            .rows
            .iter()
            .map(|row| row.iter().map(|cell| one_line(&cell.show(units))).collect()),
    );
    let mut out = format!("{INDENT}{}:\n", printable(&table.title));
    let lines = columns(&cells);
    let room = WIDTH - INDENT.len() - 2;
    if lines.iter().all(|line| line.chars().count() <= room) {
        for line in lines {
            out.push_str(&format!("{INDENT}  {line}\n"));
        }
    } else {
        for row in &cells {
            out.push_str(&fill(&row.join(" · "), "        ", "          "));
        }
    }
    out
}

/// Cells laid out in columns as wide as their widest.
fn columns(cells: &[Vec<String>]) -> Vec<String> {
    let count = cells.iter().map(Vec::len).max().unwrap_or(0);
    let widths: Vec<usize> = (0..count)
        .map(|column| {
            cells
                .iter()
                .filter_map(|row| row.get(column))
                .map(|cell| cell.chars().count())
                .max()
                .unwrap_or(0)
        })
        .collect();
    cells
        .iter()
        .map(|row| {
            let line: Vec<String> = row
                .iter()
                .zip(&widths)
                .map(|(cell, width)| format!("{cell:<width$}"))
                .collect();
            line.join("  ").trim_end().to_owned()
        })
        .collect()
}

fn unmeasured(out: &mut String, report: &Report) {
    let study = report.case.rig.sitting == Sitting::Study;
    let waiting: Vec<&Judged> = report
        .with(Verdict::Unmeasured)
        .filter(|judged| !(study && judged.finding.is_answer()))
        .collect();
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
    let mut lines = report.with(Verdict::NotApplicable).peekable();
    if lines.peek().is_some() {
        out.push_str(&head("not applicable"));
    }
    for judged in lines {
        out.push_str(&format!("  {}\n", judged.rule.id));
        out.push_str(&wrap(&judged.finding.summary.show(report.units), INDENT));
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

/// The verdict's word, coloured where the output is a terminal that shows colour.
fn word(verdict: Verdict) -> String {
    let colour = match verdict {
        Verdict::Fail => AnsiColor::Red,
        Verdict::Warn => AnsiColor::Yellow,
        Verdict::Unmeasured => AnsiColor::Magenta,
        Verdict::Pass => AnsiColor::Blue,
        Verdict::NotApplicable => AnsiColor::BrightBlack,
    };
    let style = Style::new().bold().fg_color(Some(colour.into()));
    format!("{style}{}{style:#}", verdict.word())
}

fn bold(words: &str) -> String {
    let style = Style::new().bold();
    let (line, end) = words
        .strip_suffix('\n')
        .map_or((words, ""), |line| (line, "\n"));
    format!("{style}{line}{style:#}{end}")
}

/// What a job's own words may do to a report: neither move the cursor nor begin a line of their own.
pub(super) fn one_line(words: &str) -> String {
    printable(words).replace(['\n', '\t'], " ")
}

/// A paragraph wrapped to the report's width behind an indent.
pub(super) fn wrap(words: &str, indent: &str) -> String {
    fill(words, indent, indent)
}

/// A paragraph with a first and a following indent. A number stays on one line with its unit, and
/// nothing breaks at the hyphen of `26-1/2` or the stroke of a rule's id.
fn fill(words: &str, first: &str, following: &str) -> String {
    let options = textwrap::Options::new(WIDTH)
        .initial_indent(first)
        .subsequent_indent(following)
        .word_separator(textwrap::WordSeparator::AsciiSpace)
        .word_splitter(textwrap::WordSplitter::NoHyphenation);
    let mut kept = String::with_capacity(words.len());
    for (i, c) in words.char_indices() {
        let after_digit = words[..i].ends_with(|c: char| c.is_ascii_digit());
        let before_letter = words[i + c.len_utf8()..].starts_with(char::is_alphabetic);
        let inside = c == ' ' && after_digit && before_letter;
        kept.push(if inside { '\u{a0}' } else { c });
    }
    textwrap::fill(&one_line(&kept), options).replace('\u{a0}', " ") + "\n"
}

/// A labelled paragraph of a finding.
pub(super) fn block(label: &str, words: &str) -> String {
    let first = format!("{INDENT}{label}: ");
    fill(words, &first, "        ")
}

/// A whole working, part by part.
pub fn work_text(title: &str, topic: &str, parts: &[Part], units: Units) -> String {
    let mut out = format!("{}{topic}\n", wrap(title, ""));
    for part in parts {
        out.push_str(&head(&part.title));
        for table in &part.tables {
            out.push_str(&rows(table, units));
        }
        for line in part.sheet.lines() {
            out.push_str(&working_line(&line.show(units), line.meaning()));
        }
    }
    out
}

/// A rule's explanation, from its doc comment.
pub fn explain_rule(rule: &Rule) -> String {
    let mut out = format!("{}\n\n{}", bold(rule.id), wrap(&rule.summary(), ""));
    for name in PARTS {
        if let Some(part) = rule.part(name) {
            out.push_str(&format!("\n{}\n{}", bold(name), wrap(&part, "  ")));
        }
    }
    out
}

/// Every rule with what it checks.
pub fn rule_list() -> String {
    let mut out = String::new();
    for rule in rules::ALL {
        out.push_str(&format!(
            "{}\n{}",
            bold(rule.id),
            wrap(&rule.summary(), "  ")
        ));
    }
    out + "\n`sternknee rules ID` explains one: why, limit, source, what to do.\n"
}

/// Everything in a catalog that a job can name.
pub fn catalog_list(catalog: &Catalog) -> String {
    let mut out = catalog_entries("engine classes", &catalog.engines);
    out.push_str(&catalog_entries(
        "brackets and setback devices",
        &catalog.brackets,
    ));
    out.push_str(&catalog_entries("transom materials", &catalog.materials));
    out.push_str(&catalog_entries("bolt sizes", &catalog.tables.bolt_sizes));
    out.push_str(&catalog_entries("bolt grades", &catalog.tables.bolt_grades));
    out.push_str(&head("tables"));
    let tables = &catalog.tables;
    let citations = [
        tables
            .power_capacity
            .as_ref()
            .map(|table| (&table.citation, &table.edition)),
        tables
            .engine_weights
            .as_ref()
            .map(|table| (&table.citation, &table.edition)),
    ];
    for (citation, edition) in citations.into_iter().flatten() {
        out.push_str(&wrap(&format!("{citation} ({edition})"), "  "));
    }
    out + "\n`sternknee catalog show NAME` prints one with all its figures.\n"
}

/// One entry as it stands in its file: the form in which a job describes it in place.
pub fn catalog_entry(catalog: &Catalog, name: &str) -> Option<String> {
    let text = catalog.text_of(name)?;
    let mut out = String::new();
    for line in text.lines() {
        out.push_str(&printable(line.strip_prefix("        ").unwrap_or(line)));
        out.push('\n');
    }
    Some(out)
}

/// Names of a catalog's entries under a head, with what each is.
fn catalog_entries<T>(title: &str, entries: &[Entry<T>]) -> String {
    let mut out = head(title);
    let widest = entries
        .iter()
        .map(|entry| entry.name.chars().count())
        .max()
        .unwrap_or(0);
    for entry in entries {
        let first = format!("  {:<widest$}  ", printable(&entry.name));
        let rest = " ".repeat(widest + 4);
        out.push_str(&fill(&entry.about, &first, &rest));
    }
    out
}
