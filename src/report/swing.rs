//! The swing of the engines as JSON: chains, ranges, certified distances, outlines at the worst pose.

use serde_json::{Value, json as value};
use uom::si::angle::degree;
use uom::si::f64::Angle;

use crate::case::Case;
use crate::case::swing::{Answer, NamedPolygon, Swept, View, outlines};
use crate::physics::swing::{AngleRange, Outcome};
use crate::quantity::Units;

/// Everything of the swing that another program may draw or check. Lengths in metres, angles in degrees from
/// upright and from amidships (starboard positive), points in boat axes.
pub(super) fn json(case: &Case, units: Units) -> Value {
    let swing = case.swing();
    let sweeps = |answer: &Answer<Vec<Swept>>| match answer {
        Ok(all) => all.iter().map(swept).collect::<Vec<_>>().into(),
        Err(open) => value!({ "open": open.words().show(units) }),
    };
    let engines = match &swing.engines {
        Ok(all) => all
            .iter()
            .map(|engine| {
                let chain = &engine.fitted.chain;
                let axis = |axis: crate::physics::swing::Axis| {
                    value!({
                        "through": axis.point().coords.as_slice(),
                        "along": axis.direction().as_slice(),
                    })
                };
                value!({
                    "engine": engine.label,
                    "rest": engine.rest.coords.as_slice(),
                    "tilt_axis": axis(chain.tilt_axis()),
                    "steering_axis": axis(chain.steering_axis()),
                    "tilt_deg": range(engine.fitted.tilt),
                    "running_deg": range(engine.running),
                    "steering_deg": range(engine.fitted.steer),
                    "lift": engine.lift.map(|lift| value!({
                        "travel": lift.travel().value,
                        "along": lift.along().as_slice(),
                        "aft": lift.aft().as_slice(),
                        "arm_length": lift.arms().map(|[length, _]| length.value),
                        "arm_hang": lift.arms().map(|[_, hang]| hang.value),
                    })),
                    "bodies": chain.bodies().iter().map(|(part, body)| value!({
                        "name": body.name(),
                        "link": format!("{part:?}").to_lowercase(),
                        "points": body.points().iter().map(|p| p.coords.as_slice().to_vec()).collect::<Vec<_>>(),
                        "radius": body.radius().value,
                    })).collect::<Vec<_>>(),
                })
            })
            .collect::<Vec<_>>()
            .into(),
        Err(open) => value!({ "open": open.words().show(units) }),
    };
    let study = swing.study.as_ref().map(|study| match study {
        Ok(question) => swept(&question.swept),
        Err(open) => value!({ "open": open.words().show(units) }),
    });
    value!({
        "engines": engines,
        "full_tilt": sweeps(&swing.full_tilt),
        "raised": sweeps(&swing.raised),
        "steering_lock": sweeps(&swing.lock),
        "neighbours": sweeps(&swing.neighbours),
        "cylinder": sweeps(&swing.cylinder),
        "tie_bar": sweeps(&swing.tie_bar),
        "study": study,
    })
}

fn degrees(angle: Angle) -> f64 {
    angle.get::<degree>()
}

fn range(range: AngleRange) -> [f64; 2] {
    [degrees(range.low()), degrees(range.high())]
}

fn swept(swept: &Swept) -> Value {
    let clearance = &swept.clearance;
    let pose = &clearance.pose;
    let seen = |view| outlines(swept, pose, view).into_iter().map(polygon).collect::<Vec<_>>();
    value!({
        "engine": swept.label,
        "other": swept.other,
        "tilt_deg": range(swept.scene.tilt),
        "steering_deg": range(swept.scene.steer),
        "certified_least": clearance.lower.value,
        "attained": clearance.upper.value,
        "gap": clearance.gap().value,
        "gap_reached": clearance.outcome == Outcome::Certified,
        "margin": swept.margin.value,
        "pose": {
            "tilt_deg": degrees(pose.tilt),
            "neighbour_tilt_deg": pose.neighbour_tilt.map(degrees),
            "steering_deg": degrees(pose.steer),
            "bracket_raised": pose.lift.map(|height| height.value),
        },
        "also_nearer": swept.also.iter().map(|other| value!({
            "body": other.body.name,
            "against": other.other.name,
            "certified_least": other.lower.value,
            "attained": other.upper.value,
        })).collect::<Vec<_>>(),
        "body": clearance.body.name,
        "against": clearance.other.name,
        "point_on_body": clearance.on_body.coords.as_slice(),
        "point_on_other": clearance.on_other.coords.as_slice(),
        "boxes": clearance.boxes,
        "side": seen(View::Side),
        "top": seen(View::Top),
    })
}

fn polygon(polygon: NamedPolygon) -> Value {
    value!({ "name": polygon.name, "moves": polygon.moves, "corners": polygon.corners })
}
