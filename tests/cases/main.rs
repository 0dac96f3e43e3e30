//! The rules' own cases, a test a rule: each case gets the verdict that its file's name promises, owes its reader nothing, and says
//! what is kept in `snapshots/rules/`.
//!
//! Cases are small jobs in `tests/rules/cases/<family>-<name>/`. The first part of a file's name is the verdict that the rule must
//! give: `pass.ron`, `warn.ron`, `fail.ron`, `unmeasured.ron`, `not-applicable.ron`; a word behind it tells several apart
//! (`fail-count.ron`). The first line says why.
//!
//! `cargo test --test cases strength-bolts` runs those of some rules; `INSTA_UPDATE=always` writes what they say anew.

#[path = "../common/mod.rs"]
mod common;

use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use libtest_mimic::{Arguments, Failed, Trial};
use sternknee::quantity::Units;
use sternknee::rules::mend::{Change, Mend};
use sternknee::rules::{ALL, Finding, Verdict};

use crate::common::finding;

fn main() -> ExitCode {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/rules/cases");
    let folder_of = |id: &str| id.replace('/', "-");
    let named: Vec<String> = within(&root).iter().map(|folder| stem(folder)).collect();
    let strays = named.into_iter().filter(|name| !ALL.iter().any(|rule| folder_of(rule.id) == *name));
    let strays = strays.map(|name| Trial::test(name, || Err("no rule is called so".into())));
    let rules = ALL.iter().map(|rule| {
        let folder = root.join(folder_of(rule.id));
        Trial::test(folder_of(rule.id), move || of_a_rule(rule.id, &folder))
    });
    libtest_mimic::run(&Arguments::from_args(), rules.chain(strays).collect()).exit_code()
}

/// What lies in a folder, by name.
fn within(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
    let mut paths: Vec<PathBuf> = entries.map(|entry| entry.expect("an entry is read").path()).collect();
    paths.sort();
    paths
}

fn stem(path: &Path) -> String {
    path.file_stem().and_then(|name| name.to_str()).expect("a plain name").to_owned()
}

/// The verdicts of which every rule has a case, any of a line.
const OWED: [&[Verdict]; 3] = [&[Verdict::Pass], &[Verdict::Fail, Verdict::Warn], &[Verdict::Unmeasured]];

/// All cases of a rule.
fn of_a_rule(id: &str, folder: &Path) -> Result<(), Failed> {
    let mut said = String::new();
    let mut had = Vec::new();
    for path in within(folder) {
        let name = stem(&path);
        let text = fs::read_to_string(&path).map_err(|error| error.to_string())?;
        let promised = promised(&name).ok_or_else(|| format!("`{name}` begins with no verdict"))?;
        let finding = finding(id, &text);
        if finding.verdict != promised {
            return Err(format!("{name}: {}, {}", finding.verdict.word(), finding.summary.show(Units::Us)).into());
        }
        if !text.starts_with("// ") {
            return Err(format!("{name} does not say why").into());
        }
        if let Some(owed) = owed(&finding) {
            return Err(format!("{name} has no {owed}").into());
        }
        had.push(promised);
        writeln!(said, "== {name}\n{}", words(&finding))?;
    }
    if let Some(lacking) = OWED.iter().find(|wanted| !wanted.iter().any(|verdict| had.contains(verdict))) {
        return Err(format!("lacks a case of {lacking:?}").into());
    }
    insta::with_settings!({
        snapshot_path => "../../snapshots/rules", prepend_module_to_snapshot => false, omit_expression => true
    }, {
        insta::assert_snapshot!(stem(folder), said);
    });
    Ok(())
}

/// The verdict that a case's file is named after.
fn promised(name: &str) -> Option<Verdict> {
    Verdict::ALL.iter().copied().find(|verdict| name.starts_with(&verdict.word().replace(' ', "-")))
}

/// What a finding owes its reader and lacks.
fn owed(finding: &Finding) -> Option<&'static str> {
    match finding.verdict {
        Verdict::Unmeasured if finding.missing.is_empty() => Some("reading that it waits for"),
        Verdict::Fail | Verdict::Warn if finding.remedy.is_none() => Some("remedy"),
        _ => None,
    }
}

/// One way of a remedy, as it would be written into the job.
fn way(mend: &Mend) -> String {
    let written = |change: &Change| {
        let value = change.value.as_deref().unwrap_or("nothing").split_whitespace().collect::<Vec<_>>().join(" ");
        format!("{}: {value}", change.entry)
    };
    match mend {
        Mend::Change(changes) => format!("> {}", changes.iter().map(written).collect::<Vec<_>>().join("; ")),
        Mend::First(rule) => format!("> first {rule}"),
        other => format!("> {}", other.word()),
    }
}

/// All that a finding says, in US units.
fn words(finding: &Finding) -> String {
    let units = Units::Us;
    let mut words = vec![finding.summary.show(units)];
    words.extend(finding.each.iter().map(|each| format!("- {}", each.show(units))));
    words.extend(finding.found.map(|found| format!("found {}", found.show(units))));
    words.extend(finding.limit.map(|limit| limit.show(units)));
    words.extend(finding.remedy.as_ref().map(|remedy| format!("do: {}", remedy.show(units))));
    words.extend(finding.mends.iter().map(way));
    words.extend(finding.working.lines().iter().map(|line| format!("| {}", line.show(units))));
    words.join("\n")
}
