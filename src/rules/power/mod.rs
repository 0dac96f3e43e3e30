//! Power: may she carry it?

mod formula_limit;
mod matched_pair;
mod plate_limit;
mod too_little;

use uom::si::f64::Power;

use crate::job::{self, Plate};
use crate::quantity::{Reading, Text};
use crate::reading::reading;
use crate::rig::{Missing, Rig};
use crate::rules::{Finding, Rule};
use crate::working::{Sheet, Term};

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] =
    &[&plate_limit::PLATE_LIMIT, &formula_limit::FORMULA_LIMIT, &too_little::TOO_LITTLE, &matched_pair::MATCHED_PAIR];

/// The power that she is rated for by a plate or, without one, by her builder.
enum Rated {
    Power(Reading<Power>),
    /// There is a plate, but it gives no power; or there is none, and the builder was not asked.
    NotStated,
}

/// What her plate or her builder says of power.
fn rated(rig: &Rig) -> Result<Rated, Missing> {
    let stated = match rig.job.plate().ask()? {
        Plate::Capacity { power, .. } | Plate::Builders { power, .. } => power.clone(),
        Plate::None => None,
        Plate::Illegible if rig.job.boat.power_rating.is_none() => {
            return Err(Missing {
                measurement: reading!(job::Plate.power),
                of: Some("the plate cannot be read; ask the builder by the hull number".to_owned()),
            });
        }
        Plate::Illegible => None,
    };
    Ok(stated.or_else(|| rig.job.boat.power_rating.clone()).map_or(Rated::NotStated, Rated::Power))
}

/// What is said where nothing but auxiliary engines hang on her: none of them is held against a rating here.
fn auxiliaries_alone(rig: &Rig) -> Option<Finding> {
    let alone = !rig.after.is_empty() && rig.after.mains().is_empty();
    alone.then(|| {
        Finding::not_applicable(Text::from(
            "Nothing but an auxiliary engine hangs on her, which is not counted here; some jurisdictions do count it.",
        ))
    })
}

/// The sum of the main engines' power.
fn installed(sheet: &mut Sheet, engines: &[(String, Power)]) -> Option<Term<Power>> {
    let sum = engines.iter().map(|(name, power)| Term::new(name.clone(), *power)).reduce(|a, b| a + b)?;
    Some(sheet.set("Pi", "rated power of the main engines together", sum))
}
