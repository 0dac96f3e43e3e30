//! Logs of NMEA 0183 sentences (fields from memory), made by a script with noise, dropouts and bad sums; and rows with commas.

use sternknee::logged::{Log, Logged, LoggedError, read};
use sternknee::physics::trial::{pairs, stretches};

#[path = "../common/trial_log.rs"]
mod trial_log;

fn log(text: &str) -> Log {
    match read(text.as_bytes()).unwrap() {
        Logged::Log(log) => log,
        Logged::Rows(_) => panic!("rows"),
    }
}

#[test]
fn an_hours_log_gives_its_runs_and_its_damage_is_counted() {
    let made = trial_log::hour(7);
    let log = log(&made.text);
    println!("{} lines, {:?}", log.damage.lines, log.damage);
    assert_eq!(log.damage.bad_sums, made.bad_sums);
    assert_eq!(log.damage.unreadable, made.cut_short);
    assert_eq!(log.damage.gaps, made.gaps);
    let found = stretches(&log.samples);
    let runs = pairs(&found);
    let two_way: Vec<_> = runs.iter().filter_map(|(one, back)| Some((one, back.as_ref()?))).collect();
    // Every run of the script is found, with its mean within what the noise leaves.
    for (rpm, knots) in trial_log::RUNS {
        let (one, back) = two_way
            .iter()
            .find(|(one, _)| (one.engine.unwrap() * 60.0 / std::f64::consts::TAU / rpm - 1.0).abs() < 0.01)
            .unwrap_or_else(|| panic!("no run at {rpm} rpm"));
        let mean = 0.5 * (one.speed + back.speed) * 3600.0 / 1852.0;
        assert!((mean - knots).abs() < 0.1, "{rpm} rpm: {mean} knots, {knots} made");
        assert!(one.fuel.is_some() && back.samples >= 20);
        // The current stands between the ways.
        assert!(((one.speed - back.speed).abs() * 3600.0 / 1852.0 - 2.0 * trial_log::CURRENT).abs() < 0.2);
    }
}

#[test]
fn midnight_and_void_fixes_are_borne() {
    let line = |body: &str| format!("${body}*{:02X}\n", body.bytes().fold(0u8, |sum, byte| sum ^ byte));
    let rmc =
        |time: &str, status: char| line(&format!("GPRMC,{time},{status},4100.000,N,07100.000,W,20.0,090.0,010126,,,A"));
    let text = rmc("235959.00", 'A')
        + &rmc("000000.00", 'A')
        + &rmc("000001.00", 'V')
        + "$GPRMC,00\n"
        + "garbage\n"
        + &rmc("000002.00", 'A');
    let log = log(&text);
    let times: Vec<f64> = log.samples.iter().map(|sample| sample.time).collect();
    assert_eq!(times, [0.0, 1.0, 3.0]);
    assert_eq!((log.damage.void, log.damage.unreadable), (1, 2));
    assert!(log.damage.told().is_some());
}

#[test]
fn rows_with_units_in_their_heads_or_cells_are_runs() {
    let text = "rpm,speed (mph),back (mph),fuel (gal/h)\n3500,25.1,24.5,6.6\n\"5,300 rpm\",38.2,37.4 mph,13.4\n";
    let Logged::Rows(rows) = read(text.as_bytes()).unwrap() else { panic!("a log") };
    assert_eq!(rows.len(), 2);
    assert!((rows[1].back.unwrap().value / 0.447_04 - 37.4).abs() < 1e-9);
    assert!((rows[0].engine.unwrap().value * 60.0 / std::f64::consts::TAU - 3500.0).abs() < 1e-9);
}

#[test]
fn rows_with_a_column_of_times_are_a_log_and_a_bad_line_of_it_is_counted() {
    let mut text = "time (s),speed (kn),rpm\n".to_owned();
    for second in 0..60 {
        text += &format!("{second},20.0,4000\n");
    }
    text += "61,fast,4000\n";
    let log = log(&text);
    assert_eq!((log.samples.len(), log.damage.unreadable), (60, 1));
    assert_eq!(stretches(&log.samples).len(), 1);
}

#[test]
fn what_cannot_be_read_says_why() {
    let error = |text: &str| read(text.as_bytes()).unwrap_err();
    assert_eq!(error("hello,world\n1,2\n"), LoggedError::NoColumns);
    assert_eq!(error("rpm,speed (mph)\n"), LoggedError::NoRows);
    assert!(matches!(error("rpm,speed (mph)\n3500,fast\n"), LoggedError::Row { row: 2, .. }));
    assert_eq!(error("$GPGGA,1,2*00\n"), LoggedError::NoFix);
    assert_eq!(error(""), LoggedError::NoColumns);
    // No bytes stop the program.
    for bytes in [&b"\xff\xfe$\x00*"[..], b"$*", b"$GPRMC*4B\n$\n*\n", b"time,speed\n,\n"] {
        let _ = read(bytes);
    }
}
