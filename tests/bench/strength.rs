//! How long a skiff's transom takes to solve to 0.5 % of its largest deflection, and the strength of whole jobs.
//!
//! `cargo bench --bench strength`; with `--mesh FILE` it writes the solved mesh and the best time as JSON instead, for
//! `tests/crosscheck/strength/speed.py` to compare with a Python library on the same mesh, and beside them those of one transom
//! under fifty engines.

use std::sync::Arc;

use std::time::Instant;

use sternknee::case::Case;
use sternknee::catalog::Catalog;
use sternknee::physics::strength::panel::{
    Accuracy, Bed, EdgeSupport, Factored, Fineness, Line, LineKind, Load, Meshed, Panel, PanelError, PlateStiffness,
    Rect, Section, Shape,
};
use sternknee::{job, rig};

/// 2.2 m wide, 20° of deadrise, a 0.7 m cutout, two knees; 38 mm plywood tabbed to the hull. Invented.
fn skiff() -> Panel {
    let chine = 0.4;
    let foot = |y: f64| chine * y.abs() / 1.1;
    let knee = |y: f64| Line { from: [y, foot(y)], to: [y, 0.52], kind: LineKind::Supported };
    use EdgeSupport::{Clamped, Free, Simple};
    Panel {
        outline: vec![
            [0.0, 0.0],
            [1.1, chine],
            [1.1, 0.75],
            [0.35, 0.75],
            [0.35, 0.52],
            [-0.35, 0.52],
            [-0.35, 0.75],
            [-1.1, 0.75],
            [-1.1, chine],
        ],
        edges: vec![Clamped, Simple, Free, Free, Free, Free, Free, Simple, Clamped],
        section: Section::stiffness(PlateStiffness { d11: 52e3, d12: 2.5e3, d22: 24e3, d66: 5e3, s1: 9e6, s2: 6e6 }),
        regions: Vec::new(),
        beds: Vec::new(),
        lines: vec![knee(0.6), knee(-0.6)],
    }
}

fn engines() -> Vec<Load> {
    let patch =
        |y: f64, z: f64, force: f64| Load::Patch { area: Rect { centre: [y, z], width: 0.25, height: 0.06 }, force };
    [-0.33, 0.33].into_iter().flat_map(|y| [patch(y, 0.46, -9000.0), patch(y, 0.24, 12_000.0)]).collect()
}

#[divan::bench]
fn skiff_panel_to_half_a_percent(bencher: divan::Bencher) {
    let (panel, loads) = (skiff(), engines());
    bencher.bench_local(|| panel.solve(&loads, Accuracy::default()));
}

/// Without a demand on the fields of moments and shear forces.
#[divan::bench]
fn skiff_panel_deflection_alone_to_half_a_percent(bencher: divan::Bencher) {
    let (panel, loads) = (skiff(), engines());
    let accuracy = Accuracy { fields: f64::INFINITY, ..Accuracy::default() };
    bencher.bench_local(|| panel.solve(&loads, accuracy));
}

/// The skiff's transom as a job's is solved: on springs, its knees as beds, one mesh for every load.
fn rested() -> Result<Factored, PanelError> {
    let shape = Shape { chine: [1.1, 0.4], corner: [1.1, 0.75], cutout: Some([0.35, 0.52]) };
    let outline = shape.outline();
    // Bottom and sides lie below the corners.
    let held = |i: usize| outline[i][1].min(outline[(i + 1) % outline.len()][1]) < 0.45;
    let spring = EdgeSupport::Elastic { deflection: 5e7, turning: 2e4 };
    let edges = (0..outline.len()).map(|i| if held(i) { spring } else { EdgeSupport::Free }).collect();
    let beds = [-0.6, 0.6].map(|y| Bed { from: [y, 0.25], to: [y, 0.5], width: 0.05, stiffness: 3e7 }).to_vec();
    let panel = Panel { outline, edges, beds, lines: Vec::new(), ..skiff() };
    panel.factored(&Arc::new(Meshed::of(shape, Fineness { size: 0.0508, width: 0.0508 })))
}

/// Eight cases of one of fifty engines: upper bolts' washers pull in, the bracket's heel pushes, by how much differs.
fn cases(engine: usize) -> Vec<Vec<Load>> {
    let part = engine as f64 / ENGINES as f64;
    let patch = |y: f64, z: f64, width: f64, height: f64, force: f64| Load::Patch {
        area: Rect { centre: [y, z], width, height },
        force,
    };
    (0..CASES)
        .map(|case| {
            let (force, z) = (1000.0 * (case + 1) as f64, 0.44 + 0.03 * part);
            let washers = [-0.16, 0.16].map(|y| patch(y, z, 0.04, 0.04, -force * (1.0 + part)));
            washers.into_iter().chain([patch(0.0, 0.22, 0.3, 0.05, 2.6 * force)]).collect()
        })
        .collect()
}

const ENGINES: usize = 50;
const CASES: usize = 8;

/// One transom factored once, fifty engines of eight cases each: deflections and means of moments.
fn fifty_engines() -> Result<(Factored, f64), PanelError> {
    let factored = rested()?;
    let mut most = 0.0_f64;
    for engine in 0..ENGINES {
        for loaded in factored.bend(&cases(engine))? {
            most = most.max(loaded.largest_deflection.abs());
        }
    }
    Ok((factored, most))
}

#[divan::bench]
fn one_transom_under_fifty_engines_of_eight_cases(bencher: divan::Bencher) {
    bencher.bench_local(fifty_engines);
}

#[divan::bench]
fn one_transom_meshed_and_factored(bencher: divan::Bencher) {
    bencher.bench_local(rested);
}

/// Everything that the strength of a job asks: bolts, all load cases before and after on the panel, knees.
#[divan::bench(args = ["oyster_skiff", "harbour_launch"])]
fn strength_of_a_job(bencher: divan::Bencher, name: &str) {
    let text = match name {
        "oyster_skiff" => include_str!("../../catalogs/jobs/oyster_skiff.ron"),
        _ => include_str!("../../catalogs/jobs/harbour_launch.ron"),
    };
    let catalog = Catalog::built_in().expect("the built-in catalog is sound");
    let (job, _) = job::load(name, text).expect("the demo is sound");
    let rig = rig::resolve(&job, &catalog).expect("the demo names what the catalog has");
    bencher.bench_local(|| Case::new(&rig).strength().is_ok());
}

/// Best of some runs, s, and the solved mesh.
fn write_mesh(path: &str) -> Result<(), Box<dyn std::error::Error>> {
    let (panel, loads) = (skiff(), engines());
    let mut best = f64::INFINITY;
    let mut solution = panel.solve(&loads, Accuracy::default())?;
    for _ in 0..30 {
        let start = Instant::now();
        solution = panel.solve(&loads, Accuracy::default())?;
        best = best.min(start.elapsed().as_secs_f64());
    }
    let levels: Vec<_> = solution.levels.iter().map(|l| (l.unknowns, l.deflection)).collect();
    let corners = solution.mesh.triangles.iter().flat_map(|t| &t[..3]).max().map_or(0, |n| *n as usize + 1);
    let mut engines = f64::INFINITY;
    for _ in 0..10 {
        let start = Instant::now();
        std::hint::black_box(fifty_engines()?);
        engines = engines.min(start.elapsed().as_secs_f64());
    }
    let (rested, most) = fifty_engines()?;
    let mesh = rested.mesh();
    let rested_corners = mesh.triangles.iter().flat_map(|t| &t[..3]).max().map_or(0, |n| *n as usize + 1);
    let json = serde_json::json!({
        "engines": {
            "seconds": engines,
            "engines": ENGINES,
            "cases": CASES,
            "unknowns": rested.unknowns(),
            "deflection": most,
            "nodes": mesh.nodes[..rested_corners],
            "triangles": mesh.triangles.iter().map(|t| &t[..3]).collect::<Vec<_>>(),
        },
        "seconds": best,
        "nodes": solution.mesh.nodes[..corners],
        "triangles": solution.mesh.triangles.iter().map(|t| &t[..3]).collect::<Vec<_>>(),
        "levels": levels,
        "error": solution.error,
        "converged": solution.converged,
        "deflection": solution.largest_deflection,
        "at": solution.largest_at,
    });
    std::fs::write(path, json.to_string())?;
    Ok(())
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let arguments: Vec<String> = std::env::args().collect();
    match arguments.iter().position(|a| a == "--mesh").and_then(|i| arguments.get(i + 1)) {
        Some(path) => write_mesh(path)?,
        None => divan::main(),
    }
    Ok(())
}
