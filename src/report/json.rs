//! The report as one JSON document.

use serde_json::{Value, json as value};

use super::{DEFERRAL, Report};
use crate::case::Case;
use crate::quantity::{Measure, Text, Units};
use crate::rules::{Judged, Limit};
use crate::working::{Line, Part, Table};

/// Name and version of the document's shape.
pub const SCHEMA: &str = "sternknee-report/1";

/// Name and version of the shape of a whole working.
pub const WORK_SCHEMA: &str = "sternknee-work/1";

/// The whole report. Fields are only ever added within one version of the schema.
pub fn json(report: &Report) -> Value {
    let units = report.units;
    value!({
        "schema": SCHEMA,
        "title": report.case.rig.title,
        "made_up": report.case.rig.made_up,
        "sitting": report.case.rig.sitting.words(),
        "headline": report.headline(),
        "findings": report.judged.iter().map(|judged| finding(judged, units)).collect::<Vec<_>>(),
        "weights": parts(&report.case.weights(), units),
        "float": float(report.case, units),
        "swing": super::swing::json(report.case, units),
        "assumed": report.assumed().iter().map(|text| text.show(units)).collect::<Vec<_>>(),
        "cautions": report.cautions(),
        "deferral": DEFERRAL,
    })
}

fn finding(judged: &Judged, units: Units) -> Value {
    let (rule, finding) = (judged.rule, &judged.finding);
    value!({
        "rule": rule.id,
        "verdict": finding.verdict.word(),
        "found": finding.found.map(|found| measure(found, units)),
        "limit": finding.limit.map(|limit| limit_of(limit, units)),
        "margin": finding.margin().map(|margin| measure(margin, units)),
        "summary": finding.summary.show(units),
        "remedy": finding.remedy.as_ref().map(|remedy| remedy.show(units)),
        "sources": rule.sources(),
        "working": finding.working.lines().iter().map(|line| working(line, units)).collect::<Vec<_>>(),
        "tables": finding.tables.iter().map(|rows| table(rows, units)).collect::<Vec<_>>(),
        "missing": finding.missing.iter().map(|missing| value!({
            "reading": missing.name(),
            "field": missing.measurement.field,
            "where": missing.measurement.place,
            "how": missing.measurement.how,
        })).collect::<Vec<_>>(),
    })
}

/// Value with unit, unrounded, and as it is shown.
fn measure(measure: Measure, units: Units) -> Value {
    let (number, unit) = measure.in_unit(units);
    value!({ "value": number, "unit": unit, "text": measure.show(units) })
}

fn limit_of(limit: Limit, units: Units) -> Value {
    match limit {
        Limit::AtMost(most) => value!({ "at_most": measure(most, units) }),
        Limit::AtLeast(least) => value!({ "at_least": measure(least, units) }),
        Limit::Within(least, most) => value!({
            "at_least": measure(least, units),
            "at_most": measure(most, units),
        }),
    }
}

fn working(line: &Line, units: Units) -> Value {
    match line {
        Line::Remark(text) => value!({ "remark": text.show(units) }),
        Line::Step {
            symbol,
            meaning,
            expression,
            result,
        } => value!({
            "symbol": symbol,
            "meaning": meaning,
            "formula": expression.symbols(units),
            "numbers": expression.numbers(units),
            "result": measure(*result, units),
            "line": line.show(units),
        }),
    }
}

/// How she floats, part by part; null where it cannot be told.
fn float(case: &Case, units: Units) -> Value {
    match case.float() {
        Ok(float) => parts(&float.parts(), units),
        Err(_) => Value::Null,
    }
}

fn parts(parts: &[Part], units: Units) -> Value {
    let one = |part: &Part| {
        value!({
            "title": part.title,
            "tables": part.tables.iter().map(|rows| table(rows, units)).collect::<Vec<_>>(),
            "working": part.sheet.lines().iter().map(|line| working(line, units)).collect::<Vec<_>>(),
        })
    };
    Value::Array(parts.iter().map(one).collect())
}

/// A whole working, part by part.
pub fn work_json(title: &str, topic: &str, parts: &[Part], units: Units) -> Value {
    value!({
        "schema": WORK_SCHEMA,
        "title": title,
        "topic": topic,
        "parts": self::parts(parts, units),
    })
}

/// A cell that is a measure carries its number; any other is words.
fn cell(text: &Text, units: Units) -> Value {
    match text.as_measure() {
        Some(number) => measure(number, units),
        None => Value::String(text.show(units)),
    }
}

fn table(rows: &Table, units: Units) -> Value {
    value!({
        "title": rows.title,
        "heads": rows.heads,
        "rows": rows.rows.iter()
            .map(|row| row.iter().map(|text| cell(text, units)).collect::<Vec<_>>())
            .collect::<Vec<_>>(),
    })
}
