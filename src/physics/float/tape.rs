//! Hulls from a handful of sections read with a tape and a level, down to the least form.

use nalgebra::Point2;
use uom::si::angle::{degree, radian};
use uom::si::f64::{Angle, Length};
use uom::si::length::meter;

use super::error::LoftError;
use super::offsets::{Assumption, LeastFormStation, Lofted, Lofting, loft_panels};

/// One section as a person reads it. Points are (half-breadth, height above the baseline), metres.
#[derive(Clone, Debug, PartialEq)]
pub struct TapeSection {
    /// Distance forward of the origin, at the keel.
    pub x: Length,
    /// Height of the bottom on the centreline.
    pub keel: Length,
    /// Knuckles between keel and chine, from the keel out (strakes, inner chines).
    pub bottom_knuckles: Vec<Point2<f64>>,
    /// The chine.
    pub chine: Point2<f64>,
    /// Knuckles between chine and sheer, upward.
    pub side_knuckles: Vec<Point2<f64>>,
    /// The sheer, where hull and deck meet.
    pub sheer: Point2<f64>,
}

/// Lofts sections, from the transom forward, into a closed hull. Keel, chine and sheer are lines of their
/// own; knuckles are matched in order where all sections have equally many, else by part of the girth of
/// their panel. A stem is a last section with chine and sheer at half-breadth zero.
///
/// # Errors
/// [`LoftError`] where the sections make no hull.
pub fn mesh_from_tape(sections: &[TapeSection], lofting: &Lofting) -> Result<Lofted, LoftError> {
    let xs: Vec<f64> = sections.iter().map(|s| s.x.get::<meter>()).collect();
    let panel = |start: &dyn Fn(&TapeSection) -> Point2<f64>,
                 between: &dyn Fn(&TapeSection) -> &Vec<Point2<f64>>,
                 end: &dyn Fn(&TapeSection) -> Point2<f64>|
     -> Vec<Vec<Point2<f64>>> {
        sections
            .iter()
            .map(|s| std::iter::once(start(s)).chain(between(s).iter().copied()).chain([end(s)]).collect())
            .collect()
    };
    let bottom = panel(&|s| Point2::new(0.0, s.keel.get::<meter>()), &|s| &s.bottom_knuckles, &|s| s.chine);
    let side = panel(&|s| s.chine, &|s| &s.side_knuckles, &|s| s.sheer);
    loft_panels(&xs, &[bottom.iter().map(Vec::as_slice).collect(), side.iter().map(Vec::as_slice).collect()], lofting)
}

/// The least that a hull can be made from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeastForm {
    /// Length of the hull, transom to stem at the sheer.
    pub length: Length,
    /// Breadth across the chines at the transom.
    pub chine_beam: Length,
    /// Deadrise at the transom.
    pub deadrise: Angle,
    /// Height of the sheer above the bottom of the hull at the transom.
    pub depth: Length,
}

/// Part of the length over which the transom's section runs unchanged. Common practice for planing
/// boats, no source.
const PRISMATIC_PART: f64 = 0.55;
/// Breadth at the sheer over that at the chine. Common practice, no source.
const SHEER_OVER_CHINE: f64 = 1.15;
/// Fore body of a planing runabout. Common practice, no source.
const FORE_BODY: [LeastFormStation; 3] = [
    LeastFormStation {
        part_of_length: 0.80,
        chine_breadth: 0.80,
        chine_rise: 0.12,
        keel_height: 0.10,
        sheer_breadth: 0.93,
    },
    LeastFormStation {
        part_of_length: 0.93,
        chine_breadth: 0.42,
        chine_rise: 0.40,
        keel_height: 0.45,
        sheer_breadth: 0.62,
    },
    LeastFormStation {
        part_of_length: 1.0,
        chine_breadth: 0.0,
        chine_rise: 0.80,
        keel_height: 0.90,
        sheer_breadth: 0.0,
    },
];

/// Lofts the least form, with every assumption in the list that comes back.
///
/// # Errors
/// [`LoftError::OutOfRange`] for a dimension that is not above zero, a deadrise outside 0 to 60°, or a
/// depth that does not reach above the chine.
pub fn mesh_from_least_form(form: &LeastForm, lofting: &Lofting) -> Result<Lofted, LoftError> {
    let (length, half_beam, depth) =
        (form.length.get::<meter>(), 0.5 * form.chine_beam.get::<meter>(), form.depth.get::<meter>());
    let above_zero = |what, value: f64| {
        if value.is_finite() && value > 0.0 { Ok(()) } else { Err(LoftError::OutOfRange { what }) }
    };
    above_zero("the length", length)?;
    above_zero("the chine beam", half_beam)?;
    above_zero("the depth", depth)?;
    if !(0.0..=60.0).contains(&form.deadrise.get::<degree>()) {
        return Err(LoftError::OutOfRange { what: "the deadrise" });
    }
    let chine_height = half_beam * form.deadrise.get::<radian>().tan();
    if depth <= chine_height {
        return Err(LoftError::OutOfRange { what: "the depth: it ends below the chine" });
    }
    let section = |s: &LeastFormStation| {
        let chine = chine_height + s.chine_rise * (depth - chine_height);
        TapeSection {
            x: Length::new::<meter>(length * s.part_of_length),
            keel: Length::new::<meter>(chine * s.keel_height),
            bottom_knuckles: Vec::new(),
            chine: Point2::new(half_beam * s.chine_breadth, chine),
            side_knuckles: Vec::new(),
            sheer: Point2::new(half_beam * SHEER_OVER_CHINE * s.sheer_breadth, depth),
        }
    };
    let transom = |part_of_length| LeastFormStation {
        part_of_length,
        chine_breadth: 1.0,
        chine_rise: 0.0,
        keel_height: 0.0,
        sheer_breadth: 1.0,
    };
    let sections: Vec<TapeSection> =
        [transom(0.0), transom(PRISMATIC_PART)].iter().chain(&FORE_BODY).map(section).collect();
    let mut lofted = mesh_from_tape(&sections, lofting)?;
    lofted.assumptions.extend([
        Assumption::PrismaticTo { part_of_length: PRISMATIC_PART },
        Assumption::SheerBeam { ratio: SHEER_OVER_CHINE },
        Assumption::LevelSheer,
        Assumption::ForeBody { stations: &FORE_BODY },
    ]);
    Ok(lofted)
}
