//! A hull from a closed mesh in a file.

use uom::si::f64::Length;

use super::Built;
use crate::physics::float::{Attitude, Hull, MeshError, StlError, WaterPlane, mesh_from_stl};
use crate::quantity::{Dimensioned, Text};
use crate::written::Slip;

/// Share of a hull's volume that lies below half its height at the most. Common practice, no source: a
/// box has half, a boat less.
const MOST_BELOW_THE_MIDDLE: f64 = 0.6;

/// A mesh whose top rises less than this part of its height above its baseline lies below it. Common practice, no source.
const LEAST_ABOVE_BASELINE: f64 = 0.02;

/// The hull that these bytes draw.
pub(super) fn built(bytes: &[u8], unit: Length) -> Result<Built, Slip> {
    let mesh = mesh_from_stl(bytes, unit).map_err(|error| fault(&error))?;
    let hull = Hull::new(mesh.clone());
    Ok(Built { how: "a closed mesh from a file", assumed: doubts(&hull), mesh, hull, sheer: Vec::new() })
}

/// What a mesh alone cannot be asked, and what about it looks wrong.
fn doubts(hull: &Hull) -> Vec<Text> {
    let mut doubts = Vec::new();
    let (low, high) = hull.bounds();
    doubts.push(Text::from(
        "The mesh is taken to stand in boat axes: x forward from the transom, y to port, z up from the bottom.",
    ));
    if high.z <= LEAST_ABOVE_BASELINE * (high.z - low.z) {
        doubts.push(Text::from(
            "The mesh lies below its own baseline: it may be upside down, or its origin is not at the bottom of the hull. Look at it before anything here is used.",
        ));
        return doubts;
    }
    let middle = Length::from_si(0.5 * (low.z + high.z));
    let plane = WaterPlane::at(Attitude { sinkage: middle, ..Default::default() });
    if let Ok(plane) = plane {
        let below = hull.cut(&plane).volume / hull.volume();
        if below.si() > MOST_BELOW_THE_MIDDLE {
            doubts.push(Text::from(
                "The greater part of the mesh lies in its lower half: it may be upside down. Look at it before anything here is used.",
            ));
        }
    }
    doubts
}

fn fault(error: &StlError) -> Slip {
    let (message, help) = match error {
        StlError::Mesh(mesh) => (
            format!("the mesh is not the surface of a hull: {mesh}"),
            match mesh {
                MeshError::Open { .. } => "close it there: deck and transom belong to it; places are in boat axes",
                MeshError::InsideOut { .. } => {
                    "turn its triangles round: outward, corners counter-clockwise seen from outside"
                }
                MeshError::Inconsistent { .. } => "turn one of the two triangles there",
                MeshError::TooLarge { .. } => "check `unit`: 1 mm for most drawings",
                _ => "mend it in the program that drew it",
            },
        ),
        StlError::Truncated { .. } => (error.to_string(), "write the file anew"),
        other => (other.to_string(), "an STL file, ascii or binary, of the closed hull is expected"),
    };
    Slip { path: "hull.file".to_owned(), message, help: help.to_owned() }
}
