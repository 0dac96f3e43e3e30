//! Every line of working, worked out again from what is printed of it: over the demos and every boat of the corpus.

use std::collections::BTreeMap;
use std::path::Path;

use sternknee::case::Case;
use sternknee::quantity::{Kind, UNITS, Units};
use sternknee::rules;
use sternknee::working::{Line, Part, Sheet};

use super::{DEMOS, common, demo};

/// A value read off the paper: coherent SI units, and half of its last digit in them.
#[derive(Clone, Copy, Debug)]
struct Read {
    value: f64,
    half: f64,
}

/// A reader of one printed line: numbers with units, the four operations, powers, functions.
struct Reader<'t> {
    rest: &'t str,
}

impl Reader<'_> {
    fn all(words: &str) -> Result<f64, String> {
        let mut reader = Reader { rest: words };
        let value = reader.sum()?;
        if reader.rest.is_empty() { Ok(value) } else { Err(format!("`{}` is left", reader.rest)) }
    }

    fn takes(&mut self, words: &str) -> bool {
        match self.rest.strip_prefix(words) {
            Some(rest) => {
                self.rest = rest;
                true
            }
            None => false,
        }
    }

    fn sum(&mut self) -> Result<f64, String> {
        let mut value = self.product()?;
        loop {
            if self.takes(" + ") {
                value += self.product()?;
            } else if self.takes(" − ") {
                value -= self.product()?;
            } else {
                return Ok(value);
            }
        }
    }

    fn product(&mut self) -> Result<f64, String> {
        let mut value = self.power()?;
        loop {
            if self.takes(" · ") {
                value *= self.power()?;
            } else if self.takes(" / ") {
                value /= self.power()?;
            } else {
                return Ok(value);
            }
        }
    }

    fn power(&mut self) -> Result<f64, String> {
        let base = self.one()?;
        Ok(if self.takes("^") { base.powf(self.one()?) } else { base })
    }

    fn one(&mut self) -> Result<f64, String> {
        if self.takes("(") {
            let value = self.sum()?;
            return if self.takes(")") { Ok(value) } else { Err(format!("no `)` before `{}`", self.rest)) };
        }
        if self.takes("π") {
            return Ok(std::f64::consts::PI);
        }
        for name in [
            "tan",
            "cos",
            "sin",
            "exp",
            "sqrt",
            "cbrt",
            "abs",
            "round",
            "next multiple",
            "least of",
            "greatest of",
            "root of squares of",
        ] {
            if self.takes(&format!("{name}(")) {
                let first = self.sum()?;
                let second = if self.takes(", ") { Some(self.sum()?) } else { None };
                if !self.takes(")") {
                    return Err(format!("no `)` before `{}`", self.rest));
                }
                return match (name, second) {
                    ("tan", None) => Ok(first.tan()),
                    ("cos", None) => Ok(first.cos()),
                    ("sin", None) => Ok(first.sin()),
                    ("exp", None) => Ok(first.exp()),
                    ("sqrt", None) => Ok(first.sqrt()),
                    ("cbrt", None) => Ok(first.cbrt()),
                    ("abs", None) => Ok(first.abs()),
                    ("round", None) => Ok((first + 0.5 + 1e-9).floor()),
                    ("next multiple", Some(step)) => Ok((first / step - 1e-9).ceil() * step),
                    ("least of", Some(other)) => Ok(first.min(other)),
                    ("greatest of", Some(other)) => Ok(first.max(other)),
                    ("root of squares of", Some(other)) => Ok(first.hypot(other)),
                    _ => Err(format!("{name} of so many")),
                };
            }
        }
        self.number().map(|read| read.value)
    }

    /// `9 ft 8-1/2 in`, `-12-7/8 in`, `1,250.5 lb`, `0.42`, `3.0 %`.
    fn number(&mut self) -> Result<Read, String> {
        let first = self.figure()?;
        if self.rest.starts_with(" ft ") && self.rest[4..].starts_with(|c: char| c.is_ascii_digit()) {
            self.rest = &self.rest[4..];
            let inches = self.figure()?;
            if !self.takes(" in") {
                return Err(format!("no inches before `{}`", self.rest));
            }
            let sign = if first.value < 0.0 { -1.0 } else { 1.0 };
            return Ok(Read { value: (first.value * 12.0 + sign * inches.value) * 0.0254, half: inches.half * 0.0254 });
        }
        if self.takes(" %") {
            return Ok(Read { value: first.value / 100.0, half: first.half / 100.0 });
        }
        if self.takes(" K") {
            return Ok(first);
        }
        let unit = UNITS
            .iter()
            .filter(|unit| unit.kind != Kind::Ratio)
            .filter(|unit| {
                let behind = self.rest.strip_prefix(' ').and_then(|rest| rest.strip_prefix(unit.name));
                behind.is_some_and(|behind| behind.is_empty() || behind.starts_with([' ', ')', ',', '^']))
            })
            .max_by_key(|unit| unit.name.len());
        match unit {
            Some(unit) => {
                self.rest = &self.rest[1 + unit.name.len()..];
                Ok(Read { value: first.value * unit.factor + unit.zero(), half: first.half * unit.factor })
            }
            None => Ok(first),
        }
    }

    fn figure(&mut self) -> Result<Read, String> {
        let length =
            |words: &str| words.find(|c: char| !c.is_ascii_digit() && c != ',' && c != '.').unwrap_or(words.len());
        let negative = self.takes("-");
        let mut end = length(self.rest);
        // A comma with a blank behind it parts two numbers.
        if self.rest[..end].ends_with(',') {
            end -= 1;
        }
        let plain = self.rest[..end].replace(',', "");
        let mut value: f64 = plain.parse().map_err(|_| format!("no number at `{}`", self.rest))?;
        let mut half = 0.5 * 0.1_f64.powi(plain.split_once('.').map_or(0, |(_, decimals)| decimals.len() as i32));
        self.rest = &self.rest[end..];
        let fraction = |words: &str| -> Option<(f64, f64, usize)> {
            let over = length(words);
            let under = words[over..].strip_prefix('/')?;
            let last = length(under);
            Some((words[..over].parse().ok()?, under[..last].parse().ok()?, over + 1 + last))
        };
        if let Some((over, under, long)) = self.rest.strip_prefix('-').and_then(fraction) {
            value += over / under;
            half = 1.0 / 32.0;
            self.rest = &self.rest[1 + long..];
        } else if let Some(under) =
            self.rest.strip_prefix('/').filter(|under| under.starts_with(|c: char| c.is_ascii_digit()))
        {
            let last = length(under);
            value /= under[..last].parse::<f64>().map_err(|_| "no fraction".to_owned())?;
            half = 1.0 / 32.0;
            self.rest = &under[last..];
        }
        Ok(Read { value: if negative { -value } else { value }, half })
    }
}

/// The result, and half of its last digit; a factor's worth is no part of it.
fn result(words: &str) -> Result<Read, String> {
    let mut reader = Reader { rest: words.split(" ± ").next().unwrap_or(words) };
    let mut read = reader.number()?;
    if words.contains("in") && !words.contains('.') && (words.contains('/') || words.ends_with(" in")) {
        read.half = read.half.min(0.0254 / 32.0);
    }
    if reader.rest.is_empty() { Ok(read) } else { Err(format!("`{}` is left of `{words}`", reader.rest)) }
}

/// What is wrong with a line, where anything is; nothing for a line that only repeats a value.
fn fault(line: &Line, units: Units) -> Option<Result<(), String>> {
    let Line::Step { expression, result: told, .. } = line else {
        return None;
    };
    let numbers = expression.numbers(expression.digits_for(told, units), units);
    let printed = line.show(units);
    // What is held against each other is what is printed.
    if !printed.contains(&numbers) || numbers == told.show(units) {
        return None;
    }
    let words = told.show(units);
    if words.contains("over 100") || words.contains("no figure") {
        return None;
    }
    let check = || {
        let worked = Reader::all(&numbers)?;
        let read = result(&words)?;
        let off = (worked - read.value).abs();
        if off <= read.half * (1.0 + 1e-9) + 1e-12 * read.value.abs() {
            Ok(())
        } else {
            Err(format!("comes to {worked}, {} is printed", read.value))
        }
    };
    Some(check().map_err(|why| format!("{printed}\n    {why}")))
}

/// Every sheet of working that can be printed of a job: of every finding, and of every topic of `work` that is no family's
/// findings; the swing has bounds instead of formulas.
fn sheets(text: &str) -> Vec<(String, Sheet)> {
    let rig = common::rig(text);
    let case = Case::new(&rig);
    let judged = rules::judge(&case);
    let findings = judged.into_iter().map(|judged| (judged.rule.id.to_owned(), judged.finding.working));
    let parts = |parts: Vec<Part>| parts.into_iter().map(|part| (part.title, part.sheet));
    let mut all: Vec<(String, Sheet)> = findings.collect();
    all.extend(parts(case.weights()));
    all.extend(parts(case.float_parts()));
    all.extend(parts(case.strength_parts()));
    all.extend(parts(case.swing_parts()));
    all.extend(parts(case.running_parts()));
    all.extend(parts(case.trial_parts()));
    all.extend(parts(case.worth_parts()));
    all
}

/// Questions put outright: bolts that are pulled, twisted and sheared off their middle, and a panel of layers.
const STUDIES: [(&str, &str); 2] = [
    (
        "a bolt study",
        r#"(sitting: study, bolt_study: (
            size: "M12", grade: "ISO 898-1 8.8",
            bolts: [(across: "-60 mm", up: "50 mm"), (across: "60 mm", up: "50 mm"), (across: "-60 mm", up: "250 mm"), (across: "60 mm", up: "250 mm")],
            face: (bottom: "0 mm", top: "300 mm", starboard: "-100 mm", port: "100 mm"),
            at: (across: "20 mm", up: "170 mm"), push: "-1 kN", up: "-5 kN", across: "1 kN",
            pitch: "-2 kN·m", yaw: "0.4 kN·m", twist: "0.1 kN·m",
        ))"#,
    ),
    (
        "a panel study",
        r#"(sitting: study, panel_study: (
            shape: rectangle(width: "5 ft", height: "25 in"),
            stiffness: layers([(material: "glass/polyester laminate, mat and woven", thickness: "1/4 in"), (material: "Douglas-fir marine plywood", thickness: "1-1/2 in"), (material: "glass/polyester laminate, mat and woven", thickness: "1/4 in")]),
            edges: [simple, simple, free, simple],
            loads: [patch(across: "30 in", up: "20 in", width: "12 in", height: "2 in", force: "2000 lbf")],
        ))"#,
    ),
];

pub(super) fn jobs() -> Vec<(String, String)> {
    let mut all: Vec<(String, String)> = DEMOS.iter().map(|name| ((*name).to_owned(), demo(name))).collect();
    all.extend(STUDIES.map(|(name, text)| (name.to_owned(), text.to_owned())));
    let boats = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/boats");
    for folder in ["sound", "unsound"] {
        let files = std::fs::read_dir(boats.join(folder)).expect("the boats");
        let mut paths: Vec<_> = files.map(|file| file.expect("a boat").path()).collect();
        paths.sort();
        for path in paths {
            all.push((path.display().to_string(), std::fs::read_to_string(&path).expect("a boat")));
        }
    }
    all
}

#[test]
fn every_printed_line_of_working_comes_to_its_printed_result_by_its_printed_numbers() {
    use rayon::prelude::*;
    let told: Vec<(usize, Vec<String>)> = jobs()
        .par_iter()
        .map(|(name, text)| {
            let mut lines = 0;
            let mut faults = Vec::new();
            for (title, sheet) in sheets(text) {
                for units in [Units::Us, Units::Si] {
                    for checked in sheet.lines().iter().filter_map(|line| fault(line, units)) {
                        lines += 1;
                        if let Err(why) = checked {
                            faults.push(format!("{name}, {title}: {why}"));
                        }
                    }
                }
            }
            (lines, faults)
        })
        .collect();
    let lines: usize = told.iter().map(|(lines, _)| lines).sum();
    let faults: Vec<&String> = told.iter().flat_map(|(_, faults)| faults).collect();
    let mut by_line: BTreeMap<&str, usize> = BTreeMap::new();
    for fault in &faults {
        *by_line
            .entry(fault.split(": ").nth(1).unwrap_or_default().split(" = ").next().unwrap_or_default())
            .or_default() += 1;
    }
    println!("{lines} lines worked out again, {} do not come to what is printed", faults.len());
    println!("{by_line:#?}");
    let shown: Vec<String> = faults.iter().take(40).map(|fault| fault.to_string()).collect();
    assert!(faults.is_empty(), "{}", shown.join("\n"));
    assert!(lines > 2_000, "{lines} lines only");
}

#[test]
fn the_reader_of_printed_lines_reads_what_is_printed() {
    for (words, value) in [
        ("9 ft 8-1/2 in", 116.5 * 0.0254),
        ("-3-1/4 in", -3.25 * 0.0254),
        ("7/8 in", 0.875 * 0.0254),
        ("1,250.5", 1250.5),
        ("2 · (3 + 1.5) / 3", 3.0),
        ("10 − -2 − 1", 11.0),
        ("greatest of(2, 3) · 1.5^2", 6.75),
        ("3.0 %", 0.03),
    ] {
        let read = Reader::all(words).unwrap_or_else(|why| panic!("{words}: {why}"));
        assert!((read - value).abs() < 1e-12, "{words}: {read}");
    }
}

/// Found, limit and margin of every finding of a page, as they are printed.
fn printed_figures(page: &str) -> Vec<[String; 4]> {
    use scraper::{Html, Selector};
    let document = Html::parse_document(page);
    let select = |words: &str| Selector::parse(words).expect("a selector");
    let articles = select("article.finding");
    document
        .select(&articles)
        .filter_map(|article| {
            let figure = |name: &str| -> Option<String> {
                Some(article.select(&select(&format!("dd.{name}"))).next()?.text().collect::<String>())
            };
            let rule = article.attr("data-rule").unwrap_or_default().to_owned();
            Some([rule, figure("found")?, figure("limit")?, figure("margin")?])
        })
        .collect()
}

/// What is left between what was found and a limit, as both are printed.
fn left(found: &str, limit: &str) -> Result<f64, String> {
    let found = result(found)?.value;
    let one = |words: &str| result(words).map(|read| read.value);
    if let Some(most) = limit.strip_prefix("at most ") {
        return Ok(one(most)? - found);
    }
    if let Some(least) = limit.strip_prefix("at least ") {
        return Ok(found - one(least)?);
    }
    let (least, most) = limit.split_once(" to ").ok_or_else(|| format!("no limit: {limit}"))?;
    Ok((found - one(least)?).min(one(most)? - found))
}

#[test]
fn the_printed_margin_is_what_is_left_between_the_printed_figures() {
    use sternknee::report::{self, Report};
    let mut told = 0;
    for (name, text) in jobs() {
        let rig = common::rig(&text);
        let case = Case::new(&rig);
        let judged = rules::judge(&case);
        for units in [Units::Us, Units::Si] {
            let report = Report { case: &case, judged: &judged, units, explain: false };
            for [rule, found, limit, margin] in printed_figures(&report::page(&report, &super::stamp(), &[])) {
                if found.contains("over ") {
                    continue;
                }
                let printed = result(&margin).unwrap_or_else(|why| panic!("{name}, {rule}: {why}"));
                let left = left(&found, &limit).unwrap_or_else(|why| panic!("{name}, {rule}: {why}"));
                assert!(
                    (printed.value - left).abs() <= 1e-9 * (1.0 + left.abs()),
                    "{name}, {rule}: found {found}, limit {limit}, margin {margin}"
                );
                told += 1;
            }
        }
    }
    println!("{told} margins are what is left between what is printed");
    assert!(told > 1_000, "{told} margins only");
}
