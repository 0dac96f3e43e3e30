//! What a panel is made of, ply by ply: stiffness from plies, and stress in plies from moments and shear forces.
//!
//! Classical lamination in the panel's axes; transverse shear from the equilibrium of a strip in bending (shear flow
//! `g = ∫ E x dx`, stiffness `1/S = ∫ g²/G dx / D²`), which gives 5/6 G t for one ply and the core's shear for a sandwich.

use nalgebra::{Matrix3, Vector3};
use uom::si::f64::Length;

use super::error::PanelError;
use super::material::{Ply, check};
use super::stiffness::{PlateStiffness, TWELVE, share};

/// Plies from the face at negative x (outside of a transom) to the face at positive x (inside).
#[derive(Debug, Clone, PartialEq)]
pub struct Layup {
    plies: Vec<Ply>,
    section: Laminate,
    /// Each face of each ply: its ply, its height (m), and its stress for a unit of each moment.
    faces: Vec<(usize, f64, Matrix3<f64>)>,
}

/// Stress at one height in one ply.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlyStress {
    /// Index of the ply, from 0 at negative x (outside).
    pub ply: usize,
    /// Height above the middle of the whole thickness, m.
    pub x: f64,
    /// `σ_y, σ_z, τ_yz`, Pa.
    pub plane: [f64; 3],
    /// `τ_xy, τ_xz`, Pa.
    pub through: [f64; 2],
    /// Stress over strength; 1 breaks.
    pub utilisation: f64,
}

/// A layer in its panel, for showing.
#[derive(Debug, Clone, Copy)]
pub struct Layer<'l> {
    /// What it is made of, and how thick.
    pub ply: &'l Ply,
    /// Its middle off the panel's, m.
    pub middle: f64,
    /// The same off what neither stretches nor shrinks where the panel is bent across, and where it is bent up, m.
    pub from_neutral: [f64; 2],
    /// Its share of the bending stiffness, N·m.
    pub share: [[f64; 3]; 3],
}

/// Sums over the plies.
#[derive(Debug, Clone, PartialEq)]
struct Laminate {
    /// Interfaces, m from the middle; one more than plies.
    heights: Vec<f64>,
    /// Each ply's share of the bending stiffness, N·m.
    shares: Vec<Matrix3<f64>>,
    /// Bending stiffness about the plane that no moment stretches, N·m: those shares together.
    bending: Matrix3<f64>,
    /// Curvature per moment.
    compliance: Matrix3<f64>,
    /// Middle strain per curvature: `ε0 = −A⁻¹ B κ`, m.
    shift: Matrix3<f64>,
    /// Stiffness of each ply in its plane, Pa.
    plane: Vec<Matrix3<f64>>,
    /// For y and z: neutral height (m), strip bending stiffness (N·m), shear flow at each interface (N).
    strips: [Strip; 2],
}

#[derive(Debug, Clone, PartialEq)]
struct Strip {
    neutral: f64,
    bending: f64,
    flow: Vec<f64>,
    /// N/m.
    shear: f64,
}

impl Layup {
    /// Errors: no plies; thickness, modulus or strength not positive and finite; Poisson's ratio too large.
    pub fn new(plies: Vec<Ply>) -> Result<Self, PanelError> {
        if plies.is_empty() {
            return Err(PanelError::NoPlies);
        }
        plies.iter().try_for_each(check)?;
        let section = Laminate::new(&plies).ok_or(PanelError::StiffnessIndefinite)?;
        let faces = (0..plies.len())
            .flat_map(|ply| [ply, ply + 1].map(|i| (ply, section.heights[i])))
            .map(|(ply, x)| {
                let strain = section.shift + Matrix3::identity() * x;
                (ply, x, section.plane[ply] * strain * section.compliance)
            })
            .collect();
        Ok(Self { plies, section, faces })
    }

    /// Two like skins on a core.
    pub fn sandwich(skin: Ply, core: Ply) -> Result<Self, PanelError> {
        Self::new(vec![skin, core, skin])
    }

    /// Its plies, from the outside in.
    pub fn plies(&self) -> &[Ply] {
        &self.plies
    }

    /// Its layers with what each gives, from the outside in.
    pub fn layers(&self) -> impl Iterator<Item = Layer<'_>> {
        let section = &self.section;
        self.plies.iter().enumerate().map(move |(i, ply)| {
            let middle = 0.5 * (section.heights[i] + section.heights[i + 1]);
            let from_neutral = [0, 1].map(|k: usize| middle - section.strips[k].neutral);
            let share = [0, 1, 2].map(|row| [0, 1, 2].map(|column| section.shares[i][(row, column)]));
            Layer { ply, middle, from_neutral, share }
        })
    }

    /// Whether the panel's middle is stretched as it bends: its plies are not alike on both sides.
    pub(super) fn stretches(&self) -> bool {
        self.section.shift.amax() > ALIKE * self.thickness().value
    }

    /// What the panel's middle is stretched by one way for each curvature, m.
    pub(super) fn shift(&self, row: usize, column: usize) -> f64 {
        self.section.shift[(row, column)]
    }

    /// All plies together.
    pub fn thickness(&self) -> Length {
        self.plies.iter().map(|p| p.thickness).fold(Length::default(), |a, b| a + b)
    }

    /// Bending and shear stiffness.
    pub fn stiffness(&self) -> Result<PlateStiffness, PanelError> {
        let (d, [y, z]) = (&self.section.bending, &self.section.strips);
        let stiffness =
            PlateStiffness { d11: d[(0, 0)], d12: d[(0, 1)], d22: d[(1, 1)], d66: d[(2, 2)], s1: y.shear, s2: z.shear };
        stiffness.check()?;
        Ok(stiffness)
    }

    /// Stresses under moments `M_y, M_z, M_yz` (N·m per m) and shear forces `Q_y, Q_z` (N/m): for each ply at both its
    /// faces and where its through-thickness shear peaks.
    pub fn stresses(&self, moment: [f64; 3], shear: [f64; 2]) -> impl Iterator<Item = PlyStress> {
        let section = &self.section;
        let curvature = section.compliance * Vector3::from(moment);
        let middle = section.shift * curvature;
        let [y, z] = &section.strips;
        self.plies.iter().enumerate().flat_map(move |(ply, Ply { material, .. })| {
            let (bottom, top) = (section.heights[ply], section.heights[ply + 1]);
            let q = &section.plane[ply];
            let within = |x: f64| (bottom < x && x < top).then_some(x);
            [Some(bottom), within(y.neutral), within(z.neutral), Some(top)].into_iter().flatten().map(move |x| {
                let plane = q * (middle + x * curvature);
                let through = [(y, q[(0, 0)], shear[0]), (z, q[(1, 1)], shear[1])]
                    .map(|(strip, modulus, force)| force * strip.flow_at(ply, bottom, x, modulus) / strip.bending);
                let plane = [plane[0], plane[1], plane[2]];
                PlyStress { ply, x, plane, through, utilisation: material.strength.utilisation(plane, through) }
            })
        })
    }

    /// The stress nearest to its strength under bending alone, which is at a face of a ply.
    pub fn bent(&self, moment: [f64; 3]) -> PlyStress {
        let moment = Vector3::from(moment);
        let mut worst =
            PlyStress { ply: 0, x: 0.0, plane: [0.0; 3], through: [0.0; 2], utilisation: f64::NEG_INFINITY };
        for (ply, x, stress) in &self.faces {
            let plane = (stress * moment).into();
            let utilisation = self.plies[*ply].material.strength.utilisation(plane, [0.0; 2]);
            if utilisation > worst.utilisation {
                worst = PlyStress { ply: *ply, x: *x, plane, through: [0.0; 2], utilisation };
            }
        }
        worst
    }

    /// The stress nearest to its strength.
    pub fn worst(&self, moment: [f64; 3], shear: [f64; 2]) -> Option<PlyStress> {
        self.stresses(moment, shear).max_by(|a, b| a.utilisation.total_cmp(&b.utilisation))
    }
}

/// Stretch of the middle, as a part of the thickness, that is rounding.
const ALIKE: f64 = 1e-9;

impl Strip {
    /// Size of the shear flow at height `x` in ply `ply`, N.
    fn flow_at(&self, ply: usize, bottom: f64, x: f64, modulus: f64) -> f64 {
        // Positive where the part below the cut is pulled the other way than the part above.
        self.flow[ply] - modulus * 0.5 * ((x - self.neutral).powi(2) - (bottom - self.neutral).powi(2))
    }
}

impl Laminate {
    fn new(plies: &[Ply]) -> Option<Self> {
        let total: f64 = plies.iter().map(|p| p.thickness.value).sum();
        let mut heights = vec![-0.5 * total];
        let (mut a, mut b) = (Matrix3::zeros(), Matrix3::zeros());
        for (i, ply) in plies.iter().enumerate() {
            let (low, high) = (heights[i], heights[i] + ply.thickness.value);
            heights.push(high);
            let q = ply.material.plane();
            a += q * (high - low);
            b += q * ((high.powi(2) - low.powi(2)) / 2.0);
        }
        let shift = -(a.try_inverse()? * b);
        let shares: Vec<Matrix3<f64>> = plies
            .iter()
            .enumerate()
            .map(|(i, ply)| {
                let (thick, middle) = (ply.thickness.value, 0.5 * (heights[i] + heights[i + 1]));
                let q = ply.material.plane();
                let turned = q * shift;
                Matrix3::from_fn(|i, j| share(q[(i, j)], Some(turned[(i, j)]), thick, middle, TWELVE))
            })
            .collect();
        let bending: Matrix3<f64> = shares.iter().sum();
        let compliance = bending.try_inverse()?;
        let strips = [0, 1].map(|k| strip(plies, &heights, k));
        Some(Self {
            heights,
            shares,
            bending,
            compliance,
            shift,
            plane: plies.iter().map(|p| p.material.plane()).collect(),
            strips,
        })
    }
}

fn strip(plies: &[Ply], heights: &[f64], k: usize) -> Strip {
    let moduli: Vec<f64> = plies.iter().map(|p| p.material.plane()[(k, k)]).collect();
    let shears = plies.iter().map(|p| if k == 0 { p.material.shear_y.value } else { p.material.shear_z.value });
    let pairs = || heights.windows(2).zip(&moduli);
    let first: f64 = pairs().map(|(h, e)| e * (h[1] * h[1] - h[0] * h[0]) / 2.0).sum();
    let neutral = first / pairs().map(|(h, e)| e * (h[1] - h[0])).sum::<f64>();
    let bending = pairs().map(|(h, e)| e * ((h[1] - neutral).powi(3) - (h[0] - neutral).powi(3)) / 3.0).sum();
    let mut strip = Strip { neutral, bending, flow: vec![0.0], shear: 0.0 };
    let mut flexibility = 0.0;
    for (ply, (shear, modulus)) in shears.zip(&moduli).enumerate() {
        let (bottom, top) = (heights[ply], heights[ply + 1]);
        // The square of the flow has degree four: Gauss's three points are exact.
        for (at, weight) in [(-0.6_f64.sqrt(), 5.0 / 18.0), (0.0, 8.0 / 18.0), (0.6_f64.sqrt(), 5.0 / 18.0)] {
            let x = 0.5 * (bottom + top) + 0.5 * at * (top - bottom);
            flexibility += weight * (top - bottom) * strip.flow_at(ply, bottom, x, *modulus).powi(2) / shear;
        }
        let next = strip.flow_at(ply, bottom, top, *modulus);
        strip.flow.push(next);
    }
    strip.shear = bending * bending / flexibility;
    strip
}
