//! Bolts that hold an engine or a bracket to the transom: what each carries, and what it bears.

mod group;
mod joint;
mod spread;
mod tear;
mod thread;
mod written;

pub use group::{Bolt, BoltForces, Foot, GroupError, GroupForces, GroupLoad, bolt_forces, row_shares};
pub use joint::{
    bearing_stress, bearing_under_washer, combined_ratio, crushing_capacity, indentation_capacity, perimeter_of_oblong,
    perimeter_of_round, punching_capacity, tear_out_capacity, washer_area,
};
pub use spread::{Bends, UnderNut, drawn_down, on_core, pad};
pub use tear::{OldHole, clear_wood};
pub use thread::{
    Condition, PRELOAD_OF_PROOF, Thread, engagement_for_full_strength, nut_factor, preload, preload_by_torque,
    proof_load, shear_capacity, stress_area_iso, stress_area_unified, thread_shear_capacity, tightening_torque,
};
pub use written::{MIDDLE, WrittenGroup, WrittenLoad, written_pull, written_shear};
