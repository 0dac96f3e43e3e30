//! A flat panel bent out of its plane: the transom, or any polygon that a study sets up.
//!
//! The plate is Reissner–Mindlin (it bends and it shears through its thickness), meshed with MITC7
//! triangles, which neither lock when thin nor lose the shear of a soft core. The mesh is made finer where
//! the section forces jump, until the largest deflection is known to a stated part.
//!
//! **Axes.** Panel coordinates are `[y, z]` in metres, in the panel's own plane: `y` across (to port on a transom),
//! `z` up the panel. Deflection and forces are positive along the third axis `x` (forward, into the boat), so
//! that `x, y, z` is right-handed. A bending moment is positive where it stretches the face at positive `x`.
//!
//! Kernel arrays are plain `f64` in SI (m, N, N/m, N·m per metre, Pa); the doc of each field says which.

mod arrange;
mod assembly;
mod beam;
pub mod clip;
pub mod element;
mod error;
mod estimate;
mod factored;
mod grid;
mod layered;
mod layup;
mod load;
mod material;
mod matrix;
mod measured_stiffness;
mod mesh;
pub mod meshed;
mod model;
mod outline;
mod peak;
mod plate;
mod plywood;
mod reaction;
mod recover;
mod reference;
mod refine;
mod solve;
mod stiffness;
mod support;
mod vector;

pub use error::PanelError;
pub use estimate::{Accuracy, Level};
pub use factored::{Factored, Loaded, Pressed, Push};
pub use grid::Shape;
pub use layered::written as written_layers;
pub use layup::{Layer, Layup, PlyStress};
pub use load::{Load, Rect, couple};
pub use material::{Material, Ply, Strength};
pub use measured_stiffness::{scale_of_part, scales_of_part};
pub use mesh::Mesh;
pub use meshed::{Fineness, MeanMoment, Meshed};
pub use model::{Bed, EdgeSupport, Line, LineKind, Panel, Region, Section};
pub use plywood::{ACROSS_OF_ALONG, OfWood, Plywood};
pub use reaction::{Reaction, Resultant};
pub use recover::{SectionForces, Utilisation};
pub use solve::{Solution, Solved, Wanted};
pub use stiffness::PlateStiffness;
pub use support::SupportPart;
pub use vector::Point;
