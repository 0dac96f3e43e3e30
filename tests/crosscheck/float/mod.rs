//! Cuts and equilibria against trimesh, numpy and scipy: `crosscheck.py` beside this file.

use std::path::Path;

use nalgebra::{Point3, Vector3};
use serde::Deserialize;
use sternknee::physics::float::{Attitude, Hull, Load, TriMesh, WaterPlane, equilibrium};
use uom::si::angle::degree;
use uom::si::area::square_meter;
use uom::si::f64::{Angle, Length, Mass, MassDensity};
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::volume::cubic_meter;

/// Largest relative difference allowed; lengths and vectors are measured by the hull's half diagonal,
/// areas, volumes and moments by themselves or a thousandth of the power of that length, if larger.
const TOLERANCE: f64 = 1e-6;
/// Fewest cuts and equilibria that make the comparison worth its name.
const FEWEST: usize = 20;

#[derive(Deserialize)]
struct Hulls {
    water_kg_m3: f64,
    hulls: Vec<Shape>,
}

#[derive(Deserialize)]
struct Shape {
    name: String,
    vertices: Vec<[f64; 3]>,
    faces: Vec<[u32; 3]>,
    cuts: Vec<[f64; 3]>,
    loads: Vec<[f64; 4]>,
}

#[derive(Deserialize)]
struct Results {
    hulls: Vec<Kept>,
}

#[derive(Deserialize)]
struct Kept {
    name: String,
    cuts: Vec<Cut>,
    equilibria: Vec<Rest>,
}

#[derive(Deserialize)]
struct Cut {
    volume: f64,
    centre: [f64; 3],
    area: f64,
    area_centre: [f64; 3],
    second_longitudinal: f64,
    second_transverse: f64,
    product: f64,
    wetted: f64,
}

#[derive(Deserialize)]
struct Rest {
    residual: f64,
    offset: f64,
    normal: [f64; 3],
    centre: [f64; 3],
    gm_transverse: f64,
    gm_longitudinal: f64,
}

fn read<T: for<'de> Deserialize<'de>>(name: &str) -> T {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/crosscheck/float").join(name);
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn shapes() -> (f64, Vec<(Shape, Kept, Hull)>) {
    let (hulls, results): (Hulls, Results) = (read("hulls.json"), read("results.json"));
    assert_eq!(hulls.hulls.len(), results.hulls.len());
    let shapes = hulls.hulls.into_iter().zip(results.hulls).map(|(shape, kept)| {
        assert_eq!(shape.name, kept.name);
        let vertices = shape.vertices.iter().map(|v| Point3::from(*v)).collect();
        let hull = Hull::new(TriMesh::new(vertices, shape.faces.clone()).unwrap());
        (shape, kept, hull)
    });
    (hulls.water_kg_m3, shapes.collect())
}

fn half_diagonal(hull: &Hull) -> f64 {
    let (low, high) = hull.bounds();
    0.5 * (high - low).norm()
}

/// Keeps the largest difference of each kind, with where it was.
#[derive(Default)]
struct Worst(Vec<(&'static str, f64, String)>);

impl Worst {
    fn take(&mut self, what: &'static str, found: f64, kept: f64, least_scale: f64, at: &str) {
        let error = (found - kept).abs() / kept.abs().max(least_scale);
        let error = if error.is_nan() { f64::INFINITY } else { error };
        match self.0.iter_mut().find(|(name, ..)| *name == what) {
            Some(entry) if entry.1 < error => *entry = (what, error, at.to_owned()),
            Some(_) => {}
            None => self.0.push((what, error, at.to_owned())),
        }
    }

    fn finish(self) {
        for (what, error, at) in &self.0 {
            println!("{what}: largest relative error {error:.1e} ({at})");
        }
        for (what, error, at) in &self.0 {
            assert!(*error <= TOLERANCE, "{what}: {error:e} at {at}");
        }
    }
}

#[test]
fn cuts_agree_with_sliced_and_capped_meshes() {
    let mut worst = Worst::default();
    let mut count = 0;
    for (shape, kept, hull) in shapes().1 {
        let l = half_diagonal(&hull);
        assert_eq!(shape.cuts.len(), kept.cuts.len());
        for (cut, kept) in shape.cuts.iter().zip(&kept.cuts) {
            let [offset, trim, heel] = *cut;
            let plane = WaterPlane::at(Attitude {
                sinkage: Length::new::<meter>(offset),
                trim: Angle::new::<degree>(trim),
                heel: Angle::new::<degree>(heel),
            })
            .unwrap();
            let found = hull.cut(&plane);
            let at = format!("{} {cut:?}", shape.name);
            let face = found.waterplane;
            let volume = found.volume.get::<cubic_meter>();
            worst.take("volume", volume, kept.volume, 1e-3 * l.powi(3), &at);
            let off = (found.centre_of_buoyancy - Point3::from(kept.centre)).norm();
            worst.take("centre of buoyancy", off, 0.0, l, &at);
            let area = face.area.get::<square_meter>();
            worst.take("waterplane area", area, kept.area, 1e-3 * l * l, &at);
            let off = (face.centroid - Point3::from(kept.area_centre)).norm();
            worst.take("waterplane centroid", off, 0.0, l, &at);
            for (found, kept) in [
                (face.second_moment_longitudinal_m4, kept.second_longitudinal),
                (face.second_moment_transverse_m4, kept.second_transverse),
                (face.product_moment_m4, kept.product),
            ] {
                worst.take("second moments", found, kept, 1e-3 * l.powi(4), &at);
            }
            let wetted = found.wetted_surface.get::<square_meter>();
            worst.take("wetted surface", wetted, kept.wetted, 1e-3 * l * l, &at);
            count += 1;
        }
    }
    println!("{count} cuts");
    assert!(count >= FEWEST);
    worst.finish();
}

#[test]
fn equilibria_agree_with_a_general_root_finder() {
    let mut worst = Worst::default();
    let mut count = 0;
    let (water, shapes) = shapes();
    for (shape, kept, hull) in shapes {
        let l = half_diagonal(&hull);
        assert_eq!(shape.loads.len(), kept.equilibria.len());
        for (numbers, kept) in shape.loads.iter().zip(&kept.equilibria) {
            assert!(kept.residual < 1e-9, "the root finder did not converge");
            let [mass, x, y, z] = *numbers;
            let load = Load {
                mass: Mass::new::<kilogram>(mass),
                centre: Point3::new(x, y, z),
                water: MassDensity::new::<kilogram_per_cubic_meter>(water),
            };
            let at = format!("{} {numbers:?}", shape.name);
            let outcome = equilibrium(&hull, &load).unwrap();
            let found = outcome.at_rest().unwrap_or_else(|| panic!("{at}: {outcome:?}"));
            worst.take("water plane offset", found.plane.offset().get::<meter>(), kept.offset, l, &at);
            let normal = found.plane.normal().into_inner();
            let off = (normal - Vector3::from(kept.normal)).norm();
            worst.take("water plane normal", off, 0.0, 1.0, &at);
            let off = (found.immersed.centre_of_buoyancy - Point3::from(kept.centre)).norm();
            worst.take("centre of buoyancy", off, 0.0, l, &at);
            let gm = found.gm_transverse.get::<meter>();
            worst.take("GM for heel", gm, kept.gm_transverse, 0.1 * l, &at);
            let gm = found.gm_longitudinal.get::<meter>();
            worst.take("GM for trim", gm, kept.gm_longitudinal, 0.1 * l, &at);
            count += 1;
        }
    }
    println!("{count} equilibria");
    assert!(count >= FEWEST);
    worst.finish();
}
