//! What bending, shear, deflection and tabs are told to be cured by cures them, taken at its word.

use std::path::Path;

use sternknee::quantity::Dimensioned;
use sternknee::rules::{Finding, Verdict};

use super::{between, boat, finding, remedy, rig};

const RULES: [&str; 4] = ["strength/bending", "strength/core-shear", "strength/panel-deflection", "strength/tabbing"];
const BOLTS: &str = r#"size: "1/2-13", grade: "A4-70", washer: "2 in""#;

/// Inches as the tape has them: "1-1/4 in".
fn tape(words: &str) -> f64 {
    let number = words.trim_end_matches(" in");
    number.split('-').fold(0.0, |sum, part| {
        let mut halves = part.split('/').map(|half| half.parse::<f64>().expect("a number"));
        let whole = halves.next().expect("a number");
        sum + halves.next().map_or(whole, |under| whole / under)
    })
}

/// The job with what stands between two words of it replaced, from this place on.
fn replaced(text: &str, from: usize, before: &str, after: &str, with: &str) -> String {
    let start = from + text[from..].find(before).unwrap_or_else(|| panic!("no `{before}` in {text}")) + before.len();
    let end = start + text[start..].find(after).expect("an end");
    format!("{}{with}{}", &text[..start], &text[end..])
}

/// The job with its core so many inches thicker, and its transom with it.
fn thicker(text: &str, core: &str, more: f64) -> String {
    let told = rig(text);
    let grown = |metres: f64| format!("{} mm", 1e3 * metres + 25.4 * more);
    let from = text.find("transom: (").expect("a transom");
    let text = match told.job.transom.thickness.as_ref() {
        Some(transom) => replaced(text, from, "thickness: \"", "\"", &grown(transom.value.si())),
        None => text.to_owned(),
    };
    let layers = told.structure.lay_up.reading().expect("layers");
    let layer = format!("(material: \"{core}\", thickness: \"");
    match text.find("lay_up: [") {
        Some(from) => {
            let layers = layers.iter().filter(|layer| layer.material.name == core);
            let [one] = layers.collect::<Vec<_>>()[..] else { panic!("several layers of {core}") };
            replaced(&text, from, &layer, "\"", &grown(one.thickness.si()))
        }
        None => text,
    }
}

/// The job as the remedy wants it; `None` where it is of another sort.
fn cured(text: &str, words: &str) -> Option<String> {
    if words.starts_with("Fit a pair of knees") {
        let (off, high) = (between(words, "knees ", " each side"), between(words, "centreline, ", " high"));
        let knees = format!(r#"(at: port("{off}"), height: "{high}"), (at: starboard("{off}"), height: "{high}")"#);
        assert!(text.contains("knees: []"), "knees are named where some stand or may stand: {text}");
        let text = text.replace("knees: []", &format!("knees: [{knees}]"));
        // Knees alone may not be enough.
        return Some(if words.contains("build the transom up by") {
            thicker(&text, between(words, " in of ", " over"), tape(between(words, "up by ", " of")))
        } else {
            text
        });
    }
    if words.starts_with("Build the transom up by") {
        let (more, core) = (between(words, "up by ", " of"), between(words, " in of ", " over"));
        return Some(thicker(text, core, tape(more)));
    }
    if words.starts_with("Lay a tab") {
        let times: f64 = between(words, "Lay a tab ", " ").parse().expect("a number");
        let from = text.find("tabbing: (").expect("a tab that was told");
        let size = |what: &str| times * tape(between(&text[from..], &format!("{what}: \""), "\""));
        let [width, thickness] = ["width", "thickness"].map(|what| format!("{} in", size(what)));
        let text = replaced(text, from, "width: \"", "\"", &width);
        return Some(replaced(&text, from, "thickness: \"", "\"", &thickness));
    }
    None
}

fn is_worse(finding: &Finding) -> bool {
    matches!(finding.verdict, Verdict::Fail | Verdict::Warn)
}

/// Every remedy of these rules that can be done on a job, done; how many there were of each sort.
fn all_cure(name: &str, text: &str) -> [usize; 3] {
    let mut done = [0; 3];
    for rule in RULES {
        let before = finding(rule, text);
        if !is_worse(&before) {
            continue;
        }
        let words = remedy(&before);
        let Some(after) = cured(text, &words) else { continue };
        let after = finding(rule, &after);
        assert_eq!(after.verdict, Verdict::Pass, "{name} {rule}: {words}: {after:?}");
        let sort = ["Fit", "Build", "Lay"].iter().position(|sort| words.starts_with(sort)).expect("a sort");
        done[sort] += 1;
    }
    done
}

#[test]
fn what_is_named_for_a_thin_transom_is_enough() {
    let mut done = [0; 3];
    for (thickness, engine) in [
        ("1-1/2 in", "four-stroke 115 hp inline-4"),
        ("1-3/8 in", "four-stroke 60 hp inline-4"),
        ("1 in", "four-stroke 60 hp inline-4"),
        ("3/4 in", "four-stroke 115 hp inline-4"),
        ("1/2 in", "four-stroke 115 hp inline-4"),
    ] {
        for tab in ["", r#", tabbing: (width: "2 in", thickness: "0.004 in")"#] {
            let told = format!(
                r#"stringers: [], lay_up: [(material: "Douglas-fir marine plywood", thickness: "{thickness}")]{tab}"#
            );
            let text = boat(engine, BOLTS, "", &told).replacen("\"2 in\"", &format!("\"{thickness}\""), 1);
            let more = all_cure(thickness, &text);
            done = [0, 1, 2].map(|sort| done[sort] + more[sort]);
        }
    }
    // Knees come before a build-up alone wherever they find room.
    assert!(done[0] > 0 && done[2] > 0, "{done:?}");
}

#[test]
fn what_is_named_for_an_unsound_boat_is_enough() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/boats/unsound");
    let mut done = 0;
    for file in std::fs::read_dir(folder).expect("the boats") {
        let path = file.expect("a file").path();
        let text = std::fs::read_to_string(&path).expect("a boat");
        // Nothing is asked of those that were judged by another family.
        done += all_cure(&path.display().to_string(), &text).iter().sum::<usize>();
    }
    assert!(done > 0);
}
