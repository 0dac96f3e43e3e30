//! Propellers: what one of the Wageningen B-series gives in open water, which one suits an engine and a speed, and
//! what it pulls at rest behind an engine that cannot reach its rated power there.

mod curves;
mod oblique;
mod rest;
mod series;
mod suit;
mod table;

pub use curves::{
    AIR_LESS_VAPOUR, Curves, REYNOLDS, REYNOLDS_RANGE, Sized, Turning, cavitation, cavitation_limit, projected,
};
pub use oblique::{WORKS_AT, square_to_shaft, write_square_to_shaft};
pub use rest::{SEA_WATER, THROUGH_GEARS, thrust_at_rest};
pub use series::{AREA_RATIOS, BLADES, OpenWater, PITCH_RATIOS, Propeller, PropellerError};
pub use suit::{
    Drive, MATCHED_PITCH_RATIOS, Pitch, Pitches, SLIP, Screw, USUAL_AREA_RATIO, USUAL_BLADES, pitches, rated_turning,
};
