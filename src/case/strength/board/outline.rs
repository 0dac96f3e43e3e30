//! The outline of the transom, and how hull and air hold its edges.

use uom::si::f64::{Angle, Length};

use super::supports::held;
use crate::job::Bond;
use crate::physics::strength::panel::{EdgeSupport, Point, Shape};
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::reading::Absent;
use crate::rig::Rig;

/// Chine beam over transom width where it was not taken. Common practice, no source.
const CHINE_OF_WIDTH: f64 = 0.9;
/// Height of the transom's corners above its cutout where it was not taken. Common practice, no source.
const CORNER_ABOVE_IN: f64 = 8.0;
/// A cutout whose shoulders are narrower or lower than this is none. Common practice, no source.
const SHOULDER_IN: f64 = 2.0;
/// Least clear height of the sides above the chine for a plate to be made of it. Common practice, no source.
const SIDE_IN: f64 = 2.0;

/// Corners anticlockwise, m, and what the edge behind each is held by.
pub(super) struct Outline {
    pub shape: Shape,
    pub corners: Vec<Point>,
    pub edges: Vec<EdgeSupport>,
    /// Half the width of the edge on which the engines hang, m.
    pub half_top: f64,
    /// Rise of the bottom for a metre off the centreline, along the transom.
    pub rise: f64,
    pub chine: Point,
}

impl Outline {
    pub(super) fn of(
        rig: &Rig,
        height: Length,
        width: Length,
        deadrise: Angle,
        lean: Angle,
        [sides, bottom]: [Bond; 2],
        assumed: &mut Vec<Text>,
    ) -> Result<Outline, Absent> {
        let (top, half) = (height.si(), 0.5 * width.si());
        let chine_half = match rig.job.boat.chine_beam().reading() {
            Some(beam) => 0.5 * beam.value.si(),
            None => {
                let beam = CHINE_OF_WIDTH * width;
                assumed.push(say!(
                    "The chines are taken to be {} apart at the transom: 0.9 of its width.",
                    Measure::tape(beam)
                ));
                0.5 * beam.si()
            }
        };
        let rise = deadrise.si().tan() / lean.si().cos();
        let chine = [chine_half, chine_half * rise];
        let (corner, half_top) = corner(rig, top, half, assumed);
        if corner < chine[1] + inches(SIDE_IN).si() {
            return Err(Absent::CannotBe(say!(
                "With {} of deadrise the chine comes to {}, and the transom's corner stands {} above the bottom: check transom height, chine beam, deadrise and structure.corner_height.",
                Measure::of(deadrise),
                Measure::tape(Length::from_si(chine[1])),
                Measure::tape(Length::from_si(corner))
            )));
        }
        let shape = Shape {
            chine: if rise > 1e-3 { chine } else { [chine_half, 0.0] },
            corner: [half, corner],
            cutout: (half_top < half).then_some([half_top, top]),
        };
        let corners = shape.outline();
        let edges = (0..corners.len())
            .map(|i| {
                let (a, b) = (corners[i], corners[(i + 1) % corners.len()]);
                let ends = [[a, b], [b, a]];
                let is = |p: Point, q: Point| ends.contains(&[p, q]);
                let mirror = |p: Point| [-p[0], p[1]];
                let (chine, top) = (shape.chine, shape.corner);
                if is(chine, top) || is(mirror(chine), mirror(top)) {
                    held(sides)
                } else if a[1] <= chine[1] && b[1] <= chine[1] {
                    held(bottom)
                } else {
                    EdgeSupport::Free
                }
            })
            .collect();
        Ok(Outline { shape, corners, edges, half_top, rise, chine })
    }
}

/// Height of the transom's corners, and half the width of the edge on which the engines hang.
fn corner(rig: &Rig, top: f64, half: f64, assumed: &mut Vec<Text>) -> (f64, f64) {
    let shoulder = inches(SHOULDER_IN).si();
    let Some(cutout) = rig.job.transom.cutout_width().reading() else {
        if rig.job.transom.cutout.is_none() {
            assumed.push(Text::from("The transom's top is taken to be level all across: no cutout is given."));
        }
        return (top, half);
    };
    let cut = 0.5 * cutout.value.si();
    if cut > half - shoulder {
        return (top, half);
    }
    let corner = match &rig.structure.said.corner_height {
        Some(height) => height.value.si(),
        None => {
            let above = inches(CORNER_ABOVE_IN);
            assumed.push(say!("The transom's corners are taken to stand {} above its cutout.", Measure::tape(above)));
            top + above.si()
        }
    };
    if corner < top + shoulder { (top, half) } else { (corner, cut) }
}
