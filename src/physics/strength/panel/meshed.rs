//! A mesh of a transom's shape with the places about which moments are told, and what all panels on it share.

use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use super::error::PanelError;
use super::grid::{Shape, along_edges};
use super::mesh::{Mesh, Skeleton, double_area};
use super::model::Panel;
use super::plate::{Bare, Plate};
use super::reference::RULE;
use super::vector::Point;

/// How fine the mesh is, and over what width moments are told, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fineness {
    /// Sides of triangles, about.
    pub size: f64,
    /// Width of the mean.
    pub width: f64,
}

/// A mesh of a transom's shape with the places about which moments are told: the same for every panel of that shape, however it is
/// made and held.
pub struct Meshed {
    mesh: Skeleton,
    shape: Shape,
    pub(super) fineness: Fineness,
    /// Made when first asked for: equations can be set up and factored meanwhile.
    means: OnceLock<Told>,
    /// The last panels without their beds.
    bare: Mutex<Vec<(Panel, Arc<Bare>)>>,
}

/// The means that are told.
struct Told {
    means: Means,
    /// By triangle, those that have a part of it.
    about: Rows<u32>,
}

/// Panels without their beds that are kept: a sound core and a soft one, before a build-up and after. Common practice, no source.
const MOST_BARE: usize = 4;

impl Meshed {
    /// Of a shape.
    pub fn of(shape: Shape, fineness: Fineness) -> Meshed {
        Meshed { mesh: shape.mesh(fineness.size), shape, fineness, means: OnceLock::new(), bare: Mutex::default() }
    }

    fn told(&self) -> &Told {
        self.means.get_or_init(|| {
            let means = means(&self.mesh.clone().whole(), &self.shape.lattice(), self.fineness.width);
            let about = means.about(self.mesh.triangles.len());
            Told { means, about }
        })
    }

    /// Makes what tells moments, before it is asked for.
    pub fn begin_means(&self) {
        self.told();
    }

    /// A panel's equations before its beds, made once for all panels that differ by those alone.
    ///
    /// Errors: a panel that is no plate, or a shape that is none.
    pub(super) fn bare(&self, panel: &Panel) -> Result<Arc<Bare>, PanelError> {
        let without = Panel { beds: Vec::new(), ..panel.clone() };
        // A thread that panicked left a list that is whole.
        let mut kept = self.bare.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, bare)) = kept.iter().find(|(panel, _)| *panel == without) {
            return Ok(bare.clone());
        }
        let (mesh, arrangement) = along_edges(panel, self.mesh.clone())?;
        let bare = Arc::new(Plate::on(panel, arrangement, self.fineness.size)?.bare(mesh)?);
        if kept.len() >= MOST_BARE {
            kept.remove(0);
        }
        kept.push((without, bare.clone()));
        Ok(bare)
    }

    /// The mean moments that use most by a norm of them, and how much; `sampled` as [`Means::of`] takes them. `None` where nothing is used.
    ///
    /// A mean is made of moments within its triangles, where they are linear. So it uses no more than the worst corners of these, each
    /// by its part, and a corner no more than its parts of `units`, what a moment of one uses of each sort: places that stay below
    /// what was found so need not be worked out.
    pub fn most<T>(
        &self,
        sampled: &[[[f64; 3]; 3]],
        units: [f64; 3],
        used: impl Fn([f64; 3]) -> (f64, T),
    ) -> Option<(MeanMoment, T)> {
        let Told { means, about } = self.told();
        let bounds: Vec<f64> = sampled.iter().map(|samples| (1.0 + ROUNDING) * at_corners(samples, units)).collect();
        let first = (0..bounds.len()).max_by(|a, b| bounds[*a].total_cmp(&bounds[*b]))?;
        let mut looked = vec![false; means.count()];
        let (mut most, mut best) = (0.0, None);
        for t in std::iter::once(first).chain(0..bounds.len()) {
            if bounds[t] < most {
                continue;
            }
            for &place in about.row(t) {
                if std::mem::replace(&mut looked[place as usize], true) {
                    continue;
                }
                if means.bound(place as usize, &bounds) < most {
                    continue;
                }
                let mean = means.of(place as usize, sampled);
                let (part, what) = used(mean.moment);
                // Of two alike the first of all places, whatever was looked at first.
                let first = best.as_ref().is_none_or(|(known, _, _)| place < *known);
                if part > most || (part == most && part > 0.0 && first) {
                    most = part;
                    best = Some((place, mean, what));
                }
            }
        }
        best.map(|(_, mean, what)| (mean, what))
    }
}

/// By how much rounding may lift a mean over its bound, as a part of it.
const ROUNDING: f64 = 1e-9;

/// What the worst corner uses at most: moments are linear from sample to sample, which stand at 2/3, 1/6, 1/6.
fn at_corners(samples: &[[f64; 3]; 3], units: [f64; 3]) -> f64 {
    let corner = |i: usize, k: usize| 2.0 * samples[i][k] - (samples[0][k] + samples[1][k] + samples[2][k]) / 3.0;
    (0..3).map(|i| (0..3).map(|k| units[k] * corner(i, k).abs()).sum()).fold(0.0, f64::max)
}

/// Rows of a table, one after the other.
pub(super) struct Rows<T> {
    /// Where each row begins, and where the last ends.
    starts: Vec<u32>,
    cells: Vec<T>,
}

impl<T> Rows<T> {
    fn row(&self, i: usize) -> &[T] {
        &self.cells[self.starts[i] as usize..self.starts[i + 1] as usize]
    }
}

/// Places with the parts that the moments about each have in its mean.
pub struct Means {
    at: Vec<Point>,
    /// By place, triangles with the parts that each of their three samples has.
    parts: Rows<(u32, [f64; 3])>,
}

impl Means {
    /// How many places there are.
    pub fn count(&self) -> usize {
        self.at.len()
    }

    /// What the mean about a place can be at most, from what the triangles' corners are at most.
    fn bound(&self, place: usize, bounds: &[f64]) -> f64 {
        self.parts.row(place).iter().map(|(t, [a, b, c])| (a + b + c) * bounds[*t as usize]).sum()
    }

    /// The mean about a place; `sampled` has the moments of each triangle at its three samples.
    pub fn of(&self, place: usize, sampled: &[[[f64; 3]; 3]]) -> MeanMoment {
        let mut moment = [0.0; 3];
        for (t, parts) in self.parts.row(place) {
            for (part, sample) in parts.iter().zip(&sampled[*t as usize]) {
                (0..3).for_each(|k| moment[k] += part * sample[k]);
            }
        }
        MeanMoment { at: self.at[place], moment }
    }

    /// By triangle, of so many, the places that have a part of it.
    fn about(&self, triangles: usize) -> Rows<u32> {
        let mut starts = vec![0_u32; triangles + 1];
        self.parts.cells.iter().for_each(|(t, _)| starts[*t as usize + 1] += 1);
        (0..triangles).for_each(|t| starts[t + 1] += starts[t]);
        let (mut next, mut cells) = (starts.clone(), vec![0; self.parts.cells.len()]);
        for place in 0..self.count() {
            for (t, _) in self.parts.row(place) {
                let cell = &mut next[*t as usize];
                cells[*cell as usize] = place as u32;
                *cell += 1;
            }
        }
        Rows { starts, cells }
    }
}

/// The mean moments about a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeanMoment {
    /// That place, `[y, z]`, m.
    pub at: Point,
    /// `M_y, M_z, M_yz`, N·m per metre; positive stretches the face at positive x.
    pub moment: [f64; 3],
}

/// A triangle's points of integration: place, area (m²), and what each of the three samples has of the moment there, which is linear.
type Points = [(Point, f64, [f64; 3]); RULE.len()];

fn points(mesh: &Mesh) -> Vec<Points> {
    (0..mesh.triangles.len())
        .map(|t| {
            let corners = mesh.corners(t);
            let area = 0.5 * double_area(corners);
            RULE.map(|(n, weight)| {
                let at = [0, 1].map(|k| (0..3).map(|i| n[i] * corners[i][k]).sum());
                // Samples stand at 2/3, 1/6, 1/6.
                (at, weight * area, n.map(|own| 2.0 * own - 1.0 / 3.0))
            })
        })
        .collect()
}

/// Means about these places.
pub fn means(mesh: &Mesh, places: &[Point], width: f64) -> Means {
    let points = points(mesh);
    // Sorted by their least y, those about a place are found without looking at all.
    let mut order: Vec<([[f64; 2]; 2], u32)> = (0..points.len() as u32)
        .map(|t| {
            let corners = mesh.corners(t as usize);
            let reach = |k: usize| {
                corners.iter().fold([f64::INFINITY, f64::NEG_INFINITY], |r, p| [r[0].min(p[k]), r[1].max(p[k])])
            };
            ([reach(0), reach(1)], t)
        })
        .collect();
    order.sort_unstable_by(|(a, _), (b, _)| a[0][0].total_cmp(&b[0][0]));
    let widest = order.iter().map(|([[low, high], _], _)| high - low).fold(0.0, f64::max);
    let mut starts = vec![0];
    let mut cells: Vec<(u32, [f64; 3])> = Vec::new();
    for &at in places {
        let first = cells.len();
        let from = order.partition_point(|([[low, _], _], _)| low + widest <= at[0] - width);
        let mut sum = 0.0;
        for &([_, [low, high]], t) in order[from..].iter().take_while(|([[low, _], _], _)| *low < at[0] + width) {
            if low >= at[1] + width || high <= at[1] - width {
                continue;
            }
            let mut own = [0.0; 3];
            for (place, area, samples) in &points[t as usize] {
                let tent = |k: usize| (1.0 - (place[k] - at[k]).abs() / width).max(0.0);
                let part = tent(0) * tent(1) * area;
                sum += part;
                (0..3).for_each(|i| own[i] += part * samples[i]);
            }
            cells.push((t, own));
        }
        // Nothing lies so near only where triangles are far larger than the width.
        let scale = f64::max(sum, f64::MIN_POSITIVE);
        cells[first..].iter_mut().for_each(|(_, own)| *own = own.map(|part| part / scale));
        starts.push(cells.len() as u32);
    }
    Means { at: places.to_vec(), parts: Rows { starts, cells } }
}
