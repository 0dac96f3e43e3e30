//! What hardly can be of a boat's readings: asked back at its entry, and nothing that leans on it passes.

use proptest::prelude::*;

use super::{SKIFF, family, faults, opened, questions, skiff, verdict};

/// A line of nonsense: what stands in the skiff, what stands there instead, the entry that is asked about, a word of the
/// question, and a rule that leaned on the reading and passed.
struct Odd {
    was: &'static str,
    is: &'static str,
    entry: &'static str,
    word: &'static str,
    leans: Option<&'static str>,
}

const ODD: &[Odd] = &[
    Odd {
        was: "waterline: \"13-1/2 in\"",
        is: "waterline: \"60 in\"",
        entry: "waterline",
        word: "out of the water, by 34-3/4 in",
        leans: None,
    },
    Odd {
        was: "bottom: (value: \"12 in\", basis: builder, note: \"the offer's drawing\")",
        is: "bottom: \"20 ft\"",
        entry: "engines_on[0].bracket.bottom",
        word: "she is 4 ft deep",
        leans: None,
    },
    Odd {
        was: "bottom: (value: \"12 in\", basis: builder, note: \"the offer's drawing\")",
        is: "bottom: \"40 in\"",
        entry: "engines_on[0].bracket.bottom",
        word: "the transom is 25-1/4 in high",
        leans: None,
    },
    Odd {
        was: "propellers: [left, right],",
        is: "propellers: [left, right], weighed: \"51 lb\",",
        entry: "engines_on[0].weighed",
        word: "weighs about 500 lb",
        leans: Some("weight/transom-rating"),
    },
    Odd {
        was: "forward: \"20 in\", up: \"27 in\"",
        is: "forward: \"20 in\", up: \"19 ft\"",
        entry: "edges[0].up",
        word: "she is 4 ft deep",
        leans: Some("stern/well-edge"),
    },
    Odd {
        was: "forward: \"20 in\", up: \"27 in\"",
        is: "forward: \"20 ft\", up: \"27 in\"",
        entry: "edges[0].forward",
        word: "so far forward",
        leans: Some("stern/well-edge"),
    },
    Odd {
        was: "deadrise: \"21 deg ± 0.5 deg\"",
        is: "deadrise: \"0 deg\"",
        entry: "boat.deadrise",
        word: "21.0 deg",
        leans: Some("height/shaft-match"),
    },
    Odd {
        was: "length: \"24 ft 3 in ± 1 in\"",
        is: "length: \"42 ft 3 in\"",
        entry: "boat.length",
        word: "which of the two is right",
        leans: None,
    },
    Odd {
        was: "chine_beam: \"6 ft 10 in\"",
        is: "chine_beam: \"3 ft 5 in\"",
        entry: "boat.chine_beam",
        word: "82 in",
        leans: None,
    },
    Odd {
        was: "above_water: \"37-1/2 in\"",
        is: "above_water: \"3-1/2 in\"",
        entry: "afloat.marks",
        word: "at the dock. Did she?",
        leans: None,
    },
    Odd {
        was: "up: \"48 in\", above_water: \"37-1/2 in\"),",
        is: "up: \"48 in\", above_water: \"37-1/2 in\"), (what: \"amidships\", forward: \"14 ft\", across: port(\"51 in\"), up: \"39 in\", above_water: \"12 in\"),",
        entry: "afloat.marks",
        word: "off one water plane",
        leans: None,
    },
    Odd { was: "persons: 8, load", is: "persons: 200, load", entry: "plate.persons", word: "200", leans: None },
    Odd {
        was: "builders(persons: 8, load: \"1,130 kg\", power: \"300 hp\")",
        is: "capacity(persons: 8, persons_weight: \"60 lb\", total_weight: \"2,000 lb\", power: \"300 hp\")",
        entry: "plate.persons_weight",
        word: "7.5 lb each",
        leans: None,
    },
    Odd {
        was: "builders(persons: 8, load: \"1,130 kg\", power: \"300 hp\")",
        is: "capacity(persons: 8, persons_weight: \"1,200 lb\", total_weight: \"2,000 lb\", power: \"250 kW\")",
        entry: "plate.power",
        word: "250 kW is 335.3 hp",
        leans: Some("power/plate-limit"),
    },
    Odd {
        was: "power: \"300 hp\"",
        is: "power: \"3,000 hp\"",
        entry: "plate.power",
        word: "3,000 hp",
        leans: Some("power/plate-limit"),
    },
    Odd {
        was: "height: \"25-1/4 in ± 1/8 in\"",
        is: "height: \"25-1/4 in ± 30 in\"",
        entry: "transom.height",
        word: "± 30 in",
        leans: Some("fit/transom-thickness"),
    },
    Odd {
        was: "propellers: [left, right],",
        is: "propellers: [left, right], holes_up: 12,",
        entry: "engines_on[0].holes_up",
        word: "has 5 rows",
        leans: None,
    },
    Odd {
        was: "propellers: [left, right],",
        is: "propellers: [left, right], setback: \"1-1/2 in\",",
        entry: "engines_on[0].setback",
        word: "the bracket's own setback is 30 in",
        leans: None,
    },
    Odd {
        was: "capacity: \"90 gal\"",
        is: "capacity: \"2,900 gal\"",
        entry: "weights.tanks[0].capacity",
        word: "a third of the boat",
        leans: None,
    },
    Odd {
        was: "displacement: \"5,600 lb\"",
        is: "displacement: \"56,000 lb\"",
        entry: "operating.displacement",
        word: "floats",
        leans: None,
    },
    Odd {
        was: "weight: \"180 lb\", forward: \"6 ft\"",
        is: "weight: \"180 lb\", forward: \"60 ft\"",
        entry: "weights.gear[0].forward",
        word: "24 ft 3 in long",
        leans: None,
    },
    Odd {
        was: "across: port(\"20 in\"), both_sides",
        is: "across: port(\"14 ft\"), both_sides",
        entry: "edges[1].across",
        word: "wide",
        leans: None,
    },
];

#[test]
fn nonsense_is_asked_back_at_its_entry_and_what_leans_on_it_does_not_pass() {
    for odd in ODD {
        let job = opened(&skiff(odd.was, odd.is));
        let asked = questions(&job);
        let of_entry = asked.iter().find(|(entry, _)| entry == odd.entry);
        let question = of_entry.unwrap_or_else(|| panic!("{} is not asked about {}: {asked:?}", odd.entry, odd.is));
        assert!(question.1.contains(odd.word), "{}: {}", odd.entry, question.1);
        if let Some(rule) = odd.leans {
            assert_ne!(verdict(&job, rule), "pass", "{rule} passes with {}", odd.is);
        }
    }
}

/// Every pass beside a question stands without the readings in doubt too: what passes is alike in both.
#[test]
fn what_passes_beside_a_question_passes_without_the_reading_too() {
    let with = opened(&skiff("power: \"300 hp\"", "power: \"3,000 hp\""));
    let without = opened(&skiff(", power: \"300 hp\"", ""));
    for rule in
        ["power/plate-limit", "weight/transom-rating", "height/shaft-match", "fit/bolt-pattern", "stern/well-edge"]
    {
        let (with, without) = (family(&with, rule), family(&without, rule));
        let pairs = with.iter().zip(&without).filter(|(one, _)| one.finding.verdict.word() == "pass");
        pairs.for_each(|(one, other)| assert_eq!(one.finding, other.finding, "{}", one.rule.id));
    }
}

/// The question stands before everything else, in text, page and data, and the answer is not given yet.
#[test]
fn a_question_stands_at_the_top_of_text_page_and_data() {
    use sternknee::report::{self, Report, Stamp};
    let text = "(sitting: study, boat: (craft: monohull, length: \"19.5 ft\", beam: \"7 ft\", transom_width: \"7 ft\"), \
        transom: (height: \"20 in\"), steering: remote_mechanical, waterline: \"30 in\", \
        plate: capacity(persons: 8, persons_weight: \"60 lb\", total_weight: \"1,200 lb\", power: \"150 hp\"))";
    let job = opened(text);
    let case = job.case();
    let judged = sternknee::rules::judge_families(&case, |family| family.word() == "power");
    let report = Report { case: &case, judged: &judged, units: sternknee::quantity::Units::Us, explain: false };
    assert_eq!(report.overall().word(), "unmeasured");
    let (words, page) = (report::text_of_all(&report), report::page(&report, &Stamp::default(), &[]));
    for told in [&words, &page] {
        let question = told.to_uppercase().find("ASKED BACK").expect("questions");
        assert!(question < told.find("formula limit").expect("a finding"));
        let in_one_line = told.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(in_one_line.contains("plate.persons_weight") && in_one_line.contains("sure: ["), "{in_one_line}");
    }
    assert_eq!(report::json(&report)["questions"].as_array().map(Vec::len), Some(2));
}

#[test]
fn a_reading_that_was_looked_at_again_is_not_asked_about_twice() {
    let kilowatts = skiff(
        "builders(persons: 8, load: \"1,130 kg\", power: \"300 hp\")",
        "capacity(persons: 8, persons_weight: \"1,200 lb\", total_weight: \"2,000 lb\", power: \"250 kW\")",
    );
    assert_eq!(questions(&opened(&kilowatts)).len(), 1);
    let sure = kilowatts.replacen("made_up: true,", "made_up: true, sure: [\"plate.power\"],", 1);
    let answered = opened(&sure);
    assert!(questions(&answered).is_empty());
    assert_eq!(verdict(&answered, "power/plate-limit"), "pass");
    let assumed = super::assumed(&answered);
    assert!(assumed.contains("`plate.power` was asked back"), "{assumed}");
    let nowhere = sure.replacen("sure: [\"plate.power\"]", "sure: [\"plate.pwoer\"]", 1);
    assert!(faults(&nowhere)[0].contains("is no entry of this job"));
}

#[test]
fn what_cannot_be_is_a_fault_at_its_place() {
    for (was, is, place) in [
        (
            "splash_well: floor(\"12 in\")",
            "splash_well: floor(\"12 in\"), upper_holes: \"36 in\"",
            "transom.upper_holes",
        ),
        ("splash_well: floor(\"12 in\")", "splash_well: floor(\"40 in\")", "transom.splash_well"),
        ("below: \"9-7/8 in\"", "below: \"39-7/8 in\"", "transom.holes[2].below"),
        (
            "(at: port(\"15 in\"), below: \"2 in\")",
            "(at: port(\"15 in\"), below: \"32 in\")",
            "engines_on[0].bolts.at[0].below",
        ),
        ("forward: \"20 in\", up: \"27 in\"", "forward: \"20 in\", up: \"27 ft\"", "edges[0].up"),
        ("year: 2006", "year: 99999", "boat.year"),
    ] {
        let told = faults(&skiff(was, is));
        assert_eq!(told.len(), 1, "{told:?}");
        assert!(told[0].contains(place), "{told:?}");
    }
}

#[test]
fn where_she_sinks_in_one_loading_nothing_of_heights_passes() {
    let loadings = "conditions: [(name: \"sinks\", also: [(what: \"lead\", weight: \"20,000 lb\", forward: \"6 ft\")], crew: [(persons: 2, at: \"helm\")]), (name: \"fine\", crew: [(persons: 2, at: \"helm\")])],\n    edges: [";
    let job = opened(&skiff("    edges: [", loadings));
    for rule in ["stern/freeboard", "stern/scuppers", "stern/well-edge", "stern/bracket-immersion"] {
        assert_ne!(verdict(&job, rule), "pass", "{rule}");
    }
}

#[test]
fn an_old_hole_takes_wood_from_a_bolt_little_by_little() {
    let factor = |below: f64| {
        let hole =
            format!("(at: port(\"15 in\"), below: \"{below} in\", diameter: \"1/2 in\"), (at: port(\"6-7/16 in\")");
        let job = opened(&skiff("(at: port(\"6-7/16 in\")", &hole));
        let rule = sternknee::rules::find("strength/top-edge-tear").expect("the rule");
        (rule.judge)(&job.case()).found.expect("a factor").si
    };
    let (apart_by_124, apart_by_126) = (factor(0.76), factor(0.74));
    assert!((apart_by_126 / apart_by_124 - 1.0).abs() < 0.1, "{apart_by_124} {apart_by_126}");
}

/// A boat of metal whose transom was written as one thick block of it: asked back, and what leans on it waits. Half an inch of it is a plate.
#[test]
fn a_transom_of_two_inches_of_solid_aluminium_is_asked_back() {
    let job = |thickness: &str, lay_up: &str| {
        format!(
            "(boat: (construction: riveted_plate, deadrise: \"14 deg\", transom_width: \"82 in\"), transom: (height: \"20.5 in\", angle: \"13 deg\", thickness: \"{thickness}\", \
             material: \"aluminium 5086-H32 plate\"), structure: ({lay_up}sides: built_in, bottom: built_in, knees: [], stringers: []), operating: (top_speed: \"40 mph\", displacement: \"2,500 lb\"), \
             engines_on: [(class: \"four-stroke 115 hp inline-4\", shaft: \"20 in\", at: [centre], holes_up: 1)])"
        )
    };
    let solid = opened(&job("2 in", ""));
    let [(entry, said)] = &questions(&solid)[..] else { panic!("{:?}", questions(&solid)) };
    assert_eq!(entry, "transom.material");
    assert!(said.contains("2 in of solid aluminium"), "{said}");
    assert_eq!(verdict(&solid, "strength/bending"), "unmeasured");
    assert_eq!(questions(&opened(&job("1/2 in", ""))), []);
    let filled = "lay_up: [(material: \"aluminium 5086-H32 plate\", thickness: \"0.1 in\"), (material: \"Douglas-fir marine plywood\", thickness: \"1.5 in\")], ";
    assert_eq!(questions(&opened(&job("1.6 in", filled))), []);
}

#[test]
fn every_relation_says_why_and_from_where() {
    let relations = sternknee::questions::ALL;
    println!("{} relations, {} facts that can be said twice", relations.len(), sternknee::questions::said_twice());
    for relation in relations {
        assert!(
            relation.name.len() > 10 && relation.why.ends_with('.') && relation.source.ends_with('.'),
            "{}",
            relation.name
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    /// A boat whose readings are all a little other than they were is still the same boat: nothing is asked.
    #[test]
    fn a_boat_taken_a_little_otherwise_is_asked_nothing(
        length in 276..306_i32, beam in 96..108_i32, deadrise in 18..24_i32, height in 24..27_i32, persons in 4..12_u16, weighed in 420..600_i32,
    ) {
        let text = SKIFF
            .replacen("24 ft 3 in ± 1 in", &format!("{length} in"), 1)
            .replacen("beam: \"8 ft 6 in\"", &format!("beam: \"{beam} in\""), 1)
            .replacen("21 deg ± 0.5 deg", &format!("{deadrise} deg"), 1)
            .replacen("25-1/4 in ± 1/8 in", &format!("{height} in"), 1)
            .replacen("persons: 8", &format!("persons: {persons}"), 1)
            .replacen("propellers: [left, right],", &format!("propellers: [left, right], weighed: \"{weighed} lb\","), 1);
        let asked = questions(&opened(&text));
        prop_assert!(asked.is_empty(), "{:?}", asked);
    }
}
