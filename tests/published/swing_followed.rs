//! The way of one point as it is written for a person, against the turns of the chain itself: two ways to the same place.

use nalgebra::{Point3, Vector3};
use sternknee::physics::swing::followed::{Share, Stand, between, follow};
use sternknee::physics::swing::{Axis, ConvexBody, EngineChain, Lift, Part, fit_engine};
use sternknee::working::Sheet;
use uom::si::angle::degree;
use uom::si::f64::{Angle, Length};
use uom::si::length::meter;

use super::swing_mounting_sheet::{mounting, sheet};

fn m(value: f64) -> Length {
    Length::new::<meter>(value)
}

fn deg(value: f64) -> Angle {
    Angle::new::<degree>(value)
}

fn body(name: &str) -> ConvexBody {
    let (low, high) = (Point3::new(-0.7, -0.2, -0.6), Point3::new(0.1, 0.35, 0.8));
    ConvexBody::cuboid(name, low, high).expect("sound")
}

/// Invented: a box on each part, a tilt tube and a steering axis aft of it; the axes as given.
fn engine(tube: Vector3<f64>, pivot: Vector3<f64>, aside: f64) -> EngineChain {
    let bodies = [(Part::Bracket, "bracket"), (Part::Swivel, "swivel"), (Part::Head, "head")];
    let axis = |at, along| Axis::new("the axis", at, along).expect("sound");
    EngineChain::new(
        "engine",
        axis(Point3::new(-0.03, 0.1, 0.12), tube),
        axis(Point3::new(-0.15, 0.1 + aside, 0.05), pivot),
        bodies.map(|(part, name)| (part, body(name))).to_vec(),
    )
    .expect("a sound chain")
}

/// Where the steps lead, in the boat; nothing where they are not told.
fn led(chain: &EngineChain, part: Part, shares: &[Share], stand: Stand) -> Option<Point3<f64>> {
    let (_, body) = chain.bodies().iter().find(|(own, _)| *own == part).expect("drawn");
    let place = follow(&mut Sheet::default(), "1", chain, (part, body), shares, stand)?;
    Some(Point3::from(place.map(|term| term.value().value)))
}

fn corner(corner: usize) -> Vec<Share> {
    vec![Share { corner, share: 1.0 }]
}

#[test]
fn the_steps_of_a_corner_lead_where_the_chain_carries_it() {
    let chain = engine(Vector3::y(), Vector3::z(), 0.0);
    for part in [Part::Bracket, Part::Swivel, Part::Head] {
        for (tilt, steer) in [(0.0, 0.0), (63.0, 0.0), (0.0, 31.0), (-4.0, -28.0), (47.0, 35.0), (71.0, -33.0)] {
            for i in 0..8 {
                let at = body("any").points()[i];
                let carried = chain.carried(part, at, deg(tilt), deg(steer));
                let stand = Stand { tilt: deg(tilt), steer: deg(steer), lift: None };
                let found = led(&chain, part, &corner(i), stand).expect("square axes");
                assert!((found - carried).norm() < 1e-12, "{part:?} {tilt} {steer}: {found} {carried}");
            }
        }
    }
}

/// An engine of a mounting sheet measures from its rest wherever that is and however its transom leans. Invented, of usual size.
#[test]
fn the_steps_of_every_corner_of_a_fitted_engine_lead_where_it_is_carried() {
    let chain = fit_engine(&sheet(700.0, 840.0, 68.0), &mounting(17.0)).expect("a sound sheet").chain;
    let stand = Stand { tilt: deg(55.0), steer: deg(-24.0), lift: None };
    for (part, body) in chain.bodies() {
        for (i, at) in body.points().iter().enumerate() {
            let place = follow(&mut Sheet::default(), "1", &chain, (*part, body), &corner(i), stand);
            let found = Point3::from(place.expect("square axes").map(|term| term.value().value));
            let carried = chain.carried(*part, *at, stand.tilt, stand.steer);
            assert!((found - carried).norm() < 1e-12, "{} {i}: {found} {carried}", body.name());
        }
    }
}

#[test]
fn the_steps_of_a_point_between_corners_lead_where_the_chain_carries_it() {
    let chain = engine(Vector3::y(), Vector3::z(), 0.0);
    let corners = body("any").points().to_vec();
    let stand = Stand { tilt: deg(52.0), steer: deg(-21.0), lift: None };
    // On an edge, and on a side.
    for at in [Point3::new(0.1, 0.35, 0.3), Point3::new(-0.4, 0.35, 0.8), Point3::new(-0.5, -0.1, 0.8)] {
        let shares = between(&corners, &at);
        assert!(shares.len() > 1 && (shares.iter().map(|one| one.share).sum::<f64>() - 1.0).abs() < 1e-12);
        let found = led(&chain, Part::Head, &shares, stand).expect("square axes");
        assert!((found - chain.carried(Part::Head, at, stand.tilt, stand.steer)).norm() < 1e-12, "{at}");
    }
}

/// A point made of three corners of a slanting tetrahedron by known shares is told by those; one within it, or in the plane of a side
/// but past its edge, lies on no side.
#[test]
fn a_point_on_a_slanting_side_is_told_by_the_shares_it_was_made_of() {
    let corners = [[0.1, -0.3, 0.2], [1.4, 0.2, -0.1], [0.3, 1.1, 0.4], [0.5, 0.4, 1.3]].map(Point3::from);
    let sides = [[0, 1, 2], [0, 1, 3], [0, 2, 3], [1, 2, 3]];
    let mix = |shares: &[(usize, f64)]| {
        Point3::from(shares.iter().map(|(i, share)| corners[*i].coords * *share).sum::<Vector3<f64>>())
    };
    for side in sides {
        for parts in [[0.2, 0.3, 0.5], [0.7, 0.1, 0.2], [0.05, 0.9, 0.05]] {
            let shares: Vec<(usize, f64)> = side.into_iter().zip(parts).collect();
            let told = between(&corners, &mix(&shares));
            assert_eq!(told.len(), 3, "{side:?} {parts:?}");
            for (share, (corner, part)) in told.iter().zip(&shares) {
                assert!(share.corner == *corner && (share.share - part).abs() < 1e-9, "{told:?} {shares:?}");
            }
        }
        for past in [[-0.1, 0.5, 0.6], [0.5, -0.1, 0.6], [0.6, 0.5, -0.1], [1.2, 0.4, -0.6], [0.8, 0.8, -0.6]] {
            let shares: Vec<(usize, f64)> = side.into_iter().zip(past).collect();
            assert!(between(&corners, &mix(&shares)).is_empty(), "{side:?} {past:?}");
        }
    }
    for (one, other) in [(0, 1), (0, 3), (1, 2), (2, 3)] {
        let told = between(&corners, &mix(&[(one, 0.3), (other, 0.7)]));
        assert!(told.len() == 2 && told[0].corner == one && told[1].corner == other, "{told:?}");
        assert!((told[0].share - 0.3).abs() < 1e-9 && (told[1].share - 0.7).abs() < 1e-9, "{told:?}");
        assert!(between(&corners, &mix(&[(one, -0.3), (other, 1.3)])).is_empty());
        assert_eq!(between(&corners, &corners[one]), [Share { corner: one, share: 1.0 }]);
    }
    assert!(between(&corners, &mix(&[(0, 0.25), (1, 0.25), (2, 0.25), (3, 0.25)])).is_empty());
}

/// Up along a transom that leans by 14 degrees, straight and on arms.
#[test]
fn the_steps_of_a_raised_engine_lead_as_much_higher_as_its_bracket_goes() {
    let (sin, cos) = 14f64.to_radians().sin_cos();
    let straight = Lift::straight(Vector3::new(-sin, 0.0, cos), Vector3::new(-cos, 0.0, -sin), m(0.35)).expect("sound");
    let chain = engine(Vector3::y(), Vector3::z(), 0.0);
    let at = body("any").points()[5];
    for lift in [straight, straight.on_arms(m(0.3), m(0.15)).expect("arms that reach")] {
        for height in [0.0, 0.1, 0.15, 0.35] {
            let stand = Stand { tilt: deg(40.0), steer: deg(12.0), lift: Some(m(height)) };
            let found = led(&chain.clone().lifted(lift), Part::Head, &corner(5), stand).expect("square axes");
            let carried = chain.carried(Part::Head, at, stand.tilt, stand.steer) + lift.raised(m(height));
            assert!((found - carried).norm() < 1e-12, "{height}: {found} {carried}");
        }
    }
}

/// The steps hold for a tube square across, an axis upright over its middle; for any other engine none are told.
#[test]
fn no_steps_are_told_of_an_engine_whose_axes_are_not_square() {
    let stand = Stand { tilt: deg(40.0), steer: deg(12.0), lift: None };
    let told = |chain: &EngineChain, shares: &[Share]| led(chain, Part::Head, shares, stand).is_some();
    assert!(told(&engine(Vector3::y(), Vector3::z(), 0.0), &corner(0)));
    assert!(!told(&engine(Vector3::new(0.05, 1.0, 0.0), Vector3::z(), 0.0), &corner(0)), "a tube askew");
    assert!(!told(&engine(Vector3::y(), Vector3::new(0.05, 0.0, 1.0), 0.0), &corner(0)), "an axis that leans");
    assert!(!told(&engine(Vector3::y(), Vector3::z(), 0.02), &corner(0)), "an axis off the middle");
    assert!(!told(&engine(Vector3::y(), Vector3::z(), 0.0), &[]), "no corner");
}
