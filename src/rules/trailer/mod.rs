//! Trailer: what she weighs on the road, and where.

mod behind;
mod brakes;
mod coupling;
mod load;

use crate::case::Case;
use crate::case::rigging::road::load as loaded;
use crate::job::Trailer;
use crate::job::rigging::Towed;
use crate::quantity::Text;
use crate::reading::Absent;
use crate::rules::Rule;
use crate::working::Sheet;
use uom::si::f64::Mass;

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] = &[&load::LOAD, &coupling::COUPLING, &brakes::BRAKES, &behind::BEHIND];

/// Where the places of axle and coupling are from.
fn say_origins(towed: &Towed, sheet: &mut Sheet) {
    sheet.told("xa", towed.axle.as_ref());
    sheet.told("Lc", towed.coupling.as_ref());
    sheet.origin::<Mass>("Wb", "all but the trailer, in the lines below");
}

/// What the job tells of her on the road; else why there is nothing.
fn told<'c>(case: &'c Case) -> Result<&'c Towed, Absent> {
    let no = |why: &str| Err(Absent::NotApplicable(Text::from(why)));
    match (&case.rig.job.rigging.towed, &case.rig.job.trailer) {
        (_, Some(Trailer::None)) => no("She never travels on a trailer."),
        (None, _) => no("The job tells nothing of her weight on the road (rigging.towed)."),
        (Some(towed), _) => Ok(towed),
    }
}
