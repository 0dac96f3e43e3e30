//! Plates on edge springs and beds against scikit-fem (`resting.py`): deflections, and means of moments over a window.

use std::sync::Arc;

use serde_json::Value;
use sternknee::physics::strength::panel::{Accuracy, Bed, EdgeSupport, Fineness, Meshed, Panel, Section, Shape};

use super::{array, load, number, point, stiffness};

const KEPT: &str = include_str!("resting.json");
/// Allowed of a mesh whose triangles are as wide as the window, as transoms have it, and of one twice as fine: deflections,
/// means.
const ALLOWED: [[f64; 2]; 2] = [[0.005, 0.02], [0.002, 0.005]];
/// The same where a washer is narrower than the triangles, on a core that is soft in shear.
const ALLOWED_UNDER_WASHER: [[f64; 2]; 2] = [[0.02, 0.035], [0.005, 0.01]];

fn panel(case: &Value, shape: Shape) -> Panel {
    let edge = |v: &Value| match (number(&v[0]), number(&v[1])) {
        (0.0, _) => EdgeSupport::Free,
        (deflection, turning) => EdgeSupport::Elastic { deflection, turning },
    };
    let bed = |v: &Value| {
        let ([y, z], half) = (point(&v["centre"]), 0.5 * number(&v["height"]));
        let (width, stiffness) = (number(&v["width"]), number(&v["stiffness"]));
        Bed { from: [y, z - half], to: [y, z + half], width, stiffness }
    };
    Panel {
        outline: shape.outline(),
        edges: array(&case["springs"]).iter().map(edge).collect(),
        section: Section::stiffness(stiffness(case)),
        regions: Vec::new(),
        lines: Vec::new(),
        beds: array(&case["beds"]).iter().map(bed).collect(),
    }
}

/// The greatest difference of any, as a part of the greatest of all.
fn off(found: &[f64], theirs: &[f64]) -> f64 {
    let scale = theirs.iter().fold(0.0, |m: f64, v| m.max(v.abs()));
    found.iter().zip(theirs).map(|(a, b)| (a - b).abs() / scale).fold(0.0, f64::max)
}

#[test]
fn plates_on_springs_and_beds_agree_with_scikit_fem() {
    let kept: Value = serde_json::from_str(KEPT).unwrap();
    let (half, height, width) = (number(&kept["half"]), number(&kept["height"]), number(&kept["width"]));
    let shape = Shape { chine: [half, 0.0], corner: [half, height], cutout: None };
    for case in array(&kept["cases"]) {
        let name = case["name"].as_str().unwrap();
        let panel = panel(case, shape);
        let loads: Vec<_> = array(&case["loads"]).iter().map(load).collect();
        let probes: Vec<_> = array(&case["probes"]).iter().map(point).collect();
        let deflection: Vec<f64> = array(&case["deflection"]).iter().map(number).collect();
        let moments: Vec<f64> = array(&case["moments"]).iter().flat_map(array).map(number).collect();
        let doubt = point(&case["doubt"]);
        let narrow = array(&case["loads"]).iter().any(|load| number(&load["width"]) < width);
        for (times, allowed) in [1.0, 0.5].into_iter().zip(if narrow { ALLOWED_UNDER_WASHER } else { ALLOWED }) {
            let factored =
                panel.clone().factored(&Arc::new(Meshed::of(shape, Fineness { size: times * width, width }))).unwrap();
            let loaded = factored.bend(&[&loads]).unwrap().remove(0);
            let nodes = factored.moments_at_nodes(&loaded);
            let moved: Vec<f64> = probes.iter().map(|at| factored.deflection_at(&loaded, *at).unwrap()).collect();
            let means: Vec<f64> = array(&case["windows"])
                .iter()
                .map(point)
                .flat_map(|[y, z]| {
                    let here = |at: [f64; 2]| (at[0] - y).hypot(at[1] - z) < 1e-9;
                    nodes.iter().find(|mean| here(mean.at)).unwrap().moment
                })
                .collect();
            let found = [off(&moved, &deflection), off(&means, &moments)];
            println!("{name}: {} unknowns, deflections {:.5}, means {:.5}", factored.unknowns(), found[0], found[1]);
            for k in 0..2 {
                assert!(found[k] < allowed[k] + 2.0 * doubt[k], "{name}: {k} {} of {}", found[k], allowed[k]);
            }
        }
        let solution = panel.solve(&loads, Accuracy { relative: 0.0025, ..Accuracy::default() }).unwrap();
        let moved: Vec<f64> = probes.iter().map(|at| solution.deflection_at(*at).unwrap()).collect();
        let found = off(&moved, &deflection);
        println!("{name}: made finer, {} unknowns, deflections {found:.5}", solution.levels.last().unwrap().unknowns);
        assert!(solution.converged && found < 0.005 + 2.0 * doubt[0], "{name}: {found}");
    }
}
