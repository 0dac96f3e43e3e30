//! A sea trial's runs: means of both ways, what a gallon takes her, steady stretches of a log, before against after.

mod compare;
mod economy;
mod stretches;
mod two_way;

pub use compare::{Change, Point, at, change, span};
pub use economy::{KEPT_BACK, distance_per_volume, pitch_speed, range_with_reserve, slip, tank_for};
pub use stretches::{LEAST_SECONDS, Stretch, pairs, stretches};
pub use two_way::{Mean, ONE_WAY, READ, mean};
