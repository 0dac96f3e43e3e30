//! The outline of the transom, and how hull and air hold its edges.

use uom::si::f64::{Angle, Length};

use super::super::NoStrength;
use crate::job::Bond;
use crate::physics::strength::panel::{EdgeSupport, Point};
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
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
    pub corners: Vec<Point>,
    pub edges: Vec<EdgeSupport>,
    /// Half the width of the edge on which the engines hang, m.
    pub half_top: f64,
    /// Rise of the bottom for a metre off the centreline, along the transom.
    pub rise: f64,
    pub chine: Point,
}

impl Outline {
    pub fn of(
        rig: &Rig,
        height: Length,
        width: Length,
        deadrise: Angle,
        lean: Angle,
        assumed: &mut Vec<Text>,
    ) -> Result<Outline, NoStrength> {
        let (top, half) = (height.si(), 0.5 * width.si());
        let chine_half = match rig.boat.chine_beam.reading() {
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
            return Err(NoStrength::Unfit(say!(
                "With {} of deadrise the chine comes to {}, and the transom's corner stands {} above the bottom: check transom height, chine beam, deadrise and structure.corner_height.",
                Measure::of(deadrise),
                Measure::tape(Length::from_si(chine[1])),
                Measure::tape(Length::from_si(corner))
            )));
        }
        let bottom = bond(rig.structure.said.bottom, "hull's bottom", assumed);
        let side = bond(rig.structure.said.sides, "hull's side", assumed);
        let mut corners = Vec::new();
        let mut edges = Vec::new();
        let mut corner_at = |place: Point, edge: EdgeSupport| {
            corners.push(place);
            edges.push(edge);
        };
        let free = EdgeSupport::Free;
        if rise > 1e-3 {
            corner_at([0.0, 0.0], bottom);
        }
        corner_at(chine, side);
        corner_at([half, corner], free);
        if half_top < half {
            corner_at([half_top, corner], free);
            corner_at([half_top, top], free);
            corner_at([-half_top, top], free);
            corner_at([-half_top, corner], free);
        }
        corner_at([-half, corner], side);
        corner_at([-chine[0], chine[1]], bottom);
        Ok(Outline { corners, edges, half_top, rise, chine })
    }
}

/// How a bond holds the transom's edge.
fn bond(said: Option<Bond>, what: &str, assumed: &mut Vec<Text>) -> EdgeSupport {
    match said {
        None => {
            assumed.push(say!("The {} is taken to be bonded to the transom, free to turn on it.", what));
            EdgeSupport::Simple
        }
        Some(Bond::Loose) => EdgeSupport::Free,
        Some(Bond::Bonded) => EdgeSupport::Simple,
        Some(Bond::BuiltIn) => EdgeSupport::Clamped,
    }
}

/// Height of the transom's corners, and half the width of the edge on which the engines hang.
fn corner(rig: &Rig, top: f64, half: f64, assumed: &mut Vec<Text>) -> (f64, f64) {
    let shoulder = inches(SHOULDER_IN).si();
    let Some(cutout) = rig.transom.cutout_width.reading() else {
        if rig.transom.cutout.is_none() {
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
