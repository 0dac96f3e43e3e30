//! Hulls from stereolithography (STL) files.

use std::io::Cursor;

use nalgebra::Point3;
use uom::si::f64::Length;
use uom::si::length::meter;

use super::closed;
use super::error::StlError;
use super::mesh::TriMesh;
use super::weld::weld;

/// Head of a binary file, bytes, with the count of triangles behind it.
const HEAD: usize = 80;
/// Bytes of one triangle in a binary file.
const TRIANGLE: usize = 50;
/// So many times what a file holds it may have held before it was cut short.
const CUT_SHORT: u64 = 100;
/// Vertices are joined within this part of the diagonal: a few steps of the file's 32-bit numbers.
const WELD: f64 = 1e-6;

/// Reads a closed surface from the bytes of an ascii or binary file.
///
/// `unit` is the length of one unit of the file, which does not state it (1 mm for most drawings); the file's
/// axes must be boat axes. Vertices within 1e-6 of the diagonal are joined.
///
/// # Errors
/// [`StlError`] where the bytes are neither form, are cut short, or the surface is not that of a solid.
pub fn mesh_from_stl(bytes: &[u8], unit: Length) -> Result<TriMesh, StlError> {
    let unit = unit.get::<meter>();
    if !(unit.is_finite() && unit > 0.0) {
        return Err(StlError::Unit);
    }
    let mut bytes = bytes.to_vec();
    match binary_count(&bytes) {
        Some((stated, held, exact)) if exact && stated == held => {
            // Some writers begin the head of a binary file with the word that marks ascii files.
            bytes[..HEAD].fill(0);
        }
        Some((stated, held, _)) if !is_text(&bytes) => {
            // A file that was cut short lost some of its end; a count far from what it holds is no count.
            let cut_short = stated > held && stated <= CUT_SHORT * (held + 1);
            return Err(if cut_short {
                StlError::Truncated { stated, held }
            } else {
                StlError::Unreadable { reason: "its head counts no triangles".to_owned() }
            });
        }
        _ => {}
    }
    let soup = stl_io::read_stl(&mut Cursor::new(bytes))
        .map_err(|error| StlError::Unreadable { reason: error.to_string() })?;
    let vertices: Vec<Point3<f64>> =
        soup.vertices.iter().map(|v| Point3::from([v[0], v[1], v[2]].map(|c| f64::from(c) * unit))).collect();
    let faces: Vec<[u32; 3]> = soup.faces.iter().map(|face| face.vertices.map(|i| i as u32)).collect();
    let (low, high) = closed::bounds(&vertices);
    let diagonal = (high - low).norm();
    let mesh = if diagonal.is_finite() {
        let (vertices, faces) = weld(&vertices, &faces, WELD * diagonal);
        TriMesh::new(vertices, faces)
    } else {
        TriMesh::new(vertices, faces)
    };
    Ok(mesh?)
}

/// Triangles that a binary head states, whole triangles that follow it, and whether nothing else does.
fn binary_count(bytes: &[u8]) -> Option<(u64, u64, bool)> {
    let count: [u8; 4] = bytes.get(HEAD..HEAD + 4)?.try_into().ok()?;
    let body = bytes.len() - HEAD - 4;
    Some((u64::from(u32::from_le_bytes(count)), (body / TRIANGLE) as u64, body.is_multiple_of(TRIANGLE)))
}

fn is_text(bytes: &[u8]) -> bool {
    let start = bytes.trim_ascii_start();
    start.len() >= 5 && start[..5].eq_ignore_ascii_case(b"solid")
}
