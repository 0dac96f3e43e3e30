//! Both ways over the same water: the current falls out of the mean.

use uom::si::f64::Velocity;

use crate::quantity::Dimensioned;
use crate::working::{Sheet, Term, number};

/// How closely a speed is read from a satellite receiver over a run, m/s. Common practice, no source: 0.2 mph.
pub const READ: f64 = 0.09;
/// What an unknown current may do to a run one way, m/s. Common practice, no source: 1 mph.
pub const ONE_WAY: f64 = 0.45;

/// Her speed through the water from a run.
#[derive(Clone, Debug)]
pub struct Mean {
    /// The mean of both ways, or the one way.
    pub speed: Term<Velocity>,
    /// Half of the difference between the ways: current, and scatter with it.
    pub current: Option<Term<Velocity>>,
    /// How far off the speed may be.
    pub doubt: Velocity,
}

/// The mean of both ways, or the one way with an unknown current.
pub fn mean(sheet: &mut Sheet, there: Velocity, back: Option<Velocity>, read: Option<Velocity>) -> Mean {
    let read = read.map_or(READ, |read| read.si());
    let out = Term::new("V1", there);
    match back {
        Some(back) => {
            let back = Term::new("V2", back);
            let speed = sheet.set("V", "mean of both ways", (&out + &back) / number(2.0));
            let current = sheet.set("Vc", "half of their difference: the current", (out - back) / number(2.0));
            Mean { speed, current: Some(current), doubt: Velocity::from_si(read / 2.0_f64.sqrt()) }
        }
        None => {
            let speed = sheet.set("V", "run one way only", out);
            Mean { speed, current: None, doubt: Velocity::from_si(read.hypot(ONE_WAY)) }
        }
    }
}
