//! What asks for more work than any boat does is refused with a word on what was too much, and no figure is without end.

use super::{faults, opened, skiff};

#[track_caller]
fn refused(text: &str, entry: &str, word: &str) {
    let told = faults(text);
    assert!(told.iter().any(|fault| fault.contains(entry) && fault.contains(word)), "{entry}: {:?}", told.first());
    assert!(told.len() <= 101, "{}", told.len());
}

fn list(count: usize, entry: impl Fn(usize) -> String) -> String {
    (0..count).map(entry).collect::<Vec<_>>().join(",")
}

#[test]
fn too_many_entries_are_told_with_how_many_are_taken() {
    let loadings = list(10_000, |i| format!("(name:\"l{i}\")"));
    refused(&format!("(conditions:[{loadings}])"), "conditions", "at most 24");
    let engines = list(30_000, |i| format!("(class:\"x{i}\")"));
    refused(&format!("(engines_on:[{engines}])"), "engines_on", "at most 12");
    let points = list(33_000, |_| "(out:\"9 in\",up:\"9 in\")".to_owned());
    refused(
        &format!("(hull:offsets(stations:[(forward:\"0 in\",points:[{points}])]))"),
        "hull.stations[0].points",
        "at most 60",
    );
    let bolts = list(390, |i| format!("(at: port(\"{}.5 in\"), below: \"2 in\")", i % 30));
    refused(
        &skiff(
            "at: [\n                    (at: port(\"15 in\"), below: \"2 in\")",
            &format!("at: [\n                    {bolts}, (at: port(\"15 in\"), below: \"2 in\")"),
        ),
        "engines_on[0].bolts.at",
        "at most 40",
    );
    let knees = list(400, |i| format!("(at: port(\"{} in\"), height: \"20 in\")", f64::from(i as u32) / 10.0));
    refused(&skiff("knees: [],", &format!("knees: [{knees}],")), "structure.knees", "at most 24");
    let boxes = list(400, |i| {
        format!(
            "(name: \"o{i}\", forward: (\"34 in\", \"52 in\"), across: (port(\"20 in\"), starboard(\"20 in\")), up: (\"0 in\", \"16 in\"))"
        )
    });
    refused(&format!("(obstacles:[{boxes}])"), "obstacles", "at most 60");
}

#[test]
fn a_word_without_end_is_told() {
    let name = "x".repeat(65_536);
    refused(&skiff("\"motorwell lip\"", &format!("\"{name}\"")), "edges[0].name", "65536 letters");
    refused(
        &skiff("note: \"letter from the builder\"", &format!("note: \"{name}\"")),
        "boat.transom_rating",
        "65536 letters",
    );
}

#[test]
fn lists_at_their_longest_are_taken() {
    let knees = list(24, |i| format!("(at: port(\"{} in\"), height: \"20 in\")", 1 + i));
    opened(&skiff("knees: [],", &format!("knees: [{knees}],")));
    let loadings = list(24, |i| format!("(name:\"l{i}\",crew:[(at:\"helm\")])"));
    opened(&skiff("    edges: [", &format!("    conditions: [{loadings}],\n    edges: [")));
}

#[test]
fn no_figure_without_end_reaches_a_person() {
    use sternknee::quantity::{Kind, Measure, Style, Units};
    for si in [f64::INFINITY, f64::NEG_INFINITY, f64::NAN] {
        for kind in Kind::ALL {
            let measure = Measure { si, kind, style: Style::Plain };
            for units in [Units::Us, Units::Si, Units::Both] {
                for told in [measure.show(units), measure.show_exact(units)] {
                    assert_eq!(told, "no figure");
                }
            }
        }
    }
}
