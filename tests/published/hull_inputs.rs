//! What may come in as a hull, and what is refused, with the place. Shapes are simple enough to work out
//! by hand.

use nalgebra::{Point2, Point3};
use proptest::prelude::*;
use sternknee::physics::float::{
    Assumption, Fairing, Hull, LeastForm, LoftError, Lofting, MeshError, Station, StlError,
    TapeSection, TriMesh, mesh_from_least_form, mesh_from_offsets, mesh_from_stl, mesh_from_tape,
};
use uom::si::length::millimeter;
use uom::si::volume::cubic_meter;

use super::shapes::*;

fn parts(mesh: &TriMesh) -> (Vec<Point3<f64>>, Vec<[u32; 3]>) {
    (mesh.vertices().to_vec(), mesh.faces().to_vec())
}

#[test]
fn an_open_surface_is_refused_at_its_hole() {
    let (vertices, mut faces) = parts(&box_mesh(4.0, 2.0, 1.0));
    faces.pop();
    let Err(MeshError::Open { at, edges }) = TriMesh::new(vertices, faces) else {
        panic!("should be open");
    };
    assert_eq!(edges, 3);
    near(at.0.x, 4.0, 1e-12);
}

#[test]
fn an_inside_out_surface_is_refused() {
    let (vertices, mut faces) = parts(&box_mesh(4.0, 2.0, 1.0));
    for face in &mut faces {
        face.swap(1, 2);
    }
    let found = TriMesh::new(vertices, faces);
    assert!(
        matches!(found, Err(MeshError::InsideOut { .. })),
        "{found:?}"
    );
}

#[test]
fn one_turned_triangle_is_refused_at_its_edge() {
    let (vertices, mut faces) = parts(&box_mesh(4.0, 2.0, 1.0));
    faces[5].swap(0, 1);
    let found = TriMesh::new(vertices, faces);
    assert!(
        matches!(found, Err(MeshError::Inconsistent { .. })),
        "{found:?}"
    );
}

#[test]
fn two_boxes_that_share_an_edge_are_refused() {
    let (mut vertices, mut faces) = parts(&box_mesh(4.0, 2.0, 1.0));
    let shift = nalgebra::Vector3::new(0.0, 2.0, 1.0);
    let other = box_mesh(4.0, 2.0, 1.0).translated(&shift).unwrap();
    let mut index = Vec::new();
    for v in other.vertices() {
        index.push(vertices.iter().position(|w| w == v).unwrap_or_else(|| {
            vertices.push(*v);
            vertices.len() - 1
        }) as u32);
    }
    faces.extend(
        other
            .faces()
            .iter()
            .map(|face| face.map(|i| index[i as usize])),
    );
    let Err(MeshError::NonManifold { at }) = TriMesh::new(vertices, faces) else {
        panic!("should share an edge");
    };
    assert_eq!((at.0.y, at.0.z), (1.0, 1.0));
}

#[test]
fn a_flat_surface_a_wild_one_and_one_of_numbers_that_are_none_are_refused() {
    let flat = TriMesh::cuboid(Point3::origin(), Point3::new(1.0, 1.0, 1e-12));
    assert!(
        matches!(flat, Err(MeshError::ZeroVolume { .. })),
        "{flat:?}"
    );
    let wild = TriMesh::cuboid(Point3::origin(), Point3::new(1.0, 1e9, 1.0));
    assert!(matches!(wild, Err(MeshError::TooLarge { .. })), "{wild:?}");
    let none = TriMesh::cuboid(Point3::new(f64::NAN, 0.0, 0.0), Point3::new(1.0, 1.0, 1.0));
    assert!(none.is_err());
    let empty = TriMesh::new(Vec::new(), Vec::new());
    assert!(matches!(empty, Err(MeshError::TooFewFaces { faces: 0 })));
    let (vertices, mut faces) = parts(&box_mesh(1.0, 1.0, 1.0));
    faces[3] = [0, 1, 99];
    assert_eq!(
        TriMesh::new(vertices, faces),
        Err(MeshError::UnknownVertex { face: 3 })
    );
}

#[test]
fn an_inward_part_is_a_cavity_inside_and_an_error_outside() {
    let with_inward = |low: [f64; 3], high: [f64; 3]| {
        let (mut vertices, mut faces) = parts(&box_mesh(4.0, 2.0, 1.0));
        let inner = TriMesh::cuboid(Point3::from(low), Point3::from(high)).unwrap();
        let shift = vertices.len() as u32;
        vertices.extend_from_slice(inner.vertices());
        faces.extend(
            inner
                .faces()
                .iter()
                .map(|[a, b, c]| [a + shift, c + shift, b + shift]),
        );
        TriMesh::new(vertices, faces)
    };
    let cavity = with_inward([1.0, -0.5, 0.2], [2.0, 0.5, 0.7]).unwrap();
    close(cavity.volume().get::<cubic_meter>(), 8.0 - 0.5, 1e-12);
    let outside = with_inward([5.0, -0.5, 0.2], [6.0, 0.5, 0.7]);
    let Err(MeshError::InsideOut { at }) = outside else {
        panic!("{outside:?}");
    };
    assert!(at.0.x >= 5.0);
}

#[test]
fn a_bracket_adds_and_a_motorwell_takes_away_its_volume() {
    let bracket =
        TriMesh::cuboid(Point3::new(-0.6, -0.4, 0.1), Point3::new(0.0, 0.4, 0.5)).unwrap();
    let well = TriMesh::cuboid(Point3::new(0.0, -0.5, 0.4), Point3::new(0.5, 0.5, 1.02)).unwrap();
    let hull = box_hull(4.0, 2.0, 1.0).with_body(bracket);
    let hull = hull.with_cut_out(well.clone()).unwrap();
    close(
        hull.volume().get::<cubic_meter>(),
        8.0 + 0.6 * 0.8 * 0.4 - 0.5 * 0.62,
        1e-12,
    );
    let under = hull.cut(&plane(0.6, 0.0, 0.0));
    let expected = 4.8 + 0.6 * 0.8 * 0.4 - 0.5 * 1.0 * 0.2;
    close(under.volume.get::<cubic_meter>(), expected, 1e-12);
    let moment = 4.8 * 2.0 + 0.192 * -0.3 - 0.1 * 0.25;
    close(under.centre_of_buoyancy.x, moment / expected, 1e-12);
    let adrift = well
        .translated(&nalgebra::Vector3::new(-3.0, 0.0, 0.0))
        .unwrap();
    assert!(box_hull(4.0, 2.0, 1.0).with_cut_out(adrift).is_err());
}

#[test]
fn tape_lines_pass_through_every_reading() {
    for slices in [1, 4, 9] {
        let mesh = runabout(slices);
        for given in [
            [0.0, 0.95, 0.34],
            [2.0, 1.15, 0.97],
            [3.6, 0.85, 0.42],
            [4.8, -0.50, 0.60],
            [5.8, 0.0, 1.20],
        ] {
            assert!(
                mesh.vertices().iter().any(|v| *v == Point3::from(given)),
                "{given:?}"
            );
        }
        let (low, high) = Hull::new(mesh).bounds();
        // No overshoot: nothing is wider than the widest reading.
        near(high.y, 1.15, 1e-12);
        near(low.z, 0.0, 1e-12);
    }
}

#[test]
fn a_prismatic_tape_hull_has_the_volume_of_its_section() {
    let section = |x: f64, knuckle: bool| TapeSection {
        x: m(x),
        keel: m(0.0),
        bottom_knuckles: if knuckle {
            vec![Point2::new(0.4, 0.1)]
        } else {
            Vec::new()
        },
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
    let raked = Lofting {
        transom_rake: deg(14.0),
        fairing: Fairing::Straight,
        ..Lofting::default()
    };
    let sections = [section(0.0, false), section(5.0, false)];
    let mesh = mesh_from_tape(&sections, &raked).unwrap().mesh;
    let moment = 2.0 * (0.08 * (0.2 * 2.0 / 3.0) + 0.48 * 0.5 + 0.06 * (0.2 + 0.4));
    let wedge = moment * 14.0_f64.to_radians().tan();
    close(
        mesh.volume().get::<cubic_meter>(),
        5.0 * area + wedge,
        1e-12,
    );
}

#[test]
fn a_flat_bottomed_table_of_offsets_closes() {
    let station = |x: f64, b: f64| Station {
        x: m(x),
        points: vec![
            Point2::new(0.7 * b, 0.0),
            Point2::new(b, 0.3),
            Point2::new(b, 1.0),
        ],
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
    let station = |x: f64, b: f64| Station {
        x: m(x),
        points: vec![Point2::new(0.0, 0.0), Point2::new(b, 1.0)],
    };
    let of = |stations: &[Station]| mesh_from_offsets(stations, &Lofting::default()).unwrap_err();
    assert_eq!(
        of(&[station(0.0, 1.0)]),
        LoftError::TooFewSections { sections: 1 }
    );
    assert_eq!(of(&[]), LoftError::TooFewSections { sections: 0 });
    let back = [station(0.0, 1.0), station(-1.0, 1.0)];
    assert_eq!(of(&back), LoftError::NotAscending { section: 1 });
    let none = [station(0.0, 1.0), station(1.0, f64::NAN)];
    assert_eq!(of(&none), LoftError::NotFinite { section: 1 });
    let negative = [station(0.0, -1.0), station(1.0, 1.0)];
    assert!(matches!(
        of(&negative),
        LoftError::NegativeHalfBreadth { section: 0, .. }
    ));
    let flat = [station(0.0, 0.0), station(1.0, 0.0)];
    assert!(matches!(of(&flat), LoftError::Mesh(_)));
}

#[test]
fn the_least_form_says_what_it_assumed() {
    let form = LeastForm {
        length: m(5.5),
        chine_beam: m(1.9),
        deadrise: deg(18.0),
        depth: m(0.9),
    };
    let lofted = mesh_from_least_form(&form, &Lofting::default()).unwrap();
    assert!(lofted.assumptions.len() >= 5);
    let (low, high) = Hull::new(lofted.mesh).bounds();
    near(high.x - low.x, 5.5, 1e-12);
    near(high.z, 0.9, 1e-12);
    let deep = LeastForm {
        deadrise: deg(60.0),
        ..form
    };
    assert!(mesh_from_least_form(&deep, &Lofting::default()).is_err());
}

fn ascii(mesh: &TriMesh, per_meter: f64) -> Vec<u8> {
    let mut text = String::from("solid hull\n");
    for face in mesh.faces() {
        text += "facet normal 0 0 0\nouter loop\n";
        for &i in face {
            let v = mesh.vertices()[i as usize] * per_meter;
            text += &format!("vertex {} {} {}\n", v.x, v.y, v.z);
        }
        text += "endloop\nendfacet\n";
    }
    text += "endsolid hull\n";
    text.into_bytes()
}

fn binary(mesh: &TriMesh, head: &[u8]) -> Vec<u8> {
    let mut bytes = head.to_vec();
    bytes.resize(80, b' ');
    bytes.extend((mesh.faces().len() as u32).to_le_bytes());
    for face in mesh.faces() {
        bytes.extend([0; 12]);
        for &i in face {
            for c in mesh.vertices()[i as usize].iter() {
                bytes.extend((*c as f32).to_le_bytes());
            }
        }
        bytes.extend([0; 2]);
    }
    bytes
}

#[test]
fn both_forms_of_stereolithography_give_the_hull_back() {
    let mesh = runabout(4);
    let volume = mesh.volume().get::<cubic_meter>();
    let unit = uom::si::f64::Length::new::<millimeter>(1.0);
    let found = mesh_from_stl(&ascii(&mesh, 1000.0), unit).unwrap();
    close(found.volume().get::<cubic_meter>(), volume, 1e-6);
    assert_eq!(found.faces().len(), mesh.faces().len());
    // A binary file may begin with the word of the ascii form.
    for head in [b"hull".as_slice(), b"solid hull", b"solid hull\n"] {
        let found = mesh_from_stl(&binary(&mesh, head), m(1.0)).unwrap();
        close(found.volume().get::<cubic_meter>(), volume, 1e-6);
    }
}

#[test]
fn a_broken_file_says_what_is_broken() {
    let mesh = box_mesh(2.0, 1.0, 1.0);
    let whole = binary(&mesh, b"hull");
    let cut = mesh_from_stl(&whole[..whole.len() - 70], m(1.0));
    assert!(
        matches!(
            cut,
            Err(StlError::Truncated {
                stated: 12,
                held: 10
            })
        ),
        "{cut:?}"
    );
    assert!(matches!(
        mesh_from_stl(b"", m(1.0)),
        Err(StlError::Unreadable { .. })
    ));
    assert!(matches!(mesh_from_stl(&whole, m(0.0)), Err(StlError::Unit)));
    let mut text = ascii(&mesh, 1.0);
    text.truncate(text.len() / 2);
    assert!(mesh_from_stl(&text, m(1.0)).is_err());
    let mut holed = binary(&mesh, b"hull");
    holed.truncate(holed.len() - 50);
    holed[80] = 11;
    let found = mesh_from_stl(&holed, m(1.0));
    assert!(
        matches!(found, Err(StlError::Mesh(MeshError::Open { edges: 3, .. }))),
        "{found:?}"
    );
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(200) })]

    #[test]
    fn no_bytes_make_the_stl_reader_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let _ = mesh_from_stl(&bytes, m(1.0));
        let text = [b"solid x\n".as_slice(), &bytes].concat();
        let _ = mesh_from_stl(&text, m(1.0));
    }

    #[test]
    fn a_spoilt_stl_file_never_panics(at in 0usize..684, byte in any::<u8>(), cut in 0usize..684) {
        let mut bytes = binary(&box_mesh(2.0, 1.0, 1.0), b"hull");
        bytes[at] = byte;
        bytes.truncate(cut.max(at + 1));
        let _ = mesh_from_stl(&bytes, m(1.0));
    }

    #[test]
    fn no_triangles_make_the_mesh_check_panic(
        points in prop::collection::vec(prop::array::uniform3(prop::num::f64::ANY), 0..8),
        faces in prop::collection::vec(prop::array::uniform3(0u32..9), 0..16),
    ) {
        let _ = TriMesh::new(points.into_iter().map(Point3::from).collect(), faces);
    }

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
