//! Transom panels against scikit-fem (`panels.py`: fourth-degree triangles, plain displacement method).

mod resting;

use serde_json::Value;
use sternknee::physics::strength::panel::{
    Accuracy, EdgeSupport, Line, LineKind, Load, Panel, PlateStiffness, Rect, Section,
};

const KEPT: &str = include_str!("panels.json");
/// Asked of the solver; the comparison allows it twice over at every probe, for its promise is on the largest deflection.
const ASKED: f64 = 0.0025;

fn number(v: &Value) -> f64 {
    v.as_f64().unwrap()
}

fn point(v: &Value) -> [f64; 2] {
    [number(&v[0]), number(&v[1])]
}

fn array(v: &Value) -> &[Value] {
    v.as_array().unwrap()
}

fn stiffness(case: &Value) -> PlateStiffness {
    let s = |key: &str| number(&case["stiffness"][key]);
    PlateStiffness { d11: s("d11"), d12: s("d12"), d22: s("d22"), d66: s("d66"), s1: s("s1"), s2: s("s2") }
}

fn panel(case: &Value) -> Panel {
    let edge = |v: &Value| match v.as_str().unwrap() {
        "free" => EdgeSupport::Free,
        "simple" => EdgeSupport::Simple,
        "clamped" => EdgeSupport::Clamped,
        other => panic!("{other}"),
    };
    let knee = |v: &Value| {
        let y = number(&v["y"]);
        let foot = number(&case["chine"]) * y.abs() / number(&case["half_width"]);
        let kind = match v["kind"].as_str().unwrap() {
            "supported" => LineKind::Supported,
            _ => LineKind::Elastic { stiffness: number(&v["stiffness"]) },
        };
        Line { from: [y, foot], to: [y, number(&v["top"])], kind }
    };
    Panel {
        outline: array(&case["outline"]).iter().map(point).collect(),
        edges: array(&case["edges"]).iter().map(edge).collect(),
        section: Section::stiffness(stiffness(case)),
        regions: Vec::new(),
        beds: Vec::new(),
        lines: array(&case["knees"]).iter().map(knee).collect(),
    }
}

fn load(v: &Value) -> Load {
    if let Some(pressure) = v["pressure"].as_f64() {
        return Load::Pressure(pressure);
    }
    let area = Rect { centre: point(&v["centre"]), width: number(&v["width"]), height: number(&v["height"]) };
    Load::Patch { area, force: number(&v["force"]) }
}

#[test]
fn panels_with_cutouts_and_partial_supports_agree_with_scikit_fem() {
    let kept: Value = serde_json::from_str(KEPT).unwrap();
    let cases = array(&kept["cases"]);
    assert!(cases.len() >= 10);
    let mut worst = (0.0, "");
    for case in cases {
        let name = case["name"].as_str().unwrap();
        let loads: Vec<Load> = array(&case["loads"]).iter().map(load).collect();
        let accuracy = Accuracy { relative: ASKED, ..Accuracy::default() };
        let solution = panel(case).solve(&loads, accuracy).unwrap();
        let theirs: Vec<f64> = array(&case["deflection"]).iter().map(number).collect();
        let scale = theirs.iter().fold(0.0, |m: f64, w| m.max(w.abs()));
        let difference = array(&case["probes"])
            .iter()
            .zip(&theirs)
            .map(|(at, w)| (solution.deflection_at(point(at)).unwrap() - w).abs() / scale)
            .fold(0.0, f64::max);
        println!(
            "{name}: {difference:.5} of the largest probe (theirs in doubt by {:.0e}; ours states {:.5}, {} unknowns)",
            number(&case["doubt"]),
            solution.error,
            solution.levels.last().unwrap().unknowns,
        );
        assert!(solution.converged, "{name}");
        assert!(difference < 2.0 * ASKED + 2.0 * number(&case["doubt"]), "{name}: {difference}");
        if difference > worst.0 {
            worst = (difference, name);
        }
    }
    println!("largest difference over {} panels: {:.5} ({})", cases.len(), worst.0, worst.1);
}
