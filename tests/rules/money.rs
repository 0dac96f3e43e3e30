//! Two trials against each other, and what a season costs: one boat, every figure by hand. Simple payback as in any book on
//! engineering economy: what it costs over what is saved in a season.

use sternknee::case::Case;
use sternknee::quantity::Units;
use sternknee::working::Part;

use crate::common::{near, rig};

/// Runs at 3,000, 4,000 and 5,000 rpm: speed with the stream, speed against it, gallons an hour.
fn sailed(runs: [(f64, f64, f64); 3]) -> String {
    let run = |(i, (there, back, fuel)): (usize, &(f64, f64, f64))| {
        let rpm = 3000 + 1000 * i;
        format!(r#"(rpm: "{rpm} rpm", speed: "{there} mph", back: "{back} mph", fuel: "{fuel} gal/h")"#)
    };
    format!("(runs: [{}])", runs.iter().enumerate().map(run).collect::<Vec<_>>().join(", "))
}

/// An invented boat that went 20, 30 and 40 mph on 8, 12 and 20 gal/h, and goes 20, 30 and 42 on 6, 10 and 16.
fn boat(worth: &str) -> String {
    let before = sailed([(21.0, 19.0, 8.0), (30.0, 30.0, 12.0), (41.0, 39.0, 20.0)]);
    let after = sailed([(20.0, 20.0, 6.0), (31.0, 29.0, 10.0), (42.0, 42.0, 16.0)]);
    format!(
        r#"(
            sitting: before_ordering,
            engines_off: [(class: "two-stroke 115 hp V4", shaft: "25 in", at: [centre])],
            engines_on: [(class: "four-stroke 150 hp inline-4", shaft: "25 in", at: [centre])],
            trial: (before: {before}, after: {after}),
            {worth}
        )"#
    )
}

const WORTH: &str = r#"worth: (
    currency: "crowns",
    costs: [
        (what: "engine", amount: 10000, give_or_take: 300),
        (what: "labour", hours: "20 h", rate: 100),
        (what: "old engine sold", amount: -2000, give_or_take: 400),
    ],
    season: [(speed: "30 mph", hours: "100 h")],
    fuel: (price: 4, per: "1 gal", give_or_take: 0.4),
    upkeep_before: 1500, upkeep_after: 800,
),"#;

/// The rows of a part's tables, cell by cell.
fn rows(parts: &[Part], part: &str, table: &str) -> Vec<Vec<String>> {
    let part = parts.iter().find(|one| one.title == part).unwrap_or_else(|| panic!("no part {part}"));
    let table = part.tables.iter().find(|one| one.title == table).unwrap_or_else(|| panic!("no table {table}"));
    table.rows.iter().map(|row| row.iter().map(|cell| cell.show(Units::Us)).collect()).collect()
}

/// 10,000 ± 300, 20 hours at 100, less 2,000 ± 400: 10,000 ± 500. A hundred hours at 30 mph burn 1,200 gal, 4,800 crowns, and
/// 1,000, 4,000; with upkeep 6,300 and 4,800, which is 1,500 saved.
#[test]
fn a_season_is_paid_by_hours_fuel_and_upkeep() {
    let text = boat(WORTH);
    let rig = rig(&text);
    let worth = Case::new(&rig).worth().expect("costs and use are told");
    let cost = worth.cost.expect("every line is told");
    near(cost.value, 10_000.0, 1e-6);
    near(cost.doubt, 500.0, 1e-6);
    let [Some(before), Some(after)] = worth.season else { panic!("{:?}", worth.season) };
    near(before.value, 6300.0, 1e-6);
    near(after.value, 4800.0, 1e-6);
    // Fuel flow to 3 %, its price to a tenth: of 4,800 and of 4,000.
    near(before.doubt, 4800.0 * 0.03_f64.hypot(0.1), 1e-6);
    near(after.doubt, 4000.0 * 0.03_f64.hypot(0.1), 1e-6);
    assert_eq!(worth.measured, [true; 2]);
}

/// One price holds for both seasons: a tenth of it is off by a tenth of the 800 that less fuel saves, not of 4,800 and of 4,000.
/// Flows are read apart, 3 % each: 144 and 120.
#[test]
fn a_price_that_is_off_is_off_before_and_after() {
    let text = boat(WORTH);
    let rig = rig(&text);
    let worth = Case::new(&rig).worth().expect("costs and use are told");
    let off = 144.0_f64.hypot(120.0).hypot(80.0);
    let saved = worth.saved.expect("both seasons are told");
    near(saved.value, 1500.0, 1e-6);
    near(saved.doubt, off, 1e-6);
    let payback = worth.payback.expect("all is told");
    near(payback.seasons.unwrap(), 10_000.0 / 1500.0, 1e-9);
    near(payback.soonest.unwrap(), 9500.0 / (1500.0 + off), 1e-9);
    near(payback.latest.unwrap(), 10_500.0 / (1500.0 - off), 1e-9);
}

#[test]
fn costs_and_seasons_are_told_line_by_line() {
    let text = boat(WORTH);
    let rig = rig(&text);
    let parts = Case::new(&rig).worth_parts();
    let costs = rows(&parts, "costs and use", "what it costs");
    assert_eq!(
        costs,
        [
            ["engine", "10,000 ± 300 crowns"],
            ["labour", "2,000 crowns"],
            ["old engine sold", "-2,000 ± 400 crowns"],
            ["together", "10,000 ± 500 crowns"],
        ]
    );
    let season = rows(&parts, "costs and use", "a season");
    assert_eq!(
        season[0],
        ["30.0 mph", "100 h", "12.0 gal/h", "10.0 gal/h", "4,800 ± 501 crowns", "4,000 ± 418 crowns"]
    );
    assert_eq!(season[1][0], "with upkeep");
    assert_eq!(season[1][4..], ["6,300 ± 501 crowns", "4,800 ± 418 crowns"]);
    let said = |part: &Part| part.sheet.lines().iter().any(|line| line.show(Units::Us).contains("is reckoned"));
    assert!(!parts.iter().any(said), "the fuel was measured on both sides");
}

/// Five places from the slowest to the fastest that both trials reach, straight from run to run.
#[test]
fn trials_are_compared_where_both_have_runs() {
    let text = boat("");
    let rig = rig(&text);
    let parts = Case::new(&rig).trial_parts();
    let told = |table: &str, column: usize| -> Vec<String> {
        let rows = rows(&parts, "before against after", table);
        rows.into_iter().map(|row| row[column].split(" ±").next().unwrap_or_default().to_owned()).collect()
    };
    let engine = "at equal engine speed";
    assert_eq!(told(engine, 0), ["3,000 rpm", "3,500 rpm", "4,000 rpm", "4,500 rpm", "5,000 rpm"]);
    assert_eq!(told(engine, 1), ["20.0 mph", "25.0 mph", "30.0 mph", "35.0 mph", "40.0 mph"]);
    assert_eq!(told(engine, 2), ["20.0 mph", "25.0 mph", "30.0 mph", "36.0 mph", "42.0 mph"]);
    assert_eq!(told(engine, 3)[3..], ["+ 2.9", "+ 5.0"]);
    assert_eq!(told(engine, 4), ["8.0 gal/h", "10.0 gal/h", "12.0 gal/h", "16.0 gal/h", "20.0 gal/h"]);
    assert_eq!(told(engine, 5), ["6.0 gal/h", "8.0 gal/h", "10.0 gal/h", "13.0 gal/h", "16.0 gal/h"]);
    assert_eq!(told(engine, 6), ["− 25.0", "− 20.0", "− 16.7", "− 18.8", "− 20.0"]);
    let speed = "at equal speed";
    assert_eq!(told(speed, 0), ["20.0 mph", "25.0 mph", "30.0 mph", "35.0 mph", "40.0 mph"]);
    assert_eq!(told(speed, 1), ["8.0 gal/h", "10.0 gal/h", "12.0 gal/h", "16.0 gal/h", "20.0 gal/h"]);
    // Ten gallons at 30 mph and sixteen at 42: at 35 mph five twelfths of the way, at 40 ten.
    assert_eq!(told(speed, 2), ["6.0 gal/h", "8.0 gal/h", "10.0 gal/h", "12.5 gal/h", "15.0 gal/h"]);
    assert_eq!(told(speed, 3), ["− 25.0", "− 20.0", "− 16.7", "− 21.9", "− 25.0"]);
    let best = "each at its best";
    assert_eq!(told(best, 1), ["40.0 mph", "2.50 mi/gal"]);
    assert_eq!(told(best, 2), ["42.0 mph", "3.33 mi/gal"]);
    assert_eq!(told(best, 3), ["+ 5.0", "+ 33.3"]);
}
