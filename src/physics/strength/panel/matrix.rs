//! The stiffness matrix in compressed columns.

use faer::Side as Triangle;
use faer::sparse::{SparseColMat, SymbolicSparseColMat};

use super::error::PanelError;
use super::mesh::Mesh;
use super::model::Point;

/// Marks a held unknown.
pub(super) const HELD: u32 = u32::MAX;

pub(super) type Factor = faer::sparse::linalg::solvers::Llt<usize, f64>;

/// Lower triangle of the stiffness matrix, column by column, its pattern laid out node by node.
pub(super) struct Matrix {
    starts: Vec<usize>,
    rows: Vec<usize>,
    values: Vec<f64>,
    /// Per node: its higher neighbours in order, and how many free unknowns lie before each.
    above: Vec<Vec<(u32, u32)>>,
}

impl Matrix {
    pub fn new(mesh: &Mesh, equation: &[[u32; 3]], size: usize) -> Self {
        let mut above: Vec<Vec<(u32, u32)>> = vec![Vec::with_capacity(8); mesh.nodes.len()];
        for nodes in &mesh.triangles {
            for (i, &p) in nodes.iter().enumerate() {
                for &q in &nodes[i + 1..] {
                    let list = &mut above[p.min(q) as usize];
                    if !list.iter().any(|&(n, _)| n == p.max(q)) {
                        list.push((p.max(q), 0));
                    }
                }
            }
        }
        let (mut starts, mut rows) = (Vec::with_capacity(size + 1), Vec::with_capacity(20 * size));
        starts.push(0);
        for (n, list) in above.iter_mut().enumerate() {
            list.sort_unstable();
            let mut before = 0;
            for (m, skip) in list.iter_mut() {
                *skip = before;
                before += equation[*m as usize].iter().filter(|&&e| e != HELD).count() as u32;
            }
            let own = equation[n].iter().filter(|&&e| e != HELD);
            for &column in own.clone() {
                rows.extend(own.clone().filter(|&&e| e >= column).map(|&e| e as usize));
                for (m, _) in list.iter() {
                    rows.extend(
                        equation[*m as usize]
                            .iter()
                            .filter(|&&e| e != HELD)
                            .map(|&e| e as usize),
                    );
                }
                starts.push(rows.len());
            }
        }
        let values = vec![0.0; rows.len()];
        Self {
            starts,
            rows,
            values,
            above,
        }
    }

    /// Adds an element of `N` nodes (`3 N` unknowns `w, βy, βz`), turned into the nodes' frames.
    pub fn add<const N: usize, const M: usize>(
        &mut self,
        equation: &[[u32; 3]],
        frame: &[Point],
        nodes: [u32; N],
        k: &[[f64; M]; M],
    ) {
        for (j, &nj) in nodes.iter().enumerate() {
            for (i, &ni) in nodes.iter().enumerate() {
                if ni < nj {
                    continue;
                }
                let block = turned(k, 3 * i, 3 * j, frame[ni as usize], frame[nj as usize]);
                let (columns, rows) = (equation[nj as usize], equation[ni as usize]);
                let own = columns.iter().filter(|&&e| e != HELD).count();
                let skip = if ni == nj {
                    0
                } else {
                    self.above[nj as usize]
                        .iter()
                        .find(|(m, _)| *m == ni)
                        .map_or(0, |(_, skip)| *skip as usize)
                };
                let mut rank = 0;
                for (c, &column) in columns.iter().enumerate() {
                    if column == HELD {
                        continue;
                    }
                    let start = self.starts[column as usize];
                    let mut slot = if ni == nj {
                        start
                    } else {
                        start + own - rank + skip
                    };
                    for (r, &row) in rows.iter().enumerate() {
                        if row == HELD || (ni == nj && row < column) {
                            continue;
                        }
                        self.values[slot] += block[r][c];
                        slot += 1;
                    }
                    rank += 1;
                }
            }
        }
    }

    pub fn factor(self, size: usize) -> Result<Factor, PanelError> {
        let pattern = SymbolicSparseColMat::new_checked(size, size, self.starts, None, self.rows);
        let matrix = SparseColMat::new(pattern, self.values);
        matrix
            .sp_cholesky(Triangle::Lower)
            .map_err(|e| PanelError::Factor {
                reason: format!("{e:?}"),
            })
    }
}

/// The 3×3 block of an element matrix at (`r0`, `c0`), its rotations turned into both nodes' frames.
fn turned<const M: usize>(
    k: &[[f64; M]; M],
    r0: usize,
    c0: usize,
    row: Point,
    column: Point,
) -> [[f64; 3]; 3] {
    let mut b = [0, 1, 2].map(|r| [0, 1, 2].map(|c| k[r0 + r][c0 + c]));
    if row != [1.0, 0.0] {
        let [c, s] = row;
        let (along, across) = (b[1], b[2]);
        b[1] = [0, 1, 2].map(|q| c * along[q] + s * across[q]);
        b[2] = [0, 1, 2].map(|q| c * across[q] - s * along[q]);
    }
    if column != [1.0, 0.0] {
        let [c, s] = column;
        for row in &mut b {
            let (along, across) = (row[1], row[2]);
            row[1] = c * along + s * across;
            row[2] = c * across - s * along;
        }
    }
    b
}
