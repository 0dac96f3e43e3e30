//! Studies against closed forms, through the job.

use sternknee::case::Case;
use sternknee::job;
use sternknee::quantity::Kind;

use super::rig;

const PLATE: &str = r#"(sitting: study, panel_study: (
    shape: rectangle(width: "1 m", height: "1 m"),
    stiffness: plate(modulus: "200 GPa", poisson: "0.3", thickness: "5 mm"),
    edges: [simple, simple, simple, simple],
    loads: [LOADS],
    accuracy: "0.5 %",
))"#;

fn deflection(loads: &str) -> (f64, f64) {
    let rig = rig(&PLATE.replace("LOADS", loads));
    let case = Case::new(&rig);
    let answer = case.panel_study().expect("a study").expect("an answer");
    (answer.solution.largest_deflection, answer.moments[0].0)
}

/// Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, table 8: a square plate, simply supported, under a
/// uniform load: w = 0.00406 q a⁴ / D, M = 0.0479 q a².
#[test]
fn a_simply_supported_square_is_timoshenkos() {
    let (w, m) = deflection("pressure(\"1 kPa\")");
    let stiffness = 200e9 * 0.005_f64.powi(3) / (12.0 * (1.0 - 0.09));
    let error = w / (0.00406 * 1e3 / stiffness) - 1.0;
    println!("deflection off by {error:.2e}");
    assert!(error.abs() < 0.006, "{error}");
    assert!((m / 47.9 - 1.0).abs() < 0.02, "{m}");
}

#[test]
fn twice_the_load_is_twice_the_deflection() {
    let once =
        deflection("patch(across: \"0.4 m\", up: \"0.6 m\", width: \"0.1 m\", height: \"0.2 m\", force: \"300 N\")");
    let twice =
        deflection("patch(across: \"0.4 m\", up: \"0.6 m\", width: \"0.1 m\", height: \"0.2 m\", force: \"600 N\")");
    assert!((twice.0 / once.0 - 2.0).abs() < 1e-9 && (twice.1 / once.1 - 2.0).abs() < 1e-9);
}

/// Four bolts at the corners of a square, a moment about the lower edge: tension in proportion to the height above it.
#[test]
fn a_pull_off_the_wall_shares_by_height() {
    let text = r#"(sitting: study, bolt_study: (
        size: "M12", grade: "ISO 898-1 8.8",
        bolts: [(across: "-60 mm", up: "50 mm"), (across: "60 mm", up: "50 mm"), (across: "-60 mm", up: "250 mm"), (across: "60 mm", up: "250 mm")],
        face: (bottom: "0 mm", top: "300 mm", starboard: "-100 mm", port: "100 mm"),
        at: (across: "0 mm", up: "150 mm"), up: "-5 kN", pitch: "-2 kN·m",
    ))"#;
    let rig = rig(text);
    let case = Case::new(&rig);
    let answer = case.bolt_study().expect("a study").expect("an answer");
    // 2 kN·m = 2 (N1 · 0.05 + N2 · 0.25), N1 / N2 = 0.05 / 0.25.
    let upper = 2000.0 * 0.25 / (2.0 * (0.05_f64.powi(2) + 0.25_f64.powi(2)));
    assert!((answer.forces.bolts[2].tension - upper).abs() < 1e-9 * upper);
    assert!((answer.forces.bolts[0].tension - upper / 5.0).abs() < 1e-9 * upper);
    assert!((answer.forces.bolts[0].shear - 1250.0).abs() < 1e-9);
    // The height of the forces was told: it is no middle of the bolts.
    let height = answer.sheet.origin_of(usize::MAX, "zm", Kind::Length).expect("a height");
    assert_eq!(height.from, "measured");
}

#[test]
fn the_study_template_is_read_with_everything_uncommented() {
    let text = job::start::template(job::Sitting::Study);
    let from = text.find("    // panel_study").expect("the study");
    let uncommented: String = text[from..]
        .lines()
        .map(|line| {
            let bare = line.trim_start();
            let bare = bare.strip_prefix("// ").unwrap_or(bare);
            if bare.starts_with("A ") || bare.starts_with("// or") || bare.starts_with("//   ") {
                "\n".to_owned()
            } else {
                format!("{bare}\n")
            }
        })
        .collect();
    let text = format!("(sitting: study,\n{uncommented}");
    let rig = rig(&text);
    let case = Case::new(&rig);
    assert!(case.panel_study().expect("a panel").is_ok());
    assert!(case.bolt_study().expect("bolts").is_ok());
}

/// Seen by putting what was begun with one job on the desk with another: its answer stays.
#[test]
fn a_study_solved_while_faults_were_looked_for_is_not_solved_again() {
    let [light, heavy] = ["1 kPa", "2 kPa"].map(|load| rig(&PLATE.replace("LOADS", &format!("pressure(\"{load}\")"))));
    let deflection = |case: &Case| {
        let answer = case.panel_study().expect("a study").expect("an answer");
        answer.solution.largest_deflection
    };
    let first = Case::new(&light);
    assert!(first.study_faults().is_empty() && first.shape_fault().is_none());
    let wanted = deflection(&first);
    let resumed = Case::resume(&heavy, first.lay_aside().0);
    assert_eq!(deflection(&resumed), wanted);
    assert!((deflection(&Case::new(&heavy)) / wanted - 2.0).abs() < 1e-9);
}

#[test]
fn a_study_of_bolts_prints_its_factors_and_tells_them() {
    let text = r#"(sitting: study, bolt_study: (
        size: "M12", GRADE
        bolts: [(across: "-60 mm", up: "50 mm"), (across: "60 mm", up: "50 mm"), (across: "-60 mm", up: "250 mm"), (across: "60 mm", up: "250 mm")],
        face: (bottom: "0 mm", top: "300 mm", starboard: "-100 mm", port: "100 mm"),
        at: (across: "0 mm", up: "150 mm"), up: "-5 kN", pitch: "-2 kN·m",
    ))"#;
    let graded = text.replace("GRADE", "grade: \"ISO 898-1 8.8\",");
    let rig = super::rig(&graded);
    let case = Case::new(&rig);
    let answer = case.bolt_study().expect("a study").expect("an answer");
    let [pull, shear, together] = answer.factors().expect("a grade");
    let printed = |wanted: &str| {
        answer.sheet.lines().iter().find_map(|line| match line {
            sternknee::working::Line::Step { symbol, result, .. } if symbol == wanted => Some(result.si),
            _ => None,
        })
    };
    assert_eq!([printed("fN"), printed("fV")], [Some(pull), Some(shear)]);
    assert!(together < pull.min(shear));
    let told = |text: &str| {
        let rig = super::rig(text);
        let answers = Case::new(&rig).studies();
        let [answer] = &answers[..] else { panic!("one answer") };
        let figures = answer.figures.iter().map(|figure| (figure.key, figure.value)).collect::<Vec<_>>();
        (answer.in_full, figures)
    };
    let (in_full, figures) = told(&graded);
    assert!(in_full);
    for wanted in [("proof_over_pull", pull), ("capacity_over_shear", shear), ("times_together", together)] {
        assert!(figures.contains(&wanted), "{wanted:?}");
    }
    let (in_full, figures) = told(&text.replace("GRADE", ""));
    assert!(!in_full && figures.iter().all(|(key, _)| ["tension_n", "shear_n"].contains(key)), "{figures:?}");
}

/// Of one sort of plate Poisson's ratio is the material's own.
#[test]
fn a_studied_panel_prints_its_stiffness_and_poissons_ratio() {
    let rig = rig(&PLATE.replace("LOADS", "pressure(\"1 kPa\")"));
    let parts = Case::new(&rig).strength_parts();
    let part = parts.iter().find(|part| part.title == "the panel asked about").expect("the panel");
    let ratio = part.sheet.lines().iter().find_map(|line| match line {
        sternknee::working::Line::Step { symbol, result, .. } if symbol == "ν1" => Some(result.si),
        _ => None,
    });
    assert!((ratio.expect("Poisson's ratio") - 0.3).abs() < 1e-9);
    assert!(part.tables.iter().any(|table| table.title.contains("stiffness")));
}
