//! Questions put outright beside a boat: they are no findings of hers.

use sternknee::case::Case;
use sternknee::quantity::Units;
use sternknee::rules::Verdict;

/// A boat that a rigger would send out, with everything told.
const BOAT: &str = include_str!("../boats/sound/19ft_console_poured_core_150hp.ron");
/// A sheet of a millimetre under two tonnes on a square metre: it breaks.
const WEAK: &str = r#"panel_study: (
    shape: rectangle(width: "500 mm", height: "400 mm"),
    stiffness: plate(modulus: "70 GPa", poisson: "0.3", thickness: "1 mm", yield_stress: "100 MPa"),
    edges: [clamped, clamped, clamped, clamped],
    loads: [pressure("20 kPa")],
),"#;
/// Four small bolts under a load that draws them.
const DRAWN: &str = r#"bolt_study: (
    size: "M12", grade: "ISO 898-1 8.8",
    bolts: [(across: "-60 mm", up: "50 mm"), (across: "60 mm", up: "50 mm"), (across: "-60 mm", up: "250 mm"), (across: "60 mm", up: "250 mm")],
    face: (bottom: "0 mm", top: "300 mm", starboard: "-100 mm", port: "100 mm"),
    at: (across: "0 mm", up: "150 mm"), up: "-5 kN", pitch: "-200 kN·m",
),"#;
/// A point on an arm a foot from a wall that it would have to pass.
const STRUCK: &str = r#"swing_study: (
    tilt_axis: (through: ("0 in", "0 in", "0 in"), along: (0, 1, 0)),
    tilt: (from: "0 deg", to: "90 deg"),
    bodies: [(name: "arm", on: swivel, shape: hull(points: [("0 in", "0 in", "0 in"), ("0 in", "0 in", "20 in")], radius: "1 in"))],
    obstacles: [(name: "wall", shape: body(cuboid(from: ("12 in", "-30 in", "-12 in"), to: ("40 in", "30 in", "30 in"))))],
    margin: "1 in",
),"#;

/// A transom is judged by what is known of it, whatever else its job asks: a strong panel asked about beside a weak transom must not pass
/// for it, nor a weak one fail a sound boat.
#[test]
fn a_boat_is_judged_as_without_the_questions_in_her_job() {
    let asked = BOAT.trim_end().trim_end_matches(')').to_owned() + WEAK + DRAWN + STRUCK + "\n)";
    for id in [
        "strength/bending",
        "strength/panel-deflection",
        "strength/bolts-tension",
        "strength/bolts-shear",
        "strength/bolts-combined",
        "swing/full-tilt",
    ] {
        let (alone, beside) = (super::finding(id, BOAT), super::finding(id, &asked));
        assert_eq!(alone.verdict, beside.verdict, "{id}");
        assert_eq!(alone.summary.show(Units::Us), beside.summary.show(Units::Us), "{id}");
    }
    assert_eq!(super::finding("strength/bending", BOAT).verdict, Verdict::Pass);
    let rig = super::rig(&asked);
    let answers = Case::new(&rig).studies();
    let names: Vec<&str> = answers.iter().map(|answer| answer.name).collect();
    assert_eq!(names, ["swing_study", "panel_study", "bolt_study"]);
    let figure = |key: &str| {
        let mut figures = answers.iter().flat_map(|answer| &answer.figures);
        figures.find(|figure| figure.key == key).unwrap_or_else(|| panic!("no {key}")).value
    };
    assert!(figure("strength_over_stress") < 1.0 && figure("proof_over_pull") < 1.0 && figure("attained_m") <= 0.0);
    let told: Vec<String> = answers.iter().flat_map(|answer| &answer.notes).map(|note| note.show(Units::Us)).collect();
    assert!(told.iter().any(|note| note.contains("was to be kept: that is not kept")), "{told:?}");
}

/// S. P. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, table 35, value from memory: the middle of a long edge of a clamped
/// plate of b/a = 1.25 or so takes 0.0665 q a²; of 1.2 it is 0.0639, of 1.3 0.0687. Yield over 6 M / t² is then what is left.
#[test]
fn strength_over_stress_of_a_clamped_plate_is_its_edges() {
    let rig = super::rig(&format!("(sitting: study, {WEAK})"));
    let answers = Case::new(&rig).studies();
    let [answer] = &answers[..] else { panic!("one answer") };
    assert!(answer.in_full && !answer.source.is_empty());
    let figure = |key: &str| answer.figures.iter().find(|figure| figure.key == key).expect("told").value;
    // a = 0.4 m, q = 20 kPa: the moment of a metre of edge, and its stress.
    let moment = 0.0665 * 20e3 * 0.4 * 0.4;
    let stress = 6.0 * moment / (1e-3 * 1e-3);
    // Poisson's part along the edge lowers von Mises' stress: √(1 − ν + ν²).
    let left = 100e6 / (stress * (1.0_f64 - 0.3 + 0.09).sqrt());
    assert!((figure("strength_over_stress") / left - 1.0).abs() < 0.05, "{} {left}", figure("strength_over_stress"));
    assert!((figure("moment_up_n").abs() / moment - 1.0).abs() < 0.05, "{} {moment}", figure("moment_up_n"));
}
