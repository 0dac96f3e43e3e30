//! The family's cases: each gives the verdict that its file name promises.

use std::path::PathBuf;

use sternknee::rules::Verdict;

use crate::finding;

#[test]
fn every_case_of_the_family_gives_the_verdict_of_its_name() {
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/rules/cases");
    let mut wrong = Vec::new();
    let mut cases = 0;
    for folder in std::fs::read_dir(root).unwrap() {
        let folder = folder.unwrap().path();
        let family = folder.file_name().unwrap().to_str().unwrap().to_owned();
        let Some(rule) = family.strip_prefix("stern-") else {
            continue;
        };
        for file in std::fs::read_dir(&folder).unwrap() {
            let file = file.unwrap().path();
            let name = file.file_stem().unwrap().to_str().unwrap().to_owned();
            let promised = Verdict::ALL
                .iter()
                .find(|verdict| name.starts_with(&verdict.word().replace(' ', "-")))
                .unwrap_or_else(|| panic!("`{name}` begins with no verdict"));
            let found = finding(
                &format!("stern/{rule}"),
                &std::fs::read_to_string(&file).unwrap(),
            );
            cases += 1;
            if found.verdict != *promised {
                wrong.push(format!("{rule}/{name}: {found:?}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n\n"));
    assert!(cases >= 30, "{cases}");
}
