//! Slips in the notation: one fault each, at its place, with what to write.

use super::{faults, skiff};

#[track_caller]
fn one(text: &str, place: &str, words: &[&str]) {
    let told = faults(text);
    assert_eq!(told.len(), 1, "{told:?}");
    for word in [place].iter().chain(words) {
        assert!(told[0].contains(word), "`{word}` is not in: {}", told[0]);
    }
}

#[test]
fn a_reading_without_quotes_is_one_fault() {
    let text = skiff("beam: \"8 ft 6 in\"", "beam: 8 ft 6 in");
    one(&text, "boat.beam", &["stands without quotes", "\"8 ft 6 in\""]);
    let text = skiff("at: [port(\"14 in\"), starboard(\"14 in\")]", "at: [port(14 in), starboard(\"14 in\")]");
    one(&text, "engines_on[0].at", &["\"14 in\""]);
    let text = skiff("waterline: \"13-1/2 in\"", "waterline: 13-1/2\"");
    one(&text, "waterline", &["13-1/2\\\""]);
    assert!(faults(&skiff("count: 3,", "count: 3, /* in all */")).is_empty());
}

#[test]
fn an_inch_mark_inside_the_quotes_is_one_fault() {
    one(
        &skiff("beam: \"8 ft 6 in\"", "beam: \"8' 6\"\""),
        "boat.beam",
        &["the inch mark ends the quotes", "8 ft 6 in"],
    );
    assert!(faults(&skiff("beam: \"8 ft 6 in\"", "beam: \"8' 6\\\"\"")).is_empty());
}

#[test]
fn quotes_that_are_not_closed_are_one_fault() {
    one(&skiff("waterline: \"13-1/2 in\"", "waterline: \"13-1/2 in"), "waterline", &["not closed on their line"]);
    assert!(faults(&skiff("notes: \"Invented: no", "notes: \"Invented:\nno")).is_empty());
}

#[test]
fn a_forgotten_parenthesis_is_one_fault() {
    let text = skiff("note: \"letter from the builder\"),\n    ),", "note: \"letter from the builder\"),\n");
    one(&text, "27:5", &["the parenthesis of `boat` is not closed before `plate`"]);
    let text = skiff(
        "well_floor: bonded,\n        deck: bonded,\n        moisture: \"12 %\",\n        percussion: sharp,\n        signs: none,\n    ),",
        "well_floor: bonded,\n",
    );
    one(&text, "operating", &["structure"]);
}

#[test]
fn a_hyphen_in_a_word_is_told_in_words() {
    one(&skiff("steering: remote_hydraulic", "steering: remote-hydraulic"), "steering", &["remote_hydraulic"]);
}

#[test]
fn points_and_plurals_behind_units_are_read() {
    for (was, is) in [
        ("beam: \"8 ft 6 in\"", "beam: \"102 in.\""),
        ("beam: \"8 ft 6 in\"", "beam: \"8 ft. 6 in.\""),
        ("capacity: \"90 gal\"", "capacity: \"90 gals\""),
    ] {
        assert!(faults(&skiff(was, is)).is_empty(), "{is}");
    }
    one(&skiff("beam: \"8 ft 6 in\"", "beam: \"6’000 mm\""), "boat.beam", &["no whole part"]);
}

#[test]
fn a_class_that_is_not_there_brings_the_nearest_by_its_power() {
    let text = skiff("class: \"four-stroke 150 hp inline-4\"", "class: \"four-stroke 10 hp\"");
    one(&text, "engines_on[0].class", &["four-stroke 9.9 hp"]);
}

#[test]
fn a_wrong_class_hides_no_wrong_bolt_and_no_wrong_bracket() {
    let text = skiff("class: \"four-stroke 150 hp inline-4\"", "class: \"four-stroke 151 hp\"")
        .replacen("box bracket 30 in, twin", "box bracket 31 in, twin", 1)
        .replace("size: \"1/2-13\"", "size: \"1/2-14\"");
    let told = faults(&text).join("\n");
    for entry in
        ["engines_on[0].class", "engines_on[0].bracket.class", "engines_on[0].bolts.size", "engines_off[0].bolts.size"]
    {
        assert!(told.contains(entry), "{entry}: {told}");
    }
}

#[test]
fn a_picture_in_place_of_a_hull_is_told_as_what_it_is() {
    let mut picture = vec![0x89, b'P', b'N', b'G', 0x0d, 0x0a, 0x1a, 0x0a];
    picture.extend((0..4000_u32).map(|i| (i * 37 % 251) as u8));
    let text = "(hull: mesh(file: \"boat.stl\", unit: \"1 mm\"))";
    let read = sternknee::front_door::open("job.ron", text, &super::CATALOG, |_| Ok(picture.clone().into()));
    let faults = read.err().expect("faults").to_string();
    assert!(faults.contains("not a stereolithography file") && !faults.contains("states"), "{faults}");
}

#[test]
fn a_file_outside_the_folder_is_refused() {
    let text = "(hull: mesh(file: \"../boat.stl\", unit: \"1 mm\"))";
    assert!(faults(text).iter().any(|fault| fault.contains("leads out of the job's folder")));
}
