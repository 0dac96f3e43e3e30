//! Where the transom's face stands, and what hangs on it: for floating, swinging and strength alike.

use nalgebra::Point3;
use uom::si::f64::{Angle, Length};

use crate::physics::height::{self, HOLE_ROW_STEP_IN};
use crate::quantity::{Dimensioned, inches};
use crate::rig::{Engine, Group, Missing, Rig};
use crate::working::Sheet;

/// The transom's face in boat axes.
#[derive(Clone, Copy, Debug)]
pub(in crate::case) struct Stern {
    /// Outside top edge on the centreline, boat axes, metres.
    pub top: Point3<f64>,
    /// From vertical, top aft.
    pub angle: Angle,
}

/// The transom's angle from vertical; upright where nobody measured it.
pub(crate) fn lean(rig: &Rig) -> Angle {
    rig.job.transom.angle().reading().map_or(Angle::default(), |angle| angle.value)
}

/// Whether an engine hangs on the transom itself, beside its cutout: on the high corner, over which it looks.
pub(crate) fn is_beside_cutout(rig: &Rig, group: &Group, engine: &Engine) -> bool {
    let half = rig.job.transom.cutout_width.as_ref().map(|cutout| cutout.value / 2.0);
    group.bracket.is_none() && half.is_some_and(|half| engine.y.abs().exceeds(half))
}

/// How much higher than on the centreline the transom's top stands where an engine hangs on it beside its cutout, plumb: by the
/// height that was taken there, else by the rim of the well. Nothing in the cutout and on a bracket.
pub(super) fn step_up(rig: &Rig, group: &Group, engine: &Engine) -> Length {
    let none = Length::default();
    if !is_beside_cutout(rig, group, engine) {
        return none;
    }
    let transom = &rig.job.transom;
    let taken = transom.height_at(engine.y).zip(transom.height.as_ref()).zip(rig.job.boat.deadrise.as_ref());
    match (taken, &rig.job.well.rim_above) {
        (Some(((there, middle), deadrise)), _) => {
            let rise = height::bottom_rise(&mut Sheet::default(), engine.y, deadrise.value, lean(rig)).value();
            ((there.value + rise - middle.value) * lean(rig).cos()).max(none)
        }
        (None, Some(rim)) => rim.value.max(none),
        (None, None) => none,
    }
}

impl Stern {
    /// Of the rig.
    ///
    /// # Errors
    /// The transom's readings that are missing.
    pub(super) fn of(rig: &Rig) -> Result<Self, Vec<Missing>> {
        match (rig.job.transom.height().ask(), rig.job.transom.angle().ask()) {
            (Ok(height), Ok(angle)) => Ok(Stern::new(height.value, angle.value)),
            (height, angle) => Err([height.err(), angle.err()].into_iter().flatten().collect()),
        }
    }

    /// Of a transom so high, measured along it, and so far from vertical.
    pub(super) fn new(height: Length, angle: Angle) -> Self {
        let mut stern = Stern { top: Point3::origin(), angle };
        stern.top = stern.on_face(height.si());
        stern
    }

    /// The point of the face so far up along it on the centreline, metres.
    pub(super) fn on_face(&self, up: f64) -> Point3<f64> {
        let (sin, cos) = self.angle.si().sin_cos();
        Point3::new(-up * sin, 0.0, up * cos)
    }

    /// The middle of an engine bracket's rest on the centreline: `setback` aft, square to the face, its mounting
    /// face's top `drop` below the transom's, level, and so many rows of holes up along the mounting face.
    pub(super) fn rest(&self, setback: Length, drop: Length, holes_up: u8) -> Point3<f64> {
        let rows = inches(HOLE_ROW_STEP_IN).si() * f64::from(holes_up);
        let z = self.top.z - drop.si() + rows * self.angle.si().cos();
        Point3::new(self.face(setback, z), 0.0, z)
    }

    /// The middle of a bracket that fills its setback, from its mounting face's top down to its lowest point; at
    /// that top where the lowest point is not known.
    pub(super) fn bracket(&self, setback: Length, drop: Length, bottom: Option<Length>) -> Point3<f64> {
        let top = self.top.z - drop.si();
        let z = bottom.map_or(top, |bottom| 0.5 * (top + bottom.si()));
        Point3::new(self.face(0.5 * setback, z), 0.0, z)
    }

    /// The point of the plane that lies `setback` aft of the transom's face, square to it, at this height.
    pub(super) fn face(&self, setback: Length, z: f64) -> f64 {
        let (sin, cos) = self.angle.si().sin_cos();
        -(setback.si() + z * sin) / cos
    }
}
