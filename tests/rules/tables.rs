//! What `work` tells of running and of trials in tables, against division by hand.

use sternknee::case::Case;
use sternknee::quantity::{Dimensioned, Units};
use sternknee::working::{Part, Table};
use uom::si::angle::degree;

use crate::common::{near, rig};

const DIVE_TENDER: &str = include_str!("../../catalogs/jobs/dive_tender.ron");
const THREE_RUNS_EACH: &str = include_str!("cases/trial-comparable/pass.ron");

/// The table of this title in any of the parts.
fn table<'p>(parts: &'p [Part], title: &str) -> &'p Table {
    let tables = || parts.iter().flat_map(|part| &part.tables);
    tables().find(|table| table.title == title).unwrap_or_else(|| {
        panic!("no `{title}` in {:?}", tables().map(|table| table.title.as_str()).collect::<Vec<_>>())
    })
}

fn rows(table: &Table) -> Vec<Vec<String>> {
    table.rows.iter().map(|row| row.iter().map(|cell| cell.show(Units::Us)).collect()).collect()
}

/// The figure before the unit, a minus sign with it.
fn figure(cell: &str) -> f64 {
    let number = cell.split(' ').next().expect("a word").replace(',', "");
    number.parse().unwrap_or_else(|_| panic!("no figure in `{cell}`"))
}

/// Miles in an hour over gallons in that hour, row by row; and a row for every 2 mph, each faster than the last.
#[test]
fn how_far_a_gallon_takes_her_is_her_speed_over_her_flow() {
    let rig = rig(DIVE_TENDER);
    let parts = Case::new(&rig).running_parts();
    for side in ["before", "after"] {
        let table = table(&parts, &format!("over the range, {side}"));
        let column = |head: &str| table.heads.iter().position(|told| told == head).expect("a column");
        let [speed, fuel, economy] = ["speed", "fuel", "for fuel"].map(column);
        let rows = rows(table);
        let held: Vec<[f64; 3]> = rows
            .iter()
            .filter(|row| row[fuel] != "–")
            .map(|row| [speed, fuel, economy].map(|column| figure(&row[column])))
            .collect();
        assert!(held.len() > 5, "{rows:#?}");
        for [speed, fuel, economy] in held {
            // A tenth of a gallon is the last digit told.
            near(economy, speed / fuel, 0.06 * economy / fuel + 0.06);
        }
        assert!(rows.windows(2).all(|pair| figure(&pair[0][speed]) < figure(&pair[1][speed])), "{rows:#?}");
    }
}

/// What stands between two of these pairs at a place, straight from one to the other.
fn between(pairs: [[f64; 2]; 3], at: f64) -> f64 {
    let found = pairs.windows(2).find(|pair| pair[0][0] <= at + 0.06 && at <= pair[1][0] + 0.06);
    let [[x, y], [next_x, next_y]] = found.and_then(|pair| pair.try_into().ok()).expect("between the runs");
    y + (next_y - y) * (at - x) / (next_x - x)
}

/// Three runs of either boat, each speed the mean of both ways: 25.0, 32.5 and 37.8 mph on 6.6, 9.4 and 13.4 gal/h at 3,500,
/// 4,500 and 5,300 rpm before, 26.2, 34.0 and 42.0 mph on 5.6, 8.6 and 14.8 gal/h at 3,500, 4,500 and 5,600 rpm after. Between
/// two runs what is told lies straight between them.
#[test]
fn before_is_set_against_after_at_equal_revolutions_at_equal_speed_and_each_at_its_best() {
    let rig = rig(THREE_RUNS_EACH);
    let parts = Case::new(&rig).trial_parts();
    let speeds = [[[3500.0, 25.0], [4500.0, 32.5], [5300.0, 37.8]], [[3500.0, 26.2], [4500.0, 34.0], [5600.0, 42.0]]];
    let fuels = [[[3500.0, 6.6], [4500.0, 9.4], [5300.0, 13.4]], [[3500.0, 5.6], [4500.0, 8.6], [5600.0, 14.8]]];
    let fuel_at = [[[25.0, 6.6], [32.5, 9.4], [37.8, 13.4]], [[26.2, 5.6], [34.0, 8.6], [42.0, 14.8]]];
    // Three cells: before, after, and by how many parts in a hundred more or less.
    let check = |cells: &[String], before: f64, after: f64| {
        near(figure(&cells[0]), before, 0.051);
        near(figure(&cells[1]), after, 0.051);
        let (sign, size) = cells[2].split_once(' ').expect("a sign");
        let change = figure(size) * if sign == "−" { -1.0 } else { 1.0 };
        near(change, 100.0 * (after / before - 1.0), 0.051);
    };
    let at_equal_engine = rows(table(&parts, "at equal engine speed"));
    assert!(at_equal_engine.len() >= 3);
    for row in at_equal_engine {
        let rpm = figure(&row[0]);
        check(&row[1..4], between(speeds[0], rpm), between(speeds[1], rpm));
        check(&row[4..7], between(fuels[0], rpm), between(fuels[1], rpm));
    }
    let at_equal_speed = rows(table(&parts, "at equal speed"));
    assert!(at_equal_speed.len() >= 3);
    for row in at_equal_speed {
        let speed = figure(&row[0]);
        let [before, after] = fuel_at.map(|runs| between(runs, speed));
        // The speed itself is told to a tenth.
        near(figure(&row[1]), before, 0.1);
        near(figure(&row[2]), after, 0.1);
        // How far a gallon takes her is speed over flow, as the row has them, to the tenths in which they are told.
        near(figure(&row[4]), speed / before, 0.02 * speed / before);
        near(figure(&row[5]), speed / after, 0.02 * speed / after);
    }
    let best = rows(table(&parts, "each at its best"));
    assert_eq!([best[0][0].as_str(), &best[1][0]], ["greatest speed", "farthest for fuel"]);
    check(&best[0][1..], 37.8, 42.0);
    // Either boat goes farthest on a gallon in its slowest run.
    check(&best[1][1..], 25.0 / 6.6, 26.2 / 5.6);
}

/// Each way is half a mile in ten off the mean by the stream; 3,500 rpm through the gears turn a propeller of 17 in so many miles an
/// hour, of which slip loses a part; and the best cruise is the slowest of the three.
#[test]
fn every_run_is_told_with_its_mean_its_stream_and_its_slip() {
    let rig = rig(THREE_RUNS_EACH);
    let parts = Case::new(&rig).trial_parts();
    let (_, engine) = rig.before.engines().next().expect("the old engine");
    let gears = engine.spec.gear_ratio.as_ref().expect("its gears").value.si();
    let part = parts.iter().find(|part| part.title == "trial before").expect("the trial before");
    let rows = rows(table(std::slice::from_ref(part), "run by run"));
    let runs = [(3500.0, 25.0, 0.4, 6.6, ""), (4500.0, 32.5, 0.5, 9.4, ""), (5300.0, 37.8, 0.4, 13.4, "full throttle")];
    assert_eq!(rows.len(), 3);
    for (row, (rpm, speed, stream, fuel, full)) in rows.iter().zip(runs) {
        near(figure(&row[0]), rpm, 0.5);
        near(figure(&row[1]), speed, 0.051);
        near(figure(&row[3]).abs(), stream, 0.051);
        near(figure(&row[4]), fuel, 0.051);
        near(figure(&row[5]), speed / fuel, 0.0051);
        // Inches a minute into miles an hour.
        let marked = 17.0 * rpm / gears * 60.0 / 63_360.0;
        near(figure(&row[7]), 1.0 - speed / marked, 6e-4);
        assert_eq!(row[8], full);
    }
    let said: Vec<String> = part.sheet.lines().iter().map(|line| line.show(Units::Us)).collect();
    assert!(said.iter().any(|line| line == "Best cruise of the runs: 3.79 mi/gal at 25.0 mph."), "{said:#?}");
}

/// A bottom whose chines draw in and rise evenly going forward is, from the transom to her centre of gravity, on average what it
/// is halfway there, whichever sections it is told by.
#[test]
fn a_bottom_that_twists_evenly_is_taken_as_it_is_halfway_to_her_centre() {
    // At the transom 36 in out and 9 in up, an inch less and more in every 24 in.
    let at = |inches: f64| (36.0 - inches / 24.0, 9.0 + inches / 24.0);
    for told_at in [&[0.0, 36.0, 216.0][..], &[0.0, 36.0, 72.0, 90.0, 216.0], &[0.0, 216.0]] {
        let sections: Vec<String> = told_at
            .iter()
            .map(|&forward| {
                let (out, up) = at(forward);
                format!(
                    "(forward: \"{forward} in\", keel: \"0 in\", chine: (out: \"{out} in\", up: \"{up} in\"), \
                     sheer: (out: \"42 in\", up: \"36 in\"))"
                )
            })
            .collect();
        let rig = rig(&format!(
            "(boat: (bottom: vee, length: \"18 ft\", transom_width: \"7 ft\"), hull: tape(sections: [{}]), \
             transom: (height: \"25 in\", angle: \"13 deg\"), steering: remote_hydraulic, afloat: (water: salt), \
             weights: (boat: (weight: \"2,300 lb\", forward: \"9 ft\", above: \"20 in\"), crew: 2, \
               places: [(what: \"helm\", holds: 3, forward: \"9 ft\", above: \"40 in\")]), \
             engines_on: [(class: \"four-stroke 150 hp inline-4\", shaft: \"25 in\", at: [centre], holes_up: 1, \
               propeller: (blades: 3, diameter: \"15 in\", pitch: \"17 in\"))], \
             running: ())",
            sections.join(", ")
        ));
        let case = Case::new(&rig);
        let built = &case.running().expect("asked").after.as_ref().expect("told").built;
        let centre = built.centre[0] / 0.0254;
        assert!(centre > 40.0, "beyond the second section: {centre}");
        let ((out, up), bottom) = (at(0.5 * centre), built.craft.planing.bottom);
        near(bottom.beam.si() / 0.0254, 2.0 * out, 1e-6);
        near(bottom.deadrise.get::<degree>(), (up / out).atan().to_degrees(), 1e-6);
        // And by how much she twists is told.
        let (whole, none) = (at(centre), at(0.0));
        let twist = (whole.1 / whole.0).atan().to_degrees() - (none.1 / none.0).atan().to_degrees();
        let said: Vec<String> = built.assumed.iter().map(|text| text.show(Units::Us)).collect();
        let words = format!("twists by {twist:.1} deg");
        assert!(said.iter().any(|text| text.contains(&words)), "{words}: {said:#?}");
    }
}
