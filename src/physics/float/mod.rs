//! Floating bodies: what a hull displaces, where she comes to rest, and how stiffly.
//!
//! Boat axes: origin where the centreline crosses the outside of the transom at the bottom of the hull, x
//! forward, y to port, z up at level trim; points are in metres. The water is a plane in these axes
//! ([`WaterPlane`]) with its unit normal out of the water. **Trim is positive bow up, heel is positive to
//! starboard**; the normal is (sin τ, cos τ sin φ, cos τ cos φ). Heights above water are plumb.
//!
//! A hull is one or more closed triangle surfaces ([`TriMesh`], [`Hull`]), lofted from tape readings
//! ([`mesh_from_tape`], [`mesh_from_least_form`]) or a table of offsets ([`mesh_from_offsets`]), or read from
//! a file's bytes ([`mesh_from_stl`]). Cutting it by a water plane is exact, by the divergence theorem, up
//! to rounding ([`Hull::cut`]).
//!
//! ```
//! use nalgebra::Point3;
//! use sternknee::physics::float::{Hull, Load, Outcome, TriMesh, equilibrium};
//! use uom::si::f64::{Mass, MassDensity};
//! use uom::si::length::meter;
//! use uom::si::{mass::kilogram, mass_density::kilogram_per_cubic_meter};
//!
//! # fn main() -> Result<(), Box<dyn std::error::Error>> {
//! // A box 4 m long, 2 m wide and 1 m deep that weighs 2 t floats at 0.25 m in fresh water.
//! let corners = (Point3::new(0.0, -1.0, 0.0), Point3::new(4.0, 1.0, 1.0));
//! let hull = Hull::new(TriMesh::cuboid(corners.0, corners.1)?);
//! let load = Load {
//!     mass: Mass::new::<kilogram>(2000.0),
//!     centre: Point3::new(2.0, 0.0, 0.5),
//!     water: MassDensity::new::<kilogram_per_cubic_meter>(1000.0),
//! };
//! let Outcome::Stable(floating) = equilibrium(&hull, &load)? else {
//!     return Err("she should float".into());
//! };
//! let deck_edge = floating.height_above_water(&Point3::new(0.0, 1.0, 1.0));
//! assert!((deck_edge.get::<meter>() - 0.75).abs() < 1e-12);
//! // GM = KB + B²/(12 T) − KG = 0.125 + 4/3 − 0.5.
//! assert!((floating.gm_transverse.get::<meter>() - 23.0 / 24.0).abs() < 1e-12);
//! # Ok(())
//! # }
//! ```

mod as_floats;
mod capacity;
mod closed;
mod cut;
mod descent;
mod equilibrium;
mod error;
mod hull;
mod hydrostatics;
mod ledger;
mod loft;
mod mesh;
mod offsets;
mod righting;
mod stl;
mod tank;
mod tape;
mod tree;
mod water;
mod weld;

pub use as_floats::{AsFloats, Mark, as_she_floats, load_for};
pub use capacity::{
    MaximumDisplacement, PersonsCapacity, PersonsLimit, maximum_displacement, persons_capacity,
    persons_capacity_by_test, persons_in_number, persons_unrounded, weight_capacity,
};
pub use cut::{Immersed, Waterplane};
pub use equilibrium::{Floating, Load, Outcome, Residual, equilibrium, equilibrium_from, plane_carrying};
pub use error::{FloatError, LoftError, MeshError, Place, StlError};
pub use hull::{Hull, Part};
pub use hydrostatics::{Hydrostatics, hydrostatics_at, hydrostatics_table, mass_to_sink, moment_to_trim};
pub use ledger::{Weight, total};
pub use loft::{Fairing, MAX_SLICES};
pub use mesh::TriMesh;
pub use offsets::{Assumption, LeastFormStation, Lofted, Lofting, Station, mesh_from_offsets};
pub use righting::{RightingArm, righting_arms};
pub use stl::mesh_from_stl;
pub use tank::{FreeSurface, Tank, free_surface_rise};
pub use tape::{LeastForm, TapeSection, mesh_from_least_form, mesh_from_tape};
pub use water::{Attitude, WaterPlane};
