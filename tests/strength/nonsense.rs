//! What cannot be is told at its place.

use sternknee::case::Case;
use sternknee::job;
use sternknee::quantity::Units;
use sternknee::rig;
use sternknee::rules::{self, Verdict};

use super::{CATALOG, KNEES, boat, finding};

/// The paths of all that is wrong with a job.
fn faults(text: &str) -> Vec<String> {
    let draft = job::draft("job.ron", text);
    let mut paths: Vec<String> = draft.faults.iter().map(|fault| fault.path.clone()).collect();
    if paths.is_empty() {
        let job = draft.value.expect("a job");
        match rig::resolve(&job, &CATALOG) {
            Ok(rig) => paths.extend(Case::new(&rig).study_faults().into_iter().map(|fault| fault.path)),
            Err(unresolved) => paths.extend(unresolved.into_iter().map(|one| one.path)),
        }
    }
    paths
}

fn panel(edges: &str, thickness: &str, load: &str) -> String {
    format!(
        r#"(sitting: study, panel_study: (
            shape: rectangle(width: "1 m", height: "0.5 m"),
            stiffness: plate(modulus: "70 GPa", poisson: "0.33", thickness: "{thickness}"),
            edges: [{edges}], loads: [{load}]))"#
    )
}

const HELD: &str = "simple, simple, simple, simple";
const LOAD: &str = "pressure(\"1 kPa\")";

#[test]
fn a_sound_study_has_no_fault() {
    assert!(faults(&panel(HELD, "6 mm", LOAD)).is_empty());
}

#[test]
fn a_panel_that_nothing_holds() {
    assert_eq!(faults(&panel("free, free, free, free", "6 mm", LOAD)), ["panel_study.edges"]);
}

#[test]
fn a_panel_that_can_turn() {
    assert_eq!(faults(&panel("simple, free, free, free", "6 mm", LOAD)), ["panel_study.edges"]);
}

#[test]
fn a_panel_without_thickness() {
    assert_eq!(faults(&panel(HELD, "0 mm", LOAD)), ["panel_study.stiffness.thickness"]);
}

#[test]
fn a_load_beside_the_panel() {
    let load = r#"pressure("1 kPa"), point(across: "2 m", up: "0.1 m", force: "1 kN")"#;
    assert_eq!(faults(&panel(HELD, "6 mm", load)), ["panel_study.loads[1]"]);
}

#[test]
fn too_few_edges() {
    assert_eq!(faults(&panel("simple, simple, simple", "6 mm", LOAD)), ["panel_study.edges"]);
}

#[test]
fn bolts_below_the_transom_and_beside_it() {
    let bolts = r#"at: [(at: port("6 in"), below: "30 in"), (at: port("60 in"), below: "2 in")]"#;
    let text = boat("four-stroke 60 hp inline-4", bolts, KNEES, "");
    assert_eq!(faults(&text), ["engines_on[0].bolts.at[0].below", "engines_on[0].bolts.at[1].at"]);
}

/// Sides and bottom let go are a finding, not a slip of the pen: they are told there, and nothing else is reckoned from them.
#[test]
fn a_transom_that_nothing_holds_is_found() {
    let text = boat("four-stroke 60 hp inline-4", "", "", "")
        .replace("sides: bonded, bottom: bonded", "sides: loose, bottom: loose");
    assert!(faults(&text).is_empty(), "{:?}", faults(&text));
    assert_eq!(finding("strength/tabbing", &text).verdict, Verdict::Fail);
    for rule in rules::ALL.iter().filter(|rule| rule.id.starts_with("strength/")) {
        let found = finding(rule.id, &text);
        if NEEDS_THE_PANEL.contains(&rule.id) {
            let words = found.summary.show(Units::Us);
            assert_eq!(found.verdict, Verdict::NotApplicable, "{}: {words}", rule.id);
            assert!(words.contains("has let go"), "{}: {words}", rule.id);
        }
    }
}

/// What cannot be reckoned without something that holds the transom.
const NEEDS_THE_PANEL: [&str; 3] = ["strength/bending", "strength/core-shear", "strength/panel-deflection"];

#[test]
fn signs_that_nobody_knows_and_years_that_no_boat_has() {
    assert_eq!(faults("(structure: (signs: [weeping_bolts, rattles]))"), ["structure.signs"]);
    assert_eq!(faults("(structure: (signs: weeping))"), ["structure.signs"]);
    assert_eq!(faults("(structure: (signs: 3))"), ["structure.signs"]);
    assert_eq!(faults("(ran: (years: -1, hours: NaN, signs: [rattles]))"), ["ran.signs", "ran.years", "ran.hours"]);
    assert!(faults("(ran: (years: 12, hours: 900.5, signs: none), structure: (signs: weeping_bolts))").is_empty());
}

#[test]
fn a_layer_without_thickness_and_one_that_nobody_knows() {
    let more = r#"lay_up: [(material: "Douglas-fir marine plywood", thickness: "0 in")]"#;
    assert!(
        faults(&boat("four-stroke 60 hp inline-4", "", KNEES, more))
            .contains(&"structure.lay_up[0].thickness".to_owned())
    );
    let more = r#"lay_up: [(material: "driftwood", thickness: "2 in")]"#;
    assert_eq!(faults(&boat("four-stroke 60 hp inline-4", "", KNEES, more)), ["structure.lay_up[0].material"]);
}

#[test]
fn a_bolt_outside_the_face_that_it_holds() {
    let text = r#"(sitting: study, bolt_study: (size: "M12", bolts: [(across: "5 m", up: "0 m")],
        face: (bottom: "-1 m", top: "1 m", starboard: "-1 m", port: "1 m"), at: (across: "0 m", up: "0 m"), up: "1 kN"))"#;
    assert_eq!(faults(text), ["bolt_study.bolts[0]"]);
}
