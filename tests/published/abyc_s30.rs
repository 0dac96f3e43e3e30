//! ABYC S-30, table 1A, outboard engines and related equipment weights, as incorporated by 33 CFR 183.75
//! (in force since 1 June 2018), read in a public reproduction. Whole pounds: exact.

use sternknee::catalog::EngineWeightRow;
use sternknee::physics::weight;
use sternknee::quantity::{Dimensioned, Units, horsepower};

use crate::common::{CATALOG, near};

/// Power to which the row goes (hp); dry, running, swamped, controls, battery dry, battery submerged,
/// portable fuel, total (lb).
const PRINTED: [(f64, [f64; 8]); 14] = [
    (2.0, [30., 32., 27., 0., 0., 0., 0., 32.]),
    (3.9, [42., 44., 37., 0., 0., 0., 0., 44.]),
    (6.9, [66., 69., 59., 0., 0., 0., 25., 94.]),
    (10.9, [105., 110., 94., 5., 20., 11., 50., 185.]),
    (22.9, [127., 133., 113., 6., 45., 25., 50., 234.]),
    (34.9, [187., 196., 167., 9., 45., 25., 100., 350.]),
    (64.9, [286., 300., 255., 14., 45., 25., 100., 459.]),
    (94.9, [439., 461., 392., 22., 45., 25., 100., 628.]),
    (104.9, [458., 481., 409., 23., 45., 25., 100., 649.]),
    (144.9, [526., 552., 469., 26., 45., 25., 100., 723.]),
    (194.9, [561., 589., 501., 28., 45., 25., 100., 762.]),
    (209.9, [652., 685., 582., 33., 45., 25., 100., 863.]),
    (300.0, [699., 734., 624., 35., 45., 25., 100., 914.]),
    (350.0, [884., 928., 789., 44., 45., 25., 100., 1117.]),
];

fn rows() -> &'static [EngineWeightRow] {
    &CATALOG.tables.engine_weights.as_ref().unwrap().rows
}

/// Dry, running, swamped, controls, battery dry, battery submerged, portable fuel, in pounds.
fn pounds_of(row: &EngineWeightRow) -> [f64; 7] {
    [&row.dry, &row.running, &row.swamped, &row.controls, &row.battery_dry, &row.battery_submerged, &row.portable_fuel]
        .map(|reading| {
            let (value, unit) = reading.measure(Default::default()).in_unit(Units::Us);
            assert_eq!(unit, "lb");
            value
        })
}

#[test]
fn every_figure_of_the_table_is_the_printed_one() {
    assert_eq!(rows().len(), PRINTED.len());
    for (row, (power_to, printed)) in rows().iter().zip(PRINTED) {
        near(row.power_to.value.si(), horsepower(power_to).si(), 1e-9);
        for (found, printed) in pounds_of(row).into_iter().zip(printed) {
            near(found, printed, 1e-9);
        }
    }
}

/// The printed total is running, controls, dry battery and portable fuel together.
#[test]
fn the_printed_totals_are_the_sums_of_the_rows() {
    for (row, (_, printed)) in rows().iter().zip(PRINTED) {
        let [_, running, _, controls, battery, _, fuel] = pounds_of(row);
        near(running + controls + battery + fuel, printed[7], 1e-9);
    }
}

/// The table's own note: running is 1.05 of dry, swamped 0.85 of running, to the nearest pound. One pound
/// is allowed for a half that was rounded the other way (699 lb dry: 733.95; 42 lb dry: 44.1).
#[test]
fn running_and_swamped_weights_follow_the_tables_ratios() {
    for row in rows() {
        let [dry, running, swamped, ..] = pounds_of(row);
        near(running, 1.05 * dry, 0.5 + 1e-9);
        near(swamped, weight::SWAMPED_OVER_RUNNING * running, 0.5 + 1e-9);
    }
}

/// The ratio that the program uses is the table's: over all rows together it agrees to 1 part in 500, the
/// rounding of fourteen whole pounds.
#[test]
fn the_swamped_ratio_is_the_tables() {
    let sum = |column: usize| -> f64 { rows().iter().map(|row| pounds_of(row)[column]).sum() };
    near(weight::SWAMPED_OVER_RUNNING, sum(2) / sum(1), 0.0017);
    near(weight::SWAMPED_OVER_RUNNING, 0.85, 0.0);
}

/// Column one: a row holds to its printed power, the next begins a tenth of a horsepower above.
#[test]
fn a_power_finds_its_row_at_both_edges() {
    let table = CATALOG.tables.engine_weights.as_ref().unwrap();
    let running = |hp: f64| weight::table_row(table, horsepower(hp)).map(|row| pounds_of(row)[1]);
    for (i, (power_to, printed)) in PRINTED.into_iter().enumerate() {
        assert_eq!(running(power_to).map(f64::round), Some(printed[1]));
        let next = PRINTED.get(i + 1).map(|(_, printed)| printed[1]);
        assert_eq!(running(power_to + 0.1).map(f64::round), next);
    }
}

/// Readings in kilowatts find the row too: 300 hp written as 223.709961 kW is 300 hp but for the last bit.
#[test]
fn a_power_in_kilowatts_finds_its_row_at_the_edge() {
    let table = CATALOG.tables.engine_weights.as_ref().unwrap();
    let power = horsepower(300.0) * (1.0 + 1e-12);
    let row = weight::table_row(table, power).unwrap();
    near(pounds_of(row)[1], 734.0, 1e-9);
}
