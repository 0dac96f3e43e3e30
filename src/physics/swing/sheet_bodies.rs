//! The bodies of an outboard drawn from its mounting sheet's few numbers, about the bracket's rest, upright.
//!
//! Proportions that a sheet does not give are common practice, no source: chosen so that the bodies hold
//! the real ones. The cowl is drawn as boxes, which hold its rounded edges.

use nalgebra::{Point3, Vector3};

use super::body::{ConvexBody, metres};
use super::called;
use super::error::SwingError;
use super::mounting_sheet::MountingSheet;

/// Steering axis and driveshaft aft of the mounting face, as shares of the cowl's aft extent.
const STEERING_AXIS_SHARE: f64 = 0.18;
const DRIVESHAFT_SHARE: f64 = 0.42;
/// Underside of the cowl above the rest, as a share of its height.
const COWL_FLOOR_SHARE: f64 = 0.25;
/// Part of the cowl's length that is its forward body.
const COWL_FORWARD_SHARE: f64 = 0.4;
/// Width of the cowl's after end as a share of its width: seen from above a cowl narrows aft. With it the cowl
/// sweeps about what mounting sheets ask beside the engine at full lock.
const COWL_AFTER_WIDTH_SHARE: f64 = 0.7;
/// Leg: half its length fore and aft, and half its width, as shares of the cowl's.
const LEG_LENGTH_SHARE: f64 = 0.22;
const LEG_WIDTH_SHARE: f64 = 0.16;
/// Plate, gearcase, propeller hub and skeg, in propeller diameters.
const PLATE_FORWARD: f64 = 0.5;
const PLATE_AFT: f64 = 1.0;
const PLATE_HALF_WIDTH: f64 = 0.3;
const GEARCASE_RADIUS: f64 = 0.16;
const GEARCASE_FORWARD: f64 = 0.8;
const PROPELLER_AFT: f64 = 0.75;
const PROPELLER_LENGTH: f64 = 0.35;
const SKEG_BELOW_SHAFT: f64 = 0.6;
/// Thickness of the plate and half thickness of the skeg, in metres.
const PLATE_THICKNESS: f64 = 0.012;
const SKEG_HALF_THICKNESS: f64 = 0.008;
/// Clamp bracket: half width as a share of the cowl's, length down the face as a share of the shaft length, thickness
/// aft of the face and radius of the tilt tube in metres.
const BRACKET_WIDTH_SHARE: f64 = 0.3;
const BRACKET_DEPTH_SHARE: f64 = 0.6;
const BRACKET_THICKNESS: f64 = 0.05;
const TUBE_RADIUS: f64 = 0.022;
/// Swivel: half width as a share of the cowl's, radius of its boss about the steering axis in metres.
const SWIVEL_WIDTH_SHARE: f64 = 0.18;
const SWIVEL_BOSS: f64 = 0.045;

const COWL_FORWARD: &str = called::COWL[0];
const COWL_AFTER: &str = called::COWL[1];

/// Which of a body's two ends a corner is at, along and up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct End {
    /// At its forward end.
    pub forward: bool,
    /// At its upper end.
    pub upper: bool,
}

/// From which numbers of the mounting sheet a corner of a body was drawn; nothing for a body that no sheet draws.
pub fn whence(body: &str, end: End) -> Option<String> {
    let split = format!("{COWL_FORWARD_SHARE} of the cowl's length aft of its forward edge");
    let height =
        if end.upper { "the powerhead's height".to_owned() } else { format!("{COWL_FLOOR_SHARE} of its height") };
    Some(match body {
        COWL_FORWARD if end.forward => format!("the cowl's reach forward; half its width; {height}"),
        COWL_FORWARD => format!("{split}; half its width; {height}"),
        COWL_AFTER if end.forward => format!("{split}; half its width; {height}"),
        COWL_AFTER => format!("the cowl's reach aft; {COWL_AFTER_WIDTH_SHARE} of half its width; {height}"),
        called::LEG => {
            let floor = if end.upper { height_of_floor() } else { "the shaft's length down".to_owned() };
            format!(
                "the driveshaft, {DRIVESHAFT_SHARE} of the reach aft, and {LEG_LENGTH_SHARE} of it either way; {LEG_WIDTH_SHARE} of the powerhead's width; {floor}"
            )
        }
        called::PLATE => format!(
            "{PLATE_FORWARD} propeller diameters forward of the driveshaft, {PLATE_AFT} aft; {PLATE_HALF_WIDTH} of one to each side; the shaft's length down"
        ),
        called::GEARCASE => format!(
            "{GEARCASE_FORWARD} propeller diameters forward of the driveshaft, {PROPELLER_AFT} aft less half the propeller's length; the propeller shaft's depth"
        ),
        called::PROPELLER => format!(
            "its disc about the propeller shaft, {PROPELLER_AFT} of its diameter aft of the driveshaft, {PROPELLER_LENGTH} of it long"
        ),
        called::SKEG => format!("down to {SKEG_BELOW_SHAFT} propeller diameters below the propeller shaft"),
        called::SWIVEL => format!(
            "from the tilt tube down the steering axis to half the shaft's length; {SWIVEL_WIDTH_SHARE} of the powerhead's width to each side"
        ),
        called::CLAMP | called::TUBE => format!(
            "the mounting face, and the tilt tube on it; {BRACKET_WIDTH_SHARE} of the powerhead's width to each side"
        ),
        _ => return None,
    })
}

fn height_of_floor() -> String {
    format!("{COWL_FLOOR_SHARE} of the powerhead's height")
}

/// The sizes that the bodies are drawn from, in metres.
#[derive(Debug, Clone, Copy)]
pub(super) struct Outline {
    pub shaft: f64,
    pub propeller_shaft: f64,
    pub diameter: f64,
    pub half_width: f64,
    pub height: f64,
    pub forward: f64,
    pub aft: f64,
}

impl Outline {
    pub(super) fn from_sheet(sheet: &MountingSheet) -> Self {
        Self {
            shaft: sheet.shaft_length.value,
            propeller_shaft: sheet.shaft_length.value + sheet.plate_to_propeller_shaft.value,
            diameter: sheet.propeller_diameter.value,
            half_width: 0.5 * sheet.powerhead_width.value,
            height: sheet.powerhead_height.value,
            forward: sheet.powerhead_forward.value,
            aft: sheet.powerhead_aft.value,
        }
    }

    fn driveshaft(&self) -> f64 {
        -DRIVESHAFT_SHARE * self.aft
    }

    fn cowl_floor(&self) -> f64 {
        COWL_FLOOR_SHARE * self.height
    }
}

/// How far the steering axis lies aft of the mounting face, in metres.
pub(super) fn steering_axis_aft(outline: &Outline) -> f64 {
    STEERING_AXIS_SHARE * outline.aft
}

fn slab(name: &str, low: [f64; 2], high: [f64; 2], half_width: f64) -> Result<ConvexBody, SwingError> {
    ConvexBody::cuboid(name, Point3::new(low[0], -half_width, low[1]), Point3::new(high[0], half_width, high[1]))
}

fn after_part(o: &Outline, floor: f64, split: f64) -> Result<ConvexBody, SwingError> {
    let mut points = Vec::with_capacity(8);
    for (x, half) in [(-o.aft, COWL_AFTER_WIDTH_SHARE * o.half_width), (split, o.half_width)] {
        for z in [floor, o.height] {
            points.extend([-half, half].map(|y| Point3::new(x, y, z)));
        }
    }
    ConvexBody::hull(COWL_AFTER, &points)
}

/// What steers: cowl, leg, plate, gearcase, propeller, skeg.
pub(super) fn head_bodies(o: &Outline) -> Result<Vec<ConvexBody>, SwingError> {
    let d = o.diameter;
    let x = o.driveshaft();
    let floor = o.cowl_floor();
    let split = o.forward - COWL_FORWARD_SHARE * (o.forward + o.aft);
    let leg = LEG_LENGTH_SHARE * o.aft;
    let hub = x - PROPELLER_AFT * d;
    let bullet = [x + GEARCASE_FORWARD * d, hub + 0.5 * PROPELLER_LENGTH * d];
    let radius = GEARCASE_RADIUS * d;
    let gearcase = [-o.propeller_shaft - radius, -o.propeller_shaft + radius];
    let skeg = [
        [x + 0.35 * d, gearcase[0]],
        [x - 0.35 * d, gearcase[0]],
        [x - 0.30 * d, -o.propeller_shaft - SKEG_BELOW_SHAFT * d],
        [x - 0.05 * d, -o.propeller_shaft - SKEG_BELOW_SHAFT * d],
    ];
    Ok(vec![
        slab(COWL_FORWARD, [split, floor], [o.forward, o.height], o.half_width)?,
        after_part(o, floor, split)?,
        slab(called::LEG, [x - leg, -o.shaft], [x + leg, floor], LEG_WIDTH_SHARE * 2.0 * o.half_width)?,
        slab(
            called::PLATE,
            [x - PLATE_AFT * d, -o.shaft],
            [x + PLATE_FORWARD * d, -o.shaft + PLATE_THICKNESS],
            PLATE_HALF_WIDTH * d,
        )?,
        slab(called::GEARCASE, [bullet[1], gearcase[0]], [bullet[0], gearcase[1]], radius)?,
        ConvexBody::disc(
            called::PROPELLER,
            Point3::new(hub, 0.0, -o.propeller_shaft),
            Vector3::x(),
            metres(d),
            metres(PROPELLER_LENGTH * d),
        )?,
        ConvexBody::prism(called::SKEG, &skeg, metres(-SKEG_HALF_THICKNESS), metres(SKEG_HALF_THICKNESS))?,
    ])
}

/// What only tilts: the swivel, from the tube down the steering axis.
pub(super) fn swivel_body(o: &Outline, tube: Vector3<f64>) -> Result<ConvexBody, SwingError> {
    let half = SWIVEL_WIDTH_SHARE * 2.0 * o.half_width;
    let axis = -steering_axis_aft(o);
    let corners = [
        [tube.x + TUBE_RADIUS, tube.z - TUBE_RADIUS],
        [tube.x + TUBE_RADIUS, tube.z + TUBE_RADIUS],
        [tube.x - TUBE_RADIUS, tube.z + TUBE_RADIUS],
        [tube.x - TUBE_RADIUS, tube.z - TUBE_RADIUS],
        [axis - SWIVEL_BOSS, 0.0],
        [axis - SWIVEL_BOSS, -0.5 * o.shaft],
        [axis + SWIVEL_BOSS, -0.5 * o.shaft],
        [axis + SWIVEL_BOSS, 0.0],
    ];
    let points: Vec<_> = corners.iter().flat_map(|c| [-half, half].map(|y| Point3::new(c[0], y, c[1]))).collect();
    ConvexBody::hull(called::SWIVEL, &points)
}

/// What is bolted on: the clamp bracket down a face that leans by `transom_angle`, and the tilt tube.
pub(super) fn bracket_bodies(
    o: &Outline,
    tube: Vector3<f64>,
    transom_angle: f64,
) -> Result<Vec<ConvexBody>, SwingError> {
    let half = BRACKET_WIDTH_SHARE * 2.0 * o.half_width;
    let depth = BRACKET_DEPTH_SHARE * o.shaft;
    let (sin, cos) = transom_angle.sin_cos();
    let foot = [depth * sin, -depth * cos];
    let corners =
        [[0.0, 0.0], foot, [foot[0] - BRACKET_THICKNESS, foot[1]], [-BRACKET_THICKNESS, 0.0], [tube.x, tube.z]];
    let points: Vec<_> = corners.iter().flat_map(|c| [-half, half].map(|y| Point3::new(c[0], y, c[1]))).collect();
    Ok(vec![
        ConvexBody::hull(called::CLAMP, &points)?,
        ConvexBody::capsule(
            called::TUBE,
            Point3::new(tube.x, -half, tube.z),
            Point3::new(tube.x, half, tube.z),
            metres(TUBE_RADIUS),
        )?,
    ])
}
