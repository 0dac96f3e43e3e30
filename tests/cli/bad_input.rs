//! What is said of input that cannot be used: at its place, with what was expected, exit 2, no panic.
//! A snapshot a kind of bad input.

use crate::{same_as_kept, shown, sternknee};

/// Name of the snapshot, what is wrong, the job.
const BAD: &[(&str, &str, &str)] = &[
    ("empty-file", "nothing in it", ""),
    (
        "truncated",
        "cut off in the middle",
        r#"(
    title: "x",
    boat: (
        length: "24 ft"#,
    ),
    (
        "truncated-between",
        "cut off between two fields",
        r#"(
    boat: (
        length: "24 ft",
"#,
    ),
    (
        "missing-comma",
        "a comma forgotten",
        r#"(
    boat: (
        length: "24 ft"
        beam: "8 ft",
    ),
)
"#,
    ),
    ("closed-too-soon", "a parenthesis closed too soon", r#"(boat: (length: "24 ft")), steering: tiller)"#),
    ("plain-text", "no job at all", "hello there"),
    ("unit-of-wrong-kind", "a length in pounds", r#"(boat: (length: "24 lb"))"#),
    ("unknown-unit", "a unit nobody knows", r#"(boat: (length: "2 furlongs"))"#),
    ("bare-number", "a number without quotes and unit", "(boat: (length: 24))"),
    ("number-without-unit", "a number without a unit", r#"(boat: (length: "24"))"#),
    ("not-a-number", "NaN", r#"(boat: (length: "NaN ft", beam: NaN))"#),
    ("infinite", "a power of ten that is none", r#"(boat: (length: "1e999 ft"))"#),
    ("negative-beam", "a negative beam", r#"(boat: (beam: "-8 ft"))"#),
    ("absurd-beam", "a 4 in beam", r#"(boat: (beam: "4 in"))"#),
    ("absurd-power", "a 900 hp single", r#"(engines_on: [(described: (power: "900 hp"))])"#),
    ("unknown-field", "a field misspelt", r#"(boat: (lenght: "24 ft"))"#),
    ("unknown-field-far", "a field that is nothing like another", r#"(boat: (colour: "white"))"#),
    ("duplicate-field", "a field given twice", r#"(boat: (length: "24 ft", length: "25 ft"))"#),
    (
        "two-engines-at-one-place",
        "two engines an inch apart",
        r#"(engines_on: [(described: (power: "90 hp"), at: [port("14 in"), port("15 in")])])"#,
    ),
    (
        "engine-outside-the-transom",
        "an engine beside the boat",
        r#"(boat: (transom_width: "6 ft"), engines_on: [(described: (power: "90 hp"), at: [port("4 ft")])])"#,
    ),
    (
        "setback-without-bracket",
        "a setback and a drop that nothing makes",
        r#"(engines_on: [(described: (power: "90 hp"), setback: "20 in", drop: "1 in")])"#,
    ),
    ("unknown-class", "an engine class misspelt", r#"(engines_on: [(class: "four-stroke 155 hp")])"#),
    (
        "unknown-bracket-and-material",
        "names that the catalog has not",
        r#"(transom: (material: "Duglas-fir"), engines_on: [(described: (power: "90 hp"), bracket: (class: "box 30"))])"#,
    ),
    (
        "unknown-shaft",
        "a shaft that the class does not come in",
        r#"(engines_on: [(class: "four-stroke 150 hp inline-4", shaft: "15 in")])"#,
    ),
    ("wrong-word", "a word that is none of the choices", "(steering: wheel)"),
    ("misspelt-word", "a word misspelt", "(steering: tillr)"),
    (
        "reading-for-word",
        "a reading where a word belongs, and a misspelt word behind it",
        r#"(transom: (splash_well: "12 in"), steering: tillr)"#,
    ),
    (
        "word-without-its-reading",
        "a side without its distance",
        r#"(engines_on: [(described: (power: "90 hp"), at: [port()])])"#,
    ),
    (
        "class-and-description",
        "an engine both named and described",
        r#"(engines_on: [(class: "four-stroke 150 hp inline-4", described: (power: "90 hp"))])"#,
    ),
    ("neither-class-nor-description", "an engine neither named nor described", "(engines_on: [()])"),
    (
        "propeller-count",
        "two propellers for one engine",
        r#"(engines_on: [(described: (power: "90 hp"), propellers: [left, right])])"#,
    ),
    ("fraction-over-zero", "a fraction over zero", r#"(transom: (height: "12-7/0 in"))"#),
    ("comma-slip", "a decimal comma", r#"(transom: (height: "20,5 in"))"#),
    ("tolerance-of-another-kind", "a tolerance in pounds on a length", r#"(boat: (length: "24 ft ± 1 lb"))"#),
    (
        "backwards-range",
        "a range from more to less",
        r#"(engines_on: [(described: (trim: (from: "9 deg", to: "2 deg")))])"#,
    ),
    ("negative-persons", "fewer than no persons", "(plate: capacity(persons: -3))"),
    ("absurd-count", "more hole rows than any bracket has", "(engines_on: [(described: (hole_rows: 300))])"),
    (
        "persons-outweigh-the-total",
        "persons heavier than persons, motor and gear",
        r#"(plate: capacity(persons_weight: "900 lb", total_weight: "800 lb"))"#,
    ),
    ("part-of-an-entry-missing", "a height without its figure", "(transom: (heights: [(at: centre)]))"),
    ("words-without-quotes", "a title without quotes", "(title: hello)"),
    ("list-expected", "one engine where a list is expected", r#"(engines_on: (class: "x"))"#),
    ("item-without-a-name", "a weight of nothing", r#"(goes_on: [(weight: "10 lb")])"#),
    (
        "wider-than-long",
        "beam and length changed over",
        r#"(boat: (length: "8 ft", beam: "9 ft", transom_width: "10 ft"))"#,
    ),
    (
        "control-characters",
        "escape sequences and a bell",
        "(title: \"\u{1b}[31mred\u{7}\", boat: (lenght: \"\u{1b}[2J\u{9b}2J\u{202e}\"))",
    ),
    ("byte-order-mark", "a byte order mark, then a slip", "\u{feff}(boat: (lenght: \"24 ft\"))"),
    (
        "several-at-once",
        "six faults in one run",
        r#"(
    boat: (
        length: "24 lb",
        beam: "4 in",
        lenght: "1 ft",
    ),
    steering: wheel,
    engines_on: [
        (class: "nope", at: [port("1 furlong")]),
    ],
)
"#,
    ),
];

fn check(name: &str, bytes: &[u8]) -> std::process::Output {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("job.ron"), bytes).unwrap();
    let output = sternknee(folder.path()).args(["check", "job.ron"]).output().unwrap();
    assert_eq!(output.status.code(), Some(2), "{name}: {}", shown(&output));
    assert!(output.stdout.is_empty(), "{name}");
    output
}

#[test]
fn bad_jobs_are_refused_at_the_place() {
    assert!(BAD.len() >= 25);
    for (name, about, text) in BAD {
        let output = check(name, text.as_bytes());
        let error = String::from_utf8_lossy(&output.stderr);
        assert!(error.contains("job.ron:"), "{name}: {error}");
        same_as_kept(&format!("bad-{name}"), about, &shown(&output));
    }
}

#[test]
fn a_string_of_ten_megabytes_is_refused() {
    let text = format!("(title: \"{}\")", "x".repeat(10_000_000));
    let output = check("long", text.as_bytes());
    same_as_kept("bad-ten-megabytes", "a title of ten megabytes", &shown(&output));
}

#[test]
fn a_long_line_is_not_quoted() {
    let text = format!("(title: \"{}\", boat: (lenght: \"3 ft\"))", "x".repeat(5_000));
    let output = check("line", text.as_bytes());
    same_as_kept("bad-long-line", "a slip behind 5,000 letters", &shown(&output));
}

#[test]
fn nesting_a_thousand_deep_is_refused() {
    let parentheses = format!("(boat: {}{})", "(".repeat(1000), ")".repeat(1000));
    let output = check("parentheses", parentheses.as_bytes());
    same_as_kept("bad-nested-parentheses", "a thousand parentheses", &shown(&output));
    let lists = format!("(engines_on: {}{})", "[".repeat(1000), "]".repeat(1000));
    let output = check("lists", lists.as_bytes());
    same_as_kept("bad-nested-lists", "a thousand lists", &shown(&output));
    let unknown = format!("(nonsense: {}{})", "[".repeat(1000), "]".repeat(1000));
    let output = check("unknown", unknown.as_bytes());
    same_as_kept("bad-nested-unknown", "a thousand lists in an unknown field", &shown(&output));
}

#[test]
fn what_is_not_utf8_is_refused_at_the_byte() {
    let output = check("utf8", b"(\n    title: \"caf\xe9\",\n)\n");
    same_as_kept("bad-not-utf8", "a title in Latin-1", &shown(&output));
    let noise: Vec<u8> = (0..=255).cycle().take(5_000).collect();
    check("noise", &noise);
}

#[test]
fn a_folder_and_a_missing_file_are_told() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::create_dir(folder.path().join("boats.ron")).unwrap();
    for (name, about, file) in
        [("bad-a-folder", "a folder", "boats.ron"), ("bad-no-file", "a file that is not there", "nowhere.ron")]
    {
        for verb in ["check", "tape"] {
            let output = sternknee(folder.path()).args([verb, file]).output().unwrap();
            same_as_kept(name, about, &shown(&output));
        }
    }
}

/// A device without an end is not read to its end.
#[cfg(unix)]
#[test]
fn an_endless_file_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let output = sternknee(folder.path()).args(["check", "/dev/zero"]).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
}
