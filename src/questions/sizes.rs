//! How large she is, as far as the job tells: what all else is held against.

use crate::case::Case;
use crate::job::{HullShape, Job};
use crate::quantity::{Dimensioned, Reading};
use uom::si::f64::Length;

/// Her sizes, metres: the largest that any reading tells, so that one slip does not bring a question on everything else.
pub(super) struct Sizes {
    pub length: Option<f64>,
    pub breadth: Option<f64>,
    pub depth: Option<f64>,
    /// Transom's top to bottom.
    pub transom: Option<f64>,
}

impl Sizes {
    pub(super) fn of(case: &Case) -> Sizes {
        let job = &*case.rig.job;
        let (boat, transom) = (&job.boat, &job.transom);
        let hull = case.float().ok().map(|float| float.built.hull.bounds());
        let lines = lines(job);
        Sizes {
            length: largest([told(&boat.length), hull.map(|(low, high)| high.x - low.x), lines.map(|lines| lines[0])]),
            breadth: largest([
                told(&boat.beam),
                told(&boat.transom_width),
                told(&boat.chine_beam),
                told(&boat.aft_quarter_beam),
                hull.map(|(low, high)| high.y - low.y),
                lines.map(|lines| lines[1]),
            ]),
            depth: largest([
                told(&boat.depth),
                told(&transom.height),
                hull.map(|(low, high)| high.z - low.z),
                lines.map(|lines| lines[2]),
            ]),
            transom: told(&transom.height),
        }
    }

    /// Length by breadth by depth, m³.
    pub(super) fn bulk(&self) -> Option<f64> {
        Some(self.length? * self.breadth? * self.depth?)
    }

    /// Length by breadth, m².
    pub(super) fn area(&self) -> Option<f64> {
        Some(self.length? * self.breadth?)
    }
}

fn told(reading: &Option<Reading<Length>>) -> Option<f64> {
    reading.as_ref().map(|reading| reading.value.si())
}

fn largest<const N: usize>(sizes: [Option<f64>; N]) -> Option<f64> {
    sizes.into_iter().flatten().reduce(f64::max)
}

/// Length, breadth and greatest height of the lines that were taken off her.
fn lines(job: &Job) -> Option<[f64; 3]> {
    let mut most = [0.0_f64; 3];
    let mut see = |forward: &Reading<Length>, out: &Reading<Length>, up: &Reading<Length>| {
        let here = [forward.value.si(), 2.0 * out.value.si(), up.value.si()];
        most = std::array::from_fn(|i| most[i].max(here[i]));
    };
    match job.hull.as_ref()? {
        HullShape::Tape { sections, .. } => sections.iter().for_each(|section| {
            see(&section.forward, &section.chine.out, &section.chine.up);
            see(&section.forward, &section.sheer.out, &section.sheer.up);
        }),
        HullShape::Offsets { stations, .. } => stations
            .iter()
            .for_each(|station| station.points.iter().for_each(|point| see(&station.forward, &point.out, &point.up))),
        HullShape::Mesh { .. } => return None,
    }
    Some(most)
}
