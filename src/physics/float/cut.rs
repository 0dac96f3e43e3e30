//! What lies under a water plane: volume, centre, waterplane and wetted surface.

use nalgebra::{Point3, Vector3};
use uom::si::area::square_meter;
use uom::si::f64::{Area, Volume};
use uom::si::volume::cubic_meter;

use super::hull::{Hull, Part};
use super::tree::{Blade, Cones, Rim};
use super::water::WaterPlane;

/// The face that the water plane cuts from the hull.
///
/// Its axes lie in the water plane: forward is the boat's x axis laid flat, athwart is to port of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Waterplane {
    /// Area.
    pub area: Area,
    /// Centroid (centre of flotation) in boat axes, metres; meaningless for a zero area.
    pub centroid: Point3<f64>,
    /// Second moment about the fore-and-aft axis through the centroid, m⁴: resists heel.
    pub second_moment_transverse_m4: f64,
    /// Second moment about the athwart axis through the centroid, m⁴: resists trim.
    pub second_moment_longitudinal_m4: f64,
    /// Product moment about the same axes, m⁴.
    pub product_moment_m4: f64,
}

/// The part of a hull under a water plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Immersed {
    /// Displaced volume.
    pub volume: Volume,
    /// Centre of buoyancy in boat axes, metres; the middle of the hull's box if nothing is immersed.
    pub centre_of_buoyancy: Point3<f64>,
    /// The face in the water plane.
    pub waterplane: Waterplane,
    /// Surface of the added bodies under water. Walls of cut-outs and the faces where two bodies touch
    /// are not taken off.
    pub wetted_surface: Area,
}

/// Sums about the hull's reference point, as the solver needs them.
#[derive(Clone, Copy, Debug)]
pub(super) struct Sums {
    /// Displaced volume, m³.
    pub volume: f64,
    /// First moments of the volume about the reference point, m⁴.
    pub moment: Vector3<f64>,
    /// Moments of the face about the foot of the reference point on the plane.
    pub rim: Rim,
    /// Wetted area, m².
    pub wetted: f64,
}

impl Hull {
    /// Cuts the hull at a water plane and integrates what lies under it, exactly (up to rounding), by
    /// the divergence theorem.
    #[must_use]
    pub fn cut(&self, plane: &WaterPlane) -> Immersed {
        let (sums, blade) = self.sums(plane);
        immersed(self, &sums, &blade)
    }

    pub(super) fn sums(&self, plane: &WaterPlane) -> (Sums, Blade) {
        let normal = plane.normal.into_inner();
        let (forward, port) = plane.in_plane();
        let blade = Blade { normal, offset: plane.offset - normal.dot(&self.reference().coords), forward, port };
        let mut cones = Cones::default();
        let mut rim = Rim::default();
        let mut wetted = 0.0;
        for (factor, part, tree) in self.trees() {
            let before = cones.area;
            tree.cut(&blade, factor, &mut cones, &mut rim);
            if part == Part::Added {
                wetted += cones.area - before;
            }
        }
        // The cone from the reference point to the cut face closes the body.
        let third = blade.offset / 3.0;
        let quarter = blade.offset / 4.0;
        let on_face = normal * (blade.offset * rim.area) + forward * rim.u + port * rim.v;
        let sums = Sums {
            volume: cones.volume + third * rim.area,
            moment: Vector3::from(cones.moment) + on_face * quarter,
            rim,
            wetted,
        };
        (sums, blade)
    }
}

pub(super) fn immersed(hull: &Hull, sums: &Sums, blade: &Blade) -> Immersed {
    let reference = hull.reference();
    let per = |numerator: f64, denominator: f64| {
        if denominator > 0.0 { numerator / denominator } else { 0.0 }
    };
    let rim = &sums.rim;
    let (u, v) = (per(rim.u, rim.area), per(rim.v, rim.area));
    let centre = sums.moment.map(|moment| per(moment, sums.volume));
    Immersed {
        volume: Volume::new::<cubic_meter>(sums.volume.max(0.0)),
        centre_of_buoyancy: reference + centre,
        waterplane: Waterplane {
            area: Area::new::<square_meter>(rim.area.max(0.0)),
            centroid: reference + blade.normal * blade.offset + blade.forward * u + blade.port * v,
            second_moment_transverse_m4: rim.vv - rim.v * v,
            second_moment_longitudinal_m4: rim.uu - rim.u * u,
            product_moment_m4: rim.uv - rim.u * v,
        },
        wetted_surface: Area::new::<square_meter>(sums.wetted),
    }
}
