//! Trailer: what she weighs on the road, and where.

mod behind;
mod brakes;
mod coupling;
mod load;

pub use behind::BEHIND;
pub use brakes::BRAKES;
pub use coupling::COUPLING;
pub use load::LOAD;

use super::Finding;
use crate::case::Case;
use crate::case::rigging::road::{NoLoad, OnRoad, load};
use crate::job::Trailer;
use crate::job::rigging::Towed;
use crate::quantity::Text;

/// What the job tells of her on the road; else the finding that says why there is nothing.
fn told<'c>(case: &'c Case) -> Result<&'c Towed, Box<Finding>> {
    let no = |why: &str| Err(Box::new(Finding::not_applicable(Text::from(why))));
    match (&case.rig.job.rigging.towed, &case.rig.job.trailer) {
        (_, Some(Trailer::None)) => no("She never travels on a trailer."),
        (None, _) => no("The job tells nothing of her weight on the road (rigging.towed)."),
        (Some(towed), _) => Ok(towed),
    }
}

/// What stands on her trailer, or the finding that says why that is not known.
fn loaded(case: &Case, towed: &Towed) -> Result<OnRoad, Box<Finding>> {
    load(case, towed).map_err(|no_load| {
        Box::new(match no_load {
            NoLoad::Missing(missing) => Finding::unmeasured(missing),
            NoLoad::Cannot(why) => Finding::new(super::Verdict::Unmeasured, why),
        })
    })
}
