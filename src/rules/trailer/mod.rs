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
use crate::job::Trailer;
use crate::job::rigging::Towed;
use crate::quantity::Text;

/// What the job tells of her on the road; else the finding that says why there is nothing.
fn told<'c>(case: &'c Case) -> Result<&'c Towed, Finding> {
    let no = |why: &str| Err(Finding::not_applicable(Text::from(why)));
    match (&case.rig.job.rigging.towed, &case.rig.job.trailer) {
        (_, Some(Trailer::None)) => no("She never travels on a trailer."),
        (None, _) => no("The job tells nothing of her weight on the road (rigging.towed)."),
        (Some(towed), _) => Ok(towed),
    }
}
