//! The whole range of speeds.

use std::sync::OnceLock;

use uom::si::f64::Velocity;

use super::steady::{Craft, Steady};
use crate::physics::root::root;
use crate::physics::running::{Beside, Outside, Running};
use crate::quantity::{Dimensioned, HOUR, MILE};

/// Lowest speed looked at, m/s: 2 mph.
pub const LOWEST: f64 = 2.0 * MILE_PER_HOUR;
/// Highest speed looked at, m/s: 100 mph.
pub const HIGHEST: f64 = 100.0 * MILE_PER_HOUR;
/// From one speed looked at to the next, m/s: 1 mph.
pub const STEP: f64 = MILE_PER_HOUR;
const MILE_PER_HOUR: f64 = MILE / HOUR;
/// Speeds looked at.
const SPEEDS: usize = ((HIGHEST - LOWEST) / STEP + 1.5) as usize;
/// How near two speeds are alike, m/s.
const ALIKE: f64 = 1e-12;
/// How far past her greatest speed the range is told.
const PAST: usize = 3;

/// What she does over her range of speeds, as far as the method tells it.
#[derive(Clone, Debug, PartialEq)]
pub struct Range {
    /// Speed after speed.
    pub points: Vec<Steady>,
    /// Why nothing is told below the first speed.
    pub slower: Option<Outside>,
    /// Why nothing is told above the last, where the engines could still go on.
    pub faster: Option<Outside>,
    /// The greatest speed that the engines hold, where the method reaches it.
    pub top: Option<Steady>,
}

/// How she planes at every speed looked at, with these propellers: shared by others that are tried on her. Their blades
/// lift otherwise by what moves her trim by hundredths of a degree; where they hold her is sought with their own.
#[derive(Clone, Debug)]
pub struct Planed {
    craft: Craft,
    /// Worked out when first asked for.
    at: Vec<OnceLock<Result<(Running, Beside), Outside>>>,
}

impl Planed {
    /// Of this bottom, weight, thrust line and propellers.
    pub fn of(craft: &Craft) -> Self {
        Planed { craft: craft.clone(), at: vec![OnceLock::new(); SPEEDS] }
    }

    fn at(&self, step: usize) -> &Result<(Running, Beside), Outside> {
        self.at[step].get_or_init(|| self.craft.running(speed_of(step)))
    }
}

fn speed_of(step: usize) -> Velocity {
    Velocity::from_si(LOWEST + STEP * step as f64)
}

impl Craft {
    /// The range, from the first speed that the method tells to a little past the greatest that the engines hold.
    pub fn range(&self) -> Range {
        self.range_on(&Planed::of(self))
    }

    /// The same of a boat that planes like this, with this propulsion and these factors.
    pub fn range_on(&self, planed: &Planed) -> Range {
        let mut range = Range { points: Vec::new(), slower: None, faster: None, top: None };
        let mut past = 0;
        for step in 0..SPEEDS {
            if past > PAST {
                break;
            }
            match *planed.at(step) {
                Ok((running, beside)) => {
                    let steady = self.driven(speed_of(step), running, beside);
                    // What came before a gap is no part of her range: at the hump the method may fail her for a while.
                    if let Some(gap) = range.faster.take() {
                        range.points.clear();
                        range.slower = Some(gap);
                    }
                    if !steady.is_held() && self.is_past(&range, &steady) {
                        past += 1;
                    }
                    range.points.push(steady);
                }
                Err(outside) if range.points.is_empty() => range.slower = Some(outside),
                Err(outside) => range.faster = Some(range.faster.unwrap_or(outside)),
            }
        }
        range.top = self.top(&range);
        range
    }

    /// Whether she was held before and is no more: past a hump that holds her back she may be held again.
    fn is_past(&self, range: &Range, steady: &Steady) -> bool {
        range.points.last().is_some_and(|last| last.margin() > steady.margin())
            && range.points.iter().any(Steady::is_held)
    }

    /// Where thrust and drag are equal, past the last speed that is held.
    fn top(&self, range: &Range) -> Option<Steady> {
        let last = range.points.iter().rposition(Steady::is_held)?;
        let ends = [range.points[last], *range.points.get(last + 1)?];
        let left = |steady: &Steady| steady.available.si() - steady.thrust.si();
        let mut found = Some(ends[0]);
        let speed = root(ends.map(|end| end.speed.si()), ends.each_ref().map(left), ALIKE, |speed| {
            // Nothing is told in between: then nothing is left, and nothing found.
            found = self.steady(Velocity::from_si(speed)).ok();
            found.as_ref().map_or(0.0, left)
        });
        found?;
        // A hair slower, so that the engines hold it.
        self.steady(Velocity::from_si(speed - 2.0 * ALIKE)).ok()
    }
}
