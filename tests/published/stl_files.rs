//! Stereolithography files, ascii and binary, whole and broken. The forms are those of the 3D Systems
//! StereoLithography Interface Specification, 1989 (from memory).

use proptest::prelude::*;
use sternknee::physics::float::{MeshError, StlError, TriMesh, mesh_from_stl};
use uom::si::length::millimeter;
use uom::si::volume::cubic_meter;

use super::shapes::*;

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
    assert!(matches!(cut, Err(StlError::Truncated { stated: 12, held: 10 })), "{cut:?}");
    assert!(matches!(mesh_from_stl(b"", m(1.0)), Err(StlError::Unreadable { .. })));
    assert!(matches!(mesh_from_stl(&whole, m(0.0)), Err(StlError::Unit)));
    let mut text = ascii(&mesh, 1.0);
    text.truncate(text.len() / 2);
    assert!(mesh_from_stl(&text, m(1.0)).is_err());
    let mut holed = binary(&mesh, b"hull");
    holed.truncate(holed.len() - 50);
    holed[80] = 11;
    let found = mesh_from_stl(&holed, m(1.0));
    assert!(matches!(found, Err(StlError::Mesh(MeshError::Open { edges: 3, .. }))), "{found:?}");
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
}
