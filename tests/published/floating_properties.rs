//! What must hold for any boat: Archimedes' law, symmetry, similarity, and the way weights move her.

use nalgebra::{Point3, Vector3};
use proptest::prelude::*;
use sternknee::physics::float::{
    Attitude, Floating, Hull, Load, Mark, Outcome, Weight, as_she_floats, equilibrium, equilibrium_from,
    hydrostatics_at, load_for, maximum_displacement, plane_carrying, righting_arms, total,
};
use uom::si::angle::{degree, radian};
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::volume::cubic_meter;

use super::shapes::*;

fn afloat(hull: &Hull, load: &Load) -> Floating {
    let outcome = equilibrium(hull, load).unwrap();
    *outcome.at_rest().unwrap_or_else(|| panic!("{outcome:?}"))
}

prop_compose! {
    fn a_load()(
        mass in 500.0..2200.0f64,
        x in 1.5..2.8f64,
        y in -0.12..0.12f64,
        z in 0.3..0.7f64,
    ) -> Load {
        load(mass, [x, y, z], 1025.0)
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(64) })]

    #[test]
    fn she_displaces_her_own_mass_with_centres_on_one_plumb_line(load in a_load()) {
        let found = afloat(&Hull::new(runabout(5)), &load);
        let displaced = found.immersed.volume.get::<cubic_meter>() * 1025.0;
        close(displaced, load.mass.get::<kilogram>(), 1e-10);
        let lever = (load.centre - found.immersed.centre_of_buoyancy)
            .cross(&found.plane.normal().into_inner());
        near(lever.norm(), 0.0, 1e-9);
        prop_assert!(found.is_stable());
    }

    #[test]
    fn moving_a_weight_aft_never_raises_the_stern_edge(load in a_load(), aft in 0.01..0.5f64) {
        let hull = Hull::new(runabout(5));
        let edge = Point3::new(0.0, 0.0, 0.6);
        let mut moved = load;
        moved.centre.x -= aft;
        let before = afloat(&hull, &load).height_above_water(&edge);
        let after = afloat(&hull, &moved).height_above_water(&edge);
        prop_assert!(after < before, "{:?} {:?}", before, after);
    }

    #[test]
    fn adding_a_weight_at_the_stern_never_raises_the_stern_edge(load in a_load(), kilograms in 1.0..300.0f64) {
        let hull = Hull::new(runabout(5));
        let edge = Point3::new(0.0, 0.0, 0.6);
        let sum = total(&[
            Weight { mass: load.mass, centre: load.centre },
            Weight { mass: kg(kilograms), centre: Point3::new(-0.3, 0.0, 0.7) },
        ]).unwrap();
        let heavier = Load { mass: sum.mass, centre: sum.centre, ..load };
        let before = afloat(&hull, &load).height_above_water(&edge);
        let after = afloat(&hull, &heavier).height_above_water(&edge);
        prop_assert!(after < before);
    }

    #[test]
    fn a_mirrored_boat_heels_the_other_way(load in a_load()) {
        let mesh = runabout(4).translated(&Vector3::new(0.0, 0.05, 0.0)).unwrap();
        let mut mirrored = load;
        mirrored.centre.y = -load.centre.y;
        let one = afloat(&Hull::new(mesh.clone()), &load);
        let other = afloat(&Hull::new(mesh.mirrored()), &mirrored);
        let (a, b) = (one.attitude(), other.attitude());
        near(a.heel.get::<radian>(), -b.heel.get::<radian>(), 1e-9);
        near(a.trim.get::<radian>(), b.trim.get::<radian>(), 1e-9);
        near(a.sinkage.get::<meter>(), b.sinkage.get::<meter>(), 1e-9);
        near(one.gm_transverse.get::<meter>(), other.gm_transverse.get::<meter>(), 1e-8);
    }

    #[test]
    fn a_boat_scaled_by_k_scales_her_results(load in a_load(), k in 0.1..8.0f64) {
        let mesh = runabout(4);
        let scaled = Load {
            mass: load.mass * k.powi(3),
            centre: load.centre * k,
            ..load
        };
        let one = afloat(&Hull::new(mesh.clone()), &load);
        let other = afloat(&Hull::new(mesh.scaled(k).unwrap()), &scaled);
        near(one.attitude().trim.get::<radian>(), other.attitude().trim.get::<radian>(), 1e-9);
        near(one.attitude().heel.get::<radian>(), other.attitude().heel.get::<radian>(), 1e-9);
        close(k * one.gm_transverse.get::<meter>(), other.gm_transverse.get::<meter>(), 1e-7);
        close(k * one.gm_longitudinal.get::<meter>(), other.gm_longitudinal.get::<meter>(), 1e-7);
        let area = |f: &Floating| f.immersed.wetted_surface.value;
        close(k * k * area(&one), area(&other), 1e-8);
    }

    /// Stated error of each part: volume grows by A dc, and its centre by the waterplane's moments.
    #[test]
    fn the_waterplane_is_the_slope_of_the_volume(draft in 0.15..0.9f64, trim in -6.0..6.0f64, heel in -30.0..30.0f64) {
        let hull = Hull::new(runabout(6));
        let h = 1e-5;
        let volume = |d: f64| hull.cut(&plane(draft + d, trim, heel)).volume.get::<cubic_meter>();
        let area = hull.cut(&plane(draft, trim, heel)).waterplane.area.value;
        close((volume(h) - volume(-h)) / (2.0 * h), area, 1e-5);
    }

    #[test]
    fn the_cut_below_and_the_cut_above_make_the_whole(draft in -1.0..1.5f64, trim in -90.0..90.0f64, heel in -180.0..180.0f64) {
        let hull = Hull::new(runabout(3));
        let below = plane(draft, trim, heel);
        // The other side of the same plane: turned upside down.
        let above = plane(-draft, -trim, heel + 180.0);
        let (one, other) = (hull.cut(&below), hull.cut(&above));
        near((below.normal().into_inner() + above.normal().into_inner()).norm(), 0.0, 1e-12);
        close(one.volume.value + other.volume.value, hull.volume().value, 1e-10);
        near(one.waterplane.area.value, other.waterplane.area.value, 1e-9);
        let whole = hull.cut(&plane(100.0, 0.0, 0.0)).centre_of_buoyancy.coords * hull.volume().value;
        let sum = one.centre_of_buoyancy.coords * one.volume.value
            + other.centre_of_buoyancy.coords * other.volume.value;
        near((whole - sum).norm(), 0.0, 1e-9);
    }

    #[test]
    fn readings_of_her_freeboard_give_back_her_load(load in a_load()) {
        let hull = Hull::new(runabout(5));
        let rest = afloat(&hull, &load);
        prop_assume!(rest.attitude().heel.get::<degree>().abs() < 15.0);
        let marks: Vec<Mark> = [[0.0, 1.1, 0.95], [0.0, -1.1, 0.95], [5.8, 0.0, 1.2], [2.0, 1.15, 0.97]]
            .map(Point3::from)
            .map(|point| Mark { point, height: rest.height_above_water(&point) })
            .to_vec();
        let found = as_she_floats(&hull, &marks, m(load.centre.z), load.water).unwrap();
        prop_assert!(found.heel_fitted);
        close(found.load.mass.get::<kilogram>(), load.mass.get::<kilogram>(), 1e-8);
        near((found.load.centre - load.centre).norm(), 0.0, 1e-8);
        for misfit in &found.misfits {
            near(misfit.get::<meter>(), 0.0, 1e-10);
        }
        // Floated again she lies as she was read.
        let again = afloat(&hull, &found.load);
        near((again.plane.normal().into_inner() - rest.plane.normal().into_inner()).norm(), 0.0, 1e-7);
    }

    #[test]
    fn nothing_panics_on_any_number(
        n in prop::array::uniform9(prop::num::f64::ANY),
    ) {
        let hull = Hull::new(runabout(1));
        let load = load(n[0], [n[1], n[2], n[3]], n[4]);
        let start = Attitude { sinkage: m(n[5]), trim: deg(n[6]), heel: deg(n[7]) };
        let _ = equilibrium_from(&hull, &load, start);
        let _ = righting_arms(&hull, &load, &[deg(n[8])]);
        let mark = |x: f64, h: f64| Mark { point: Point3::new(x, n[1], n[2]), height: m(h) };
        let _ = as_she_floats(&hull, &[mark(n[3], n[4]), mark(n[5], n[6])], m(n[7]), density(n[0]));
        let _ = maximum_displacement(&hull, &[Point3::new(n[1], n[2], n[3])], density(n[0]), deg(n[8]));
        let _ = total(&[Weight { mass: kg(n[0]), centre: Point3::new(n[1], n[2], n[3]) }]);
        let wild = load.mass * 0.0 + kg(900.0);
        let _ = equilibrium(&hull, &Load { mass: wild, ..load });
        let _ = equilibrium(&hull, &super::shapes::load(900.0, [n[1], n[2], n[3]], 1000.0));
    }

    #[test]
    fn no_ordinary_load_is_left_without_an_answer(
        mass in 1.0..6000.0f64,
        centre in prop::array::uniform3(-3.0..8.0f64),
        trim in -90.0..90.0f64,
        heel in -180.0..180.0f64,
    ) {
        let hull = Hull::new(runabout(3));
        let start = Attitude { sinkage: m(0.0), trim: deg(trim), heel: deg(heel) };
        let outcome = equilibrium_from(&hull, &load(mass, centre, 1025.0), start).unwrap();
        prop_assert!(!matches!(outcome, Outcome::NotConverged { .. }), "{:?}", outcome);
    }
}

#[test]
fn two_freeboards_take_her_upright_and_three_weights_come_off_and_on() {
    let hull = Hull::new(runabout(6));
    let mark = |x: f64, y: f64, z: f64, height: f64| Mark { point: Point3::new(x, y, z), height: m(height) };
    let marks = [mark(0.0, 1.1, 0.95, 0.58), mark(5.8, 0.0, 1.2, 0.95)];
    let as_is = as_she_floats(&hull, &marks, m(0.5), density(1000.0)).unwrap();
    assert!(!as_is.heel_fitted);
    near(as_is.load.centre.y, 0.0, 1e-12);
    let engine = |mass: f64| Weight { mass: kg(mass), centre: Point3::new(-0.25, 0.0, 0.75) };
    let boat = Weight { mass: as_is.load.mass, centre: as_is.load.centre };
    let after = total(&[boat, engine(150.0).removed(), engine(240.0)]).unwrap();
    close((after.mass - boat.mass).get::<kilogram>(), 90.0, 1e-9);
    let load = Load { mass: after.mass, centre: after.centre, ..as_is.load };
    let before = afloat(&hull, &as_is.load);
    let again = afloat(&hull, &load);
    near(before.height_above_water(&marks[0].point).get::<meter>(), 0.58, 1e-9);
    let drop = before.height_above_water(&marks[0].point) - again.height_above_water(&marks[0].point);
    // By the small-change formulas: sinkage m/(ρA) and turn m × lever/(Δ GM_L), at the transom.
    let row = hydrostatics_at(&hull, density(1000.0), &before.plane).unwrap();
    let lcf = row.waterplane.centroid.x;
    let sink = 90.0 / (1000.0 * row.waterplane.area.value);
    let turn = 90.0 * (lcf + 0.25) / (boat.mass.get::<kilogram>() * before.gm_longitudinal.get::<meter>());
    close(drop.get::<meter>(), sink + turn * lcf, 0.1);
}

#[test]
fn a_righting_arm_is_the_slope_of_gm_near_upright_and_zero_at_rest() {
    let hull = Hull::new(runabout(6));
    let load = load(1100.0, [2.1, 0.05, 0.5], 1025.0);
    let rest = afloat(&hull, &load);
    let heel = rest.attitude().heel;
    let small = deg(1e-3);
    let arms = righting_arms(&hull, &load, &[heel, heel + small]).unwrap();
    near(arms[0].arm.get::<meter>(), 0.0, 1e-9);
    let slope = arms[1].arm.get::<meter>() / small.get::<radian>();
    // Free to trim, the slope is at most GM and at least the least GM.
    assert!(slope <= rest.gm_transverse.get::<meter>() * (1.0 + 1e-4));
    assert!(slope >= rest.gm_least.get::<meter>() * (1.0 - 1e-4));
}

#[test]
fn a_weight_to_starboard_heels_her_to_starboard_and_lowers_that_side() {
    let hull = Hull::new(runabout(6));
    let found = afloat(&hull, &load(1100.0, [2.1, -0.1, 0.5], 1025.0));
    assert!(found.attitude().heel.get::<degree>() > 0.0);
    let sides = [Point3::new(1.0, 1.1, 0.95), Point3::new(1.0, -1.1, 0.95)];
    let heights = found.heights_above_water(&sides);
    assert!(heights[1] < heights[0]);
}

/// A weight that must move by d along the boat shifts the centre by m d / Δ: what a wanted trim asks for.
#[test]
fn the_centre_for_a_wanted_trim_brings_that_trim() {
    let hull = Hull::new(runabout(6));
    let wanted = Attitude { trim: deg(1.25), ..Attitude::default() };
    let water = density(1025.0);
    let surface = plane_carrying(&hull, kg(1200.0), water, wanted).unwrap();
    let load = load_for(&hull, &surface, m(0.6), water).unwrap();
    close(load.mass.get::<kilogram>(), 1200.0, 1e-12);
    let found = afloat(&hull, &load);
    near(found.attitude().trim.get::<degree>(), 1.25, 1e-9);
}

#[test]
fn a_ball_rests_in_any_attitude_and_a_top_heavy_one_turns_over() {
    let hull = Hull::new(sphere(1.0, 24));
    let mass = 0.4 * 1000.0 * hull.volume().value;
    for heel in [0.0, 30.0, 90.0, 150.0] {
        let start = Attitude { heel: deg(heel), ..Attitude::default() };
        let at_rest = |z: f64| {
            let outcome = equilibrium_from(&hull, &load(mass, [0.0, 0.0, z], 1000.0), start);
            let outcome = outcome.unwrap();
            *outcome.at_rest().unwrap_or_else(|| panic!("{z} {heel}: {outcome:?}"))
        };
        at_rest(0.0);
        close(at_rest(-0.2).plane.normal().z, 1.0, 1e-2);
        close(at_rest(0.2).plane.normal().z, -1.0, 1e-2);
    }
}
