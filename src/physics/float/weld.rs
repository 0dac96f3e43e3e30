//! Joining vertices that lie together, so that triangles share corners.

use std::collections::HashMap;

use nalgebra::Point3;

/// Joins vertices within a distance (metres) of one met earlier, drops triangles that collapse and pairs
/// of triangles that lie on each other face to face. Unused vertices go too.
pub(super) fn weld(vertices: &[Point3<f64>], faces: &[[u32; 3]], distance: f64) -> (Vec<Point3<f64>>, Vec<[u32; 3]>) {
    let joined = join(vertices, distance);
    let mut kept: Vec<[u32; 3]> = faces
        .iter()
        .map(|face| face.map(|i| joined[i as usize]))
        .filter(|[a, b, c]| a != b && b != c && c != a)
        .collect();
    cancel(&mut kept);
    let mut new_index = vec![u32::MAX; vertices.len()];
    let mut used = Vec::new();
    for corner in kept.iter_mut().flatten() {
        let slot = &mut new_index[*corner as usize];
        if *slot == u32::MAX {
            *slot = used.len() as u32;
            used.push(vertices[*corner as usize]);
        }
        *corner = *slot;
    }
    (used, kept)
}

/// For each vertex the first one that it lies with.
fn join(vertices: &[Point3<f64>], distance: f64) -> Vec<u32> {
    // A cell is as wide as the distance, so that a near vertex is in the same cell or a neighbour.
    let cell = |v: &Point3<f64>| {
        [v.x, v.y, v.z].map(|c| {
            if distance > 0.0 {
                (c / distance).floor() as i64
            } else {
                // Adding zero makes one of the two zeros.
                (c + 0.0).to_bits().cast_signed()
            }
        })
    };
    let steps: &[i64] = if distance > 0.0 { &[-1, 0, 1] } else { &[0] };
    let mut first_in: HashMap<[i64; 3], Vec<u32>> = HashMap::new();
    let mut joined = Vec::with_capacity(vertices.len());
    for (index, vertex) in vertices.iter().enumerate() {
        let [x, y, z] = cell(vertex);
        let neighbours =
            steps.iter().flat_map(|dx| steps.iter().flat_map(move |dy| steps.iter().map(move |dz| [*dx, *dy, *dz])));
        let found = neighbours
            .filter_map(|[dx, dy, dz]| {
                first_in.get(&[x.saturating_add(dx), y.saturating_add(dy), z.saturating_add(dz)])
            })
            .flatten()
            .copied()
            .find(|&other| (vertices[other as usize] - vertex).norm() <= distance);
        joined.push(found.unwrap_or_else(|| {
            first_in.entry([x, y, z]).or_default().push(index as u32);
            index as u32
        }));
    }
    joined
}

/// Takes out pairs of triangles with the same corners and opposite faces: a sheet without thickness.
fn cancel(faces: &mut Vec<[u32; 3]>) {
    let key = |face: &[u32; 3]| {
        let mut sorted = *face;
        sorted.sort_unstable();
        sorted
    };
    let turn = |face: &[u32; 3]| {
        let inversions = [(0, 1), (0, 2), (1, 2)].map(|(i, j)| i32::from(face[i] > face[j]));
        if inversions.iter().sum::<i32>() % 2 == 0 { 1 } else { -1 }
    };
    let mut net: HashMap<[u32; 3], i32> = HashMap::new();
    for face in faces.iter() {
        *net.entry(key(face)).or_default() += turn(face);
    }
    faces.retain(|face| {
        let left = net.entry(key(face)).or_default();
        let keep = *left * turn(face) > 0;
        if keep {
            *left -= turn(face);
        }
        keep
    });
}
