//! The checks that make a set of triangles the surface of a solid body.

use nalgebra::{Point3, center};

use super::error::{MeshError, Place};

/// Farthest coordinate that is taken for a boat's, metres: larger ones are a wrong length unit.
const LARGEST_COORDINATE_M: f64 = 1e5;
/// Least volume as a part of the cube on the diagonal: a sheet of 1 mm on a boat of 10 m has 1e-5.
const LEAST_VOLUME_RATIO: f64 = 1e-9;
/// Shortest diagonal of a body, metres: below it the volume is lost in rounding.
const SHORTEST_DIAGONAL_M: f64 = 1e-6;
/// Most separate inward-facing parts that are taken for cavities; a boat has a few at most.
const MOST_CAVITIES: usize = 32;

/// Fails at the first reason why the surface does not bound a solid.
pub(super) fn check(vertices: &[Point3<f64>], faces: &[[u32; 3]]) -> Result<(), MeshError> {
    check_coordinates(vertices)?;
    if faces.len() < 4 {
        return Err(MeshError::TooFewFaces { faces: faces.len() });
    }
    check_corners(vertices, faces)?;
    check_edges(vertices, faces)?;
    check_volume(vertices, faces)
}

fn check_coordinates(vertices: &[Point3<f64>]) -> Result<(), MeshError> {
    for (vertex, v) in vertices.iter().enumerate() {
        if !v.iter().all(|c| c.is_finite()) {
            return Err(MeshError::NotFinite { vertex });
        }
        if v.iter().any(|c| c.abs() > LARGEST_COORDINATE_M) {
            let at = Place(*v);
            return Err(MeshError::TooLarge { vertex, at });
        }
    }
    Ok(())
}

fn check_corners(vertices: &[Point3<f64>], faces: &[[u32; 3]]) -> Result<(), MeshError> {
    for (face, corners) in faces.iter().enumerate() {
        if corners.iter().any(|&i| i as usize >= vertices.len()) {
            return Err(MeshError::UnknownVertex { face });
        }
        let [a, b, c] = corners.map(|i| vertices[i as usize]);
        if a == b || b == c || c == a {
            let at = Place(a);
            return Err(MeshError::Degenerate { face, at });
        }
    }
    Ok(())
}

/// Each edge must be run through once in each direction.
fn check_edges(vertices: &[Point3<f64>], faces: &[[u32; 3]]) -> Result<(), MeshError> {
    let mut edges: Vec<(u32, u32, bool)> = faces
        .iter()
        .flat_map(|&[a, b, c]| [(a, b), (b, c), (c, a)])
        .map(|(a, b)| (a.min(b), a.max(b), a < b))
        .collect();
    edges.sort_unstable();
    let mut open = 0;
    let mut first_open = None;
    for run in edges.chunk_by(|one, other| (one.0, one.1) == (other.0, other.1)) {
        let middle = || {
            let (a, b, _) = run[0];
            Place(center(&vertices[a as usize], &vertices[b as usize]))
        };
        match run {
            [_] => {
                open += 1;
                first_open.get_or_insert_with(middle);
            }
            [one, other] if one.2 == other.2 => {
                return Err(MeshError::Inconsistent { at: middle() });
            }
            [_, _] => {}
            _ => return Err(MeshError::NonManifold { at: middle() }),
        }
    }
    match first_open {
        Some(at) => Err(MeshError::Open { at, edges: open }),
        None => Ok(()),
    }
}

fn check_volume(vertices: &[Point3<f64>], faces: &[[u32; 3]]) -> Result<(), MeshError> {
    let (low, high) = bounds(vertices);
    let diagonal = (high - low).norm();
    let least = LEAST_VOLUME_RATIO * diagonal.powi(3);
    let whole = volume(vertices, faces);
    if diagonal < SHORTEST_DIAGONAL_M || whole.abs() <= least {
        let at = Place(center(&low, &high));
        return Err(MeshError::ZeroVolume { at });
    }
    if whole < 0.0 {
        let at = Place(vertices[faces[0][0] as usize]);
        return Err(MeshError::InsideOut { at });
    }
    let parts = parts(vertices.len(), faces);
    let inward = parts.iter().enumerate().filter(|(_, part)| volume(vertices, part) < 0.0);
    for (seen, (index, part)) in inward.enumerate() {
        // Each face meets its own part's corner edge-on, so the part is left out of the count.
        let corner = vertices[part[0][0] as usize];
        let others = parts.iter().enumerate().filter(|(i, _)| *i != index);
        let winding: f64 = others.map(|(_, other)| winding_number(vertices, other, &corner)).sum();
        if seen >= MOST_CAVITIES || winding < 0.5 {
            let at = Place(corner);
            return Err(MeshError::InsideOut { at });
        }
    }
    Ok(())
}

/// The faces, sorted into parts that share no vertex.
fn parts(vertices: usize, faces: &[[u32; 3]]) -> Vec<Vec<[u32; 3]>> {
    let mut parent: Vec<usize> = (0..vertices).collect();
    fn root(parent: &mut [usize], mut i: usize) -> usize {
        while parent[i] != i {
            parent[i] = parent[parent[i]];
            i = parent[i];
        }
        i
    }
    for &[a, b, c] in faces {
        for other in [b, c] {
            let (one, two) = (root(&mut parent, a as usize), root(&mut parent, other as usize));
            parent[one.max(two)] = one.min(two);
        }
    }
    let mut part_of = vec![usize::MAX; vertices];
    let mut parts: Vec<Vec<[u32; 3]>> = Vec::new();
    for face in faces {
        let root = root(&mut parent, face[0] as usize);
        if part_of[root] == usize::MAX {
            part_of[root] = parts.len();
            parts.push(Vec::new());
        }
        parts[part_of[root]].push(*face);
    }
    parts
}

/// Signed volume, m³, by the divergence theorem about the middle of the box, which keeps rounding low.
pub(super) fn volume(vertices: &[Point3<f64>], faces: &[[u32; 3]]) -> f64 {
    let (low, high) = bounds(vertices);
    let middle = center(&low, &high);
    faces
        .iter()
        .map(|face| {
            let [a, b, c] = face.map(|i| vertices[i as usize] - middle);
            a.dot(&b.cross(&c)) / 6.0
        })
        .sum()
}

/// Least and greatest corner of the box round the points, metres.
pub(super) fn bounds(points: &[Point3<f64>]) -> (Point3<f64>, Point3<f64>) {
    points.iter().fold((Point3::from([f64::INFINITY; 3]), Point3::from([f64::NEG_INFINITY; 3])), |(low, high), p| {
        (low.inf(p), high.sup(p))
    })
}

/// How often the faces wind round a point: 1 inside a closed surface, 0 outside.
///
/// The solid angles are those of van Oosterom and Strackee, IEEE Trans. Biomed. Eng. 30 (1983) 125.
pub(super) fn winding_number(vertices: &[Point3<f64>], faces: &[[u32; 3]], point: &Point3<f64>) -> f64 {
    let angle: f64 = faces
        .iter()
        .map(|face| {
            let [a, b, c] = face.map(|i| vertices[i as usize] - point);
            let (la, lb, lc) = (a.norm(), b.norm(), c.norm());
            let denominator = la * lb * lc + a.dot(&b) * lc + b.dot(&c) * la + c.dot(&a) * lb;
            2.0 * a.dot(&b.cross(&c)).atan2(denominator)
        })
        .sum();
    angle / (4.0 * std::f64::consts::PI)
}
