//! What a finding says to do is enough: done on the job, the rule passes.

use sternknee::rules::Verdict;

use super::{KNEES, between, boat, finding, remedy};

#[test]
fn the_bolt_that_is_named_is_enough() {
    let thin = r#"size: "M8", grade: "A2-50""#;
    for engine in ["four-stroke 60 hp inline-4", "four-stroke 115 hp inline-4"] {
        let words = remedy(&finding("strength/bolts-tension", &boat(engine, thin, KNEES, "")));
        let size = between(&words, "Set ", " bolts of");
        for rule in ["strength/bolts-tension", "strength/bolts-combined"] {
            let after = finding(rule, &boat(engine, &thin.replace("M8", size), KNEES, ""));
            assert_eq!(after.verdict, Verdict::Pass, "{engine}: {words}: {after:?}");
        }
    }
}

#[test]
fn the_torque_that_is_named_is_enough() {
    // A plate leaves room between what shuts the joint and what the core bears.
    let plate = r#"size: "1/2-13", grade: "A4-70", washer: "2 in", torque: "TORQUE", thread: paste,
        backing_plate: (material: "aluminium 5083-H116 plate", width: "17 in", height: "12 in", thickness: "1/4 in")"#;
    let at = |torque: &str| {
        finding(
            "strength/bolt-torque",
            &boat("four-stroke 40 hp inline-3", &plate.replace("TORQUE", torque), KNEES, ""),
        )
    };
    let before = at("90 lbf·ft");
    assert!(matches!(before.verdict, Verdict::Warn | Verdict::Fail), "{before:?}");
    let words = remedy(&before);
    let torque = between(&words, " to ", " at most");
    // What is shown is rounded: a pound-foot less is surely within it.
    let most: f64 = torque.split(' ').next().and_then(|number| number.parse().ok()).expect("a torque");
    let after = at(&format!("{} lbf·ft", most - 1.0));
    assert_eq!(after.verdict, Verdict::Pass, "{words}: {after:?}");
}

#[test]
fn what_is_named_against_tearing_out_is_enough_and_can_be_done() {
    let old_hole = r#"holes: [(at: port("6-7/16 in"), below: "7/8 in", diameter: "1-1/4 in"HOW)], upper_holes: "#;
    let bolts = r#"size: "1/2-13", grade: "A4-70", washer: "2 in""#;
    let [mut lower, mut filled, mut more] = [0; 3];
    for engine in ["four-stroke 60 hp inline-4", "four-stroke 115 hp inline-4"] {
        for (thickness, upper, holed) in [
            ("1-1/2 in", "1-7/8 in", false),
            ("1 in", "1-7/8 in", false),
            ("1/4 in", "1-7/8 in", false),
            ("2 in", "1 in", false),
            ("2 in", "1-7/8 in", true),
        ] {
            let job = |upper: &str, how: Option<&str>| {
                let text = boat(engine, bolts, KNEES, "")
                    .replace("thickness: \"2 in\"", &format!("thickness: \"{thickness}\""))
                    .replace("upper_holes: \"1-7/8 in\"", &format!("upper_holes: \"{upper}\""));
                match how {
                    Some(how) => text.replace("upper_holes: ", &old_hole.replace("HOW", how)),
                    None => text,
                }
            };
            let before = finding("strength/top-edge-tear", &job(upper, holed.then_some("")));
            if before.verdict == Verdict::Pass {
                continue;
            }
            let words = remedy(&before);
            let after = if words.starts_with("Plug") {
                filled += 1;
                finding("strength/top-edge-tear", &job(upper, Some(", filled: true")))
            } else if words.starts_with("Drill") {
                lower += 1;
                finding("strength/top-edge-tear", &job(between(&words, "at least ", " below"), None))
            } else {
                more += 1;
                assert!(words.starts_with("Build the transom up"), "{words}");
                continue;
            };
            assert_eq!(after.verdict, Verdict::Pass, "{engine} {thickness} {upper}: {words}: {after:?}");
        }
    }
    assert!(lower > 0 && filled > 0 && more > 0, "{lower} {filled} {more}");
}

#[test]
fn the_torque_that_yards_turn_passes_and_a_jolt_opens_no_joint() {
    let skins = r#"lay_up: [
        (material: "glass/polyester laminate, mat and woven", thickness: "1/4 in"),
        (material: "Douglas-fir marine plywood", thickness: "2 in"),
        (material: "glass/polyester laminate, mat and woven", thickness: "1/4 in"),
    ]"#;
    for (size, washer, torque, engine) in [
        ("1/2-13", "2 in", "40 lbf·ft", "four-stroke 115 hp inline-4"),
        ("3/8-16", "1-1/2 in", "15 lbf·ft", "two-stroke 25 hp inline-2"),
    ] {
        let bolts = format!(r#"size: "{size}", grade: "A4-70", washer: "{washer}", torque: "{torque}", thread: paste"#);
        let text = boat(engine, &bolts, KNEES, skins).replace(
            "thickness: \"2 in\", material: \"Douglas-fir marine plywood\", core",
            "thickness: \"2-1/2 in\", material: \"Douglas-fir marine plywood\", core",
        );
        // On a rough sea the pull of slamming is far more than the preload.
        for acceleration in ["2 gn", "9 gn"] {
            let found = finding("strength/bolt-torque", &text.replace("2 gn", acceleration));
            assert_eq!(found.verdict, Verdict::Pass, "{size} {acceleration}: {found:?}");
        }
    }
}
