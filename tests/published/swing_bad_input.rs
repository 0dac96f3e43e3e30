//! Bad chains are clear errors, and nothing that can be put in makes the search panic or run for ever.

use nalgebra::{Point3, Vector3};
use proptest::prelude::*;
use sternknee::physics::swing::*;
use uom::si::angle::degree;
use uom::si::f64::{Angle, Length};
use uom::si::length::meter;

fn m(value: f64) -> Length {
    Length::new::<meter>(value)
}

fn deg(value: f64) -> Angle {
    Angle::new::<degree>(value)
}

fn cube(name: &str, at: [f64; 3], half: f64) -> ConvexBody {
    let middle = Vector3::from(at);
    let half = Vector3::repeat(half);
    ConvexBody::cuboid(name, Point3::from(middle - half), Point3::from(middle + half)).expect("sound")
}

fn axis(at: [f64; 3], direction: [f64; 3]) -> Result<Axis, SwingError> {
    Axis::new("the tilt axis", Point3::from(at), Vector3::from(direction))
}

#[test]
fn an_axis_without_length_is_refused() {
    assert!(matches!(axis([0.0; 3], [0.0; 3]), Err(SwingError::AxisWithoutLength { .. })));
    assert!(matches!(axis([0.0, f64::NAN, 0.0], [0.0, 1.0, 0.0]), Err(SwingError::NotFinite { .. })));
    assert!(matches!(axis([5e3, 0.0, 0.0], [0.0, 1.0, 0.0]), Err(SwingError::TooFar { .. })));
}

#[test]
fn an_axis_outside_the_body_is_refused_and_says_how_far() {
    let bodies = vec![(Part::Swivel, cube("swivel", [0.0; 3], 0.1)), (Part::Head, cube("head", [0.0, 0.0, 1.0], 0.1))];
    let upright = axis([0.0; 3], [0.0, 0.0, 1.0]).expect("sound");
    let wrong = axis([0.3, 0.0, 0.0], [0.0, 1.0, 0.0]).expect("sound");
    match EngineChain::new("engine", wrong, upright, bodies) {
        Err(SwingError::AxisOutsideBody { metres, bodies, .. }) => {
            assert!((metres - 0.2).abs() < 1e-6);
            assert_eq!(bodies, "swivel");
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn empty_and_reversed_ranges_are_refused() {
    let reversed = AngleRange::new("the tilt range", deg(10.0), deg(-10.0));
    assert!(matches!(reversed, Err(SwingError::ReversedRange { .. })));
    let wide = AngleRange::new("the tilt range", deg(0.0), deg(400.0));
    assert!(matches!(wide, Err(SwingError::RangeTooWide { .. })));
    let nan = AngleRange::new("the tilt range", deg(f64::NAN), deg(1.0));
    assert!(matches!(nan, Err(SwingError::NotFinite { .. })));
}

/// An engine of one body that tilts and steers from 0 to so many degrees, with nothing about it.
fn engine_up_to(degrees: f64) -> Scene {
    let along = axis([0.0; 3], [0.0, 1.0, 0.0]).expect("sound");
    let head = vec![(Part::Head, cube("head", [0.0; 3], 0.1))];
    let chain = EngineChain::new("engine", along, along, head).expect("sound");
    let range = AngleRange::new("range", deg(0.0), deg(degrees)).expect("sound");
    Scene::new(chain, range, range)
}

#[test]
fn a_chain_without_moving_bodies_and_a_scene_without_obstacles_are_refused() {
    let along = axis([0.0; 3], [0.0, 1.0, 0.0]).expect("sound");
    let still = EngineChain::new("engine", along, along, vec![(Part::Bracket, cube("bracket", [0.0; 3], 0.1))]);
    assert!(matches!(still, Err(SwingError::NoMovingBodies { .. })));
    let scene = engine_up_to(10.0);
    assert_eq!(least_distance(&scene, &Effort::default()), Err(SwingError::NoObstacles));
}

#[test]
fn a_tie_bar_to_no_neighbour_is_refused() {
    let mut scene = engine_up_to(10.0);
    scene.obstacles.push(Obstacle::Body(cube("wall", [2.0, 0.0, 0.0], 0.1)));
    let pin = |side| Pin { side, part: Part::Head, at: Point3::origin() };
    scene.rods.push(Rod { name: "tie bar".to_owned(), ends: [pin(Side::Own), pin(Side::Neighbour)], radius: m(0.01) });
    assert!(matches!(least_distance(&scene, &Effort::default()), Err(SwingError::NoNeighbour { .. })));
}

/// A rod from the boat's origin to 1 m ahead, 0.05 m thick to each side, and a wall from 1.9 m on: 0.85 m are left.
#[test]
fn a_rod_on_one_engine_needs_no_neighbour() {
    let mut scene = engine_up_to(0.0);
    scene.obstacles.push(Obstacle::Body(cube("wall", [2.0, 0.0, 0.0], 0.1)));
    let pin = |x: f64| Pin { side: Side::Own, part: Part::Head, at: Point3::new(x, 0.0, 0.0) };
    scene.rods.push(Rod { name: "drag link".to_owned(), ends: [pin(0.0), pin(1.0)], radius: m(0.05) });
    let found = least_distance(&scene, &Effort::default()).expect("sound");
    assert!(found.lower.value <= 0.85 + 1e-9 && found.upper.value >= 0.85 - 1e-9, "{found:?}");
    assert!(found.gap() <= Effort::default().gap);
}

#[test]
fn two_engines_on_one_lift_go_up_together_and_on_two_unlike_ones_they_can_not() {
    let straight = |travel: f64| Lift::straight(Vector3::z(), -Vector3::x(), m(travel)).expect("sound");
    let with = |own: f64, other: f64| {
        let mut scene = engine_up_to(10.0);
        let beside = scene.engine.shifted(2.0 * Vector3::y());
        scene.engine = scene.engine.clone().lifted(straight(own));
        scene.neighbour = Some(Neighbour { chain: beside.lifted(straight(other)), tilt: NeighbourTilt::Together });
        scene.obstacles.push(Obstacle::Body(cube("wall", [2.0, 0.0, 0.0], 0.1)));
        least_distance(&scene, &Effort::default())
    };
    assert!(with(0.3, 0.3).is_ok());
    assert_eq!(with(0.3, 0.2), Err(SwingError::TwoLifts));
}

fn prism(profile: &[[f64; 2]]) -> Result<ConvexBody, SwingError> {
    ConvexBody::prism("cowl", profile, m(-0.1), m(0.1))
}

#[test]
fn a_square_is_accepted_either_way_round_and_closed_or_not() {
    let square = [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]];
    let mut closed = square.to_vec();
    closed.push(square[0]);
    let mut back = square.to_vec();
    back.reverse();
    for profile in [&square[..], &closed, &back] {
        // Four corners on either side.
        assert_eq!(prism(profile).map(|cowl| cowl.points().len()), Ok(8));
    }
}

#[test]
fn each_bad_outline_gets_its_own_error() {
    let open = prism(&[[0.0, 0.0], [1.0, 0.0], [0.0, 0.0]]);
    assert!(matches!(open, Err(SwingError::OpenProfile { corners: 2, .. })));
    let flat = prism(&[[0.0, 0.0], [1.0, 1.0], [2.0, 2.0]]);
    assert!(matches!(flat, Err(SwingError::FlatProfile { .. })));
    let bow = prism(&[[0.0, 0.0], [1.0, 1.0], [1.0, 0.0], [0.0, 1.0]]);
    assert!(matches!(bow, Err(SwingError::CrossedProfile { .. })));
    let dart = prism(&[[0.0, 0.0], [2.0, 0.0], [0.5, 0.5], [0.0, 2.0]]);
    assert!(matches!(dart, Err(SwingError::HollowProfile { corner: 3, .. })));
    let nan = prism(&[[0.0, 0.0], [f64::NAN, 0.0], [0.5, 0.5]]);
    assert!(matches!(nan, Err(SwingError::NotFinite { .. })));
}

/// Whether an outline is hollow does not go by its size: a hundredth of a millimetre, a metre, three hundred.
#[test]
fn an_outline_is_judged_alike_at_any_size() {
    let square = [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]];
    let dart = [[0.0, 0.0], [2.0, 0.0], [0.5, 0.5], [0.0, 2.0]];
    let line = [[0.0, 0.0], [1.0, 1.0], [2.0, 2.0]];
    for size in [1e-5, 1.0, 300.0] {
        let of = |corners: &[[f64; 2]]| {
            let scaled: Vec<[f64; 2]> = corners.iter().map(|corner| corner.map(|c| size * c)).collect();
            ConvexBody::prism("cowl", &scaled, m(-0.1), m(0.1))
        };
        assert!(of(&square).is_ok(), "{size}: {:?}", of(&square));
        assert!(matches!(of(&dart), Err(SwingError::HollowProfile { corner: 3, .. })), "{size}: {:?}", of(&dart));
        assert!(matches!(of(&line), Err(SwingError::FlatProfile { .. })), "{size}: {:?}", of(&line));
    }
}

/// A pentagon is convex and its star crosses itself, whichever corner is the first and whichever way round they run.
#[test]
fn an_outline_is_judged_alike_from_any_corner_and_either_way_round() {
    let corner = |i: usize| {
        let (sin, cos) = (72.0 * i as f64).to_radians().sin_cos();
        [0.3 + 0.5 * cos, -0.2 + 0.4 * sin]
    };
    for first in 0..5 {
        for backwards in [false, true] {
            let of = |stride: usize| {
                let mut corners: Vec<[f64; 2]> = (0..5).map(|i| corner(stride * (first + i) % 5)).collect();
                if backwards {
                    corners.reverse();
                }
                ConvexBody::prism("cowl", &corners, m(-0.1), m(0.1))
            };
            assert!(of(1).is_ok(), "{first}: {:?}", of(1));
            let Err(SwingError::CrossedProfile { first: one, second: other, .. }) = of(2) else {
                panic!("{first}: {:?}", of(2));
            };
            // Sides are counted from one; two that meet in a corner do not cross.
            assert!(one >= 1 && other <= 5 && other - one > 1 && other - one < 4, "{one} {other}");
        }
    }
}

/// Arms of 0.3 m reach 0.3 m below their forward pins and 0.3 m above them, and no farther.
#[test]
fn arms_that_do_not_reach_both_ends_of_their_travel_are_refused() {
    let straight = |travel: f64| Lift::straight(Vector3::z(), -Vector3::x(), m(travel)).expect("sound");
    for (travel, hang, reach) in [
        (0.6, 0.3, true),
        (0.3, 0.3, true),
        (0.2, -0.1, true),
        (0.61, 0.305, false),
        (0.4, 0.31, false),
        (0.4, 0.09, false),
        (0.7, 0.3, false),
        (0.1, -0.31, false),
        (0.1, -0.21, false),
        (0.1, 0.41, false),
    ] {
        let found = straight(travel).on_arms(m(0.3), m(hang));
        assert_eq!(found.is_ok(), reach, "{travel} {hang}");
        assert!(reach || matches!(found, Err(SwingError::ArmsTooShort { .. })), "{found:?}");
        if let Ok(lift) = found {
            // From pin to pin as far at the top as at the bottom: the arms do not stretch.
            let level = |h: f64| 0.09 - (h - hang) * (h - hang);
            let out = -lift.raised(m(travel)).x + level(0.0).max(0.0).sqrt();
            assert!((out - level(travel).max(0.0).sqrt()).abs() < 1e-7, "{travel} {hang}: {out}");
        }
    }
}

#[test]
fn bodies_that_cannot_be_are_refused() {
    assert!(matches!(ConvexBody::hull("cowl", &[]), Err(SwingError::EmptyBody { .. })));
    let endless = ConvexBody::ball("cowl", Point3::new(f64::INFINITY, 0.0, 0.0), m(0.1));
    assert!(matches!(endless, Err(SwingError::NotFinite { .. })));
    assert!(matches!(ConvexBody::ball("cowl", Point3::origin(), m(-0.1)), Err(SwingError::NotPositive { .. })));
    let open = ConvexBody::prism("cowl", &[[0.0, 0.0], [1.0, 0.0]], m(-0.1), m(0.1));
    assert!(matches!(open, Err(SwingError::OpenProfile { corners: 2, .. })));
    let effort = Effort { gap: m(0.0), boxes: 10 };
    let scene = engine_up_to(10.0);
    assert!(matches!(least_distance(&scene, &effort), Err(SwingError::NotPositive { .. })));
}

#[test]
fn a_search_that_runs_out_says_so_and_its_figures_still_hold() {
    let along = axis([0.0; 3], [0.0, 1.0, 0.0]).expect("sound");
    let chain = EngineChain::new("engine", along, along, vec![(Part::Head, cube("head", [0.0, 0.0, 0.0], 0.3))])
        .expect("sound");
    let range = AngleRange::new("range", deg(0.0), deg(60.0)).expect("sound");
    let mut scene = Scene::new(chain, range, range);
    scene.obstacles.push(Obstacle::Body(cube("wall", [1.0, 0.0, 0.0], 0.4)));
    let found = least_distance(&scene, &Effort { boxes: 2, ..Effort::default() }).expect("sound");
    assert_eq!(found.outcome, Outcome::GapNotReached);
    let exact = 0.6 - 0.3 * 2f64.sqrt();
    assert!(found.lower.value <= exact && found.upper.value >= exact - 1e-9);
}

fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        60 => (-4i32..5).prop_map(|n| f64::from(n) * 0.25),
        20 => -1.0..1.0f64,
        1 => prop::sample::select(vec![0.0, -0.0, 1e-300, 1e-12, 999.0, 1e6, f64::NAN, f64::INFINITY, f64::MIN_POSITIVE]),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, ..ProptestConfig::default() })]

    /// Numbers on a coarse grid make faces, edges and corners meet exactly, which is where distance
    /// solvers break; the rest are the worst that doubles have.
    #[test]
    fn whatever_the_numbers_there_is_an_answer_or_an_error(
        own in prop::collection::vec(prop::array::uniform3(number()), 1..9),
        head in prop::collection::vec(prop::array::uniform3(number()), 1..9),
        wall in prop::collection::vec(prop::array::uniform3(number()), 1..9),
        lines in prop::array::uniform4(prop::array::uniform3(number())),
        ends in prop::array::uniform4(prop::sample::select(vec![-90.0, -45.0, 0.0, 0.0, 30.0, 45.0, 90.0, 180.0])),
        radius in prop_oneof![Just(0.0), number()],
    ) {
        let points = |given: &[[f64; 3]]| given.iter().map(|p| Point3::from(*p)).collect::<Vec<_>>();
        let ask = || -> Result<(), SwingError> {
            let bodies = vec![
                (Part::Swivel, ConvexBody::hull("swivel", &points(&own))?),
                (Part::Head, ConvexBody::rounded_hull("head", &points(&head), m(radius))?),
                (Part::Swivel, ConvexBody::ball("hub", Point3::from(lines[0]), m(0.1))?),
                (Part::Head, ConvexBody::ball("boss", Point3::from(lines[2]), m(0.1))?),
            ];
            let chain = EngineChain::new("engine", axis(lines[0], lines[1])?, axis(lines[2], lines[3])?, bodies)?;
            let tilt = AngleRange::new("tilt", deg(ends[0]), deg(ends[1]))?;
            let steer = AngleRange::new("steer", deg(ends[2]), deg(ends[3]))?;
            let mut scene = Scene::new(chain.clone(), tilt, steer);
            scene.obstacles.push(Obstacle::Body(ConvexBody::hull("wall", &points(&wall))?));
            scene.obstacles.push(Obstacle::HalfSpace(Plane::new("floor", Point3::from(wall[0]), Vector3::z())?));
            scene.neighbour = Some(Neighbour { chain: chain.shifted(Vector3::y()), tilt: NeighbourTilt::Together });
            let effort = Effort { gap: m(0.0005), boxes: 300 };
            let found = least_distance(&scene, &effort)?;
            assert!(found.lower <= found.upper && found.lower.value > f64::NEG_INFINITY, "{found:?}");
            permitted_range(&scene, Swing::SteerBothWays, m(0.01), &effort)?;
            let way = Move { direction: Vector3::z(), most: m(0.3), step: m(0.01) };
            least_shift(&scene, &way, m(0.01), &effort)?;
            Ok(())
        };
        // Either is right; what counts is that the call comes back.
        let _ = ask();
    }
}
