//! Facts of the trade about trials. Common practice, no source, for all of them.

use sternknee::physics::trial::{
    Point, at, change, distance_per_volume, mean, pitch_speed, range_with_reserve, slip, tank_for,
};
use sternknee::quantity::{Dimensioned, Kind, parse};
use sternknee::working::{Sheet, Term};
use uom::si::f64::{AngularVelocity, Length, Ratio, Velocity, Volume, VolumeRate};

fn read<Q: Dimensioned>(text: &str) -> Q {
    Q::from_si(parse(text, Q::KIND).unwrap().si)
}

fn gallons(volume: Volume) -> f64 {
    volume.si() / parse("1 gal", Kind::Volume).unwrap().si
}

/// A pair made 36.4 mph on 42 gal/h with 234 miles of range, and 26.9 mph on 24.1 gal/h with 301, a tenth kept back.
#[test]
fn one_tank_of_about_three_hundred_gallons_gives_both_ranges() {
    let runs = [("36.4 mph", "42 gal/h", "234 mi"), ("26.9 mph", "24.1 gal/h", "301 mi")];
    for (speed, fuel, range) in runs {
        let (speed, fuel, range) = (read::<Velocity>(speed), read::<VolumeRate>(fuel), read::<Length>(range));
        let tank = tank_for(range, speed, fuel);
        println!("{:.1} gal", gallons(tank));
        assert!((gallons(tank) - 300.0).abs() < 1.0);
        let mut sheet = Sheet::default();
        let economy = distance_per_volume(&mut sheet, &Term::new("V", speed), &Term::new("f", fuel));
        let back = range_with_reserve(&mut sheet, read("300 gal"), &economy);
        assert!((back.value().si() / range.si() - 1.0).abs() < 0.003);
    }
}

#[test]
fn gains_are_told_in_parts_of_what_was() {
    let point = |value: f64| Point { along: 0.0, value, doubt: 0.0 };
    let part = |before: f64, after: f64| 100.0 * change(point(before), point(after)).unwrap().part;
    assert!((part(36.4, 52.7) - 44.8).abs() < 0.05, "nearly 45 %");
    assert!((part(0.9, 1.1) - 22.2).abs() < 0.05);
    assert!((part(1.1, 1.5) - 36.4).abs() < 0.05, "36 %");
    // Doubts of 2 % each make one of 2 √2 % of the ratio.
    let doubtful = |value: f64| Point { along: 0.0, value, doubt: 0.02 * value };
    let both = change(doubtful(1.0), doubtful(1.2)).unwrap();
    assert!((both.doubt - 1.2 * 0.02 * 2.0_f64.sqrt()).abs() < 1e-12);
    // In any unit: 36.4 ± 0.7 to 52.7 ± 0.9, by hand √(0.0247² + 0.0278²) = 0.0372.
    for unit in [1.0, 1.609_344, 0.447_04] {
        let read = |value: f64, doubt: f64| Point { along: 0.0, value: unit * value, doubt: unit * doubt };
        let doubt = change(read(36.4, 0.7), read(52.7, 0.9)).unwrap().doubt;
        assert!((doubt - 0.037_24).abs() < 1e-5, "{doubt}");
    }
}

/// mph = rpm · pitch · (1 − slip) / (ratio · 1056).
#[test]
fn slip_is_that_of_the_trades_constant() {
    let (rpm, pitch, ratio, mph) = (5500.0, 19.0, 2.0, 43.5);
    let by_the_trade = 1.0 - mph * ratio * 1056.0 / (rpm * pitch);
    let mut sheet = Sheet::default();
    let marked =
        pitch_speed(&mut sheet, read::<AngularVelocity>("5,500 rpm"), Ratio::from_si(ratio), read::<Length>("19 in"));
    let ours = slip(&mut sheet, &Term::new("V", read::<Velocity>("43.5 mph")), &marked).value().si();
    assert!((ours - by_the_trade).abs() < 1e-12, "{ours} {by_the_trade}");
}

#[test]
fn a_current_falls_out_of_both_ways_and_one_way_is_worth_less() {
    let mut sheet = Sheet::default();
    let both = mean(&mut sheet, read("31.2 mph"), Some(read("28.8 mph")), None);
    assert!((both.speed.value().si() / read::<Velocity>("30 mph").si() - 1.0).abs() < 1e-12);
    assert!((both.current.unwrap().value().si() / read::<Velocity>("1.2 mph").si() - 1.0).abs() < 1e-9);
    let one = mean(&mut sheet, read("31.2 mph"), None, None);
    assert!(one.doubt > both.doubt && one.current.is_none());
}

#[test]
fn between_runs_a_value_lies_on_the_line_and_beyond_them_nothing_is_told() {
    let points =
        [(3000.0, 20.0), (4000.0, 30.0), (4000.0, 31.0)].map(|(along, value)| Point { along, value, doubt: 0.1 });
    assert!((at(&points, 3500.0).unwrap().value - 25.0).abs() < 1e-12);
    assert!((at(&points, 4000.0).unwrap().value - 30.5).abs() < 1e-12);
    assert!(at(&points, 2999.0).is_none() && at(&points, 4001.0).is_none() && at(&[], 1.0).is_none());
}
