//! Swings whose least distance can be written down: plane trigonometry, no book needed.

use nalgebra::{Point3, Vector3};
use sternknee::physics::swing::*;
use uom::si::angle::{degree, radian};
use uom::si::f64::{Angle, Length};
use uom::si::length::{meter, millimeter};

/// What rounding may do to an exact figure, in metres.
const EXACT: f64 = 1e-8;

fn m(value: f64) -> Length {
    Length::new::<meter>(value)
}

fn deg(value: f64) -> Angle {
    Angle::new::<degree>(value)
}

fn range(low: f64, high: f64) -> AngleRange {
    AngleRange::new("the range", deg(low), deg(high)).expect("a sound range")
}

fn axis(point: [f64; 3], direction: Vector3<f64>) -> Axis {
    Axis::new("the axis", Point3::from(point), direction).expect("a sound axis")
}

/// A straight arm of length `arm` up from the tilt axis at the origin, its tip a ball of `radius`.
fn arm(arm: f64, radius: f64) -> EngineChain {
    let tip = Point3::new(0.0, 0.0, arm);
    let bodies = vec![
        (Part::Swivel, ConvexBody::capsule("arm", Point3::origin(), tip, m(0.0)).expect("sound")),
        (Part::Swivel, ConvexBody::ball("tip", tip, m(radius)).expect("sound")),
    ];
    EngineChain::new("arm", axis([0.0; 3], Vector3::y()), axis([0.0; 3], Vector3::z()), bodies).expect("a sound chain")
}

fn wall(x: f64) -> Obstacle {
    let plane = Plane::new("wall", Point3::new(x, 0.0, 0.0), -Vector3::x()).expect("sound");
    Obstacle::HalfSpace(plane)
}

fn assert_holds(scene: &Scene, exact: f64) -> Clearance {
    let found = least_distance(scene, &Effort::default()).expect("a sound question");
    let (lower, upper) = (found.lower.value, found.upper.value);
    assert_eq!(found.outcome, Outcome::Certified);
    assert!(upper - lower <= 0.5e-3, "{found:?}");
    assert!(lower <= exact + EXACT && exact <= upper + EXACT, "{exact} is not in {found:?}");
    found
}

#[test]
fn a_point_on_an_arm_comes_nearest_a_wall_where_its_sine_is_greatest() {
    for (low, high, sine) in
        [(-10.0, 60.0, 60f64.to_radians().sin()), (20.0, 160.0, 1.0), (100.0, 170.0, 100f64.to_radians().sin())]
    {
        let mut scene = Scene::new(arm(0.8, 0.0), range(low, high), range(0.0, 0.0));
        scene.obstacles.push(wall(1.0));
        assert_holds(&scene, 1.0 - 0.8 * sine);
    }
}

#[test]
fn the_wall_as_a_box_gives_the_same_as_the_wall_as_a_plane() {
    let mut scene = Scene::new(arm(0.8, 0.05), range(20.0, 160.0), range(0.0, 0.0));
    let slab = ConvexBody::cuboid("wall", Point3::new(1.0, -2.0, -2.0), Point3::new(1.1, 2.0, 2.0));
    scene.obstacles.push(Obstacle::Body(slab.expect("sound")));
    let found = assert_holds(&scene, 1.0 - 0.8 - 0.05);
    assert_eq!((found.body.name.as_str(), found.other.name.as_str()), ("tip", "wall"));
    assert!((found.on_body - found.on_other).norm() - found.upper.value < EXACT);
    assert!((found.on_other.x - 1.0).abs() < EXACT);
}

#[test]
fn a_box_turning_beside_a_wall_reaches_its_half_diagonal() {
    let (a, b) = (0.4f64, 0.3f64);
    let cowl = ConvexBody::cuboid("cowl", Point3::new(-a, -b, -0.1), Point3::new(a, b, 0.1));
    let bodies = vec![(Part::Head, cowl.expect("sound"))];
    let chain = EngineChain::new("box", axis([0.0; 3], Vector3::y()), axis([0.0; 3], Vector3::z()), bodies);
    let chain = chain.expect("a sound chain");
    for (lock, reach) in [(60.0f64, a.hypot(b)), (20.0, a * 20f64.to_radians().cos() + b * 20f64.to_radians().sin())] {
        let mut scene = Scene::new(chain.clone(), range(0.0, 0.0), range(-lock, lock));
        let slab = ConvexBody::cuboid("wall", Point3::new(0.7, -3.0, -1.0), Point3::new(0.8, 3.0, 1.0));
        scene.obstacles.push(Obstacle::Body(slab.expect("sound")));
        let found = assert_holds(&scene, 0.7 - reach);
        let at = found.pose.steer.get::<degree>().abs();
        let expected = lock.min(b.atan2(a).to_degrees());
        assert!((at - expected).abs() < 3.0, "{at} for {expected}");
    }
}

#[test]
fn two_discs_are_nearest_on_the_line_of_their_centres_and_overlap_is_negative() {
    for (far, depth) in [(1.1, false), (0.85, true)] {
        let (r1, r2, arm_length) = (0.10, 0.12, 0.8);
        let mut scene = Scene::new(arm(arm_length, r1), range(0.0, 90.0), range(-30.0, 30.0));
        let centre = Point3::new(far * 0.5f64.sqrt(), 0.0, far * 0.5f64.sqrt());
        scene.obstacles.push(Obstacle::Body(ConvexBody::ball("post", centre, m(r2)).expect("sound")));
        let found = assert_holds(&scene, far - arm_length - r1 - r2);
        assert_eq!(found.contact_depth().is_some(), depth);
        assert!((found.pose.tilt.get::<degree>() - 45.0).abs() < 3.0);
    }
}

#[test]
fn twins_on_a_tie_bar_keep_their_distance_whatever_they_steer() {
    let centre = Point3::new(-0.5, 0.0, 0.0);
    let arm = ConvexBody::capsule("arm", Point3::origin(), centre, m(0.01)).expect("sound");
    let disc = ConvexBody::ball("disc", centre, m(0.15)).expect("sound");
    let bodies = vec![(Part::Head, arm), (Part::Head, disc)];
    let chain = EngineChain::new("port", axis([0.0; 3], Vector3::y()), axis([0.0; 3], Vector3::z()), bodies);
    let chain = chain.expect("a sound chain");
    let mut scene = Scene::new(chain.clone(), range(0.0, 60.0), range(-35.0, 35.0));
    scene.neighbour = Some(Neighbour {
        chain: chain.shifted(Vector3::new(0.0, 0.7, 0.0)).named("starboard"),
        tilt: NeighbourTilt::Together,
    });
    // Both discs move alike, so that nothing but the spacing counts; beside it the arm of one
    // passes the disc of the other no nearer than the discs pass each other's arms at lock.
    let discs = 0.7 - 2.0 * 0.15;
    let lock = 35f64.to_radians();
    let disc_to_arm = 0.7 * lock.cos() - 0.15 - 0.01;
    assert!(disc_to_arm > discs);
    assert_holds(&scene, discs);
}

#[test]
fn one_of_two_discs_left_down_is_nearest_when_the_other_comes_down_beside_it() {
    let centre = Point3::new(0.0, 0.0, 0.6);
    let spoke = ConvexBody::capsule("spoke", Point3::origin(), centre, m(0.0)).expect("sound");
    let disc = ConvexBody::ball("disc", centre, m(0.2)).expect("sound");
    let bodies = vec![(Part::Swivel, spoke), (Part::Swivel, disc)];
    let chain = EngineChain::new("port", axis([0.0; 3], Vector3::y()), axis([0.0; 3], Vector3::z()), bodies);
    let chain = chain.expect("a sound chain");
    let mut scene = Scene::new(chain.clone(), range(30.0, 70.0), range(0.0, 0.0));
    scene.neighbour = Some(Neighbour {
        chain: chain.shifted(Vector3::new(0.0, 0.5, 0.0)).named("starboard"),
        tilt: NeighbourTilt::Independent(range(0.0, 0.0)),
    });
    let apart = 2.0 * 0.6 * 15f64.to_radians().sin();
    assert_holds(&scene, apart.hypot(0.5) - 0.4);
}

#[test]
fn the_permitted_tilt_is_the_arc_sine_of_the_room_left() {
    let mut scene = Scene::new(arm(0.8, 0.0), range(-10.0, 80.0), range(-30.0, 30.0));
    scene.obstacles.push(wall(0.7));
    let margin = Length::new::<millimeter>(25.0);
    let limit = permitted_range(&scene, Swing::Tilt, margin, &Effort::default()).expect("sound");
    let exact = ((0.7 - 0.025) / 0.8f64).asin();
    let found = limit.up_to.expect("the start is clear").get::<radian>();
    assert!(found <= exact + 1e-9, "{found} for {exact}");
    // The gap of 0.5 mm may cost that much of travel at the slope of the sine there, and the step 0.05 degrees.
    let slack = 0.5e-3 / (0.8 * exact.cos()) + 0.05f64.to_radians();
    assert!(found > exact - slack, "{found} for {exact}");
    assert!(!limit.whole_range && limit.stopped_by.is_some());
}

#[test]
fn a_post_in_the_way_ends_the_permitted_tilt_though_it_is_clear_behind() {
    let mut scene = Scene::new(arm(0.8, 0.01), range(0.0, 80.0), range(0.0, 0.0));
    let post = Point3::new(0.8 * 0.5f64.sqrt(), 0.0, 0.8 * 0.5f64.sqrt());
    scene.obstacles.push(Obstacle::Body(ConvexBody::ball("post", post, m(0.02)).expect("sound")));
    let limit = permitted_range(&scene, Swing::Tilt, m(0.0), &Effort::default()).expect("sound");
    // The arm itself, not only its tip, meets the post; the tip's ball reaches it first.
    let exact = 45f64.to_radians() - 2.0 * (0.03f64 / 1.6).asin();
    let found = limit.up_to.expect("the start is clear").get::<radian>();
    assert!(found <= exact + 1e-9 && found > exact - 0.002, "{found} for {exact}");
}

#[test]
fn the_permitted_steering_is_found_each_way() {
    let tip = Point3::new(1.0, 0.0, 0.0);
    let boom = ConvexBody::capsule("boom", Point3::origin(), tip, m(0.0)).expect("sound");
    let chain =
        EngineChain::new("boom", axis([0.0; 3], Vector3::y()), axis([0.0; 3], Vector3::z()), vec![(Part::Head, boom)]);
    let mut scene = Scene::new(chain.expect("sound"), range(0.0, 0.0), range(-40.0, 40.0));
    let side = Plane::new("side", Point3::new(0.0, 0.5, 0.0), -Vector3::y()).expect("sound");
    scene.obstacles.push(Obstacle::HalfSpace(side));
    let ask = |swing| permitted_range(&scene, swing, m(0.1), &Effort::default()).expect("sound");
    let exact = 0.4f64.asin();
    for swing in [Swing::SteerPositive, Swing::SteerBothWays] {
        let limit = ask(swing);
        let found = limit.up_to.expect("amidships is clear").get::<radian>();
        assert!(found <= exact + 1e-9 && found > exact - 0.0016, "{found} for {exact}");
    }
    let free = ask(Swing::SteerNegative);
    assert!(free.whole_range && free.stopped_by.is_none());
    assert!((free.up_to.expect("clear").get::<degree>() - 40.0).abs() < 1e-9);
}

#[test]
fn the_least_setback_is_what_the_arm_lacks() {
    let mut scene = Scene::new(arm(0.8, 0.0), range(0.0, 120.0), range(0.0, 0.0));
    scene.obstacles.push(wall(0.75));
    let way = Move { direction: -Vector3::x(), most: m(0.5), step: m(0.001) };
    let exact = 0.8 + 0.02 - 0.75;
    match least_shift(&scene, &way, m(0.02), &Effort::default()).expect("sound") {
        Shift::Clears { by, least, ruled_out } => {
            assert!(least.value >= 0.02);
            assert!(by.value >= exact - EXACT && by.value <= exact + 0.0016, "{by:?}");
            assert!(ruled_out.is_some());
        }
        other => panic!("{other:?}"),
    }
    let short = Move { most: m(0.05), ..way };
    let none = least_shift(&scene, &short, m(0.02), &Effort::default()).expect("sound");
    assert!(matches!(none, Shift::NotWithin { .. }), "{none:?}");
}

#[test]
fn the_least_rise_leaps_over_a_shift_that_would_strike_something_else() {
    // A ball at rest between two beams above it: the gap between them is too small, so it must clear both.
    let mut scene = Scene::new(arm(0.0, 0.1), range(0.0, 0.0), range(0.0, 0.0));
    for (name, z) in [("lower beam", 0.1), ("upper beam", 0.35)] {
        let beam = ConvexBody::cuboid(name, Point3::new(-1.0, -1.0, z), Point3::new(1.0, 1.0, z + 0.05));
        scene.obstacles.push(Obstacle::Body(beam.expect("sound")));
    }
    let way = Move { direction: Vector3::z(), most: m(1.0), step: m(0.001) };
    match least_shift(&scene, &way, m(0.01), &Effort::default()).expect("sound") {
        Shift::Clears { by, .. } => {
            let exact = 0.40 + 0.1 + 0.01;
            assert!(by.value >= exact - EXACT && by.value < exact + 0.002, "{by:?}");
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn the_height_above_a_sloping_waterline_is_the_support_of_the_body() {
    let chain = arm(0.8, 0.1);
    let slope = 5f64.to_radians();
    let up = Vector3::new(-slope.sin(), 0.0, slope.cos());
    let water = Plane::new("water", Point3::new(0.0, 0.0, -0.3), up).expect("sound");
    let found = height_above(&chain, &["tip"], deg(100.0), deg(0.0), &water).expect("sound");
    let (sin, cos) = 100f64.to_radians().sin_cos();
    let exact = -slope.sin() * 0.8 * sin + slope.cos() * (0.8 * cos + 0.3) - 0.1;
    assert!((found.height.value - exact).abs() < 1e-12);
    assert_eq!(found.body, "tip");
    let lowest = height_above(&chain, &[], deg(100.0), deg(0.0), &water).expect("sound");
    assert!(lowest.height <= found.height);
}

/// On parallel arms of 0.3 m that hang 0.15 m at the bottom of 0.35 m of travel, an engine goes up and at first aft, by
/// 0.3 (1 − cos 30°), until the arms lie level.
#[test]
fn on_its_arms_an_engine_comes_farthest_aft_where_they_lie_level() {
    let straight = Lift::straight(Vector3::z(), -Vector3::x(), m(0.35)).expect("sound");
    let lift = straight.on_arms(m(0.3), m(0.15)).expect("arms that reach");
    let mut scene = Scene::new(arm(0.4, 0.05).lifted(lift), range(0.0, 0.0), range(0.0, 0.0));
    let aft = Plane::new("aft of it", Point3::new(-0.2, 0.0, 0.0), Vector3::x()).expect("sound");
    scene.obstacles.push(Obstacle::HalfSpace(aft));
    let found = assert_holds(&scene, 0.2 - 0.3 * (1.0 - 30f64.to_radians().cos()) - 0.05);
    assert!((found.pose.lift.expect("it lifts").value - 0.15).abs() < 0.02, "{found:?}");
    // Forward of it nothing comes nearer than at the bottom and, of another travel, at the top.
    let mut scene = Scene::new(arm(0.4, 0.05).lifted(lift), range(0.0, 0.0), range(0.0, 0.0));
    scene.obstacles.push(wall(0.2));
    let top = 0.3 * ((0.2f64 / 0.3).asin().cos() - 30f64.to_radians().cos());
    assert_holds(&scene, 0.2 - 0.05 + top.min(0.0));
}

/// The bound along a direction is off by the square of the box: to be a thousand times as near takes five halvings more about each
/// place that is nearest, not a thousand boxes more.
#[test]
fn an_answer_a_thousand_times_as_close_takes_few_boxes_more() {
    let straight = Lift::straight(Vector3::z(), -Vector3::x(), m(0.35)).expect("sound");
    let lift = straight.on_arms(m(0.3), m(0.15)).expect("arms that reach");
    let mut lifted = Scene::new(arm(0.4, 0.05).lifted(lift), range(0.0, 0.0), range(0.0, 0.0));
    let aft = Plane::new("aft of it", Point3::new(-0.2, 0.0, 0.0), Vector3::x()).expect("sound");
    lifted.obstacles.push(Obstacle::HalfSpace(aft));
    let mut tilted = Scene::new(arm(0.8, 0.05), range(20.0, 160.0), range(0.0, 0.0));
    tilted.obstacles.push(wall(1.0));
    let boom = ConvexBody::capsule("boom", Point3::origin(), Point3::new(1.0, 0.0, 0.0), m(0.05)).expect("sound");
    let axes = (axis([0.0; 3], Vector3::y()), axis([0.0; 3], Vector3::z()));
    let chain = EngineChain::new("boom", axes.0, axes.1, vec![(Part::Head, boom)]).expect("a sound chain");
    let mut steered = Scene::new(chain, range(0.0, 0.0), range(-40.0, 40.0));
    steered.obstacles.push(wall(1.2));
    for (name, scene, exact) in [
        ("lifted", lifted, 0.2 - 0.3 * (1.0 - 30f64.to_radians().cos()) - 0.05),
        ("tilted", tilted, 1.0 - 0.8 - 0.05),
        ("steered", steered, 1.2 - 1.0 - 0.05),
    ] {
        let to = |gap: f64| {
            let found = least_distance(&scene, &Effort { gap: m(gap), ..Effort::default() }).expect("a sound question");
            assert_eq!(found.outcome, Outcome::Certified);
            assert!(found.lower.value <= exact + EXACT && exact <= found.upper.value + EXACT, "{name}: {found:?}");
            found.boxes
        };
        let (far, near) = (to(1e-4), to(1e-7));
        println!("{name}: {far} boxes, {near} boxes");
        assert!(near <= far + 40, "{name}: {far} boxes, {near} boxes");
    }
}

#[test]
fn a_tie_bar_between_twins_comes_as_near_a_wall_as_its_arms_swing() {
    let pin_at = Point3::new(0.3, 0.0, 0.0);
    let arm = ConvexBody::capsule("steering arm", Point3::origin(), pin_at, m(0.005)).expect("sound");
    let upright = axis([0.0; 3], Vector3::z());
    let chain = EngineChain::new("port", axis([0.0; 3], Vector3::y()), upright, vec![(Part::Head, arm)]);
    let chain = chain.expect("a sound chain");
    let mut scene = Scene::new(chain.clone(), range(0.0, 0.0), range(-30.0, 30.0));
    scene.obstacles.push(wall(0.5));
    scene.neighbour = Some(Neighbour {
        chain: chain.shifted(Vector3::new(0.0, 0.7, 0.0)).named("starboard"),
        tilt: NeighbourTilt::Independent(range(0.0, 0.0)),
    });
    let pin = |side, y| Pin { side, part: Part::Head, at: Point3::new(0.3, y, 0.0) };
    scene.rods.push(Rod {
        name: "tie bar".to_owned(),
        ends: [pin(Side::Own, 0.0), pin(Side::Neighbour, 0.7)],
        radius: m(0.02),
    });
    let found = assert_holds(&scene, 0.5 - 0.3 - 0.02);
    assert_eq!(found.body.owner, Owner::Rod);
    let each = least_distance_to_each(&scene, &Effort::default()).expect("a sound question");
    assert_eq!(each.len(), 2, "the wall and the neighbour");
    assert!((each[0].upper - found.upper).value.abs() < 0.5e-3);
}
