//! The report as one JSON document.

use serde_json::{Value, json as value};

use super::measures::{limit_of, measure};
use super::{DEFERRAL, Report, legend};
use crate::case::Case;
use crate::case::strength::{Fields, Laden, Used, Way};
use crate::quantity::{Measure, Text, Units};
use crate::rules::mend::Mend;
use crate::rules::{Doubt, Family, Judged, Verdict, measure_next};
use crate::working::{Line, Part, Sheet, Table};
use crate::written::printable;

/// Name and version of the document's shape.
pub const SCHEMA: &str = "sternknee-report/1";

/// Name and version of the shape of a whole working.
pub const WORK_SCHEMA: &str = "sternknee-work/1";

/// The whole report. Fields are only ever added within one version of the schema.
pub fn json(report: &Report) -> Value {
    let units = report.units;
    harmless(value!({
        "schema": SCHEMA,
        "title": report.case.rig.title(),
        "made_up": report.case.rig.job.made_up,
        "sitting": report.case.rig.job.sitting.words(),
        "headline": report.headline(),
        "questions": super::questions::as_json(report),
        "findings": findings(report),
        "weights": parts(&report.case.weights(), Some(Family::Weight), units),
        "float": float(report.case, units),
        "swing": super::swing::json(report.case, units),
        "strength": strength(report),
        "rigging": super::rigging::as_json(report),
        "running": super::running::running(report.case, units),
        "trial": super::running::trial(report.case),
        "worth": super::running::worth(report.case),
        "studies": super::running::studies(report.case, units),
        "readings": super::readings::as_json(&report.case.rig.job, units),
        "measure_next": measure_next(report.judged).iter().map(|(taken, doubts)| value!({
            "reading": taken.name,
            "field": taken.path,
            "tolerance": measure(taken.tolerance, units),
            "doubts": doubts,
        })).collect::<Vec<_>>(),
        "assumed": report.assumed().iter().map(|text| text.show(units)).collect::<Vec<_>>(),
        "cautions": report.cautions(),
        "deferral": DEFERRAL,
    }))
}

/// Without signs of control and direction in its words: whoever reads the document may show them on a terminal.
pub fn harmless(value: Value) -> Value {
    match value {
        Value::String(words) => Value::String(printable(&words)),
        Value::Array(all) => all.into_iter().map(harmless).collect(),
        Value::Object(all) => all.into_iter().map(|(name, value)| (printable(&name), harmless(value))).collect(),
        plain => plain,
    }
}

/// The findings, as they stand in the whole report.
pub fn findings(report: &Report) -> Value {
    report.judged.iter().map(|judged| finding(judged, report.units)).collect()
}

fn finding(judged: &Judged, units: Units) -> Value {
    let (rule, finding) = (judged.rule, &judged.finding);
    value!({
        "rule": rule.id,
        "verdict": finding.verdict.word(),
        "found": finding.found.map(|found| figure(found, "found", judged, units)),
        "limit": finding.limit.map(|limit| limit_of(limit, units)),
        "margin": finding.margin().map(|margin| figure(margin, "margin", judged, units)),
        "doubt": judged.doubt.as_ref().map(|doubt| doubt_of(doubt, units)),
        "firm": judged.doubt.as_ref().map(Doubt::is_firm),
        "decides": judged.doubt.as_ref().map(|doubt| decides(doubt, units)),
        "summary": finding.summary.show(units),
        "each": finding.each.iter().map(|other| other.show(units)).collect::<Vec<_>>(),
        "remedy": finding.remedy.as_ref().map(|remedy| remedy.show(units)),
        "ways": finding.mends.iter().map(way).collect::<Vec<_>>(),
        "cause": finding.cause.map(|comes| value!({ "words": comes.cause.words(), "lead": comes.lead })),
        "sources": rule.sources(),
        "given": given(&finding.working, Some(rule.family), units),
        "working": finding.working.lines().iter().map(|line| working(line, units)).collect::<Vec<_>>(),
        "tables": finding.tables.iter().map(|rows| table(rows, units)).collect::<Vec<_>>(),
        "missing": finding.missing.iter().map(|missing| value!({
            "reading": missing.name(),
            "field": crate::job::path(missing.measurement),
            "where": missing.measurement.place(),
            "how": missing.measurement.how(),
        })).collect::<Vec<_>>(),
    })
}

/// A way of a remedy: its kind, and what it changes of the job, entry by entry.
fn way(mend: &Mend) -> Value {
    let (changes, first) = match mend {
        Mend::Change(changes) => (changes.as_slice(), None),
        Mend::First(rule) => (&[][..], Some(rule)),
        Mend::Look | Mend::Ask | Mend::Yard | Mend::Care => (&[][..], None),
    };
    value!({
        "kind": mend.word(),
        "first": first,
        "changes": changes.iter().map(|change| value!({ "entry": change.entry, "value": change.value })).collect::<Vec<_>>(),
    })
}

/// A figure with the words in which it is told beside its limit.
fn figure(value: Measure, name: &str, judged: &Judged, units: Units) -> Value {
    let mut told = measure(value, units);
    if let Some(words) = super::doubt::figure(judged, name, units) {
        told["text"] = words.into();
    }
    told
}

/// Half-widths that hold 95 %.
fn doubt_of(doubt: &Doubt, units: Units) -> Value {
    value!({
        "found": doubt.found.map(|found| measure(found, units)),
        "margin": doubt.room.map(|room| measure(room, units)),
        "otherwise": doubt.otherwise.map(Verdict::word),
    })
}

/// Readings with their part of the doubt, and how closely each would have to be taken to settle the verdict alone.
fn decides(doubt: &Doubt, units: Units) -> Vec<Value> {
    let shown = doubt.decides.iter().map(|decides| {
        value!({
            "reading": decides.reading.name,
            "field": decides.reading.path,
            "tolerance": measure(decides.reading.tolerance, units),
            "share": decides.share,
            "settles": decides.settles.map(|closely| measure(closely, units)),
        })
    });
    shown.collect()
}

/// What strength makes of the case: factors, loads, bolt forces, fields over the panel, in SI; null where it says nothing.
fn strength(report: &Report) -> Value {
    let case = report.case;
    let study = case.panel_study().and_then(Result::ok).map(|answer| {
        value!({
            "deflection_m": answer.solution.largest_deflection,
            "at_m": answer.solution.largest_at,
            "error": answer.solution.error,
            "moments_nm_per_m": answer.moments.map(|(moment, _)| moment),
            "moment_errors": answer.solution.moment_errors,
            "fields": fields(&Fields::of(&answer.panel, &answer.solution)),
        })
    });
    let bolts = case.bolt_study().and_then(Result::ok).map(|answer| {
        answer
            .forces
            .bolts
            .iter()
            .zip(&answer.bolts)
            .map(|(forces, bolt)| {
                value!({
                    "at_m": [bolt.y, bolt.z],
                    "primary_n": forces.primary,
                    "secondary_n": forces.secondary,
                    "shear_n": forces.shear,
                    "tension_n": forces.tension,
                })
            })
            .collect::<Vec<_>>()
    });
    let Ok(strength) = case.strength() else {
        return if study.is_none() && bolts.is_none() {
            Value::Null
        } else {
            value!({ "panel_study": study, "bolt_study": bolts })
        };
    };
    let row = |(part, after, before, case): (&str, f64, Option<f64>, &str)| value!({ "part": part, "factor": after, "factor_before": before, "case": case });
    value!({
        "governing": strength.governing(case.rig).map(row),
        "factors": strength.factors(case.rig).into_iter().map(row).collect::<Vec<_>>(),
        "core": { "stiffness_left": strength.core.left.stiffness, "strength_left": strength.core.left.strength },
        "outline_m": strength.board.outline,
        "knees_m": strength.board.knees.iter().map(|knee| [[knee.y, knee.from], [knee.y, knee.to]]).collect::<Vec<_>>(),
        "after": laden(&strength.after),
        "before": strength.before.as_ref().ok().map(laden),
        "panel_study": study,
        "bolt_study": bolts,
    })
}

fn laden(laden: &Laden) -> Value {
    let names: Vec<&str> = laden.cases.iter().map(|case| case.name()).collect();
    let footings: Vec<Value> = laden
        .footings
        .iter()
        .map(|footing| {
            value!({
                "name": footing.name,
                "face_m": [footing.face.starboard, footing.face.bottom, footing.face.port, footing.face.top],
                "bolts_m": footing.bolts.iter().map(|bolt| [bolt.y, bolt.z]).collect::<Vec<_>>(),
                "cases": names.iter().zip(&footing.loads).zip(&footing.forces).map(|((name, load), group)| value!({
                    "case": name,
                    "force_n": load.force,
                    "moment_nm": load.moment,
                    "tension_n": group.bolts.iter().map(|bolt| bolt.tension).collect::<Vec<_>>(),
                    "shear_n": group.bolts.iter().map(|bolt| bolt.shear).collect::<Vec<_>>(),
                })).collect::<Vec<_>>(),
            })
        })
        .collect();
    let bent = &laden.bent;
    let bending = |(case, used): (usize, &Used)| {
        value!({
            "case": names[case],
            "factor": used.factor(),
            "at_m": used.at,
            "deflection_m": bent.effects[case].told().loaded.largest_deflection,
            "fields": bent.bending_fields(case).as_ref().map(fields),
        })
    };
    let plain =
        |(case, used): (usize, &Used)| value!({ "case": names[case], "factor": used.factor(), "at_m": used.at });
    let (moved, loaded) = bent.deflection();
    value!({
        "footings": footings,
        "bending": bending(bent.worst(Way::Bending)),
        "shear": plain(bent.worst(Way::Shear)),
        "tabbing": plain(bent.worst(Way::Tabbing)),
        "deflection": {
            "case": names[moved],
            "at_m": loaded.largest_at,
            "deflection_m": loaded.largest_deflection,
            "fields": bent.deflection_fields(moved).as_ref().map(fields),
        },
    })
}

/// Places in m, deflection in m forward, stress over strength.
fn fields(fields: &Fields) -> Value {
    value!({
        "nodes_m": fields.nodes,
        "triangles": fields.triangles,
        "deflection_m": fields.deflection,
        "use_of_strength": fields.use_of_strength,
    })
}

fn working(line: &Line, units: Units) -> Value {
    match line {
        Line::Remark(text) => value!({ "remark": text.show(units) }),
        Line::Step { symbol, meaning, expression, result } => value!({
            "symbol": symbol,
            "meaning": meaning,
            "formula": expression.symbols(units),
            "numbers": expression.numbers(expression.digits_for(result, units), units),
            "result": measure(*result, units),
            "line": line.show(units),
        }),
    }
}

/// How she floats, part by part; null where it cannot be told.
fn float(case: &Case, units: Units) -> Value {
    match case.float() {
        Ok(float) => parts(&float.parts(), Some(Family::Stern), units),
        Err(_) => Value::Null,
    }
}

/// What goes into a working: each symbol with what it is, its value, and where that is from.
fn given(sheet: &Sheet, family: Option<Family>, units: Units) -> Value {
    let one = |one: legend::Given| {
        value!({
            "symbol": one.symbol,
            "meaning": one.meaning,
            "value": measure(one.value, units),
            "from": one.from,
        })
    };
    Value::Array(legend::given(sheet, family).into_iter().map(one).collect())
}

fn parts(parts: &[Part], family: Option<Family>, units: Units) -> Value {
    let one = |part: &Part| {
        value!({
            "title": part.title,
            "tables": part.tables.iter().map(|rows| table(rows, units)).collect::<Vec<_>>(),
            "given": given(&part.sheet, family, units),
            "working": part.sheet.lines().iter().map(|line| working(line, units)).collect::<Vec<_>>(),
        })
    };
    Value::Array(parts.iter().map(one).collect())
}

/// A whole working, part by part.
pub fn work_json(title: &str, topic: &str, parts: &[Part], units: Units) -> Value {
    harmless(value!({
        "schema": WORK_SCHEMA,
        "title": title,
        "topic": topic,
        "parts": self::parts(parts, legend::family_of(topic), units),
    }))
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
