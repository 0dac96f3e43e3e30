//! Candidates side by side, told: a column each, a row for each family, then the figures.

use serde_json::{Value, json as value};

use super::chapter::{self, Chapter};
use super::drawings::{self, Drawing};
use super::measures::{limit_of, measure};
use super::page::{self, Stamp};
use super::{CLASS_NOT_ENGINE, DEFERRAL, counted, plain, text};
use crate::options::{Compared, FIGURES, Said, Yard, firmness, percent};
use crate::quantity::{Measure, Text, Units, say};
use crate::rules::{Family, Verdict};
use crate::working::Table;

/// Name and version of the document's shape.
pub const COMPARE_SCHEMA: &str = "sternknee-compare/1";

/// Columns of a table of text beside its row heads; more sets of engines stand in further tables.
const ABREAST: usize = 3;
/// What their drawings are called; beyond these none is drawn.
const DRAWN: [&str; 8] = [
    "candidate-a",
    "candidate-b",
    "candidate-c",
    "candidate-d",
    "candidate-e",
    "candidate-f",
    "candidate-g",
    "candidate-h",
];

/// Sets of engines that were judged.
pub struct Comparison<'a> {
    /// The boat in the yard.
    pub yard: &'a Yard<'a>,
    /// Each set.
    pub all: &'a [Compared],
    /// Units to speak.
    pub units: Units,
}

impl Comparison<'_> {
    fn title(&self) -> &str {
        self.yard.job.title.as_deref().unwrap_or("untitled job")
    }

    fn headline(&self) -> String {
        let fits = self.all.iter().filter(|one| one.count(Verdict::Fail) == 0);
        let names: Vec<String> =
            fits.filter_map(|one| self.all.iter().position(|other| std::ptr::eq(one, other))).map(letter).collect();
        let all = counted(self.all.len(), "set of engines", "sets of engines");
        match names.len() {
            0 => format!("{all} side by side: each fails a check."),
            some if some == self.all.len() => format!("{all} side by side: nothing fails with any of them."),
            _ => format!("{all} side by side: nothing fails with {}.", names.join(", ")),
        }
    }

    fn chapters(&self) -> Vec<Chapter> {
        let mut who = Chapter::of("who is who");
        who.entries = self.all.iter().enumerate().map(|(i, one)| vec![self.who(i, one), counts(one)]).collect();
        let mut tables = Chapter::of("side by side");
        for (block, some) in self.all.chunks(ABREAST).enumerate() {
            tables.tables.push(self.families(block * ABREAST, some));
        }
        for (block, some) in self.all.chunks(ABREAST).enumerate() {
            tables.tables.push(self.figures(block * ABREAST, some));
        }
        let mut governs = Chapter::of("what governs");
        governs.about = Some(Text::from("Of each set of engines what fails, warns or waits first in each family."));
        for (i, one) in self.all.iter().enumerate() {
            let grave = Family::ALL.iter().filter_map(|family| one.governs(*family));
            let grave = grave.filter(|said| said.verdict < Verdict::Pass);
            let mut lines = vec![say!("{} {}", letter(i), one.name.as_str())];
            lines
                .extend(grave.map(|said| {
                    say!("{} {}: ", said.verdict.word(), said.rule.full_name()).then(said.summary.clone())
                }));
            governs.entries.push(lines);
        }
        vec![who, tables, governs]
    }

    fn who(&self, i: usize, one: &Compared) -> Text {
        say!("{} {}", letter(i), one.name.as_str())
    }

    fn heads(&self, lead: &str, from: usize, some: &[Compared]) -> Vec<String> {
        std::iter::once(lead.to_owned()).chain((0..some.len()).map(|i| letter(from + i))).collect()
    }

    fn families(&self, from: usize, some: &[Compared]) -> Table {
        let heads = self.heads("family", from, some);
        let told = Family::ALL.iter().filter(|family| self.all.iter().any(|one| one.governs(**family).is_some()));
        let rows = told.map(|family| {
            let cells = some.iter().map(|one| one.governs(*family).map_or_else(|| Text::from("-"), cell));
            std::iter::once(Text::from(family.word())).chain(cells).collect()
        });
        table("the gravest finding of each family, and its room", &heads, rows.collect())
    }

    fn figures(&self, from: usize, some: &[Compared]) -> Table {
        let heads = self.heads("", from, some);
        let dash = || Text::from("-");
        let row = |name: &str, of: &dyn Fn(&Compared) -> Option<Measure>| -> Option<Vec<Text>> {
            self.all.iter().any(|one| of(one).is_some()).then(|| {
                let cells = some.iter().map(|one| of(one).map_or_else(dash, Text::from));
                std::iter::once(Text::from(name)).chain(cells).collect()
            })
        };
        let mut rows = Vec::new();
        rows.extend(row("power", &|one| one.power.map(Measure::of)));
        rows.extend(row("hangs on the transom", &|one| one.hung.map(Measure::of)));
        rows.extend(FIGURES.iter().filter_map(|(name, rule)| row(name, &|one| one.found(rule))));
        table("figures", &heads, rows)
    }

    fn drawing(&self, i: usize, one: &Compared) -> Option<Drawing> {
        let name = *DRAWN.get(i)?;
        let drawing =
            self.yard.look(&one.job, |case| drawings::stern_after(case, drawings::one(self.units))).ok()??;
        Some(drawing.renamed(name, format!("{} {}", letter(i), one.name)))
    }
}

/// A, B, C; beyond Z with a number.
fn letter(index: usize) -> String {
    let letter = char::from(b'A' + (index % 26) as u8);
    if index < 26 { letter.to_string() } else { format!("{letter}{}", index / 26) }
}

fn table(title: &str, heads: &[String], rows: Vec<Vec<Text>>) -> Table {
    let heads: Vec<&str> = heads.iter().map(String::as_str).collect();
    Table::new(title, &heads, rows)
}

/// Verdict, rule and room.
fn cell(said: &Said) -> Text {
    let name = plain::name(said.rule);
    let room = firmness(said).map(|room| format!(" {:+.0} %", percent(room))).unwrap_or_default();
    say!("{}: {}{}", said.verdict.word(), name, room)
}

fn counts(one: &Compared) -> Text {
    let counts: Vec<String> =
        Verdict::ALL.iter().map(|verdict| format!("{} {}", one.count(*verdict), verdict.word())).collect();
    Text::from(counts.join(" · ").as_str())
}

/// As text.
pub fn compare_text(comparison: &Comparison) -> String {
    let invented = if comparison.yard.job.made_up { " · an invented scenario" } else { "" };
    let mut out = text::wrap(comparison.title(), "");
    out.push_str(&format!("candidates side by side{invented}\n{}\n\n", text::rule()));
    out.push_str(&text::bold(&text::wrap(&comparison.headline(), "")));
    out.push_str(&chapter::as_text(&comparison.chapters(), comparison.units));
    out.push('\n');
    out.push_str(&text::wrap(CLASS_NOT_ENGINE, ""));
    out.push_str(&text::wrap(DEFERRAL, ""));
    out
}

/// As a page, with the stern of each from the side.
pub fn compare_page(comparison: &Comparison, stamp: &Stamp) -> String {
    let mut chapters = comparison.chapters();
    let mut drawn = Chapter::of("the stern with each of them");
    drawn.drawings = comparison.all.iter().enumerate().filter_map(|(i, one)| comparison.drawing(i, one)).collect();
    chapters.push(drawn);
    page::of_chapters(
        comparison.title(),
        "candidates side by side",
        comparison.yard.job.made_up,
        &comparison.headline(),
        &chapters,
        comparison.units,
        stamp,
    )
}

/// As one document.
pub fn compare_json(comparison: &Comparison) -> Value {
    let units = comparison.units;
    let said = |said: &Said| {
        value!({
            "rule": said.rule.id,
            "verdict": said.verdict.word(),
            "summary": said.summary.show(units),
            "found": said.found.map(|found| measure(found, units)),
            "limit": said.limit.map(|limit| limit_of(limit, units)),
            "room": firmness(said),
        })
    };
    let one = |one: &Compared| {
        let families: serde_json::Map<String, Value> = Family::ALL
            .iter()
            .filter_map(|family| Some((family.word().to_owned(), said(one.governs(*family)?))))
            .collect();
        let figures: serde_json::Map<String, Value> = FIGURES
            .iter()
            .filter_map(|(name, rule)| Some(((*name).to_owned(), measure(one.found(rule)?, units))))
            .collect();
        value!({
            "name": one.name,
            "power": one.power.map(|power| measure(Measure::of(power), units)),
            "hung": one.hung.map(|hung| measure(Measure::of(hung), units)),
            "families": families,
            "figures": figures,
            "findings": one.said.iter().map(said).collect::<Vec<_>>(),
        })
    };
    value!({
        "schema": COMPARE_SCHEMA,
        "title": comparison.title(),
        "made_up": comparison.yard.job.made_up,
        "headline": comparison.headline(),
        "candidates": comparison.all.iter().map(one).collect::<Vec<_>>(),
        "deferral": DEFERRAL,
    })
}
