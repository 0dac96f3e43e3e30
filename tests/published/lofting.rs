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

/// Fritsch and Butland's slopes by hand, sections 1, 2 and 1 m apart. Within, (w₁ + w₂) / (w₁/d₁ + w₂/d₂) of the slopes d of both pieces,
/// each weighed by its own length and twice the other's, 0 where the line turns; at an end ((2 h₁ + h₂) d₁ − h₁ d₂) / (h₁ + h₂), 0 where
/// that turns back, and 3 d₁ at most where the line turns. Half way a cubic is (a + b)/2 + h (m₁ − m₂)/8.
#[test]
fn lines_between_sections_are_the_cubics_of_fritsch_and_butland() {
    let section = |x: f64, keel: f64, sheer: [f64; 2]| TapeSection {
        x: m(x),
        keel: m(keel),
        bottom_knuckles: Vec::new(),
        chine: Point2::new(0.3, 1.0),
        side_knuckles: Vec::new(),
        sheer: Point2::from(sheer),
    };
    let sections = [
        section(0.0, 0.0, [1.0, 1.60]),
        section(1.0, 0.2, [1.2, 1.62]),
        section(3.0, 0.3, [1.0, 1.10]),
        section(4.0, 0.9, [0.4, 1.05]),
    ];
    let mesh = mesh_from_tape(&sections, &Lofting { slices: 2, ..Lofting::default() }).unwrap().mesh;
    let at = |x: f64| mesh.vertices().iter().filter(move |v| (v.x - x).abs() < 1e-9);
    let keel = |x: f64| at(x).map(|v| v.z).fold(f64::INFINITY, f64::min);
    let sheer = |x: f64| at(x).map(|v| [v.y, v.z]).fold([0.0; 2], |most, p| if p[0] > most[0] { p } else { most });
    // Keel, slopes 0.2, 0.05, 0.6: 0.25; 9/105 = 0.085714; 9/88.3333 = 0.101887; 2.35/3 = 0.783333.
    near(keel(0.5), 0.1 + (0.25 - 0.085_714_3) / 8.0, 1e-7);
    near(keel(2.0), 0.25 + 2.0 * (0.085_714_3 - 0.101_886_8) / 8.0, 1e-7);
    near(keel(3.5), 0.6 + (0.101_886_8 - 0.783_333_3) / 8.0, 1e-7);
    // The sheer's half-breadth, 0.2, -0.1, -0.6: 0.9/3 = 0.3; 0; -9/48.3333 = -0.186207; -2.3/3 = -0.766667.
    near(sheer(0.5)[0], 1.1 + 0.3 / 8.0, 1e-7);
    near(sheer(2.0)[0], 1.1 + 2.0 * 0.186_206_9 / 8.0, 1e-7);
    near(sheer(3.5)[0], 0.7 + (-0.186_206_9 + 0.766_666_7) / 8.0, 1e-7);
    // Its height, 0.02, -0.26, -0.05: 0.34/3 held to 0.06; 0; -9/115.3846 = -0.078; 0.06/3 turns back, 0.
    near(sheer(0.5)[1], 1.61 + 0.06 / 8.0, 1e-7);
    near(sheer(2.0)[1], 1.36 + 2.0 * 0.078 / 8.0, 1e-7);
    near(sheer(3.5)[1], 1.075 - 0.078 / 8.0, 1e-7);
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
fn a_least_form_without_length_beam_or_depth_is_refused_by_what_it_lacks() {
    let form = LeastForm { length: m(5.5), chine_beam: m(1.9), deadrise: deg(18.0), depth: m(0.9) };
    for none in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        for (bad, what) in [
            (LeastForm { length: m(none), ..form }, "the length"),
            (LeastForm { chine_beam: m(none), ..form }, "the chine beam"),
            (LeastForm { depth: m(none), ..form }, "the depth"),
        ] {
            let found = mesh_from_least_form(&bad, &Lofting::default()).unwrap_err();
            assert_eq!(found, LoftError::OutOfRange { what }, "{none}");
        }
    }
    for wrong in [-0.1, 60.1, f64::NAN] {
        let found = mesh_from_least_form(&LeastForm { deadrise: deg(wrong), ..form }, &Lofting::default()).unwrap_err();
        assert_eq!(found, LoftError::OutOfRange { what: "the deadrise" }, "{wrong}");
    }
    // Half of 1.9 m at 45 degrees: the chine stands 0.95 m high.
    let steep = LeastForm { deadrise: deg(45.0), depth: m(0.94), ..form };
    assert!(mesh_from_least_form(&steep, &Lofting::default()).is_err());
    assert!(mesh_from_least_form(&LeastForm { depth: m(0.96), ..steep }, &Lofting::default()).is_ok());
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
