//! The stiffness matrix in compressed columns, its unknowns numbered in the order of elimination, and its Cholesky factor.

use std::sync::Arc;

use faer::dyn_stack::{MemBuffer, MemStack};
use faer::sparse::linalg::SupernodalThreshold;
use faer::sparse::linalg::amd;
use faer::sparse::linalg::cholesky::{
    CholeskySymbolicParams, LltRef, SymbolicCholesky, SymmetricOrdering, factorize_symbolic_cholesky,
};
use faer::sparse::{SparseColMatRef, SymbolicSparseColMatRef};
use faer::{Conj, MatMut, Par, Side as Triangle};

use super::error::PanelError;
use super::mesh::Mesh;
use super::vector::Point;

/// Marks a held unknown.
pub(super) const HELD: u32 = u32::MAX;

fn failed(error: &impl std::fmt::Debug) -> PanelError {
    PanelError::Factor { reason: format!("{error:?}") }
}

/// For each node the nodes it shares a triangle with, itself left out.
pub(super) struct Neighbours {
    starts: Vec<u32>,
    nodes: Vec<u32>,
}

impl Neighbours {
    pub(super) fn of(mesh: &Mesh) -> Self {
        let mut lists: Vec<Vec<u32>> = vec![Vec::with_capacity(12); mesh.nodes.len()];
        for nodes in &mesh.triangles {
            for &p in nodes {
                let list = &mut lists[p as usize];
                for &q in nodes {
                    if q != p && !list.contains(&q) {
                        list.push(q);
                    }
                }
            }
        }
        let mut starts = Vec::with_capacity(lists.len() + 1);
        let mut nodes = Vec::with_capacity(12 * lists.len());
        starts.push(0);
        for mut list in lists {
            list.sort_unstable();
            nodes.extend(list);
            starts.push(nodes.len() as u32);
        }
        Self { starts, nodes }
    }

    fn at(&self, node: u32) -> &[u32] {
        let [a, b] = [0, 1].map(|k| self.starts[node as usize + k] as usize);
        &self.nodes[a..b]
    }

    /// Nodes in an order of elimination that fills the factor little: approximate minimum degree, over nodes rather than
    /// unknowns, which is the same graph with nine times fewer entries.
    pub(super) fn elimination(&self) -> Result<Vec<u32>, PanelError> {
        let n = self.starts.len() - 1;
        let graph = SymbolicSparseColMatRef::new_checked(n, n, &self.starts, None, &self.nodes);
        let (mut order, mut place) = (vec![0_u32; n], vec![0_u32; n]);
        let mut memory = MemBuffer::new(amd::order_scratch::<u32>(n, self.nodes.len()));
        amd::order(&mut order, &mut place, graph, amd::Control::default(), MemStack::new(&mut memory))
            .map_err(|e| failed(&e))?;
        Ok(order)
    }
}

/// Where a stiffness matrix's lower triangle holds something, column by column, laid out node by node: the rows of a column's own
/// node from the diagonal on, then those of its neighbours that are eliminated after it.
struct Pattern {
    starts: Vec<u32>,
    rows: Vec<u32>,
    /// Per node: the neighbours that are eliminated after it, in that order, and how many free unknowns lie before each, the
    /// node's own among them.
    after: Vec<Vec<(u32, u32)>>,
    /// Where its factor does.
    symbolic: SymbolicCholesky<u32>,
}

impl Pattern {
    /// How many entries lie before a node's rows in the first column of another, or in its own; `None` where its rows lie above
    /// the diagonal there. A node's every further column begins one row later.
    fn skip(&self, row: u32, column: u32) -> Option<usize> {
        if row == column {
            return Some(0);
        }
        self.after[column as usize].iter().find(|(n, _)| *n == row).map(|(_, skip)| *skip as usize)
    }
}

/// A stiffness matrix. Copies share their pattern.
#[derive(Clone)]
pub(super) struct Matrix {
    pattern: Arc<Pattern>,
    values: Vec<f64>,
}

impl Matrix {
    /// `order` lists the nodes as their unknowns are numbered in `equation`.
    ///
    /// Errors: as the solver's, of a pattern too large for it.
    pub(super) fn new(
        neighbours: &Neighbours,
        order: &[u32],
        equation: &[[u32; 3]],
        size: usize,
    ) -> Result<Self, PanelError> {
        let mut place = vec![0_u32; order.len()];
        for (i, &n) in order.iter().enumerate() {
            place[n as usize] = i as u32;
        }
        let free = |n: u32| equation[n as usize].iter().copied().filter(|&e| e != HELD);
        let mut after = vec![Vec::new(); order.len()];
        let (mut starts, mut rows) = (Vec::with_capacity(size + 1), Vec::with_capacity(20 * size));
        starts.push(0);
        for &n in order {
            let mut list: Vec<(u32, u32)> =
                neighbours.at(n).iter().filter(|&&m| place[m as usize] > place[n as usize]).map(|&m| (m, 0)).collect();
            list.sort_unstable_by_key(|(m, _)| place[*m as usize]);
            let mut before = free(n).count() as u32;
            for (m, skip) in &mut list {
                *skip = before;
                before += free(*m).count() as u32;
            }
            for column in free(n) {
                rows.extend(free(n).filter(|&e| e >= column));
                for (m, _) in &list {
                    rows.extend(free(*m));
                }
                starts.push(rows.len() as u32);
            }
            after[n as usize] = list;
        }
        let held = SymbolicSparseColMatRef::new_checked(size, size, &starts, None, &rows);
        // The three unknowns of a node fill the same columns: working in blocks pays at any size.
        let params = CholeskySymbolicParams {
            supernodal_flop_ratio_threshold: SupernodalThreshold::FORCE_SUPERNODAL,
            ..Default::default()
        };
        // Where the factor fills is read off the upper triangle, what it is made of off the lower.
        let upper = held.to_row_major().map_err(|e| failed(&e))?;
        let order = SymmetricOrdering::Identity;
        let symbolic =
            factorize_symbolic_cholesky(upper.transpose(), Triangle::Upper, order, params).map_err(|e| failed(&e))?;
        // Written once here: pages that are first read and then written would be handed out twice.
        let mut values = Vec::with_capacity(rows.len());
        values.resize(rows.len(), 0.0);
        Ok(Self { pattern: Arc::new(Pattern { starts, rows, after, symbolic }), values })
    }

    /// Adds an element of `N` nodes (`3 N` unknowns `w, βy, βz`), turned into the nodes' frames.
    pub(super) fn add<const N: usize, const M: usize>(
        &mut self,
        equation: &[[u32; 3]],
        frame: &[Point],
        nodes: [u32; N],
        k: &[[f64; M]; M],
    ) {
        let Matrix { pattern, values } = self;
        for (j, &nj) in nodes.iter().enumerate() {
            for (i, &ni) in nodes.iter().enumerate() {
                let Some(skip) = pattern.skip(ni, nj) else { continue };
                let block = turned(k, 3 * i, 3 * j, frame[ni as usize], frame[nj as usize]);
                let (columns, rows) = (equation[nj as usize], equation[ni as usize]);
                let free = columns.iter().enumerate().filter(|(_, column)| **column != HELD);
                for (earlier, (c, &column)) in free.enumerate() {
                    // Its own rows begin on the diagonal.
                    let mut slot = pattern.starts[column as usize] as usize + skip.saturating_sub(earlier);
                    for (r, &row) in rows.iter().enumerate() {
                        if row == HELD || (ni == nj && row < column) {
                            continue;
                        }
                        values[slot] += block[r][c];
                        slot += 1;
                    }
                }
            }
        }
    }

    /// Adds springs between the deflections of `N` nodes, N/m.
    pub(super) fn add_deflections<const N: usize>(
        &mut self,
        equation: &[[u32; 3]],
        nodes: [u32; N],
        k: &[[f64; N]; N],
    ) {
        let Matrix { pattern, values } = self;
        for (j, &nj) in nodes.iter().enumerate() {
            for (i, &ni) in nodes.iter().enumerate() {
                let ([row, ..], [column, ..]) = (equation[ni as usize], equation[nj as usize]);
                if row == HELD || column == HELD {
                    continue;
                }
                // A deflection comes before its node's rotations.
                let Some(skip) = pattern.skip(ni, nj) else { continue };
                values[pattern.starts[column as usize] as usize + skip] += k[i][j];
            }
        }
    }

    /// Errors: a matrix that is not positive definite, that is a panel which nothing holds.
    pub(super) fn factor(&self) -> Result<Factor, PanelError> {
        let Pattern { starts, rows, symbolic, .. } = &*self.pattern;
        let size = starts.len() - 1;
        let held = SymbolicSparseColMatRef::new_checked(size, size, starts, None, rows);
        let mut values = vec![0.0; symbolic.len_val()];
        let mut memory = MemBuffer::new(symbolic.factorize_numeric_llt_scratch::<f64>(Par::Seq, Default::default()));
        symbolic
            .factorize_numeric_llt(
                &mut values,
                SparseColMatRef::new(held, &self.values),
                Triangle::Lower,
                Default::default(),
                Par::Seq,
                MemStack::new(&mut memory),
                Default::default(),
            )
            .map_err(|e| failed(&e))?;
        Ok(Factor { pattern: self.pattern.clone(), values })
    }
}

/// The Cholesky factor.
pub(super) struct Factor {
    pattern: Arc<Pattern>,
    values: Vec<f64>,
}

impl Factor {
    /// Replaces right sides, column after column, by their solutions.
    pub(super) fn solve(&self, right: &mut [f64], columns: usize) {
        let symbolic = &self.pattern.symbolic;
        let rows = symbolic.nrows();
        let mut memory = MemBuffer::new(symbolic.solve_in_place_scratch::<f64>(columns, Par::Seq));
        LltRef::new(symbolic, &self.values).solve_in_place_with_conj(
            Conj::No,
            MatMut::from_column_major_slice_mut(right, rows, columns),
            Par::Seq,
            MemStack::new(&mut memory),
        );
    }
}

/// The 3×3 block of an element matrix at (`r0`, `c0`), its rotations turned into both nodes' frames.
fn turned<const M: usize>(k: &[[f64; M]; M], r0: usize, c0: usize, row: Point, column: Point) -> [[f64; 3]; 3] {
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
