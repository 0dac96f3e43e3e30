//! Times one equilibrium on a mesh that a script hands over, for `float_pair.py` beside this file.
//!
//! Reads {"vertices", "faces", "mass", "centre", "water"} as JSON from standard input and writes
//! {"nanoseconds", "sorting_nanoseconds", "steps", "offset", "normal"}: the median of many runs, what sorting
//! the triangles cost once before them, and the answer.

use std::hint::black_box;
use std::time::Instant;

use nalgebra::Point3;
use serde::Deserialize;
use sternknee::physics::float::{Hull, Load, TriMesh, equilibrium};
use uom::si::f64::{Mass, MassDensity};
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;

/// Runs that the median is taken of.
const RUNS: usize = 2001;

#[derive(Deserialize)]
struct Given {
    vertices: Vec<[f64; 3]>,
    faces: Vec<[u32; 3]>,
    mass: f64,
    centre: [f64; 3],
    water: f64,
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let given: Given = serde_json::from_reader(std::io::stdin().lock())?;
    let vertices = given.vertices.iter().map(|v| Point3::from(*v)).collect();
    let mesh = TriMesh::new(vertices, given.faces)?;
    let start = Instant::now();
    let hull = Hull::new(mesh);
    let sorting = start.elapsed().as_nanos();
    let load = Load {
        mass: Mass::new::<kilogram>(given.mass),
        centre: Point3::from(given.centre),
        water: MassDensity::new::<kilogram_per_cubic_meter>(given.water),
    };
    let mut times: Vec<u128> = (0..RUNS)
        .map(|_| {
            let start = Instant::now();
            let _ = black_box(equilibrium(black_box(&hull), black_box(&load)));
            start.elapsed().as_nanos()
        })
        .collect();
    times.sort_unstable();
    let outcome = equilibrium(&hull, &load)?;
    let rest = outcome.at_rest().ok_or("no equilibrium")?;
    let answer = serde_json::json!({
        "nanoseconds": times[RUNS / 2] as u64,
        "sorting_nanoseconds": sorting as u64,
        "steps": rest.steps,
        "offset": rest.plane.offset().get::<meter>(),
        "normal": rest.plane.normal().as_slice(),
    });
    println!("{answer}");
    Ok(())
}
