//! From rest over the hump: how long it takes.

use uom::si::f64::{Time, Velocity};

use super::steady::{Craft, PLANES_FROM};
use crate::physics::running::{displaced, hump};
use crate::quantity::{Dimensioned, standard_gravity};

/// What moves with her of the water over her own mass. Common practice, no source.
const WATER_WITH_HER: f64 = 0.05;
/// Steps of speed in which the time is summed.
const STEPS: usize = 60;

/// Times from rest, each with drag below the method's range at none and at what it is at its lower end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GettingUp {
    /// Speed at which she planes.
    pub planes: Velocity,
    /// To that speed, from and to.
    pub to_plane: Option<[Time; 2]>,
    /// To the speed asked for.
    pub to_speed: Option<[Time; 2]>,
}

/// From rest at full throttle: to plane, and to this speed; `None` where the thrust does not reach. Below the first speed that
/// the method tells, which is `from`, drag lies between none and what it is there.
pub fn getting_up(craft: &Craft, from: Velocity, to: Velocity) -> GettingUp {
    let volume = displaced(craft.planing.weight, craft.planing.water.density);
    let planes = PLANES_FROM / hump::volume_froude(1.0, volume, standard_gravity().si());
    let planes = Velocity::from_si(planes);
    GettingUp { planes, to_plane: time(craft, from, planes), to_speed: time(craft, from, to) }
}

/// The integral of mass over what is left of the thrust, by Simpson's rule.
fn time(craft: &Craft, from: Velocity, to: Velocity) -> Option<[Time; 2]> {
    let mass = craft.planing.weight.si() / standard_gravity().si() * (1.0 + WATER_WITH_HER);
    let first = craft.steady(from).ok()?.thrust.si();
    let engines = f64::from(craft.propulsion.engines);
    let step = to.si() / STEPS as f64;
    let mut sums = [0.0; 2];
    for i in 0..=STEPS {
        let speed = Velocity::from_si(step * i as f64);
        let weight = match i {
            0 | STEPS => 1.0,
            i if i % 2 == 1 => 4.0,
            _ => 2.0,
        };
        let available = craft.full_throttle(speed).thrust * engines;
        let drags = if speed < from { [0.0, first] } else { [craft.steady(speed).ok()?.thrust.si(); 2] };
        for (sum, drag) in sums.iter_mut().zip(drags) {
            let left = available - drag;
            if left <= 0.0 {
                return None;
            }
            *sum += weight * mass / left;
        }
    }
    Some(sums.map(|sum| Time::from_si(sum * step / 3.0)))
}
