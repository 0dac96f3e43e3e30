//! Closed forms of hydrostatics: box, wedge, cylinder, sphere, Wigley hull.
//!
//! The formulas stand in every textbook of naval architecture (for one: Rawson and Tupper, Basic Ship
//! Theory, chapters 3 and 4) and are derived again beside each check. Tolerances are those of rounding
//! where the shape is flat-faced; where a polygon stands for a curve, the order of convergence is checked.

use sternknee::physics::float::{Hull, hydrostatics_at, hydrostatics_table};
use uom::si::area::square_meter;
use uom::si::f64::Length;
use uom::si::length::{centimeter, meter};
use uom::si::mass::kilogram;
use uom::si::torque::newton_meter;
use uom::si::volume::cubic_meter;

use super::shapes::*;

const ROUNDING: f64 = 1e-12;

#[test]
fn a_box_has_the_hydrostatics_of_a_box() {
    let (l, b, d) = (7.0, 2.4, 1.3);
    let hull = box_hull(l, b, d);
    for t in [0.1, 0.37, 0.9, 1.29] {
        let row = hydrostatics_at(&hull, density(1025.0), &plane(t, 0.0, 0.0)).unwrap();
        close(row.volume.get::<cubic_meter>(), l * b * t, ROUNDING);
        close(row.displacement.get::<kilogram>(), 1025.0 * l * b * t, ROUNDING);
        close(row.kb.get::<meter>(), t / 2.0, ROUNDING);
        close(row.centre_of_buoyancy.x, l / 2.0, ROUNDING);
        near(row.centre_of_buoyancy.y, 0.0, ROUNDING);
        close(row.waterplane.area.get::<square_meter>(), l * b, ROUNDING);
        close(row.waterplane.centroid.x, l / 2.0, ROUNDING);
        close(row.bm_transverse.get::<meter>(), b * b / (12.0 * t), ROUNDING);
        close(row.bm_longitudinal.get::<meter>(), l * l / (12.0 * t), ROUNDING);
        close(row.km_transverse().get::<meter>(), t / 2.0 + b * b / (12.0 * t), ROUNDING);
        close(row.km_longitudinal().get::<meter>(), t / 2.0 + l * l / (12.0 * t), ROUNDING);
        near(row.waterplane.product_moment_m4, 0.0, 1e-11);
        let wetted = l * b + 2.0 * t * (l + b);
        close(row.wetted_surface.get::<square_meter>(), wetted, ROUNDING);
    }
}

/// Water at z = d + a x' + c y' over the whole bottom, x' and y' from the middle: V = L B d,
/// x' moment a L³B/12, y' moment c L B³/12, z moment (L B d² + a² L³B/12 + c² L B³/12)/2.
#[test]
fn a_tilted_cut_through_the_walls_of_a_box_is_exact() {
    let (l, b) = (6.0, 2.0);
    let hull = box_hull(l, b, 3.0);
    for (trim, heel) in [(3.0, 0.0), (0.0, 11.0), (-5.0, 20.0), (8.0, -17.0)] {
        let draft = 1.4;
        let surface = plane(draft, trim, heel);
        let n = surface.normal();
        let (a, c) = (-n.x / n.z, -n.y / n.z);
        let d = draft / n.z + a * l / 2.0;
        let cut = hull.cut(&surface);
        let volume = l * b * d;
        close(cut.volume.get::<cubic_meter>(), volume, ROUNDING);
        let centre = cut.centre_of_buoyancy;
        close(centre.x, l / 2.0 + a * l * l / (12.0 * d), ROUNDING);
        near(centre.y, c * b * b / (12.0 * d), ROUNDING);
        let z = (d * d + a * a * l * l / 12.0 + c * c * b * b / 12.0) / (2.0 * d);
        close(centre.z, z, ROUNDING);
        // The face is the bottom's rectangle seen along the normal: area over n_z.
        close(cut.waterplane.area.get::<square_meter>(), l * b / n.z, ROUNDING);
        near(cut.waterplane.centroid.z, d, 1e-12);
    }
}

#[test]
fn water_exactly_at_deck_bottom_and_corners_is_cut_cleanly() {
    let hull = box_hull(4.0, 2.0, 1.0);
    let volume = |t: f64| hull.cut(&plane(t, 0.0, 0.0)).volume.get::<cubic_meter>();
    near(volume(0.0), 0.0, 0.0);
    close(volume(1.0), 8.0, ROUNDING);
    close(volume(5.0), 8.0, ROUNDING);
    near(volume(-5.0), 0.0, 0.0);
    // At 45° through two opposite edges: half the box.
    let cube = box_hull(2.0, 2.0, 2.0);
    let half = cube.cut(&plane(0.5_f64.sqrt(), 0.0, 45.0));
    close(half.volume.get::<cubic_meter>(), 4.0, 1e-9);
}

/// Triangular prism, apex down, breadth B at depth D: V = L B T²/(2 D), KB = 2T/3, BM = b²/(6 T) with
/// b = B T/D.
#[test]
fn a_wedge_has_the_hydrostatics_of_a_wedge() {
    let (l, b, d) = (10.0, 3.0, 2.0);
    let section = [(0.0, 0.0), (b / 2.0, d), (-b / 2.0, d)].map(|(y, z)| nalgebra::Point2::new(y, z));
    let hull = Hull::new(prism(&section, l));
    for t in [0.2, 1.0, 1.9] {
        let row = hydrostatics_at(&hull, density(1000.0), &plane(t, 0.0, 0.0)).unwrap();
        let at_water = b * t / d;
        close(row.volume.get::<cubic_meter>(), l * at_water * t / 2.0, ROUNDING);
        close(row.kb.get::<meter>(), 2.0 * t / 3.0, ROUNDING);
        let bm = at_water * at_water / (6.0 * t);
        close(row.bm_transverse.get::<meter>(), bm, ROUNDING);
        let side = l * t.hypot(at_water / 2.0);
        let wetted = 2.0 * side + at_water * t;
        close(row.wetted_surface.get::<square_meter>(), wetted, ROUNDING);
    }
}

/// Errors at n and 2n must fall fourfold: flat faces approach a smooth surface with order 2.
#[track_caller]
fn second_order(name: &str, exact: f64, at: impl Fn(usize) -> f64, from: usize) {
    let errors: Vec<f64> = [from, 2 * from, 4 * from].iter().map(|&n| (at(n) / exact - 1.0).abs()).collect();
    for pair in errors.windows(2) {
        let order = (pair[0] / pair[1]).log2();
        println!("{name}: relative error {:.2e}, order {order:.3}", pair[1]);
        assert!((order - 2.0).abs() < 0.1, "{name}: order {order}, errors {errors:?}");
    }
}

/// Half-immersed circular cylinder: V = π r² L/2, KB = 4r/(3π) under the axis, BM carries M to the axis.
#[test]
fn a_cylinder_of_polygons_converges_with_order_two() {
    let (r, l) = (0.8, 5.0);
    let half = |n: usize| Hull::new(cylinder(r, l, n)).cut(&plane(0.0, 0.0, 0.0));
    let pi = std::f64::consts::PI;
    second_order("cylinder V", pi * r * r * l / 2.0, |n| half(n).volume.get::<cubic_meter>(), 32);
    second_order("cylinder KB", -4.0 * r / (3.0 * pi), |n| half(n).centre_of_buoyancy.z, 32);
    // The polygon's own closed form holds to rounding: n/2 sin(2π/n) r².
    let polygon = 24.0 / 2.0 * (2.0 * pi / 24.0).sin() * r * r * l / 2.0;
    close(half(24).volume.get::<cubic_meter>(), polygon, ROUNDING);
}

/// Cap of height h of a sphere: V = π h² (3R − h)/3, its centre 3(2R − h)²/(4(3R − h)) from the middle,
/// and the metacentre lies in the sphere's middle.
#[test]
fn a_sphere_converges_with_order_two_and_has_its_metacentre_in_the_middle() {
    // The water lies exactly on a ring of vertices at each fineness.
    let (r, h) = (1.5_f64, 0.75);
    let pi = std::f64::consts::PI;
    let row = |n: usize| {
        let hull = Hull::new(sphere(r, n));
        hydrostatics_at(&hull, density(1000.0), &plane(h - r, 0.0, 0.0)).unwrap()
    };
    let volume = pi * h * h * (3.0 * r - h) / 3.0;
    second_order("sphere V", volume, |n| row(n).volume.get::<cubic_meter>(), 30);
    let below = -3.0 * (2.0 * r - h).powi(2) / (4.0 * (3.0 * r - h));
    second_order("sphere KB", below, |n| row(n).kb.get::<meter>(), 30);
    let fine = row(120);
    near(fine.km_transverse().get::<meter>(), 0.0, 2e-3 * r);
    let area = pi * h * (2.0 * r - h);
    second_order("waterplane", area, |n| row(n).waterplane.area.get::<square_meter>(), 30);
    second_order("wetted surface", 2.0 * pi * r * h, |n| row(n).wetted_surface.get::<square_meter>(), 30);
}

/// V = 4/9 LBT, A = 2/3 LB, KB = 5T/8, BM = 3B²/(35 T), BM_L = 3L²/(40 T) (each integral is derived term by term from
/// the offsets).
#[test]
fn a_wigley_hull_converges_with_order_two() {
    let (l, b, t) = (10.0, 1.0, 0.625);
    let row = |n: usize| {
        let hull = Hull::new(wigley(l, b, t, n));
        hydrostatics_at(&hull, density(1025.0), &plane(t, 0.0, 0.0)).unwrap()
    };
    second_order("Wigley V", 4.0 / 9.0 * l * b * t, |n| row(n).volume.get::<cubic_meter>(), 10);
    second_order("Wigley KB", 5.0 * t / 8.0, |n| row(n).kb.get::<meter>(), 10);
    let bm = 3.0 * b * b / (35.0 * t);
    second_order("Wigley BM", bm, |n| row(n).bm_transverse.get::<meter>(), 10);
    let bm_l = 3.0 * l * l / (40.0 * t);
    second_order("Wigley BM_L", bm_l, |n| row(n).bm_longitudinal.get::<meter>(), 10);
    let area = 2.0 / 3.0 * l * b;
    second_order("Wigley A", area, |n| row(n).waterplane.area.get::<square_meter>(), 10);
}

#[test]
fn immersion_and_trimming_moment_of_a_box_follow_from_its_sides() {
    let (l, b, t) = (9.0, 2.5, 0.5);
    let hull = box_hull(l, b, 1.5);
    let table = hydrostatics_table(&hull, density(1025.0), deg(0.0), &[m(t)]).unwrap();
    let cm = Length::new::<centimeter>(1.0);
    close(table[0].mass_to_sink(cm).get::<kilogram>(), 1025.0 * l * b * 0.01, ROUNDING);
    let gm = t / 2.0 + l * l / (12.0 * t) - 0.7;
    let moment = 1025.0 * l * b * t * 9.80665 * gm / l * 0.01;
    let found = table[0].moment_to_trim(m(0.7), m(l), cm);
    close(found.get::<newton_meter>(), moment, ROUNDING);
}
