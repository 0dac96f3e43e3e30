//! A text that somebody wrote: where its entries and remarks stand, and one entry altered with every other byte as it was.

use sternknee::written::{Draught, NoEdit, Page};

fn put(text: &str, path: &str, value: &str) -> String {
    Draught::new(text).put(path, value).expect("a place")
}

#[test]
fn a_value_is_altered_and_every_other_byte_stays() {
    let text = "(\n    // hers\n    boat: (length: \"16 ft\", /* by tape */ beam: \"7 ft\"),\n    odd: 3,\n)\n";
    assert_eq!(put(text, "boat.length", "\"17 ft\""), text.replace("16 ft", "17 ft"));
}

#[test]
fn a_new_field_follows_the_last_with_its_indent_and_behind_its_remark() {
    let text = "(\n    boat: (\n        length: \"16 ft\"   // over the deck\n    ),\n)\n";
    let more = "(\n    boat: (\n        length: \"16 ft\",   // over the deck\n        beam: \"7 ft\",\n    ),\n)\n";
    assert_eq!(put(text, "boat.beam", "\"7 ft\""), more);
    assert_eq!(
        put("(boat: (length: \"16 ft\"))", "boat.beam", "\"7 ft\""),
        "(boat: (length: \"16 ft\", beam: \"7 ft\"))"
    );
}

#[test]
fn what_holds_a_new_entry_is_put_in_too() {
    assert_eq!(put("()", "transom.heights[0].at", "centre"), "(transom: (heights: [(at: centre)]))");
    let text = "(\n    engines_on: [\n        // (class: \"\"),\n    ],\n)";
    assert_eq!(
        put(text, "engines_on[0].class", "\"four\""),
        "(\n    engines_on: [\n        (class: \"four\"),\n        // (class: \"\"),\n    ],\n)"
    );
    assert_eq!(put("(plate: capacity)", "plate.persons", "6"), "(plate: capacity(persons: 6))");
    assert_eq!(
        put("(plate: capacity(persons: 6))", "plate.power", "\"9 hp\""),
        "(plate: capacity(persons: 6, power: \"9 hp\"))"
    );
    assert_eq!(put("", "title", "\"x\""), "(\n    title: \"x\",\n)\n");
}

#[test]
fn an_entry_is_taken_out_with_its_line_and_no_remark_of_another() {
    let text = "(\n    // of length\n    length: \"16 ft\",\n    beam: \"7 ft\", // of beam\n)";
    assert_eq!(Draught::new(text).without("length"), "(\n    // of length\n    beam: \"7 ft\", // of beam\n)");
    assert_eq!(Draught::new("(a: 1, b: 2)").without("a"), "(b: 2)");
    assert_eq!(Draught::new("(a: 1)").without("b"), "(a: 1)");
}

#[test]
fn a_place_that_cannot_hold_an_entry_is_told() {
    let put = |text, path| Draught::new(text).put(path, "1");
    assert!(matches!(put("(boat: \"x\")", "boat.length"), Err(NoEdit::NoRoom(_))));
    assert!(matches!(put("(at: [1])", "at[3]"), Err(NoEdit::NotNext(_))));
    assert!(matches!(put("(at: (a: 1))", "at[0]"), Err(NoEdit::NoRoom(_))));
}

proptest::proptest! {
    #[test]
    fn what_was_put_is_found_and_what_stood_there_stays(
        text in r#"[a-c"\\()\[\]:,/*\n ]{0,60}"#, path in r"[a-c](\.[a-c]|\[0\]){0,3}",
    ) {
        let before = Draught::new(&text);
        if let Ok(after) = before.put(&path, "\"here\"") {
            let kept: String = text.chars().filter(|c| *c == '/' || *c == '*').collect();
            let still: String = after.chars().filter(|c| *c == '/' || *c == '*').collect();
            proptest::prop_assert!(before.entries().any(|said| said.path == path) || still == kept);
        }
        before.without(&path);
    }

    #[test]
    fn what_was_put_into_a_sound_text_is_found(fields in proptest::collection::vec("[a-d]", 0..4), path in r"[a-d](\.[e-g]|\[0\]){0,3}") {
        let mut fields = fields;
        fields.sort();
        fields.dedup();
        let inner: Vec<String> = fields.iter().map(|field| format!("{field}: (h: 1), // remark of {field}\n")).collect();
        let text = format!("(\n{})", inner.concat());
        if let Ok(after) = Draught::new(&text).put(&path, "\"here\"") {
            let after = Draught::new(&after);
            proptest::prop_assert!(after.entries().any(|said| said.path == path && said.value == "\"here\""), "{}", after.text());
            proptest::prop_assert_eq!(after.text().matches("remark").count(), fields.len());
        }
    }
}

#[test]
fn every_entry_is_found_by_its_path() {
    let text = r#"// a job
( boat: ( beam: "8 ft", /* wide ( */ name: "a, b: (c" ), at: [port("14 in"), centre],
  plate: us(persons: 6) )"#;
    let page = Page::new("job.ron", text);
    let value = |path: &str| &text[page.fault(path, "", "").span];
    assert_eq!(value("boat.beam"), "\"8 ft\"");
    assert_eq!(value("boat.name"), "\"a, b: (c\"");
    assert_eq!(value("at[1]"), "centre");
    assert_eq!(value("at[0]"), "port(\"14 in\")");
    assert_eq!(value("plate.persons"), "6");
    assert_eq!(value("plate.power"), "us(persons: 6)");
}

#[test]
fn every_remark_is_found_once_and_none_in_a_string() {
    let text = "// first\n(a: one /* of a */ (b: \"// no\", /* x /* y */ z */ c: r#\"/* no */\"#)) // last";
    let draught = Draught::new(text);
    let all: Vec<&str> = draught.remarks().collect();
    assert_eq!(all, ["// first", "/* of a */", "/* x /* y */ z */", "// last"]);
}

proptest::proptest! {
    #[test]
    fn no_text_stops_the_scanner(text in r#"[a-z"\\()\[\]{}:,/*#r' \n]{0,80}"#) {
        Draught::new(&text);
    }
}
