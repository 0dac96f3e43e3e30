//! The engines over the road on a trailer.

use nalgebra::{Point3, Vector3};

use super::around::boxed;
use super::hang::Hanging;
use super::sweep::each;
use super::swept::{Swept, refused};
use super::{Answer, effort, from_boat, over_road};
use crate::case::stern::Stern;
use crate::job::{self, Trailer};
use crate::physics::swing::{AngleRange, Obstacle, Plane, PlaneClearance, Scene, height_above, least_distance};
use crate::quantity::{Text, degrees};
use crate::reading::{Absent, Asked, reading};
use crate::rig::Rig;

/// One engine over the road.
#[derive(Clone, Debug)]
pub struct OverGround {
    /// Against the road, from the towing position to full tilt, steered anyhow.
    pub road: Swept,
    /// Against bunks and whatever else of the trailer was given, over the same range.
    pub trailer: Option<Swept>,
    /// Height over the road at full tilt, steered ahead.
    pub tilted: PlaneClearance,
    /// Height over the road engine down: what is left on a launching ramp.
    pub down: PlaneClearance,
}

/// Every engine.
pub(super) fn over(rig: &Rig, stern: &Stern, hanging: &[Hanging]) -> Answer<Vec<OverGround>> {
    let trailer = rig.job.trailer().ask()?;
    let Trailer::On { keel_above_ground, bow_up, towing_tilt, parts } = trailer else {
        return Err(Absent::NotApplicable(Text::from("She does not travel on a trailer.")));
    };
    let height = Asked::new(keel_above_ground.as_ref(), reading!(job::Trailer.keel_above_ground));
    let height = height.ask()?;
    let lean = bow_up.as_ref().map_or(0.0, |angle| angle.value.value);
    let up = Vector3::new(lean.sin(), 0.0, lean.cos());
    let road = Plane::new("road", Point3::from(-up * height.value.value), up).map_err(|error| refused(&error))?;
    let parts: Vec<Obstacle> =
        parts.iter().map(|part| boxed(stern, part)).collect::<Result<_, _>>().map_err(|error| refused(&error))?;
    each(hanging, |engine| {
        let full = engine.fitted.tilt.high();
        let towed = towing_tilt.as_ref().map_or(full, |tilt| tilt.value).max(engine.fitted.tilt.low()).min(full);
        let range = AngleRange::new("the towing range", towed, full).map_err(|error| refused(&error))?;
        let ask = |obstacles: Vec<Obstacle>, margin| -> Answer<Swept> {
            let mut scene = Scene::new(engine.fitted.chain.clone(), range, engine.fitted.steer);
            scene.obstacles = obstacles;
            let clearance = least_distance(&scene, &effort()).map_err(|error| refused(&error))?;
            Ok(Swept::new(&engine.label, scene, clearance, margin))
        };
        let over =
            |tilt| height_above(&engine.fitted.chain, &[], tilt, degrees(0.0), &road).map_err(|error| refused(&error));
        Ok(OverGround {
            road: ask(vec![Obstacle::HalfSpace(road.clone())], over_road())?,
            trailer: match parts.is_empty() {
                true => None,
                false => Some(ask(parts.clone(), from_boat())?),
            },
            tilted: over(full)?,
            down: over(degrees(0.0).max(engine.fitted.tilt.low()))?,
        })
    })
}
