//! Navier's double series for a simply supported rectangle under a rectangular patch (Timoshenko and Woinowsky-Krieger, Theory
//! of Plates and Shells, articles 29 and 37, from memory), with the terms of transverse shear that Reissner and Mindlin add.

use std::f64::consts::PI;

use sternknee::physics::strength::panel::{PlateStiffness, Point, Rect};

/// A plate of sides `a` along y and `b` along z (m), hard simply supported all round, under one patch.
pub(crate) struct Navier {
    pub stiffness: PlateStiffness,
    pub sides: Point,
    pub area: Rect,
    /// N.
    pub force: f64,
}

/// What the series gives at a place: deflection (m) and `M_y, M_z, M_yz` (N·m per metre).
#[derive(Debug, Clone, Copy)]
pub(crate) struct Answer {
    pub deflection: f64,
    pub moment: [f64; 3],
}

/// Terms for each side of the plate, times the patch's part of it: what is left out falls with the square.
const TERMS: f64 = 12.0;
const LEAST_TERMS: f64 = 300.0;

/// `sin x / x`.
fn sinc(x: f64) -> f64 {
    if x.abs() < 1e-8 { 1.0 } else { x.sin() / x }
}

impl Navier {
    /// At a place.
    pub fn at(&self, place: Point) -> Answer {
        self.mean(place, 0.0)
    }

    /// The mean about a place, weighed by a tent that falls to nothing `width` (m) away along either axis.
    pub fn mean(&self, place: Point, width: f64) -> Answer {
        let d = &self.stiffness;
        let spans = [self.area.width, self.area.height];
        // Of each axis: wave number, load's part, sine and cosine at the place, both over the tent.
        let terms = [0, 1].map(|k| {
            let count = (TERMS * self.sides[k] / spans[k]).max(LEAST_TERMS) as u32;
            (1..=count)
                .map(|m| {
                    let p = f64::from(m) * PI / self.sides[k];
                    let tent = sinc(0.5 * p * width).powi(2);
                    let load = (p * self.area.centre[k]).sin() * sinc(0.5 * p * spans[k]);
                    (p, load, (p * place[k]).sin() * tent, (p * place[k]).cos() * tent)
                })
                .collect::<Vec<_>>()
        });
        let whole = 4.0 * self.force / (self.sides[0] * self.sides[1]);
        let mut sum = Answer { deflection: 0.0, moment: [0.0; 3] };
        for &(p, load_y, sin_y, cos_y) in &terms[0] {
            let mut row = Answer { deflection: 0.0, moment: [0.0; 3] };
            for &(r, load_z, sin_z, cos_z) in &terms[1] {
                // The turnings that belong to a unit of deflection, then the deflection that carries the load.
                let a11 = d.d11 * p * p + d.d66 * r * r + d.s1;
                let a12 = (d.d12 + d.d66) * p * r;
                let a22 = d.d66 * p * p + d.d22 * r * r + d.s2;
                let determinant = a11 * a22 - a12 * a12;
                let (f1, f2) = (-d.s1 * p, -d.s2 * r);
                let (by, bz) = ((f1 * a22 - f2 * a12) / determinant, (a11 * f2 - a12 * f1) / determinant);
                let w = load_y * load_z / (d.s1 * p * (p + by) + d.s2 * r * (r + bz));
                row.deflection += w * sin_y * sin_z;
                let (ky, kz) = (-by * p * w, -bz * r * w);
                row.moment[0] += (d.d11 * ky + d.d12 * kz) * sin_y * sin_z;
                row.moment[1] += (d.d12 * ky + d.d22 * kz) * sin_y * sin_z;
                row.moment[2] += d.d66 * (by * r + bz * p) * w * cos_y * cos_z;
            }
            sum.deflection += row.deflection;
            (0..3).for_each(|k| sum.moment[k] += row.moment[k]);
        }
        sum.deflection *= whole;
        sum.moment = sum.moment.map(|m| whole * m);
        sum
    }
}
