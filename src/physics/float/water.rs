//! The water plane in boat axes, and the attitude that it stands for.

use nalgebra::{Point3, UnitVector3, Vector3};
use uom::si::angle::radian;
use uom::si::f64::{Angle, Length};
use uom::si::length::meter;

use super::error::FloatError;

/// How the boat lies: three numbers that fix the water plane.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Attitude {
    /// How far the origin of boat axes lies under the water surface, plumb; negative above it.
    pub sinkage: Length,
    /// Angle of the boat's x axis above the horizontal: positive bow up.
    pub trim: Angle,
    /// Turn about the boat's x axis: positive to starboard (port side up).
    pub heel: Angle,
}

/// The surface of the water as seen from the boat: the points x with normal · x = offset.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WaterPlane {
    pub(super) normal: UnitVector3<f64>,
    pub(super) offset: f64,
}

impl WaterPlane {
    /// The plane of an attitude. Its normal is (sin τ, cos τ sin φ, cos τ cos φ) for trim τ and heel φ.
    ///
    /// # Errors
    /// [`FloatError::NotFinite`].
    pub fn at(attitude: Attitude) -> Result<Self, FloatError> {
        let (trim, heel) = (attitude.trim.get::<radian>(), attitude.heel.get::<radian>());
        let normal = Vector3::new(trim.sin(), trim.cos() * heel.sin(), trim.cos() * heel.cos());
        Self::from_normal(normal, attitude.sinkage.get::<meter>())
    }

    /// The plane with a given upward normal (any length) through the points x with n · x = offset for
    /// the unit normal n; offset in metres.
    pub(super) fn from_normal(normal: Vector3<f64>, offset: f64) -> Result<Self, FloatError> {
        let unit = UnitVector3::try_new(normal, 1e-12);
        match unit {
            Some(normal) if offset.is_finite() && normal.iter().all(|c| c.is_finite()) => Ok(Self { normal, offset }),
            _ => Err(FloatError::NotFinite { what: "the water plane" }),
        }
    }

    /// Unit normal in boat axes, out of the water.
    #[must_use]
    pub fn normal(&self) -> UnitVector3<f64> {
        self.normal
    }

    /// Distance of the plane from the origin of boat axes along the normal.
    #[must_use]
    pub fn offset(&self) -> Length {
        Length::new::<meter>(self.offset)
    }

    /// Sinkage, trim (within ±90°) and heel (within ±180°).
    #[must_use]
    pub fn attitude(&self) -> Attitude {
        let n = &self.normal;
        let trim = n.x.atan2(n.y.hypot(n.z));
        Attitude {
            sinkage: self.offset(),
            trim: Angle::new::<radian>(trim),
            heel: Angle::new::<radian>(n.y.atan2(n.z)),
        }
    }

    /// Plumb height of a point of the boat above the water, negative under it.
    #[must_use]
    pub fn height_above(&self, point: &Point3<f64>) -> Length {
        Length::new::<meter>(self.normal.dot(&point.coords) - self.offset)
    }

    /// Unit vectors in the plane: forward (the boat's x axis laid flat) and to port of it.
    pub(super) fn in_plane(&self) -> (Vector3<f64>, Vector3<f64>) {
        let n = self.normal.into_inner();
        let flat = Vector3::x() - n * n.x;
        // Standing on her nose or transom she has no forward; any direction will do.
        let forward = flat.try_normalize(1e-9).unwrap_or_else(|| (Vector3::z() - n * n.z).normalize());
        (forward, n.cross(&forward))
    }
}
