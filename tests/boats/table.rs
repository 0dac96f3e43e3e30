//! The table of verdicts, kept beside the boats: what changes in it changed for somebody.

use sternknee::quantity::Units;
use sternknee::rules::{Finding, Verdict};

use super::corpus::{Boat, here, is_asked_for};
use super::verdicts::{Answer, Judged, SOUND, UNSOUND};

const FILE: &str = "verdicts.txt";
/// Set to 1, it writes the table anew.
const RENEW: &str = "RENEW";
const HEAD: &str = "\
# What every boat gets at every level: exit code; fails; warns, each with the figure found; how many unmeasured.
# Made by `RENEW=1 cargo test --test boats verdicts`; read what changed before it is kept.
";

#[test]
fn the_verdicts_are_those_of_the_table() {
    let path = here().join(FILE);
    let now = table();
    if std::env::var(RENEW).is_ok_and(|value| value == "1") {
        std::fs::write(&path, now).expect("the table is written");
        return;
    }
    let kept = std::fs::read_to_string(&path).unwrap_or_default();
    let of_whom = |line: &str| line.split(' ').next().unwrap_or_default().to_owned();
    let kept: String =
        kept.split_inclusive('\n').filter(|line| line.starts_with('#') || is_asked_for(&of_whom(line))).collect();
    let changed = changed(&kept, &now);
    assert!(
        changed.is_empty(),
        "verdicts changed (- kept, + now):\n{}\nIf that is right: {RENEW}=1 cargo test --test boats verdicts",
        changed.join("\n")
    );
}

fn table() -> String {
    let lines = SOUND.iter().chain(UNSOUND.iter()).flat_map(lines);
    std::iter::once(HEAD.to_owned()).chain(lines.map(|line| line + "\n")).collect()
}

/// The lines of one boat.
fn lines((boat, answers): &Judged) -> Vec<String> {
    answers.iter().map(|answer| line(boat, answer)).collect()
}

fn line(boat: &Boat, answer: &Result<Answer, String>) -> String {
    let Ok(answer) = answer else {
        return format!("{} cannot be read", boat.name);
    };
    let told = |verdict| {
        let each: Vec<String> = answer.of(verdict).map(|(id, finding)| format!("{id}{}", figure(finding))).collect();
        if each.is_empty() { "-".to_owned() } else { each.join(", ") }
    };
    let exit = u8::from(answer.of(Verdict::Fail).next().is_some());
    let unmeasured = answer.of(Verdict::Unmeasured).count();
    format!(
        "{} L{}: {exit} | fail: {} | warn: {} | {unmeasured} unmeasured",
        boat.name,
        answer.level,
        told(Verdict::Fail),
        told(Verdict::Warn)
    )
}

/// What was found, to two digits: enough to see it move, too few to see it tremble.
fn figure(finding: &Finding) -> String {
    let Some(found) = finding.found else {
        return String::new();
    };
    let (value, unit) = found.in_unit(Units::Us);
    format!(" {} {unit}", two_digits(value)).trim_end().to_owned()
}

fn two_digits(value: f64) -> String {
    if value == 0.0 || !value.is_finite() {
        return value.to_string();
    }
    // Rounding first, so that 0.999 has the places of 1.0.
    let rounded: f64 = format!("{value:.1e}").parse().unwrap_or(value);
    let places = (1.0 - rounded.abs().log10().floor()).max(0.0) as usize;
    format!("{rounded:.places$}")
}

/// The lines that are in one table only.
fn changed(kept: &str, now: &str) -> Vec<String> {
    let lacking = |from: &str, other: &str, sign: &str| {
        let known: std::collections::HashSet<String> = other.lines().map(str::to_owned).collect();
        let lines = from.lines().filter(|line| !known.contains(*line));
        lines.map(|line| format!("{sign} {line}")).collect::<Vec<_>>()
    };
    let mut all = lacking(kept, now, "-");
    all.extend(lacking(now, kept, "+"));
    // The two lines of a boat at a level stand together, the kept one first.
    all.sort_by_key(|line| line.split(": ").next().unwrap_or_default()[2..].to_owned());
    all
}

#[test]
fn figures_are_told_to_two_digits() {
    let told = [0.0, 1234.0, -0.01234, 0.999, 45.6].map(two_digits);
    assert_eq!(told, ["0", "1200", "-0.012", "1.0", "46"]);
}
