//! What the search for the least distance leans on, piece by piece: distances in one pose, bounds over a box of poses, the way of a
//! lifting bracket, and the corners between which a point lies.

use nalgebra::{Point3, Vector3};
use sternknee::physics::swing::bound::Bounder;
use sternknee::physics::swing::distance::Measurer;
use sternknee::physics::swing::followed::between;
use sternknee::physics::swing::kernel::Kernel;
use sternknee::physics::swing::*;
use uom::si::angle::radian;
use uom::si::f64::{Angle, Length};
use uom::si::length::meter;

fn m(value: f64) -> Length {
    Length::new::<meter>(value)
}

fn rad(value: f64) -> Angle {
    Angle::new::<radian>(value)
}

fn leaning_twins() -> Result<Scene, SwingError> {
    let tilt = Axis::new("tilt", Point3::new(0.0, 0.0, 0.1), Vector3::new(0.1, 1.0, 0.0))?;
    let steer = Axis::new("steer", Point3::new(-0.1, 0.0, 0.0), Vector3::new(0.2, 0.0, 1.0))?;
    let hub = ConvexBody::cuboid("hub", Point3::new(-0.2, -0.1, -0.1), Point3::new(0.1, 0.1, 0.2))?;
    let cowl = ConvexBody::cuboid("cowl", Point3::new(-0.6, -0.2, 0.2), Point3::new(0.1, 0.3, 0.8))?;
    let chain = EngineChain::new("engine", tilt, steer, vec![(Part::Swivel, hub), (Part::Head, cowl)])?;
    let range = |low, high| AngleRange::new("range", rad(low), rad(high));
    let mut scene = Scene::new(chain.clone(), range(-0.1, 1.3)?, range(-0.6, 0.5)?);
    let wall = ConvexBody::cuboid("wall", Point3::new(0.7, -1.0, 0.0), Point3::new(0.8, 1.0, 0.6))?;
    scene.obstacles.push(Obstacle::Body(wall));
    scene.neighbour = Some(Neighbour {
        chain: chain.shifted(Vector3::new(0.1, 0.9, 0.0)),
        tilt: NeighbourTilt::Independent(range(0.0, 1.0)?),
    });
    Ok(scene)
}

/// Boxes of every size: at each of their corners, edges and middles the pair is no nearer than the bound, and
/// the bound closes in on the middle as they shrink.
#[test]
fn no_pose_of_a_box_lies_below_its_bound() -> Result<(), SwingError> {
    let still = leaning_twins()?;
    let lift = Lift::straight(Vector3::new(-0.2, 0.1, 1.0), Vector3::new(-1.0, 0.0, -0.2), m(0.4))?;
    let mut lifted = still.clone();
    lifted.engine = lifted.engine.lifted(lift.on_arms(m(0.3), m(0.2))?);
    let mut beside = still.clone();
    beside.neighbour = beside
        .neighbour
        .map(|other| Neighbour { chain: other.chain.standing(rad(0.7), rad(0.0)).lifted(lift), ..other });
    for scene in [still, lifted, beside] {
        boxes_hold(&scene)?;
    }
    Ok(())
}

fn boxes_hold(scene: &Scene) -> Result<(), SwingError> {
    let kernel = Kernel::new(scene)?;
    let mut bounder = Bounder::new(&kernel);
    for pair in kernel.pairs.clone() {
        let mut cell = kernel.root;
        for halving in 0..28 {
            let look = bounder.look(pair, &cell, None, f64::INFINITY);
            for i in 0..81 {
                let mut pose = cell.middle;
                for (v, side) in [i % 3, i / 3 % 3, i / 9 % 3, i / 27].into_iter().enumerate() {
                    pose[v] += (f64::from(side) - 1.0) * cell.half[v];
                }
                let at = bounder.measure(pair, &pose, &look.direction);
                assert!(at.upper >= look.lower, "{pair:?} {cell:?}: {} < {}", at.upper, look.lower);
            }
            if halving == 27 {
                let middle = look.middle.map_or(f64::NAN, |m| m.upper);
                assert!(middle - look.lower < 0.02, "{middle} {}", look.lower);
            }
            cell = cell.halves(halving % 4)[halving / 4 % 2];
        }
    }
    Ok(())
}

fn straight() -> Result<Lift, SwingError> {
    Lift::straight(Vector3::new(-0.2, 0.0, 1.0), Vector3::new(-1.0, 0.0, -0.2), m(0.3))
}

#[test]
fn arms_carry_aft_until_they_lie_square_to_the_transom_and_forward_beyond() -> Result<(), SwingError> {
    let lift = straight()?.on_arms(m(0.25), m(0.15))?;
    let aft = |height: f64| lift.raised(m(height)).dot(&lift.aft());
    assert!(lift.raised(m(0.0)).norm() < 1e-12);
    assert!((aft(0.15) - 0.05).abs() < 1e-12, "{}", aft(0.15));
    assert!(aft(0.3).abs() < 1e-12 && aft(0.2) < aft(0.15));
    for height in [0.0, 0.1, 0.3] {
        assert!((lift.raised(m(height)).dot(&lift.along()) - height).abs() < 1e-12);
    }
    Ok(())
}

#[test]
fn the_pace_is_the_slope_of_the_way_and_neither_is_longer_than_it_says() -> Result<(), SwingError> {
    for lift in [straight()?, straight()?.on_arms(m(0.25), m(0.1))?] {
        let ([low, high], [reach, bend]) = (lift.range(), lift.reach_and_bend());
        for i in 0..=10 {
            let (at, step) = (low + (high - low) * f64::from(i) / 10.0, 1e-6);
            let slope = (lift.moved(at + step) - lift.moved(at - step)) / (2.0 * step);
            assert!((slope - lift.pace(at)).norm() < 1e-8);
            assert!(slope.norm() <= reach + 1e-8);
            let turned = (lift.pace(at + step) - lift.pace(at - step)) / (2.0 * step);
            assert!(turned.norm() <= bend + 1e-8);
        }
    }
    Ok(())
}

#[test]
fn arms_that_do_not_reach_through_the_travel_are_told() -> Result<(), SwingError> {
    for (length, hang) in [(0.1, 0.15), (0.2, 0.05)] {
        let Err(error) = straight()?.on_arms(m(length), m(hang)) else {
            panic!("{length} and {hang} were taken");
        };
        assert!(error.to_string().contains("too short"), "{error}");
    }
    Ok(())
}

fn cube(at: Vector3<f64>) -> Vec<Vector3<f64>> {
    (0..8)
        .map(|i| {
            let side = |bit: i32| if i >> bit & 1 == 1 { 0.5 } else { -0.5 };
            at + Vector3::new(side(0), side(1), side(2))
        })
        .collect()
}

#[test]
fn two_cubes_apart_corner_to_corner_are_measured_exactly() {
    let far = Vector3::new(2.0, 2.0, 2.0);
    let found = Measurer::default().measure(&cube(Vector3::zeros()), &cube(far), (0.0, 0.0), &Vector3::x());
    let exact = 3f64.sqrt();
    assert!((found.upper - exact).abs() < 1e-9 && (found.lower - exact).abs() < 1e-9);
}

#[test]
fn two_cubes_overlapping_by_a_tenth_are_a_tenth_deep() {
    let near = Vector3::new(0.9, 0.2, 0.1);
    let found = Measurer::default().measure(&cube(Vector3::zeros()), &cube(near), (0.0, 0.0), &Vector3::z());
    assert!((found.upper + 0.1).abs() < 1e-9, "{found:?}");
    assert!((found.lower + 0.1).abs() < 1e-9, "{found:?}");
}

fn unit_cube() -> Vec<Point3<f64>> {
    (0..8).map(|i| Point3::new(f64::from(i & 1), f64::from(i >> 1 & 1), f64::from(i >> 2 & 1))).collect()
}

#[test]
fn a_point_of_a_cube_is_a_corner_or_lies_on_an_edge_or_a_face_and_its_shares_give_it_back() {
    let corners = unit_cube();
    for (point, many) in
        [(Point3::new(1.0, 0.0, 1.0), 1), (Point3::new(0.25, 0.0, 1.0), 2), (Point3::new(0.25, 0.1, 1.0), 3)]
    {
        let shares = between(&corners, &point);
        assert_eq!(shares.len(), many);
        let back: Vector3<f64> = shares.iter().map(|one| corners[one.corner].coords * one.share).sum();
        assert!((back - point.coords).norm() < 1e-6);
        assert!((shares.iter().map(|one| one.share).sum::<f64>() - 1.0).abs() < 1e-12);
    }
    assert!(between(&corners, &Point3::new(0.5, 0.4, 0.3)).is_empty());
}
