//! How hard she is driven: her speed, and the slamming that comes with it.

use uom::si::f64::{Angle, Length, Mass, MassDensity, Ratio, Velocity};
use uom::si::length::foot;
use uom::si::mass_density::kilogram_per_cubic_meter;

use crate::case::Case;
use crate::case::float::Crew;
use crate::job::{Bottom, Category, Sitting};
use crate::physics::power::likely_top_speed;
use crate::physics::strength::loads::{acceleration_at_gravity_centre, slamming};
use crate::quantity::{Basis, Dimensioned, Measure, Reading, Text, degrees, say, standard_gravity};
use crate::rig::{Missing, Rig};
use crate::working::Sheet;

/// How she is driven, in the kernel's terms.
#[derive(Clone, Copy, Debug)]
pub struct Driving {
    /// Her greatest speed with the new engines: as told, or as estimated before they are bought.
    pub speed: Velocity,
    /// Slamming on top of gravity, in g.
    pub slamming: f64,
    /// Where the speed is from, as a legend says it.
    pub speed_from: &'static str,
}

/// Length on the waterline over length overall. Common practice, no source.
const WATERLINE_OF_LENGTH: f64 = 0.9;
/// What is taken for what is not told. Common practice, no source, for all of them: on the side of more slamming.
///
/// Width of the transom over greatest beam, beam between the chines over width of the transom, length over beam.
const TRANSOM_OF_BEAM: f64 = 0.9;
const CHINE_OF_TRANSOM: f64 = 0.9;
const LENGTH_OF_BEAM: f64 = 2.3;
/// Laden weight over length times the square of the beam, kg/m³: open outboard boats have 40 to 60.
const LADEN: f64 = 40.0;
/// Deadrise of a vee and of any other bottom, degrees.
const VEE_DEADRISE: f64 = 12.0;
const OTHER_DEADRISE: f64 = 5.0;
/// Slamming where no size of hers is told, in g.
const SLAMMING: f64 = 3.0;
/// Factor of the design categories A to D. Source: ISO 12215-5, value from memory.
const CATEGORY_A: f64 = 1.0;
const CATEGORY_B: f64 = 0.8;
const CATEGORY_C: f64 = 0.6;
const CATEGORY_D: f64 = 0.4;
/// Lengths that are typical of the categories D and B, ft; between them the factor grows evenly, so that a 16 ft boat stands
/// halfway from D to C and a 26 ft one halfway from C to B. Common practice, no source.
const LENGTHS_D_TO_B: [f64; 2] = [11.0, 31.0];

/// Crouch's constant of open outboard boats: the least, and the most, which is taken, for a faster boat slams harder. Common
/// practice, no source.
const CROUCH: [f64; 2] = [150.0, 200.0];

/// Her top speed with the new engines: as told; before they are bought, estimated where her size and their power are known.
///
/// # Errors
/// The speed, as a missing reading.
pub(super) fn top_speed(case: &Case, assumed: &mut Vec<Text>) -> Result<Velocity, Missing> {
    let rig = case.rig;
    let told = rig.structure.top_speed.ask();
    let missing = match told {
        Ok(speed) => return Ok(speed.value),
        Err(missing) => missing,
    };
    let power = rig.after.main_power().ok().filter(|powers| !powers.is_empty());
    let (Some(powers), Some(hull), Sitting::BeforeOrdering) = (power, Hull::of(case), rig.job.sitting) else {
        return Err(missing);
    };
    let power = powers.iter().map(|(_, power)| *power).sum();
    let sheet = &mut Sheet::default();
    let [slow, fast] = CROUCH.map(|constant| likely_top_speed(sheet, power, hull.mass, constant).value());
    assumed.push(say!(
        "Top speed is taken as {} (Crouch's formula, value from memory: boats of her weight and power run {} to {}; the careful end). A trial or the builder's figure is worth more: `operating.top_speed`.",
        Measure::of(fast),
        Measure::of(slow),
        Measure::of(fast)
    ));
    Ok(fast)
}

impl Driving {
    /// Of a rig at this speed. The formula of the slamming goes to the sheet.
    pub fn of(case: &Case, speed: Velocity, sheet: &mut Sheet, assumed: &mut Vec<Text>) -> Driving {
        let rig = case.rig;
        let speed_from = rig.structure.top_speed.reading().map_or(Basis::Assumed, |speed| speed.basis).origin();
        if let Some(given) = &rig.structure.operating.acceleration {
            let slamming = given.value.si() / standard_gravity().si();
            sheet.remark(say!(
                "Slamming is told: {} on top of gravity ({}).",
                Measure::of(given.value),
                given.basis.origin()
            ));
            return Driving { speed, slamming, speed_from };
        }
        let Some(hull) = Hull::of(case) else {
            assumed.push(say!(
                "Slamming is taken as {} on top of gravity: no size of hers is given.",
                Measure::of(SLAMMING * standard_gravity())
            ));
            return Driving { speed, slamming: SLAMMING, speed_from };
        };
        hull.say(assumed);
        hull.say_origins(rig, speed_from, sheet);
        let waterline = WATERLINE_OF_LENGTH * hull.length;
        let n = acceleration_at_gravity_centre(sheet, waterline, hull.chine, hull.deadrise, speed, hull.mass);
        let n = slamming(sheet, n, speed, hull.mass, hull.category);
        Driving { speed, slamming: n.value().si().max(0.0), speed_from }
    }
}

/// What slamming depends on.
struct Hull {
    length: Length,
    chine: Length,
    deadrise: Angle,
    mass: Mass,
    mass_from: &'static str,
    category: Ratio,
    /// What was not told, with what is taken for it.
    taken: Vec<Text>,
}

impl Hull {
    /// As told, or from what is told; `None` where no size is.
    fn of(case: &Case) -> Option<Hull> {
        let rig = case.rig;
        let boat = &rig.job.boat;
        let told = |reading: &Option<Reading<Length>>| reading.as_ref().map(|reading| reading.value);
        let (length, width) = (told(&boat.length), told(&boat.transom_width));
        let beam = told(&boat.beam).or(width.map(|width| width / TRANSOM_OF_BEAM));
        let beam = beam.or(length.map(|length| length / LENGTH_OF_BEAM))?;
        let mut taken = Vec::new();
        let length = length.unwrap_or_else(|| {
            taken.push(say!("length {}", Measure::tape(LENGTH_OF_BEAM * beam)));
            LENGTH_OF_BEAM * beam
        });
        let chine = told(&boat.chine_beam).unwrap_or_else(|| {
            let chine = CHINE_OF_TRANSOM * width.unwrap_or(TRANSOM_OF_BEAM * beam);
            taken.push(say!("beam between the chines {}", Measure::tape(chine)));
            chine
        });
        let deadrise = boat.deadrise.as_ref().map_or_else(
            || {
                let usual = match boat.bottom {
                    Some(Bottom::Vee) => VEE_DEADRISE,
                    _ => OTHER_DEADRISE,
                };
                taken.push(say!("deadrise {}", Measure::of(degrees(usual))));
                degrees(usual)
            },
            |reading| reading.value,
        );
        let told = rig.structure.operating.displacement.as_ref();
        let told = told.map(|mass| (mass.value, mass.basis.origin()));
        let (mass, mass_from) = told.or_else(|| Some((of_ledger(case)?, BY_LEDGER))).unwrap_or_else(|| {
            let mass = MassDensity::new::<kilogram_per_cubic_meter>(LADEN) * length * beam * beam;
            taken.push(say!("laden weight {}, as little as boats of her size weigh", Measure::of(mass)));
            (mass, Basis::Assumed.origin())
        });
        let category = boat.category.map_or_else(
            || {
                let factor = usual_category(length);
                taken.push(say!("factor of the design category {}, as usual for her length", Measure::of(factor)));
                factor
            },
            |category| {
                Ratio::from_si(match category {
                    Category::A => CATEGORY_A,
                    Category::B => CATEGORY_B,
                    Category::C => CATEGORY_C,
                    Category::D => CATEGORY_D,
                })
            },
        );
        Some(Hull { length, chine, deadrise, mass, mass_from, category, taken })
    }

    /// Says on a sheet where its figures are from.
    fn say_origins(&self, rig: &Rig, speed_from: &str, sheet: &mut Sheet) {
        let boat = &rig.job.boat;
        let from = |reading: &Option<Reading<Length>>| {
            reading.as_ref().map_or(Basis::Assumed, |reading| reading.basis).origin()
        };
        let deadrise = boat.deadrise.as_ref().map_or(Basis::Assumed, |deadrise| deadrise.basis).origin();
        let category = if boat.category.is_some() { "ISO 12215-5, from memory" } else { Basis::Assumed.origin() };
        for (symbol, from) in [
            ("LWL", if boat.length.is_some() { "0.9 of her length" } else { Basis::Assumed.origin() }),
            ("BC", from(&boat.chine_beam)),
            ("β", deadrise),
            ("Vkn", speed_from),
            ("mLDC", self.mass_from),
            ("kDC", category),
        ] {
            sheet.origin::<Ratio>(symbol, from);
        }
    }

    fn say(&self, assumed: &mut Vec<Text>) {
        assumed.push(Text::from("Her length on the waterline is taken as 0.9 of her length."));
        if !self.taken.is_empty() {
            let taken = Text::join(self.taken.clone(), "; ");
            assumed.push(say!("For her slamming is taken what is not given: ").then(taken).then(Text::from(".")));
        }
    }
}

/// Where her laden weight is from when nobody told it in one figure.
const BY_LEDGER: &str = "her weights, full tanks, crew at their stations";

/// What she weighs with her crew at their stations, where her weights or her marks tell.
fn of_ledger(case: &Case) -> Option<Mass> {
    let stations = case.float().ok()?.loadings.iter().filter(|loaded| loaded.crew == Crew::AtStations);
    stations.filter_map(|loaded| Some(loaded.judged()?.total.mass)).reduce(Mass::max)
}

/// The design category's factor that is usual for the length.
fn usual_category(length: Length) -> Ratio {
    let [from, to] = LENGTHS_D_TO_B;
    let part = ((length.get::<foot>() - from) / (to - from)).clamp(0.0, 1.0);
    Ratio::from_si(CATEGORY_D + part * (CATEGORY_B - CATEGORY_D))
}
