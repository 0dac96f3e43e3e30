//! Reports of the demos, rules and measuring lists.

use serde_json::Value;

use crate::listed::listed;
use crate::{project, same_as_kept, shown, sternknee};

pub const DEMOS: [(&str, i32); 5] =
    [("oyster_skiff", 1), ("tiller_skiff", 0), ("harbour_launch", 1), ("creek_boat", 0), ("bay_runabout", 1)];

pub fn call(arguments: &str) -> std::process::Output {
    let mut command = sternknee(&project());
    command.args(arguments.split_whitespace()).output().unwrap()
}

/// A job from standard input is stamped with what was read there.
#[test]
#[cfg(unix)]
fn a_job_from_standard_input_bears_the_hash_of_its_text() {
    let folder = tempfile::tempdir().unwrap();
    let text = "(sitting: study, title: \"piped\")\n";
    std::fs::write(folder.path().join("job.ron"), text).unwrap();
    let page = |job: &str, file: &str| {
        let mut command = sternknee(folder.path());
        let output = command.args(["check", job, "--html", file]).write_stdin(text).output().unwrap();
        assert_eq!(output.status.code(), Some(0), "{}", shown(&output));
        std::fs::read_to_string(folder.path().join(file)).unwrap()
    };
    let hash = |page: &str| {
        let at = page
            .match_indices(|c: char| c.is_ascii_hexdigit())
            .map(|(i, _)| i)
            .find(|i| page[*i..].chars().take(64).filter(char::is_ascii_hexdigit).count() == 64);
        page[at.unwrap()..][..64].to_owned()
    };
    assert_eq!(hash(&page("/dev/stdin", "piped.html")), hash(&page("job.ron", "read.html")));
}

/// What hardly can be is no success.
#[test]
fn a_job_that_is_asked_back_does_not_end_in_success() {
    let folder = tempfile::tempdir().unwrap();
    let text = "(sitting: study, transom: (height: \"20 in\"), waterline: \"30 in\")";
    std::fs::write(folder.path().join("job.ron"), text).unwrap();
    let output = sternknee(folder.path()).args(["check", "job.ron"]).output().unwrap();
    assert_eq!(output.status.code(), Some(1), "{}", shown(&output));
}

#[test]
fn the_demos_reports_are_the_kept_ones() {
    for (demo, code) in DEMOS {
        for (name, options) in [
            ("us", ""),
            ("si", "--units si"),
            ("both", "--units both"),
            ("us-explain", "--explain"),
            ("si-explain", "--units si --explain"),
            ("both-explain", "--units both --explain"),
        ] {
            let arguments = format!("check catalogs/jobs/{demo}.ron {options}");
            let output = call(&arguments);
            assert_eq!(output.status.code(), Some(code), "{arguments}");
            let about = format!("sternknee {}", arguments.trim());
            same_as_kept(&format!("report-{demo}-{name}"), &about, &shown(&output));
        }
    }
}

#[test]
fn a_report_keeps_to_eighty_columns() {
    for (demo, _) in DEMOS {
        for options in ["", "--explain", "--explain --units both"] {
            let output = call(&format!("check catalogs/jobs/{demo}.ron {options}"));
            for line in String::from_utf8(output.stdout).unwrap().lines() {
                assert!(line.chars().count() <= 80, "{demo} {options}: {line}");
            }
        }
    }
}

/// Between them the demos show every verdict.
#[test]
fn every_verdict_appears_in_the_demos() {
    let mut seen = std::collections::BTreeSet::new();
    for (demo, _) in DEMOS {
        let output = call(&format!("check catalogs/jobs/{demo}.ron --format json"));
        let report: Value = serde_json::from_slice(&output.stdout).unwrap();
        for finding in report["findings"].as_array().unwrap() {
            seen.insert(finding["verdict"].as_str().unwrap().to_owned());
        }
    }
    let all = ["fail", "not applicable", "pass", "unmeasured", "warn"];
    assert_eq!(seen.into_iter().collect::<Vec<_>>(), all);
}

/// The document's shape: what another program may rely on.
#[test]
fn the_json_report_has_the_documented_fields() {
    let output = call("check catalogs/jobs/harbour_launch.ron --format json");
    let report: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(report["schema"], "sternknee-report/1");
    assert!(report["title"].is_string());
    assert!(report["assumed"].is_array() && report["cautions"].is_array());
    let findings = report["findings"].as_array().unwrap();
    assert_eq!(findings.len(), sternknee::rules::ALL.len());
    for finding in findings {
        for field in
            ["rule", "verdict", "found", "limit", "margin", "summary", "remedy", "sources", "working", "missing"]
        {
            assert!(finding.get(field).is_some(), "{field} of {finding}");
        }
        if let Some(margin) = finding["margin"].as_object() {
            assert!(margin["value"].is_f64() || margin["value"].is_i64(), "{finding}");
            assert!(margin["unit"].is_string(), "{finding}");
        }
    }
}

/// Text, JSON and exit code tell the same verdicts.
#[test]
fn text_and_json_tell_the_same_verdicts() {
    for (demo, _) in DEMOS {
        let text = call(&format!("check catalogs/jobs/{demo}.ron --explain"));
        let text = String::from_utf8(text.stdout).unwrap();
        let json = call(&format!("check catalogs/jobs/{demo}.ron --format json"));
        let report: Value = serde_json::from_slice(&json.stdout).unwrap();
        for finding in report["findings"].as_array().unwrap() {
            let rule = sternknee::rules::find(finding["rule"].as_str().unwrap()).unwrap();
            let full_name = rule.full_name();
            let line = match finding["verdict"].as_str().unwrap() {
                // A study lists what it does not ask in one line, and answers at length what it does.
                "unmeasured" if listed(&text, "NOT ASKED").contains(&full_name) => {
                    assert_eq!(report["sitting"], "study", "{demo}: {full_name}");
                    continue;
                }
                // Neighbours that say the same stand in one list, under the heading.
                "not applicable" => {
                    let named = listed(&text, "NOT APPLICABLE").contains(&full_name);
                    assert!(named, "{demo}: {full_name} is not among those that do not apply");
                    continue;
                }
                verdict => format!("\n  {verdict}  {full_name}"),
            };
            assert!(text.contains(&format!("{line} ")) || text.contains(&format!("{line}\n")), "{demo}: {line}");
        }
    }
}

/// What a terminal shows at once: the answer, what stops it, what is next; no longer than the terminal is high.
#[test]
fn the_first_screen_of_every_demo_answers() {
    for (demo, _) in DEMOS {
        let output = call(&format!("check catalogs/jobs/{demo}.ron"));
        let text = String::from_utf8(output.stdout).unwrap();
        let heads = ["\nFAILS\n", "\nWARNS\n", "\nUNDECIDED\n", "\nANSWERS\n"];
        let end = heads.iter().filter_map(|head| text.find(head)).min().unwrap();
        let screen = &text[..end];
        assert!(screen.trim_end().lines().count() <= 24, "{demo}:\n{screen}");
        if text.contains("\nFAILS\n") {
            assert!(screen.contains("What stops it") && screen.contains("     Do: "), "{demo}:\n{screen}");
        }
        if text.contains("STILL TO TAKE") {
            assert!(screen.contains("Measure next") && screen.contains(": decides "), "{demo}:\n{screen}");
        }
    }
}

/// Ids are for commands: prose calls a check by its name, unless all was asked for.
#[test]
fn no_id_of_a_rule_stands_in_a_report_for_reading() {
    for (demo, _) in DEMOS {
        let output = call(&format!("check catalogs/jobs/{demo}.ron"));
        let text = String::from_utf8(output.stdout).unwrap();
        for rule in sternknee::rules::ALL {
            assert!(!text.contains(rule.id), "{demo}: {}", rule.id);
        }
    }
}

/// A finding, a line; the gravest first.
#[test]
fn a_brief_report_has_a_line_a_finding() {
    for (demo, _) in DEMOS {
        let json = call(&format!("check catalogs/jobs/{demo}.ron --format json"));
        let report: Value = serde_json::from_slice(&json.stdout).unwrap();
        let brief = String::from_utf8(call(&format!("check catalogs/jobs/{demo}.ron --brief --all")).stdout).unwrap();
        let findings = report["findings"].as_array().unwrap();
        assert_eq!(brief.lines().count(), findings.len(), "{demo}");
        for finding in findings {
            let rule = sternknee::rules::find(finding["rule"].as_str().unwrap()).unwrap();
            let start = format!("{}  {}  ", finding["verdict"].as_str().unwrap(), rule.full_name());
            assert!(brief.lines().any(|line| line.starts_with(&start)), "{demo}: {start}");
        }
    }
}

#[test]
fn the_rules_are_listed_and_each_explained() {
    same_as_kept("rules", "sternknee rules", &shown(&call("rules")));
    for rule in sternknee::rules::ALL {
        let arguments = format!("rules {}", rule.id);
        let name = format!("rules-{}", rule.id.replace('/', "-"));
        same_as_kept(&name, &format!("sternknee {arguments}"), &shown(&call(&arguments)));
    }
    let unknown = shown(&call("rules power/plate"));
    same_as_kept("rules-unknown", "sternknee rules power/plate", &unknown);
}

#[test]
fn the_measuring_list_names_what_is_missing() {
    for demo in ["tiller_skiff", "harbour_launch", "oyster_skiff"] {
        let arguments = format!("tape catalogs/jobs/{demo}.ron");
        let output = call(&arguments);
        assert_eq!(output.status.code(), Some(0));
        same_as_kept(&format!("tape-{demo}"), &format!("sternknee {arguments}"), &shown(&output));
    }
}

/// Readings that more rules wait for come first.
#[test]
fn the_measuring_list_begins_with_what_most_rules_wait_for() {
    let output = call("tape catalogs/jobs/tiller_skiff.ron");
    let text = String::from_utf8(output.stdout).unwrap();
    // A list of rules may run over several lines, up to the blank one behind the reading.
    let waiting: Vec<usize> = text
        .split("decides: ")
        .skip(1)
        .filter_map(|rest| rest.split("\n\n").next())
        .map(|rules| rules.matches('/').count())
        .collect();
    assert!(!waiting.is_empty());
    assert!(waiting.is_sorted_by(|a, b| a >= b), "{waiting:?}");
}

/// What README shows of the skiff's report is how it begins.
#[test]
fn the_readme_shows_the_report_as_it_is() {
    let readme = std::fs::read_to_string(project().join("README.md")).unwrap();
    let output = call("check catalogs/jobs/oyster_skiff.ron");
    let report = String::from_utf8(output.stdout).unwrap();
    let title = report.lines().next().unwrap();
    let start = readme.find(title).unwrap();
    let shown = readme[start..].split("```").next().unwrap();
    assert!(report.starts_with(shown), "{report}");
}
