//! Power, weight and persons that a small boat may carry under 33 CFR part 183.

use uom::si::f64::{Length, Mass, Power, Ratio};

use crate::catalog::PowerCapacity;
use crate::quantity::{Compared, Dimensioned, Measure, Style, Units, feet, horsepower, inches, pounds, say};
use crate::working::{Sheet, Term, ceil_to_multiple, number, round};

/// Length at and above which 33 CFR 183 subparts B, C, D and F–H do not apply. Source: 33 CFR 183.1,
/// 183.21: monohull boats less than 20 feet in length.
pub const REGULATED_LENGTH_FT: f64 = 20.0;
/// Transom height that the larger formula asks for. Source: 33 CFR 183.53(a).
pub const HIGH_TRANSOM_IN: f64 = 20.0;
/// Length up to which some boats may use the performance test. Source: 33 CFR 183.53(b).
pub const PERFORMANCE_TEST_LENGTH_FT: f64 = 13.0;
/// Slope of the larger formula, hp for each unit of the factor. Source: 33 CFR 183.53(a).
const REMOTE_HIGH_SLOPE: f64 = 2.0;
/// What it takes off, hp. Source: 33 CFR 183.53(a).
const REMOTE_HIGH_LESS: f64 = 90.0;
/// Slope for flat-bottom hard-chine boats. Source: 33 CFR 183.53(a).
const FLAT_SLOPE: f64 = 0.5;
/// What it takes off, hp. Source: 33 CFR 183.53(a).
const FLAT_LESS: f64 = 15.0;
/// Slope for other boats. Source: 33 CFR 183.53(a).
const OTHER_SLOPE: f64 = 0.8;
/// What it takes off, hp. Source: 33 CFR 183.53(a).
const OTHER_LESS: f64 = 25.0;
/// The result may be raised to the next multiple of this, hp. Source: 33 CFR 183.53(a).
const RAISED_TO: f64 = 5.0;
/// Transom height that the performance test asks for. Source: 33 CFR 183.53(b), value from memory.
pub const PERFORMANCE_TEST_TRANSOM_IN: f64 = 19.0;
/// Persons that a boat rated by the performance test may carry at most. Source: 33 CFR 183.53(b), value from memory.
pub const PERFORMANCE_TEST_PERSONS: u16 = 2;
/// Weight capacity from which the stability test no longer counts, lb. Source: 33 CFR 183.41.
pub const STABILITY_TEST_BELOW_LB: f64 = 550.0;
/// Share by which the weight of the stability test is divided. Source: 33 CFR 183.41.
pub const STABILITY_TEST_SHARE: f64 = 0.6;
/// Weight allowed for in the persons formula, lb. Source: 33 CFR 183.41.
pub const PERSONS_OFFSET_LB: f64 = 32.0;
/// Weight of a person in the persons formula, lb. Source: 33 CFR 183.41.
pub const PERSON_LB: f64 = 141.0;

/// Divisor of the reserve of displacement in the weight capacity. Source: 33 CFR 183.35.
pub const RESERVE_OVER_CAPACITY: f64 = 5.0;

/// The length below which 33 CFR part 183 asks for capacity limits.
pub fn regulated_length() -> Length {
    feet(REGULATED_LENGTH_FT)
}

/// The transom height at which the larger power formula begins.
pub fn high_transom() -> Length {
    inches(HIGH_TRANSOM_IN)
}

/// Whether a boat with remote wheel steering may be rated by the performance test of 183.53(b) instead.
pub fn performance_test(length: Length, transom: Length, persons: u16) -> bool {
    !length.exceeds(feet(PERFORMANCE_TEST_LENGTH_FT))
        && !inches(PERFORMANCE_TEST_TRANSOM_IN).exceeds(transom)
        && persons <= PERFORMANCE_TEST_PERSONS
}

/// The factor of 183.53(a): length in feet times transom width in feet.
pub fn factor(sheet: &mut Sheet, length: Length, width: Length) -> Term<Ratio> {
    let length = Term::styled("L", length, Style::Feet);
    let width = Term::styled("W", width, Style::Feet);
    let foot = || Term::constant_styled(feet(1.0), Style::Feet);
    sheet.set("F", "factor: length times greatest transom width, in feet", (length / foot()) * (width / foot()))
}

/// What decides between the formulas of 183.53(a).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Arrangement {
    /// Remote steering and a transom of at least 20 in.
    pub remote_and_high: bool,
    /// Flat bottom with hard chines; where the larger formula applies above the table it plays no part.
    pub flat_hard_chine: bool,
}

/// Whether the table covers this factor: above it the formulas do.
pub fn in_table(table: &PowerCapacity, factor: &Term<Ratio>) -> bool {
    !factor.value().exceeds(Ratio::from_si(table.steps_end))
}

/// The horsepower capacity of 183.53(a): the table up to its end, one of the formulas above it.
pub fn power(sheet: &mut Sheet, table: &PowerCapacity, factor: &Term<Ratio>, arrangement: Arrangement) -> Term<Power> {
    let within = in_table(table, factor);
    let told = Compared::of(factor.measure(), None, Some(Measure::of(Ratio::from_si(table.steps_end))), Units::Us);
    let end = told.most.unwrap_or_default();
    sheet.remark(if within {
        say!("{} is no more than {}, where the table ends: the table tells it", told.found, end)
    } else {
        say!("{} is above {}, where the table ends: a formula tells it", told.found, end)
    });
    if within {
        return from_table(sheet, table, factor, arrangement.flat_hard_chine);
    }
    let (slope, less) = match arrangement {
        Arrangement { remote_and_high: true, .. } => (REMOTE_HIGH_SLOPE, REMOTE_HIGH_LESS),
        Arrangement { flat_hard_chine: true, .. } => (FLAT_SLOPE, FLAT_LESS),
        _ => (OTHER_SLOPE, OTHER_LESS),
    };
    let computed = sheet.set("p", "horsepower by the formula", number(slope) * factor - number(less));
    sheet.set(
        "P",
        "horsepower capacity, raised to the next multiple of five",
        ceil_to_multiple(computed, RAISED_TO) * Term::constant(horsepower(1.0)),
    )
}

fn from_table(sheet: &mut Sheet, table: &PowerCapacity, factor: &Term<Ratio>, flat: bool) -> Term<Power> {
    let whole = sheet.set("n", "factor to the nearest whole number", round(factor.clone()));
    let last = table.steps.len().saturating_sub(1);
    let step = table.steps.iter().position(|step| whole.value().si() <= f64::from(step.factor_to)).unwrap_or(last);
    let taken = if flat { step.saturating_sub(1) } else { step };
    let power = table.steps.get(taken).map_or(Power::from_si(f64::NAN), |step| step.power.value);
    if flat {
        sheet.remark(match step {
            0 => "flat bottom with hard chines: the table has no step below its first",
            _ => "flat bottom with hard chines: one step down the table",
        });
    }
    sheet.set("P", "horsepower capacity from the table", Term::constant(power))
}

/// The greatest weight capacity, 183.35: (maximum displacement − boat weight) / 5.
pub fn weight(sheet: &mut Sheet, displacement: &Term<Mass>, boat: &Term<Mass>) -> Term<Mass> {
    sheet.set("Wc", "greatest weight capacity", (displacement - boat) / number(RESERVE_OVER_CAPACITY))
}

/// Persons that a weight capacity holds, 183.41: (lb + 32) / 141 to the nearest whole number.
pub fn persons(sheet: &mut Sheet, capacity: &Term<Mass>) -> Term<Ratio> {
    sheet.set(
        "N",
        "persons that the weight holds",
        round((capacity + Term::constant(pounds(PERSONS_OFFSET_LB))) / Term::constant(pounds(PERSON_LB))),
    )
}

/// The least weight that holds so many persons by that formula.
pub fn weight_of(persons: f64) -> Mass {
    // Half a person is rounded up.
    pounds((persons - 0.5) * PERSON_LB - PERSONS_OFFSET_LB)
}

/// Persons capacity that the stability test gives, 183.41: the weight found in it over 0.6.
pub fn by_stability_test(sheet: &mut Sheet, test: Mass) -> Term<Mass> {
    sheet.set("Wa", "persons' weight by the stability test", Term::new("A", test) / number(STABILITY_TEST_SHARE))
}
