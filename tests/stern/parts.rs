//! What is told of how she floats besides the findings: ledgers, measures, what was taken for granted.

use sternknee::case::Case;
use sternknee::quantity::Units;
use sternknee::rules::{self, Verdict};
use sternknee::working::Part;

use crate::{finding, ledger, rig, skiff};

/// The rows of the table of a part that begins so.
fn rows(parts: &[Part], title: &str) -> Vec<Vec<String>> {
    let part = parts.iter().find(|part| part.title.starts_with(title));
    let part = part.unwrap_or_else(|| {
        panic!("no {title} in {:?}", parts.iter().map(|part| part.title.as_str()).collect::<Vec<_>>())
    });
    part.tables[0].rows.iter().map(|row| row.iter().map(|cell| cell.show(Units::Us)).collect()).collect()
}

#[test]
fn what_hangs_aft_and_what_is_aboard_is_told_item_by_item() {
    let rig = rig(&skiff(300.0, 6.0, &ledger(20.0)));
    let parts = Case::new(&rig).weights();
    for (side, weight, off) in [("before", "250 lb", "0 in"), ("after", "300 lb", "6 in")] {
        let engine = &rows(&parts, side)[0];
        assert_eq!([engine[1].as_str(), &engine[2]], [weight, off], "{side}");
    }
    for (loading, together) in [("light, before", "1,150 lb"), ("light, after", "1,200 lb")] {
        let rows = rows(&parts, loading);
        assert!(rows.iter().any(|row| row[1..] == ["900 lb", "84 in", "0 in", "14 in"]), "{rows:?}");
        let last = rows.last().expect("a sum");
        assert_eq!([last[0].as_str(), &last[1]], ["together", together]);
    }
    // 300 lb × 6 in over 1,200 lb.
    assert_eq!(rows(&parts, "light, after").last().expect("a sum")[3], "1-1/2 in");
}

#[test]
fn the_hull_is_told_as_broad_and_high_as_her_sections() {
    let rig = rig(&skiff(300.0, 0.0, &ledger(20.0)));
    let parts = Case::new(&rig).float_parts();
    let told =
        |what: &str| rows(&parts, "the hull").into_iter().find(|row| row[0] == what).expect("a measure").remove(1);
    // Twice 40 in, and the stem's 36 in.
    assert_eq!([told("beam"), told("height")], ["6 ft 8 in", "3 ft"]);
}

/// New engines alone have legs as well.
#[test]
fn that_legs_displace_nothing_is_said_wherever_an_engine_hangs() {
    let said = |text: &str| {
        let rig = rig(text);
        let case = Case::new(&rig);
        let float = case.float().unwrap();
        float.assumed.iter().any(|words| words.show(Units::Us).contains("legs are taken to displace nothing"))
    };
    let both = skiff(300.0, 0.0, &ledger(20.0));
    let lines =
        |from: &str| both.lines().filter(|line| !line.trim_start().starts_with(from)).collect::<Vec<_>>().join("\n");
    assert!(said(&both));
    assert!(said(&lines("engines_off")));
    assert!(said(&lines("engines_on")));
}

/// The same people on the same seats twice over.
#[test]
fn of_loadings_that_are_alike_the_first_is_named() {
    let loading = |name: &str| format!("(name: \"{name}\", crew: [(persons: 2, forward: \"5 ft\", above: \"25 in\")])");
    let conditions = format!("conditions: [{}, {}],", loading("out to the banks"), loading("back from the banks"));
    let words = finding("stern/metacentric-height", &skiff(300.0, 0.0, &format!("{} {conditions}", ledger(20.0))));
    let words = words.summary.show(Units::Us);
    assert!(words.contains("`out to the banks`"), "{words}");
}

/// A battery that stands too far to one side is no matter of the weight on the stern, however much hangs there.
#[test]
fn a_list_does_not_come_from_the_weight_on_the_stern() {
    let more = format!(
        "{} boat: (transom_rating: \"200 lb\"), \
         goes_on: [(what: \"battery\", weight: \"70 lb\", forward: \"2 ft\", across: port(\"24 in\"), above: \"12 in\")],",
        ledger(17.0)
    );
    let rig = rig(&skiff(700.0, 0.0, &more));
    let judged = rules::judge(&Case::new(&rig));
    let one = |id: &str| &judged.iter().find(|one| one.rule.id == id).expect("the rule").finding;
    assert_eq!(one("weight/transom-rating").verdict, Verdict::Fail);
    assert_eq!((one("stern/well-edge").verdict, one("stern/list").verdict), (Verdict::Warn, Verdict::Warn));
    assert_eq!(one("stern/well-edge").cause.map(|comes| comes.lead), Some("weight/transom-rating"));
    assert_eq!(one("stern/list").cause, None);
}

/// A job that tells nothing of how she floats is told of what hangs aft alone; one that begins to, what is lacking.
#[test]
fn the_whole_boat_is_spoken_of_only_where_the_job_asks_how_she_floats() {
    let engines = r#"engines_on: [(described: (running_weight: "500 lb"), at: [centre])]"#;
    let titles = |text: &str| {
        let rig = rig(text);
        let parts = Case::new(&rig).weights();
        parts.iter().map(|part| part.title.clone()).collect::<Vec<_>>()
    };
    assert_eq!(titles(&format!("({engines})")), ["before", "after"]);
    assert_eq!(
        titles(&format!("({engines}, weights: (boat: (weight: \"900 lb\")))")),
        ["before", "after", "the whole boat"]
    );
}
