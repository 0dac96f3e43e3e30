//! Closed surfaces for the floating-body checks, and short ways to say quantities.

use std::cell::Cell;

use nalgebra::{Point2, Point3};
use sternknee::physics::float::{Attitude, Hull, Load, TriMesh, WaterPlane};
use uom::si::f64::{Angle, Length, Mass, MassDensity};
use uom::si::{angle::degree, length::meter, mass::kilogram, mass_density::kilogram_per_cubic_meter};

pub fn m(value: f64) -> Length {
    Length::new::<meter>(value)
}

pub fn kg(value: f64) -> Mass {
    Mass::new::<kilogram>(value)
}

pub fn deg(value: f64) -> Angle {
    Angle::new::<degree>(value)
}

pub fn density(value: f64) -> MassDensity {
    MassDensity::new::<kilogram_per_cubic_meter>(value)
}

pub fn load(mass: f64, centre: [f64; 3], water: f64) -> Load {
    Load { mass: kg(mass), centre: Point3::from(centre), water: density(water) }
}

/// Water at a draft of the origin, trim and heel in degrees.
pub fn plane(draft: f64, trim: f64, heel: f64) -> WaterPlane {
    WaterPlane::at(Attitude { sinkage: m(draft), trim: deg(trim), heel: deg(heel) }).unwrap()
}

/// A box with its transom at x = 0, centred in y, its bottom at z = 0.
pub fn box_hull(length: f64, beam: f64, depth: f64) -> Hull {
    Hull::new(box_mesh(length, beam, depth))
}

pub fn box_mesh(length: f64, beam: f64, depth: f64) -> TriMesh {
    TriMesh::cuboid(Point3::new(0.0, -beam / 2.0, 0.0), Point3::new(length, beam / 2.0, depth)).unwrap()
}

/// A prism along x of a convex section given counter-clockwise in (y, z).
pub fn prism(section: &[Point2<f64>], length: f64) -> TriMesh {
    let n = section.len() as u32;
    let ring = |x: f64| section.iter().map(move |p| Point3::new(x, p.x, p.y));
    let vertices = ring(0.0).chain(ring(length)).collect();
    let mut faces = Vec::new();
    for i in 0..n {
        let j = (i + 1) % n;
        faces.extend([[i, j, n + j], [i, n + j, n + i]]);
    }
    for i in 1..n - 1 {
        faces.extend([[0, i + 1, i], [n, n + i, n + i + 1]]);
    }
    TriMesh::new(vertices, faces).unwrap()
}

/// A regular polygon of n corners, inscribed in a circle, as the section of a prism.
pub fn cylinder(radius: f64, length: f64, n: usize) -> TriMesh {
    let section: Vec<_> = (0..n)
        .map(|i| {
            let angle = std::f64::consts::TAU * (i as f64 + 0.5) / n as f64;
            Point2::new(radius * angle.cos(), radius * angle.sin())
        })
        .collect();
    prism(&section, length)
}

/// A surface of revolution about z: rings of n corners at (radius, height), from the lower pole up.
pub fn turned(profile: &[(f64, f64)], n: usize) -> TriMesh {
    let mut vertices = Vec::new();
    let mut rings = Vec::new();
    for &(radius, height) in profile {
        let start = vertices.len() as u32;
        if radius == 0.0 {
            vertices.push(Point3::new(0.0, 0.0, height));
            rings.push((start, false));
        } else {
            vertices.extend((0..n).map(|i| {
                let angle = std::f64::consts::TAU * i as f64 / n as f64;
                Point3::new(radius * angle.cos(), radius * angle.sin(), height)
            }));
            rings.push((start, true));
        }
    }
    let mut faces = Vec::new();
    for pair in rings.windows(2) {
        for i in 0..n as u32 {
            let j = (i + 1) % n as u32;
            match (pair[0], pair[1]) {
                ((pole, false), (ring, true)) => faces.push([pole, ring + j, ring + i]),
                ((ring, true), (pole, false)) => faces.push([pole, ring + i, ring + j]),
                ((low, _), (high, _)) => {
                    faces.extend([[low + i, low + j, high + j], [low + i, high + j, high + i]]);
                }
            }
        }
    }
    TriMesh::new(vertices, faces).unwrap()
}

/// A sphere of 2n meridians and n rings.
pub fn sphere(radius: f64, n: usize) -> TriMesh {
    let profile: Vec<_> = (0..=n)
        .map(|i| {
            let angle = std::f64::consts::PI * i as f64 / n as f64;
            let edge = i == 0 || i == n;
            let r = if edge { 0.0 } else { radius * angle.sin() };
            (r, -radius * angle.cos())
        })
        .collect();
    turned(&profile, 2 * n)
}

/// The Wigley hull y = ±B/2 (1 − (2x/L)²)(1 − (1 − z/T)²) for z from the keel (0) to T, with a wall from
/// there up to 2T; x from 0 to L here. n pieces over length and over depth.
pub fn wigley(length: f64, beam: f64, draft: f64, n: usize) -> TriMesh {
    let stations: Vec<sternknee::physics::float::Station> = (0..=n)
        .map(|i| {
            let x = length * i as f64 / n as f64;
            let along = 2.0 * x / length - 1.0;
            let full = beam / 2.0 * (1.0 - along * along);
            let mut points: Vec<_> = (0..=n)
                .map(|k| {
                    let z = k as f64 / n as f64;
                    Point2::new(full * (1.0 - (1.0 - z) * (1.0 - z)), draft * z)
                })
                .collect();
            points.push(Point2::new(full, 2.0 * draft));
            sternknee::physics::float::Station { x: m(x), points }
        })
        .collect();
    let lofting = sternknee::physics::float::Lofting {
        fairing: sternknee::physics::float::Fairing::Straight,
        slices: 1,
        ..Default::default()
    };
    sternknee::physics::float::mesh_from_offsets(&stations, &lofting).unwrap().mesh
}

/// A planing boat of five sections: deadrise aft, a rising forefoot, a stem. Invented.
pub fn runabout(slices: usize) -> TriMesh {
    use sternknee::physics::float::{Lofting, TapeSection, mesh_from_tape};
    let section = |x: f64, keel: f64, chine: [f64; 2], sheer: [f64; 2]| TapeSection {
        x: m(x),
        keel: m(keel),
        bottom_knuckles: Vec::new(),
        chine: Point2::from(chine),
        side_knuckles: Vec::new(),
        sheer: Point2::from(sheer),
    };
    let sections = [
        section(0.0, 0.0, [0.95, 0.34], [1.10, 0.95]),
        section(2.0, 0.0, [0.97, 0.35], [1.15, 0.97]),
        section(3.6, 0.02, [0.85, 0.42], [1.12, 1.02]),
        section(4.8, 0.20, [0.50, 0.60], [0.85, 1.10]),
        section(5.8, 0.85, [0.0, 0.95], [0.0, 1.20]),
    ];
    let lofting = Lofting { slices, ..Lofting::default() };
    mesh_from_tape(&sections, &lofting).unwrap().mesh
}

thread_local! {
    /// Largest relative error that `close` has met in this test, which has a thread to itself.
    static LARGEST: Cell<f64> = const { Cell::new(0.0) };
}

/// Asserts that two numbers agree within a part of the larger (or of 1e-300, for zeros). Prints each error
/// that is the largest of its test so far: the last line of a test tells its largest.
#[track_caller]
pub fn close(found: f64, expected: f64, relative: f64) {
    let scale = found.abs().max(expected.abs()).max(1e-300);
    let error = (found - expected).abs() / scale;
    if error > LARGEST.get() {
        LARGEST.set(error);
        let test = std::thread::current().name().unwrap_or_default().to_owned();
        println!("{test}: relative error {error:.1e}");
    }
    assert!(error <= relative, "found {found}, expected {expected}: relative difference {error:.2e}");
}

/// Asserts that two numbers agree within a distance.
#[track_caller]
pub fn near(found: f64, expected: f64, within: f64) {
    assert!(
        (found - expected).abs() <= within,
        "found {found}, expected {expected}: difference {:.2e}",
        (found - expected).abs()
    );
}
