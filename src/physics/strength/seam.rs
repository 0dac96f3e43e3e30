//! The line along which a plate is held, treated as a line: what each metre of it hands over under a force across the plate and
//! its moments.
//!
//! As a weld group is (J. E. Shigley, Mechanical Engineering Design, section 9-4, from memory): the plate is taken as stiff
//! beside what holds it, so that the push along the line is linear in place, `q = F/L + a (y − ȳ) + b (z − z̄)`. It balances
//! the load, and so is a safe bound for a seam that gives before it tears (the static theorem of limit analysis).

use nalgebra::{Matrix2, Vector2};
use uom::si::f64::{Force, Length};

/// A place in the plate's plane, `[y, z]`, m.
pub type Place = [f64; 2];

/// A straight seam between two places.
pub type Seam = [Place; 2];

/// What a group of seams hands over.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SeamPush {
    /// Of all seams, m.
    pub length: f64,
    /// Their middle, m.
    pub middle: Place,
    /// The mean push, N/m.
    pub mean: f64,
    /// What it grows by for a metre across and up, N/m².
    pub slope: [f64; 2],
    /// Where it is greatest in size, m.
    pub at: Place,
    /// Index of the seam that this is on.
    pub seam: usize,
    /// How great it is there, with its sign, N/m.
    pub most: f64,
}

/// Parts of the square of the whole length below which an inertia is none: all seams lie on one line.
const FLAT: f64 = 1e-9;

/// What seams hand over under forces across the plate, each `(place, N)`. `None` without seams, or where they lie on one line and
/// the forces turn the plate about it.
pub fn push(seams: &[Seam], forces: &[(Place, f64)]) -> Option<SeamPush> {
    let lengths: Vec<f64> = seams.iter().map(|[a, b]| (a[0] - b[0]).hypot(a[1] - b[1])).collect();
    let length: f64 = lengths.iter().sum();
    if length.is_nan() || length <= 0.0 {
        return None;
    }
    let centre = |seam: &Seam| [0, 1].map(|k| 0.5 * (seam[0][k] + seam[1][k]));
    let middle = [0, 1].map(|k| seams.iter().zip(&lengths).map(|(seam, l)| l * centre(seam)[k]).sum::<f64>() / length);
    let mut inertia = Matrix2::zeros();
    for (seam, l) in seams.iter().zip(&lengths) {
        let c = Vector2::from([0, 1].map(|k| centre(seam)[k] - middle[k]));
        let along = Vector2::from([0, 1].map(|k| seam[1][k] - seam[0][k]));
        inertia += (c * c.transpose() + along * along.transpose() / 12.0) * *l;
    }
    let force: f64 = forces.iter().map(|(_, f)| f).sum();
    let moment: Vector2<f64> = forces
        .iter()
        .map(|(at, f)| Vector2::from([0, 1].map(|k| (at[k] - middle[k]) * f)))
        .fold(Vector2::zeros(), |a, b| a + b);
    let slope = if inertia.determinant() > FLAT * length.powi(6) {
        inertia.try_inverse()? * moment
    } else if moment.norm() <= FLAT * force.abs() * length {
        Vector2::zeros()
    } else {
        return None;
    };
    let mean = force / length;
    let mut push = SeamPush { length, middle, mean, slope: slope.into(), at: middle, seam: 0, most: 0.0 };
    for (i, seam) in seams.iter().enumerate() {
        for place in *seam {
            if push.at_place(place).abs() >= push.most.abs() {
                (push.at, push.seam, push.most) = (place, i, push.at_place(place));
            }
        }
    }
    Some(push)
}

impl SeamPush {
    /// What a metre hands over at a place, N/m.
    pub fn at_place(&self, place: Place) -> f64 {
        self.mean + self.slope[0] * (place[0] - self.middle[0]) + self.slope[1] * (place[1] - self.middle[1])
    }

    /// Where it is greatest, from the middle: across and up.
    pub fn arm(&self) -> [Length; 2] {
        [0, 1].map(|k| Length::new::<uom::si::length::meter>(self.at[k] - self.middle[k]))
    }

    /// All that it hands over.
    pub fn force(&self) -> Force {
        Force::new::<uom::si::force::newton>(self.mean * self.length)
    }
}
