//! How she has run with the engines that come off.

use uom::si::f64::Ratio;

use crate::job::{self, Job, Signs};

/// What years with the old engines say of the transom that carried them.
#[derive(Clone, Debug)]
pub struct Ran {
    /// For how many years.
    pub years: Option<f64>,
    /// For how many hours.
    pub hours: Option<f64>,
    /// Compression of her weakest cylinder over that of a new engine.
    pub compression: Option<Ratio>,
    /// What the job says was seen of it with them.
    pub then: Option<Signs>,
    /// What was seen of it, then or now; `None` where nobody looked.
    pub signs: Option<Signs>,
}

/// Years or hours after which a transom has shown what it carries. Common practice, no source: two seasons, 100 h each.
const PROVEN_YEARS: f64 = 2.0;
const PROVEN_HOURS: f64 = 200.0;

impl Ran {
    /// What a job says of it.
    pub fn of(job: &Job) -> Option<Ran> {
        let job::Ran { years, hours, compression, signs: then } = job.ran.clone()?;
        let now = job.structure.as_ref().and_then(|structure| structure.signs.as_ref());
        let signs = Signs::both(then.as_ref(), now);
        let compression = compression.map(|ratio| ratio.value);
        Some(Ran { years, hours, compression, then, signs })
    }

    /// Whether the old engines ran on this transom long enough and it shows nothing of it. `None` where that cannot be said:
    /// too short a time, or nobody looked. Hours decide where they are known, years where they are not.
    pub fn soundly(&self) -> Option<bool> {
        let signs = self.signs.as_ref()?;
        if !signs.seen().is_empty() {
            return Some(false);
        }
        let long = match (self.hours, self.years) {
            (Some(hours), _) => hours >= PROVEN_HOURS,
            (None, Some(years)) => years >= PROVEN_YEARS,
            (None, None) => false,
        };
        long.then_some(true)
    }
}
