//! Hulls from tape readings, offsets and the least form. Shapes are simple enough to work out by hand.

use nalgebra::{Point2, Point3};
use proptest::prelude::*;
use sternknee::physics::float::{
    Assumption, Fairing, Hull, LeastForm, LoftError, Lofting, Station, TapeSection, mesh_from_least_form,
    mesh_from_offsets, mesh_from_tape,
};
use uom::si::volume::cubic_meter;

use super::shapes::*;

#[test]
fn tape_lines_pass_through_every_reading() {
    for slices in [1, 4, 9] {
        let mesh = runabout(slices);
        for given in [[0.0, 0.95, 0.34], [2.0, 1.15, 0.97], [3.6, 0.85, 0.42], [4.8, -0.50, 0.60], [5.8, 0.0, 1.20]] {
            assert!(mesh.vertices().iter().any(|v| *v == Point3::from(given)), "{given:?}");
        }
        let (low, high) = Hull::new(mesh).bounds();
        // No overshoot: nothing is wider than the widest reading.
        near(high.y, 1.15, 1e-12);
        near(low.z, 0.0, 1e-12);
    }
}

/// Fritsch and Carlson's interpolation keeps between its points, whichever way a line turns: a keel that falls a little before it rises
/// steeply, and a sheer that rises a little before it falls.
#[test]
fn a_line_that_turns_does_not_leave_its_readings() {
    let section = |x: f64, keel: f64, sheer: f64| TapeSection {
        x: m(x),
        keel: m(keel),
        bottom_knuckles: Vec::new(),
        chine: Point2::new(0.8, 0.7),
        side_knuckles: Vec::new(),
        sheer: Point2::new(1.0, sheer),
    };
    let sections = [section(0.0, 0.10, 1.60), section(1.0, 0.08, 1.62), section(2.0, 0.60, 1.10)];
    let lofted = mesh_from_tape(&sections, &Lofting { slices: 12, ..Lofting::default() }).unwrap();
    let (low, high) = Hull::new(lofted.mesh).bounds();
    near(low.z, 0.08, 1e-12);
    near(high.z, 1.62, 1e-12);
}

#[test]
fn a_prismatic_tape_hull_has_the_volume_of_its_section() {
    let section = |x: f64, knuckle: bool| TapeSection {
        x: m(x),
        keel: m(0.0),
        bottom_knuckles: if knuckle { vec![Point2::new(0.4, 0.1)] } else { Vec::new() },
        chine: Point2::new(0.8, 0.2),
        side_knuckles: Vec::new(),
        sheer: Point2::new(1.0, 0.8),
    };
    // Twice: keel triangle 0.8 × 0.2 / 2 over the chine's height, side trapezium 0.6 × (0.8 + 1.0)/2.
    let area = 2.0 * (0.5 * 0.8 * 0.2 + 0.6 * 0.9);
    for knuckles in [[false, false], [true, true], [true, false]] {
        let sections = [section(0.0, knuckles[0]), section(5.0, knuckles[1])];
        let lofted = mesh_from_tape(&sections, &Lofting::default()).unwrap();
        close(lofted.mesh.volume().get::<cubic_meter>(), 5.0 * area, 1e-12);
        let by_girth = lofted.assumptions.contains(&Assumption::MatchedByGirth);
        assert_eq!(by_girth, knuckles[0] != knuckles[1]);
    }
    // A raked transom adds the wedge behind x = 0: area × height of its centroid × tan.
    let raked = Lofting { transom_rake: deg(14.0), fairing: Fairing::Straight, ..Lofting::default() };
    let sections = [section(0.0, false), section(5.0, false)];
    let mesh = mesh_from_tape(&sections, &raked).unwrap().mesh;
    let moment = 2.0 * (0.08 * (0.2 * 2.0 / 3.0) + 0.48 * 0.5 + 0.06 * (0.2 + 0.4));
    let wedge = moment * 14.0_f64.to_radians().tan();
    close(mesh.volume().get::<cubic_meter>(), 5.0 * area + wedge, 1e-12);
}

#[test]
fn a_flat_bottomed_table_of_offsets_closes() {
    let station = |x: f64, b: f64| Station {
        x: m(x),
        points: vec![Point2::new(0.7 * b, 0.0), Point2::new(b, 0.3), Point2::new(b, 1.0)],
    };
    let stations = [station(0.0, 1.0), station(3.0, 1.0)];
    let lofted = mesh_from_offsets(&stations, &Lofting::default()).unwrap();
    let area = 2.0 * (0.3 * 0.85 + 0.7);
    close(lofted.mesh.volume().get::<cubic_meter>(), 3.0 * area, 1e-12);
    let pram = [station(0.0, 1.0), station(3.0, 1.0), station(4.0, 0.5)];
    assert!(mesh_from_offsets(&pram, &Lofting::default()).is_ok());
}

#[test]
fn bad_sections_are_refused_by_number() {
    let station = |x: f64, b: f64| Station { x: m(x), points: vec![Point2::new(0.0, 0.0), Point2::new(b, 1.0)] };
    let of = |stations: &[Station]| mesh_from_offsets(stations, &Lofting::default()).unwrap_err();
    assert_eq!(of(&[station(0.0, 1.0)]), LoftError::TooFewSections { sections: 1 });
    assert_eq!(of(&[]), LoftError::TooFewSections { sections: 0 });
    let back = [station(0.0, 1.0), station(-1.0, 1.0)];
    assert_eq!(of(&back), LoftError::NotAscending { section: 1 });
    let none = [station(0.0, 1.0), station(1.0, f64::NAN)];
    assert_eq!(of(&none), LoftError::NotFinite { section: 1 });
    let negative = [station(0.0, -1.0), station(1.0, 1.0)];
    assert!(matches!(of(&negative), LoftError::NegativeHalfBreadth { section: 0, .. }));
    let flat = [station(0.0, 0.0), station(1.0, 0.0)];
    assert!(matches!(of(&flat), LoftError::Mesh(_)));
}

#[test]
fn the_least_form_says_what_it_assumed() {
    let form = LeastForm { length: m(5.5), chine_beam: m(1.9), deadrise: deg(18.0), depth: m(0.9) };
    let lofted = mesh_from_least_form(&form, &Lofting::default()).unwrap();
    assert!(lofted.assumptions.len() >= 5);
    let (low, high) = Hull::new(lofted.mesh).bounds();
    near(high.x - low.x, 5.5, 1e-12);
    near(high.z, 0.9, 1e-12);
    let deep = LeastForm { deadrise: deg(60.0), ..form };
    assert!(mesh_from_least_form(&deep, &Lofting::default()).is_err());
}

#[test]
fn the_least_form_is_as_wide_at_the_sheer_as_it_says() {
    let form = LeastForm { length: m(5.5), chine_beam: m(1.9), deadrise: deg(18.0), depth: m(0.9) };
    let lofted = mesh_from_least_form(&form, &Lofting::default()).unwrap();
    let said = lofted.assumptions.iter().find_map(|one| match one {
        Assumption::SheerBeam { ratio } => Some(*ratio),
        _ => None,
    });
    let ratio = said.expect("it says so");
    assert!(ratio > 1.0, "sides flare");
    let (low, high) = Hull::new(lofted.mesh).bounds();
    near(high.y - low.y, 1.9 * ratio, 1e-12);
}

/// Similar forms: of a boat twice as large every length is twice, every area four times, every volume eight times as large.
#[test]
fn a_form_twice_as_large_holds_eight_times_as_much() {
    let form = LeastForm { length: m(5.5), chine_beam: m(1.9), deadrise: deg(18.0), depth: m(0.9) };
    let of = |form: &LeastForm| mesh_from_least_form(form, &Lofting::default()).unwrap().mesh;
    let one = of(&form);
    for scale in [0.5, 2.0, 3.0] {
        let larger = LeastForm {
            length: form.length * scale,
            chine_beam: form.chine_beam * scale,
            depth: form.depth * scale,
            ..form
        };
        let other = of(&larger);
        near(other.volume().get::<cubic_meter>() / one.volume().get::<cubic_meter>(), scale.powi(3), 1e-9);
        let ((low, high), (small, great)) = (Hull::new(one.clone()).bounds(), Hull::new(other).bounds());
        for axis in 0..3 {
            near(great[axis] - small[axis], scale * (high[axis] - low[axis]), 1e-9);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(200) })]

    #[test]
    fn no_stations_make_the_loft_panic(
        stations in prop::collection::vec(
            (prop::num::f64::ANY, prop::collection::vec((0.0..3.0f64, -1.0..3.0f64), 0..5)),
            0..5,
        ),
        ordered in any::<bool>(),
        slices in 0usize..4,
        rake in -90.0..90.0f64,
    ) {
        let stations: Vec<Station> = stations
            .into_iter()
            .enumerate()
            .map(|(i, (x, points))| Station {
                x: m(if ordered { i as f64 } else { x }),
                points: points.into_iter().map(|(y, z)| Point2::new(y, z)).collect(),
            })
            .collect();
        let lofting = Lofting { slices, transom_rake: deg(rake), ..Lofting::default() };
        let _ = mesh_from_offsets(&stations, &lofting);
    }
}
