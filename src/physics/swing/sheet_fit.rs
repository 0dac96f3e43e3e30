//! A chain fitted to the few numbers of a maker's mounting sheet.
//!
//! The sheet says where the engine's cowl ends up at full tilt, but seldom where its tilt tube is. Two
//! numbers (protrusion and height at full tilt) fix two unknowns exactly: the tube's place, or, where that
//! is known, the cowl's forward and after extent. What was solved is stated in [`Solved`].

use std::sync::Arc;

use nalgebra::{Matrix2, Point3, Rotation3, Vector2, Vector3};
use uom::si::angle::degree;
use uom::si::f64::{Angle, Length};

use super::body::{metres, radians};
use super::chain::{AngleRange, Axis, EngineChain, Part};
use super::error::{SwingError, finite, positive};
use super::mounting_sheet::MountingSheet;
use crate::working::{Sheet, Term, cos, sin};

use super::sheet_bodies::{Outline, bracket_bodies, head_bodies, steering_axis_aft, swivel_body};

/// Least full tilt for which protrusion and height say anything of the tube, in degrees.
const LEAST_FULL_TILT: f64 = 20.0;

/// Where a tilt tube can be, from the middle of the bracket's rest, in metres: forward of the mounting
/// face, aft of it, below the rest, above it. Common practice, no source; generous.
const TUBE_FORWARD: f64 = 0.20;
const TUBE_AFT: f64 = 0.35;
const TUBE_BELOW: f64 = 0.25;
const TUBE_ABOVE: f64 = 0.40;

/// How exactly a fit must give back the sheet's numbers, in metres; rounding alone stays far below it.
const IDENTITY: f64 = 1e-9;

/// Where the engine is bolted on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mounting {
    /// Middle of the bracket's rest, on the mounting face: boat axes, metres.
    pub rest: Point3<f64>,
    /// How far the mounting face leans: its top aft of its bottom.
    pub transom_angle: Angle,
}

/// What the fit solved for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Solved {
    /// The tilt tube's place from the rest, at the sheet's transom angle.
    TiltTube {
        /// Forward of the mounting face; negative aft.
        forward: Length,
        /// Above the rest.
        above: Length,
    },
    /// The cowl's extents, where the tube was given.
    Cowl {
        /// Forward of the mounting face, upright.
        forward: Length,
        /// Aft of it.
        aft: Length,
    },
}

/// A chain with the ranges that it may swing through where it is mounted.
#[derive(Debug, Clone, PartialEq)]
pub struct FittedEngine {
    /// The chain, its reference pose upright.
    pub chain: EngineChain,
    /// Tilt from upright: the sheet's range, less what this transom leans more than the sheet's.
    pub tilt: AngleRange,
    /// Steering.
    pub steer: AngleRange,
    /// What was solved.
    pub solved: Solved,
    /// How the cowl's reach was solved, where it was.
    pub working: Arc<Sheet>,
}

/// Fits a chain to a mounting sheet and mounts it.
///
/// # Errors
/// A number that is not finite or not positive; numbers that do not fit together: a tube outside any
/// bracket, a full tilt too small to tell, a cowl that cannot reach so far.
pub fn fit_engine(sheet: &MountingSheet, mounting: &Mounting) -> Result<FittedEngine, SwingError> {
    check_sheet(sheet)?;
    let full = sheet.tilt.high();
    let mut outline = Outline::from_sheet(sheet);
    let mut working = Sheet::default();
    let (tube, solved) = match sheet.tilt_tube {
        None => solve_tube(sheet, &outline)?,
        Some(tube) => solve_cowl(sheet, &mut outline, tube, &mut working)?,
    };
    let chain = assemble(sheet, &outline, tube, 0.0)?;
    let reached = extents(&chain, full);
    let wanted = [sheet.protrusion_at_full_tilt, sheet.height_at_full_tilt];
    for (what, (got, want)) in ["protrusion", "height"].iter().zip(reached.iter().zip(wanted)) {
        if (got - want.value).abs() > IDENTITY {
            return Err(SwingError::SheetDoesNotFit {
                why: format!(
                    "the {what} at full tilt is {:.3} m, but with the other numbers the engine reaches {got:.3} m",
                    want.value
                ),
            });
        }
    }
    let lean = mounting.transom_angle - sheet.transom_angle;
    let chain = assemble(sheet, &outline, tube, lean.value)?.shifted(mounting.rest.coords);
    let (low, high) = (sheet.tilt.low() - lean, full - lean);
    Ok(FittedEngine {
        chain,
        tilt: AngleRange::new("the tilt range on this transom", low, high)?,
        steer: AngleRange::new("the steering range", -sheet.steering_each_way, sheet.steering_each_way)?,
        solved,
        working: Arc::new(working),
    })
}

fn check_sheet(sheet: &MountingSheet) -> Result<(), SwingError> {
    let must_be_positive = [
        ("the shaft length", sheet.shaft_length),
        ("the plate to propeller shaft distance", sheet.plate_to_propeller_shaft),
        ("the propeller diameter", sheet.propeller_diameter),
        ("the powerhead width", sheet.powerhead_width),
        ("the powerhead height", sheet.powerhead_height),
        ("the powerhead's aft extent", sheet.powerhead_aft),
        ("the powerhead's length", sheet.powerhead_aft + sheet.powerhead_forward),
        ("the protrusion at full tilt", sheet.protrusion_at_full_tilt),
        ("the height at full tilt", sheet.height_at_full_tilt),
    ];
    for (what, length) in must_be_positive {
        positive(what, length.value)?;
    }
    for (what, angle) in [("the transom angle", sheet.transom_angle), ("the steering angle", sheet.steering_each_way)] {
        finite(what, angle.value)?;
    }
    let full = sheet.tilt.high().get::<degree>();
    if full < LEAST_FULL_TILT {
        return Err(SwingError::SheetDoesNotFit {
            why: format!("full tilt is {full:.1} deg; at least {LEAST_FULL_TILT:.0} deg from upright is expected"),
        });
    }
    Ok(())
}

/// With the engine turned by R about the tube T, a point v goes to (I - R) T + R v: the farthest forward
/// and the highest are those of R v, moved by (I - R) T, which two equations fix.
fn solve_tube(sheet: &MountingSheet, outline: &Outline) -> Result<(Vector3<f64>, Solved), SwingError> {
    let full = sheet.tilt.high().value;
    let turn = Rotation3::from_axis_angle(&Vector3::y_axis(), full);
    let mut farthest = [f64::NEG_INFINITY; 2];
    for body in head_bodies(outline)? {
        for point in body.points() {
            let turned = turn * point.coords;
            let grown = body.radius().value;
            farthest = [farthest[0].max(turned.x + grown), farthest[1].max(turned.z + grown)];
        }
    }
    let (sin, cos) = full.sin_cos();
    let rest = Matrix2::new(1.0 - cos, -sin, sin, 1.0 - cos);
    let wanted =
        Vector2::new(sheet.protrusion_at_full_tilt.value - farthest[0], sheet.height_at_full_tilt.value - farthest[1]);
    let Some(inverse) = rest.try_inverse() else {
        return Err(SwingError::SheetDoesNotFit { why: "full tilt is a whole turn".to_owned() });
    };
    let tube = inverse * wanted;
    let plausible = (-TUBE_AFT..=TUBE_FORWARD).contains(&tube.x) && (-TUBE_BELOW..=TUBE_ABOVE).contains(&tube.y);
    if !plausible {
        return Err(SwingError::SheetDoesNotFit {
            why: format!(
                "protrusion and height at full tilt put the tilt tube {:.3} m forward of the mounting face and {:.3} m above the rest, \
                 where no bracket holds one; check them, the powerhead's sizes and the tilt range",
                tube.x, tube.y
            ),
        });
    }
    let solved = Solved::TiltTube { forward: metres(tube.x), above: metres(tube.y) };
    Ok((Vector3::new(tube.x, 0.0, tube.y), solved))
}

/// The forward top edge gives the protrusion, the after top edge the height; each is linear in one extent.
fn solve_cowl(
    sheet: &MountingSheet,
    outline: &mut Outline,
    tube: [Length; 2],
    working: &mut Sheet,
) -> Result<(Vector3<f64>, Solved), SwingError> {
    let [x, z] = tube.map(|length| length.value);
    super::body::check_point("the tilt tube", &Point3::new(x, 0.0, z))?;
    if sheet.tilt.high().value.cos().abs() < 1e-6 {
        return Err(SwingError::SheetDoesNotFit {
            why: "at a full tilt of 90 deg the protrusion does not depend on the cowl's forward extent; \
                  leave the tilt tube out to have it solved"
                .to_owned(),
        });
    }
    let [forward, aft] = reaches(working, sheet, tube).map(|reach| reach.value().value);
    if forward + aft <= 0.0 || aft <= 0.0 {
        return Err(SwingError::SheetDoesNotFit {
            why: format!(
                "with that tilt tube the cowl would reach from {forward:.3} m forward of the mounting face to {aft:.3} m aft of it"
            ),
        });
    }
    outline.forward = forward;
    outline.aft = aft;
    let solved = Solved::Cowl { forward: metres(forward), aft: metres(aft) };
    Ok((Vector3::new(x, 0.0, z), solved))
}

/// The cowl's reach forward and aft of the mounting face with which its top edges come to the sheet's protrusion and height at
/// full tilt.
fn reaches(working: &mut Sheet, sheet: &MountingSheet, [forward, above]: [Length; 2]) -> [Term<Length>; 2] {
    let given = |symbol: &str, meaning: &str, value| (symbol.to_owned(), meaning.to_owned(), value);
    let mut set = |(symbol, meaning, value): (String, String, Length)| {
        working.set(&symbol, &meaning, Term::new("mounting sheet", value))
    };
    let f = set(given("f", "tilt tube forward of the mounting face", forward));
    let g = set(given("g", "tilt tube above the bracket's rest", above));
    let top = set(given("H", "top of the powerhead above the rest", sheet.powerhead_height));
    let protrusion = set(given("P", "reach forward at full tilt", sheet.protrusion_at_full_tilt));
    let high = set(given("Q", "highest point at full tilt", sheet.height_at_full_tilt));
    let full =
        working.set("τf", "full tilt, at the sheet's transom angle", Term::new("mounting sheet", sheet.tilt.high()));
    let rise = working.set("w", "top of the powerhead above the tilt tube", top - g.clone());
    let ahead = &f + &((protrusion - f.clone() - &rise * &sin(full.clone())) / cos(full.clone()));
    let behind = (high - g - rise * cos(full.clone())) / sin(full) - f;
    [
        working.set("F", "the cowl's reach forward of the mounting face", ahead),
        working.set("A", "the cowl's reach aft of it", behind),
    ]
}

/// The chain about the rest, upright, on a transom that leans by `lean` more than the sheet's. The bracket
/// leans with the transom, and carries the tube with it; what hangs on the tube is moved, not turned.
fn assemble(
    sheet: &MountingSheet,
    outline: &Outline,
    tube: Vector3<f64>,
    lean: f64,
) -> Result<EngineChain, SwingError> {
    let turn = Rotation3::from_axis_angle(&Vector3::y_axis(), -lean);
    let moved_tube = turn * tube;
    let carried = moved_tube - tube;
    let mut bodies = Vec::new();
    for body in bracket_bodies(outline, tube, sheet.transom_angle.value)? {
        bodies.push((Part::Bracket, body.mapped(|p| turn * p)));
    }
    bodies.push((Part::Swivel, swivel_body(outline, tube)?.shifted(carried)));
    for body in head_bodies(outline)? {
        bodies.push((Part::Head, body.shifted(carried)));
    }
    let tilt_axis = Axis::new("the tilt axis", Point3::from(moved_tube), Vector3::y())?;
    let steering = Point3::new(-steering_axis_aft(outline), 0.0, 0.0) + carried;
    let steering_axis = Axis::new("the steering axis", steering, Vector3::z())?;
    // What hangs on the tube keeps its place to it: from here it measures as on the sheet, however the transom leans.
    let origin = Point3::from(carried);
    EngineChain::new(sheet.name.clone(), tilt_axis, steering_axis, bodies).map(|chain| chain.measured_from(origin))
}

/// Farthest forward and highest, in metres from the rest, of what moves, at a tilt and steered ahead.
fn extents(chain: &EngineChain, tilt: Angle) -> [f64; 2] {
    let mut most = [f64::NEG_INFINITY; 2];
    let moving = chain.bodies().iter().filter(|(part, _)| *part != Part::Bracket);
    for (part, body) in moving {
        for point in body.points() {
            let at = chain.carried(*part, *point, tilt, radians(0.0));
            let grown = body.radius().value;
            most = [most[0].max(at.x + grown), most[1].max(at.z + grown)];
        }
    }
    most
}

/// Protrusion forward of a rest and height above it (metres in, lengths out) that a chain reaches at a tilt.
pub fn reach_from(chain: &EngineChain, rest: &Point3<f64>, tilt: Angle) -> [Length; 2] {
    let [x, z] = extents(chain, tilt);
    [metres(x - rest.x), metres(z - rest.z)]
}
