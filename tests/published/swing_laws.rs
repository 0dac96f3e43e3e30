//! What any sound bound obeys, on drawn engines and wells.

use nalgebra::{Point3, Rotation3, Vector3};
use proptest::prelude::*;
use sternknee::physics::swing::*;
use uom::si::angle::{degree, radian};
use uom::si::f64::{Angle, Length};
use uom::si::length::millimeter;

fn scene_strategy() -> impl Strategy<Value = Scene> {
    let box_at = (
        prop::array::uniform3(-1.0..1.0f64),
        prop::array::uniform3(0.02..0.3f64),
        prop::array::uniform3(-1.5..1.5f64),
        0.0..0.1f64,
    );
    let bodies = (prop::collection::vec(box_at.clone(), 2..4), prop::collection::vec(box_at, 1..4));
    (bodies, -0.3..0.3f64, 0.2..1.2f64, 0.1..0.7f64, any::<bool>()).prop_map(
        |((own, other), lean, tilt, steer, neighbour)| {
            let draw = |name: String, (at, half, turn, radius): &([f64; 3], [f64; 3], [f64; 3], f64)| {
                let turned = Rotation3::new(Vector3::from(*turn));
                let plain = ConvexBody::oriented_box(name.clone(), Point3::from(*at), Vector3::from(*half), turned);
                let points = plain.expect("sound").points().to_vec();
                ConvexBody::rounded_hull(name, &points, Length::new::<millimeter>(radius * 1e3)).expect("sound")
            };
            let hub = ConvexBody::ball("hub", Point3::origin(), Length::new::<millimeter>(20.0));
            let mut bodies = vec![(Part::Swivel, hub.expect("sound"))];
            for (i, given) in own.iter().enumerate() {
                let part = if i == 0 { Part::Swivel } else { Part::Head };
                bodies.push((part, draw(format!("own {i}"), given)));
            }
            let axis = |direction| Axis::new("the axis", Point3::origin(), direction).expect("sound");
            let chain = EngineChain::new(
                "engine",
                axis(Vector3::new(lean, 1.0, 0.1)),
                axis(Vector3::new(lean, 0.0, 1.0)),
                bodies,
            )
            .expect("sound");
            let range = |low, high| {
                AngleRange::new("range", Angle::new::<radian>(low), Angle::new::<radian>(high)).expect("sound")
            };
            let mut scene = Scene::new(chain.clone(), range(-0.1, tilt), range(-steer, steer));
            for (i, (at, half, turn, radius)) in other.iter().enumerate() {
                let at = [at[0] + 1.5, at[1], at[2]];
                scene.obstacles.push(Obstacle::Body(draw(format!("wall {i}"), &(at, *half, *turn, *radius))));
            }
            if neighbour {
                scene.neighbour = Some(Neighbour {
                    chain: chain.shifted(Vector3::new(0.0, 2.5, 0.0)),
                    tilt: NeighbourTilt::Independent(range(0.0, 0.5 * tilt)),
                });
                let pin = |side, y| Pin { side, part: Part::Head, at: Point3::new(0.6, y, 0.3) };
                scene.rods.push(Rod {
                    name: "tie bar".to_owned(),
                    ends: [pin(Side::Own, 0.0), pin(Side::Neighbour, 2.5)],
                    radius: Length::new::<millimeter>(15.0),
                });
            }
            scene
        },
    )
}

fn at_pose(scene: &Scene, share: [f64; 3]) -> Scene {
    let pick = |range: AngleRange, t: f64| {
        let angle = range.low() * (1.0 - t) + range.high() * t;
        AngleRange::only("one pose", angle).expect("sound")
    };
    let mut one = scene.clone();
    one.tilt = pick(scene.tilt, share[0]);
    one.steer = pick(scene.steer, share[1]);
    if let Some(neighbour) = &mut one.neighbour
        && let NeighbourTilt::Independent(range) = neighbour.tilt
    {
        neighbour.tilt = NeighbourTilt::Independent(pick(range, share[2]));
    }
    one
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_pose_of_the_range_is_nearer_than_the_certified_bound(
        scene in scene_strategy(),
        poses in prop::collection::vec(prop::array::uniform3(0.0..=1.0f64), 24),
    ) {
        let whole = least_distance(&scene, &Effort::default()).expect("sound");
        prop_assert_eq!(whole.outcome, Outcome::Certified);
        for share in poses {
            let one = least_distance(&at_pose(&scene, share), &Effort::default()).expect("sound");
            prop_assert!(one.upper >= whole.lower, "{:?} under {:?}", one, whole);
        }
    }

    #[test]
    fn the_attained_distance_is_that_of_the_reported_pose_and_points(scene in scene_strategy()) {
        let whole = least_distance(&scene, &Effort::default()).expect("sound");
        let mut one = scene.clone();
        let only = |angle| AngleRange::only("one pose", angle).expect("sound");
        one.tilt = only(whole.pose.tilt);
        one.steer = only(whole.pose.steer);
        if let (Some(neighbour), Some(tilt)) = (&mut one.neighbour, whole.pose.neighbour_tilt) {
            neighbour.tilt = NeighbourTilt::Independent(only(tilt));
        }
        let again = least_distance(&one, &Effort::default()).expect("sound");
        prop_assert!((again.upper - whole.upper).value.abs() < 1e-6);
        if whole.upper.value > 0.0 {
            let between = (whole.on_other - whole.on_body).norm();
            prop_assert!((between - whole.upper.value).abs() < 1e-9);
        }
    }

    #[test]
    fn a_longer_search_never_loosens_either_figure(scene in scene_strategy()) {
        let fine = Length::new::<millimeter>(0.01);
        let mut lower = f64::NEG_INFINITY;
        let mut upper = f64::INFINITY;
        for boxes in [1, 2, 5, 10, 30, 100, 300, 1000] {
            let found = least_distance(&scene, &Effort { gap: fine, boxes }).expect("sound");
            prop_assert!(found.lower.value >= lower && found.upper.value <= upper, "at {boxes} boxes");
            prop_assert!(found.boxes <= boxes);
            (lower, upper) = (found.lower.value, found.upper.value);
        }
    }

    #[test]
    fn a_part_of_the_range_is_never_less_clear_than_the_whole(scene in scene_strategy(), cut in 0.1..0.9f64) {
        let whole = least_distance(&scene, &Effort::default()).expect("sound");
        let mut part = scene.clone();
        part.tilt = AngleRange::new("part", scene.tilt.low(), scene.tilt.low() * (1.0 - cut) + scene.tilt.high() * cut).expect("sound");
        let part = least_distance(&part, &Effort::default()).expect("sound");
        prop_assert!(part.upper >= whole.lower);
    }

    #[test]
    fn the_permitted_tilt_keeps_its_margin(scene in scene_strategy(), margin in 0.0..0.2f64) {
        let margin = Length::new::<millimeter>(1e3 * margin);
        let limit = permitted_range(&scene, Swing::Tilt, margin, &Effort::default()).expect("sound");
        if let Some(up_to) = limit.up_to {
            let mut within = scene.clone();
            within.tilt = AngleRange::new("permitted", scene.tilt.low(), up_to).expect("sound");
            let found = least_distance(&within, &Effort::default()).expect("sound");
            prop_assert!(found.upper.value >= margin.value - 1e-9, "{:?} at {:?}", found, limit);
        }
        if let Some(stop) = limit.stopped_by {
            prop_assert!(stop.distance.value < margin.value + 0.5e-3);
            let beyond = stop.pose.tilt - limit.up_to.unwrap_or(scene.tilt.low());
            prop_assert!(beyond.get::<degree>() < 0.051);
        }
    }
}
