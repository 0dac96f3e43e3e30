//! Where the transom's face stands.

use nalgebra::Point3;
use uom::si::f64::{Angle, Length};

use crate::quantity::Dimensioned;
use crate::rig::{Missing, Rig};

/// The transom's face in boat axes.
#[derive(Clone, Copy, Debug)]
pub(in crate::case) struct Stern {
    /// Outside top edge on the centreline, boat axes, metres.
    pub top: Point3<f64>,
    /// From vertical, top aft.
    pub angle: Angle,
}

impl Stern {
    /// Of the rig.
    ///
    /// # Errors
    /// The transom's readings that are missing.
    pub fn of(rig: &Rig) -> Result<Self, Vec<Missing>> {
        match (rig.transom.height.ask(), rig.transom.angle.ask()) {
            (Ok(height), Ok(angle)) => {
                let (sin, cos) = angle.value.si().sin_cos();
                let height = height.value.si();
                Ok(Stern {
                    top: Point3::new(-height * sin, 0.0, height * cos),
                    angle: angle.value,
                })
            }
            (height, angle) => Err([height.err(), angle.err()].into_iter().flatten().collect()),
        }
    }

    /// The point of the plane that lies `setback` aft of the transom's face, square to it, at this height.
    pub fn face(&self, setback: Length, z: f64) -> f64 {
        let (sin, cos) = self.angle.si().sin_cos();
        -(setback.si() + z * sin) / cos
    }
}
