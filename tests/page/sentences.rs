//! Where a sentence ends, on a report's first screen.

use sternknee::quantity::Units;
use sternknee::report;

use super::with_report;

/// The first screen's words and what is to be done about wires, of a job with circuits of these names that draw too much.
fn rewired(names: &[&str]) -> (String, String) {
    let circuit =
        |name: &&str| format!("(name: \"{name}\", wire: (class: \"10 AWG\"), length: \"6 ft\", current: \"60 A\"),");
    let circuits: String = names.iter().map(circuit).collect();
    with_report(&format!("(title: \"t\", rigging: (electrical: (circuits: [{circuits}])))"), |report| {
        let words = report::text(report).split_whitespace().collect::<Vec<_>>().join(" ");
        let finding = &report.judged.iter().find(|one| one.rule.id == "electrical/ampacity").expect("the rule").finding;
        (words, finding.remedy.as_ref().expect("a remedy").show(Units::Us))
    })
}

#[test]
fn a_sentence_ends_before_a_capital() {
    let (words, alone) = rewired(&["3.5 in. pump"]);
    assert!(alone.starts_with("Rewire the 3.5 in. pump with ") && alone.ends_with('.'), "{alone}");
    assert!(words.contains(&format!("Do: {alone}")), "{words}");
    let (words, both) = rewired(&["3.5 in. pump", "windlass"]);
    assert!(both.starts_with(&format!("{alone} Rewire the windlass with ")), "{both}");
    assert!(words.contains(&format!("Do: {alone}")) && !words.contains(&format!("Do: {both}")), "{words}");
}
