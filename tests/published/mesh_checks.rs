//! Which surfaces are taken for solid bodies, and which are refused, with the place; bodies added and cut
//! out. Shapes are simple enough to work out by hand.

use nalgebra::Point3;
use proptest::prelude::*;
use sternknee::physics::float::{MeshError, TriMesh};
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
    assert!(matches!(found, Err(MeshError::InsideOut { .. })), "{found:?}");
}

#[test]
fn one_turned_triangle_is_refused_at_its_edge() {
    let (vertices, mut faces) = parts(&box_mesh(4.0, 2.0, 1.0));
    faces[5].swap(0, 1);
    let found = TriMesh::new(vertices, faces);
    assert!(matches!(found, Err(MeshError::Inconsistent { .. })), "{found:?}");
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
    faces.extend(other.faces().iter().map(|face| face.map(|i| index[i as usize])));
    let Err(MeshError::NonManifold { at }) = TriMesh::new(vertices, faces) else {
        panic!("should share an edge");
    };
    assert_eq!((at.0.y, at.0.z), (1.0, 1.0));
}

/// Whichever two of its three corners fall together, by number or by place.
#[test]
fn a_triangle_with_two_corners_at_one_place_is_refused_by_its_number() {
    let (vertices, faces) = parts(&box_mesh(4.0, 2.0, 1.0));
    let [a, b, c] = faces[4];
    let twin = vertices.len() as u32;
    for corners in [[a, a, c], [a, b, b], [a, b, a], [a, twin, c], [twin, b, a]] {
        let (mut vertices, mut faces) = (vertices.clone(), faces.clone());
        vertices.push(vertices[a as usize]);
        faces[4] = corners;
        let found = TriMesh::new(vertices, faces);
        assert!(matches!(found, Err(MeshError::Degenerate { face: 4, .. })), "{corners:?}: {found:?}");
    }
}

#[test]
fn a_flat_surface_a_wild_one_and_one_of_numbers_that_are_none_are_refused() {
    let flat = TriMesh::cuboid(Point3::origin(), Point3::new(1.0, 1.0, 1e-12));
    assert!(matches!(flat, Err(MeshError::ZeroVolume { .. })), "{flat:?}");
    let wild = TriMesh::cuboid(Point3::origin(), Point3::new(1.0, 1e9, 1.0));
    assert!(matches!(wild, Err(MeshError::TooLarge { .. })), "{wild:?}");
    let none = TriMesh::cuboid(Point3::new(f64::NAN, 0.0, 0.0), Point3::new(1.0, 1.0, 1.0));
    assert!(none.is_err());
    let empty = TriMesh::new(Vec::new(), Vec::new());
    assert!(matches!(empty, Err(MeshError::TooFewFaces { faces: 0 })));
    let (vertices, mut faces) = parts(&box_mesh(1.0, 1.0, 1.0));
    faces[3] = [0, 1, 99];
    assert_eq!(TriMesh::new(vertices, faces), Err(MeshError::UnknownVertex { face: 3 }));
}

#[test]
fn an_inward_part_is_a_cavity_inside_and_an_error_outside() {
    let with_inward = |low: [f64; 3], high: [f64; 3]| {
        let (mut vertices, mut faces) = parts(&box_mesh(4.0, 2.0, 1.0));
        let inner = TriMesh::cuboid(Point3::from(low), Point3::from(high)).unwrap();
        let shift = vertices.len() as u32;
        vertices.extend_from_slice(inner.vertices());
        faces.extend(inner.faces().iter().map(|[a, b, c]| [a + shift, c + shift, b + shift]));
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
    let bracket = TriMesh::cuboid(Point3::new(-0.6, -0.4, 0.1), Point3::new(0.0, 0.4, 0.5)).unwrap();
    let well = TriMesh::cuboid(Point3::new(0.0, -0.5, 0.4), Point3::new(0.5, 0.5, 1.02)).unwrap();
    let hull = box_hull(4.0, 2.0, 1.0).with_body(bracket);
    let hull = hull.with_cut_out(well.clone()).unwrap();
    close(hull.volume().get::<cubic_meter>(), 8.0 + 0.6 * 0.8 * 0.4 - 0.5 * 0.62, 1e-12);
    let under = hull.cut(&plane(0.6, 0.0, 0.0));
    let expected = 4.8 + 0.6 * 0.8 * 0.4 - 0.5 * 1.0 * 0.2;
    close(under.volume.get::<cubic_meter>(), expected, 1e-12);
    let moment = 4.8 * 2.0 + 0.192 * -0.3 - 0.1 * 0.25;
    close(under.centre_of_buoyancy.x, moment / expected, 1e-12);
    let adrift = well.translated(&nalgebra::Vector3::new(-3.0, 0.0, 0.0)).unwrap();
    assert!(box_hull(4.0, 2.0, 1.0).with_cut_out(adrift).is_err());
}

/// Whether a place lies in a body does not go by the length unit: boxes of a hand, of a boat, of an island.
#[test]
fn a_place_lies_in_a_box_between_its_sides_whatever_its_size() {
    let sides = [4.0, 2.0, 1.0];
    let shares = [-3.0, -0.2, 0.03, 0.3, 0.5, 0.97, 1.1, 6.0];
    for size in [0.02, 1.0, 700.0] {
        let [l, b, d] = sides.map(|side| size * side);
        let hull = box_hull(l, b, d);
        for (x, y, z) in shares.iter().flat_map(|x| shares.iter().flat_map(move |y| shares.map(|z| (*x, *y, z)))) {
            let within = [x, y, z].iter().all(|share| (0.0..=1.0).contains(share));
            let place = Point3::new(x * l, (y - 0.5) * b, z * d);
            assert_eq!(hull.contains(&place), within, "{size}: {place:?}");
        }
    }
}

/// The same of what is added and cut out: in a bracket one is in the hull, in a well out of it.
#[test]
fn a_place_lies_in_a_bracket_and_not_in_a_well() {
    let bracket = TriMesh::cuboid(Point3::new(-0.6, -0.4, 0.1), Point3::new(0.0, 0.4, 0.5)).unwrap();
    let well = TriMesh::cuboid(Point3::new(0.0, -0.5, 0.4), Point3::new(0.5, 0.5, 1.02)).unwrap();
    let hull = box_hull(4.0, 2.0, 1.0).with_body(bracket).with_cut_out(well).unwrap();
    for (place, within) in [
        ([-0.3, 0.1, 0.3], true),
        ([-0.3, 0.1, 0.6], false),
        ([0.25, 0.1, 0.7], false),
        ([0.25, 0.1, 0.3], true),
        ([0.25, 0.7, 0.7], true),
        ([2.0, 0.0, 0.5], true),
        ([2.0, 0.0, 1.2], false),
    ] {
        assert_eq!(hull.contains(&Point3::from(place)), within, "{place:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(200) })]

    #[test]
    fn no_triangles_make_the_mesh_check_panic(
        points in prop::collection::vec(prop::array::uniform3(prop::num::f64::ANY), 0..8),
        faces in prop::collection::vec(prop::array::uniform3(0u32..9), 0..16),
    ) {
        let _ = TriMesh::new(points.into_iter().map(Point3::from).collect(), faces);
    }
}
